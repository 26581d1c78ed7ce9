import { oneLine } from '../../../documents/words.ts';
import type { TilesOf } from '../../../plan/edits/tiles.ts';
import type { Room } from '../../../plan/plan.ts';
import { nameText } from '../../parts/format.ts';

/** What tiles are called: those of the whole floor, or of a field by its id. */
export function tilesName(of: TilesOf): string {
  return of === null ? 'Tiles of the floor' : `Field ${of}`;
}

/** The same at the end of the name of a step: "Tile length 600 mm of field t1". */
export function tilesOfWords(of: TilesOf): string {
  return of === null ? '' : ` of field ${of}`;
}

/** A sentence names so many rooms, and counts the rest. */
const mostRooms = 3;

export function roomsText(rooms: readonly Pick<Room, 'name'>[]): string {
  const names = rooms.map(({ name }) => nameText(oneLine(name)));
  const more = names.length - mostRooms;
  return more > 0 ? `${names.slice(0, mostRooms).join(', ')} and ${more} more` : names.join(', ');
}
