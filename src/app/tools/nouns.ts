import { oneLine } from '../../documents/words.ts';
import { type ObjectList, objectFind } from '../../plan/edits/objects.ts';
import type { PlanFile } from '../../plan/schema.ts';

export const nouns: Readonly<Record<ObjectList, string>> = {
  rooms: 'room',
  doorways: 'doorway',
  columns: 'column',
  pipes: 'pipe',
  joinery: 'joinery',
  slabContacts: 'slab contact',
  structuralJoints: 'joint of the building',
  sunZones: 'sunlit floor',
  drawnJoints: 'drawn joint',
  noJoint: 'joint taken away',
  keepClear: 'area to keep clear',
};

/** What a thing of the plan is called in a sentence: its own name, else what it is and its id. */
export function objectNoun(file: PlanFile, id: string): string {
  const found = objectFind(file, id);
  if (found === null) return id;
  const named = 'name' in found.object ? oneLine(found.object.name ?? '') : '';
  return named === '' ? `${nouns[found.list]} ${id}` : named;
}

export function countNoun(count: number): string {
  return `${count} things`;
}
