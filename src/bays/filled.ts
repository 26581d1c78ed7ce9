import type { Floor } from '../floor/floor.ts';
import type { Region, Ring } from '../geometry/ring.ts';
import { facesBoundary, loopsRegion } from '../geometry/subdivision.ts';
import { GRID_PER_MM } from '../geometry/tolerance.ts';

/** Some floor traced: its loops by number of point, outer first, and the same as a region in mm. */
export interface Traced {
  readonly loops: readonly (readonly number[])[];
  readonly region: Region;
}

export function regionsOf(floor: Floor, has: (face: number) => boolean, edges: readonly number[]): Traced[] {
  return facesBoundary(floor.subdivision, has, edges).map((loops) => ({
    loops,
    region: loopsRegion(floor.subdivision, loops, GRID_PER_MM),
  }));
}

/** Edges that run along a column or pipe, as keys of their two points. */
export function columnEdgesOf(floor: Floor): ReadonlySet<string> {
  const found = new Set<string>();
  for (const edge of floor.subdivision.edges) {
    if ([edge.left, edge.right].some((f) => isColumn(floor, f))) {
      found.add(`${edge.from},${edge.to}`);
      found.add(`${edge.to},${edge.from}`);
    }
  }
  return found;
}

function isColumn(floor: Floor, face: number): boolean {
  const along = floor.faces[face]?.obstacle?.along;
  return along === 'column' || along === 'pipe';
}

export function isColumnLoop(columnEdges: ReadonlySet<string>, loop: readonly number[]): boolean {
  return loop.every((p, i) => columnEdges.has(`${p},${loop[(i + 1) % loop.length]}`));
}

/** The ring without the corners between two sides of a column: columns have a rule of their own and make no pockets. */
export function columnsFilled(floor: Floor, columnEdges: ReadonlySet<string>, loop: readonly number[]): Ring {
  const { x, y } = floor.subdivision;
  const kept = loop.filter((p, i) => {
    const before = loop[(i + loop.length - 1) % loop.length];
    const after = loop[(i + 1) % loop.length];
    return !(columnEdges.has(`${before},${p}`) && columnEdges.has(`${p},${after}`));
  });
  return kept.map((p) => [(x[p] as number) / GRID_PER_MM, (y[p] as number) / GRID_PER_MM] as const);
}

/** Traced floor with the notches and holes of columns and pipes filled in. */
export function regionFilled(floor: Floor, columnEdges: ReadonlySet<string>, { loops, region }: Traced): Region {
  const holes = region.holes.filter((_, i) => !isColumnLoop(columnEdges, loops[i + 1] ?? []));
  return { outline: columnsFilled(floor, columnEdges, loops[0] ?? []), holes };
}
