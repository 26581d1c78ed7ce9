import { type LimitsJson, type PlanJson, planJson } from '../floors/plan-json.ts';
import { type RectilinearFloor, rectilinearFloor } from '../floors/rectilinear.ts';

/** The random floors of the bench: three sets of limits, without and with a core, 4 to 16 corners. */

export interface LimitSet {
  readonly name: string;
  readonly limits: LimitsJson;
  /** Sides of the block that the floor is carved from: a few bays each, and within reach of a proof. */
  readonly leastMm: number;
  readonly mostMm: number;
}

export const limitSets: readonly LimitSet[] = [
  { name: '40/8/2', limits: { areaM2: 40, lengthM: 8, aspect: 2, aspectFromM: 5 }, leastMm: 7000, mostMm: 13000 },
  { name: '25/6/1.5', limits: { areaM2: 25, lengthM: 6, aspect: 1.5, aspectFromM: 5 }, leastMm: 5500, mostMm: 10500 },
  { name: '100/12/2', limits: { areaM2: 100, lengthM: 12, aspect: 2, aspectFromM: 5 }, leastMm: 9000, mostMm: 16000 },
];

export interface BenchFloor {
  readonly key: string;
  readonly set: LimitSet;
  readonly core: boolean;
  readonly floor: RectilinearFloor;
}

export function benchFloors(count: number): BenchFloor[] {
  return limitSets.flatMap((set, s) =>
    [false, true].flatMap((core) =>
      Array.from({ length: count }, (_, i): BenchFloor => {
        const seed = 1000 * (s + 1) + (core ? 500 : 0) + i;
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
