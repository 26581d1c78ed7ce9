import type { Change } from '../../../plan/edits/fields.ts';
import { type PaperSection, planSectionChanged } from '../../../plan/edits/settings.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { commit } from '../../state/planStore.ts';

/** Puts fields of a section in, as one step. @param words the step, as undo tells it */
export function paperPut<Section extends PaperSection>(
  section: Section,
  words: string,
  change: Change<NonNullable<PlanFile[Section]>>,
  gesture: string | null = null,
): void {
  commit(words, (file) => planSectionChanged(file, section, change), gesture);
}

/** A list with one item changed, or without it. @returns undefined where nothing is left: the field goes */
export function listWith<Item>(list: readonly Item[], at: number, item: Item | undefined): readonly Item[] | undefined {
  const next = list.flatMap((each, i) => (i === at ? (item === undefined ? [] : [item]) : [each]));
  return next.length === 0 ? undefined : next;
}
