import { boxOf } from '../../geometry/ring.ts';
import { figureRead } from '../parts/format.ts';
import { type LengthUnit, lengthsRead } from '../parts/lengths.ts';
import { boardRefuse } from '../state/boardStore.ts';
import { handAct } from '../tools/hand.ts';
import type { TypedMeaning } from '../tools/stance.ts';
import { toolStore } from '../tools/toolStore.ts';
import { boardReveal } from './boardView.ts';
import { surfaceFocus } from './surface.ts';

/** What was typed becomes an act of the hand; what cannot be read stays, and is told. */
export function typedPut(text: string, direction: string | null, meaning: TypedMeaning, unit: LengthUnit): void {
  const read = lengthsRead(text, unit);
  const directionDeg = direction === null ? null : figureRead(direction);
  const least = read === null ? 0 : Math.min(...(read.kind === 'one' ? [read.mm] : read.mm));
  if (direction !== null && directionDeg === null) {
    boardRefuse('Enter a direction in degrees, such as 90: up the sheet.', []);
    return;
  }
  if (read === null || least <= 0) {
    const example = unit === 'mm' ? '4500 or 4500 x 3000' : '4.5 or 4.5 x 3';
    boardRefuse(`Enter a length, such as ${meaning.sides ? example : example.split(' ')[0]}.`, []);
    return;
  }
  if (read.kind === 'two') handAct({ kind: 'sides', sidesMm: read.mm });
  else handAct({ kind: 'length', lengthMm: read.mm, directionDeg });
  // A typed run may end out of sight.
  const { typed } = toolStore.getState().stance;
  if (typed !== null && typed.lengthMm !== null) boardReveal(boxOf([typed.at]));
  surfaceFocus();
}
