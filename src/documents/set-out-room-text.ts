import { WELD_MM } from '../geometry/tolerance.ts';
import type { WallCut } from '../plan/analysis.ts';
import type { CornerPlaces } from './set-out-corners.ts';
import type { FieldSetOut } from './set-out-drawing.ts';
import type { RoomSetOut, WallSide } from './set-out-rooms.ts';
import { block, opening, type TextBlock } from './set-out-text.ts';
import { faceSide } from './set-out-walls.ts';
import { cutFiguresText, cutIsLeftOut, wholeMmText } from './tile-words.ts';
import { figureText, heldSpace, type Names } from './words.ts';

/** The rooms of all fields, each with what it is set out by.
 *  @param jointMm width of the perimeter joint */
export function roomBlocks(fields: readonly FieldSetOut[], names: Names, jointMm: number): readonly TextBlock[] {
  const rooms = fields.flatMap((field) =>
    field.rooms.map((room) => ({ field, room, text: roomText(field, room, names, jointMm) })),
  );
  if (rooms.length === 0) return [];
  const says = (part: string) => rooms.some(({ text }) => text.includes(part));
  const head = opening(
    'Rooms',
    [
      'Cuts at the walls in mm, which give the first grout lines; where a wall steps, from left to right or from top to bottom.',
      says(otherWalls)
        ? 'Curved walls and walls askew to the tiles are met by cuts of every size and carry no mark of narrow cuts.'
        : '',
      says(square) ? 'Square: lengths along the courses, across them and between their ends.' : '',
    ].filter((line) => line !== ''),
  );
  return [head, ...rooms.map(({ room, text }) => block(names.ref(room.room), [text], { what: 'room', count: 1 }))];
}

const otherWalls = 'Other walls';
const square = 'Square';

function roomText({ lines, report }: FieldSetOut, room: RoomSetOut, names: Names, jointMm: number): string {
  const { sides, others, byCuts, places, check } = room;
  const isMain = lines?.room.id === room.room;
  return [
    sidesText(sides, report.bond === 'herringbone', jointMm),
    others.length === 0 ? '' : `${otherWalls} ${rangeText(others)}.`,
    places === null ? '' : placesText(places),
    byCuts || places !== null || isMain ? '' : runsOnText(lines?.room.id, names),
    // the sheet says how lines 1 and 2 are checked
    check === null || isMain
      ? ''
      : `${square} ${[check.firstMm, check.secondMm, check.acrossMm].map((mm) => figureText(mm, 0)).join(', ')}\u00a0mm.`,
  ]
    .filter((part) => part !== '')
    .join(' ');
}

/** Example: "Left 24, right 447, upper whole, lower 382 then 367."
 *  @param isMixed whether tiles lie both ways, so that the cuts at a wall are of many sizes */
function sidesText(sides: readonly WallSide[], isMixed: boolean, jointMm: number): string {
  const told = sides.map(({ side, cuts }) => {
    const sawn = cuts.filter(({ tiles }) => tiles > 0);
    const texts =
      isMixed && sawn.length > 0
        ? [rangeText(sawn)]
        : cuts.filter((each) => !isPart(each, cuts)).map((each) => stepText(each, jointMm));
    const [first, ...more] = [...new Set(texts)].map((text) => text.replaceAll(' ', heldSpace));
    return [`${side}${heldSpace}${first}`, ...more.map((text) => `then${heldSpace}${text}`)].join(' ');
  });
  return told.length === 0 ? '' : `${sentence(told.join(', '))}.`;
}

/** Whole tiles of some courses first. Example: "whole 2 off the wall / 303" */
function stepText(cut: WallCut, jointMm: number): string {
  const offMm = Math.round(cut.wholeOffMm ?? 0);
  const whole = offMm === 0 ? 'whole' : `whole ${offMm} off the wall`;
  if (cut.tiles === 0) return whole;
  const sawn = `${cutFiguresText({ ...cut, wholeOffMm: null })}${cutIsLeftOut(cut, jointMm) ? ' (left out)' : ''}`;
  return cut.wholeOffMm === null ? sawn : `${whole} / ${sawn}`;
}

/** Whether a short piece of wall has only some of the sizes that another piece on its side has: both lie in one line. */
function isPart(cut: WallCut, all: readonly WallCut[]): boolean {
  return all.some(
    (other) =>
      other.sizesMm.length > cut.sizesMm.length &&
      cut.sizesMm.every((mm) => other.sizesMm.some((each) => Math.abs(each - mm) <= WELD_MM)),
  );
}

/** Least and greatest of several cuts. */
function rangeText(cuts: readonly WallCut[]): string {
  const sizes = cuts.flatMap(({ sizesMm }) => sizesMm);
  return cutFiguresText({ sizesMm: [Math.min(...sizes), Math.max(...sizes)], isAskew: true, wholeOffMm: null });
}

/** Example: "Upper left corner of a tile: 1809 mm from the left wall and 3015 mm from the upper wall." */
function placesText({ corner, walls, fromMm }: CornerPlaces): string {
  const name = sentence(corner);
  const of = fromMm.length === 1 ? 'corner of a tile' : 'corners of two tiles of one row';
  const sides = walls.map((wall) => `the ${faceSide(wall)} wall`);
  const places = fromMm.map((distances, i) =>
    distances.map((mm, k) => `${wholeMmText(mm)}${i === 0 ? ` from ${sides[k]}` : ''}`).join(' and '),
  );
  return `${name} ${of}: ${places.join('; ')}.`;
}

function runsOnText(from: string | undefined, names: Names): string {
  return `No two straight walls to measure from${from === undefined ? '' : `: its grout lines run on from ${names.ref(from)}`}.`;
}

function sentence(text: string): string {
  return `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}`;
}
