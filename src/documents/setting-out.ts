import { lineMiddle, lineStraight } from '../geometry/line.ts';
import { type Point, vectorLength } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import { PHASES_PER_MM, STRAIGHT_MM } from '../geometry/tolerance.ts';
import type { Joint } from '../plan/analysis.ts';
import { type PaperSource, perSource } from './paper-source.ts';
import { floorFrame, frameFigures, roomFrames, type SetOutFrame } from './setting-out-frame.ts';
import { placeIsDrawn } from './setting-out-sheet.ts';

/** Where a joint lies in its frame, in mm. */
export interface JointSetting {
  readonly joint: Joint;
  /** Null where there are neither base points, nor a grid, nor a straight wall. */
  readonly frame: SetOutFrame | null;
  /** `x`: all of it has the same x; `y`: the same y; `askew`: straight and neither; `bent`: by its bends. */
  readonly lies: 'x' | 'y' | 'askew' | 'bent';
  /** The x or y that all of it has, whole mm. */
  readonly runningMm: number | null;
  /** Ends and bends, x and y in whole mm, from the end nearer to the origin. */
  readonly points: readonly Point[];
  /** The same places on the sheet. */
  readonly places: readonly Point[];
  /** Straight from the origin to the far end, whole mm. */
  readonly checkMm: number | null;
}

/** Joints of one frame that have the same x, or the same y. */
export interface JointRun {
  readonly frame: SetOutFrame;
  readonly axis: 'x' | 'y';
  readonly runningMm: number;
  readonly settings: readonly JointSetting[];
}

/** Of every joint, in the order of the analysis.
 *  Example: base points at [0, 6000] and [9000, 6000], a joint from [4500, 0] to [4500, 6000] -> x 4500 */
export const jointSettings = perSource((source: PaperSource): readonly JointSetting[] => {
  const frameOf = framesOf(source);
  return source.analysis.joints.map((joint) => jointSetting(joint, frameOf(joint)));
});

function framesOf(source: PaperSource): (joint: Joint) => SetOutFrame | null {
  const floor = floorFrame(source);
  if (floor !== null) return () => floor;
  const frames = roomFrames(source);
  const roomsOfBay = new Map(source.analysis.bays.map(({ id, rooms }) => [id, rooms]));
  const regions = new Map(source.plan.rooms.map((room) => [room.id, room]));
  const [any = null] = frames.values();
  return ({ line, bays }) => {
    const rooms = bays.flatMap((id) => roomsOfBay.get(id) ?? []).filter((id) => frames.has(id));
    const middle = lineMiddle(line);
    const own = rooms.find((id) => {
      const region = regions.get(id);
      return region !== undefined && regionContains(region, middle);
    });
    return frames.get(own ?? rooms[0] ?? '') ?? any;
  };
}

/** Rooms with joints and no straight wall, where nothing else is marked to set these out from: in the order of the plan. */
export function roomsWithoutWall(source: PaperSource): readonly string[] {
  if (floorFrame(source) !== null) return [];
  const frames = roomFrames(source);
  const roomsOfBay = new Map(source.analysis.bays.map(({ id, rooms }) => [id, rooms]));
  const lacking = new Set(
    source.analysis.joints.flatMap(({ bays }) => {
      const rooms = bays.flatMap((id) => roomsOfBay.get(id) ?? []);
      return rooms.some((id) => frames.has(id)) ? [] : rooms;
    }),
  );
  return source.plan.rooms.flatMap(({ id }) => (lacking.has(id) ? [id] : []));
}

/** The walls of another room that the joints of rooms without a straight one are set out from; null where there are none either. */
export function borrowedFrame(source: PaperSource): SetOutFrame | null {
  const [any = null] = roomFrames(source).values();
  return roomsWithoutWall(source).length === 0 ? null : any;
}

function jointSetting(joint: Joint, frame: SetOutFrame | null): JointSetting {
  const course = lineStraight(joint.line);
  if (frame === null) {
    const lies = course.length > 2 ? 'bent' : 'askew';
    return { joint, frame, lies, runningMm: null, points: [], places: course, checkMm: null };
  }
  const found = course.map((place) => ({ place, at: frameFigures(frame, place) }));
  const ends = [found[0], found[found.length - 1]].map((end) => (end === undefined ? 0 : vectorLength(...end.at)));
  if (Math.round((ends[0] ?? 0) - (ends[1] ?? 0)) > 0) found.reverse();
  const exact = found.map(({ at }) => at);
  const [atX, atY] = [sameFigure(exact.map(([x]) => x)), sameFigure(exact.map(([, y]) => y))];
  const lies = atX !== null ? 'x' : atY !== null ? 'y' : exact.length > 2 ? 'bent' : 'askew';
  const points = exact.map(
    ([x, y]): Point => [
      lies === 'x' && atX !== null ? atX : wholeMm(x),
      lies === 'y' && atY !== null ? atY : wholeMm(y),
    ],
  );
  return {
    joint,
    frame,
    lies,
    runningMm: lies === 'x' ? atX : lies === 'y' ? atY : null,
    points,
    places: found.map(({ place }) => place),
    checkMm: wholeMm(vectorLength(...(exact[exact.length - 1] ?? [0, 0]))),
  };
}

/** The figure of a line that all of these lie on, which is as straight as rounding has left it; null where they lie on none. */
function sameFigure(figures: readonly number[]): number | null {
  const [least, most] = [Math.min(...figures), Math.max(...figures)];
  if (wholeMm(least) === wholeMm(most)) return wholeMm(least);
  return most - least <= 2 * STRAIGHT_MM ? wholeMm((least + most) / 2) : null;
}

/** Whole millimetres, and never a minus before nothing. A half that rounding of sums has moved by a hair goes the way of a half. */
export function wholeMm(mm: number): number {
  return Math.round(Math.round(mm * PHASES_PER_MM) / PHASES_PER_MM) + 0;
}

/** Joints that are set out by one figure, by frame and axis, rising. */
export function jointRuns(settings: readonly JointSetting[]): readonly JointRun[] {
  const runs = new Map<string, JointRun & { readonly settings: JointSetting[] }>();
  for (const setting of settings) {
    const { frame, lies, runningMm } = setting;
    if (frame === null || runningMm === null || (lies !== 'x' && lies !== 'y')) continue;
    const key = `${frame.room ?? ''} ${lies} ${runningMm}`;
    const run = runs.get(key) ?? { frame, axis: lies, runningMm, settings: [] };
    runs.set(key, run);
    run.settings.push(setting);
  }
  return [...runs.values()].sort((a, b) => a.runningMm - b.runningMm);
}

export function originIsOnSheet({ plan }: PaperSource, { room, origin }: SetOutFrame): boolean {
  return room !== null || placeIsDrawn(plan, origin);
}

/** Whether it is set out from the wall that its doorway stands in, and not from the room. */
export function isInWall({ frame, joint }: JointSetting): boolean {
  return frame !== null && frame.room !== null && joint.kind === 'doorway';
}
