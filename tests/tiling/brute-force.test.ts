import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import type { Region } from '../../src/geometry/ring.ts';
import { tilePieces } from '../../src/plan/analysis.ts';
import { createChance } from '../floors/chance.ts';
// biome-ignore lint/correctness/useImportExtensions: the rule takes the declarations beside the file for the file itself
import { jtsPieces } from '../geometry/jts.mjs';
import {
  area,
  type Bounds,
  boundsOf,
  distance,
  distanceToSegment,
  ringLength,
  rings,
  type Segment,
  type Shape,
  segments,
} from '../oracle/planar.ts';
import { shapeInPlane, tilePlane, tilesCount, tilesOver, tileVerdict } from '../oracle/tile-plane.ts';
import { anyRoom, anyTiles, bonds, type TiledBay, tiledBay } from './one-bay.ts';

/** Every tile laid on the floor one by one, and its pieces cut out by an outside library: what is counted and measured must be the same. */

const angles = [0, 17, 45, 90] as const;
const kinds = bonds.flatMap((bond) => angles.map((angleDeg) => [bond, angleDeg] as const));

const laidAt = (bond: (typeof bonds)[number], angleDeg: number, seed: number, skew: boolean): TiledBay =>
  tiledBay(anyRoom(seed, { skew }), anyTiles(createChance(seed * 31 + angleDeg), bond, angleDeg));

describe('tiles laid one by one', () => {
  it.each(kinds)('are as many, whole and cut, in %s bond at %i degrees', (bond, angleDeg) => {
    for (let seed = 1; seed <= 5; seed++) {
      const { grid, region, report } = laidAt(bond, angleDeg, seed, seed % 3 === 0);
      const count = tilesCount(grid, [[region]]);
      const outlineMm = rings(region).reduce((sum, ring) => sum + ringLength(ring), 0);
      expect(count.whole[1]).toBeGreaterThan(0);
      expect(report.full).toBeGreaterThanOrEqual(count.whole[0]);
      expect(report.full).toBeLessThanOrEqual(count.whole[1]);
      expect(report.cut).toBeGreaterThanOrEqual(count.cut[0]);
      expect(report.cut).toBeLessThanOrEqual(count.cut[1]);
      expect(Math.abs(report.tileM2 * 1e6 - count.areaMm2)).toBeLessThanOrEqual(outlineMm);
      expect(Math.abs((report.tileM2 + report.groutM2) * 1e6 - area([region]))).toBeLessThanOrEqual(outlineMm);
    }
  });
});

function isSure({ grid, region }: TiledBay): boolean {
  const shape = shapeInPlane([region], tilePlane(grid));
  const tiles = [...tilesOver(grid, boundsOf(shape.flatMap(({ outline }) => outline)))];
  return tiles.every(({ bounds }) => tileVerdict(shape, bounds).cut !== 'may');
}

/** What a side of the floor cuts: sizes square to it, and which tiles. */
interface SideCuts {
  readonly side: Segment;
  readonly sizes: number[];
  readonly tiles: Set<string>;
}

function cutsBySide({ grid, region }: TiledBay): {
  sides: SideCuts[];
  pieces: number;
  underHalf: number;
  slivers: number;
} {
  const plane = tilePlane(grid);
  const shape: Shape = shapeInPlane([region], plane);
  const sides = shape
    .flatMap(rings)
    .flatMap(segments)
    .map((side): SideCuts => ({ side, sizes: [], tiles: new Set() }));
  let [pieces, underHalf, slivers] = [0, 0, 0];
  for (const { name, bounds } of tilesOver(grid, boundsOf(shape.flatMap(({ outline }) => outline)))) {
    const { whole, areaMm2 } = tileVerdict(shape, bounds);
    if (whole === 'yes' || areaMm2 === 0) continue;
    for (const piece of jtsPieces('intersect', shape, [boxOf(bounds)])) {
      const cuts = pieceCuts(piece, bounds, sides);
      if (cuts.length === 0) continue;
      pieces++;
      const least = Math.min(...cuts.map(({ share }) => share));
      if (least < 0.499) underHalf++;
      if (least < 1 / 3 - 0.001) slivers++;
      for (const { of, sizeMm } of cuts) {
        of.sizes.push(sizeMm);
        of.tiles.add(name);
      }
    }
  }
  return { sides, pieces, underHalf, slivers };
}

/** Sides of the floor that bound a piece for more than a weld, with what is left of the tile square to each. */
function pieceCuts(piece: Region, tile: Bounds, sides: readonly SideCuts[]) {
  const corners = piece.outline;
  return sides.flatMap((of) => {
    const [a, b] = of.side;
    const runs = rings(piece)
      .flatMap(segments)
      .filter(([p, q]) => [p, q].every((end) => distanceToSegment(end, of.side) < 0.01) && !isOnTile([p, q], tile));
    if (runs.reduce((sum, [p, q]) => sum + distance(p, q), 0) < 1) return [];
    const along: Point = [(b[0] - a[0]) / distance(a, b), (b[1] - a[1]) / distance(a, b)];
    const depth = (p: Point) => (p[1] - a[1]) * along[0] - (p[0] - a[0]) * along[1];
    // The floor lies on one side: to the right of a ring that runs clockwise.
    const sizeMm = Math.max(...corners.map(depth));
    const wholeMm = Math.abs(along[1]) * (tile.x1 - tile.x0) + Math.abs(along[0]) * (tile.y1 - tile.y0);
    return sizeMm > 1 && sizeMm < wholeMm - 1 ? [{ of, sizeMm, share: sizeMm / wholeMm }] : [];
  });
}

function isOnTile([p, q]: Segment, { x0, x1, y0, y1 }: Bounds): boolean {
  const on = (v: number, w: number, at: number) => Math.abs(v - at) < 0.001 && Math.abs(w - at) < 0.001;
  return [x0, x1].some((x) => on(p[0], q[0], x)) || [y0, y1].some((y) => on(p[1], q[1], y));
}

function boxOf({ x0, x1, y0, y1 }: Bounds): Region {
  return {
    outline: [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ],
    holes: [],
  };
}

describe('pieces cut out by an outside library', () => {
  it.each(kinds)('have the sizes that are told wall by wall, in %s bond at %i degrees', (bond, angleDeg) => {
    // Tiles that a wall enters by just about a weld may count either way: such rooms are passed over.
    const bays: TiledBay[] = [];
    for (let seed = 3; bays.length < 2 && seed < 40; seed++) {
      const bay = laidAt(bond, angleDeg, seed, seed % 3 === 0);
      if (isSure(bay)) bays.push(bay);
    }
    expect(bays.length).toBe(2);
    for (const bay of bays) {
      const { report } = bay;
      const right = cutsBySide(bay);
      expect(report.cuts).toHaveLength(right.sides.length);
      right.sides.forEach(({ sizes, tiles }, i) => {
        const cut = report.cuts[i];
        const told = cut?.sizesMm ?? [];
        const name = `side ${i} of ${right.sides.length}`;
        expect([name, cut?.tiles]).toEqual([name, tiles.size]);
        if (sizes.length === 0) return;
        expect([name, Math.abs((told[0] ?? 0) - Math.min(...sizes)) < 0.01]).toEqual([name, true]);
        for (const size of told) expect(sizes.some((own) => Math.abs(own - size) < 0.01)).toBe(true);
        if (cut?.isAskew) expect(Math.abs((told.at(-1) ?? 0) - Math.max(...sizes))).toBeLessThan(1.01);
        else for (const size of sizes) expect(told.some((own) => Math.abs(own - size) < 1.01)).toBe(true);
      });
      expect([report.underHalf, report.slivers]).toEqual([right.underHalf, right.slivers]);
      const all = right.sides.flatMap(({ sizes }) => sizes);
      expect(report.smallestCutMm).toBeCloseTo(Math.min(...all), 2);
      expect(tilePieces(report)).toBe(right.pieces);
    }
  });
});
