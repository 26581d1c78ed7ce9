import type { Box } from './ring.ts';

/** Finds which of many boxes come near a place, by a grid of cells. */
export interface BoxIndex {
  /** Numbers of the boxes that overlap the box, in rising order. */
  near(box: Box): number[];
}

/** Cells no smaller than this, in the unit of the boxes: points and empty lists have no size to go by. */
const LEAST_CELL = 1;

export function boxIndexOf(boxes: readonly Box[]): BoxIndex {
  const usable = boxes.filter((b) => b.maxX >= b.minX);
  const mean =
    usable.reduce((sum, b) => sum + (b.maxX - b.minX) + (b.maxY - b.minY), 0) / Math.max(1, 2 * usable.length);
  const cell = Math.max(mean, LEAST_CELL);
  const cells = new Map<number, number[]>();
  const wide: number[] = [];
  boxes.forEach((box, i) => {
    if (box.maxX < box.minX) return;
    const span = cellsOf(box, cell);
    if ((span.x1 - span.x0 + 1) * (span.y1 - span.y0 + 1) > 256) {
      wide.push(i);
      return;
    }
    for (let x = span.x0; x <= span.x1; x++) {
      for (let y = span.y0; y <= span.y1; y++) {
        const key = cellKey(x, y);
        const list = cells.get(key);
        if (list) list.push(i);
        else cells.set(key, [i]);
      }
    }
  });
  const overlaps = (i: number, box: Box) => {
    const other = boxes[i] as Box;
    return other.minX <= box.maxX && other.maxX >= box.minX && other.minY <= box.maxY && other.maxY >= box.minY;
  };
  return {
    near(box) {
      const span = cellsOf(box, cell);
      if ((span.x1 - span.x0 + 1) * (span.y1 - span.y0 + 1) > boxes.length) {
        return boxes.map((_, i) => i).filter((i) => overlaps(i, box));
      }
      const found = new Set(wide.filter((i) => overlaps(i, box)));
      for (let x = span.x0; x <= span.x1; x++) {
        for (let y = span.y0; y <= span.y1; y++) {
          for (const i of cells.get(cellKey(x, y)) ?? []) if (overlaps(i, box)) found.add(i);
        }
      }
      return [...found].sort((a, b) => a - b);
    },
  };
}

/** Cells that share a key, as those far apart may, only cost a look: a box counts where it overlaps. */
function cellKey(x: number, y: number): number {
  return x * 2 ** 26 + y;
}

function cellsOf(box: Box, cell: number): { x0: number; x1: number; y0: number; y1: number } {
  return {
    x0: Math.floor(box.minX / cell),
    x1: Math.floor(box.maxX / cell),
    y0: Math.floor(box.minY / cell),
    y1: Math.floor(box.maxY / cell),
  };
}
