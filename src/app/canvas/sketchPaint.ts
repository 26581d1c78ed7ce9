import type { Point } from '../../geometry/point.ts';
import type { Sketch, SketchMark, SketchTone } from '../tools/sketch.ts';
import { type Viewport, viewportToScreen } from './viewport.ts';

/** Colours of a sketch, from the page's styles. */
export interface SketchColours {
  readonly accent: string;
  readonly fault: string;
  readonly ground: string;
}

/** Pens of a sketch, px: it is drawn over the board and not on the plan's paper. */
const linePx: Readonly<Record<SketchTone, number>> = { hand: 2, guide: 1, wrong: 2 };
const guideDashPx = [6, 4];
const cornerPx = 9;
const sidePx = 4;
const dotPx = 4;
/** Arms of the cross: from here to there. */
const crossOpenPx = 6;
const crossPx = 18;
const textPx = 12;
const textGapPx = 10;
const haloPx = 4;

/** Paints what a tool shows, in pixels of the board. */
export function sketchPaint(
  context: CanvasRenderingContext2D,
  { marks }: Sketch,
  view: Viewport,
  colours: SketchColours,
): void {
  // Two guides of one thing say it once.
  const words = [
    ...new Map(marks.flatMap((each) => (each.mark === 'words' ? [[each.text, each] as const] : []))).values(),
  ];
  for (const mark of marks) if (mark.mark !== 'words') markPaint(context, mark, view, colours);
  let rank = 0;
  for (const mark of words) {
    wordsPaint(context, mark, view, colours, rank);
    rank += 1;
  }
}

function toneColour({ accent, fault }: SketchColours, tone: SketchTone): string {
  return tone === 'wrong' ? fault : accent;
}

function markPaint(
  context: CanvasRenderingContext2D,
  mark: Exclude<SketchMark, { readonly mark: 'words' }>,
  view: Viewport,
  colours: SketchColours,
): void {
  const colour = toneColour(colours, mark.tone);
  context.lineWidth = linePx[mark.tone];
  context.strokeStyle = colour;
  context.setLineDash(mark.tone === 'guide' ? guideDashPx : []);
  context.beginPath();
  if (mark.mark === 'line') {
    mark.points.forEach((point, i) => {
      const [x, y] = viewportToScreen(view, point);
      if (i === 0) context.moveTo(x, y);
      else context.lineTo(x, y);
    });
    if (mark.closed) context.closePath();
    context.stroke();
    return;
  }
  const [x, y] = viewportToScreen(view, mark.at);
  context.setLineDash([]);
  if (mark.mark === 'cross') {
    crossPaint(context, [x, y], colour, colours.ground);
    return;
  }
  context.lineWidth = 2;
  context.fillStyle = mark.mark === 'dot' ? colour : colours.ground;
  if (mark.mark === 'corner') context.rect(x - cornerPx / 2, y - cornerPx / 2, cornerPx, cornerPx);
  else context.arc(x, y, mark.mark === 'dot' ? dotPx : sidePx, 0, 2 * Math.PI);
  context.fill();
  if (mark.mark !== 'dot') context.stroke();
}

/** The hand that keys lead, where no pointer shows it: four arms round an open middle, with a halo on any ground. */
function crossPaint(context: CanvasRenderingContext2D, [x, y]: Point, colour: string, ground: string): void {
  for (const [from, to] of [
    [crossOpenPx, crossPx],
    [-crossOpenPx, -crossPx],
  ] as const) {
    context.moveTo(x + from, y);
    context.lineTo(x + to, y);
    context.moveTo(x, y + from);
    context.lineTo(x, y + to);
  }
  context.strokeStyle = ground;
  context.lineWidth = 5;
  context.stroke();
  context.strokeStyle = colour;
  context.lineWidth = 2;
  context.stroke();
}

function wordsPaint(
  context: CanvasRenderingContext2D,
  { at, text, tone }: { readonly at: Point; readonly text: string; readonly tone: SketchTone },
  view: Viewport,
  colours: SketchColours,
  rank: number,
): void {
  const [x, y] = viewportToScreen(view, at);
  context.font = `600 ${textPx}px 'Public Sans', sans-serif`;
  context.textAlign = 'left';
  context.textBaseline = 'middle';
  context.setLineDash([]);
  context.lineJoin = 'round';
  context.lineWidth = haloPx;
  context.strokeStyle = colours.ground;
  const [textX, textY] = [x + textGapPx, y - textGapPx - rank * (textPx + 4)];
  context.strokeText(text, textX, textY);
  context.fillStyle = toneColour(colours, tone);
  context.fillText(text, textX, textY);
}
