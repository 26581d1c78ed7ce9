import type { Box } from '../geometry/ring.ts';
import {
  type BoxAt,
  clearMm,
  columnCounts,
  fits,
  type Paper,
  type PaperBox,
  type SheetLayout,
  type SheetWish,
  sheetLayout,
  sheetScales,
  sizeOnPaper,
  stripMm,
  waysWished,
} from './sheet.ts';

/** A drawing over several sheets: how large their windows are and what of the plan lies in each. */
export interface SheetGrid {
  /** Of every sheet of the grid, with a narrow strip; its frame holds the window and a band for what is written at the match lines. */
  readonly layout: SheetLayout;
  /** What of the drawing's frame is drawn in. */
  readonly window: PaperBox;
  readonly columns: number;
  readonly rows: number;
  /** Row by row. */
  readonly cells: readonly GridCell[];
}

export interface GridCell {
  readonly column: number;
  readonly row: number;
  /** Up to the match lines: the cells' own parts meet and cover the plan; mm on the plan. */
  readonly own: Box;
  /** With what is shown beyond them. */
  readonly shown: Box;
}

/** Width of the strip of a sheet of the grid. */
export const narrowStripMm = 48;
/** For words and cut marks between the window and its frame. */
export const bandMm = 6;
/** How far beyond a match line the drawing goes on: as far as a pin stands up from its place. */
export const beyondMm = 12;
/** For a site beyond the usual scales, so that no plan is without a sheet. */
const scalesBeyond = [250, 500, 1000, 2000, 5000, 10000, 20000, 50000] as const;
/** Nobody joins more sheets than this: the drawing is made smaller. */
export const mostCells = 150;
/** Below this the strip has taken the room of the drawing. */
const leastDrawingMm = 60;

/** The wished paper or the largest; the wished scale, or the largest at which one sheet serves, or the smallest that is usual; the way round with fewer
 *  sheets. */
export function sheetGrid(boxAt: BoxAt, wish: SheetWish): SheetGrid {
  const isOne = (scale: number) =>
    waysWished(wish).some((way) => {
      const isOneOf = (box: Box) => cellCount(gridOn(box, way, scale)) === 1;
      return isOneOf(boxAt(scale, isOneOf));
    });
  const first = wish.scale ?? sheetScales.find(isOne) ?? (sheetScales.at(-1) as number);
  const scales = [first, ...[...sheetScales, ...scalesBeyond].filter((each) => each > first)];
  let fewest: SheetGrid | null = null;
  for (const scale of scales) {
    const grids = waysWished(wish).map((way) =>
      gridOn(
        boxAt(scale, () => true),
        way,
        scale,
      ),
    );
    fewest = grids.reduce((a, b) => (cellCount(b) < cellCount(a) ? b : a));
    if (cellCount(fewest) <= mostCells) break;
  }
  if (fewest === null) throw new Error('no scale to lay sheets out at');
  const { layout } = fewest;
  const isHad = wish.scale === null || wish.scale === layout.scale;
  return {
    ...fewest,
    layout: isHad ? layout : { ...layout, wishedScale: first },
    cells: gridCells(
      boxAt(layout.scale, () => true),
      fewest,
    ),
  };
}

function cellCount({ columns, rows }: Pick<SheetGrid, 'columns' | 'rows'>): number {
  return columns * rows;
}

function gridOn(box: Box, way: Paper, scale: number): SheetGrid {
  const layout = sheetLayout(way, scale, narrowStripMm);
  const { x, y, width, height } = layout.drawing;
  const window = { x: x + bandMm, y: y + bandMm, width: width - 2 * bandMm, height: height - 2 * bandMm };
  const size = sizeOnPaper(box, scale);
  const count = (all: number, one: number) => (all <= one ? 1 : 1 + Math.ceil((all - one) / (one - 2 * beyondMm)));
  return {
    layout,
    window,
    columns: count(size.width, window.width),
    rows: count(size.height, window.height),
    cells: [],
  };
}

/** The grid lies about the middle of the plan. */
function gridCells(box: Box, { layout, window, columns, rows }: SheetGrid): readonly GridCell[] {
  const { scale } = layout;
  const spans = (least: number, most: number, one: number, clear: number, count: number) => {
    const step = (one - 2 * beyondMm) * scale;
    const start = (least + most) / 2 - ((count - 1) * step + one * scale) / 2;
    return Array.from({ length: count }, (_, i) => {
      const shown = [start + i * step, start + i * step + one * scale] as const;
      const own = [
        i === 0 ? Math.min(shown[0], least - clear * scale) : shown[0] + beyondMm * scale,
        i === count - 1 ? Math.max(shown[1], most + clear * scale) : shown[1] - beyondMm * scale,
      ] as const;
      return { shown, own };
    });
  };
  const across = spans(box.minX, box.maxX, window.width, clearMm.across, columns);
  const down = spans(box.minY, box.maxY, window.height, clearMm.down, rows);
  return down.flatMap((y, row) =>
    across.map((x, column) => ({
      column,
      row,
      own: { minX: x.own[0], maxX: x.own[1], minY: y.own[0], maxY: y.own[1] },
      shown: { minX: x.shown[0], maxX: x.shown[1], minY: y.shown[0], maxY: y.shown[1] },
    })),
  );
}

/** The sheet that shows all of the grid in small and has the whole strip: on the same paper, at the largest scale that fits.
 *  @param want what the strip should have room for */
export function overviewLayout(box: Box, { layout }: SheetGrid, want: (layout: SheetLayout) => boolean): SheetLayout {
  const layouts = columnCounts
    .map((count) => overviewAt(box, layout, count))
    .filter(({ drawing }) => drawing.width >= leastDrawingMm);
  return layouts.find(want) ?? layouts.at(-1) ?? overviewAt(box, layout, 1);
}

function overviewAt(box: Box, paper: SheetLayout, columns: number): SheetLayout {
  const all = [...sheetScales, ...scalesBeyond];
  const at = (scale: number) => sheetLayout(paper, scale, columns * stripMm);
  const found = all.map(at).find((layout) => fits(box, layout)) ?? at(all.at(-1) as number);
  const { scale: detailScale, wishedScale } = paper;
  return { ...found, detailScale, ...(wishedScale === undefined ? {} : { wishedScale }) };
}
