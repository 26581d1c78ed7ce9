import type { Point } from '../../src/geometry/point.ts';
import type { Region, Ring } from '../../src/geometry/ring.ts';
import type { Split, TileFieldReport } from '../../src/plan/analysis.ts';
import type { TileGrid } from '../../src/plan/plan.ts';
import { tilingOf } from '../../src/tiling/tiling.ts';
import { type Chance, createChance } from '../floors/chance.ts';
import type { Place } from '../floors/placed.ts';
import { planJson, type TilesJson } from '../floors/plan-json.ts';
import { planOf } from '../floors/read.ts';
import { rectilinearFloor } from '../floors/rectilinear.ts';
import { bayOf, edgeOf } from '../movement/grid-split.ts';
import { area } from '../oracle/planar.ts';

/** Rooms of one bay each, split by hand, so that the tests of tiling lean on nothing that splits floors. */

export interface TiledBay {
  readonly grid: TileGrid;
  readonly region: Region;
  readonly report: TileFieldReport;
}

export function tiledBay(region: Region, tiles: TilesJson): TiledBay {
  const outline = clockwise(region.outline);
  const holes = region.holes.map((hole) => [...clockwise(hole)].reverse());
  const plan = planOf(planJson('One bay', [{ id: 'r1', name: 'Room', outline, holes }], { tiles }));
  if (plan.tiles === null) throw new Error('no tiles');
  const sides = [outline, ...holes].flatMap((ring) =>
    ring.map((p, i): readonly [Point, Point] => [p, ring[(i + 1) % ring.length] as Point]),
  );
  const whole: Region = { outline, holes };
  const split: Split = {
    bays: [bayOf('B1', ['r1'], outline, holes)],
    joints: [],
    edges: sides.map((line, i) => edgeOf(`E${i}`, 'B1', 'r1', line)),
    pieces: [{ bay: 'B1', room: 'r1', areaM2: area([whole]) / 1e6, regions: [whole] }],
  };
  const report = tilingOf(plan, split).tiles?.fields[0];
  if (report === undefined) throw new Error('no field of tiles');
  return { grid: plan.tiles, region: whole, report };
}

/** As bays come: outer rings clockwise on the sheet, holes against it. */
function clockwise(ring: Ring): Ring {
  const twice = ring.reduce((sum, [x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length] as Point;
    return sum + (x - (ring[0] as Point)[0]) * (v - y) - (u - x) * (y - (ring[0] as Point)[1]);
  }, 0);
  return twice > 0 ? ring : [...ring].reverse();
}

/** A room of 4 to 12 corners, every other with a core; its corners shaken where `skew`, so that no wall is square to another. */
export function anyRoom(seed: number, { skew }: { readonly skew: boolean }): Region {
  const wish = { seed, leastMm: 2500, mostMm: 6000, corners: 4 + 2 * (seed % 5), core: seed % 2 === 0, stepMm: 10 };
  const { outline, holes } = rectilinearFloor(wish);
  const chance = createChance(seed + 5000);
  const shake: Place = ([x, y]) =>
    skew ? [x + chance.whole(-900, 900) / 10, y + chance.whole(-900, 900) / 10] : [x, y];
  return { outline: outline.map(shake), holes: holes.map((hole) => hole.map(shake)) };
}

export const bonds = ['straight', 'half', 'third', 'offset', 'herringbone'] as const;

export function anyTiles(chance: Chance, bond: (typeof bonds)[number], angleDeg: number): TilesJson {
  const lengthMm = chance.pick([600, 300, 450, 800, 333.3]);
  return {
    lengthMm,
    widthMm: chance.pick([lengthMm, 300, 150, 597]),
    groutMm: chance.pick([0, 2, 3, 5, 10]),
    origin: [chance.whole(-9000, 9000) / 10, chance.whole(-9000, 9000) / 10],
    angleDeg,
    bond,
    ...(bond === 'offset' ? { offsetMm: chance.pick([50, 100, 250.5, 700]) } : {}),
  };
}
