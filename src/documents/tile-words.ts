import { CLIP_SLACK_MM } from '../geometry/tolerance.ts';
import type { TileFieldReport, WallCut } from '../plan/analysis.ts';
import type { TileBond } from '../plan/plan.ts';
import { type DecimalMark, figureText, type Names, oneLine } from './words.ts';

/** Names and figures of tiles as the papers print them. */

export const bondNames: Readonly<Record<TileBond, string>> = {
  straight: 'straight',
  half: 'half bond',
  third: 'third bond',
  offset: 'offset bond',
  herringbone: 'herringbone',
};

/** Lengths on site are whole millimetres. Example: 2340 -> "2340 mm" */
export function wholeMmText(mm: number): string {
  return `${figureText(mm, 0)}\u00a0mm`;
}

/** Example: "600 × 300 mm, grout 3 mm" */
export function tileSizeText(
  { lengthMm, widthMm, groutMm }: Pick<TileFieldReport, 'lengthMm' | 'widthMm' | 'groutMm'>,
  mark: DecimalMark = '.',
): string {
  const [length, width, grout] = [lengthMm, widthMm, groutMm].map((mm) =>
    figureText(mm, Number.isInteger(mm) ? 0 : 1, mark),
  );
  return `${length} \u00d7 ${width}\u00a0mm, grout ${grout}\u00a0mm`;
}

/** What a field is called: by its id and rooms, or the tiles of all other rooms. */
export function fieldName({ id, rooms }: Pick<TileFieldReport, 'id' | 'rooms'>, names: Names): string {
  return id === null ? 'Tiles of the floor' : oneLine(`Field ${id}: ${rooms.map(names.room).join(', ')}`);
}

/** More sizes than this along one wall are told by the least and the greatest. */
const mostSizes = 3;

type CutSizes = Pick<WallCut, 'sizesMm' | 'isAskew' | 'wholeOffMm'>;

/** Sizes of the cuts along a wall, whole mm. Example: "150 / 451 mm", askew "20 to 560 mm", where courses end in whole tiles in turn "whole / 303 mm" */
export function cutSizesText(cut: CutSizes): string {
  return `${cutFiguresText(cut)}\u00a0mm`;
}

/** The same without the unit, for a list that ends with it. */
export function cutFiguresText({ sizesMm, isAskew, wholeOffMm }: CutSizes): string {
  const whole = wholeOffMm === null ? '' : 'whole / ';
  const sizes = [...new Set(sizesMm.map((mm) => figureText(mm, 0)))];
  const [least = '', greatest = ''] = [sizes[0], sizes.at(-1)];
  if (sizes.length === 1) return `${whole}${least}`;
  return `${whole}${isAskew || sizes.length > mostSizes ? `${least} to ${greatest}` : sizes.join(' / ')}`;
}

/** Whether all of a cut falls into the perimeter joint. */
export function cutIsLeftOut({ sizesMm }: Pick<WallCut, 'sizesMm'>, jointMm: number): boolean {
  return sizesMm.every((mm) => mm <= jointMm + CLIP_SLACK_MM);
}

/** Sizes to cut tiles to, after what an open joint takes: what is no wider than that falls into it, and whole tiles give what the grout before the wall
 *  does not.
 *  Example: 9 and 310 mm less 10 -> "300 mm; left out up to 10 mm", 8 mm less 10 -> "left out: falls into the joint", whole tiles of 600 mm that end 2 mm
 *  off the wall in turn with cuts of 303 -> "592 mm / 293 mm" */
export function toCutText(cut: CutSizes & ToCut, comesOffMm: number): string {
  const { along, sizesMm, isAskew, tiles, wholeMm, wholeOffMm } = cut;
  if (along === 'pipe') return 'drilled, the joint round the pipe left open';
  const whole = wholeMmText(wholeMm - wholeComesOff(cut, comesOffMm));
  if (tiles === 0) return whole;
  const left = sizesMm.filter((mm) => mm > comesOffMm + CLIP_SLACK_MM).map((mm) => mm - comesOffMm);
  const isAll = left.length === sizesMm.length;
  if (left.length === 0) {
    const out = 'left out: falls into the joint';
    return wholeOffMm === null ? out : `${whole}; cuts ${out}`;
  }
  const to = isAskew && !isAll ? 'up to ' : '';
  const sawn = `${to}${cutSizesText({ sizesMm: left, isAskew, wholeOffMm: null })}`;
  const texts = wholeOffMm === null ? sawn : `${whole} / ${sawn}`;
  return `${texts}${isAll ? '' : `; left out up to ${wholeMmText(comesOffMm)}`}`;
}

type ToCut = Pick<WallCut, 'along' | 'tiles' | 'wholeMm'>;

/** What an open joint takes of whole tiles that end in the grout before it, mm. Example: 10 of which 3 are open as it is -> 7 */
export function wholeComesOff({ wholeOffMm }: Pick<WallCut, 'wholeOffMm'>, openMm: number): number {
  return Math.max(0, openMm - (wholeOffMm ?? 0));
}
