import { pointDirection, pointDistance } from '../geometry/point.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import { type GridLine, leastBase, papersOf } from '../plan/papers.ts';
import type { PaperSource } from './paper-source.ts';
import { frameLines, gridLinesUsable, gridName, linesAskew } from './setting-out-frame.ts';
import { gridLineIsDrawn } from './setting-out-sheet.ts';
import { wholeMmText } from './tile-words.ts';

/** What is to be known of grid lines, one by one: those that do not serve, and those that are not drawn. As with points no analysis is needed, so that the
 *  editor tells it beside the line while it is moved. */

export interface GridLineCaution {
  /** Place of the line in its list. */
  readonly index: number;
  /** One sentence. */
  readonly words: string;
}

type Lines = Pick<PaperSource, 'file' | 'plan'>;

/** Line by line, each with what is gravest of it first.
 *  Example: A and 1 that meet at 80 degrees -> "Grid line 1 is not square to A: joints are set out from A alone." */
export function gridLineCautions(source: Lines): readonly GridLineCaution[] {
  const { gridLines } = papersOf(source.file);
  const usable = new Set(gridLinesUsable(gridLines));
  const framed = frameLines(source);
  const found = linesAskew(source);
  return gridLines.flatMap((line, index): readonly GridLineCaution[] => {
    const name = gridName(line);
    const before = gridLines.slice(0, index).filter((each) => usable.has(each));
    const words = usable.has(line)
      ? [
          placeWords(source, line, before),
          found?.askew.includes(line) ? askewWords(name, gridName(found.base)) : null,
          framed.has(line) ? shortWords(line) : null,
        ]
      : [`Grid line ${name} has no length and serves for nothing.`];
    const isTwin = gridLines.slice(0, index).some((each) => each.name.trim() === line.name.trim());
    return [...words, isTwin ? `Another grid line is called ${name} too.` : null].flatMap((each) =>
      each === null ? [] : [{ index, words: each }],
    );
  });
}

function askewWords(name: string, base: string): string {
  return `Grid line ${name} is not square to ${base}: joints are set out from ${base} alone.`;
}

function placeWords({ plan }: Lines, line: GridLine, before: readonly GridLine[]): string | null {
  if (!gridLineIsDrawn(plan, line)) return `Grid line ${gridName(line)} passes too far off the floor to be drawn.`;
  const twin = before.find((other) => [line.from, line.to].every((end) => offMm(other, end) <= WELD_MM));
  return twin === undefined ? null : `Grid line ${gridName(line)} lies on ${gridName(twin)} and adds nothing to it.`;
}

/** How far a place lies beside a line, which runs on beyond its ends. */
function offMm({ from, to }: GridLine, [x, y]: GridLine['from']): number {
  const [ux, uy] = pointDirection(from, to);
  return Math.abs((y - from[1]) * ux - (x - from[0]) * uy);
}

/** As with base points: what is laid through two places near each other turns with every error in one of them. */
function shortWords(line: GridLine): string | null {
  const lengthMm = pointDistance(line.from, line.to);
  if (lengthMm >= leastBase.value) return null;
  return `Grid line ${gridName(line)} is ${wholeMmText(lengthMm)} long: with less than ${wholeMmText(leastBase.value)} between its ends every error in a mark grows over the floor.`;
}
