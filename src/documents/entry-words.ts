import type { Point } from '../geometry/point.ts';
import { doorwayNames, doorwayWithin } from './doorway-places.ts';
import { type EntryFloor, keyPlaceRooms, keyRead, keyRooms } from './entry-keys.ts';
import { textCut } from './text-width.ts';
import { figureText, namesOf, oneLine } from './words.ts';

/** What stands under a key, in words: where it was entered and how far off it is now. */

/** Widest name or key in a text, mm on paper: a file may have any. */
const widestMm = 60;

/** What a key is or was entered for, within a sentence.
 *  Examples: "bay:living@2.5,9" -> "a bay of Living near 2.5, 9 m"; "drawn:j1@5.5,9" -> "a joint drawn by hand in Living near 5.5, 9 m" */
export function keyWords(what: 'joint' | 'bay', key: string, floor: EntryFloor): string {
  const read = keyRead(key);
  // no key of the program's own: somebody has written it into the file
  if (read === null) return `a ${what} known as ${cut(key)}`;
  const { kind, of, at } = read;
  const near = at === null ? '' : ` ${nearWords(at)}`;
  const own = roomWords(keyRooms(read), floor);
  switch (kind) {
    case 'bay':
      return at === null ? `the bay of ${own}` : `a bay of ${own}${near}`;
    case 'doorway': {
      const name = doorwayNames(floor).get(of);
      return name === undefined ? 'the joint of a doorway that is gone' : `the joint of ${cut(doorwayWithin(name))}`;
    }
    case 'drawn':
    case 'structural': {
      const rooms = at === null ? [] : keyPlaceRooms(floor, at);
      const joint = kind === 'drawn' ? 'a joint drawn by hand' : 'a joint of the building';
      return `${joint}${rooms.length === 0 ? '' : ` in ${roomWords(rooms, floor)}`}${near}`;
    }
    case 'zone':
      return `a joint between heating zones of ${own}${near}`;
    default:
      return `a joint of ${own}${near}`;
  }
}

/** How far what is entered has been followed; keys know it to half a metre. Examples: 100 mm -> "close by"; 900 mm -> "about 1 m away" */
export function followedWords(awayMm: number | null): string {
  const halves = Math.round((awayMm ?? 0) / 500);
  if (halves === 0) return 'close by';
  return halves === 1 ? 'about half a metre away' : `about ${metreText(halves * 500)} m away`;
}

function nearWords([x, y]: Point): string {
  return `near ${metreText(x)}, ${metreText(y)} m`;
}

function metreText(mm: number): string {
  return figureText(mm / 1000, Number.isInteger(mm / 1000) ? 0 : 1);
}

function roomWords(ids: readonly string[], { plan, analysis }: EntryFloor): string {
  const names = namesOf(plan, analysis);
  const known = new Set(plan.rooms.map(({ id }) => id));
  const [first, second, ...more] = ids.filter((id) => known.has(id)).map((id) => cut(names.room(id)));
  if (first === undefined) return 'a room that is gone';
  if (second === undefined) return first;
  return more.length === 0 ? `${first} + ${second}` : `${first} + ${more.length + 1} more`;
}

function cut(text: string): string {
  return textCut(oneLine(text), 'sheet-text', widestMm);
}
