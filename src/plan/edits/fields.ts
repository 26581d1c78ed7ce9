/** What all edits share: a change of some fields, and whether it changes anything. */

/** Fields to set; undefined takes a field out, so that it goes back to its default. */
export type Change<T> = { readonly [K in keyof T]?: T[K] | undefined };

/** `change` over `fields`; what becomes undefined is left out, so that a file is written without it. */
export function changed<T extends object>(fields: T, change: object): T {
  const entries = Object.entries({ ...fields, ...change }).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries) as T;
}

/** The same, but the very fields that were given where nothing becomes different. Example: { a: [1] }, { a: [1] } -> the first object. */
export function changedIfNew<T extends object>(fields: T, change: object): T {
  const known = fields as Readonly<Record<string, unknown>>;
  const isNew = Object.entries(change).some(([key, value]) => !sameValue(known[key], value));
  return isNew ? changed(fields, change) : fields;
}

/** Whether two values of a plan file, such as outlines, are written alike. */
function sameValue(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const [keys, others] = [Object.keys(a), Object.keys(b)];
  const [one, other] = [a as Readonly<Record<string, unknown>>, b as Readonly<Record<string, unknown>>];
  return keys.length === others.length && keys.every((key) => key in other && sameValue(one[key], other[key]));
}
