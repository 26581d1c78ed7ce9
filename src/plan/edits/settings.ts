import type { Covering } from '../plan.ts';
import type { RuleSetKey } from '../reference.ts';
import type { PlanFile } from '../schema.ts';
import { type Change, changed, changedIfNew } from './fields.ts';

/** Edits of the plan file: values in, a new file out, what did not change is shared. A value of undefined goes back to the default. */

type Section =
  | 'screed'
  | 'temperatures'
  | 'heating'
  | 'buildUp'
  | 'jointProfile'
  | 'edgeStrip'
  | 'sealant'
  | 'layout'
  | PaperSection;
export type PaperSection = 'papers' | 'order' | 'pour' | 'records';
type SectionFields<K extends Section> = NonNullable<PlanFile[K]>;
type RoomFile = PlanFile['rooms'][number];

export function planRenamed(file: PlanFile, name: string): PlanFile {
  return { ...file, name };
}

export function planRuleSetChosen(file: PlanFile, ruleSet: RuleSetKey): PlanFile {
  return { ...file, ruleSet };
}

/** Changes fields of one section, such as `planSectionChanged(file, 'screed', { thicknessMm: 65 })`. */
export function planSectionChanged<K extends Section>(
  file: PlanFile,
  section: K,
  change: Change<SectionFields<K>>,
): PlanFile {
  const fields = changed<object>(file[section] ?? {}, change);
  return changed(file, { [section]: Object.keys(fields).length === 0 ? undefined : fields });
}

/** Changes or clears a limit of the user's own. */
export function planLimitsChanged(
  file: PlanFile,
  change: Change<NonNullable<SectionFields<'screed'>['limits']>>,
): PlanFile {
  const limits = changed<object>(file.screed?.limits ?? {}, change);
  return planSectionChanged(file, 'screed', { limits: Object.keys(limits).length === 0 ? undefined : limits });
}

/** Changes or clears a price. */
export function planPriceChanged(
  file: PlanFile,
  change: Change<NonNullable<SectionFields<'order'>['prices']>>,
): PlanFile {
  const known = file.order?.prices ?? {};
  const prices = changedIfNew<object>(known, change);
  if (prices === known) return file;
  return planSectionChanged(file, 'order', { prices: Object.keys(prices).length === 0 ? undefined : prices });
}

/** Loads as entered; undefined: not known, so that the thickness reads "not checked". */
export function planLoadsEntered(file: PlanFile, loads: PlanFile['loads']): PlanFile {
  return changed(file, { loads });
}

/** Changes rooms, one or all that are chosen. */
export function planRoomsChanged(
  file: PlanFile,
  ids: readonly string[],
  change: Change<Omit<RoomFile, 'id'>>,
): PlanFile {
  return { ...file, rooms: file.rooms.map((room) => (ids.includes(room.id) ? changed(room, change) : room)) };
}

export function planCoveringLaid(file: PlanFile, ids: readonly string[], covering: Covering): PlanFile {
  return planRoomsChanged(file, ids, { covering });
}
