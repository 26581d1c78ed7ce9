import { lineLength } from '../../documents/label-seats.ts';
import { lineMiddle } from '../../geometry/line.ts';
import { type Point, pointBetween, pointDirection, pointDistance } from '../../geometry/point.ts';
import { type Box, boxMiddle, boxOf, ringContains } from '../../geometry/ring.ts';
import { type ObjectOf, objectPoints, objectsOf, type PlanObject } from '../../plan/edits/objects.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { figure, nameText } from '../parts/format.ts';
import type { Thing } from '../state/thing.ts';
import { nouns } from '../tools/nouns.ts';

type Room = ObjectOf<'rooms'>;

/** A thing of the plan as one reads it out. */
export interface ReadThing {
  readonly thing: Thing;
  readonly found: PlanObject;
  /** Round it, mm. */
  readonly box: Box;
  /** Rooms that it lies in, or that it joins. */
  readonly rooms: readonly Room[];
}

/** All things of the plan as a drawing is read: rooms in rows from the top, each row from the left, after each room what
 *  stands in it; last what stands in none. A doorway comes after the first of its two rooms. */
export function readingOf(file: PlanFile): readonly ReadThing[] {
  const rooms = rowsOf(file.rooms.map((room) => ({ room, box: boxOf(room.outline) })));
  const roomAt = roomFinder(rooms);
  const inRoom = new Map<Room | null, ReadThing[]>();
  for (const found of objectsOf(file)) {
    if (found.list === 'rooms') continue;
    const box = boxOf(objectPoints(found));
    const read: ReadThing = {
      thing: { kind: 'object', key: found.object.id },
      found,
      box,
      rooms: roomsOf(found, box, roomAt),
    };
    const of = read.rooms[0] ?? null;
    const others = inRoom.get(of);
    if (others === undefined) inRoom.set(of, [read]);
    else others.push(read);
  }
  return [
    ...rooms.flatMap(({ room, box }): readonly ReadThing[] => [
      { thing: { kind: 'room', key: room.id }, found: { list: 'rooms', object: room }, box, rooms: [] },
      ...rowsOf(inRoom.get(room) ?? []),
    ]),
    ...rowsOf(inRoom.get(null) ?? []),
  ];
}

/** In rows from the top, each from the left: what begins above the middle of the first of a row stands in that row. */
function rowsOf<Item extends { readonly box: Box }>(items: readonly Item[]): readonly Item[] {
  const sorted = [...items].sort((a, b) => a.box.minY - b.box.minY || a.box.minX - b.box.minX);
  const rows: Item[][] = [];
  for (const item of sorted) {
    const row = rows.at(-1);
    const head = row?.[0]?.box;
    if (row !== undefined && head !== undefined && item.box.minY < (head.minY + head.maxY) / 2) row.push(item);
    else rows.push([item]);
  }
  return rows.flatMap((row) => row.sort((a, b) => a.box.minX - b.box.minX));
}

interface PlacedRoom {
  readonly room: Room;
  readonly box: Box;
}

/** A room and its place in the reading. */
interface FoundRoom {
  readonly room: Room;
  readonly rank: number;
}

type RoomAt = (at: Point) => FoundRoom | null;

/** Rooms are looked up by upright strips of the sheet, mm: a search through all of 1,000 for each of 3,000 things would
 *  take a third of a second. */
const stripMm = 4000;

function roomFinder(rooms: readonly PlacedRoom[]): RoomAt {
  const strips = new Map<number, (PlacedRoom & FoundRoom)[]>();
  for (const [rank, each] of rooms.entries()) {
    const last = Math.floor(each.box.maxX / stripMm);
    for (let strip = Math.floor(each.box.minX / stripMm); strip <= last; strip++) {
      const others = strips.get(strip);
      if (others === undefined) strips.set(strip, [{ ...each, rank }]);
      else others.push({ ...each, rank });
    }
  }
  return (at) =>
    strips
      .get(Math.floor(at[0] / stripMm))
      ?.find(({ room, box }) => boxHolds(box, at) && ringContains(room.outline, at)) ?? null;
}

/** So far from its line a doorway looks for its rooms on either side, mm: at its own side of the wall and through it. */
const besideMm = [20, 120, 300, 620] as const;

function roomsOf({ list, object }: PlanObject, box: Box, roomAt: RoomAt): readonly Room[] {
  if (list !== 'doorways') {
    const found = roomAt('line' in object ? lineMiddle(object.line) : boxMiddle(box));
    return found === null ? [] : [found.room];
  }
  const [a, b] = object.line;
  const [x, y] = pointBetween(a, b, 0.5);
  const [ux, uy] = pointDirection(a, b);
  const joined = [1, -1].flatMap((side) => {
    const far = besideMm.flatMap((mm) => roomAt([x - uy * side * mm, y + ux * side * mm]) ?? []);
    return far.slice(0, 1);
  });
  return joined.sort((p, q) => p.rank - q.rank).map(({ room }) => room);
}

function boxHolds({ minX, maxX, minY, maxY }: Box, [x, y]: Point): boolean {
  return x >= minX && x <= maxX && y >= minY && y <= maxY;
}

/** What is said of it: its name, what it is, where and how large.
 *  Examples: "Hall, room, 6.0 by 4.5 m"; "Doorway between Hall and Kitchen, 875 mm"; "Column c1 in Hall, 300 by 300 mm" */
export function readingName({ found, box, rooms }: ReadThing): string {
  const { list, object } = found;
  const inside = rooms.length === 0 ? '' : ` in ${rooms.map(roomName).join(' and ')}`;
  switch (list) {
    case 'rooms':
      return `${roomName(object)}, room, ${sidesOf(box, 'm')}`;
    case 'doorways': {
      const where =
        rooms.length === 2 ? `Doorway between ${rooms.map(roomName).join(' and ')}` : `Doorway ${object.id}`;
      return `${where}${rooms.length === 1 ? inside : ''}, ${mm(pointDistance(object.line[0], object.line[1]))}`;
    }
    case 'pipes':
      return `Pipe ${object.id}${inside}, ${mm(object.diameterMm)} across`;
    case 'joinery':
      return `${nameText(object.name ?? '') || object.id}, joinery${inside}, ${sidesOf(box, 'mm')}`;
    case 'structuralJoints':
      return `${capital(nouns[list])} ${object.id}, ${object.widthMm === undefined ? '' : `${mm(object.widthMm)} wide, `}${lengthOf(object.line)}`;
    case 'sunZones':
      return `${capital(nouns[list])} ${object.id}${inside}, up to ${figure(object.highestC, 0)} °C, ${sidesOf(box, 'm')}`;
    case 'drawnJoints':
    case 'noJoint':
      return `${capital(nouns[list])} ${object.id}${inside}, ${lengthOf(object.line)}`;
    default:
      return `${capital(nouns[list])} ${object.id}${inside}, ${sidesOf(box, list === 'keepClear' ? 'm' : 'mm')}`;
  }
}

function roomName({ id, name }: Room): string {
  return nameText(name ?? '') || id;
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

const mm = (value: number) => `${figure(value, 0)} mm`;

function lengthOf(line: readonly Point[]): string {
  return `${figure(lineLength(line) / 1000, 2)} m long`;
}

function sidesOf({ minX, maxX, minY, maxY }: Box, unit: 'm' | 'mm'): string {
  const [width, height] = [maxX - minX, maxY - minY];
  return unit === 'mm'
    ? `${figure(width, 0)} by ${mm(height)}`
    : `${figure(width / 1000, 1)} by ${figure(height / 1000, 1)} m`;
}
