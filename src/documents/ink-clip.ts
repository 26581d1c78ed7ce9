import { type Point, pointBetween } from '../geometry/point.ts';
import { type Box, boxOf } from '../geometry/ring.ts';
import { segmentWithin } from '../geometry/segment-box.ts';
import { circle } from './circle.ts';
import type { DiscInk, Ink, PathInk, RuledInk } from './ink.ts';

/** What of an ink lies in a window of the paper: nothing is drawn beyond it. Text is kept: it is seated where there is room for all of it.
 *  @param window mm on paper */
export function inksWithin(inks: readonly Ink[], window: Box): readonly Ink[] {
  return inks.flatMap((ink) => inkWithin(ink, window));
}

function inkWithin(ink: Ink, window: Box): readonly Ink[] {
  switch (ink.ink) {
    case 'path':
      return pathWithin(ink, window);
    case 'ruled':
      return ruledWithin(ink, window);
    case 'disc':
      return discWithin(ink, window);
    case 'text':
      return [ink];
  }
}

function pathWithin(ink: PathInk, window: Box): readonly Ink[] {
  const boxes = ink.lines.map(boxOf);
  if (boxes.every((box) => boxHolds(window, box))) return [ink];
  if (!boxes.some((box) => boxesMeet(window, box))) return [];
  if (!ink.closed) return strokesOf(ink, ink.lines, window);
  const fills = ink.lines.map((ring) => ringWithin(ring, window)).filter((ring) => ring.length > 2);
  return [
    ...(ink.fill === null || fills.length === 0 ? [] : [{ ...ink, lines: fills, stroke: null }]),
    // the edge of the window is no edge of what is drawn
    ...strokesOf(
      ink,
      ink.lines.map((ring) => [...ring, ...ring.slice(0, 1)]),
      window,
    ),
  ];
}

function strokesOf(ink: PathInk, lines: PathInk['lines'], window: Box): readonly Ink[] {
  if (ink.stroke === null) return [];
  const pieces = lines.flatMap((line) => polylineWithin(line, window));
  return pieces.length === 0 ? [] : [{ ...ink, lines: pieces, closed: false, fill: null }];
}

function discWithin(ink: DiscInk, window: Box): readonly Ink[] {
  const { centre, radiusMm, fill, stroke } = ink;
  const [x, y] = centre;
  const box = { minX: x - radiusMm, minY: y - radiusMm, maxX: x + radiusMm, maxY: y + radiusMm };
  if (boxHolds(window, box)) return [ink];
  if (!boxesMeet(window, box)) return [];
  return pathWithin({ ink: 'path', lines: [circle(centre, radiusMm)], closed: true, fill, stroke }, window);
}

function ruledWithin(ink: RuledInk, window: Box): readonly Ink[] {
  const { paperPerPlan, offsetMm } = ink.place;
  const planX = (x: number) => (x - offsetMm[0]) / paperPerPlan;
  const planY = (y: number) => (y - offsetMm[1]) / paperPerPlan;
  const onPlan = {
    minX: planX(window.minX),
    minY: planY(window.minY),
    maxX: planX(window.maxX),
    maxY: planY(window.maxY),
  };
  const kept: number[] = [];
  const { strokes } = ink;
  for (let k = 0; k < strokes.length; k += 4) {
    const at = (i: number) => strokes[k + i] as number;
    const piece = segmentWithin([at(0), at(1)], [at(2), at(3)], onPlan);
    if (piece !== null) kept.push(...piece[0], ...piece[1]);
  }
  return kept.length === 0 ? [] : [{ ...ink, strokes: Float64Array.from(kept) }];
}

/** Pieces of a line in a box. */
export function polylineWithin(line: readonly Point[], box: Box): readonly (readonly Point[])[] {
  const pieces: Point[][] = [];
  let open: Point[] | null = null;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1] as Point, line[i] as Point];
    const piece = segmentWithin(a, b, box);
    if (piece === null) {
      open = null;
      continue;
    }
    if (open === null || piece[0] !== a) {
      open = [piece[0]];
      pieces.push(open);
    }
    open.push(piece[1]);
    if (piece[1] !== b) open = null;
  }
  return pieces;
}

/** A ring cut to a box, side by side; where it falls apart the pieces hang together along the box's edge, which a fill does not show. */
function ringWithin(ring: readonly Point[], box: Box): readonly Point[] {
  const sides = [
    [0, box.minX, 1],
    [0, box.maxX, -1],
    [1, box.minY, 1],
    [1, box.maxY, -1],
  ] as const;
  let kept: readonly Point[] = ring;
  for (const [axis, at, side] of sides) {
    const depth = (p: Point) => side * (p[axis] - at);
    kept = kept.flatMap((b, i): readonly Point[] => {
      const a = kept[(i + kept.length - 1) % kept.length] as Point;
      const [before, here] = [depth(a), depth(b)];
      const crossing = before < 0 !== here < 0 ? [pointBetween(a, b, before / (before - here))] : [];
      return here < 0 ? crossing : [...crossing, b];
    });
  }
  return kept;
}

export function boxHolds(outer: Box, inner: Box): boolean {
  return inner.minX >= outer.minX && inner.maxX <= outer.maxX && inner.minY >= outer.minY && inner.maxY <= outer.maxY;
}

export function boxesMeet(a: Box, b: Box): boolean {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}
