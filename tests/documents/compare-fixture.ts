import type { Point } from '../../src/geometry/point.ts';
import type { PlanFile } from '../../src/plan/schema.ts';

/** A joint drawn by hand across the hall of 12 x 5 m. */
export function jointAt(xMm: number): Partial<PlanFile> {
  return {
    drawnJoints: [
      {
        id: 'x1',
        line: [
          [xMm, 0],
          [xMm, 5000],
        ],
      },
    ],
  };
}

/** A room between two corners. */
export function rectangle(id: string, [x0, y0]: Point, [x1, y1]: Point): PlanFile['rooms'][number] {
  return {
    id,
    name: id,
    outline: [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ],
  };
}
