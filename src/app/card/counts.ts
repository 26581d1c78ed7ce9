import type { ObjectList, PlanObject } from '../../plan/edits/objects.ts';
import { countOf } from '../parts/format.ts';

const nouns: Readonly<Record<ObjectList, readonly [one: string, several: string]>> = {
  rooms: ['room', 'rooms'],
  doorways: ['doorway', 'doorways'],
  columns: ['column', 'columns'],
  pipes: ['pipe', 'pipes'],
  joinery: ['piece of joinery', 'pieces of joinery'],
  slabContacts: ['slab contact', 'slab contacts'],
  structuralJoints: ['joint of the building', 'joints of the building'],
  sunZones: ['sunlit floor', 'sunlit floors'],
  drawnJoints: ['drawn joint', 'drawn joints'],
  noJoint: ['joint taken away', 'joints taken away'],
  keepClear: ['area to keep clear', 'areas to keep clear'],
};

/** "4 columns, 2 pipes"; what is no thing of the plan itself is counted at the end. */
export function countsWords(found: readonly PlanObject[], all: number): string {
  const counts = new Map<ObjectList, number>();
  for (const { list } of found) counts.set(list, (counts.get(list) ?? 0) + 1);
  const words = [...counts].map(([list, count]) => countOf(count, ...nouns[list]));
  const others = all - found.length;
  if (others > 0) words.push(countOf(others, 'bay or joint', 'bays or joints'));
  return words.join(', ');
}
