import { type Point, vectorLength } from '../../geometry/point.ts';
import type { Sketch, SketchMark, SketchTone } from '../tools/sketch.ts';
import { type Viewport, viewportPaperPx, viewportToScreen } from './viewport.ts';

/** Colours of a sketch, from the page's styles. */
export interface SketchColours {
  readonly accent: string;
  readonly fault: string;
  readonly ground: string;
}

/** Pens of a sketch, px: it is drawn over the board and not on the plan's paper. */
const linePx: Readonly<Record<SketchTone, number>> = { hand: 2, guide: 1, lit: 7, wrong: 2 };
const guideDashPx = [6, 4];
const cornerPx = 9;
const sidePx = 4;
const dotPx = 4;
/** What is lit leaves what lies under it to be read: its lines and its areas, shares of their colour. */
const litShare = { line: 0.6, area: 0.25 } as const;
/** Arms of the cross: from here to there. */
const crossOpenPx = 6;
const crossPx = 18;
/** A dimension: its pen, the ground under it, its slanted end marks, and how far the line from its side goes past it. */
const dimensionPx = { line: 1, ground: 3, slant: 5, past: 4 } as const;
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
  for (const mark of marks) if (mark.mark === 'dimension') dimensionPaint(context, mark, view, colours);
  for (const mark of marks)
    if (mark.mark !== 'words' && mark.mark !== 'dimension') markPaint(context, mark, view, colours);
  let rank = 0;
  for (const mark of words) {
    wordsPaint(context, mark, view, colours, rank);
    rank += 1;
  }
}

/** Paints the same into the drawing itself, whose context is set for its inks. */
export function underPaint(
  context: CanvasRenderingContext2D,
  sketch: Sketch,
  view: Viewport,
  colours: SketchColours,
): void {
  const [x, y] = view.offsetPx;
  context.save();
  context.scale(1 / viewportPaperPx(1), 1 / viewportPaperPx(1));
  context.translate(-x, -y);
  sketchPaint(context, sketch, view, colours);
  context.restore();
}

function toneColour({ accent, fault }: SketchColours, tone: SketchTone): string {
  return tone === 'wrong' ? fault : accent;
}

function markPaint(
  context: CanvasRenderingContext2D,
  mark: Exclude<SketchMark, { readonly mark: 'words' | 'dimension' }>,
  view: Viewport,
  colours: SketchColours,
): void {
  const colour = toneColour(colours, mark.tone);
  context.lineWidth = linePx[mark.tone];
  context.strokeStyle = colour;
  context.setLineDash(mark.tone === 'guide' ? guideDashPx : []);
  context.beginPath();
  if (mark.mark === 'line') {
    pathTrace(context, mark, view);
    context.globalAlpha = mark.tone === 'lit' ? litShare.line : 1;
    context.stroke();
    context.globalAlpha = 1;
    return;
  }
  if (mark.mark === 'area') {
    for (const points of mark.rings) pathTrace(context, { points, closed: true }, view);
    context.fillStyle = colour;
    context.globalAlpha = litShare.area;
    context.fill('evenodd');
    context.globalAlpha = litShare.line;
    context.stroke();
    context.globalAlpha = 1;
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

function pathTrace(
  context: CanvasRenderingContext2D,
  { points, closed }: { readonly points: readonly Point[]; readonly closed: boolean },
  view: Viewport,
): void {
  points.forEach((point, i) => {
    const [x, y] = viewportToScreen(view, point);
    if (i === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  });
  if (closed) context.closePath();
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

type DimensionMark = Extract<SketchMark, { readonly mark: 'dimension' }>;

/** A line from end to end with a slanted stroke across each, and from there thin lines back to what is measured. On a ground
 *  of its own it is seen over tints and hatches. */
function dimensionPaint(
  context: CanvasRenderingContext2D,
  { ends, asidePx: [dx, dy], stems, tone }: DimensionMark,
  view: Viewport,
  colours: SketchColours,
): void {
  const feet = ends.map((end) => viewportToScreen(view, end)) as [Point, Point];
  const [a, b] = feet.map(([x, y]): Point => [x + dx, y + dy]) as [Point, Point];
  const lengthPx = vectorLength(b[0] - a[0], b[1] - a[1]) || 1;
  const offPx = vectorLength(dx, dy);
  const [ux, uy] = [(b[0] - a[0]) / lengthPx, (b[1] - a[1]) / lengthPx];
  // Halfway between along the line and square to it.
  const slant: Point = [(ux - uy) * dimensionPx.slant * Math.SQRT1_2, (uy + ux) * dimensionPx.slant * Math.SQRT1_2];
  const past = offPx === 0 ? 0 : (offPx + dimensionPx.past) / offPx;
  context.setLineDash([]);
  context.beginPath();
  for (const [i, [x, y]] of [a, b].entries()) {
    const foot = feet[i] as Point;
    if (stems[i]) {
      context.moveTo(foot[0], foot[1]);
      context.lineTo(foot[0] + dx * past, foot[1] + dy * past);
    }
    context.moveTo(x - slant[0], y - slant[1]);
    context.lineTo(x + slant[0], y + slant[1]);
  }
  context.moveTo(a[0], a[1]);
  context.lineTo(b[0], b[1]);
  context.lineWidth = dimensionPx.ground;
  context.strokeStyle = colours.ground;
  context.stroke();
  context.lineWidth = dimensionPx.line;
  context.strokeStyle = toneColour(colours, tone);
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
