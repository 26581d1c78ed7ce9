import { boxOf, type Region } from '../geometry/ring.ts';
import type { Part, PartCut } from './part.ts';
import { edgePoints, type Pieces, piecesRegion } from './pieces.ts';

/** Neighbouring bays taken out of a layout, to be laid out anew. */
export interface Group {
  readonly floor: Region;
  /** The joints between its bays. */
  readonly inner: readonly PartCut[];
  readonly part: Part;
}

/** @returns null where the pieces are not one floor */
export function groupOf(pieces: Pieces, faces: ReadonlySet<number>, part: Part): Group | null {
  const [floor, ...more] = piecesRegion(pieces, faces);
  if (!floor || more.length > 0) return null;
  const round = [...new Set([...faces].flatMap((face) => pieces.edgesOf.get(face) ?? []))].filter((edge) =>
    isBetween(pieces, edge),
  );
  const inner = round.filter((edge) => isInner(pieces, edge, faces)).map((edge) => edgeCut(pieces, edge));
  const outer = round.filter((edge) => !isInner(pieces, edge, faces)).map((edge) => edgeCut(pieces, edge));
  return { floor, inner, part: partOf(part, floor, outer) };
}

export function isBetween({ subdivision, edgesOf }: Pieces, edge: number): boolean {
  const { left, right } = subdivision.edges[edge] as { left: number; right: number };
  return left !== right && edgesOf.has(left) && edgesOf.has(right);
}

export function isInner({ subdivision }: Pieces, edge: number, group: ReadonlySet<number>): boolean {
  const { left, right } = subdivision.edges[edge] as { left: number; right: number };
  return group.has(left) && group.has(right);
}

export function edgeCut(pieces: Pieces, edge: number): PartCut {
  const [from, to] = edgePoints(pieces, edge);
  return { kind: 'field', from, to };
}

/** The part as a group sees it: columns that an outer joint touches have theirs, and what stands elsewhere is left out. */
function partOf(part: Part, floor: Region, outer: readonly PartCut[]): Part {
  const box = boxOf(floor.outline);
  const near = (b: { minX: number; maxX: number; minY: number; maxY: number }) =>
    b.minX < box.maxX && b.maxX > box.minX && b.minY < box.maxY && b.maxY > box.minY;
  const columns = part.columns
    .filter((column) => near(column.box))
    .map((column) =>
      column.needsJoint && outer.some((cut) => cutTouches(cut, column.box)) ? { ...column, needsJoint: false } : column,
    );
  return { ...part, columns };
}

export function cutTouches(
  { from, to }: PartCut,
  box: { minX: number; maxX: number; minY: number; maxY: number },
): boolean {
  return (
    Math.min(from[0], to[0]) <= box.maxX &&
    Math.max(from[0], to[0]) >= box.minX &&
    Math.min(from[1], to[1]) <= box.maxY &&
    Math.max(from[1], to[1]) >= box.minY
  );
}
