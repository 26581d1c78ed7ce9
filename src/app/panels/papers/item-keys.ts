/** Keys of the items of a list that have none of their own, so that what is open or half typed stays with its item. */

export interface KeyedItems {
  readonly items: readonly object[];
  readonly keys: readonly number[];
  /** Keys that were given so far. */
  readonly count: number;
}

export const noItems: KeyedItems = { items: [], keys: [], count: 0 };

/** The keys of a list as it has become: an item that is moved takes its key along, and one that is changed where it stands keeps it.
 *  Example: of a, b, c the second is taken away -> the keys of the first and the third */
export function itemsKeyed(before: KeyedItems, items: readonly object[]): KeyedItems {
  const known = new Map(before.items.map((item, i) => [item, before.keys[i] ?? 0]));
  const stay = new Set(items);
  const isSameLength = items.length === before.items.length;
  let count = before.count;
  const keys = items.map((item, i) => {
    const own = known.get(item);
    if (own !== undefined) return own;
    const replaced = before.items[i];
    if (isSameLength && replaced !== undefined && !stay.has(replaced)) return before.keys[i] ?? 0;
    count += 1;
    return count;
  });
  return { items, keys, count };
}
