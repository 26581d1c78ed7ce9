import type { LabelItem } from './drawing.ts';
import type { TextBlock } from './set-out-text.ts';
import { textLines } from './text-width.ts';

/** Whether blocks that found no room tell of a field, a room or a joint. */
export function leavesOut(left: readonly TextBlock[], what: Held): boolean {
  return left.some(({ holds }) => holds?.what === what);
}

type Held = NonNullable<TextBlock['holds']>['what'];

/** What has found no room in the strip, list by list. */
export function leftRows(left: readonly TextBlock[], width: number): readonly string[] {
  return (['field', 'room', 'joint'] as const).flatMap((what) => {
    const count = left.reduce((sum, { holds }) => sum + (holds?.what === what ? holds.count : 0), 0);
    return count === 0
      ? []
      : textLines(`${count} more ${what}${count === 1 ? '' : 's'} in ${leftLists[what]}`, 'sheet-head', width);
  });
}

const leftLists = { field: 'tiles.csv', room: 'cuts.csv', joint: 'joints.csv' } as const;

/** What has found no room on the drawing and does not stand in the strip either, and where it stands.
 *  @param left of the strip */
export function unletteredText(labels: readonly LabelItem[], left: readonly TextBlock[]): string | null {
  const roomsLeft = leavesOut(left, 'room');
  const count = (of: (label: LabelItem) => boolean) => labels.filter(of).length;
  const bays = count(({ ref }) => ref.kind === 'bay');
  const joints = count(({ ref }) => ref.kind === 'joint');
  const things = count(({ ref, seat }) => ref.kind === 'object' && seat.kind === 'inside');
  const cuts = count(({ ref }) => ref.kind === 'edge' || (roomsLeft && ref.kind === 'room'));
  const parts = [
    [bays, 'bay name', 'bays.csv'],
    [joints, 'joint name', leavesOut(left, 'joint') ? 'joints.csv' : 'under Joints'],
    [things, 'joinery name', 'cuts.csv'],
    [cuts, 'cut size', `at ${roomsLeft ? 'walls' : 'short walls'} and things, cuts.csv`],
  ] as const;
  const told = parts
    .filter(([number]) => number > 0)
    .map(([number, what, where]) => `${number} ${what}${number === 1 ? '' : 's'} (${where})`);
  return told.length === 0 ? null : `Without room on the drawing: ${told.join(', ')}.`;
}
