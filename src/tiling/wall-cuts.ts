import { pointDirection } from '../geometry/point.ts';
import type { Box } from '../geometry/ring.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { WallCut } from '../plan/analysis.ts';
import type { TileGrid } from '../plan/plan.ts';
import type { CutPiece, CutSide, GridStretch } from './cut-pieces.ts';
import type { WholeRun } from './laid.ts';
import { runBox, wholeOff } from './whole-off.ts';

/** The cuts along every stretch of wall, jamb, thing or joint that bounds a field's floor, in the order of the stretches. */
export function wallCuts(
  stretches: readonly GridStretch[],
  { pieces, runs }: { readonly pieces: readonly CutPiece[]; readonly runs: readonly WholeRun[] },
  grid: TileGrid,
): WallCut[] {
  const boxes = grid.bond === 'herringbone' ? [] : runs.map(runBox);
  const byStretch = new Map<GridStretch['stretch'], WallPiece[]>();
  for (const { sides, key, isInJoint } of pieces) {
    for (const side of sides) {
      const own = byStretch.get(side.stretch) ?? [];
      byStretch.set(side.stretch, own);
      own.push({ side, key, isInJoint });
    }
  }
  return stretches.flatMap((own) => wallCut(own, byStretch.get(own.stretch) ?? [], boxes, grid) ?? []);
}

/** A piece by one of its sides. */
interface WallPiece extends Pick<CutPiece, 'key' | 'isInJoint'> {
  readonly side: CutSide;
}

function wallCut(
  { stretch, points }: GridStretch,
  cuts: readonly WallPiece[],
  runs: readonly Box[],
  grid: TileGrid,
): WallCut | null {
  const { bay, room, along, object } = stretch;
  const [a, b] = [stretch.points[0], stretch.points[stretch.points.length - 1]];
  const [first, last] = [points[0], points[points.length - 1]];
  if (a === undefined || b === undefined || first === undefined || last === undefined) return null;
  const isCurve = stretch.points.length > 2;
  const [ux, uy] = pointDirection(first, last);
  const across = Math.abs(uy) * grid.lengthMm + Math.abs(ux) * grid.widthMm;
  const wholes = cuts.length > 0 ? cuts.map(({ side }) => side.wholeMm) : [across];
  // In a herringbone tiles lie both ways.
  const wholeMm = Math.max(...wholes);
  const isAskew = isCurve || cuts.some(({ side }) => side.isAskew);
  const sizes = cuts.map(({ side }) => side.sizeMm);
  return {
    bay,
    room,
    along,
    object,
    line: [a, b],
    sizesMm: sizes.length === 0 ? [wholeMm] : isAskew ? sizesRange(sizes) : sizesOnce(sizes),
    wholeMm,
    leastShare: Math.min(1, ...cuts.flatMap(({ side, isInJoint }) => (isInJoint ? [] : side.sizeMm / side.wholeMm))),
    isAskew,
    tiles: new Set(cuts.map(({ key }) => key)).size,
    wholeOffMm: isAskew ? null : wholeOff(first, last, runs, grid.groutMm),
  };
}

/** Sizes that differ by no more than a weld are one, rising. */
function sizesOnce(sizes: readonly number[]): number[] {
  const kept: number[] = [];
  for (const size of [...sizes].sort((p, q) => p - q)) {
    if (kept.length === 0 || size - (kept[kept.length - 1] as number) > WELD_MM) kept.push(size);
  }
  return kept;
}

/** The least and the greatest; one where they are no more than a weld apart. */
function sizesRange(sizes: readonly number[]): number[] {
  const least = sizes.reduce((min, size) => Math.min(min, size), Infinity);
  const most = sizes.reduce((max, size) => Math.max(max, size), -Infinity);
  return sizesOnce([least, most]);
}
