import type { Point } from '../../src/geometry/point.ts';
import { createChance } from './chance.ts';
import { box, type PlanJson, planJson } from './plan-json.ts';

/** What real drawings bring and no one would draw on purpose. */
export function nastyPlans(): PlanJson[] {
  const room = (outline: readonly Point[], holes: readonly (readonly Point[])[] = []) => [
    { id: 'r1', name: '', outline, holes },
  ];
  const first = { id: 'r1', name: 'Same', outline: box(0, 0, 4000, 4000) };
  const second = (outline: readonly Point[]) => ({ id: 'r2', name: 'Same', outline });
  const two = [first, second(box(4100, 0, 4000, 4000))];
  const door = (id: string, a: Point, b: Point, wallMm = 100) => ({ id, line: [a, b] as const, wallMm, leaf: true });
  return [
    planJson('no rooms', []),
    planJson(
      'bow tie',
      room([
        [0, 0],
        [6000, 4000],
        [6000, 0],
        [0, 4000],
      ]),
    ),
    planJson('outline run twice', room([...box(0, 0, 5000, 4000), ...box(0, 0, 5000, 4000)])),
    planJson('sliver of 2 mm', room(box(0, 0, 9000, 2))),
    planJson('sliver of 200 mm', room(box(0, 0, 9000, 200))),
    planJson(
      'no area',
      room([
        [0, 0],
        [4000, 0],
        [8000, 0],
      ]),
    ),
    planJson(
      'corners run twice',
      room([
        [0, 0],
        [0, 0],
        [9000, 0],
        [9000, 0.4],
        [9000, 6000],
        [4000, 6000],
        [4000, 6000],
        [0, 6000],
      ]),
    ),
    planJson(
      'spike',
      room([
        [0, 0],
        [9000, 0],
        [9000, 3000],
        [12000, 3000],
        [9000, 3000],
        [9000, 6000],
        [0, 6000],
      ]),
    ),
    planJson('a thousand edges', room(arc(4000, 1000))),
    planJson('arc of 300 points', room([...arc(5000, 600).slice(0, 301), [-5000, -4000], [5000, -4000]])),
    planJson(
      'nearly square',
      room([
        [0, 0],
        [9000, 12],
        [8991, 6020],
        [-14, 5994],
      ]),
    ),
    planJson('hole over the wall', room(box(0, 0, 9000, 6000), [box(8000, 2000, 2000, 1000)])),
    planJson('hole on the wall', room(box(0, 0, 9000, 6000), [box(8000, 2000, 1000, 1000)])),
    planJson('hole as large as the room', room(box(0, 0, 5000, 4000), [box(0, 0, 5000, 4000)])),
    planJson('hole twice', room(box(0, 0, 9000, 6000), [box(3000, 2000, 1000, 1000), box(3000, 2000, 1000, 1000)])),
    planJson(
      'pinched',
      room([
        [0, 0],
        [4000, 0],
        [4000, 4000],
        [8000, 4000],
        [8000, 8000],
        [4000, 8000],
        [4000, 4000],
        [0, 4000],
      ]),
    ),
    planJson('the same room twice', [first, second(box(0, 0, 4000, 4000))]),
    planJson('room in a room', [...two, { id: 'r3', name: 'In', outline: box(1000, 1000, 1000, 1000) }]),
    planJson('rooms overlap by 3 mm', [first, second(box(3997, 500, 4000, 3000))]),
    planJson('walls of nothing', [first, second(box(4000, 1000, 4000, 2000))]),
    planJson('walls of 0.3 mm', [first, second(box(4000.3, 1000, 4000, 2000))]),
    planJson('doors that fail', two, {
      doorways: [
        door('d1', [4050, 1000], [4050, 1000]),
        door('d2', [20000, 0], [20000, 900]),
        door('d3', [-50, 1000], [-50, 1900]),
        door('d4', [4050, -450], [4050, 450]),
        door('d5', [4050, 2000], [4050, 2900]),
        door('d6', [4050, 2300], [4050, 3200]),
        door('d7', [2000, 1000], [2000, 1900]),
        door('d8', [3000, 3000], [5000, 3400]),
        door('d9', [4050, -2000], [4050, 8000]),
        door('d10', [4050, 500], [4050, 620], 0),
      ],
    }),
    planJson('things off the floor', two, {
      columns: [
        { id: 'c1', outline: box(-300, 1000, 600, 600) },
        { id: 'c2', outline: box(9000, 9000, 600, 600) },
        { id: 'c3', outline: box(3900, 2000, 600, 600) },
        { id: 'c4', outline: box(0, 0, 500, 500) },
        { id: 'c5', outline: box(1000, 0, 500, 500) },
        { id: 'c6', outline: box(1000, 0, 500, 500) },
        { id: 'c7', outline: box(1400, 300, 500, 500) },
        { id: 'c8', outline: box(4100, 0, 4000, 4000) },
      ],
      pipes: [
        { id: 'p1', centre: [4000, 3000], diameterMm: 110 },
        { id: 'p2', centre: [1200, 500], diameterMm: 0.5 },
      ],
      joinery: [
        {
          id: 'j1',
          name: '',
          outline: [
            [500, 2000],
            [1500, 3000],
            [1500, 2000],
            [500, 3000],
          ],
          under: 'no-insulation',
          fixedThrough: true,
        },
      ],
      drawnJoints: [
        {
          id: 'x1',
          line: [
            [0, 2000],
            [0, 2000],
          ],
        },
        {
          id: 'x2',
          line: [
            [-5000, 1500],
            [20000, 1500],
          ],
        },
        {
          id: 'x3',
          line: [
            [0, 0],
            [4000, 0],
          ],
        },
        {
          id: 'x4',
          line: [
            [50, 3000],
            [3950, 3000.2],
          ],
        },
        {
          id: 'x5',
          line: [
            [0, 3000],
            [4000, 3000],
          ],
        },
      ],
      structuralJoints: [
        {
          id: 's1',
          line: [
            [2000, -500],
            [2000, 4500],
          ],
          widthMm: 20,
        },
        {
          id: 's2',
          line: [
            [2000.4, -500],
            [2000.4, 4500],
          ],
          widthMm: 30,
        },
      ],
      noJoint: [
        {
          id: 'n1',
          line: [
            [2000, 0],
            [2000, 4000],
          ],
        },
      ],
      keepClear: [
        {
          id: 'q1',
          outline: [
            [0, 0],
            [4000, 4000],
            [4000, 0],
            [0, 4000],
          ],
        },
      ],
      sunZones: [{ id: 'u1', outline: box(-9000, -9000, 30000, 30000), highestC: 60 }],
      slabContacts: [{ id: 'k1', outline: box(3900, 3900, 400, 400) }],
    }),
    planJson(
      'far from the origin',
      room([
        [6000000, -6000000],
        [6009000, -6000000],
        [6009000, -5994000],
        [6000000, -5994000],
      ]),
    ),
    planJson('a whole kilometre', room(box(0, 0, 1000000, 3000))),
    planJson('comb', room(comb(20))),
    planJson('limits nothing keeps', room(box(0, 0, 9000, 300)), {
      screed: { limits: { areaM2: 1, lengthM: 1, aspect: 1, aspectFromM: 0 } },
    }),
    shreddedPlan(7),
  ];
}

function arc(radius: number, count: number): Point[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    return [Math.round(radius * Math.cos(angle) * 10) / 10, Math.round(radius * Math.sin(angle) * 10) / 10] as const;
  });
}

function comb(teeth: number): Point[] {
  const top = Array.from({ length: teeth }, (_, i): Point[] => {
    const x = i * 1000;
    return [
      [x, 0],
      [x, -3000],
      [x + 500, -3000],
      [x + 500, 0],
    ];
  }).flat();
  return [...top, [teeth * 1000, 0], [teeth * 1000, 4000], [0, 4000]];
}

/** Corners thrown anywhere: crosses itself many times. */
function shreddedPlan(seed: number): PlanJson {
  const chance = createChance(seed);
  const outline = Array.from({ length: 25 }, (): Point => [chance.whole(0, 9000), chance.whole(0, 9000)]);
  return planJson('shredded', [{ id: 'r1', name: 'shredded', outline }]);
}
