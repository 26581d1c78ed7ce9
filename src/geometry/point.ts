/** A place on the sheet: x to the right, y down. The unit is the caller's, the same through a call. */
export type Point = readonly [x: number, y: number];

/** Length of a vector. A square root is rounded alike in every browser, as `Math.hypot` is not, and takes a tenth of its time. */
export function vectorLength(dx: number, dy: number): number {
  return Math.sqrt(dx * dx + dy * dy);
}

export function pointDistance(a: Point, b: Point): number {
  return vectorLength(b[0] - a[0], b[1] - a[1]);
}

export function pointEquals(a: Point, b: Point): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

/** The point at `share` of the way from a (0) to b (1). */
export function pointBetween(a: Point, b: Point, share: number): Point {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}

/** Unit vector from a to b; [0, 0] where they coincide. */
export function pointDirection(a: Point, b: Point): Point {
  const length = pointDistance(a, b);
  return length === 0 ? [0, 0] : [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}
