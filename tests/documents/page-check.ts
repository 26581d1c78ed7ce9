import type { TextInk } from '../../src/documents/ink.ts';
import type { Page } from '../../src/documents/page.ts';
import { textFontMm, textStyles } from '../../src/documents/styles.ts';
import { textWidthMm } from '../../src/documents/text-width.ts';
import type { Point } from '../../src/geometry/point.ts';

/** What would be read wrongly on a finished page: text over text, over a joint or over the edge. Reckoned from the inks alone, apart from the code that
 *  seats labels. */
export interface TextBlock {
  readonly text: string;
  /** Corners round the letters, mm on paper. */
  readonly corners: readonly Point[];
}

/** What stands across the whole sheet lies behind all else and is no text that anything could hide. */
function isAcross({ style }: TextInk): boolean {
  return style.startsWith('across-');
}

export function pageTexts(page: Page): readonly TextInk[] {
  return page.groups.flatMap(({ inks }) => inks.flatMap((ink) => (ink.ink === 'text' && !isAcross(ink) ? [ink] : [])));
}

/** Round the letters of a text, from the height of its capitals and as wide as it may be in any of the usual fonts; a hair smaller, since lines of one
 *  block touch. */
export function textBlock({ text, style, at, anchor, angleDeg }: TextInk): TextBlock {
  const width = textWidthMm(text, style);
  const from = anchor === 'start' ? 0 : anchor === 'middle' ? -width / 2 : -width;
  // capitals and what hangs below the line, but not the leading
  const half = textStyles[style].capMm / 2;
  const below = half + 0.2 * textFontMm(style);
  const turn = (angleDeg * Math.PI) / 180;
  const corner = (x: number, y: number): Point => [
    at[0] + x * Math.cos(turn) - y * Math.sin(turn),
    at[1] + x * Math.sin(turn) + y * Math.cos(turn),
  ];
  const [left, right] = [from + 0.05, from + width - 0.05];
  return { text, corners: [corner(left, -half), corner(right, -half), corner(right, below), corner(left, below)] };
}

/** Pairs of texts that stand over each other. */
export function textOverText(page: Page): readonly string[] {
  const blocks = pageTexts(page).map(textBlock);
  const found: string[] = [];
  const boxes = blocks.map(({ corners }) => bounds(corners));
  // from left to right, so that only texts beside each other are compared
  const order = blocks.map((_, i) => i).sort((a, b) => (boxes[a]?.[0] ?? 0) - (boxes[b]?.[0] ?? 0));
  for (const [k, i] of order.entries()) {
    for (const j of order.slice(k + 1)) {
      const [one, other, a, b] = [boxes[i], boxes[j], blocks[i], blocks[j]];
      if (one === undefined || other === undefined || a === undefined || b === undefined) continue;
      if (other[0] > one[2]) break;
      if (convexMeet(a.corners, b.corners)) found.push(`${a.text.slice(0, 60)} | ${b.text.slice(0, 60)}`);
    }
  }
  return found;
}

/** Texts that a stroke of a joint runs through. */
export function textOverJoints(page: Page): readonly string[] {
  const strokes = page.groups.flatMap(({ ref, inks }) =>
    ref?.kind !== 'joint'
      ? []
      : inks.flatMap((ink) => (ink.ink === 'path' && !ink.closed && ink.stroke !== null ? ink.lines : [])),
  );
  const pieces = strokes.flatMap((line) => line.slice(1).map((b, i) => [line[i] as Point, b] as const));
  const boxes = pieces.map((piece) => bounds(piece));
  return pageTexts(page)
    .map(textBlock)
    .filter(({ corners }) => {
      const [minX, minY, maxX, maxY] = bounds(corners);
      return pieces.some((piece, i) => {
        const box = boxes[i];
        if (box === undefined || box[0] > maxX || box[2] < minX || box[1] > maxY || box[3] < minY) return false;
        return convexMeet(corners, piece);
      });
    })
    .map(({ text }) => text.slice(0, 60));
}

/** Texts that reach over the edge of the paper. */
export function textOffPage(page: Page): readonly string[] {
  return pageTexts(page)
    .map(textBlock)
    .filter(({ corners }) => corners.some(([x, y]) => x < 0 || y < 0 || x > page.widthMm || y > page.heightMm))
    .map(({ text }) => text.slice(0, 60));
}

/** All words of a page in the order in which they are written. */
export function pageWords(page: Page): string {
  return page.groups
    .flatMap(({ inks }) => inks.flatMap((ink) => (ink.ink === 'text' ? [ink.text] : [])))
    .join(' ')
    .replaceAll('\u00a0', ' ');
}

function bounds(points: readonly Point[]): readonly [number, number, number, number] {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

/** Whether two convex shapes overlap: no line square to a side of either parts them. */
function convexMeet(a: readonly Point[], b: readonly Point[]): boolean {
  for (const [points, others] of [
    [a, b],
    [b, a],
  ] as const) {
    for (const [i, [x1, y1]] of points.entries()) {
      const [x2, y2] = points[(i + 1) % points.length] as Point;
      for (const [nx, ny] of [
        [y1 - y2, x2 - x1],
        [x2 - x1, y2 - y1],
      ] as const) {
        const along = ([x, y]: Point) => x * nx + y * ny;
        const [own, far] = [points.map(along), others.map(along)];
        if (Math.max(...own) <= Math.min(...far) || Math.max(...far) <= Math.min(...own)) return false;
      }
    }
  }
  return true;
}
