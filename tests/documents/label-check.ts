import type { PlacedLabel } from '../../src/documents/drawing.ts';
import type { Point } from '../../src/geometry/point.ts';

/** A point of the sheet (mm on paper) as seen from the middle of a label, x along its text. */
export function seenFrom({ at, angleDeg }: PlacedLabel, point: Point, scale: number): Point {
  const turn = (-angleDeg * Math.PI) / 180;
  const [x, y] = [(point[0] - at[0]) / scale, (point[1] - at[1]) / scale];
  return [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)];
}

/** Whether a line on the plan has a point within the block of text, tried every 0.5 mm of paper. */
export function lineHits(label: PlacedLabel, line: readonly Point[], scale: number): boolean {
  return line.slice(1).some((b, i) => {
    const a = line[i] as Point;
    const steps = Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / scale / 0.5);
    return Array.from(
      { length: steps + 1 },
      (_, k): Point => [
        a[0] + ((b[0] - a[0]) * k) / Math.max(steps, 1),
        a[1] + ((b[1] - a[1]) * k) / Math.max(steps, 1),
      ],
    ).some((point) => {
      const [x, y] = seenFrom(label, point, scale);
      return Math.abs(x) < label.widthMm / 2 && Math.abs(y) < label.heightMm / 2;
    });
  });
}

/** The outline of a block of text, a hair smaller than it is, mm on the plan. */
export function outlineOf(label: PlacedLabel, scale: number): Point[] {
  const turn = (label.angleDeg * Math.PI) / 180;
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
    [-1, -1],
  ] as const;
  return corners.map(([sx, sy]): Point => {
    const [x, y] = [sx * label.widthMm * 0.49, sy * label.heightMm * 0.49];
    return [
      label.at[0] + (x * Math.cos(turn) - y * Math.sin(turn)) * scale,
      label.at[1] + (x * Math.sin(turn) + y * Math.cos(turn)) * scale,
    ];
  });
}
