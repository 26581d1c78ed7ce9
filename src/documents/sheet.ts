import type { Box } from '../geometry/ring.ts';
import type { Papers } from '../plan/papers.ts';

/** The paper that a drawing goes on: size, scale and where things stand, all in mm on paper. */
export interface SheetLayout {
  readonly paper: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** 50 for 1 : 50. */
  readonly scale: number;
  readonly drawing: PaperBox;
  /** The strip beside the drawing: as many columns as its text needs. */
  readonly strip: PaperBox;
  /** Of the sheets that it is the key to; left out where it stands by itself. */
  readonly detailScale?: number;
  /** That the plan asks for and cannot have. */
  readonly wishedScale?: number;
}

/** Scale of what a sheet and those that it is the key to are there for. */
export function sheetDetail({ scale, detailScale = scale }: SheetLayout): number {
  return detailScale;
}

/** What a drawing takes at a scale: what keeps its size on paper reaches the further on the plan the smaller the scale. Where not even the drawing
 *  bare of dimensions serves, they are not made to find out, and it is the box of the bare one. */
export type BoxAt = (scale: number, serves: (box: Box) => boolean) => Box;

export interface PaperBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Paper and scale that the plan asks for; null: whichever serve. */
export type SheetWish = Pick<Papers, 'paper' | 'scale'>;

/** ISO 216, lying; all but the smallest may stand for a floor that is taller than wide. */
const papers = [
  { paper: 'A4', widthMm: 297, heightMm: 210 },
  { paper: 'A3', widthMm: 420, heightMm: 297 },
  { paper: 'A2', widthMm: 594, heightMm: 420 },
  { paper: 'A1', widthMm: 841, heightMm: 594 },
  { paper: 'A0', widthMm: 1189, heightMm: 841 },
] as const;

export interface Paper {
  readonly paper: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

export const sheetScales = [20, 25, 50, 100, 200] as const;

/** Where a smaller paper is as good as a larger one: 1 : 50 shows what is set out, 1 : 100 still names every bay. */
const preferences = [
  { scale: 50, largest: 'A2' },
  { scale: 100, largest: 'A0' },
  { scale: 200, largest: 'A0' },
] as const;

export const marginMm = 10;
/** Width of a column of the strip. */
export const stripMm = 88;
export const gapMm = 5;
/** Kept clear round the drawing for pins that reach beyond the floor: they stand up from it. */
export const clearMm = { across: 6, down: 12 };
/** As many columns as the strip may have before it takes the room of the drawing. */
export const mostColumns = 3;

export function sheetLayout(
  { paper, widthMm, heightMm }: Paper,
  scale: number,
  stripWidthMm: number = stripMm,
): SheetLayout {
  const height = heightMm - 2 * marginMm;
  const strip = { x: widthMm - marginMm - stripWidthMm, y: marginMm, width: stripWidthMm, height };
  const drawing = { x: marginMm, y: marginMm, width: strip.x - gapMm - marginMm, height };
  return { paper, widthMm, heightMm, scale, drawing, strip };
}

/** Paper and scale where the plan asks for neither, in words. Readable is 1 : 50 on paper up to A2; a drawing that is larger than that is shown at 1 : 100,
 *  and one that is too large for A0 at 1 : 200. Of that scale the smallest paper is taken on which the drawing stands in one piece beside a column of words, and
 *  on it the largest standard scale that fits. Where the words have no room beside it, they take more columns, then the next larger paper at the same scale: a
 *  smaller scale is taken for their sake only on a paper that is wished for. A wished paper or scale is kept to, and the other is chosen so.
 *  @param wants what the strip should have room for, the most first: the first that can be had counts
 *  @returns null: there is none, and the drawing goes over several sheets */
export function sheetChoose(
  boxAt: BoxAt,
  wish: SheetWish,
  wants: readonly ((layout: SheetLayout) => boolean)[],
): SheetLayout | null {
  const scales = scalesServing(boxAt, wish);
  for (const scale of scales) {
    const layouts = layoutsServing(boxAt, wish, scale);
    for (const want of wants) {
      const layout = layouts.find(want);
      if (layout !== undefined) return layout;
    }
  }
  // no sheet has room for the strip: on a wished paper it has more beside a drawing in small, on the largest it says what it leaves out
  const [best] = scales;
  return best === undefined || wish.paper !== null ? null : (layoutsServing(boxAt, wish, best).at(-1) ?? null);
}

/** Scales at which the drawing fits beside a strip of one column, the best first; none where it fits at none. */
function scalesServing(boxAt: BoxAt, wish: SheetWish): readonly number[] {
  const { paper, scale } = wish;
  const serving = sheetScales.filter(
    (each) => (scale === null || each === scale) && layoutsServing(boxAt, wish, each).length > 0,
  );
  if (scale !== null || paper !== null) return serving;
  for (const { scale: wanted, largest } of preferences) {
    for (const { paper: size } of papers.slice(0, papers.findIndex((each) => each.paper === largest) + 1)) {
      const own = serving.find((each) => each <= wanted && onPaper(boxAt(each, anyBox), size, each));
      if (own !== undefined) return [own, ...serving.filter((each) => each > own)];
    }
  }
  return [];
}

/** Of a scale that is known to serve. */
const anyBox = () => true;

function layoutsServing(boxAt: BoxAt, wish: SheetWish, scale: number): readonly SheetLayout[] {
  const holding = (box: Box) => layoutsAtScale(box, wish, scale);
  return holding(boxAt(scale, (box) => holding(box).length > 0));
}

function onPaper(box: Box, size: string, scale: number): boolean {
  return papers
    .filter(({ paper }) => paper === size)
    .some((paper) => waysOf(paper).some((way) => fits(box, sheetLayout(way, scale))));
}

/** Sheets that hold the drawing at one scale, the smallest first, and of each the fewest columns of the strip first. */
function layoutsAtScale(box: Box, { paper }: SheetWish, scale: number): readonly SheetLayout[] {
  return papers
    .filter((each) => paper === null || each.paper === paper)
    .flatMap(waysOf)
    .flatMap((way) => columnCounts.map((count) => sheetLayout(way, scale, count * stripMm)))
    .filter((layout) => fits(box, layout));
}

export const columnCounts: readonly number[] = Array.from({ length: mostColumns }, (_, i) => i + 1);

/** The wished paper or the largest, both ways round, lying first. */
export function waysWished({ paper }: SheetWish): readonly Paper[] {
  return waysOf(papers.find((each) => each.paper === (paper ?? 'A0')) ?? (papers[papers.length - 1] as Paper));
}

function waysOf(paper: Paper): readonly Paper[] {
  const standing = { paper: `${paper.paper} standing`, widthMm: paper.heightMm, heightMm: paper.widthMm };
  return paper.paper === 'A4' ? [paper] : [paper, standing];
}

/** How large a drawing is on paper with what is kept clear round it, mm. */
export function sizeOnPaper(box: Box, scale: number): { readonly width: number; readonly height: number } {
  return {
    width: (box.maxX - box.minX) / scale + 2 * clearMm.across,
    height: (box.maxY - box.minY) / scale + 2 * clearMm.down,
  };
}

export function fits(box: Box, { drawing, scale }: SheetLayout): boolean {
  const { width, height } = sizeOnPaper(box, scale);
  return width <= drawing.width && height <= drawing.height;
}

export function columnsOf({ strip }: SheetLayout): number {
  return Math.max(1, Math.round(strip.width / stripMm));
}
