import { type Chain, chainsNode, segmentKey } from './noding.ts';
import type { Point } from './point.ts';
import { type Box, boxOf, type Region, type Ring, ringContains, ringSignedArea } from './ring.ts';

/** The plane split by the lines and outlines of a plan: faces, and edges that know the face on either side.
 *
 *  Accepts chains on whole grid steps. Guarantees that faces tile the plane, that neighbours share every point, and that a
 *  face knows which of the closed chains it lies in (even-odd, so a crossing outline has an inside as well).
 *  Steps: node the chains; link half-edges round their points; walk the loops; put loops into faces; label the faces by
 *  crossing edges from the outside in, so that no label rests on a rounding. */
export interface Subdivision {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly edges: readonly SubdivisionEdge[];
  /** Face 0 is the outside. */
  readonly faces: readonly SubdivisionFace[];
  /** For each chain the points that it runs through, by number. */
  readonly walks: readonly (readonly number[])[];
}

export interface SubdivisionEdge {
  readonly from: number;
  readonly to: number;
  /** Face on the left and on the right of from -> to, as seen with y down. */
  readonly left: number;
  readonly right: number;
  /** The chains that run along it. */
  readonly chains: readonly number[];
}

export interface SubdivisionFace {
  /** Outer loop first (none for the outside), then the loops of what lies within. Point numbers. */
  readonly loops: readonly (readonly number[])[];
  /** Net of the loops within, in square grid steps; Infinity for the outside. */
  readonly area: number;
  /** Closed chains that the face lies inside of. */
  readonly inside: ReadonlySet<number>;
}

export function subdivisionOf(chains: readonly Chain[]): Subdivision {
  const { x, y, walks } = chainsNode(chains);
  const halves = halvesOf(walks);
  const next = halvesLink(halves, x, y);
  const { loops, loopOf } = loopsWalk(next, halves);
  const { faceLoops, faceOf, areas } = loopsPlace(loops, halves, x, y);
  const faceAt = (half: number) => faceOf[loopOf[half] as number] as number;
  const edges: SubdivisionEdge[] = [];
  for (let h = 0; h < halves.tail.length; h += 2) {
    edges.push({
      from: halves.tail[h] as number,
      to: halves.tail[h + 1] as number,
      left: faceAt(h + 1),
      right: faceAt(h),
      chains: [...(halves.chains[h >> 1]?.keys() ?? [])],
    });
  }
  const crossings = halves.chains.map((uses) =>
    [...uses].filter(([chain, times]) => times % 2 === 1 && chains[chain]?.closed).map(([chain]) => chain),
  );
  const inside = facesLabel(edges, crossings, faceLoops.length);
  const faces = faceLoops.map((list, f) => ({
    loops: list.map((loop) => (loops[loop] ?? []).map((h) => halves.tail[h] as number)),
    area: f === 0 ? Infinity : (areas[f] as number),
    inside: inside[f] ?? new Set<number>(),
  }));
  return { x, y, edges, faces, walks };
}

/** Half-edges 2k and 2k+1 are the two directions of edge k; `tail` is where each starts. */
interface Halves {
  readonly tail: number[];
  /** For each edge: how often each chain runs along it. */
  readonly chains: Map<number, number>[];
}

function halvesOf(walks: readonly (readonly number[])[]): Halves {
  const tail: number[] = [];
  const chains: Map<number, number>[] = [];
  const known = new Map<number, number>();
  walks.forEach((walk, chain) => {
    for (let i = 0; i + 1 < walk.length; i++) {
      const a = walk[i] as number;
      const b = walk[i + 1] as number;
      if (a === b) continue;
      const key = segmentKey(a, b);
      let edge = known.get(key);
      if (edge === undefined) {
        edge = chains.length;
        known.set(key, edge);
        tail.push(a, b);
        chains.push(new Map());
      }
      const uses = chains[edge] as Map<number, number>;
      uses.set(chain, (uses.get(chain) ?? 0) + 1);
    }
  });
  return { tail, chains };
}

/** For each half-edge the one that follows it round the face on its right hand (y down: loops of faces run clockwise on the sheet). */
function halvesLink(halves: Halves, x: readonly number[], y: readonly number[]): Int32Array {
  const out = new Map<number, number[]>();
  halves.tail.forEach((point, half) => {
    const list = out.get(point);
    if (list) list.push(half);
    else out.set(point, [half]);
  });
  const next = new Int32Array(halves.tail.length);
  for (const list of out.values()) {
    // Two have but one order.
    if (list.length > 2) list.sort((a, b) => directionCompare(halves, x, y, a, b));
    for (let i = 0; i < list.length; i++) {
      // Arriving at the point by the twin of list[i], leave by the neighbour in turn.
      const leave = list[(i + list.length - 1) % list.length] as number;
      next[(list[i] as number) ^ 1] = leave;
    }
  }
  return next;
}

/** Order of two half-edges that leave one point, by angle. Coordinates are whole numbers, so the cross product is exact up to 9e7 steps (9 km). */
function directionCompare(halves: Halves, x: readonly number[], y: readonly number[], a: number, b: number): number {
  const p = halves.tail[a] as number;
  const qa = halves.tail[a ^ 1] as number;
  const qb = halves.tail[b ^ 1] as number;
  const ax = (x[qa] as number) - (x[p] as number);
  const ay = (y[qa] as number) - (y[p] as number);
  const bx = (x[qb] as number) - (x[p] as number);
  const by = (y[qb] as number) - (y[p] as number);
  const upperA = ay < 0 || (ay === 0 && ax < 0);
  const upperB = by < 0 || (by === 0 && bx < 0);
  if (upperA !== upperB) return upperA ? 1 : -1;
  return bx * ay - ax * by || a - b;
}

function loopsWalk(next: Int32Array, halves: Halves): { loops: number[][]; loopOf: Int32Array } {
  const loopOf = new Int32Array(halves.tail.length).fill(-1);
  const loops: number[][] = [];
  for (let start = 0; start < next.length; start++) {
    if (loopOf[start] !== -1) continue;
    const loop: number[] = [];
    let half = start;
    while (loopOf[half] === -1) {
      loopOf[half] = loops.length;
      loop.push(half);
      half = next[half] as number;
    }
    loops.push(loop);
  }
  return { loops, loopOf };
}

interface Placed {
  readonly faceLoops: number[][];
  readonly faceOf: Int32Array;
  readonly areas: number[];
}

/** Loops with area are the outer loops of faces; the others bound a cluster of lines from outside and belong to the face round it. */
function loopsPlace(loops: number[][], halves: Halves, x: readonly number[], y: readonly number[]): Placed {
  const rings: Ring[] = loops.map((loop) =>
    loop.map((h) => [x[halves.tail[h] as number] as number, y[halves.tail[h] as number] as number] as const),
  );
  const signed = rings.map(ringSignedArea);
  const faceOf = new Int32Array(loops.length);
  const faceLoops: number[][] = [[]];
  const areas: number[] = [Infinity];
  const outers: { face: number; ring: Ring; box: Box; area: number; cluster: number }[] = [];
  const clusters = clustersOf(halves);
  const clusterOf = (loop: number) => clusters[halves.tail[loops[loop]?.[0] as number] as number] as number;
  loops.forEach((_, i) => {
    const area = signed[i] as number;
    if (area <= 0) return;
    faceOf[i] = faceLoops.length;
    outers.push({
      face: faceLoops.length,
      ring: rings[i] ?? [],
      box: boxOf(rings[i] ?? []),
      area,
      cluster: clusterOf(i),
    });
    faceLoops.push([i]);
    areas.push(area);
  });
  outers.sort((a, b) => a.area - b.area || a.face - b.face);
  loops.forEach((_, i) => {
    if ((signed[i] as number) > 0) return;
    const point = rings[i]?.[0] as Point;
    const own = clusterOf(i);
    const host = outers.find(
      ({ box, ring, cluster }) =>
        cluster !== own &&
        point[0] >= box.minX &&
        point[0] <= box.maxX &&
        point[1] >= box.minY &&
        point[1] <= box.maxY &&
        ringContains(ring, point),
    );
    const face = host?.face ?? 0;
    faceOf[i] = face;
    faceLoops[face]?.push(i);
    areas[face] = (areas[face] as number) + (signed[i] as number);
  });
  return { faceLoops, faceOf, areas };
}

/** For each point the number of the connected cluster of lines that it belongs to. */
function clustersOf(halves: Halves): Int32Array {
  const parent = Int32Array.from(
    { length: Math.max(0, ...[halves.tail.reduce((m, p) => Math.max(m, p), -1) + 1]) },
    (_, i) => i,
  );
  const find = (i: number): number => {
    let root = i;
    while (parent[root] !== root) root = parent[root] as number;
    for (let at = i; at !== root; ) {
      const up = parent[at] as number;
      parent[at] = root;
      at = up;
    }
    return root;
  };
  for (let h = 0; h < halves.tail.length; h += 2) {
    parent[find(halves.tail[h] as number)] = find(halves.tail[h + 1] as number);
  }
  return parent.map((_, i) => find(i));
}

function facesLabel(edges: readonly SubdivisionEdge[], crossings: readonly number[][], count: number): Set<number>[] {
  const around: { edge: number; face: number }[][] = Array.from({ length: count }, () => []);
  edges.forEach((edge, i) => {
    if (edge.left === edge.right) return;
    around[edge.left]?.push({ edge: i, face: edge.right });
    around[edge.right]?.push({ edge: i, face: edge.left });
  });
  const labels: (Set<number> | undefined)[] = new Array(count);
  labels[0] = new Set();
  const queue = [0];
  for (let at = 0; at < queue.length; at++) {
    const face = queue[at] as number;
    for (const { edge, face: other } of around[face] ?? []) {
      if (labels[other]) continue;
      const set = new Set(labels[face]);
      for (const chain of crossings[edge] ?? []) {
        if (set.has(chain)) set.delete(chain);
        else set.add(chain);
      }
      labels[other] = set;
      queue.push(other);
    }
  }
  return labels.map((set) => set ?? new Set());
}

/** The boundary of a set of faces as regions of point numbers: outer loop first, then its holes. Loops are simple: where the
 *  set touches itself in a point, the loops part there. */
export function facesBoundary(
  subdivision: Subdivision,
  has: (face: number) => boolean,
  edges: readonly number[],
): number[][][] {
  const { x, y } = subdivision;
  const out = new Map<number, { to: number }[]>();
  for (const i of edges) {
    const edge = subdivision.edges[i] as SubdivisionEdge;
    const left = has(edge.left);
    const right = has(edge.right);
    if (left === right) continue;
    // Keep the set on the right of the walk, as the loops of faces do.
    const [from, to] = right ? [edge.from, edge.to] : [edge.to, edge.from];
    const list = out.get(from);
    if (list) list.push({ to });
    else out.set(from, [{ to }]);
  }
  const loops: number[][] = [];
  for (const [start, list] of out) {
    while (list.length > 0) loopTake(out, start, x, y, loops);
  }
  return loopsNest(loops, x, y);
}

/** Walks one loop out of the boundary; where it comes back to a point on the way, the part since then is a loop of its own. */
function loopTake(
  out: Map<number, { to: number }[]>,
  start: number,
  x: readonly number[],
  y: readonly number[],
  loops: number[][],
): void {
  const loop = [start];
  const place = new Map([[start, 0]]);
  for (;;) {
    const at = loop[loop.length - 1] as number;
    const list = out.get(at) ?? [];
    const [step] = list.splice(loop.length > 1 ? sharpestTurn(x, y, loop[loop.length - 2] as number, at, list) : 0, 1);
    if (!step) return;
    const seen = place.get(step.to);
    if (seen === undefined) {
      place.set(step.to, loop.length);
      loop.push(step.to);
      continue;
    }
    const part = loop.splice(seen);
    loops.push(part);
    if (seen === 0) return;
    for (const p of part) place.delete(p);
    place.set(step.to, loop.length);
    loop.push(step.to);
  }
}

function sharpestTurn(
  x: readonly number[],
  y: readonly number[],
  before: number,
  at: number,
  list: readonly { to: number }[],
): number {
  let best = 0;
  let most = -Infinity;
  for (let i = 0; i < list.length && list.length > 1; i++) {
    const turn = turnOf(x, y, before, at, (list[i] as { to: number }).to);
    if (turn > most) {
      most = turn;
      best = i;
    }
  }
  return best;
}

/** Turn at b on the way a-b-c, radians; positive to the right on the sheet (towards the inside of a loop). */
function turnOf(x: readonly number[], y: readonly number[], a: number, b: number, c: number): number {
  const ux = (x[b] as number) - (x[a] as number);
  const uy = (y[b] as number) - (y[a] as number);
  const vx = (x[c] as number) - (x[b] as number);
  const vy = (y[c] as number) - (y[b] as number);
  return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}

function loopsNest(loops: number[][], x: readonly number[], y: readonly number[]): number[][][] {
  const rings = loops.map((loop) => loop.map((p) => [x[p] as number, y[p] as number] as const));
  const signed = rings.map(ringSignedArea);
  const regions: { loops: number[][]; ring: Ring; area: number }[] = [];
  loops.forEach((loop, i) => {
    if ((signed[i] as number) > 0) regions.push({ loops: [loop], ring: rings[i] ?? [], area: signed[i] as number });
  });
  regions.sort((a, b) => a.area - b.area);
  loops.forEach((loop, i) => {
    if ((signed[i] as number) > 0) return;
    const ring = rings[i] ?? [];
    const host =
      regions.length === 1
        ? regions[0]
        : regions.find((r) => r.area >= -(signed[i] as number) && ringHolds(r.ring, ring, r.loops[0] ?? [], loop));
    host?.loops.push(loop);
  });
  return regions.sort((a, b) => b.area - a.area).map((r) => r.loops);
}

/** Whether the inner ring, which crosses the outer nowhere, lies in it: judged at a point of it that they do not share. */
function ringHolds(outer: Ring, inner: Ring, outerLoop: readonly number[], innerLoop: readonly number[]): boolean {
  const shared = new Set(outerLoop);
  const at = innerLoop.findIndex((p) => !shared.has(p));
  const a = inner[Math.max(0, at)];
  const b = inner[(Math.max(0, at) + 1) % inner.length];
  if (!a || !b) return false;
  return ringContains(outer, at >= 0 ? a : [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
}

/** Point numbers to places, scaled: grid steps to mm and the like. */
export function loopPoints(subdivision: Subdivision, loop: readonly number[], perUnit: number): Point[] {
  return loop.map((p) => [(subdivision.x[p] as number) / perUnit, (subdivision.y[p] as number) / perUnit] as const);
}

export function loopsRegion(subdivision: Subdivision, loops: readonly (readonly number[])[], perUnit: number): Region {
  const [outline = [], ...holes] = loops.map((loop) => loopPoints(subdivision, loop, perUnit));
  return { outline, holes };
}
