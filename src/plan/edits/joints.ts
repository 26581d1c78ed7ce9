import { lineMiddle, lineStraight } from '../../geometry/line.ts';
import { type Point, pointDistance } from '../../geometry/point.ts';
import { segmentDistance } from '../../geometry/segment.ts';
import { WELD_MM } from '../../geometry/tolerance.ts';
import { type Joint, jointIsFound } from '../analysis.ts';
import type { PlanFile } from '../schema.ts';
import { objectsAdded } from './objects.ts';
import { planSectionChanged } from './settings.ts';

/** Joints that the analysis found, kept as drawn joints. */

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
 *  What is entered of one for the register stays entered of it.
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
  const stretches = [...kept].flatMap((run) => runs.get(run) ?? []);
  const renamed = new Map(
    stretches.map(({ key, line }) => {
      const middle = lineMiddle(line);
      return [key, drawnKey(key, added.ids[lines.findIndex((whole) => isOn(whole, middle))] ?? '')] as const;
    }),
  );
  return {
    file: planJointNotesRenamed(added.file, renamed),
    ids: added.ids,
    also: stretches.map(({ id }) => id).filter((id) => !asked.has(id)),
  };
}

/** The key of a found joint once it is drawn: its own line is what it is known by, wherever that is moved to.
 *  Example: "field:living@5.5,9" drawn as d3 -> "drawn:d3@5.5,9" */
function drawnKey(found: string, id: string): string {
  const [place = ''] = /@[^@]*$/u.exec(found) ?? [];
  return `drawn:${id}${place}`;
}

/** Lets what is entered of joints stand under the keys that they have now; as it was where something stands there already.
 *  @param renamed keys of now by those that are entered */
export function planJointNotesRenamed(file: PlanFile, renamed: ReadonlyMap<string, string>): PlanFile {
  const all = file.papers?.joints ?? [];
  const taken = new Set(all.map(({ key }) => key));
  const joints = all.map((each) => {
    const key = renamed.get(each.key);
    if (key === undefined || taken.has(key)) return each;
    taken.add(key);
    return { ...each, key };
  });
  return joints.every((each, i) => each === all[i]) ? file : planSectionChanged(file, 'papers', { joints });
}

/** Joints that the split found and that an end of the line rests on: they are kept with it, or it would rest on nothing.
 *  Example: the stem of a T, and the two stretches of its bar -> the two stretches */
export function jointsRestedOn(line: Line, joints: readonly Joint[]): readonly Joint[] {
  const ends = [line[0] as Point, line[line.length - 1] as Point];
  return joints.filter((joint) => jointIsFound(joint) && ends.some((end) => isOn(joint.line, end)));
}

function isOn(line: Line, place: Point): boolean {
  return line.some((b, i) => i > 0 && segmentDistance(line[i - 1] as Point, b, place) <= WELD_MM);
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
