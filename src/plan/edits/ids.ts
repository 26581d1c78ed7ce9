import type { PlanFile } from '../schema.ts';

/** Gives ids that nothing in the plan has, each once: the first free of stem 1, stem 2, ...
 *  An id of something that is gone stays taken while something is entered under it: a new thing does not come by what was entered of another.
 *  Example: a plan with r1 and r3, stem r -> r2, then r4. */
export function idsFree(file: PlanFile): (stem: string) => string {
  const lists = Object.values(file).filter((value) => Array.isArray(value));
  const taken = new Set(lists.flat().map((object) => (object as { readonly id?: string }).id));
  const entered = [
    ...(file.papers?.joints ?? []).map(({ key }) => key),
    ...(file.pour?.days ?? []).flatMap(({ bays }) => bays),
  ];
  // such as drawn:x1@5.5,9 and bay:r1+r2@3,4
  for (const key of entered) for (const id of key.split(/[:@+#]/u)) taken.add(id);
  const next = new Map<string, number>();
  return (stem) => {
    let number = next.get(stem) ?? 1;
    while (taken.has(`${stem}${number}`)) number++;
    next.set(stem, number + 1);
    return `${stem}${number}`;
  };
}
