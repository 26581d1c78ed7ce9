import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { type Agreement, agreementsOf } from '../../src/analysis/agreement.ts';
import { mainDirections } from '../../src/bays/frame.ts';
import { floorSplit } from '../../src/bays/split.ts';
import { floorPlanOf } from '../../src/floor/floor.ts';
import type { Split } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { planRead } from '../../src/plan/read.ts';
import { planResolve } from '../../src/plan/resolve.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { tilingOf } from '../../src/tiling/tiling.ts';

/** How well joints and tiles are brought together on the demos and, where their folder is beside the project, on real floors; and how long the tiles
 *  of a floor take. */

export interface TilesRow {
  readonly name: string;
  readonly tile: string;
  readonly ways: readonly Agreement[];
  /** All fields laid anew on the floor as split, median. */
  readonly layMs: number;
  readonly waysMs: number;
}

const root = new URL('../../', import.meta.url);
const realPlans = new URL('../shared/real-plans/', root);

export function tilesRows(): readonly TilesRow[] {
  const demos = readdirSync(new URL('demo-plans/', root)).map((name) => new URL(`demo-plans/${name}`, root));
  const real = existsSync(realPlans)
    ? readdirSync(realPlans).flatMap((name) => (name.endsWith('.json') ? [new URL(name, realPlans)] : []))
    : [];
  return [
    ...demos.map((file) => tilesRow(file, null)),
    ...real.flatMap((file) => [600, 300].map((side) => tilesRow(file, side))),
  ];
}

/** @param side of the square tiles that a plan without any is given, along its main walls, mm */
function tilesRow(file: URL, side: number | null): TilesRow {
  const reading = planRead(readFileSync(file, 'utf8'));
  if (reading.kind !== 'plan') throw new Error(`${file} is no plan`);
  const plan = planResolve(side === null ? reading.file : tiled(reading.file, side));
  const split = splitOf(plan);
  const times = Array.from({ length: 15 }, () => timed(() => tilingOf(plan, split))).sort((a, b) => a - b);
  let ways: readonly Agreement[] = [];
  const waysMs = timed(() => {
    ways = agreementsOf(plan) ?? [];
  });
  const { lengthMm, widthMm, groutMm } = plan.tiles ?? { lengthMm: 0, widthMm: 0, groutMm: 0 };
  return {
    name: basename(file.pathname, '.json'),
    tile: `${lengthMm} x ${widthMm} + ${groutMm}`,
    ways,
    layMs: times[Math.floor(times.length / 2)] ?? 0,
    waysMs,
  };
}

function tiled(file: PlanFile, side: number): PlanFile {
  const [angle = 0] = mainDirections(file.rooms.map(({ outline }) => ({ outline, holes: [] })));
  return { ...file, tiles: { lengthMm: side, widthMm: side, groutMm: 3, angleDeg: (angle * 180) / Math.PI } };
}

function splitOf(plan: Plan): Split {
  const options = { known: new Map(), onProgress: () => {}, cancelled: () => false };
  const report = floorSplit(plan, floorPlanOf(plan), options);
  if (report === null) throw new Error('the split was given up, though nobody asked for that');
  return report.split;
}

function timed(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}
