import { type Point, pointDistance } from '../../geometry/point.ts';
import { boxOf } from '../../geometry/ring.ts';
import { WELD_MM } from '../../geometry/tolerance.ts';
import type { GridLine } from '../papers.ts';
import type { PlanFile } from '../schema.ts';
import { FARTHEST_MM, pointSnapped } from '../snap.ts';
import { changedIfNew } from './fields.ts';
import { letterFree, numberFree } from './free-names.ts';
import { planSectionChanged } from './settings.ts';

/** Lines of the building's grid, which joints are set out from. */

type Ends = Pick<GridLine, 'from' | 'to'>;

export function gridLinesOf(file: PlanFile): readonly GridLine[] {
  return file.papers?.gridLines ?? [];
}

function linesSet(file: PlanFile, lines: readonly GridLine[]): PlanFile {
  return planSectionChanged(file, 'papers', { gridLines: lines.length === 0 ? undefined : lines });
}

/** Adds a line under the next free name: letters for lines up the sheet, numbers for lines across it. The file itself where the ends do not lie apart or
 *  lie beyond the sheet. */
export function gridLineAdded(file: PlanFile, ends: Ends): PlanFile {
  const line = snapped(ends);
  if (isRefused(line)) return file;
  const known = gridLinesOf(file);
  const names = known.map(({ name }) => name);
  const name = gridLineIsUp(line) ? letterFree(names) : numberFree(names);
  return linesSet(file, [...known, { name, ...line }]);
}

/** Whether it runs up the sheet more than across it. */
export function gridLineIsUp({ from, to }: Ends): boolean {
  return Math.abs(to[1] - from[1]) > Math.abs(to[0] - from[0]);
}

/** Renames a line or moves its ends. The file itself where nothing changes, where the ends would not lie apart or beyond the sheet. */
export function gridLineChanged(file: PlanFile, index: number, change: Partial<GridLine>): PlanFile {
  const known = gridLinesOf(file);
  const line = known[index];
  if (line === undefined) return file;
  const next = changedIfNew<GridLine>(line, { ...change, ...snapped({ ...line, ...change }) });
  const isMoved = change.from !== undefined || change.to !== undefined;
  if (next === line || (isMoved && isRefused(next))) return file;
  return linesSet(
    file,
    known.map((each, i) => (i === index ? next : each)),
  );
}

export function gridLineRemoved(file: PlanFile, index: number): PlanFile {
  const known = gridLinesOf(file);
  const left = known.filter((_, i) => i !== index);
  return left.length === known.length ? file : linesSet(file, left);
}

/** The ends of a line along an edge of the floor where there is none yet, and past its corners: the left edge first, then the upper, right and lower. */
export function gridLineBeside(file: PlanFile): Ends {
  const { minX, maxX, minY, maxY } = boxOf(
    file.rooms.length === 0 ? noFloor : file.rooms.flatMap(({ outline }) => outline),
  );
  const pastMm = Math.ceil((pastShare * Math.max(maxX - minX, maxY - minY)) / roundMm) * roundMm;
  const up = (x: number): Ends => ({ from: [x, minY - pastMm], to: [x, maxY + pastMm] });
  const level = (y: number): Ends => ({ from: [minX - pastMm, y], to: [maxX + pastMm, y] });
  const edges = [up(minX), level(minY), up(maxX), level(maxY)];
  return edges.find((edge) => !gridLinesOf(file).some((line) => isAlong(line, edge))) ?? up(minX);
}

/** A line ends so far past the floor, as a share of the floor, so that names of lines stand apart at its corners; and in steps of so many mm. */
const pastShare = 0.03;
const roundMm = 100;
/** What a line is laid along where there is no floor to go by: its ends are typed. */
const noFloor: readonly Point[] = [
  [0, 0],
  [1000, 1000],
];

function isAlong({ from, to }: Ends, edge: Ends): boolean {
  const axis = gridLineIsUp(edge) ? 0 : 1;
  return [from, to].every((end) => Math.abs(end[axis] - edge.from[axis]) <= WELD_MM);
}

function snapped({ from, to }: Ends): Ends {
  return { from: pointSnapped(from), to: pointSnapped(to) };
}

/** Whether the ends of a line lie apart, so that it has a way. */
export function gridEndsApart({ from, to }: Ends): boolean {
  return pointDistance(from, to) > WELD_MM;
}

function isRefused(ends: Ends): boolean {
  return !gridEndsApart(ends) || isOff(ends.from) || isOff(ends.to);
}

function isOff([x, y]: Point): boolean {
  return Math.max(Math.abs(x), Math.abs(y)) > FARTHEST_MM;
}
