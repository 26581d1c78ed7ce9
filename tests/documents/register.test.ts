import { describe, expect, it } from 'vitest';
import { registerTable } from '../../src/documents/register.ts';
import { setOutTable } from '../../src/documents/setting-out-table.ts';
import { type Cell, columnHead, type Table } from '../../src/documents/table.ts';
import type { Joint } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { analysisOf, planOf } from './fixture.ts';
import { demoText, paperSource, paperSourceOf } from './paper-fixture.ts';
import { hostileTexts } from './table-fixture.ts';

/** Two joints: J1 in the hall, J2 in the doorway to the kitchen. */
function register(file: Partial<PlanFile> = {}, plan: Partial<Plan> = {}, joint: Partial<Joint> = {}): Table {
  const analysis = analysisOf();
  const joints = analysis.joints.map((each) => ({ ...each, ...joint }));
  return registerTable(paperSource(planOf(plan), { ...analysis, joints }, file));
}

function column(table: Table, head: string): readonly Cell[] {
  const at = table.columns.map(columnHead).indexOf(head);
  expect(at, head).toBeGreaterThanOrEqual(0);
  return table.rows.map((row) => row[at] ?? null);
}

const entered = {
  key: 'J2',
  profile: 'angle',
  sealant: 'grey paste',
  colour: 'grey',
  fixing: 'glued',
  lock: 'dowels',
  pipes: 4,
  decidedBy: 'architect',
  suppliedBy: 'screeder',
  photo: '12',
} as const;

describe('the joint register', () => {
  it('has a row for every joint of the list, each leading to its joint on the drawing', () => {
    const source = paperSourceOf(demoText('2-public-library'));
    const table = registerTable(source);
    expect(column(table, 'Joint')).toEqual(source.analysis.joints.map(({ id }) => id));
    expect(table.refs).toEqual(source.analysis.joints.map(({ id }) => [{ kind: 'joint', id }]));
    expect(column(table, 'Length (m)')).toEqual(source.analysis.joints.map(({ lengthM }) => lengthM));
  });

  it('has empty columns in which site writes what is installed and checked', () => {
    const table = register();
    const hand = table.columns.flatMap(({ head, toFill }) => (toFill ? [head] : []));
    expect(hand).toEqual(['Installed', 'Checked', 'Date']);
    for (const head of hand) expect(column(table, head)).toEqual([null, null]);
  });

  it('holds what was entered of a joint, and leaves open what was not', () => {
    const table = register({ papers: { joints: [entered] } });
    expect(column(table, 'Profile')).toEqual(['', 'angle']);
    expect(column(table, 'Key or dowel against lipping')).toEqual([null, 'dowels']);
    expect(column(table, 'Fixing')).toEqual(['', 'glued']);
    expect(column(table, 'Colour')).toEqual(['', 'grey']);
    expect(column(table, 'Who decides')).toEqual(['', 'architect']);
    expect(column(table, 'Who supplies')).toEqual(['', 'screeder']);
    expect(column(table, 'Photo')).toEqual(['', '12']);
  });

  it('tells the sealant by width, depth and class', () => {
    // 8 mm wide: depth 8 / 2 = 4, at least 6 (US detailing text); it takes 25 % of its width: class 25 (ISO 11600)
    const table = register({ papers: { joints: [entered] } }, { sealant: { widthMm: 8, capability: 0.25 } });
    expect(column(table, 'Sealant')).toEqual(['8 × 6 mm, class 25', '8 × 6 mm, class 25; grey paste']);
    // 20 mm wide: depth 20 / 2 = 10; class 12.5
    const wide = register({}, { sealant: { widthMm: 20, capability: 0.125 } });
    expect(column(wide, 'Sealant')[0]).toBe('20 × 10 mm, class 12.5');
  });

  it('says where a sealant line is too narrow for the movement', () => {
    // 4 mm of movement over 30 %: 13.3 mm (worked example of a joint detailing text)
    const table = register({}, { sealant: { widthMm: 10, capability: 0.3 } }, { sealantNeedsMm: 4 / 0.3 });
    expect(column(table, 'Sealant')[0]).toBe('10 × 6 mm, class 30; too narrow: needs 13.3 mm');
  });

  it('never says that a width needs what it has', () => {
    // 2.0075 mm of movement over 25 % is 8.03 mm, which reads as 8.0 to a tenth and is wider than 8 all the same
    const table = register({}, { sealant: { widthMm: 8, capability: 0.25 } }, { sealantNeedsMm: 2.0075 / 0.25 });
    expect(column(table, 'Sealant')[0]).toBe('8 × 6 mm, class 25; too narrow: needs 8.03 mm');
  });

  it('asks for no sealant where neither stone nor ceramic comes up to the joint', () => {
    const rooms = planOf().rooms.map((room) => ({ ...room, covering: 'timber' as const }));
    expect(column(register({}, { rooms }), 'Sealant')[0]).toBe('none: no stone or ceramic beside it');
  });

  it('counts a sleeve for each pipe that was entered, and says where it assumes the usual pair', () => {
    const table = register({ papers: { joints: [entered] } });
    // supply and return of one circuit: two (EN 1264-4 lets only these cross)
    expect(column(table, 'Openings for sleeves')).toEqual([2, 4]);
    expect(column(table, 'Openings are')).toEqual(['assumed', 'entered']);
    const more = register({ order: { sleevesPerJoint: 6 } });
    expect(column(more, 'Openings for sleeves')).toEqual([6, 6]);
    // EN 1264-4: at least 300 mm
    expect(more.notes.join('\n')).toContain('at least 300 mm');
  });

  it('assumes no pipes where a side is not heated', () => {
    const rooms = planOf().rooms.map((room) => (room.name === 'Kitchen' ? { ...room, heated: false } : room));
    const table = register({}, { rooms });
    expect(column(table, 'Openings for sleeves')).toEqual([2, 0]);
    expect(column(table, 'Openings are')[1]).toMatch(/^none/u);
    // where no joint has any, nothing is asked of pipes
    const cold = planOf().rooms.map((room) => ({ ...room, heated: false }));
    expect(register({}, { rooms: cold }).notes.join('\n')).not.toMatch(/pipe|circuit/u);
  });

  it('takes each joint down to the insulation, and to the slab where there is none', () => {
    const buildUp = { insulationMm: 0, adhesiveMm: 5, coveringMm: 10 };
    expect(column(register(), 'Down to')).toEqual(['the insulation', 'the insulation']);
    expect(column(register(), 'Full depth (mm)')).toEqual([65, 65]);
    const bare = planOf().rooms.map((room) => ({ ...room, buildUp }));
    expect(column(register({}, { rooms: bare }), 'Down to')).toEqual(['the slab', 'the slab']);
    const half = planOf().rooms.map((room) => (room.name === 'Kitchen' ? { ...room, buildUp } : room));
    expect(column(register({}, { rooms: half }), 'Down to')).toEqual([
      'the insulation',
      'the insulation, and the slab where it is bare',
    ]);
  });

  it('carries a joint of the building through all layers, without sealant, never shifted, pipes by the engineer', () => {
    const table = register({ papers: { joints: [entered] } }, {}, { kind: 'structural', profileMm: 30 });
    expect(column(table, 'Width (mm)')).toEqual([30, 30]);
    expect(column(table, 'Profile')).toEqual(['for movement in three directions', 'angle']);
    expect(column(table, 'Sealant')).toEqual(['none', 'none; entered all the same: grey paste']);
    expect(column(table, 'Down to')[0]).toMatch(/^through all layers/u);
    expect(column(table, 'Position from walls, square to the joint at its middle')[0]).toMatch(/never shifted$/u);
    expect(column(table, 'Openings for sleeves')).toEqual([0, 4]);
    expect(column(table, 'Openings are')[0]).toMatch(/engineer/u);
    expect(table.notes.join('\n')).toMatch(/no sealant, no shifting/u);
    expect(register().notes.join('\n')).not.toMatch(/no shifting/u);
  });

  it('gives the ends of each joint as they are set out: as far from the first base point as they are on the plan', () => {
    const [first] = analysisOf().joints;
    const line = first?.line ?? [];
    const [[x, y] = [0, 0]] = line;
    const one = [x - 1500, y + 300] as const;
    // askew to the joint
    const basePoints = [
      { name: 'P', at: one },
      { name: 'Q', at: [x + 9000, y - 4000] as const },
    ];
    const table = register({ papers: { basePoints } });
    const told = column(table, 'Ends as set out: x, y (mm)')[0];
    const away = String(told)
      .split(' to ')
      .map((end) => Math.hypot(...end.split(', ').map(Number)));
    const truly = [line[0], line.at(-1)].map(([ex, ey] = [0, 0]) => Math.hypot(ex - one[0], ey - one[1]));
    expect(away).toHaveLength(2);
    for (const [i, mm] of away.sort((a, b) => a - b).entries())
      expect(Math.abs(mm - (truly.sort((a, b) => a - b)[i] ?? 0))).toBeLessThan(1);
    expect(table.notes.join('\n')).toContain('x along the line from P to Q');
    expect(column(table, 'Set out from')[0]).toMatch(/^Base point P, x along the line from P to Q, y square to it/u);
    expect(register().columns.map(columnHead).join()).not.toMatch(/as set out/u);
  });

  it('gives the same ends as the list of setting out, from points and from grid lines askew', () => {
    const askew = { basePoints: [{ at: [300, 200] as const }, { at: [12_000, 9000] as const }] };
    const gridLines = [
      { name: 'A', from: [0, 0] as const, to: [9000, 1000] as const },
      { name: '1', from: [0, 0] as const, to: [-1000, 9000] as const },
    ];
    for (const papers of [askew, { gridLines }]) {
      const file = { ...JSON.parse(demoText('1-dwelling')), papers };
      const source = paperSourceOf(JSON.stringify(file));
      const [ends, setOut] = [registerTable(source), setOutTable(source)];
      const places = ['Near end x', 'Near end y', 'Far end x', 'Far end y'].map((head) =>
        column(setOut, `${head} (mm)`),
      );
      expect(column(ends, 'Ends as set out: x, y (mm)')).toEqual(
        places[0]?.map((_, i) => {
          const [x1, y1, x2, y2] = places.map((cells) => cells[i]);
          return `${x1}, ${y1} to ${x2}, ${y2}`;
        }),
      );
    }
  });

  it('loses nothing that was entered for a joint that has gone', () => {
    const table = register({ papers: { joints: [{ ...entered, key: 'field:hall@1,6' }, { key: 'bare' }] } });
    expect(table.notes).toContain(
      'Entered for a joint that is no longer there: a joint of a room that is gone near 1, 6 m: profile angle, sealant grey paste, colour grey, fixing glued, against lipping dowels, pipes 4, decided by architect, supplied by screeder, photo 12.',
    );
    expect(table.notes).toContain('Entered for a joint that is no longer there: a joint known as bare.');
    expect(register().notes.join()).not.toMatch(/no longer/u);
    expect(column(table, 'Joint').slice(2)).toEqual(['gone', 'gone']);
    expect(column(table, 'Kind').slice(2)).toEqual(['no such joint now', 'no such joint now']);
    expect(column(table, 'Why')[2]).toMatch(
      /^Entered for a joint of a room that is gone near 1, 6 m: profile angle, sealant grey paste, .*photo 12\.$/u,
    );
  });

  it('takes two entries of one joint together, the later before the earlier', () => {
    const joints = [
      { ...entered, colour: 'grey', photo: '12' },
      { key: entered.key, colour: 'black' },
    ];
    const table = register({ papers: { joints } });
    expect(column(table, 'Colour')[1]).toBe('black');
    expect(column(table, 'Photo')[1]).toBe('12');
  });

  it('keeps hostile words on one line', () => {
    for (const [text] of hostileTexts) {
      const entry = { ...entered, profile: text, fixing: text, photo: text };
      const { rows, notes } = register({ papers: { joints: [entry, { ...entry, key: `gone ${text}` }] } });
      const texts = [...rows.flat(), ...notes].filter((cell) => typeof cell === 'string');
      expect(texts.filter((cell) => /[\p{Cc}\u202a-\u202e]/u.test(cell))).toEqual([]);
    }
  });
});
