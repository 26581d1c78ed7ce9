/** Joins edges, given as pairs of point numbers, into walks: each as long as it goes before it ends, forks or reaches a stop. A walk
 *  that closes repeats its first point at the end. The order of the edges decides the order of the walks. */
export function edgesWalk(
  edges: readonly (readonly [number, number])[],
  isStop: (point: number) => boolean = () => false,
): number[][] {
  const at = new Map<number, number[]>();
  edges.forEach(([a, b], i) => {
    for (const p of [a, b]) {
      const list = at.get(p);
      if (list) list.push(i);
      else at.set(p, [i]);
    }
  });
  const ends = (point: number) => isStop(point) || at.get(point)?.length !== 2;
  const used = new Array<boolean>(edges.length).fill(false);
  const walkFrom = (start: number, first: number): number[] => {
    const walk = [start];
    let edge = first;
    let here = start;
    for (;;) {
      used[edge] = true;
      const [a, b] = edges[edge] as readonly [number, number];
      here = a === here ? b : a;
      walk.push(here);
      const onward = ends(here) ? undefined : at.get(here)?.find((i) => !used[i]);
      if (onward === undefined) return walk;
      edge = onward;
    }
  };
  const walks: number[][] = [];
  edges.forEach(([a, b], i) => {
    if (used[i]) return;
    if (ends(a)) walks.push(walkFrom(a, i));
    else if (ends(b)) walks.push(walkFrom(b, i));
  });
  edges.forEach(([a], i) => {
    if (!used[i]) walks.push(walkFrom(a, i));
  });
  return walks;
}
