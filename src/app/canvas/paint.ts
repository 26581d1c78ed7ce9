import type { DrawingItem, PlacedLabel } from '../../documents/drawing.ts';
import { type Ink, itemInks, labelInks, type PathInk, type RuledInk } from '../../documents/ink.ts';
import { colours, haloMm, type Stroke, type Theme, textFontMm, textStyles } from '../../documents/styles.ts';
import { marks } from '../../documents/symbols.ts';
import type { Point } from '../../geometry/point.ts';

/** The pen of the board: it draws the same inks as the sheet on paper does. Its unit is the mm on paper, its origin
 *  that of the plan: the caller has scaled and moved the context. */
export interface Pen {
  readonly context: CanvasRenderingContext2D;
  readonly theme: Theme;
}

const fontFamily = "'Public Sans', sans-serif";
const wholeTurn = 2 * Math.PI;

export function itemInksAt(item: DrawingItem, paperPerPlan: number): readonly Ink[] {
  return itemInks(item, { paperPerPlan, offsetMm: [0, 0] });
}

export function labelInksAt(label: PlacedLabel, paperPerPlan: number): readonly Ink[] {
  return labelInks(label, [label.at[0] * paperPerPlan, label.at[1] * paperPerPlan]);
}

export function inkPaint(pen: Pen, ink: Ink): void {
  const { context, theme } = pen;
  if (ink.ink === 'text') {
    textPaint(pen, ink);
    return;
  }
  if (ink.ink === 'ruled') {
    ruledPaint(pen, ink);
    return;
  }
  context.beginPath();
  if (ink.ink === 'disc') context.arc(ink.centre[0], ink.centre[1], ink.radiusMm, 0, wholeTurn);
  else pathTrace(context, ink);
  if (ink.fill !== null) {
    context.fillStyle = colours[ink.fill][theme];
    context.fill('evenodd');
  }
  if (ink.stroke !== null) strokePaint(pen, ink.stroke);
}

/** All strokes as one path: 30,000 tiles in a half bond took 5 ms so, a path a stroke 24 ms, long lines with dashes 6 to 12 ms. */
function ruledPaint(pen: Pen, { strokes, place: { paperPerPlan, offsetMm }, stroke }: RuledInk): void {
  const { context } = pen;
  const [dx, dy] = offsetMm;
  context.beginPath();
  for (let k = 0; k < strokes.length; k += 4) {
    const [x1, y1, x2, y2] = [strokes[k], strokes[k + 1], strokes[k + 2], strokes[k + 3]] as [
      number,
      number,
      number,
      number,
    ];
    context.moveTo(x1 * paperPerPlan + dx, y1 * paperPerPlan + dy);
    context.lineTo(x2 * paperPerPlan + dx, y2 * paperPerPlan + dy);
  }
  strokePaint(pen, stroke);
}

function pathTrace(context: CanvasRenderingContext2D, { lines, closed }: Pick<PathInk, 'lines' | 'closed'>): void {
  for (const line of lines) {
    line.forEach(([x, y], i) => {
      if (i === 0) context.moveTo(x, y);
      else context.lineTo(x, y);
    });
    if (closed) context.closePath();
  }
}

function strokePaint({ context, theme }: Pen, stroke: Stroke): void {
  context.lineWidth = stroke.widthMm;
  context.strokeStyle = colours[stroke.colour][theme];
  context.lineCap = stroke.cap;
  context.lineJoin = stroke.cap === 'round' ? 'round' : 'miter';
  context.setLineDash([...stroke.dashMm]);
  context.stroke();
}

/** The place of a text is the middle of its capitals' height; the letters' own ground keeps lines from running into them. */
function textPaint({ context, theme }: Pen, ink: Extract<Ink, { ink: 'text' }>): void {
  const style = textStyles[ink.style];
  context.save();
  context.translate(ink.at[0], ink.at[1]);
  context.rotate((ink.angleDeg * Math.PI) / 180);
  context.font = `${style.weight === 'bold' ? 600 : 400} ${textFontMm(ink.style)}px ${fontFamily}`;
  context.textAlign = ink.anchor === 'middle' ? 'center' : ink.anchor;
  context.textBaseline = 'alphabetic';
  const baselineMm = style.capMm / 2;
  if (ink.halo !== null) {
    context.setLineDash([]);
    context.lineJoin = 'round';
    context.lineWidth = 2 * haloMm;
    context.strokeStyle = colours[ink.halo][theme];
    context.strokeText(ink.text, 0, baselineMm);
  }
  context.fillStyle = colours[ink.colour][theme];
  context.fillText(ink.text, 0, baselineMm);
  context.restore();
}

export type LitStrength = 'chosen' | 'hovered' | 'changed';
const litWidthMm: Readonly<Record<LitStrength, number>> = { chosen: 1.2, hovered: 0.7, changed: 0.9 };
/** Room for a line between the rails that light it, and the rails: all within the distance at which its text stands. */
const litLineMm = 1.7;
const litRailMm: Readonly<Record<LitStrength, number>> = { chosen: 0.6, hovered: 0.35, changed: 0.45 };
/** Distance of the ring round a pin from the pin. */
const litRingMm = 1.2;

/** Lights an item in the accent: a band round regions, a rail on either side of lines so that their own pattern stays in
 *  view, a ring round pins. The context is the light's own: what is cleared on it shows the drawing below. */
export function litPaint(
  { context }: Pen,
  item: DrawingItem,
  paperPerPlan: number,
  accent: string,
  strength: LitStrength,
): void {
  const onPaper = (points: readonly Point[]) => points.map(([x, y]): Point => [x * paperPerPlan, y * paperPerPlan]);
  const widthMm = litWidthMm[strength];
  context.save();
  context.strokeStyle = accent;
  context.lineJoin = 'round';
  context.lineCap = 'round';
  context.lineWidth = widthMm;
  context.beginPath();
  if (item.shape === 'fill') {
    pathTrace(context, { lines: [item.outline, ...item.holes].map(onPaper), closed: true });
  } else if (item.shape === 'line') {
    pathTrace(context, { lines: [onPaper(item.points)], closed: false });
    context.lineWidth = litLineMm + 2 * litRailMm[strength];
  } else if (item.shape === 'mark' && item.layer === 'findings') {
    const { up, down, left } = marks[item.style].reachMm;
    const [x, y] = [item.at[0] * paperPerPlan, item.at[1] * paperPerPlan];
    context.ellipse(x, y + (down - up) / 2, left + litRingMm, (up + down) / 2 + litRingMm, 0, 0, wholeTurn);
  }
  context.stroke();
  if (item.shape === 'line') {
    context.globalCompositeOperation = 'destination-out';
    context.lineWidth = litLineMm;
    context.stroke();
  }
  context.restore();
}
