import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import { onGrid, WELD_MM } from '../geometry/tolerance.ts';
import type { TileGrid } from '../plan/plan.ts';
import { tileModule } from '../plan/tile-grid.ts';
import { type GridStretch, stretchAt } from './cut-pieces.ts';
import type { FieldFloor } from './field-floor.ts';
import { type Face, phaseCost } from './phase-cost.ts';
import type { Stretch } from './stretches.ts';

/** Where a field is better set out. Walls and joints that run along the grid bear on one axis each, so each axis is weighed by itself: what a wall
 *  costs by the size of the cut at it, what a joint costs off its grout line. The best of both axes together are then to be counted in full. */

export interface SetOutWishes {
  /** Whether joints are to lie in grout as they are; else they will follow, and grout lines near corners that turn in are what they need. */
  readonly joints: 'as-they-are' | 'to-follow';
}

/** Set-out points worth counting, the most promising first, none that makes the same grid as another; places on the sheet.
 *  @param most how many at most */
export function setOutCandidates(
  floor: FieldFloor,
  stretchesOf: ReadonlyMap<string, readonly Stretch[]>,
  { joints }: SetOutWishes,
  most: number,
): readonly Point[] {
  const { grid } = floor.field;
  const faces = facesOf(floor, stretchesOf);
  const axes = ([0, 1] as const).map((axis) => {
    const own = joints === 'as-they-are' ? faces[axis] : faces[axis].filter(({ isJoint }) => !isJoint);
    const corners = joints === 'as-they-are' ? [] : cornersIn(floor, axis);
    return phases(grid, axis, own, corners).slice(0, PHASES_EACH);
  }) as [Phase[], Phase[]];
  const [xs, ys] = axes;
  return xs
    .flatMap((x) =>
      ys.map((y) => ({ at: [x.at, y.at] as const, unasked: x.unasked + y.unasked, cost: x.cost + y.cost })),
    )
    .sort((p, q) => p.cost - q.cost || p.unasked - q.unasked || p.at[0] - q.at[0] || p.at[1] - q.at[1])
    .slice(0, most)
    .map(({ at }): Point => {
      const [x, y] = floor.frame.toSheet(at);
      return [onGrid(x), onGrid(y)];
    });
}

/** The best phases of each axis that are tried with those of the other. */
const PHASES_EACH = 6;

interface Phase {
  /** Where a tile begins, as near to the present set-out point as its module allows, mm. */
  readonly at: number;
  /** 1 where no wall, joint or corner asks for it. */
  readonly unasked: 0 | 1;
  readonly cost: number;
}

function phases(grid: TileGrid, axis: 0 | 1, faces: readonly Face[], corners: readonly number[]): Phase[] {
  const [size, module] = [axis === 0 ? grid.lengthMm : grid.widthMm, tileModule(grid)[axis]];
  const halfGrout = grid.groutMm / 2;
  const starts = faces.flatMap(({ at, side, isJoint }) => {
    if (isJoint) return [at + halfGrout];
    const own = side === 1 ? [at] : [at - size];
    const opposite = faces.filter((other) => side === 1 && other.side === -1 && !other.isJoint && other.at > at);
    // Equal cuts at both: a tile or a grout line in the middle.
    return [...own, ...opposite.flatMap((other) => [(at + other.at - size) / 2, (at + other.at) / 2 + halfGrout])];
  });
  const near = (v: number) => onGrid(v - Math.round(v / module) * module);
  const spread = Array.from({ length: SPREAD_STARTS }, (_, k) => (module * k) / SPREAD_STARTS);
  const asked = new Set([0, ...starts, ...corners.map((v) => v + halfGrout)].map(near));
  const places = [...new Set([...asked, ...spread.map(near)])].slice(0, MOST_STARTS);
  return places
    .map((at): Phase => ({ at, unasked: asked.has(at) ? 0 : 1, cost: phaseCost(grid, axis, faces, corners, at) }))
    .sort((p, q) => p.cost - q.cost || p.unasked - q.unasked || Math.abs(p.at) - Math.abs(q.at));
}

/** Places spread evenly over a module: where nothing asks for one, jambs and nooks may still like one better than another. */
const SPREAD_STARTS = 8;

/** A hall of hundreds of pillars offers more than are worth weighing. */
const MOST_STARTS = 400;

/** Edges of the field's floor that run along the grid, by the axis that they are square to. */
function facesOf(floor: FieldFloor, stretchesOf: ReadonlyMap<string, readonly Stretch[]>): [Face[], Face[]] {
  const found: [Face[], Face[]] = [[], []];
  for (const { bay, region } of floor.pieces) {
    const stretches = (stretchesOf.get(bay) ?? []).map(
      (stretch): GridStretch => ({ stretch, points: stretch.points.map(floor.frame.toGrid) }),
    );
    for (const ring of [region.outline, ...region.holes]) {
      ring.forEach((p, k) => {
        const q = ring[(k + 1) % ring.length] as Point;
        const [ux, uy] = pointDirection(p, q);
        const lengthMm = pointDistance(p, q);
        const axis = Math.abs(ux) < Math.abs(uy) ? 0 : 1;
        if (Math.min(Math.abs(ux), Math.abs(uy)) * lengthMm > WELD_MM) return;
        const isJoint = stretchAt(stretches, p, q)?.along === 'joint';
        // The floor lies to the right of an edge, seen along it.
        const side = (axis === 0 ? -uy : ux) > 0 ? 1 : -1;
        found[axis].push({ at: (p[axis] + q[axis]) / 2, side, lengthMm, isJoint });
      });
    }
  }
  return found;
}

/** Places along an axis of corners that turn into the field's floor, where a joint will be needed. */
function cornersIn({ pieces }: FieldFloor, axis: 0 | 1): number[] {
  return pieces.flatMap(({ region }) =>
    [region.outline, ...region.holes].flatMap((ring) =>
      ring.flatMap((p, k) => {
        const a = ring[(k + ring.length - 1) % ring.length] as Point;
        const b = ring[(k + 1) % ring.length] as Point;
        const turn = (p[0] - a[0]) * (b[1] - p[1]) - (p[1] - a[1]) * (b[0] - p[0]);
        return turn < 0 ? [p[axis]] : [];
      }),
    ),
  );
}
