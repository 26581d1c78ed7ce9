import { describe, expect, it } from 'vitest';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import { setOutTable } from '../../src/documents/setting-out-table.ts';
import { settingOutFacts } from '../../src/documents/setting-out-words.ts';
import type { Point } from '../../src/geometry/point.ts';
import { analysisOf, bay, box, joint, planOf, room } from './fixture.ts';
import { paperSource } from './paper-fixture.ts';
import { basePapers, floorSource, hallSource, handSource, rowOf, withPapers } from './setting-out-fixture.ts';

describe('a joint in the middle of a hall of 9 x 6 m', () => {
  it('stands at 4500 from a base point in the corner, and its far end lies 7500 straight from there', () => {
    const table = setOutTable(
      hallSource(
        basePapers([
          [0, 6000],
          [9000, 6000],
        ]),
      ),
    );
    // by hand: half of 9 m; 4.5 and 6 m are 3 : 4, so straight across are 7.5 m
    expect(table.rows).toHaveLength(1);
    expect(rowOf(table, 0)).toMatchObject({
      Joint: 'J1',
      From: 'Base point 1',
      Lies: 'at one x',
      'Running x': 4500,
      'Running y': null,
      'Near end x': 4500,
      'Near end y': 0,
      'Far end x': 4500,
      'Far end y': 6000,
      Length: 6000,
      'Check: origin to far end': 7500,
      'Tolerance \u00b1': 5,
    });
    expect(table.notes).toContain('Check: base point 1 to 2, 9000 mm.');
    expect(table.notes).toContain('Check: base point 1 to the upper end of J1, 7500 mm.');
    expect(table.notes).toContain('Check: base point 2 to the upper end of J1, 7500 mm.');
  });

  it('has the figures of 3 : 4 : 5 from base points that lie askew', () => {
    const table = setOutTable(
      hallSource(
        basePapers([
          [0, 0],
          [3000, 4000],
        ]),
      ),
    );
    // by hand: the line runs 0.6 across and 0.8 down; [4500, 0] lies 0.6 x 4500 = 2700 along it and 0.8 x 4500 = 3600 beside it, [4500, 6000] lies
    // 2700 + 0.8 x 6000 = 7500 along it and on it
    expect(rowOf(table, 0)).toMatchObject({
      Lies: 'askew, by its ends',
      'Running x': null,
      'Running y': null,
      'Near end x': 2700,
      'Near end y': 3600,
      'Far end x': 7500,
      'Far end y': 0,
      'Check: origin to far end': 7500,
    });
  });

  it('is measured from grid lines where no base points are marked', () => {
    const gridLines: NonNullable<Parameters<typeof hallSource>[0]>['gridLines'] = [
      { name: 'A', from: [1000, -2000], to: [1000, 8000] },
      { name: '1', from: [-2000, 7000], to: [11_000, 7000] },
    ];
    const table = setOutTable(hallSource({ gridLines }));
    // by hand: 4500 - 1000 from A; its ends at 7000 - 6000 and 7000 from 1
    expect(rowOf(table, 0)).toMatchObject({
      From: 'Grid lines 1 and A',
      'Running x': 3500,
      'Near end y': 1000,
      'Far end y': 7000,
    });
    expect(table.notes.join(' ')).toContain('x along 1 from A to the right, y square to it upwards on the plan');
  });

  it('counts x to the right and y down the plan where grid lines go through the floor, and says so', () => {
    const gridLines: NonNullable<Parameters<typeof hallSource>[0]>['gridLines'] = [
      { name: 'A', from: [8000, -1000], to: [8000, 7000] },
      { name: '1', from: [10_000, 5000], to: [-1000, 5000] },
    ];
    const table = setOutTable(hallSource({ gridLines }));
    expect(table.notes.join(' ')).toContain('x along 1 from A to the right, y square to it downwards on the plan');
    // by hand: 4500 - 8000 from A; its ends 6000 - 5000 below 1 and 5000 above it
    expect(rowOf(table, 0)).toMatchObject({ 'Running x': -3500, 'Near end y': 1000, 'Far end y': -5000 });
    const alone = setOutTable(hallSource({ gridLines: gridLines.slice(1) }));
    expect(rowOf(alone, 0).From).toBe('Grid line 1, its right end');
    expect(alone.notes.join(' ')).toContain('x along 1 to the left, y square to it downwards on the plan');
  });

  it('is set out from the first grid line alone where the next is not square to it, and the papers say so', () => {
    const gridLines: NonNullable<Parameters<typeof hallSource>[0]>['gridLines'] = [
      { name: 'A', from: [-500, 0], to: [-2500, 9000] },
      { name: '1', from: [-500, -700], to: [12_000, -700] },
      { name: 'B', from: [500, 0], to: [-1500, 9000] },
    ];
    const source = hallSource({ gridLines });
    // B runs along with A and is no fault
    const words = 'Grid line 1 is not square to A: joints are set out from A alone';
    expect(settingOutFacts(source)).toContainEqual(['Caution', words]);
    expect(settingOutFacts(source)).toContainEqual(['Origin', 'Grid line A, its upper end']);
    expect(setOutTable(source).notes).toContain(`${words}.`);
  });

  it('is measured from the walls of the room where nothing is marked, and the list says so', () => {
    const table = setOutTable(hallSource());
    expect(rowOf(table, 0)['Running x']).toBe(4500);
    expect(rowOf(table, 0).From).toMatch(/^Hall, (upper|lower) wall from its left end$/u);
    expect(table.notes).toEqual(
      expect.arrayContaining(['Measured from finished walls as drawn, plaster on.', 'The plan has no base points.']),
    );
  });

  it('is nearer to the face of the edge strip by its thickness', () => {
    const strip = { edgeStrip: { thicknessMm: 8 } };
    const table = setOutTable(hallSource({ face: 'strip' }, strip));
    // by hand: 4500 - 8; the strip stands before the side wall and before the wall at the end of the joint
    expect(rowOf(table, 0)).toMatchObject({ 'Running x': 4492, 'Near end y': -8, 'Far end y': 5992 });
    expect(table.notes.join(' ')).toContain('face of the edge strip, 8 mm in front of the finished wall');
    // a list goes by itself, without what is said above it
    const measured = table.columns.findIndex(({ head }) => head === 'Measured from');
    expect(table.rows.map((cells) => cells[measured])).toEqual(table.rows.map(() => 'face of the edge strip'));
  });

  it('is told from the finished wall where the bare structure is asked for, with the plaster to be added', () => {
    const table = setOutTable(hallSource({ face: 'structure' }));
    expect(rowOf(table, 0)['Running x']).toBe(4500);
    expect(table.notes.join(' ')).toContain('from the bare structure, add the plaster');
  });
});

it('the strip of the sheet says from where, from which face, how exactly and what to check', () => {
  const base = basePapers([
    [0, 6000],
    [9000, 6000],
  ]);
  const told = (source: PaperSource) =>
    settingOutFacts(source).map(([head, text]) => `${head}: ${text}`.replaceAll('\u00a0', ' '));
  expect(told(hallSource(base))).toEqual([
    'Origin: Base point 1',
    'x and y: x along the line from 1 to 2, y square to it to the left, seen from 1',
    'Measured from: marked points and lines: no dimension depends on plaster or edge strip',
    'Tolerance: \u00b15 mm',
    'Check: base point 1 to 2, 9000 mm',
    'Check: base point 1 to the upper end of J1, 7500 mm',
    'Check: base point 2 to the upper end of J1, 7500 mm',
  ]);
  expect(told(withPapers(floorSource('1-dwelling'), {}))).toContain(
    'Origin: in each room, where its dimensions have their 0',
  );
  expect(told(hallSource({}, { rooms: [] }))).toEqual([]);
});

describe('a joint drawn by hand', () => {
  const base: readonly Point[] = [
    [0, 6000],
    [9000, 6000],
  ];

  it('that runs askew is set out by both ends', () => {
    const table = setOutTable(
      handSource(
        [
          [
            [3000, 0],
            [6000, 6000],
          ],
        ],
        basePapers(base),
      ),
    );
    // by hand: y counts up from the lower wall; hypot(3000, 6000) = 6708.2
    expect(rowOf(table, 0)).toMatchObject({
      Lies: 'askew, by its ends',
      'Near end x': 6000,
      'Near end y': 0,
      'Far end x': 3000,
      'Far end y': 6000,
      'Check: origin to far end': 6708,
    });
    // a wall is met from its middle, square to it, and the list of every joint says so at its head
    expect(table.columns.map(({ head }) => head)).toContain('From finished walls, square to the joint at its middle');
  });

  it('that bends is set out by its ends and each bend', () => {
    const table = setOutTable(
      handSource(
        [
          [
            [3000, 6000],
            [3000, 4000],
            [5000, 2500],
            [5000, 0],
          ],
        ],
        basePapers(base),
      ),
    );
    expect(rowOf(table, 0)).toMatchObject({
      Lies: 'bent, by ends and bends',
      'Near end x': 3000,
      'Near end y': 0,
      Bends: 'x 3000 y 2000, x 5000 y 3500',
      'Far end x': 5000,
      'Far end y': 6000,
    });
  });

  it('has a row that asks for base points where the floor has no straight wall', () => {
    const source = handSource([
      [
        [4500, 0],
        [4500, 6000],
      ],
    ]);
    const table = setOutTable(source);
    expect(table.rows).toHaveLength(1);
    expect(rowOf(table, 0)['Running x']).toBeNull();
    const caution = 'Room Hall has no straight wall to measure from: mark two base points and enter them in the plan';
    expect(table.notes).toContain(`${caution}.`);
    expect(settingOutFacts(source)).toEqual([['Caution', caution]]);
  });

  it.each([
    [
      'that lie at one place',
      [
        [500, 0],
        [500, 0],
      ],
      'The base points lie at one place: set out from the walls',
    ],
    ['of which there is only one', [[500, 0]], 'There is one base point only: set out from the walls'],
  ] as const)('is set out from the walls by base points %s, and the papers say so', (_how, points, words) => {
    const source = hallSource(basePapers(points));
    const table = setOutTable(source);
    expect(rowOf(table, 0).From).toMatch(/^Hall, /u);
    expect(table.notes).toContain(`${words}.`);
    expect(table.notes).not.toContain('The plan has no base points.');
    expect(settingOutFacts(source)).toContainEqual(['Caution', words]);
  });
});

it('says whose wall a round room is set out from', () => {
  const round = box(9200, 0, 6000, 6000);
  const plan = planOf({ rooms: [room('r1', 'Hall', box(0, 0, 9000, 6000)), room('r2', 'Round', round)], doorways: [] });
  const bays = [bay('B1', ['r1'], box(0, 0, 9000, 6000), 9, 6), bay('B2', ['r2'], round, 6, 6)];
  const line = [
    [12_200, 0],
    [12_200, 6000],
  ] as const;
  // of the round room no edge is straight: the one wall of the floor is that of the hall
  const wall = {
    id: 'E1',
    object: null,
    movementMm: 0,
    lengthM: 9,
    along: 'wall' as const,
    room: 'r1',
    bay: 'B1',
    line: [
      [0, 0],
      [9000, 0],
    ] as const,
  };
  const joints = [joint('J1', 'drawn', line, ['B2', 'B2'])];
  const source = paperSource(plan, analysisOf({ bays, joints, edges: [wall] }), { papers: {} });
  const words =
    'Room Round has no straight wall to measure from and is set out from Hall, upper wall from its left end: mark two base points and enter them in the plan';
  // by hand: 12 200 from the left end of the wall
  expect(rowOf(setOutTable(source), 0)['Running x']).toBe(12_200);
  expect(settingOutFacts(source)).toContainEqual(['Caution', words]);
  expect(setOutTable(source).notes).toContain(`${words}.`);
  // with a joint of the store in its own frame, the place of each 0 is told and whose wall the round room goes by
  const store = box(0, 7000, 9000, 6000);
  const several = paperSource(
    planOf({ rooms: [...plan.rooms, room('r3', 'Store', store)], doorways: [] }),
    analysisOf({
      bays: [...bays, bay('B3', ['r3'], store, 9, 6)],
      joints: [
        ...joints,
        joint(
          'J2',
          'drawn',
          [
            [4500, 7000],
            [4500, 13_000],
          ],
          ['B3', 'B3'],
        ),
      ],
      edges: [
        wall,
        {
          ...wall,
          id: 'E2',
          room: 'r3',
          bay: 'B3',
          line: [
            [0, 7000],
            [9000, 7000],
          ],
        },
      ],
    }),
    { papers: {} },
  );
  expect(settingOutFacts(several)).toContainEqual([
    'Origin',
    'in each room, where its dimensions have their 0; Round is set out from Hall, upper wall from its left end',
  ]);
});

it('names the first rooms without a straight wall and counts the others', () => {
  const ids = ['One', 'Two', 'Three', 'Four', 'Five'];
  const floor = (at: number) => box(9000 * at, 0, 9000, 6000);
  const plan = planOf({ rooms: ids.map((id, i) => room(id, id, floor(i))), doorways: [] });
  const bays = ids.map((id, i) => bay(`B${i}`, [id], floor(i), 6, 9));
  const joints = ids.map((_, i) =>
    joint(
      `J${i}`,
      'drawn',
      [
        [9000 * i + 4500, 0],
        [9000 * i + 4500, 6000],
      ],
      [`B${i}`, `B${i}`],
    ),
  );
  const source = paperSource(plan, analysisOf({ bays, joints, edges: [] }), { papers: {} });
  expect(setOutTable(source).notes).toContain(
    'Rooms One, Two, Three and 2 more have no straight wall to measure from: mark two base points and enter them in the plan.',
  );
});

it('tells where a base point lies that is too far off to be drawn, with its x and y', () => {
  const source = hallSource({
    basePoints: [
      { name: 'A', at: [0, 6000] },
      { name: 'B', at: [259_000, 6000] },
    ],
    gridLines: [{ name: 'Z', from: [90_000, 0], to: [90_000, 6000] }],
  });
  const told = settingOutFacts(source).map(([head, text]) => `${head}: ${text}`.replaceAll('\u00a0', ' '));
  // by hand: the hall ends 9 m to the right of its left wall, 259 m less 9 m; x runs from A to B, the lower wall
  expect(told).toContain('Caution: Base point B lies 250 m to the right, off this sheet: x 259 000, y 0');
  expect(told).toContain('Caution: Grid line Z lies off this sheet');
  expect(told.join(' ')).not.toContain('Base point A lies');
  const table = setOutTable(source);
  expect(rowOf(table, 0)).toMatchObject({ From: 'Base point A', 'Running x': 4500 });
  expect(table.notes.join(' ')).toContain('Base point B lies 250 m to the right, off this sheet');
});

it('a wall that ends at an opening is measured from its jamb, which the list calls by its name', () => {
  const plan = planOf({ rooms: [room('r1', 'Hall', box(0, 0, 9000, 6000))], doorways: [] });
  const halls = ['B1', 'B2'].map((id, i) => bay(id, ['r1'], box(0, 3000 * i, 9000, 3000), 9, 3));
  // the right wall begins 975 mm below the corner: above it is an opening
  const wall = {
    id: 'E1',
    object: null,
    movementMm: 0,
    lengthM: 5.025,
    along: 'wall' as const,
    room: 'r1',
    bay: 'B2',
    line: [
      [9000, 975],
      [9000, 6000],
    ] as const,
  };
  const joints = [
    joint(
      'J1',
      'drawn',
      [
        [0, 3000],
        [9000, 3000],
      ],
      ['B1', 'B2'],
    ),
  ];
  const source = paperSource(plan, analysisOf({ bays: halls, joints, edges: [wall] }), { papers: {} });
  // by hand: from the jamb at 975 to the joint at 3000
  expect(rowOf(setOutTable(source), 0)).toMatchObject({
    From: 'Hall, right wall from its upper jamb',
    'Running x': 2025,
  });
});
