import { describe, expect, it } from 'vitest';
import { createAnalyser } from '../../src/analysis/analyser.ts';
import { floorPlanOf } from '../../src/floor/floor.ts';
import type { Point } from '../../src/geometry/point.ts';
import { box, planJson } from '../floors/plan-json.ts';
import { planOf } from '../floors/read.ts';

/** Two rooms with a wall of 120 mm and a doorway between them; the hall has a shaft. */
const rooms = [
  { id: 'r1', name: 'Hall', outline: box(0, 0, 6000, 4000), holes: [box(1000, 1000, 800, 800)] },
  { id: 'r2', name: 'Store', outline: box(0, 4120, 6000, 2000) },
];
const doorways = [
  {
    id: 'd1',
    line: [
      [4000, 4060],
      [5000, 4060],
    ],
    wallMm: 120,
    leaf: true,
  },
];

function planWith(rest: object) {
  return planOf({ ...planJson('Test', rooms), doorways, ...rest });
}

/** Ids of what is said to be off the floor, but for columns. */
function offFloor(rest: object): string[] {
  return floorPlanOf(planWith(rest)).findings.flatMap((finding) =>
    finding.code === 'object-off-floor' ? [`${finding.what} ${finding.id} at ${finding.at}`] : [],
  );
}

/** One of each thing that lies on floor, on the same place. */
const eachOn = (outline: readonly Point[]) => ({
  joinery: [{ id: 'j1', name: 'Bar', outline }],
  slabContacts: [{ id: 'k1', outline }],
  sunZones: [{ id: 'u1', outline, highestC: 50 }],
  keepClear: [{ id: 'q1', outline }],
});

const stairOn = (outline: readonly Point[]) => ({
  joinery: [{ id: 'j2', name: 'Stair', outline, under: 'built-off-slab' }],
});

const allAt = (at: string) => [
  `joinery Bar at ${at}`,
  `slab contact k1 at ${at}`,
  `sun zone u1 at ${at}`,
  `keep-clear area q1 at ${at}`,
];

describe('things that lie off the floor are named with their place', () => {
  it.each<[string, readonly Point[], string]>([
    ['beside the building', box(7000, 0, 1000, 1000), '7500,500'],
    ['against the outside of a wall', box(6000, 0, 1000, 1000), '6500,500'],
    ['in the wall between two rooms, beside the doorway', box(1000, 4000, 1000, 120), '1500,4060'],
    ['in a shaft', box(1000, 1000, 800, 800), '1400,1400'],
  ])('%s', (_, outline, at) => {
    expect(offFloor(eachOn(outline))).toEqual(allAt(at));
    expect(offFloor(stairOn(outline))).toEqual([`joinery Stair at ${at}`]);
  });

  it('pipes beside the floor or in a shaft', () => {
    const pipe = (id: string, centre: Point) => ({ id, centre, diameterMm: 100 });
    const pipes = [pipe('p1', [-300, 500]), pipe('p2', [1400, 1400]), pipe('p3', [3000, 500]), pipe('p4', [0, 500])];
    expect(offFloor({ pipes })).toEqual(['pipe p1 at -300,500', 'pipe p2 at 1400,1400']);
  });

  it('joints that were taken away where no floor is', () => {
    const line = (id: string, y: number) => ({
      id,
      line: [
        [0, y],
        [6000, y],
      ],
    });
    expect(offFloor({ noJoint: [line('n1', 2000), line('n2', 9000)] })).toEqual(['taken-away joint n2 at 3000,9000']);
  });
});

describe('things that touch floor are not said to be off it', () => {
  it.each<[string, readonly Point[]]>([
    ['inside a room', box(3000, 1000, 1000, 1000)],
    ['against the inside of a wall', box(5000, 0, 1000, 1000)],
    ['half outside', box(5500, 0, 1000, 1000)],
    ['with every corner outside, across the building', box(-500, 500, 7000, 200)],
    ['round the whole building', box(-500, -500, 7000, 8000)],
    ['as large as a room', box(0, 4120, 6000, 2000)],
    ['in the opening of a doorway', box(4000, 4000, 1000, 120)],
  ])('%s', (_, outline) => {
    expect(offFloor(eachOn(outline))).toEqual([]);
    expect(offFloor(stairOn(outline))).toEqual([]);
  });

  it('a pipe of 10 mm', () => {
    expect(offFloor({ pipes: [{ id: 'p1', centre: [3000, 500], diameterMm: 10 }] })).toEqual([]);
  });

  it('what lies on a column does', () => {
    const on = { columns: [{ id: 'c1', outline: box(3000, 1000, 400, 400) }] };
    expect(offFloor({ ...on, slabContacts: [{ id: 'k1', outline: box(3100, 1100, 200, 200) }] })).toEqual([
      'slab contact k1 at 3200,1200',
    ]);
  });
});

describe('a sun zone hotter than the screed takes', () => {
  const codes = (outline: readonly Point[]) => {
    const analysis = createAnalyser().analyse(planWith({ sunZones: [{ id: 'u1', outline, highestC: 70 }] }));
    return analysis?.findings.map(({ code }) => code);
  };

  it('warns of the screed where it lies over floor', () => {
    expect(codes(box(3000, 0, 1000, 1000))).toContain('screed-hot');
    expect(codes(box(3000, 0, 1000, 1000))).not.toContain('object-off-floor');
  });

  it('does not where it lies on the terrace', () => {
    expect(codes(box(7000, 0, 1000, 1000))).toContain('object-off-floor');
    expect(codes(box(7000, 0, 1000, 1000))).not.toContain('screed-hot');
  });
});

it('a sun zone that follows a curved wall of twenty thousand points lies on floor', () => {
  const outline = Array.from({ length: 20_000 }, (_, i): Point => {
    const turn = (i / 20_000) * 2 * Math.PI;
    return [40_000 * Math.cos(turn), 40_000 * Math.sin(turn)];
  });
  const hall = { id: 'r1', name: 'Hall', outline };
  const plan = planOf({ ...planJson('Round', [hall]), sunZones: [{ id: 'u1', outline, highestC: 50 }] });
  expect([...floorPlanOf(plan).offFloor]).toEqual([]);
});

it('a thousand rooms with a thing in each and one beside each are told apart', () => {
  const places = Array.from({ length: 1000 }, (_, i): Point => [(i % 40) * 5000, Math.floor(i / 40) * 5000]);
  const plan = planOf({
    ...planJson(
      'Many',
      places.map(([x, y], i) => ({ id: `r${i}`, name: `R${i}`, outline: box(x, y, 4000, 4000) })),
    ),
    slabContacts: places.map(([x, y], i) => ({ id: `k${i}`, outline: box(x + 100, y + 100, 500, 500) })),
    keepClear: places.map(([x, y], i) => ({ id: `q${i}`, outline: box(x + 4100, y + 100, 500, 500) })),
  });
  const { offFloor: off } = floorPlanOf(plan);
  expect(off.size).toBe(1000);
});
