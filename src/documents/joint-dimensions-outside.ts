import { lineWithin } from '../geometry/line-clip.ts';
import { type Point, pointDirection } from '../geometry/point.ts';
import { boxOf, type Ring } from '../geometry/ring.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { DrawingItem } from './drawing.ts';
import {
  figuresOutward,
  line,
  type RunningString,
  type RunningTick,
  stringLine,
  stringPoint,
} from './joint-dimensions-string.ts';
import type { JointRun, JointSetting } from './setting-out.ts';
import { frameFigures, framePoint, type SetOutFrame } from './setting-out-frame.ts';
import { figureText } from './words.ts';

/** Strings of running dimensions beside the whole floor, one for x and one for y. */

export interface OutsideFloor {
  /** Outlines of all floor. */
  readonly rings: readonly Ring[];
  /** All that is drawn, mm on the plan. */
  readonly points: readonly Point[];
  /** The 0 of a string is drawn up to so far beyond the floor, mm. */
  readonly beyondMm: number;
  readonly scale: number;
}

export interface Strings {
  readonly items: readonly DrawingItem[];
  /** Joints whose figure stands on a string. */
  readonly onString: ReadonlySet<JointSetting>;
  /** ... and those of them that meet the string, or that a thin line joins to it. */
  readonly joined: ReadonlySet<JointSetting>;
}

/** Strings stand so far beside the drawing, mm on paper: beyond pins and the marks at the ends of joints. */
const clearMm = 12;
/** A thin line begins so far off the end of its joint, mm on paper. */
const offEndMm = 2.4;
/** Names of so many joints stand beside a figure; of more, the count. */
const mostNamed = 3;

export function outsideStrings(frame: SetOutFrame, runs: readonly JointRun[], floor: OutsideFloor): Strings {
  const items: DrawingItem[] = [];
  const onString = new Set<JointSetting>();
  const joined = new Set<JointSetting>();
  for (const axis of ['x', 'y'] as const) {
    const own = runs.filter((run) => run.frame === frame && run.axis === axis);
    if (own.length === 0) continue;
    const string = outsideString(frame, axis, floor);
    const ticks = own.map(runTick);
    items.push(...stringLine(string, ticks), ...figuresOutward(string, ticks));
    for (const run of own) {
      for (const setting of run.settings) onString.add(setting);
      const found = joinedEnd(run, string, floor);
      if (found === null) continue;
      items.push(found.item);
      for (const setting of run.settings) if (setting.joint.run === found.setting.joint.run) joined.add(setting);
    }
  }
  return { items, onString, joined };
}

/** Above the floor as the sheet is read, or to its left: where reading begins. */
function outsideString(frame: SetOutFrame, axis: 'x' | 'y', floor: OutsideFloor): RunningString {
  const { points, rings, beyondMm, scale } = floor;
  const out = axis === 'x' ? frame.across : frame.along;
  const side = out[0] + out[1] > 0 ? -1 : 1;
  const { minX, maxX, minY, maxY } = boxOf(points.map((point) => frameFigures(frame, point)));
  const [least, most] = axis === 'x' ? [minY, maxY] : [minX, maxX];
  const atMm = (side > 0 ? most : least) + side * clearMm * scale;
  const figures = rings.flat().map((point) => frameFigures(frame, point)[axis === 'x' ? 0 : 1]);
  const isOff = Math.min(...figures) > beyondMm || Math.max(...figures) < -beyondMm;
  return { frame, axis, atMm, side, scale, id: `running-${axis}`, begins: isOff ? 'off-sheet' : 'at-0' };
}

/** Example: "4500 J3, J7, J9 +2" */
export function runTick({ runningMm, settings }: JointRun): RunningTick {
  const ids = settings.map(({ joint }) => joint.id);
  const more = ids.length - mostNamed;
  const named = `${ids.slice(0, mostNamed).join(', ')}${more > 0 ? ` +${more}` : ''}`;
  return {
    runningMm,
    text: `${figureText(runningMm, 0)} ${named}`,
    ref: { kind: 'joint', id: ids[0] ?? '' },
  };
}

/** The joint of a run that has nothing of the floor between it and the string, and the thin line from its end to the string. */
function joinedEnd(
  { runningMm, settings }: JointRun,
  string: RunningString,
  { rings, scale }: OutsideFloor,
): { readonly setting: JointSetting; readonly item: DrawingItem } | null {
  const { frame, axis, atMm, side } = string;
  const away = ([x, y]: Point) => side * (atMm - (axis === 'x' ? y : x));
  const ends = settings.flatMap((setting) => setting.points.map((at) => ({ setting, at })));
  const [nearest] = ends.sort((a, b) => away(a.at) - away(b.at));
  if (nearest === undefined || away(nearest.at) <= offEndMm * scale) return null;
  const end = framePoint(frame, nearest.at);
  const foot = stringPoint(string, runningMm);
  const way = pointDirection(end, foot);
  if (runsOverFloor(end, way, rings)) return null;
  const begin: Point = [end[0] + way[0] * offEndMm * scale, end[1] + way[1] * offEndMm * scale];
  return {
    setting: nearest.setting,
    item: line('extension', [begin, foot], { kind: 'joint', id: nearest.setting.joint.id }),
  };
}

/** Whether a ray runs over floor, or along the edge of it, where it would be drawn on a wall. */
function runsOverFloor(from: Point, [ux, uy]: Point, rings: readonly Ring[]): boolean {
  return [-WELD_MM, WELD_MM].some((mm) => {
    const beside: Point = [from[0] - uy * mm, from[1] + ux * mm];
    return rings.some((ring) => lineWithin(beside, [ux, uy], [ring]).some(([, to]) => to > WELD_MM));
  });
}
