import type { FormPiece } from './form-pages-blocks.ts';

/** Where the pages of a form end. */

type Pieces = readonly FormPiece[];

/** A last page with less on it takes from the page before, mm. */
const leastLastMm = 24;
/** As long as so much of that is left filled. */
const leastFilled = 0.6;

/** Pieces page by page, each page filled before the next; a head that is repeated is the first of its page. Pieces that belong together stay together
 *  where one page can hold them, and nothing is left nearly alone on the last page.
 *  @param heightMm of what is free on a page */
export function piecesPaged(pieces: Pieces, heightMm: number): readonly Pieces[] {
  const pages: Pieces[][] = [];
  let leftMm = 0;
  for (const unit of unitsOf(pieces).flatMap((each) => unitsHeld(each, heightMm))) {
    const unitMm = heightOf(unit);
    const open = pages[pages.length - 1];
    if (open !== undefined && unitMm <= leftMm) {
      open.push(unit);
      leftMm -= unitMm;
    } else if (open === undefined || !unit.every(({ blank }) => blank === true)) {
      pages.push([unit]);
      leftMm = heightMm - pageHeight([unit], pages.length - 1);
    }
  }
  return lastHelped(pages, heightMm).map(piecesOn);
}

/** Pieces with those that they must not be parted from. */
function unitsOf(pieces: Pieces): readonly Pieces[] {
  const units: FormPiece[][] = [];
  let open: FormPiece[] = [];
  for (const piece of pieces) {
    open.push(piece);
    if (piece.keeps === true) continue;
    units.push(open);
    open = [];
  }
  if (open.length > 0) units.push(open);
  return units;
}

/** What is higher than a page is parted all the same, from its end, so that signatures are not what is left over. */
function unitsHeld(unit: Pieces, heightMm: number): readonly Pieces[] {
  if (headed(unit) <= heightMm) return [unit];
  const parts: FormPiece[][] = [];
  for (const piece of unit.toReversed()) {
    const [open] = parts;
    if (open !== undefined && headed([piece, ...open]) <= heightMm) open.unshift(piece);
    else parts.unshift([piece]);
  }
  return parts;
}

/** With the head that is repeated where it begins a page. */
function headed(unit: Pieces): number {
  return heightOf(unit) + (unit[0]?.repeat?.heightMm ?? 0);
}

function heightOf(unit: Pieces): number {
  return unit.reduce((sum, piece) => sum + piece.heightMm, 0);
}

/** @param i which page it is: nothing goes before the first */
function pageHeight(page: readonly Pieces[], i: number): number {
  return heightOf(page.flat()) + (i === 0 ? 0 : (page[0]?.[0]?.repeat?.heightMm ?? 0));
}

function piecesOn(page: readonly Pieces[], i: number): Pieces {
  const pieces = page.flat();
  const repeat = i === 0 ? undefined : pieces[0]?.repeat;
  return repeat === undefined ? pieces : [repeat, ...pieces];
}

/** The last page takes from the one before it while it has little on it. */
function lastHelped(pages: readonly (readonly Pieces[])[], heightMm: number): readonly (readonly Pieces[])[] {
  const [before, last] = [pages[pages.length - 2], pages[pages.length - 1]];
  const moved = before?.[before.length - 1];
  if (before === undefined || last === undefined || moved === undefined) return pages;
  const at = pages.length - 1;
  const [left, taken] = [before.slice(0, -1), [moved, ...last]];
  const isWanted = pageHeight(last, at) < leastLastMm && pageHeight(left, at - 1) >= leastFilled * heightMm;
  if (!isWanted || pageHeight(taken, at) > heightMm) return pages;
  return lastHelped([...pages.slice(0, -2), left, taken], heightMm);
}
