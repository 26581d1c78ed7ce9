import { regionArea } from '../geometry/region.ts';
import type { Part } from './part.ts';

/** How much search the layout of one part may take, counted in steps so that the same part gets the same layout on any machine. A step is
 *  about half a microsecond of work. An outline of thousands of corners that turn in would take minutes without an end to it. */
export class Budget {
  constructor(private left: number) {}

  spend(steps: number): void {
    this.left -= steps;
  }

  get isSpent(): boolean {
    return this.left <= 0;
  }
}

/** Steps for a part: what about four seconds hold, twenty times what the largest demo takes and a little more than the largest part of the real
 *  floors (403 corners, 18 cores), and more for halls of many bays; bays of less than a square metre are a slip of the pen and get no more. */
export function budgetOf(part: Part): Budget {
  const steps = STEPS_LEAST + STEPS_PER_BAY * Math.min(baysLeast(part), regionArea(part.region) / 1e6);
  return new Budget(part.grout === null ? steps : steps * MORE_FOR_GROUT);
}

/** How many bays a part takes at the least, by area and side. */
export function baysLeast({ region, limits: { areaM2, lengthM } }: Part): number {
  return Math.ceil(regionArea(region) / 1e6 / Math.min(areaM2, lengthM ** 2));
}

const STEPS_LEAST = 8e6;
const STEPS_PER_BAY = 1500;
const MORE_FOR_GROUT = 1.5;
