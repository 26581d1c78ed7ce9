import { type SizePx, type Viewport, viewportGrid } from './viewport.ts';

/** A cross where grid lines meet: half its arm, px. Lines would be read as joints. */
const armPx = 2.5;

/** Crosses at round distances that follow the zoom. */
export function gridPaint(context: CanvasRenderingContext2D, view: Viewport, size: SizePx, colour: string): void {
  const { stepPx, firstPx } = viewportGrid(view);
  context.beginPath();
  context.strokeStyle = colour;
  context.lineWidth = 1;
  context.setLineDash([]);
  for (let x = firstPx[0]; x <= size.widthPx + armPx; x += stepPx) {
    for (let y = firstPx[1]; y <= size.heightPx + armPx; y += stepPx) {
      context.moveTo(x - armPx, y);
      context.lineTo(x + armPx, y);
      context.moveTo(x, y - armPx);
      context.lineTo(x, y + armPx);
    }
  }
  context.stroke();
}
