/** What is tinted, by what is asked of it: bays and their joints, or lots of bays. */
export interface Neighbours {
  readonly bays: readonly { readonly id: string }[];
  readonly joints: readonly { readonly bays: readonly [string, string] }[];
}

/** A tint for each bay so that no two bays that share a joint have the same.
 *
 *  Bays are taken away one by one, always one with the fewest neighbours left, and coloured in the opposite order with
 *  the first tint that no neighbour has. The neighbourhood of bays can be drawn flat, and a flat one always has a bay with
 *  at most five neighbours; so six tints are enough.
 *  @returns bay id -> 0 .. count - 1; beyond `count` tints start again, which no flat neighbourhood needs for six */
export function bayTints({ bays, joints }: Neighbours, count: number): ReadonlyMap<string, number> {
  const neighbours = new Map(bays.map((bay) => [bay.id, new Set<string>()]));
  for (const {
    bays: [a, b],
  } of joints) {
    if (a === b) continue;
    neighbours.get(a)?.add(b);
    neighbours.get(b)?.add(a);
  }
  const tints = new Map<string, number>();
  for (const id of fewestLast(neighbours)) {
    const taken = new Set([...(neighbours.get(id) ?? [])].map((other) => tints.get(other)));
    let tint = 0;
    while (taken.has(tint)) tint++;
    tints.set(id, tint % count);
  }
  return tints;
}

/** Ids in the order in which to colour them. Buckets by number of neighbours left; an id may stand in several, only the
 *  one that agrees with `left` counts. */
function fewestLast(neighbours: ReadonlyMap<string, ReadonlySet<string>>): readonly string[] {
  const left = new Map([...neighbours].map(([id, others]) => [id, others.size]));
  const buckets: string[][] = [];
  const put = (id: string, degree: number) => {
    buckets[degree] ??= [];
    buckets[degree].push(id);
  };
  for (const id of [...neighbours.keys()].reverse()) put(id, left.get(id) ?? 0);
  const order: string[] = [];
  for (let degree = 0; degree < buckets.length; ) {
    const id = buckets[degree]?.pop();
    if (id === undefined) {
      degree++;
      continue;
    }
    if (left.get(id) !== degree) continue;
    left.delete(id);
    order.push(id);
    for (const other of neighbours.get(id) ?? []) {
      const more = left.get(other);
      if (more === undefined) continue;
      left.set(other, more - 1);
      put(other, more - 1);
    }
    degree = Math.max(0, degree - 1);
  }
  return order.reverse();
}
