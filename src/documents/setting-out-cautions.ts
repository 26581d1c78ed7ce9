import type { PaperSource } from './paper-source.ts';
import { pointCautionTexts } from './point-cautions.ts';
import { borrowedFrame, roomsWithoutWall, wholeMm } from './setting-out.ts';
import {
  floorFrame,
  frameFigures,
  gridName,
  linesAskew,
  pointName,
  roomName,
  type SetOutFrame,
} from './setting-out-frame.ts';
import { basePointsOff, gridLinesOff, placeOffText } from './setting-out-sheet.ts';
import { figureText, heldSpace } from './words.ts';

/** What is to be known before a floor is set out: marks that do not serve, marks that are not drawn, rooms that need some. */

/** So many are named; of more, how many there are. */
const mostNamed = 3;

/** Sentence by sentence, the gravest first; none where all marks serve and are drawn. */
export function settingOutCautions(source: PaperSource): readonly string[] {
  return [
    ...roomCautions(source),
    ...pointCautionTexts(source, { kind: 'base', most: mostNamed }),
    ...gridCautions(source),
    ...offCautions(source),
  ];
}

/** Grid lines that joints cannot be set out from. Example: "Grid line 1 is not square to A: joints are set out from A alone." */
function gridCautions(source: PaperSource): readonly string[] {
  const found = linesAskew(source);
  if (found === null) return [];
  const { base, askew } = found;
  const [what, are] = askew.length === 1 ? ['line', 'is'] : ['lines', 'are'];
  const name = gridName(base);
  return [
    `Grid ${what} ${named(askew, gridName)} ${are} not square to ${name}: joints are set out from ${name} alone.`,
  ];
}

function roomCautions(source: PaperSource): readonly string[] {
  const rooms = roomsWithoutWall(source);
  if (rooms.length === 0) return [];
  const [what, have, are] = rooms.length === 1 ? ['Room', 'has', 'is'] : ['Rooms', 'have', 'are'];
  const frame = borrowedFrame(source);
  const instead = frame === null ? '' : ` and ${are} set out from ${frame.from}`;
  return [
    `${what} ${namedRooms(source, rooms)} ${have} no straight wall to measure from${instead}: mark two base points and enter them in the plan.`,
  ];
}

/** Whose walls stand in for those that rooms do not have; null where none do. Example: "Round is set out from U, upper wall from its left end" */
export function borrowedText(source: PaperSource): string | null {
  const frame = borrowedFrame(source);
  const rooms = roomsWithoutWall(source);
  if (frame === null) return null;
  return `${namedRooms(source, rooms)} ${rooms.length === 1 ? 'is' : 'are'} set out from ${frame.from}`;
}

function namedRooms(source: PaperSource, rooms: readonly string[]): string {
  return named(rooms, (id) => roomName(source, id));
}

/** Base points and grid lines too far off to be drawn, with what finds them. */
function offCautions(source: PaperSource): readonly string[] {
  const frame = floorFrame(source);
  const points = basePointsOff(source);
  const lines = gridLinesOff(source);
  const [what, lie] = lines.length === 1 ? ['line', 'lies'] : ['lines', 'lie'];
  return [
    ...points
      .slice(0, mostNamed)
      .map(
        (point) =>
          `Base point ${pointName(point)} lies ${placeOffText(source.plan, point.at)}, off this sheet${figures(frame, point.at)}.`,
      ),
    ...(points.length > mostNamed ? [`${points.length - mostNamed} more base points lie off this sheet.`] : []),
    ...(lines.length > 0 ? [`Grid ${what} ${named(lines, gridName)} ${lie} off this sheet.`] : []),
  ];
}

function figures(frame: SetOutFrame | null, place: readonly [number, number]): string {
  if (frame === null) return '';
  const [x = 0, y = 0] = frameFigures(frame, place).map(wholeMm);
  return `: x${heldSpace}${figureText(x, 0)}, y${heldSpace}${figureText(y, 0)}`;
}

/** Example: "Hall, Kitchen, Bath and 4 more" */
function named<Item>(items: readonly Item[], nameOf: (item: Item) => string): string {
  const more = items.length - mostNamed;
  const first = items.slice(0, mostNamed).map(nameOf);
  if (more > 0) return `${first.join(', ')} and ${more}${heldSpace}more`;
  const last = first.at(-1) ?? '';
  return first.length < 2 ? last : `${first.slice(0, -1).join(', ')} and ${last}`;
}
