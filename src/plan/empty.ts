import type { PlanFile } from './schema.ts';

/** An empty sheet. Apart from the schema, which an editor that only starts one need not load; the types hold format and
 *  version to it. */
export function planEmpty(name: string): PlanFile {
  return { format: 'screed-bays/plan', version: 1, name, rooms: [] };
}
