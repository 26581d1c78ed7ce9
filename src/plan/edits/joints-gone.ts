import { type Joint, jointIsFound } from '../analysis.ts';
import type { PlanFile } from '../schema.ts';
import { changed } from './fields.ts';
import { objectAdded, objectsAdded, objectsRemoved } from './objects.ts';

/** Joints taken away, or let go again. Apart from those that are kept: the first view of the editor has no need of it. */

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
