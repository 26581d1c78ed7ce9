/** Names that are given to what is placed on a plan, so that it keeps its name whatever comes and goes beside it. */

/** The first number that is no name yet. Example: 1, 3 -> 2 */
export function numberFree(names: readonly string[]): string {
  return firstFree(names, String, 1);
}

/** The number that follows those that there are, so that none comes before its neighbours. Example: 2, 3 -> 4; P1 -> 2 */
export function numberNext(names: readonly string[]): string {
  return firstFree(names, String, names.length + 1);
}

/** The first letter that is no name yet. Example: A, B -> C */
export function letterFree(names: readonly string[]): string {
  return firstFree(names, lettersOf, 1);
}

function firstFree(names: readonly string[], nameOf: (count: number) => string, from: number): string {
  const taken = new Set(names.map((name) => name.trim().toUpperCase()));
  let count = from;
  while (taken.has(nameOf(count))) count += 1;
  return nameOf(count);
}

/** Without I and O: on a sheet they are taken for 1 and 0. */
const letters = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** As columns of a table are counted. Example: 1 -> A; 25 -> AA */
function lettersOf(count: number): string {
  const before = Math.floor((count - 1) / letters.length);
  const last = letters.charAt((count - 1) % letters.length);
  return before === 0 ? last : lettersOf(before) + last;
}
