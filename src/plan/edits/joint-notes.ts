import type { PlanFile } from '../schema.ts';
import { type Change, changedIfNew } from './fields.ts';
import { planSectionChanged } from './settings.ts';

/** What is entered of joints for the register. Apart from the other settings: the first view of the editor has no need of it. */

/** What the register says of a joint. */
type JointNote = NonNullable<NonNullable<PlanFile['papers']>['joints']>[number];

/** Changes or clears what is entered of one joint for the register. */
export function planJointNoted(file: PlanFile, key: string, change: Change<Omit<JointNote, 'key'>>): PlanFile {
  const all = file.papers?.joints ?? [];
  const known = all.find((each) => each.key === key);
  const start = known ?? { key };
  const note = changedIfNew<JointNote>(start, change);
  if (note === start) return file;
  const isEmpty = Object.keys(note).length === 1;
  const joints = known === undefined ? [...all, note] : all.map((each) => (each === known ? note : each));
  const kept = isEmpty ? joints.filter((each) => each !== note) : joints;
  return planSectionChanged(file, 'papers', { joints: kept.length === 0 ? undefined : kept });
}

/** Takes all that is entered under some keys out of the register. */
export function planJointNotesTakenOut(file: PlanFile, keys: readonly string[]): PlanFile {
  const all = file.papers?.joints ?? [];
  const left = all.filter(({ key }) => !keys.includes(key));
  if (left.length === all.length) return file;
  return planSectionChanged(file, 'papers', { joints: left.length === 0 ? undefined : left });
}
