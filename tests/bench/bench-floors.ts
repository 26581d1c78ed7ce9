import { type LimitsJson, type PlanJson, planJson } from '../floors/plan-json.ts';
import { type RectilinearFloor, rectilinearFloor } from '../floors/rectilinear.ts';

/** The random floors of the bench: three sets of limits, on floors of a few bays and of many, without and with a core, 4 to 16 corners. */

export interface LimitSet {
  readonly name: string;
  readonly limits: LimitsJson;
  /** The first of its seeds. */
  readonly seed: number;
  /** Of every so many floors that are asked for this set has one: proofs of large floors take long. */
  readonly every: number;
  /** Sides of the block that the floor is carved from. */
  readonly leastMm: number;
  readonly mostMm: number;
}

const usual = { areaM2: 40, lengthM: 8, aspect: 2, aspectFromM: 5 };
const tight = { areaM2: 25, lengthM: 6, aspect: 1.5, aspectFromM: 5 };
const wide = { areaM2: 100, lengthM: 12, aspect: 2, aspectFromM: 5 };

export const limitSets: readonly LimitSet[] = [
  { name: '40/8/2', limits: usual, seed: 1000, every: 1, leastMm: 7000, mostMm: 13_000 },
  { name: '25/6/1.5', limits: tight, seed: 2000, every: 1, leastMm: 5500, mostMm: 10_500 },
  { name: '100/12/2', limits: wide, seed: 3000, every: 1, leastMm: 9000, mostMm: 16_000 },
  { name: '40/8/2 large', limits: usual, seed: 90_000, every: 3, leastMm: 13_000, mostMm: 24_000 },
  { name: '25/6/1.5 large', limits: tight, seed: 91_000, every: 3, leastMm: 10_500, mostMm: 19_000 },
  { name: '100/12/2 large', limits: wide, seed: 92_000, every: 3, leastMm: 16_000, mostMm: 26_000 },
];

export interface BenchFloor {
  readonly key: string;
  readonly set: LimitSet;
  readonly core: boolean;
  readonly floor: RectilinearFloor;
}

export function benchFloors(count: number): BenchFloor[] {
  return limitSets.flatMap((set) =>
    [false, true].flatMap((core) =>
      Array.from({ length: Math.ceil(count / set.every) }, (_, i): BenchFloor => {
        const seed = set.seed + (core ? 500 : 0) + i;
        const corners = 4 + 2 * (i % 7);
        const stepMm = i % 3 === 0 ? 10 : 100;
        const floor = rectilinearFloor({ seed, leastMm: set.leastMm, mostMm: set.mostMm, corners, core, stepMm });
        return { key: `${set.name} ${core ? 'core' : 'plain'} ${seed}`, set, core, floor };
      }),
    ),
  );
}

/** @param raise share by which every limit is raised, 0 for none */
export function benchPlan({ key, set, floor }: BenchFloor, raise: number): PlanJson {
  const { areaM2, lengthM, aspect, aspectFromM = 5 } = set.limits;
  const more = 1 + raise;
  const limits = {
    areaM2: areaM2 * more,
    lengthM: lengthM * more,
    aspect: aspect * more,
    aspectFromM: aspectFromM * more,
  };
  return planJson(key, [{ id: 'r1', name: 'Floor', outline: floor.outline, holes: floor.holes }], {
    screed: { limits },
    layout: { reentrantMm: 50, columnMm: 50, neckRatio: 0 },
  });
}
