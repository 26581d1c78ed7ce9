import { expect, test } from 'vitest';
import {
  type Viewport,
  viewportFit,
  viewportResized,
  viewportReveal,
  viewportScaleBar,
  viewportToPlan,
  viewportToScreen,
  viewportZoom,
  viewportZooms,
} from '../../src/app/canvas/viewport.ts';

const size = { widthPx: 1000, heightPx: 700 };
const view: Viewport = { pxPerMm: 0.05, offsetPx: [120, 80], leastPxPerMm: 0.0005 };

test('a place goes to the screen and back', () => {
  const [x, y] = viewportToPlan(view, viewportToScreen(view, [4321, -765]));
  expect(x).toBeCloseTo(4321, 6);
  expect(y).toBeCloseTo(-765, 6);
});

test('zooming keeps the place under the pointer where it is', () => {
  const under = viewportToPlan(view, [640, 200]);
  const [x, y] = viewportToScreen(viewportZoom(view, 3.7, [640, 200]), under);
  expect(x).toBeCloseTo(640, 6);
  expect(y).toBeCloseTo(200, 6);
});

test('a fitted drawing fills the room it is given, in its middle', () => {
  const box = { minX: -2000, minY: 500, maxX: 10_000, maxY: 6500 };
  const fitted = viewportFit(box, { leftPx: 50, topPx: 100, rightPx: 950, bottomPx: 680 });
  const [left, top] = viewportToScreen(fitted, [box.minX, box.minY]);
  const [right, bottom] = viewportToScreen(fitted, [box.maxX, box.maxY]);
  expect(left).toBeCloseTo(50, 6);
  expect(right).toBeCloseTo(950, 6);
  expect(top + bottom).toBeCloseTo(780, 6);
});

test('a plan that is wider than the usual limit of the zoom is shown whole, and zooming ends there', () => {
  const into = { leftPx: 20, topPx: 20, rightPx: 620, bottomPx: 420 };
  const wide = viewportFit({ minX: 0, minY: 0, maxX: 1_804_000, maxY: 4000 }, into);
  expect(viewportToScreen(wide, [1_804_000, 0])[0]).toBeCloseTo(620, 6);
  expect(viewportZooms(wide, 0.5)).toBe(false);
  const nearer = viewportZoom(wide, 4, [300, 200]);
  expect(viewportZooms(nearer, 0.5)).toBe(true);
  expect(viewportZoom(nearer, 0.1, [300, 200]).pxPerMm).toBeCloseTo(wide.pxPerMm, 12);
  expect(viewportZooms(viewportZoom(view, 1e6, [0, 0]), 2)).toBe(false);
});

test('what is in the middle of the board is there still when the board takes another size', () => {
  const middle = viewportToPlan(view, [size.widthPx / 2, size.heightPx / 2]);
  const resized = viewportResized(view, size, { widthPx: 640, heightPx: 900 });
  expect(resized.pxPerMm).toBe(view.pxPerMm);
  const [x, y] = viewportToScreen(resized, middle);
  expect(x).toBeCloseTo(320, 6);
  expect(y).toBeCloseTo(450, 6);
});

test('choosing a thing in view leaves the drawing where it is; one out of view comes to the middle', () => {
  const seen = { minX: 0, minY: 0, maxX: 1000, maxY: 1000 };
  expect(viewportReveal(view, seen, size, 20)).toBe(view);
  const far = { minX: 90_000, minY: 0, maxX: 92_000, maxY: 1000 };
  const [x, y] = viewportToScreen(viewportReveal(view, far, size, 20), [91_000, 500]);
  expect(x).toBeCloseTo(500, 6);
  expect(y).toBeCloseTo(350, 6);
});

test('the scale bar is a round length and fits', () => {
  for (const pxPerMm of [0.001, 0.02, 0.0731, 0.4, 3]) {
    const bar = viewportScaleBar({ pxPerMm, offsetPx: [0, 0], leastPxPerMm: 0.0005 }, 120);
    expect(bar.lengthPx).toBeLessThanOrEqual(120);
    expect(bar.lengthPx).toBeGreaterThan(120 / 2.6);
    expect(bar.lengthPx / pxPerMm).toBeCloseTo(bar.lengthMm, 6);
    expect(['1', '2', '5']).toContain(String(Math.round(bar.lengthMm * 1000)).replace(/0+$/, ''));
  }
});
