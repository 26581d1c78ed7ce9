import type { Point } from '../../src/geometry/point.ts';
import { type Chance, createChance } from './chance.ts';
import { box, type PlanJson, planJson, type RoomJson } from './plan-json.ts';

/** Random storeys: a block parted into rooms by walls, doors in the walls, and things that stand on the floor. */

interface Cell {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly depth: number;
}

export interface StoreyWish {
  readonly seed: number;
  readonly rooms: number;
  /** Columns, joinery, zones, drawn joints and the rest. */
  readonly objects: boolean;
}

const wallMm = 120;
const step = 10;

export function storeyPlan({ seed, rooms, objects }: StoreyWish): PlanJson {
  const chance = createChance(seed);
  const side = Math.sqrt(rooms * 22e6);
  const cells = parted(
    { x: 0, y: 0, width: rounded(side * chance.number(0.9, 1.3)), depth: rounded(side) },
    rooms,
    chance,
  );
  const plan = planJson(
    `storey ${seed}`,
    cells.map((cell, i) => roomOf(cell, i, chance, objects)),
    {
      doorways: doorways(cells, chance),
      temperatures: { layingC: chance.whole(10, 20), highestC: chance.whole(35, 55), lowestC: chance.whole(5, 15) },
    },
  );
  return objects ? { ...plan, ...furnished(cells, chance) } : plan;
}

function rounded(mm: number): number {
  return Math.round(mm / step) * step;
}

/** The largest cell is cut across its longer side until there are enough. */
function parted(whole: Cell, count: number, chance: Chance): Cell[] {
  const cells = [whole];
  while (cells.length < count) {
    cells.sort((a, b) => b.width * b.depth - a.width * a.depth);
    const cell = cells.shift();
    if (cell === undefined) break;
    const share = chance.number(0.35, 0.65);
    if (cell.width > cell.depth) {
      const width = rounded((cell.width - wallMm) * share);
      cells.push({ ...cell, width }, { ...cell, x: cell.x + width + wallMm, width: cell.width - width - wallMm });
    } else {
      const depth = rounded((cell.depth - wallMm) * share);
      cells.push({ ...cell, depth }, { ...cell, y: cell.y + depth + wallMm, depth: cell.depth - depth - wallMm });
    }
  }
  return cells;
}

function roomOf({ x, y, width, depth }: Cell, i: number, chance: Chance, objects: boolean): RoomJson {
  const niche = chance.yes(0.3) && width > 2500;
  const outline: Point[] = niche
    ? [
        [x, y],
        [x + width, y],
        [x + width, y + depth],
        [x + 1500, y + depth],
        [x + 1500, y + depth - 400],
        [x + 900, y + depth - 400],
        [x + 900, y + depth],
        [x, y + depth],
      ]
    : [...box(x, y, width, depth)];
  const room = { id: `r${i}`, name: `Room ${i}`, outline: chance.yes(0.5) ? outline : outline.reverse() };
  if (!objects) return room;
  return { ...room, heated: chance.yes(0.9), zone: chance.pick(['A', 'B']) };
}

/** A door in most walls that are long enough for one. */
function doorways(cells: readonly Cell[], chance: Chance): NonNullable<PlanJson['doorways']> {
  const lines = cells.flatMap((a) =>
    cells.flatMap((b): (readonly [Point, Point])[] => {
      if (b.x === a.x + a.width + wallMm) {
        const low = Math.max(a.y, b.y);
        const room = Math.min(a.y + a.depth, b.y + b.depth) - low;
        if (room < 1300) return [];
        const y = low + rounded(chance.number(100, room - 1100));
        const x = a.x + a.width + chance.pick([20, wallMm / 2, wallMm - 10]);
        return [
          [
            [x, y],
            [x, y + 900],
          ],
        ];
      }
      if (b.y !== a.y + a.depth + wallMm) return [];
      const low = Math.max(a.x, b.x);
      const room = Math.min(a.x + a.width, b.x + b.width) - low;
      if (room < 1300) return [];
      const x = low + rounded(chance.number(100, room - 1100));
      const y = a.y + a.depth + wallMm / 2;
      return [
        [
          [x, y],
          [x + 900, y],
        ],
      ];
    }),
  );
  return lines.filter(() => chance.yes(0.8)).map((line, i) => ({ id: `d${i}`, line, wallMm, leaf: chance.yes(0.7) }));
}

function furnished(cells: readonly Cell[], chance: Chance): Partial<PlanJson> {
  const big = cells.filter((c) => c.width > 3500 && c.depth > 3500);
  const placed = (width: number, depth: number, margin: number) => {
    const cell = chance.pick(big);
    const x = cell.x + rounded(chance.number(margin, Math.max(margin, cell.width - width - margin)));
    const y = cell.y + rounded(chance.number(margin, Math.max(margin, cell.depth - depth - margin)));
    return box(x, y, width, depth);
  };
  const some = <T>(share: number, make: () => T): T[] => (big.length > 0 && chance.yes(share) ? [make()] : []);
  return {
    columns: [
      ...some(0.5, () => ({ id: 'c0', outline: placed(500, 500, 700) })),
      ...some(0.5, () => ({ id: 'c1', outline: placed(300, 300, 700) })),
    ],
    pipes: some(0.5, () => ({ id: 'p0', centre: placed(1, 1, 300)[0] ?? [0, 0], diameterMm: 110 })),
    joinery: [
      ...some(0.4, () => ({
        id: 'j0',
        name: 'Island',
        outline: placed(2000, 900, 800),
        under: chance.pick(['insulated', 'no-insulation'] as const),
        fixedThrough: chance.yes(0.3),
      })),
      ...some(0.2, () => ({
        id: 'j1',
        name: 'Oven',
        outline: placed(900, 700, 700),
        under: 'built-off-slab' as const,
        fixedThrough: false,
      })),
    ],
    slabContacts: some(0.2, () => ({ id: 'k0', outline: placed(600, 600, 200) })),
    sunZones: some(0.3, () => ({ id: 'u0', outline: placed(1500, 2500, 100), highestC: 55 })),
    drawnJoints: some(0.3, () => across(chance.pick(big), 'x0', chance)),
    noJoint: some(0.3, () => across(chance.pick(big), 'n0', chance)),
    keepClear: some(0.3, () => ({ id: 'q0', outline: placed(1800, 1800, 200) })),
  };
}

/** A line from wall to wall. */
function across({ x, y, width, depth }: Cell, id: string, chance: Chance) {
  const at = y + rounded(depth * chance.number(0.3, 0.7));
  return {
    id,
    line: [
      [x, at],
      [x + width, at],
    ] as const,
  };
}
