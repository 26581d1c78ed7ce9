import { oneLine } from '../../../documents/words.ts';
import { type Point, pointDistance } from '../../../geometry/point.ts';
import { SAME_LINE_MM } from '../../../geometry/tolerance.ts';
import type { Joint } from '../../../plan/analysis.ts';
import type { Room } from '../../../plan/plan.ts';
import { type GridFrame, gridFrame, type TiledField, tileModule } from '../../../plan/tile-grid.ts';
import { evenCuts, type Reach, ringReach } from '../../../tiling/balance.ts';
import { type Caught, handStep } from '../catch.ts';
import type { CatchCorner } from '../catch-lines.ts';
import { type SketchMark, sketchLine } from '../sketch.ts';
import type { Hand } from '../stance.ts';

/** What a set-out point is caught by: corners of rooms, walls and joints that run along the grid, and the places at which the cuts on both sides of
 *  the room under the hand are equal. Made once for a drag; places in mm along the grid's own axes, from where the point was. */
export interface SetOutCatches {
  readonly field: TiledField;
  readonly frame: GridFrame;
  readonly corners: readonly CatchCorner[];
  readonly lines: readonly GridLine[];
  /** How far each room reaches along either axis. */
  readonly rooms: ReadonlyMap<string, readonly [Reach | null, Reach | null]>;
}

/** A wall or a joint across an axis of the grid: a tile begins there. */
interface GridLine {
  readonly axis: 0 | 1;
  readonly atMm: number;
  /** An end of it on the sheet, for its guide. */
  readonly source: Point;
  readonly words: string;
}

export function setOutCatches(field: TiledField, joints: readonly Joint[]): SetOutCatches {
  const frame = gridFrame(field.grid);
  const corners: CatchCorner[] = [];
  const lines: GridLine[] = [];
  const lineTake = (a: Point, b: Point, words: string, beyondMm: number) => {
    const [p, q] = [frame.toGrid(a), frame.toGrid(b)];
    for (const axis of [0, 1] as const) {
      if (Math.abs(p[axis] - q[axis]) <= SAME_LINE_MM) lines.push({ axis, atMm: p[axis] + beyondMm, source: a, words });
    }
  };
  for (const room of field.rooms) {
    const of = oneLine(room.name);
    for (const ring of [room.outline, ...room.holes]) {
      ring.forEach((a, i) => {
        corners.push({ at: a, of, offMm: 0 });
        lineTake(a, ring[(i + 1) % ring.length] ?? a, `Wall of ${of}`, 0);
      });
    }
  }
  // The middle of a grout line lies on the joint, and the tile begins half a grout beyond it.
  for (const { id, line } of joints) {
    for (const [i, b] of line.slice(1).entries()) lineTake(line[i] as Point, b, `Joint ${id}`, field.grid.groutMm / 2);
  }
  const rooms = new Map(
    field.rooms.map(({ id, outline }) => {
      const ring = outline.map(frame.toGrid);
      return [id, [ringReach(ring, 0), ringReach(ring, 1)] as const];
    }),
  );
  return { field, frame, corners, lines, rooms };
}

/** What is caught on one axis. */
interface Held {
  readonly atMm: number;
  readonly marks: (to: Point) => readonly SketchMark[];
}

/** Brings a set-out point to what it most likely means.
 *  @param raw where the hand has it, mm of the sheet  @param room under the hand; null where there is none */
export function setOutCatch(catches: SetOutCatches, hand: Hand, raw: Point, room: Room | null): Caught {
  const { frame, corners } = catches;
  const [x, y] = frame.toGrid(raw);
  if (hand.loose) return caughtAt(frame.toSheet([Math.round(x), Math.round(y)]), []);
  const corner = cornerNear(corners, raw, hand.reachMm);
  if (corner !== null) {
    const { at, of } = corner;
    const words: SketchMark = { mark: 'words', at, text: `Corner of ${of}`, tone: 'guide' };
    return caughtAt(at, [{ mark: 'dot', at, tone: 'guide' }, words]);
  }
  const step = handStep(hand.reachMm);
  const held = ([0, 1] as const).map((axis) => {
    const place = axis === 0 ? x : y;
    return lineNear(catches, axis, place, hand.reachMm) ?? evenNear(catches, axis, place, hand.reachMm, room);
  });
  const [u, v] = held.map((each, axis) => each?.atMm ?? Math.round((axis === 0 ? x : y) / step) * step);
  const to = frame.toSheet([u ?? x, v ?? y]);
  return caughtAt(
    to,
    held.flatMap((each) => each?.marks(to) ?? []),
  );
}

function caughtAt(at: Point, marks: readonly SketchMark[]): Caught {
  return { at, marks, onSide: false };
}

function cornerNear(corners: readonly CatchCorner[], to: Point, reachMm: number): CatchCorner | null {
  let best: CatchCorner | null = null;
  let least = reachMm;
  for (const corner of corners) {
    const away = pointDistance(corner.at, to);
    if (away <= least) [best, least] = [corner, away];
  }
  return best;
}

function lineNear({ lines }: SetOutCatches, axis: 0 | 1, place: number, reachMm: number): Held | null {
  let best: GridLine | null = null;
  let least = reachMm;
  for (const line of lines) {
    const away = Math.abs(line.atMm - place);
    if (line.axis === axis && away <= least) [best, least] = [line, away];
  }
  if (best === null) return null;
  const { atMm, source, words } = best;
  return {
    atMm,
    marks: (to) => [sketchLine([source, to], 'guide'), { mark: 'words', at: to, text: words, tone: 'guide' }],
  };
}

/** Equal cuts catch within this share of what tiles repeat at, so that most places stay free. */
const evenShare = 1 / 16;

function evenNear(catches: SetOutCatches, axis: 0 | 1, place: number, reachMm: number, room: Room | null): Held | null {
  const { field, rooms } = catches;
  const reach = room === null ? null : (rooms.get(room.id)?.[axis] ?? null);
  // Where courses are shifted against each other, the cuts differ from course to course.
  const isShifted = field.grid.bond === 'herringbone' || (axis === 0 && field.grid.shiftMm !== 0);
  if (reach === null || room === null || isShifted) return null;
  const [even] = evenCuts(field.grid, axis, reach);
  const moduleMm = tileModule(field.grid)[axis];
  const atMm = even.atMm + Math.round((place - even.atMm) / moduleMm) * moduleMm;
  const awayMm = Math.abs(atMm - place);
  // What is moved straight stays straight: where the point was is nearer than that.
  if (awayMm > Math.min(reachMm, moduleMm * evenShare) || Math.abs(place) <= awayMm) return null;
  const of = oneLine(room.name);
  const isWhole = even.cutMm === (axis === 0 ? field.grid.lengthMm : field.grid.widthMm);
  const text = isWhole ? `Whole tiles at both walls of ${of}` : `Equal cuts of ${Math.round(even.cutMm)} mm in ${of}`;
  return { atMm, marks: (to) => [{ mark: 'words', at: to, text, tone: 'guide' }] };
}
