import { type Point, pointDistance } from '../geometry/point.ts';
import { DIRECTION_DEG, EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import type { Room, TileGrid } from './plan.ts';
import type { DefaultKey } from './reference.ts';

/** What cutting takes at the usual: more where the tiles run askew to the walls of all rooms of their field, most in a herringbone. How the floor lies
 *  on the sheet does not count. Where the field has no room, the sheet stands for its walls.
 *  Example: a rectangle turned by 20 degrees, its tiles turned by 20 -> straight; turned by 65 -> askew */
export function tileAllowanceKey(
  { bond, angleDeg }: Pick<TileGrid, 'bond' | 'angleDeg'>,
  rooms: readonly Pick<Room, 'outline' | 'holes'>[],
): DefaultKey {
  if (bond === 'herringbone') return 'tileAllowanceHerringbone';
  const isStraight =
    rooms.length === 0
      ? turnBetween(angleDeg, 0) <= DIRECTION_DEG
      : rooms.some(({ outline, holes }) => runsWith([outline, ...holes].flatMap(wallsOf), angleDeg));
  return isStraight ? 'tileAllowanceStraight' : 'tileAllowanceDiagonal';
}

interface Wall {
  /** Within a quarter turn, degrees. */
  readonly turnDeg: number;
  readonly lengthMm: number;
}

function wallsOf(ring: readonly Point[]): Wall[] {
  return ring.map((a, k): Wall => {
    const b = ring[(k + 1) % ring.length] as Point;
    return {
      turnDeg: quarterOf((Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI),
      lengthMm: pointDistance(a, b),
    };
  });
}

/** Whether no other direction, and the one square to it, has more wall than the grid's. */
function runsWith(walls: readonly Wall[], angleDeg: number): boolean {
  const isOwn = ({ turnDeg }: Wall) => turnBetween(turnDeg, angleDeg) <= DIRECTION_DEG;
  const ownMm = walls.reduce((sum, wall) => sum + (isOwn(wall) ? wall.lengthMm : 0), 0);
  return ownMm >= mostAlong(walls.filter((wall) => !isOwn(wall))) - EQUAL_LENGTH_MM;
}

/** The most wall that runs along any one wall, mm: a window that slides over the directions, which close in a ring. */
function mostAlong(walls: readonly Wall[]): number {
  const sorted = [-90, 0, 90]
    .flatMap((by) => walls.map(({ turnDeg, lengthMm }): Wall => ({ turnDeg: turnDeg + by, lengthMm })))
    .sort((a, b) => a.turnDeg - b.turnDeg);
  let [first, next, mm, most] = [0, 0, 0, 0];
  for (const { turnDeg } of sorted) {
    for (; (sorted[next]?.turnDeg ?? Infinity) <= turnDeg + DIRECTION_DEG; next++) mm += sorted[next]?.lengthMm ?? 0;
    for (; (sorted[first]?.turnDeg ?? Infinity) < turnDeg - DIRECTION_DEG; first++) mm -= sorted[first]?.lengthMm ?? 0;
    most = Math.max(most, mm);
  }
  return most;
}

/** Between two directions, to the nearest quarter turn, degrees. */
function turnBetween(aDeg: number, bDeg: number): number {
  const turn = quarterOf(aDeg - bDeg);
  return Math.min(turn, 90 - turn);
}

function quarterOf(deg: number): number {
  return ((deg % 90) + 90) % 90;
}
