import { type TakeOffLine, takeOffNet } from '../../plan/take-off.ts';
import { boardStore } from './boardStore.ts';
import { papersStore } from './papersRun.ts';
import { planStore } from './planStore.ts';

/** Lights what a line of the take-off was measured from; null: none. */
export function takeOffLight(line: string | null): void {
  papersStore.setState(({ takeOff }) => ({ takeOff: { ...takeOff, line } }));
}

/** Looks at the quantities of a room; null: of the whole floor. A line goes out that the room has nothing of. */
export function takeOffRoom(room: string | null, lines: readonly TakeOffLine[]): void {
  papersStore.setState(({ takeOff }) => {
    const line = lines.find(({ key }) => key === takeOff.line);
    const stays = line !== undefined && (room === null || takeOffNet(line, room) > 0);
    return { takeOff: { line: stays ? line.key : null, room } };
  });
}

/** With another step of the work, and with another floor, nothing is lit and the whole floor is looked at.
 *  @returns what ends it */
export function takeOffFollow(): () => void {
  const reset = () => papersStore.setState({ takeOff: { line: null, room: null } });
  const ends = [
    boardStore.subscribe(({ step }, before) => step !== before.step && reset()),
    planStore.subscribe(({ history }, before) => history.present.number !== before.history.present.number && reset()),
  ];
  return () => {
    for (const end of ends) end();
  };
}
