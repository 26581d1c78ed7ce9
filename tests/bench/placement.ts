import { analysed, freeJointM } from '../contract/analysed.ts';
import { createChance } from '../floors/chance.ts';
import { mirrored, moved, type Place, planPlaced, shaken, turned } from '../floors/placed.ts';
import type { PlanJson } from '../floors/plan-json.ts';
import { benchFloors, benchPlan } from './bench-floors.ts';

/** Change of joint length where the same floor lies elsewhere or its corners are shaken. */

export interface PlacementRow {
  readonly name: string;
  readonly runs: number;
  readonly mean: number;
  readonly worst: number;
  readonly worstFloor: string;
  readonly limit: number;
  readonly overLimit: number;
}

export function placementRows(count: number): PlacementRow[] {
  return [
    placementRow('turned by any angle', 0.005, count, 0, (seed) => turned(createChance(seed).number(0, 360))),
    placementRow('mirrored', 0.005, count, 0, () => mirrored),
    placementRow('moved', 0.005, count, 0, (seed) => moved(1234.5 * seed, -777.7 * seed)),
  ];
}

export function shakenRows(count: number): PlacementRow[] {
  return [placementRow('corners shaken by up to 5 mm', 0.03, count, 0.01, (seed) => shaken(5, createChance(seed)))];
}

function placementRow(
  name: string,
  limit: number,
  count: number,
  raise: number,
  placeOf: (seed: number) => Place,
): PlacementRow {
  const changes = benchFloors(count).map((bench, i) => {
    const plan = benchPlan(bench, raise);
    return { key: bench.key, change: changeOf(plan, planPlaced(plan, placeOf(i + 1))) };
  });
  const worst = changes.reduce((w, c) => (c.change > w.change ? c : w), { key: '-', change: 0 });
  return {
    name,
    runs: changes.length,
    mean: changes.reduce((sum, c) => sum + c.change, 0) / changes.length,
    worst: worst.change,
    worstFloor: worst.key,
    limit,
    overLimit: changes.filter((c) => c.change >= limit).length,
  };
}

function changeOf(one: PlanJson, two: PlanJson): number {
  const here = freeJointM(analysed(one).analysis);
  const there = freeJointM(analysed(two).analysis);
  if (here === 0) return there === 0 ? 0 : Number.POSITIVE_INFINITY;
  return Math.abs(there - here) / here;
}
