import { describe, expect, it } from 'vitest';
import { comparisonText } from '../../src/cli/compare-text.ts';
import { comparisonOf } from '../../src/documents/compare.ts';
import { comparisonDrawing, comparisonPages } from '../../src/documents/compare-drawing.ts';
import { floorsInCommon } from '../../src/documents/compare-floors.ts';
import { comparisonForm } from '../../src/documents/compare-form.ts';
import { jointMatch } from '../../src/documents/compare-match.ts';
import { floorShift } from '../../src/documents/compare-shift.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { jointAt, rectangle } from './compare-fixture.ts';
import { textOffPage, textOverText } from './page-check.ts';
import { demoNames, demoText, hallAndStore, paperSourceOf } from './paper-fixture.ts';

describe('two plans that are not of one floor', () => {
  it.each([
    ['1-dwelling', '2-public-library'],
    ['2-public-library', '3-market-hall'],
    ['3-market-hall', '1-dwelling'],
  ] as const)('are called two different floors before anything else: %s and %s', (one, other) => {
    const comparison = comparisonOf(paperSourceOf(demoText(one)), paperSourceOf(demoText(other)));
    expect(comparison.caution).toMatch(/^These seem to be two different floors: /u);
    expect(comparisonForm(comparison).blocks.slice(0, 2)).toEqual([
      { kind: 'head', text: 'Caution' },
      { kind: 'text', lines: [comparison.caution] },
    ]);
    const [said] = comparisonText(comparison, { before: 'a.json', now: 'b.json' }).split('\n');
    expect(said).toBe(comparison.caution);
  });

  // by hand: hall 34 m round, store 13.8 m. A hall of 15 x 9 m with a store behind it at 9.1 m, both drawn from the same corner, has of the first hall the
  // wall of 12 m at the top and 5 m at the left, and of the store that on the left from 5.1 to 8 m: 19.9 of 47.8 m, 42 %. Of what was the one joint
  // across the hall and the one in the doorway one is where it was, moved by 1 m: a half. Together 46 %, as one floor that was drawn larger.
  it('are not found in a floor that was drawn larger, whose joint is near where it was', () => {
    const larger: PlanFile['rooms'] = [
      rectangle('hall', [0, 0], [15000, 9000]),
      rectangle('store', [0, 9100], [4000, 12000]),
    ];
    const wide = { screed: { limits: { areaM2: 200, lengthM: 30, aspect: 9 } } };
    const before = hallAndStore({ ...wide, ...jointAt(6000) });
    const now = hallAndStore({ ...wide, ...jointAt(7000), rooms: larger, doorways: [] });
    expect(
      floorsInCommon(before.plan, now.plan, jointMatch(before.analysis, now.analysis, (id) => id).pairs)?.wallShare,
    ).toBeCloseTo(19.9 / 47.8, 3);
    expect(comparisonOf(before, now).caution).toBeNull();
  });

  it('are drawn inside the frame, and what lay too far off is told', () => {
    const [library, dwelling] = [paperSourceOf(demoText('2-public-library')), paperSourceOf(demoText('1-dwelling'))];
    for (const page of comparisonPages(library, dwelling)) {
      expect(textOffPage(page)).toEqual([]);
      expect(textOverText(page)).toEqual([]);
      for (const { ref, inks } of page.groups) {
        if (ref?.kind !== 'joint') continue;
        const { x, y, width, height } = page.layout.drawing;
        for (const [px, py] of inks.flatMap((ink) => (ink.ink === 'path' ? ink.lines.flat() : []))) {
          expect(px).toBeGreaterThanOrEqual(x);
          expect(px).toBeLessThanOrEqual(x + width);
          expect(py).toBeGreaterThanOrEqual(y);
          expect(py).toBeLessThanOrEqual(y + height);
        }
      }
    }
  });

  it('are not found where all joints are others and the walls stay', () => {
    const now = paperSourceOf(demoText('2-public-library'), { ruleSet: 'tile-us-exposed' });
    expect(comparisonOf(paperSourceOf(demoText('2-public-library')), now).caution).toBeNull();
  });

  it.each([...demoNames])('are the same floor as itself: %s', (name) => {
    const source = paperSourceOf(demoText(name));
    expect(comparisonOf(source, source).caution).toBeNull();
  });
});

describe('a floor that was moved on its sheet as a whole', () => {
  const wide = { screed: { limits: { areaM2: 200, lengthM: 30, aspect: 20 } } };
  /** The hall and the store with all that is drawn in them, so far from the corner of the sheet. */
  const moved = ([dx, dy]: Point, jointMm = 6000, over: Partial<PlanFile> = {}) => {
    const at = (x: number, y: number): [number, number] => [x + dx, y + dy];
    return hallAndStore({
      ...wide,
      rooms: [rectangle('hall', at(0, 0), at(12000, 5000)), rectangle('store', at(0, 5100), at(4000, 8000))],
      doorways: [{ id: 'd1', line: [at(1000, 5050), at(1900, 5050)], wallMm: 100 }],
      drawnJoints: [{ id: 'x1', line: [at(jointMm, 0), at(jointMm, 5000)] }],
      papers: { basePoints: [{ name: 'P', at: at(0, 0) }] },
      ...over,
    });
  };

  it.each([
    [[50, 0], '50 mm to the right'],
    [[-800, 300], '800 mm to the left and 300 mm down'],
    [[20_000, -10_000], '20\u00a0000 mm to the right and 10\u00a0000 mm up'],
  ] as const)('is as it was but for that, which is said: %j', (by, words) => {
    const { caution, notes, counts, joints, bays } = comparisonOf(moved([0, 0]), moved(by));
    expect(caution).toBeNull();
    expect(notes).toEqual([
      `The floor lies ${words} on its sheet, as a whole. It is compared as if it had not been moved.`,
      'There is no other difference.',
    ]);
    expect(new Set([...joints, ...bays].map(({ what }) => what))).toEqual(new Set(['same']));
    // base points that went along are where they were on site
    expect([counts.settings, counts.quantities, counts.orders, counts.findingsCame, counts.findingsWent]).toEqual([
      0, 0, 0, 0, 0,
    ]);
  });

  it('has a joint that moved by what it moved on the floor, and is drawn there', () => {
    const versions = [moved([0, 0]), moved([20_000, 0], 6300)] as const;
    const { joints } = comparisonOf(...versions);
    expect(joints.flatMap(({ movedMm }) => (movedMm > 0 ? [Math.round(movedMm)] : []))).toEqual([300]);
    const lines = comparisonDrawing(...versions).items.flatMap((item) => (item.shape === 'line' ? [item] : []));
    const at = (style: string) => lines.filter((line) => line.style === style).map(({ points }) => points[0]?.[0]);
    expect([at('revision-gone'), at('revision-moved')]).toEqual([[26_000], [26_300]]);
  });

  it('is known where every room has another id, and one way as the other', () => {
    const other = moved([700, 0], 6000, {
      rooms: [rectangle('r1', [700, 0], [12_700, 5000]), rectangle('r2', [700, 5100], [4700, 8000])],
    });
    expect(floorShift(moved([0, 0]).plan, other.plan)).toEqual([700, 0]);
    expect(floorShift(other.plan, moved([0, 0]).plan)).toEqual([-700, 0]);
  });

  it('is not one of whose rooms one was moved, nor one whose wall was', () => {
    const rooms = (right: number, storeMm: number): Partial<PlanFile> => ({
      rooms: [rectangle('hall', [0, 0], [right, 5000]), rectangle('store', [storeMm, 5100], [storeMm + 4000, 8000])],
    });
    const as = (right: number, storeMm: number) => moved([0, 0], 6000, rooms(right, storeMm)).plan;
    expect(floorShift(as(12_000, 0), as(12_000, 500))).toBeNull();
    expect(floorShift(as(12_000, 0), as(12_400, 0))).toBeNull();
  });
});

describe('storeys that are alike', () => {
  const named = (name: string, over: Partial<PlanFile> = {}) => hallAndStore({ name, ...jointAt(6000), ...over });

  it('are not suspected where a project is entered for the first time', () => {
    expect(comparisonOf(named('House'), named('House', { papers: { project: 'House 1' } })).notes).toEqual([]);
  });

  it('are told by the names of the plans, since nothing else differs', () => {
    const { notes, caution, joints } = comparisonOf(named('Ground floor'), named('First floor'));
    expect(caution).toBeNull();
    expect(new Set(joints.map(({ what }) => what))).toEqual(new Set(['same']));
    expect(notes).toEqual([
      'Both plans have the same geometry under different names: the plan is called \u201cFirst floor\u201d, before it was \u201cGround floor\u201d. Storeys that are alike look so: check that the right file was chosen.',
    ]);
    const text = comparisonText(comparisonOf(named('Ground floor'), named('First floor')), { before: 'a', now: 'b' });
    expect(text.startsWith(notes[0] ?? 'a note')).toBe(true);
  });

  it('are told by the project, on paper as well', () => {
    const of = (project: string) => named('Ground floor', { papers: { project } });
    const comparison = comparisonOf(of('House 1'), of('House 2'));
    expect(comparison.notes.join()).toContain(
      'the project is called \u201cHouse 2\u201d, before it was \u201cHouse 1\u201d',
    );
    expect(comparisonForm(comparison).blocks.slice(0, 2)).toEqual([
      { kind: 'head', text: 'Note' },
      { kind: 'text', lines: comparison.notes },
    ]);
  });

  it('are told where rooms have other names and ids and are listed the other way round', () => {
    const rooms = named('Ground floor').file.rooms.map((room) => ({
      ...room,
      id: `u${room.id}`,
      name: `Upper ${room.name}`,
    }));
    const other = named('First floor', { rooms: rooms.reverse() });
    expect(comparisonOf(named('Ground floor'), other).notes).toHaveLength(1);
  });

  it('are not thought of where the name is the same, or where a joint was moved', () => {
    expect(comparisonOf(named('Ground floor'), named('Ground floor', { screed: { thicknessMm: 70 } })).notes).toEqual(
      [],
    );
    expect(comparisonOf(named('Ground floor'), named('Ground floor, new', jointAt(6100))).notes).toEqual([]);
  });
});

describe('a version in which no room is drawn', () => {
  it('is told in plain words before all is told as new', () => {
    const { notes, joints } = comparisonOf(hallAndStore({ rooms: [], doorways: [] }), hallAndStore());
    expect(notes).toEqual(['No room is drawn in the earlier version: all is told as new.']);
    expect(new Set(joints.map(({ what }) => what))).toEqual(new Set(['appeared']));
  });
});
