import type { Point } from '../../geometry/point.ts';
import { bayBody } from '../../movement/bay-body.ts';
import { bayStrain, bayTemperatures, planClimate } from '../../movement/bay-strain.ts';
import { bayOutward } from '../../movement/outward.ts';
import type { Bay } from '../../plan/analysis.ts';
import { expansionFigure, figureShort, length } from '../parts/format.ts';
import type { Result } from '../state/analysisStore.ts';

/** What one bay brings to a joint or an edge: the inputs of its movement. */
export interface BayShare {
  readonly bay: string;
  readonly warmingK: number;
  readonly coolingK: number;
  /** Growth of a metre of the bay, mm. */
  readonly growingMmPerM: number;
  /** From its still point to the line, square to it, at the end that is further. */
  readonly reachM: number;
}

/** The arithmetic of a share as a person would write it: expansion x warming x distance. */
export function shareFormula({ warmingK, reachM }: BayShare, { plan }: Result): string {
  const warmed = `${expansionFigure(plan.screed.expansionPerK)} × ${figureShort(warmingK, 1)} K`;
  const swelling = plan.screed.swellingMmPerM;
  const grown = swelling === 0 ? warmed : `(${warmed} + ${figureShort(swelling, 2)})`;
  return `${grown} × ${length(reachM)}`;
}

export function bayShare(bay: Bay, line: readonly Point[], { plan }: Result): BayShare {
  const body = bayBody(bay);
  const climate = planClimate(plan);
  const { warmingK, coolingK } = bayTemperatures(body, climate);
  let reachMm = 0;
  line.forEach((end, i) => {
    const start = line[i - 1];
    if (start === undefined) return;
    const [nx, ny] = bayOutward(body, start, end);
    for (const [x, y] of [start, end]) {
      reachMm = Math.max(reachMm, (x - bay.stillPoint[0]) * nx + (y - bay.stillPoint[1]) * ny);
    }
  });
  const growingMmPerM = bayStrain(body, climate).growing * 1000;
  return { bay: bay.id, warmingK, coolingK, growingMmPerM, reachM: reachMm / 1000 };
}
