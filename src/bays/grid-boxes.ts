/** Upright lines i1 and i2, level lines j1 and j2, by number. */
type GridBox = readonly [number, number, number, number];

/** The two rectangles that a cut leaves. */
export function halvesAt(cut: number, i1: number, i2: number, j1: number, j2: number): [GridBox, GridBox] {
  return cut > 0
    ? [
        [i1, cut, j1, j2],
        [cut, i2, j1, j2],
      ]
    : [
        [i1, i2, j1, -cut],
        [i1, i2, -cut, j2],
      ];
}

/** What sums along a line, rising from its start, say of the stretch between two lines across. */
export function along(sums: Float64Array, line: number, from: number, to: number): number {
  return (sums[line + to] as number) - (sums[line + from] as number);
}

/** The whole numbers between two others. */
export function numbersBetween(low: number, high: number): number[] {
  return Array.from({ length: high - low - 1 }, (_, i) => low + 1 + i);
}

/** For lines numbered 0 to count - 1: the pair (a, b), a < b, is number places[a] / step + b; the last of a line follow the first of the next. */
export function pairPlaces(places: Int32Array, count: number, step: number): Int32Array {
  for (let a = 0, next = 0; a < count; a++) {
    places[a] = (next - a - 1) * step;
    next += count - 1 - a;
  }
  return places;
}
