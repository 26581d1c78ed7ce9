import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import { movementOf } from '../../src/movement/movement.ts';
import type { JointMovement, Split } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { bayOf, edgeOf, gridSplit, jointOf, type PlanFields, planOf, rectangle } from './grid-split.ts';

function hall(width: number, height: number, fields: PlanFields = {}): Plan {
  return planOf({
    screed: { expansionPerK: 12e-6 },
    temperatures: { layingC: 15, highestC: 40, lowestC: 15 },
    rooms: [{ id: 'r1', name: 'Hall', outline: rectangle(0, 0, width, height) }],
    ...fields,
  });
}

function jointIn(plan: Plan, split: Split, id = 'J1'): JointMovement {
  const joint = movementOf(plan, split).joints.get(id);
  if (joint === undefined) throw new Error(`no joint ${id}`);
  return joint;
}

const twoBays = gridSplit([0, 8000, 16000], [0, 5000], () => 'r1');

describe('the joint between two free bays of 8 x 5 m at 25 K', () => {
  // by hand: 12e-6 * 25 K * 4 m = 1.2 mm from each side; all of 8 m from each side 2 * 2.4 mm
  const joint = jointIn(hall(16000, 5000), twoBays);

  it('closes by half the growth of each', () => expect(joint.closingMm).toBeCloseTo(2.4, 9));
  it('closes by all the growth of each where both are stopped at the far side', () =>
    expect(joint.worstClosingMm).toBeCloseTo(4.8, 9));
  it('does not slide, for both bays grow alike along it', () => expect(joint.slidingMm).toBeCloseTo(0, 9));
  it('does not open as long as nothing cools or shrinks', () => expect(joint.openingMm).toBe(0));
});

describe('the joint between a free bay and one that is held', () => {
  it('closes by the growth from the held place', () => {
    // the left bay held 1 m from its left end: 7 m of it come to the joint, and 4 m of the other; 11 m * 0.3e-3 = 3.3 mm
    const plan = hall(16000, 5000, { slabContacts: [{ id: 'k1', outline: rectangle(500, 2000, 1000, 1000) }] });
    const joint = jointIn(plan, twoBays);
    expect(joint.closingMm).toBeCloseTo(3.3, 9);
    expect(joint.slidingMm).toBeCloseTo(0, 9);
  });

  it('slides where the held place is off the middle', () => {
    // held 500 mm below the upper side, 2 m above the middle: the two bays differ by 2 m * 0.3e-3 = 0.6 mm all along the joint
    const plan = hall(16000, 5000, { slabContacts: [{ id: 'k1', outline: rectangle(3500, 0, 1000, 1000) }] });
    expect(jointIn(plan, twoBays).slidingMm).toBeCloseTo(0.6, 9);
  });
});

describe('bays of different length along a joint', () => {
  it('slide past each other most at the end of the joint', () => {
    // 5 m and 9 m high, joint over the 5 m: at its lower end the runs along it are 2.5 m and 0.5 m: 2 m * 0.3e-3 = 0.6 mm
    const split: Split = {
      bays: [bayOf('B1', ['r1'], rectangle(0, 0, 8000, 5000)), bayOf('B2', ['r1'], rectangle(8000, 0, 8000, 9000))],
      joints: [
        jointOf(
          'J1',
          ['B1', 'B2'],
          [
            [8000, 0],
            [8000, 5000],
          ],
        ),
      ],
      edges: [],
      pieces: [],
    };
    expect(jointIn(hall(16000, 9000), split).slidingMm).toBeCloseTo(0.6, 9);
  });
});

describe('a joint that bends', () => {
  it('is judged square to each of its stretches', () => {
    // a corner of 3 x 3 m is taken out of 8 x 8 m: bay B2 is the corner, at the lower right
    const corner: Point[] = [
      [5000, 8000],
      [5000, 5000],
      [8000, 5000],
    ];
    const rest = [
      [0, 0],
      [8000, 0],
      [8000, 5000],
      [5000, 5000],
      [5000, 8000],
      [0, 8000],
    ] as const;
    const split: Split = {
      bays: [bayOf('B1', ['r1'], rest), bayOf('B2', ['r1'], rectangle(5000, 5000, 3000, 3000))],
      joints: [jointOf('J1', ['B1', 'B2'], corner)],
      edges: [],
      pieces: [],
    };
    const joint = jointIn(hall(8000, 8000), split);
    // centroid of the L by hand: (64 * 4 - 9 * 6.5) / 55 = 3.5909 m; runs 5 - 3.5909 and 1.5 m, both stretches alike
    expect(joint.closingMm).toBeCloseTo((5000 - (64 * 4000 - 9 * 6500) / 55 + 1500) * 0.3e-3, 9);
    // stopped at the far sides: 5 m of the L and 3 m of the corner come to it
    expect(joint.worstClosingMm).toBeCloseTo(8000 * 0.3e-3, 9);
  });
});

describe('cooling, shrinkage and swelling', () => {
  it('open a joint by the way that both bays draw back', () => {
    // 10 K of cooling and 0.5 mm/m over 4 m from each side: 2 * 4 * (0.12 + 0.5) = 4.96 mm
    const plan = hall(16000, 5000, {
      screed: { expansionPerK: 12e-6, shrinkageMmPerM: 0.5 },
      temperatures: { layingC: 15, highestC: 40, lowestC: 5 },
    });
    const joint = jointIn(plan, twoBays);
    expect(joint.openingMm).toBeCloseTo(4.96, 9);
    expect(joint.closingMm).toBeCloseTo(2.4, 9);
  });

  it('swelling adds to the closing and not to the opening', () => {
    // 0.2 mm/m over 4 m from each side: 1.6 mm more
    const joint = jointIn(hall(16000, 5000, { screed: { expansionPerK: 12e-6, swellingMmPerM: 0.2 } }), twoBays);
    expect(joint.closingMm).toBeCloseTo(2.4 + 1.6, 9);
    expect(joint.openingMm).toBe(0);
  });
});

describe('the temperature that a bay is taken at', () => {
  const rooms = (second: object) => [
    { id: 'r1', name: 'Hall', outline: rectangle(0, 0, 8000, 5000) },
    { id: 'r2', name: 'Study', outline: rectangle(8000, 0, 8000, 5000), ...second },
  ];
  const split = gridSplit([0, 8000, 16000], [0, 5000], (column) => (column === 0 ? 'r1' : 'r2'));
  const closing = (fields: PlanFields) => jointIn(hall(16000, 5000, fields), split).closingMm;

  it('is the room’s own where it has one', () => {
    // 25 K in the hall, 10 K in the study: 4 m * 12e-6 * 35 K
    expect(closing({ rooms: rooms({ temperatures: { highestC: 25 } }) })).toBeCloseTo(4000 * 12e-6 * 35, 9);
  });

  it('is the sun’s where that is higher', () => {
    const sunZones = [{ id: 'u1', outline: rectangle(15000, 0, 2000, 5000), highestC: 55 }];
    // 25 K in the hall, 40 K in the study
    expect(closing({ rooms: rooms({}), sunZones })).toBeCloseTo(4000 * 12e-6 * 65, 9);
  });

  it('is not the sun’s where the sun ends at the joint', () => {
    const sunZones = [{ id: 'u1', outline: rectangle(16000, 0, 2000, 5000), highestC: 55 }];
    expect(closing({ rooms: rooms({}), sunZones })).toBeCloseTo(2.4, 9);
  });

  it('is the plan’s in an unheated room too, unless the room says otherwise', () => {
    expect(closing({ rooms: rooms({ heated: false }) })).toBeCloseTo(2.4, 9);
    expect(closing({ rooms: rooms({ heated: false, temperatures: { highestC: 15 } }) })).toBeCloseTo(1.2, 9);
  });

  it('is that of the room which warms most from its own laying, where a bay lies in several', () => {
    const open: Split = {
      ...twoBays,
      bays: twoBays.bays.map((bay) => ({ ...bay, rooms: ['r1', 'r2'] })),
    };
    // 25 K in the hall; the study, laid at 10 C, warms by 28 K and is never as hot as the hall
    const plan = hall(16000, 5000, { rooms: rooms({ temperatures: { layingC: 10, highestC: 38 } }) });
    expect(jointIn(plan, open).closingMm).toBeCloseTo(8000 * 12e-6 * 28, 9);
  });
});

describe('the edge strip', () => {
  it('takes all the growth of a bay that is held at its far side', () => {
    // 5 mm of strip travel serve 16.7 m held at one end at 12e-6 and 25 K (trade facts, section 6, derived)
    const plan = hall(16700, 4000, { slabContacts: [{ id: 'k1', outline: rectangle(0, 0, 100, 4000) }] });
    const right = movementOf(
      plan,
      gridSplit([0, 16700], [0, 4000], () => 'r1'),
    ).edges.get('E2');
    expect(right).toBeCloseTo((16700 - 50) * 12e-6 * 25, 9);
  });

  it('takes the movement of the bay towards a pipe as well', () => {
    const pipe: Point[] = [
      [7000, 2400],
      [7200, 2400],
      [7200, 2600],
      [7000, 2600],
      [7000, 2400],
    ];
    const split: Split = {
      bays: [bayOf('B1', ['r1'], rectangle(0, 0, 8000, 5000), [pipe.slice(0, 4)])],
      joints: [],
      edges: [{ ...edgeOf('E1', 'B1', 'r1', pipe), along: 'pipe', object: 'p1' }],
      pieces: [],
    };
    const { edges, stillPoints } = movementOf(hall(8000, 5000), split);
    const [x] = stillPoints.get('B1') ?? [Number.NaN];
    // out of the bay is into the pipe: the near side of the pipe lies 7000 mm from the left end
    expect(edges.get('E1')).toBeCloseTo((7000 - x) * 12e-6 * 25, 9);
    // the hole of 200 x 200 mm moves the centroid by 0.04 * 3.1 m / 39.96
    expect(x).toBeCloseTo((40 * 4000 - 0.04 * 7100) / 39.96, 6);
  });
});
