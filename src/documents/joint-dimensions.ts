import type { Point } from '../geometry/point.ts';
import { type Box, boxOf } from '../geometry/ring.ts';
import type { Drawing, DrawingItem, LabelItem } from './drawing.ts';
import { itemsInOrder } from './drawing-list.ts';
import { besideLabels, namesLed } from './joint-dimensions-beside.ts';
import { gridLineItems } from './joint-dimensions-grid.ts';
import { floorOrigin, frameOrigin } from './joint-dimensions-marks.ts';
import { outsideStrings } from './joint-dimensions-outside.ts';
import { roomStrings } from './joint-dimensions-rooms.ts';
import { labelIsName } from './label-led.ts';
import type { PaperSource } from './paper-source.ts';
import { basePointItems } from './point-items.ts';
import { isInWall, type JointSetting, jointRuns, jointSettings, originIsOnSheet } from './setting-out.ts';
import { floorFrame, type SetOutFrame } from './setting-out-frame.ts';
import { drawnBeyondMm } from './setting-out-sheet.ts';
import { formSize } from './text-width.ts';

export interface DimensionOptions {
  /** 50 for 1 : 50: figures and what is drawn beside them keep their size on paper. */
  readonly scale: number;
}

/** What the joint plan shows so that every joint can be set out from it: base points and grid lines, strings of running dimensions, and beside joints that
 *  none of them reaches their own x and y. Strings reach beyond the box of the drawing: `dimensionedDrawing` has one that holds them. */
export function jointDimensions(
  source: PaperSource,
  drawing: Drawing,
  { scale }: DimensionOptions,
): readonly DrawingItem[] {
  const { plan, analysis } = source;
  const settings = jointSettings(source);
  const runs = jointRuns(settings);
  const whole = settings.length === 0 ? null : floorFrame(source);
  const origin = whole !== null && originIsOnSheet(source, whole) ? floorOrigin(whole, scale) : [];
  // over its way from an origin stands the mark of a base point
  const marked = [...gridLineItems(source, scale), ...origin, ...basePointItems(source, scale)];
  // of a floor of one room the walls are those of the floor
  const isFloor = ({ room }: SetOutFrame) => room === null || plan.rooms.length === 1;
  const floor = runs.find(({ frame }) => isFloor(frame))?.frame;
  const rings = [...plan.rooms, ...analysis.bays].flatMap(({ outline, holes }) => [outline, ...holes]);
  const points = [...itemPoints(drawing.items), ...itemPoints(marked)];
  const strings =
    floor === undefined
      ? roomStrings(plan, runs, scale)
      : outsideStrings(floor, runs, { rings, points, beyondMm: drawnBeyondMm(plan), scale });
  const { labels, frames } = besideLabels(source, settings, strings);
  // ends of grid lines cover the thin lines that run behind them
  return [...strings.items, ...marked, ...originItems(frames, strings.items, scale), ...labels];
}

/** Where x and y begin of rooms that have figures beside joints and no string. */
function originItems(
  frames: ReadonlySet<SetOutFrame>,
  strings: readonly DrawingItem[],
  scale: number,
): readonly DrawingItem[] {
  const drawn = new Set(strings.map(({ ref }) => ref.id));
  return [...frames]
    .filter(({ room }) => room !== null && !['x', 'y'].some((axis) => drawn.has(`running-${room}-${axis}`)))
    .flatMap((frame) => frameOrigin(frame, scale));
}

/** The drawing with its dimensions, and the box that holds both. */
export function dimensionedDrawing(source: PaperSource, drawing: Drawing, { scale }: DimensionOptions): Drawing {
  const made = jointDimensions(source, drawing, { scale });
  const points = [
    ...boxCorners(drawing.box),
    ...itemPoints(made),
    ...made.flatMap((item) => labelCorners(item, scale)),
  ];
  return {
    items: itemsInOrder([...namesLed(drawing.items), ...made]),
    box: points.length === 0 ? null : boxOf(points),
  };
}

/** Whether a label is what a joint is set out by. */
export function labelIsFigure(label: LabelItem): boolean {
  return label.ref.kind === 'joint' && !labelIsName(label);
}

/** What a sheet says of joints whose figures have found no room on it; null where all stand.
 *  Example: "Only in the list Setting out of joints are the figures of J3, J12." */
export function dimensionsLeft(settings: readonly JointSetting[], unlettered: readonly LabelItem[]): string | null {
  const missed = new Set(
    unlettered.filter((label) => labelIsFigure(label) && label.saidAgain === undefined).map(({ ref }) => ref.id),
  );
  const of = settings.filter(({ joint }) => missed.has(joint.id));
  const ids = settings.filter((setting) => of.some((other) => isSetWith(setting, other))).map(({ joint }) => joint.id);
  return ids.length === 0 ? null : `Only in the list Setting out of joints are the figures of ${listed(ids)}.`;
}

/** Whether one figure tells of both: parts of one line, which share its figure. */
function isSetWith(setting: JointSetting, other: JointSetting): boolean {
  if (setting === other) return true;
  const isPart = setting.joint.run === other.joint.run && ![setting, other].some(isInWall);
  return isPart && setting.runningMm !== null && setting.runningMm === other.runningMm && setting.frame === other.frame;
}

/** So many joints are told by their numbers. */
const mostListed = 40;

function listed(ids: readonly string[]): string {
  const more = ids.length - mostListed;
  return `${ids.slice(0, mostListed).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

function boxCorners(box: Box | null): readonly Point[] {
  return box === null
    ? []
    : [
        [box.minX, box.minY],
        [box.maxX, box.maxY],
      ];
}

function itemPoints(items: readonly DrawingItem[]): readonly Point[] {
  return items.flatMap((item) => {
    if (item.shape === 'fill') return item.outline;
    return item.shape === 'line' ? item.points : item.shape === 'mark' ? [item.at] : [];
  });
}

/** What the first place of a figure takes, mm on the plan. */
function labelCorners(item: DrawingItem, scale: number): readonly Point[] {
  if (item.shape !== 'label' || item.seat.kind !== 'beside') return [];
  const [place] = item.seat.places ?? [];
  const [form] = item.forms;
  if (place === undefined || form === undefined) return [];
  const half = (formSize(form).widthMm / 2) * scale;
  const { at, direction } = place;
  return [-half, half].map((mm): Point => [at[0] + mm * direction[0], at[1] + mm * direction[1]]);
}
