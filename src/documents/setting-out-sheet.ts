import { lineWithin } from '../geometry/line-clip.ts';
import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import { type Box, boxAround, boxOf, type Ring } from '../geometry/ring.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import { type GridLine, type NamedPoint, papersOf } from '../plan/papers.ts';
import type { Plan } from '../plan/plan.ts';
import type { PaperSource } from './paper-source.ts';
import { figureText, heldSpace } from './words.ts';

/** What of the marks that a floor is set out from lies too far off to be drawn: a survey point down the street must not blow up the sheet. */

/** Places are drawn up to so much of the floor's size beyond its box. */
const drawnShare = 0.5;

/** Null where there is no floor. */
function floorBox({ rooms }: Plan): Box | null {
  return rooms.length === 0 ? null : boxOf(rooms.flatMap(({ outline }) => outline));
}

/** How far beyond the box of the floor a place may lie to be drawn, mm. */
export function drawnBeyondMm(plan: Plan): number {
  const box = floorBox(plan);
  return box === null ? Number.POSITIVE_INFINITY : drawnShare * Math.max(box.maxX - box.minX, box.maxY - box.minY);
}

export function placeIsDrawn(plan: Plan, [x, y]: Point): boolean {
  const box = floorBox(plan);
  if (box === null) return true;
  const { minX, maxX, minY, maxY } = boxAround(box, drawnBeyondMm(plan));
  return x >= minX && x <= maxX && y >= minY && y <= maxY;
}

/** The box of a drawing that holds places beside its floor as well. */
export function boxWith(box: Box | null, places: readonly Point[]): Box | null {
  if (box === null) return null;
  return boxOf([[box.minX, box.minY], [box.maxX, box.maxY], ...places]);
}

/** Whether a grid line passes the floor, or near enough to it. */
export function gridLineIsDrawn(plan: Plan, { from, to }: GridLine): boolean {
  const box = floorBox(plan);
  if (box === null) return true;
  const { minX, maxX, minY, maxY } = boxAround(box, drawnBeyondMm(plan));
  const ring: Ring = [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
  const lengthMm = pointDistance(from, to);
  return lineWithin(from, pointDirection(from, to), [ring]).some(([start, end]) => end > 0 && start < lengthMm);
}

/** Base points that are told in words instead of drawn. */
export function basePointsOff({ file, plan }: PaperSource): readonly NamedPoint[] {
  return papersOf(file).basePoints.filter(({ at }) => !placeIsDrawn(plan, at));
}

/** Grid lines that pass the floor too far off to be drawn. */
export function gridLinesOff({ file, plan }: PaperSource): readonly GridLine[] {
  return papersOf(file).gridLines.filter(
    (line) => pointDistance(line.from, line.to) > WELD_MM && !gridLineIsDrawn(plan, line),
  );
}

/** How far off the floor a place lies as the sheet is read. Example: 250 m to the right, 40 m above -> "250 m to the right and 40 m above" */
export function placeOffText(plan: Plan, [x, y]: Point): string {
  const { minX, maxX, minY, maxY } = floorBox(plan) ?? { minX: x, maxX: x, minY: y, maxY: y };
  const ways: readonly (readonly [mm: number, way: string])[] = [
    [x - maxX, 'to the right'],
    [minX - x, 'to the left'],
    [minY - y, 'above'],
    [y - maxY, 'below'],
  ];
  return ways
    .filter(([mm]) => mm > 0)
    .map(([mm, way]) => `${figureText(mm / 1000, mm < 10_000 ? 1 : 0)}${heldSpace}m ${way}`)
    .join(' and ');
}
