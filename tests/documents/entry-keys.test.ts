import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bayEntryKeys, type EntryFloor, jointEntryKeys, keyRead } from '../../src/documents/entry-keys.ts';
import { keyWords } from '../../src/documents/entry-words.ts';
import { planTables } from '../../src/documents/plan-tables.ts';
import { pourDaysGiven } from '../../src/documents/pour-entered.ts';
import { pourPlanOf } from '../../src/documents/pour-plan.ts';
import { registerEntries } from '../../src/documents/register-entries.ts';
import { takeOffOf } from '../../src/documents/takeoff-tables.ts';
import type { Bay, Joint, JointKind } from '../../src/plan/analysis.ts';
import { jointsKept } from '../../src/plan/edits/joints.ts';
import { objectChanged } from '../../src/plan/edits/objects.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { planWrite } from '../../src/plan/write.ts';
import { analysisOf, bay, box, joint, planOf, room } from './fixture.ts';
import { demoText, paperSourceOf } from './paper-fixture.ts';
import { hostileTexts } from './table-fixture.ts';

/** A hall of 20 m by 4 m, bays by their left and right sides, joints across it by their place, all in metres. */
function hall(
  joints: readonly (readonly [kind: JointKind, x: number])[],
  bays: readonly (readonly [number, number])[] = [[0, 20]],
): EntryFloor {
  const made = bays.map(([left, right], i): Bay => {
    const shape = bay(`B${i + 1}`, ['hall'], box(left * 1000, 0, (right - left) * 1000, 4000), right - left, 4);
    // halves of a metre, as keys have them
    return { ...shape, key: `bay:hall@${Math.round(left + right) / 2},2` };
  });
  const lines = joints.map(([kind, x], i): Joint => {
    const line = [
      [x * 1000, 0],
      [x * 1000, 4000],
    ] as const;
    const of = kind === 'drawn' ? `j${i + 1}` : 'hall';
    const sources = kind === 'drawn' ? [of] : [];
    return {
      ...joint(`J${i + 1}`, kind, line, ['B1', 'B1']),
      sources,
      key: `${kind}:${of}@${Math.round(x * 2) / 2},2`,
    };
  });
  const plan = planOf({ rooms: [room('hall', 'Hall', box(0, 0, 20_000, 4000))] });
  return { plan, analysis: { ...analysisOf(), bays: made, joints: lines } };
}

const nowOf = (keys: readonly string[], floor: EntryFloor) =>
  Object.fromEntries([...jointEntryKeys(keys, floor).now].map(([key, place]) => [key, place.key]));

describe('what is entered of a joint', () => {
  it('goes with a found joint of a floor that is dragged as far as its room lets it, in one step or in several', () => {
    const before = paperSourceOf(demoText('1-dwelling'));
    const isUpright = ({ line }: Joint) => line[0]?.[0] === line.at(-1)?.[0];
    const found = before.analysis.joints.find((each) => each.key.startsWith('field:living@') && isUpright(each));
    if (found === undefined) throw new Error('the living room has no joint across it');
    const noted: PlanFile = { ...before.file, papers: { joints: [{ key: found.key, profile: 'PROF-X' }] } };
    const kept = jointsKept(noted, before.analysis.joints, [found.id]);
    let file = kept.file;
    for (const byMm of [1200, 1200]) {
      const own = file.drawnJoints?.find(({ id }) => id === kept.ids[0]);
      file = objectChanged(file, kept.ids[0] as string, { line: own?.line.map(([x, y]) => [x + byMm, y]) });
      const { joints, gone } = registerEntries(paperSourceOf(planWrite(file)));
      expect(gone).toEqual([]);
      expect([...joints.values()].map(({ profile }) => profile)).toEqual(['PROF-X']);
      expect([...joints.keys()][0]).toMatch(new RegExp(`^drawn:${kept.ids[0]}@`));
    }
  });

  it('stays with a joint that is where it was', () => {
    const floor = hall([
      ['field', 4],
      ['field', 12],
    ]);
    expect(nowOf(['field:hall@4,2', 'field:hall@12,2'], floor)).toEqual({
      'field:hall@4,2': 'field:hall@4,2',
      'field:hall@12,2': 'field:hall@12,2',
    });
  });

  it('goes with a found joint that is dragged by 250 mm, by which it becomes a drawn one', () => {
    expect(
      nowOf(
        ['field:hall@4,2'],
        hall([
          ['drawn', 4.25],
          ['field', 12],
        ]),
      ),
    ).toEqual({ 'field:hall@4,2': 'drawn:j1@4.5,2' });
  });

  it('goes with the one that has moved of two parallel joints 1 m apart, whether anything is entered of the other or not', () => {
    // Joints stood at 4 and 5 m; the first now stands at 3.25 m, away from the other, or at 4.75 m, beside it.
    for (const x of [3.25, 4.75]) {
      const floor = hall([
        ['drawn', x],
        ['field', 5],
      ]);
      const [moved = '', other = ''] = floor.analysis.joints.map(({ key }) => key);
      expect(nowOf(['field:hall@4,2'], floor)).toEqual({ 'field:hall@4,2': moved });
      expect(nowOf(['field:hall@5,2', 'field:hall@4,2'], floor)).toEqual({
        'field:hall@5,2': other,
        'field:hall@4,2': moved,
      });
    }
  });

  it('is gone with a joint of which none is left within 1.5 m', () => {
    // A comparison calls a joint moved up to 1.5 m; half-metre keys are certain to 0.25 m: 4 - 1.5 - 0.25 = 2.25.
    expect(jointEntryKeys(['field:hall@4,2'], hall([['field', 2.2]]))).toEqual({
      now: new Map(),
      gone: ['field:hall@4,2'],
    });
    expect(jointEntryKeys(['field:hall@4,2'], hall([['field', 2.25]])).gone).toEqual([]);
  });

  it('never goes along the line to the next joint there', () => {
    // J1 from 0 to 1.5 m and J2 from 2 to 3.5 m on one line along the hall, with a column between: J1 is taken away
    const floor = hall([['field', 4]]);
    const [only] = floor.analysis.joints;
    const next = { ...(only as Joint), line: [[2000, 2000] as const, [3500, 2000] as const], key: 'field:hall@3,2' };
    expect(
      jointEntryKeys(['field:hall@1,2'], { ...floor, analysis: { ...floor.analysis, joints: [next] } }).gone,
    ).toHaveLength(1);
    // but where the wall before it has gone and it begins at 0, it is the joint that stands there
    const longer = { ...next, line: [[0, 2000] as const, [3500, 2000] as const], key: 'field:hall@2,2' };
    expect(nowOf(['field:hall@1,2'], { ...floor, analysis: { ...floor.analysis, joints: [longer] } })).toEqual({
      'field:hall@1,2': 'field:hall@2,2',
    });
  });

  it('never goes to a joint of another room, nor from a joint in the room to one of the building', () => {
    expect(jointEntryKeys(['field:bath@4,2'], hall([['field', 4.5]])).gone).toHaveLength(1);
    expect(jointEntryKeys(['field:hall@4,2'], hall([['structural', 4.5]])).gone).toHaveLength(1);
  });

  it('goes with a drawn joint however far that is moved within its room, and with none that is drawn anew in another', () => {
    expect(nowOf(['drawn:j1@4,2'], hall([['drawn', 15]]))).toEqual({ 'drawn:j1@4,2': 'drawn:j1@15,2' });
    expect(jointEntryKeys(['drawn:j1@4,30'], hall([['drawn', 15]])).gone).toHaveLength(1);
  });

  it('goes to one joint at most and is the only one there, in whatever order joints and entries come', () => {
    const halves = fc.integer({ min: 0, max: 38 }).map((half) => half / 2);
    const places = fc.uniqueArray(halves, { maxLength: 12 });
    fc.assert(
      fc.property(places, places, fc.boolean(), (entered, stand, isTurned) => {
        const keys = entered.map((x) => `field:hall@${x},2`);
        const floor = hall(stand.map((x) => ['field', x] as const));
        const { now, gone } = jointEntryKeys(keys, floor);
        expect([...now.keys(), ...gone].sort()).toEqual([...keys].sort());
        expect(new Set([...now.values()].map(({ key }) => key)).size).toBe(now.size);
        const turned = isTurned
          ? { ...floor, analysis: { ...floor.analysis, joints: [...floor.analysis.joints].reverse() } }
          : floor;
        const again = jointEntryKeys([...keys].reverse(), turned);
        expect(new Map([...again.now].sort())).toEqual(new Map([...now].sort()));
      }),
    );
  });
});

describe('a bay of a day of the pour', () => {
  it('is followed where a joint beside it has moved', () => {
    // bays of 0-4.5 and 4.5-10 m were of 0-4 and 4-10 m: middles at 2 and 7 m, now at 2.25 and 7.25 m
    const { now, gone } = bayEntryKeys(
      ['bay:hall@2,2', 'bay:hall@7,2'],
      hall(
        [],
        [
          [0, 4.5],
          [4.5, 10],
        ],
      ),
    );
    expect([...now.values()].map(({ key }) => key)).toEqual(['bay:hall@2.5,2', 'bay:hall@7.5,2']);
    expect(gone).toEqual([]);
  });

  it('goes on as the part that holds its middle where it is split in two, and names no other part', () => {
    const { now } = bayEntryKeys(
      ['bay:hall@5,2'],
      hall(
        [],
        [
          [0, 6],
          [6, 10],
        ],
      ),
    );
    expect([...now.values()].map(({ key }) => key)).toEqual(['bay:hall@3,2']);
  });

  it('goes on as the part in the middle where a room that was one bay is split', () => {
    const { now } = bayEntryKeys(
      ['bay:hall'],
      hall(
        [],
        [
          [0, 5],
          [5, 14],
          [14, 20],
        ],
      ),
    );
    expect([...now.values()].map(({ key }) => key)).toEqual(['bay:hall@9.5,2']);
  });

  it('is gone where its room is', () => {
    expect(bayEntryKeys(['bay:bath@5,2', 'bay:bath'], hall([])).gone).toEqual(['bay:bath@5,2', 'bay:bath']);
  });
});

describe('what has no place any more is told in words', () => {
  const floor = hall([['field', 4]]);
  it.each([
    ['bay', 'bay:hall@2.5,2', 'a bay of Hall near 2.5, 2 m'],
    ['bay', 'bay:hall', 'the bay of Hall'],
    ['bay', 'bay:hall+bath@2,2#2', 'a bay of Hall near 2, 2 m'],
    ['joint', 'field:hall@5.5,-1', 'a joint of Hall near 5.5, -1 m'],
    ['joint', 'drawn:j9@5.5,2', 'a joint drawn by hand in Hall near 5.5, 2 m'],
    ['joint', 'structural:s1@50,2', 'a joint of the building near 50, 2 m'],
    ['joint', 'zone:hall@5,2', 'a joint between heating zones of Hall near 5, 2 m'],
    ['joint', 'doorway:d9', 'the joint of a doorway that is gone'],
    ['joint', 'neck:bath@5,2', 'a joint of a room that is gone near 5, 2 m'],
    ['joint', 'my joint', 'a joint known as my joint'],
  ] as const)('%s %s', (what, key, words) => {
    expect(keyWords(what, key, floor)).toBe(words);
  });

  it('on one line, and none too long, whatever stands in the file', () => {
    for (const [text] of hostileTexts)
      for (const key of [text, `field:${text}@1,1`, `bay:${text}`, `drawn:${text}@${'9'.repeat(10_000)},1`]) {
        expect(keyWords('joint', key, floor)).not.toMatch(/[\p{Cc}\u202a-\u202e]/u);
        expect(keyWords('joint', key, floor).length).toBeLessThan(200);
        expect(bayEntryKeys([key], floor).gone).toEqual([key]);
      }
    expect(keyRead('rooms:a')).toBeNull();
  });
});

describe('the joint across the living room of the dwelling, moved by 250 mm', () => {
  const before = paperSourceOf(demoText('1-dwelling'));
  const across = before.analysis.joints.find(({ id }) => id === 'J15') as Joint;
  const days = pourPlanOf(before).lots.map(({ bays }) => ({ bays: bays.map(({ key }) => key) }));
  const kept = jointsKept(before.file, before.analysis.joints, [across.id]);
  const moved: PlanFile = {
    ...kept.file,
    drawnJoints: (kept.file.drawnJoints ?? []).map((drawn) => ({
      ...drawn,
      line: drawn.line.map(([x, y]) => [x + 250, y] as const),
    })),
    papers: {
      joints: [
        { key: across.key, profile: 'PROF-X', pipes: 7 },
        { key: 'field:living@40,40', profile: 'PROF-Y' },
      ],
    },
    pour: { days },
  };
  const source = paperSourceOf(planWrite(moved));
  const now = source.analysis.joints.find(({ kind }) => kind === 'drawn') as Joint;

  it('keeps its entry in the register, which says from where it comes', () => {
    const { joints, followed, gone } = registerEntries(source);
    expect(joints.get(now.key)?.profile).toBe('PROF-X');
    expect(followed.get(now.key)?.words).toBe('entered for a joint close by');
    expect(gone.map(({ words }) => words)).toEqual(['a joint of Living, dining and kitchen near 40, 40 m']);
  });

  it('keeps the pipes that are entered in the order of sleeves', () => {
    const sleeves = takeOffOf(source).lines.find(({ key }) => key === 'sleeves');
    expect(sleeves?.parts?.find(({ name }) => name === 'entered')?.amount).toBe(7);
  });

  it('leaves each day of the pour the bays that it has', () => {
    const given = pourDaysGiven(source);
    expect(given.days.map(({ bays }) => bays.length)).toEqual(days.map(({ bays }) => bays.length));
    expect(given.days.flatMap(({ bays }) => bays).sort()).toEqual(source.analysis.bays.map(({ id }) => id).sort());
    expect(given.told.join(' ')).toMatch(/names (?:a bay that has|bays that have) changed since: B\d+/u);
  });

  it('shows no key on any list but those of joints and bays, where it is a column of its own', () => {
    for (const { make } of planTables(source)) {
      const { columns, rows, notes } = make(source);
      if (columns.some(({ head }) => head === 'Key')) continue;
      expect(JSON.stringify([rows, notes])).not.toMatch(/(?:bay|field|drawn|neck|zone|doorway):[a-z]/u);
    }
  });
});
