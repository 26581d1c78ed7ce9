import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';
import { type Analysis, type Bay, type Joint, untiledJoint } from '../../src/plan/analysis.ts';
import { planJson } from '../floors/plan-json.ts';
import { planOf } from '../floors/read.ts';
import { analysisFaults } from '../oracle/check-analysis.ts';
import { neckFaults } from '../oracle/check-necks.ts';
import { tongueFaults } from '../oracle/check-tongues.ts';
import { ringWithoutNotches } from '../oracle/measures.ts';
import { createScene } from '../oracle/scene.ts';

/** The checker itself: a right answer written by hand passes, and each way of spoiling it is told. */

const plan = planOf(
  planJson(
    'Hand',
    [
      {
        id: 'r1',
        name: 'Hall',
        outline: [
          [0, 0],
          [9000, 0],
          [9000, 6000],
          [0, 6000],
        ],
      },
    ],
    {
      temperatures: { layingC: 15, highestC: 45, lowestC: 15 },
      screed: { class: 'CT-C25-F4', thicknessMm: 65, expansionPerK: 12e-6 },
      sealant: { widthMm: 8, capability: 0.25 },
      jointProfile: { widthMm: 10, usableTravel: 0.5 },
      edgeStrip: { thicknessMm: 10, usableTravel: 0.5 },
    },
  ),
);

function bay(id: string, x: number): Bay {
  const outline = [
    [x, 0],
    [x + 4500, 0],
    [x + 4500, 6000],
    [x, 6000],
  ] as const;
  return {
    id,
    key: id,
    rooms: ['r1'],
    outline,
    measured: outline,
    holes: [],
    areaM2: 27,
    lengthM: 6,
    widthM: 4.5,
    aspect: 1.333,
    perimeterM: 21,
    stillPoint: [x + 2250, 3000],
    floors: [{ room: 'r1', areaM2: 27, bareM2: 0 }],
    bareM2: 0,
    within: true,
  };
}

// Half of 4.5 m: 2250 x 12e-6 x 30 K = 0.81 mm to each side; half of 6 m along it: 3000 x 12e-6 x 30 K = 1.08 mm.
const joint: Joint = {
  id: 'J1',
  key: 'J1',
  kind: 'field',
  sources: [],
  line: [
    [4500, 0],
    [4500, 6000],
  ],
  run: 'R1',
  lengthM: 6,
  bays: ['B1', 'B2'],
  reasons: ['side of 9.0 m is over 8 m'],
  closingMm: 1.62,
  openingMm: 0,
  slidingMm: 0,
  worstClosingMm: 3.24,
  profileMm: 10,
  profileTakesMm: 5,
  sealantNeedsMm: 6.48,
  ...untiledJoint,
};

// Sealant 8 mm wide and 6 deep, the least: 6 m x 8 x 6 mm = 0.288 l. Screed 54 m2 x 65 mm = 3.51 m3, 2000 kg/m3.
const totals = {
  edgeStripM: 30,
  sealantLitres: 0.288,
  screedM3: 3.51,
  screedKg: 7020,
  insulationM2: 54,
  slabContactM2: 0,
  floorM2: 54,
};
const jointM = { doorway: 0, neck: 0, field: 6, structural: 0, zone: 0, drawn: 0 };

const right: Analysis = {
  format: 'screed-bays/analysis',
  version: 1,
  plan: 'Hand',
  bays: [bay('B1', 0), bay('B2', 4500)],
  joints: [joint],
  edges: [
    {
      id: 'E1',
      along: 'wall',
      bay: 'B1',
      room: 'r1',
      object: null,
      line: [
        [4500, 0],
        [0, 0],
        [0, 6000],
        [4500, 6000],
      ],
      lengthM: 15,
      movementMm: 1.08,
    },
    {
      id: 'E2',
      along: 'wall',
      bay: 'B2',
      room: 'r1',
      object: null,
      line: [
        [4500, 0],
        [9000, 0],
        [9000, 6000],
        [4500, 6000],
      ],
      lengthM: 15,
      movementMm: 1.08,
    },
  ],
  findings: [],
  quantities: { ...totals, jointM, rooms: [{ room: 'r1', ...totals, jointM }] },
  proof: { fieldJointM: 6, atLeastM: null },
  tiles: null,
};

const withJoint = (change: Partial<Joint>): Analysis => ({ ...right, joints: [{ ...joint, ...change }] });
const withBay = (change: Partial<Bay>): Analysis => ({
  ...right,
  bays: [{ ...bay('B1', 0), ...change }, bay('B2', 4500)],
});

describe('the checker', () => {
  it('passes a right answer worked out by hand', () => {
    expect(analysisFaults(plan, right)).toEqual([]);
  });

  it.each<[string, Analysis, string]>([
    [
      'a bay left out',
      { ...right, bays: [bay('B1', 0)], joints: [], edges: right.edges.slice(0, 1) },
      'room r1: floor 54 m2, bays 27 m2',
    ],
    ['a wrong area', withBay({ areaM2: 26 }), 'B1: area 26'],
    ['wrong sides', withBay({ widthM: 4 }), 'B1: sides'],
    [
      'a sound bay called over its limits',
      withBay({ within: false }),
      'B1 is not within its limits and no finding names it',
    ],
    ['a wrong still point', withBay({ stillPoint: [0, 0] }), 'B1: still point'],
    [
      'a corner that the neighbour lacks',
      withBay({
        outline: [
          [0, 0],
          [4500, 0],
          [4500, 3000],
          [4500, 6000],
          [0, 6000],
        ],
      }),
      'is no corner of B2',
    ],
    [
      'overlapping bays',
      withBay({
        outline: [
          [0, 0],
          [4600, 0],
          [4600, 6000],
          [0, 6000],
        ],
      }),
      'overlap',
    ],
    ['a joint left out', { ...right, joints: [] }, 'is on 0 joints'],
    ['a joint twice', { ...right, joints: [joint, { ...joint, id: 'J2', key: 'J2' }] }, 'is on 2 joints'],
    ['a wrong joint length', withJoint({ lengthM: 5 }), 'J1: length 5'],
    ['a wrong closing', withJoint({ closingMm: 1.2, sealantNeedsMm: 4.8 }), 'J1: closing 1.2'],
    ['a wrong worst case', withJoint({ worstClosingMm: 2 }), 'J1: worst closing 2'],
    ['a wrong sealant width', withJoint({ sealantNeedsMm: 5 }), 'J1: sealant needs 5'],
    ['an edge left out', { ...right, edges: right.edges.slice(0, 1) }, 'is on 0 edges'],
    [
      'a key used twice',
      { ...right, bays: [{ ...bay('B1', 0), key: 'B2' }, bay('B2', 4500)] },
      'a bay key is used twice',
    ],
    [
      'a finding about nothing',
      {
        ...right,
        findings: [{ code: 'bay-area', severity: 'fault', message: 'x', at: null, refs: ['B9'], source: 's' }],
      },
      'names B9',
    ],
    ['a number that is none', withJoint({ slidingMm: Number.NaN }), 'slidingMm is no number'],
    ['wrong litres of sealant', { ...right, quantities: { ...right.quantities, sealantLitres: 0.5 } }, 'sealantLitres'],
    ['a wrong total', { ...right, proof: { fieldJointM: 5, atLeastM: null } }, 'proof gives 5 m'],
  ])('tells %s', (_, spoiled, told) => {
    expect(analysisFaults(plan, spoiled).join('; ')).toContain(told);
  });

  it('tells a bay over a limit that is called within', () => {
    const outline = [
      [0, 0],
      [9000, 0],
      [9000, 6000],
      [0, 6000],
    ] as const;
    const whole: Analysis = {
      ...right,
      bays: [
        {
          ...bay('B1', 0),
          outline,
          measured: outline,
          areaM2: 54,
          lengthM: 9,
          widthM: 6,
          aspect: 1.5,
          perimeterM: 30,
          stillPoint: [4500, 3000],
        },
      ],
      joints: [],
      edges: right.edges.slice(0, 1),
    };
    expect(analysisFaults(plan, whole).join('; ')).toContain('breaks area, length');
  });

  it('tells a re-entrant corner that is left, by depth and by turn', () => {
    const l = [
      [0, 0],
      [4500, 0],
      [4500, 6000],
      [2000, 6000],
      [2000, 5800],
      [0, 5800],
    ] as const;
    expect(analysisFaults(plan, withBay({ outline: l, measured: l })).join('; ')).toContain('breaks reentrant');
  });

  it('tells a tongue of floor in a doorway that is left to its room', () => {
    const rooms = [
      { id: 'r1', name: 'Hall', outline: box(0, 4000) },
      { id: 'r2', name: 'Store', outline: box(4500, 8500) },
    ];
    const deep = planOf(
      planJson('Deep', rooms, {
        doorways: [
          {
            id: 'd1',
            line: [
              [4040, 1000],
              [4040, 2000],
            ],
            wallMm: 500,
            leaf: false,
          },
        ],
      }),
    );
    const tongues = (jointX: number) => {
      const hall = { ...bay('B1', 0), outline: boxWithTongue(0, 4000, 4000, jointX) };
      const store = { ...bay('B2', 0), rooms: ['r2'], outline: boxWithTongue(4500, 8500, 4500, jointX) };
      return tongueFaults(createScene(deep, { ...right, bays: [hall, store], joints: [] }));
    };
    expect(tongues(4250)).toEqual([]);
    expect(tongues(4040)).toEqual(['B2 reaches 460 mm into doorway d1']);
  });

  it('tells a bay that narrows between two wide ends, by how narrow it is and by how near the width comes', () => {
    const told = (gapMm: number, longMm: number) => {
      const [low, high] = [(4000 - gapMm) / 2, (4000 + gapMm) / 2];
      const corner = (x: number, y: number): Point => [x, y];
      const upper = [corner(0, 0), corner(4000, 0), corner(4000, low), corner(4000 + longMm, low)];
      const far = [corner(4000 + longMm, 0), corner(8000 + longMm, 0), corner(8000 + longMm, 4000)];
      const lower = [corner(4000 + longMm, 4000), corner(4000 + longMm, high), corner(4000, high), corner(4000, 4000)];
      const outline: Ring = [...upper, ...far, ...lower, corner(0, 4000)];
      const narrow = planOf(planJson('Narrow', [{ id: 'r1', name: 'Hall', outline }]));
      const whole = { ...bay('B1', 0), outline, measured: outline };
      return neckFaults(createScene(narrow, { ...right, bays: [whole], joints: [] }));
    };
    expect(told(2000, 500)).toEqual(['B1 narrows to 2000 mm and no finding says so']);
    expect(told(2500, 500)).toEqual([]);
    expect(told(2000, 3500)).toEqual([]);
  });

  it('cuts off the notch of a column and leaves the walls from column to column', () => {
    const columns = [0, 7000].flatMap((x) => [0, 4000].map((y) => square(x, y)));
    // between four columns of 600 mm, whose corners reach 300 mm into the bay
    const between = [
      [300, 0],
      [6700, 0],
      [6700, 300],
      [7000, 300],
      [7000, 3700],
      [6700, 3700],
      [6700, 4000],
      [300, 4000],
      [300, 3700],
      [0, 3700],
      [0, 300],
      [300, 300],
    ] as const;
    const corners = ['300,300', '6700,300', '6700,3700', '300,3700'];
    expect(ringWithoutNotches(between, columns).map(String)).toEqual(
      between.map(String).filter((p) => !corners.includes(p)),
    );
  });
});

/** From x0 to x1, 4 m deep. */
function box(x0: number, x1: number): Ring {
  return [
    [x0, 0],
    [x1, 0],
    [x1, 4000],
    [x0, 4000],
  ];
}

/** The same with the floor of a doorway, 1 to 2 m down one side, as far as its joint. */
function boxWithTongue(x0: number, x1: number, sideX: number, jointX: number): Ring {
  const tongue = [
    [sideX, 1000],
    [jointX, 1000],
    [jointX, 2000],
    [sideX, 2000],
  ] as const;
  const [a, b, c, d] = box(x0, x1) as [Point, Point, Point, Point];
  return sideX === x1 ? [a, b, ...tongue, c, d] : [a, b, c, d, ...[...tongue].reverse()];
}

function square(x: number, y: number): Ring {
  return [
    [x - 300, y - 300],
    [x + 300, y - 300],
    [x + 300, y + 300],
    [x - 300, y + 300],
  ];
}
