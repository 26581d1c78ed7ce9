import { EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import type { StripRun } from './strip-runs.ts';

export interface StripCutting {
  readonly rolls: number;
  readonly pieces: readonly StripPiece[];
  /** Ends that lie over each other nearer to a corner than the overlap: the sides there are too short for more. */
  readonly nearCorners: number;
}

/** A piece as it is laid, mm from the start of its run; one that closes a run goes on past its end. */
export interface StripPiece {
  readonly run: number;
  readonly fromMm: number;
  readonly toMm: number;
  /** Number of the roll that it is cut from. */
  readonly roll: number;
}

interface OffCut {
  readonly roll: number;
  readonly mm: number;
}

/** More pieces than this are cut for no floor: a slip in the length of a roll. */
const mostPieces = 100_000;

/** Cuts runs from rolls, the longest run first. Pieces of a run lie over each other by the overlap, and so do the ends of one that closes. No end lies
 *  nearer to a corner than the overlap: a piece that would end there is cut back. The shortest off-cut that covers what is left of a run is used for it,
 *  else the longest that gets anywhere, else a new roll.
 *
 *  @returns null where rolls are too short to be laid with such an overlap
 *  Example: a wall of 30 m and rolls of 25 m, overlap 100 mm -> 25 m and 5.1 m, 2 rolls, 19.9 m left over */
export function stripCut(
  runs: readonly StripRun[],
  { rollMm, overlapMm }: { readonly rollMm: number; readonly overlapMm: number },
): StripCutting | null {
  const needsMm = runs.map(({ lengthMm, closes }) => lengthMm + (closes ? overlapMm : 0));
  const stepMm = rollMm - 2 * overlapMm;
  if (stepMm <= 0 || needsMm.reduce((sum, mm) => sum + mm / stepMm, 0) > mostPieces) return null;
  /** The shortest first. */
  const offCuts: OffCut[] = [];
  const pieces: StripPiece[] = [];
  let [rolls, nearCorners] = [0, 0];
  const order = needsMm.map((needMm, run) => ({ needMm, run })).sort((a, b) => b.needMm - a.needMm || a.run - b.run);
  for (const { needMm, run } of order) {
    const { lengthMm, cornersMm, closes } = runs[run] as StripRun;
    const around = closes ? [-1, 0, 1].flatMap((turn) => cornersMm.map((at) => at + turn * lengthMm)) : cornersMm;
    if (closes && endBefore(needMm, around, overlapMm) < needMm - EQUAL_LENGTH_MM) nearCorners++;
    for (let fromMm = 0; ; ) {
      const leftMm = needMm - fromMm;
      const reach = ({ mm }: OffCut) => endBefore(fromMm + mm, around, overlapMm);
      const goesOn = (offCut: OffCut) => reach(offCut) - overlapMm > fromMm + EQUAL_LENGTH_MM;
      const kept = offCuts.find(({ mm }) => mm >= leftMm - EQUAL_LENGTH_MM) ?? offCuts.findLast(goesOn);
      const stock = kept ?? { roll: rolls++, mm: rollMm };
      if (kept) offCuts.splice(offCuts.indexOf(kept), 1);
      const isLast = stock.mm >= leftMm - EQUAL_LENGTH_MM;
      const isForced = !isLast && !goesOn(stock);
      const toMm = isLast ? needMm : isForced ? fromMm + stock.mm : reach(stock);
      pieces.push({ run, fromMm, toMm, roll: stock.roll });
      const restMm = stock.mm - (toMm - fromMm);
      if (restMm > EQUAL_LENGTH_MM) {
        offCuts.splice(offCuts.findLastIndex(({ mm }) => mm <= restMm) + 1, 0, { roll: stock.roll, mm: restMm });
      }
      if (isForced) nearCorners++;
      if (isLast) break;
      fromMm = toMm - overlapMm;
    }
  }
  return { rolls, pieces, nearCorners };
}

/** The last place up to here where a piece may end and, an overlap before, the next one begin: both at least an overlap clear of every corner.
 *  @param corners rising */
function endBefore(mostMm: number, corners: readonly number[], overlapMm: number): number {
  return corners.reduceRight(
    (end, at) =>
      end > at - overlapMm + EQUAL_LENGTH_MM && end < at + 2 * overlapMm - EQUAL_LENGTH_MM ? at - overlapMm : end,
    mostMm,
  );
}
