import type { Box } from '../geometry/ring.ts';

/** The paper that a drawing goes on: size, scale and where things stand, all in mm on paper. */
export interface SheetLayout {
  readonly paper: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** 50 for 1 : 50. */
  readonly scale: number;
  readonly drawing: PaperBox;
  /** The strip with title, legend, faults and cautions. */
  readonly strip: PaperBox;
}

export interface PaperBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** ISO 216, lying; all but the smallest may stand for a floor that is taller than wide. */
const papers = [
  { paper: 'A4', widthMm: 297, heightMm: 210 },
  { paper: 'A3', widthMm: 420, heightMm: 297 },
  { paper: 'A2', widthMm: 594, heightMm: 420 },
  { paper: 'A1', widthMm: 841, heightMm: 594 },
  { paper: 'A0', widthMm: 1189, heightMm: 841 },
] as const;

interface Paper {
  readonly paper: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

const scales = [20, 25, 50, 100, 200, 250, 500] as const;
/** For a site beyond A0 at 1 : 500, so that no plan is without a sheet. */
const scalesBeyond = [1000, 2000, 5000, 10000, 20000, 50000] as const;

/** Where a smaller paper is as good as a larger one: 1 : 50 shows what is set out, 1 : 100 still names every bay. */
const preferences = [
  { scale: 50, largest: 'A2' },
  { scale: 100, largest: 'A0' },
  { scale: 200, largest: 'A0' },
  { scale: 500, largest: 'A0' },
] as const;

const marginMm = 10;
const stripMm = 88;
const gapMm = 5;
/** Kept clear round the drawing for pins that reach beyond the floor: they stand up from it. */
const clearMm = { across: 6, down: 12 };

function layoutOf({ paper, widthMm, heightMm }: Paper, scale: number, columns: number): SheetLayout {
  const height = heightMm - 2 * marginMm;
  const width = columns * stripMm;
  const strip = { x: widthMm - marginMm - width, y: marginMm, width, height };
  const drawing = { x: marginMm, y: marginMm, width: strip.x - gapMm - marginMm, height };
  return { paper, widthMm, heightMm, scale, drawing, strip };
}

/** The smallest A-series sheet on which the drawing stands at a scale worth having, and on it the largest standard scale
 *  that fits. @param box mm on the plan   @param columns of the strip */
export function sheetLayout(box: Box, columns = 1): SheetLayout {
  for (const { scale: wanted, largest } of preferences) {
    for (const paper of papers.slice(0, papers.findIndex((each) => each.paper === largest) + 1)) {
      const layout = largestScale(box, waysOf(paper), scales, columns);
      if (layout !== null && layout.scale <= wanted) return layout;
    }
  }
  const largest = waysOf(papers[papers.length - 1] as Paper);
  const last = scalesBeyond[scalesBeyond.length - 1] as number;
  return largestScale(box, largest, scalesBeyond, columns) ?? layoutOf(largest[0] as Paper, last, columns);
}

/** The sheets on which the drawing stands at one scale, the smallest first, and of each the fewest columns of the strip first. */
export function sheetsAtScale(box: Box, scale: number, mostColumns: number): readonly SheetLayout[] {
  const columns = Array.from({ length: mostColumns }, (_, i) => i + 1);
  return papers
    .flatMap(waysOf)
    .flatMap((way) => columns.map((count) => layoutOf(way, scale, count)))
    .filter((layout) => fits(box, layout));
}

/** Lying first. */
function waysOf(paper: Paper): readonly Paper[] {
  const standing = { paper: `${paper.paper} standing`, widthMm: paper.heightMm, heightMm: paper.widthMm };
  return paper.paper === 'A4' ? [paper] : [paper, standing];
}

function largestScale(box: Box, ways: readonly Paper[], from: readonly number[], columns: number): SheetLayout | null {
  for (const scale of from) {
    const way = ways.find((each) => fits(box, layoutOf(each, scale, columns)));
    if (way !== undefined) return layoutOf(way, scale, columns);
  }
  return null;
}

function fits(box: Box, { drawing, scale }: SheetLayout): boolean {
  const width = (box.maxX - box.minX) / scale + 2 * clearMm.across;
  const height = (box.maxY - box.minY) / scale + 2 * clearMm.down;
  return width <= drawing.width && height <= drawing.height;
}
