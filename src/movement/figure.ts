import { FIGURE_SLACK_MM } from '../geometry/tolerance.ts';

/** Whether a figure in mm passes what is there for it by more than rounding. Example: 5.1 against 5 -> true; 5 against 5 -> false. */
export function figureExceeds(needsMm: number, providedMm: number): boolean {
  return needsMm - providedMm > FIGURE_SLACK_MM;
}
