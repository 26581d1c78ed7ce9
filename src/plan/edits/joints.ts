import { lineStraight } from '../../geometry/line.ts';
import { type Point, pointDistance } from '../../geometry/point.ts';
import { segmentDistance } from '../../geometry/segment.ts';
import { WELD_MM } from '../../geometry/tolerance.ts';
import { type Joint, jointIsFound } from '../analysis.ts';
import type { PlanFile } from '../schema.ts';
import { changed } from './fields.ts';
import { objectAdded, objectsAdded, objectsRemoved } from './objects.ts';

/** The user's word on joints that the analysis found: kept as drawn joints, taken away, or let go again. */

type Line = readonly Point[];

export interface JointsKept {
  readonly file: PlanFile;
  /** Ids of the new drawn joints. */
  readonly ids: readonly string[];
  /** Ids of joints of the analysis that were kept although nobody asked for them: the rest of a straight line, and lines that the end of a kept
   *  one rests on. */
  readonly also: readonly string[];
}

/** Keeps found joints as drawn ones: each straight line that one of them is part of, and in turn each found line that an end of a kept one rests on,
 *  as a drawn joint that ends on nothing would be loose. Joints that stand anyway (doorways, structural joints, zones, drawn joints) are passed over.
 *  @param joints all joints of the analysis   @param ids of those to keep
 *  Example: the stem of a T of two found lines -> both lines; its bar -> the bar alone */
export function jointsKept(file: PlanFile, joints: readonly Joint[], ids: readonly string[]): JointsKept {
  const runs = new Map<string, Joint[]>();
  for (const joint of joints.filter(jointIsFound)) runs.set(joint.run, [...(runs.get(joint.run) ?? []), joint]);
  const asked = new Set(ids);
  const kept = new Set([...runs.keys()].filter((run) => runs.get(run)?.some(({ id }) => asked.has(id))));
  const lines: Line[] = [];
  for (const run of kept) {
    const own = linesJoined((runs.get(run) ?? []).map(({ line }) => line));
    lines.push(...own);
    for (const [other, stretches] of runs) {
      if (own.some((line) => jointsRestedOn(line, stretches).length > 0)) kept.add(other);
    }
  }
  const added = objectsAdded(
    file,
    lines.map((line) => ({ list: 'drawnJoints', object: { line } })),
  );
  const keptIds = [...kept].flatMap((run) => (runs.get(run) ?? []).map(({ id }) => id));
  return { ...added, also: keptIds.filter((id) => !asked.has(id)) };
}

/** Joints that the split found and that an end of the line rests on: they are kept with it, or it would rest on nothing.
 *  Example: the stem of a T, and the two stretches of its bar -> the two stretches */
export function jointsRestedOn(line: Line, joints: readonly Joint[]): readonly Joint[] {
  const ends = [line[0] as Point, line[line.length - 1] as Point];
  return joints.filter((joint) => jointIsFound(joint) && ends.some((end) => restsOn(joint.line, end)));
}

function restsOn(line: Line, end: Point): boolean {
  return line.some((b, i) => i > 0 && segmentDistance(line[i - 1] as Point, b, end) <= WELD_MM);
}

/** The stretches of one straight line joined end to end; several lines where a column stands between. */
function linesJoined(stretches: readonly Line[]): readonly Line[] {
  let joined: Line[] = [];
  for (const stretch of stretches) {
    let line = stretch;
    const apart: Line[] = [];
    for (const other of joined) {
      const both = lineJoined(other, line);
      if (both) line = both;
      else apart.push(other);
    }
    joined = [...apart, line];
  }
  return joined.map(lineStraight);
}

/** Two lines as one, where an end of each is the same place. */
function lineJoined(one: Line, other: Line): Line | null {
  for (const a of [one, [...one].reverse()]) {
    for (const b of [other, [...other].reverse()]) {
      if (pointDistance(a[a.length - 1] as Point, b[0] as Point) <= WELD_MM) return [...a, ...b.slice(1)];
    }
  }
  return null;
}

/** Takes a joint away: its place is noted as one where no joint is wanted, and a drawn one goes out of the plan. A joint that stands anyway stays.
 *  Example: a found joint [4000, 0] to [4000, 3000] -> noJoint has a line [4000, 0] to [4000, 3000] */
export function jointTakenAway(file: PlanFile, joint: Joint): PlanFile {
  if (joint.kind === 'drawn') return drawnTakenAway(file, joint.sources);
  const isNoted = file.noJoint?.some(({ line }) => JSON.stringify(line) === JSON.stringify(joint.line));
  return jointIsFound(joint) && !isNoted ? objectAdded(file, 'noJoint', { line: joint.line }).file : file;
}

/** The same for drawn joints by their ids, as each was drawn. */
export function drawnTakenAway(file: PlanFile, ids: readonly string[]): PlanFile {
  const drawn = (file.drawnJoints ?? []).filter(({ id }) => ids.includes(id));
  const without = objectsRemoved(
    file,
    drawn.map(({ id }) => id),
  );
  return objectsAdded(
    without,
    drawn.map(({ line }) => ({ list: 'noJoint', object: { line } })),
  ).file;
}

/** Lets go of all drawn joints, of all places where joints were taken away, or of both. Example: { drawn: true, taken: false } -> a file without `drawnJoints` */
export function jointsLetGo(file: PlanFile, which: { readonly drawn: boolean; readonly taken: boolean }): PlanFile {
  const goes = { ...(which.drawn ? { drawnJoints: undefined } : {}), ...(which.taken ? { noJoint: undefined } : {}) };
  return Object.keys(goes).some((list) => list in file) ? changed(file, goes) : file;
}
