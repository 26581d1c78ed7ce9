import type { JointGrout, WhyOff } from '../plan/analysis.ts';
import { type DecimalMark, figureText } from './words.ts';

/** What is said of a joint in the grid of the tiles, in tables and on the screen. */

const whyWords: Readonly<Record<WhyOff, string>> = {
  doorway: 'it stays under the leaf',
  building: 'it stands over the joint of the building',
  zone: 'it stands where the heating changes',
  user: 'it was drawn there',
  neck: 'it stands at the narrowest place',
  bond: 'no grout runs straight this way in this bond',
  askew: 'it runs askew to the tiles',
  aim: 'the layout does not aim for grout lines',
  corner: 'the corner here is too far from any grout line',
  column: 'no grout line meets the column here',
  limits: 'no grout line near by keeps the bays within their limits',
};

/** Why it lies off the grout lines; null where it does not. Example: "it stays under the leaf" */
export function whyOffText({ whyOff }: Pick<JointGrout, 'whyOff'>): string | null {
  return whyOff === null ? null : whyWords[whyOff];
}

/** How it lies in the grid; null where it has no tiles. Example: "off by 28.5 mm" */
export function groutText({ onGroutLine, offGroutMm }: JointGrout, mark: DecimalMark = '.'): string | null {
  if (onGroutLine === null || offGroutMm === null) return null;
  return onGroutLine ? 'on a grout line' : `off by ${figureText(offGroutMm, 0, mark)} mm`;
}

/** What the tiles do at it; null where it has none. Example: "3 tiles cut along it" */
export function tilesAtText({ tilesAt, cutsTiles }: JointGrout): string | null {
  const cut = `${cutsTiles} ${cutsTiles === 1 ? 'tile' : 'tiles'} cut along it`;
  switch (tilesAt) {
    case null:
      return null;
    case 'on-line':
      return 'no tile is cut in two';
    case 'restart':
      return cutsTiles === 0 ? 'the field restarts here' : `the field restarts here, ${cut}`;
    case 'one-side':
    case 'cut':
      return cut;
  }
}
