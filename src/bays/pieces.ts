import type { Chain } from '../geometry/noding.ts';
import type { Point } from '../geometry/point.ts';
import type { Region, Ring } from '../geometry/ring.ts';
import { facesBoundary, loopsRegion, type Subdivision, subdivisionOf } from '../geometry/subdivision.ts';
import { GRID_PER_MM, SAME_LINE_MM } from '../geometry/tolerance.ts';
import type { PartCut } from './part.ts';

/** A region with its cuts in it: the pieces it falls into and what lies between them. */
export interface Pieces {
  readonly subdivision: Subdivision;
  /** Faces that are pieces of the region, in order. */
  readonly faces: readonly number[];
  /** Edges that separate two pieces: places in the subdivision's list. */
  readonly between: readonly number[];
  /** By face the edges round it. */
  readonly edgesOf: ReadonlyMap<number, readonly number[]>;
}

export function piecesOf(region: Region, cuts: readonly PartCut[]): Pieces {
  const rings = [region.outline, ...region.holes];
  const chains: Chain[] = [
    ...rings.map((ring) => ({ points: ring.map(gridPoint), closed: true })),
    ...cuts.map((cut) => ({ points: [gridPoint(cut.from), gridPoint(cut.to)], closed: false })),
  ];
  const subdivision = subdivisionOf(chains);
  const isPiece = subdivision.faces.map((face, f) => f > 0 && face.inside.has(0) && face.inside.size === 1);
  const faces = subdivision.faces.flatMap((_, f) => (isPiece[f] ? [f] : []));
  const between = subdivision.edges.flatMap((edge, i) =>
    edge.left !== edge.right && isPiece[edge.left] && isPiece[edge.right] ? [i] : [],
  );
  const edgesOf = new Map<number, number[]>(faces.map((face) => [face, []]));
  subdivision.edges.forEach((edge, i) => {
    edgesOf.get(edge.left)?.push(i);
    if (edge.right !== edge.left) edgesOf.get(edge.right)?.push(i);
  });
  return { subdivision, faces, between, edgesOf };
}

export function gridPoint([x, y]: Point): Point {
  return [Math.round(x * GRID_PER_MM), Math.round(y * GRID_PER_MM)];
}

/** The floor of some pieces together; more than one region where they do not hang together. Points along straight sides are left out. */
export function piecesRegion({ subdivision, edgesOf }: Pieces, faces: ReadonlySet<number>): Region[] {
  const edges = [...faces]
    .flatMap((face) => edgesOf.get(face) ?? [])
    .sort((a, b) => a - b)
    .filter((edge, i, all) => edge !== all[i - 1]);
  return facesBoundary(subdivision, (face) => faces.has(face), edges).map((loops) => {
    const { outline, holes } = loopsRegion(subdivision, loops, GRID_PER_MM);
    return { outline: ringStraight(outline), holes: holes.map(ringStraight) };
  });
}

/** A ring without the corners that lie exactly on the line of their neighbours. */
function ringStraight(ring: Ring): Ring {
  const kept = ring.filter((p, i) => {
    const a = ring[(i + ring.length - 1) % ring.length] as Point;
    const b = ring[(i + 1) % ring.length] as Point;
    return (p[0] !== a[0] || p[0] !== b[0]) && (p[1] !== a[1] || p[1] !== b[1]);
  });
  return kept.length > 2 ? kept : ring;
}

export function edgePoints({ subdivision }: Pieces, edge: number): [Point, Point] {
  const { from, to } = subdivision.edges[edge] as { from: number; to: number };
  const at = (p: number): Point => [
    (subdivision.x[p] as number) / GRID_PER_MM,
    (subdivision.y[p] as number) / GRID_PER_MM,
  ];
  return [at(from), at(to)];
}

/** The axis that an edge runs along, 0 where it is upright; null where it is askew. */
export function edgeAxis(pieces: Pieces, edge: number): 0 | 1 | null {
  const [a, b] = edgePoints(pieces, edge);
  const [dx, dy] = [Math.abs(b[0] - a[0]), Math.abs(b[1] - a[1])];
  return dx <= SAME_LINE_MM && dx < dy ? 0 : dy <= SAME_LINE_MM && dy < dx ? 1 : null;
}

/** The regions that cuts split a region into. */
export function regionSplit(region: Region, cuts: readonly PartCut[]): Region[] {
  const pieces = piecesOf(region, cuts);
  return pieces.faces.flatMap((face) => piecesRegion(pieces, new Set([face])));
}
