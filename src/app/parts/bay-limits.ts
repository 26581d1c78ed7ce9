import { regionArea } from '../../geometry/region.ts';
import type { Bay } from '../../plan/analysis.ts';
import { limitExceeded } from '../../plan/exceed.ts';
import type { BayLimits, Plan } from '../../plan/plan.ts';
import { area, figure, length, limitFigure } from './format.ts';

/** A figure of a bay and what it is held to, in words. */
export interface HeldFigure {
  readonly name: 'Area' | 'Length' | 'Length to width';
  readonly value: string;
  /** Infinity where there is no limit; null where this bay is not held to one. */
  readonly limit: number | null;
  readonly unit: string;
  readonly over: boolean;
}

/** A bay across rooms takes the strictest limit among them. */
export function bayLimit(bay: Bay, plan: Plan, key: keyof Omit<BayLimits, 'rectangleMayPass'>): number {
  return Math.min(...plan.rooms.filter(({ id }) => bay.rooms.includes(id)).map(({ limits }) => limits[key]));
}

/** Floor that the limit of area holds on: without that of doorways, m2. */
export function bayMeasuredM2({ measured, holes }: Bay): number {
  return regionArea({ outline: measured, holes }) / 1e6;
}

/** Area, length and proportion of a bay against its limits. Where a true rectangle may pass them, the bay is not over. */
export function bayHeldFigures(bay: Bay, plan: Plan): readonly HeldFigure[] {
  const over = (value: number, limit: number) => !bay.within && limitExceeded(value, limit);
  const [areaM2, lengthM, aspect] = [
    bayLimit(bay, plan, 'areaM2'),
    bayLimit(bay, plan, 'lengthM'),
    bayLimit(bay, plan, 'aspect'),
  ];
  const isHeld = bay.lengthM > bayLimit(bay, plan, 'aspectFromM');
  return [
    {
      name: 'Area',
      value: area(bayMeasuredM2(bay)),
      limit: areaM2,
      unit: ' m²',
      over: over(bayMeasuredM2(bay), areaM2),
    },
    { name: 'Length', value: length(bay.lengthM), limit: lengthM, unit: ' m', over: over(bay.lengthM, lengthM) },
    {
      name: 'Length to width',
      value: `${figure(bay.aspect, 2)} : 1`,
      limit: isHeld ? aspect : null,
      unit: ' : 1',
      over: isHeld && over(bay.aspect, aspect),
    },
  ];
}

/** "at most 40 m²", "no limit", "not held at this length". */
export function heldWords({ limit, unit }: Pick<HeldFigure, 'limit' | 'unit'>): string {
  if (limit === null) return 'not held at this length';
  return Number.isFinite(limit) ? `at most ${limitFigure(limit)}${unit}` : 'no limit';
}
