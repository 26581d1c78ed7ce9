import { lineMiddle } from '../geometry/line.ts';
import { lineWithin } from '../geometry/line-clip.ts';
import { pointDirection, pointDistance } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import { boxOf } from '../geometry/ring.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { Plan, Room } from '../plan/plan.ts';
import type { DrawingItem } from './drawing.ts';
import type { Strings } from './joint-dimensions-outside.ts';
import {
  figuresAlong,
  type RunningString,
  type RunningTick,
  stringLine,
  stringPoint,
} from './joint-dimensions-string.ts';
import { type Things, thingsOf } from './set-out-things.ts';
import { isInWall, type JointRun, type JointSetting } from './setting-out.ts';
import { frameFigures, type SetOutFrame } from './setting-out-frame.ts';
import { figureText } from './words.ts';

/** Strings of running dimensions inside rooms, from the wall that a room is set out from: where a plan has neither base points nor a grid. */

/** A string keeps so far off walls and off joints that run its way, mm on paper: room for its figures. */
const clearMm = 7;
/** Strings are tried at so many places across a room. */
const tries = 24;
/** A room has at most so many strings one way; joints that none of them meets are lettered beside their line. */
const mostStrings = 3;

interface Across {
  readonly room: Room;
  readonly frame: SetOutFrame;
  readonly axis: 'x' | 'y';
  readonly scale: number;
  readonly things: Things;
  /** Other figures of lines that a string would lie on. */
  readonly taken: readonly number[];
}

export function roomStrings(plan: Plan, runs: readonly JointRun[], scale: number): Strings {
  const items: DrawingItem[] = [];
  const joined = new Set<JointSetting>();
  const things = thingsOf(plan);
  const rooms = new Map(plan.rooms.map((room) => [room.id, room]));
  for (const frame of new Set(runs.map((run) => run.frame))) {
    const room = rooms.get(frame.room ?? '');
    if (room === undefined) continue;
    const inside = runs
      .filter((run) => run.frame === frame)
      .map((run) => ({ ...run, settings: run.settings.filter((setting) => isIn(room, setting)) }))
      .filter(({ settings }) => settings.length > 0);
    for (const axis of ['x', 'y'] as const) {
      const own = inside.filter((run) => run.axis === axis);
      const taken = inside.filter((run) => run.axis !== axis).map(({ runningMm }) => runningMm);
      for (const [string, met] of stringsAcross({ room, frame, axis, scale, things, taken }, own)) {
        const ticks = met.map((run) => tick(run));
        items.push(...stringLine(string, ticks), ...figuresAlong(string, ticks));
        for (const run of met) for (const setting of run.settings) joined.add(setting);
      }
    }
  }
  return { items, onString: joined, joined };
}

function isIn(room: Room, setting: JointSetting): boolean {
  return !isInWall(setting) && regionContains(room, lineMiddle(setting.joint.line));
}

function tick({ runningMm, settings }: JointRun): RunningTick {
  return { runningMm, text: figureText(runningMm, 0), ref: { kind: 'joint', id: settings[0]?.joint.id ?? '' } };
}

/** Strings that meet the most joints first, near the wall that they begin beside where several do. */
function stringsAcross(
  across: Across,
  runs: readonly JointRun[],
): readonly (readonly [RunningString, readonly JointRun[]])[] {
  const found: (readonly [RunningString, readonly JointRun[]])[] = [];
  let left = runs;
  while (left.length > 0 && found.length < mostStrings) {
    let best: readonly [RunningString, readonly JointRun[]] | null = null;
    for (const string of stringsTried(across)) {
      const met = metBy(string, left, across);
      if (met.length > (best?.[1].length ?? 0)) best = [string, met];
    }
    if (best === null) break;
    found.push(best);
    const [, met] = best;
    left = left.flatMap((run) => {
      const of = met.find(({ runningMm }) => runningMm === run.runningMm);
      const settings = run.settings.filter((setting) => !(of?.settings.includes(setting) ?? false));
      return settings.length === 0 ? [] : [{ ...run, settings }];
    });
  }
  return found;
}

function stringsTried({ room, frame, axis, scale, taken }: Across): readonly RunningString[] {
  const { minX, maxX, minY, maxY } = boxOf(room.outline.map((point) => frameFigures(frame, point)));
  const [least, most] = axis === 'x' ? [minY, maxY] : [minX, maxX];
  const [from, to] = [least + clearMm * scale, most - clearMm * scale];
  if (from > to) return [];
  return Array.from({ length: tries }, (_, i) => from + ((to - from) * i) / (tries - 1))
    .filter((atMm) => taken.every((mm) => Math.abs(mm - atMm) >= clearMm * scale))
    .map(
      (atMm): RunningString => ({
        frame,
        axis,
        atMm,
        side: 1,
        scale,
        id: `running-${frame.room}-${axis}`,
        begins: 'at-0',
      }),
    );
}

/** The joints that a string meets on the way from its wall, as far as it runs over open floor of its room. */
function metBy(string: RunningString, runs: readonly JointRun[], { room, things }: Across): readonly JointRun[] {
  const from = stringPoint(string, 0);
  const other = string.axis === 'x' ? 1 : 0;
  const open = lineWithin(from, pointDirection(from, stringPoint(string, 1)), [room.outline, ...room.holes]);
  const reachMm = open.find(([begin]) => Math.abs(begin) <= roomBeginMm)?.[1] ?? 0;
  return runs.flatMap((run) => {
    const at = stringPoint(string, run.runningMm);
    if (run.runningMm > reachMm || run.runningMm < WELD_MM || things.between(from, at)) return [];
    const settings = run.settings.filter(({ points }) => {
      const figures = points.map((point) => point[other]);
      return Math.min(...figures) <= string.atMm && Math.max(...figures) >= string.atMm;
    });
    // in one line with what is met, and so set out with it
    const lines = new Set(settings.map(({ joint }) => joint.run));
    const own = run.settings.filter(({ joint }) => lines.has(joint.run));
    return own.length === 0 || pointDistance(from, at) < WELD_MM ? [] : [{ ...run, settings: own }];
  });
}

/** So far from the face that dimensions are from, mm, the floor of the room begins: no edge strip is thicker. */
const roomBeginMm = 50;
