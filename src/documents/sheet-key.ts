import type { Point } from '../geometry/point.ts';
import { type Box, boxOf } from '../geometry/ring.ts';
import type { Drawing } from './drawing.ts';
import type { Ink } from './ink.ts';
import type { GridCell } from './sheet-grid.ts';
import { drawingBox } from './sheet-inks.ts';
import { penStroke } from './strip-pen.ts';

/** A small plan of the whole that shows which part a sheet has. */
export interface KeyPlan {
  readonly heightMm: number;
  /** @param at its upper left corner, mm on paper */
  inks(at: Point): readonly Ink[];
}

export const keyPlanMm = 40;

/** @param cells all sheets of the drawing   @returns the key plan of each */
export function keyPlanOf(drawing: Drawing, cells: readonly GridCell[]): (cell: GridCell) => KeyPlan {
  const all = boxOf([drawingBox(drawing), ...cells.map(({ own }) => own)].flatMap(boxCorners));
  const byMm = keyPlanMm / Math.max(all.maxX - all.minX, all.maxY - all.minY);
  const on = ([x0, y0]: Point, points: readonly Point[]): readonly Point[] =>
    points.map(([x, y]) => [x0 + (x - all.minX) * byMm, y0 + (y - all.minY) * byMm]);
  const floors = drawing.items.flatMap((item) =>
    item.shape === 'fill' && item.layer === 'bays' ? [item.outline, ...item.holes] : [],
  );
  const path = (lines: readonly (readonly Point[])[], fill: 'across' | null, widthMm: number | null): Ink => ({
    ink: 'path',
    lines,
    closed: true,
    fill,
    stroke: widthMm === null ? null : penStroke(widthMm, 'ink'),
  });
  return (cell) => ({
    heightMm: (all.maxY - all.minY) * byMm,
    inks: (at) => [
      ...floors.map((ring) => path([on(at, ring)], 'across', null)),
      path([on(at, boxCorners(cell.own))], null, 0.7),
      path(
        cells.map(({ own }) => on(at, boxCorners(own))),
        null,
        0.13,
      ),
    ],
  });
}

export function boxCorners({ minX, minY, maxX, maxY }: Box): readonly Point[] {
  return [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
}
