import type { Point } from '../geometry/point.ts';
import { type Ink, lineInks } from './ink.ts';
import type { PaperBox } from './sheet.ts';
import { bandMm, beyondMm } from './sheet-grid.ts';
import { penStroke } from './strip-pen.ts';

/** Numbers of the sheets beside one; null where none is. */
export interface Neighbours {
  readonly left: number | null;
  readonly right: number | null;
  readonly up: number | null;
  readonly down: number | null;
}

/** Match lines along which two sheets are laid on each other, with cut marks at their ends and the number of the sheet that goes on there. */
export function matchInks(window: PaperBox, { left, right, up, down }: Neighbours): readonly Ink[] {
  const [l, t, r, b] = [window.x, window.y, window.x + window.width, window.y + window.height];
  const [cx, cy] = [(l + r) / 2, (t + b) / 2];
  const half = bandMm / 2;
  const inks: Ink[] = [];
  const upright = (x: number, wordsX: number, page: number) =>
    inks.push(...lineMarks([x, t], [x, b], [0, -1]), matchText([wordsX, cy], page, -90));
  const level = (y: number, wordsY: number, page: number) =>
    inks.push(...lineMarks([l, y], [r, y], [-1, 0]), matchText([cx, wordsY], page, 0));
  if (left !== null) upright(l + beyondMm, l - half, left);
  if (right !== null) upright(r - beyondMm, r + half, right);
  if (up !== null) level(t + beyondMm, t - half, up);
  if (down !== null) level(b - beyondMm, b + half, down);
  return inks;
}

const cutMm = 4;

/** @param out from the first end out of the window */
function lineMarks(from: Point, to: Point, [dx, dy]: Point): readonly Ink[] {
  const cut = ([x, y]: Point, by: number): readonly Point[] => [
    [x + dx * by, y + dy * by],
    [x + dx * (by + Math.sign(by) * cutMm), y + dy * (by + Math.sign(by) * cutMm)],
  ];
  return [
    ...lineInks('match', [from, to]),
    {
      ink: 'path',
      lines: [cut(from, 1), cut(to, -1)],
      closed: false,
      fill: null,
      stroke: penStroke(0.35, 'ink'),
    },
  ];
}

function matchText(at: Point, page: number, angleDeg: number): Ink {
  const text = `Match line: goes on on sheet ${page}`;
  return { ink: 'text', text, style: 'sheet-text', colour: 'ink', at, anchor: 'middle', angleDeg, halo: null };
}
