import { lineMiddle } from '../geometry/line.ts';
import { type Point, pointDirection } from '../geometry/point.ts';
import { type Box, boxOf } from '../geometry/ring.ts';
import { setOutTolerance } from '../plan/papers.ts';
import type { Drawing, DrawingItem, LabelItem, LabelPlace } from './drawing.ts';
import { itemsInOrder } from './drawing-list.ts';
import { gridLineItems } from './joint-dimensions-grid.ts';
import { basePointItems, frameOrigin } from './joint-dimensions-marks.ts';
import { outsideStrings, type Strings } from './joint-dimensions-outside.ts';
import { roomStrings } from './joint-dimensions-rooms.ts';
import type { PaperSource } from './paper-source.ts';
import { isInWall, type JointSetting, jointRuns, jointSettings } from './setting-out.ts';
import type { SetOutFrame } from './setting-out-frame.ts';
import { drawnBeyondMm } from './setting-out-sheet.ts';
import { formSize } from './text-width.ts';
import { figureText } from './words.ts';

export interface DimensionOptions {
  /** 50 for 1 : 50: figures and what is drawn beside them keep their size on paper. */
  readonly scale: number;
}

/** Behind the names of joints, before those of bays. */
const besidePriority = 2.95e6;

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
  const marked = [...gridLineItems(source, scale), ...basePointItems(source, scale)];
  // of a floor of one room the walls are those of the floor
  const isFloor = ({ room }: SetOutFrame) => room === null || plan.rooms.length === 1;
  const floor = runs.find(({ frame }) => isFloor(frame))?.frame;
  const rings = [...plan.rooms, ...analysis.bays].flatMap(({ outline, holes }) => [outline, ...holes]);
  const points = [...itemPoints(drawing.items), ...itemPoints(marked)];
  const strings =
    floor === undefined
      ? roomStrings(plan, runs, scale)
      : outsideStrings(floor, runs, { rings, points, beyondMm: drawnBeyondMm(plan), scale });
  const beside = besideLabels(settings, strings, scale);
  // ends of grid lines cover the thin lines that run behind them
  return [...strings.items, ...marked, ...originItems(settings, beside, strings.items, scale), ...beside];
}

/** Where x and y begin of rooms that have figures beside joints and no string. */
function originItems(
  settings: readonly JointSetting[],
  beside: readonly LabelItem[],
  strings: readonly DrawingItem[],
  scale: number,
): readonly DrawingItem[] {
  const lettered = new Set(beside.map(({ ref }) => ref.id));
  const drawn = new Set(strings.map(({ ref }) => ref.id));
  const frames = new Set(settings.flatMap(({ frame, joint }) => (lettered.has(joint.id) ? (frame ?? []) : [])));
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
  return { items: itemsInOrder([...drawing.items, ...made]), box: points.length === 0 ? null : boxOf(points) };
}

/** What a sheet says of figures that have found no room on it; null where all stand.
 *  @param made by `jointDimensions`   @param unlettered labels without a seat */
export function dimensionsLeft(made: readonly DrawingItem[], unlettered: readonly LabelItem[]): string | null {
  const own = new Set<DrawingItem>(made);
  const count = unlettered.filter((label) => own.has(label) && label.saidAgain === undefined).length;
  return count === 0
    ? null
    : `${count} running ${count === 1 ? 'figure has' : 'figures have'} no room on the drawing: see the list Setting out of joints.`;
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

/** Of joints that no thin line joins to a figure: one for each line of joints, at its longest. */
function besideLabels(
  settings: readonly JointSetting[],
  { joined, onString }: Strings,
  scale: number,
): readonly LabelItem[] {
  const lines = new Map<string, { readonly setting: JointSetting; readonly words: string }>();
  const labels: LabelItem[] = [];
  for (const setting of settings) {
    const { frame, joint } = setting;
    if (frame === null || joined.has(setting) || isInWall(setting)) continue;
    const words = besideWords(setting);
    if (words === null) {
      labels.push(...endLabels(setting, scale));
      continue;
    }
    // doors in one line are apart, and each is read by itself
    const key = `${joint.kind === 'doorway' ? joint.id : joint.run} ${words}`;
    const known = lines.get(key);
    if (known === undefined || known.setting.joint.lengthM < joint.lengthM) lines.set(key, { setting, words });
  }
  return [...labels, ...[...lines.values()].map(({ setting, words }) => besideLabel(setting, words, onString))];
}

/** Example: "x 4500"; of a joint that is askew by less than it is set out to "x 4500, 4502", the end nearer to the origin first; null where only both
 *  figures of each end tell where it lies. */
function besideWords({ lies, runningMm, points }: JointSetting): string | null {
  if (lies === 'bent') return null;
  if (lies !== 'askew') return `${lies} ${figureText(runningMm ?? 0, 0)}`;
  const axis = ([0, 1] as const).find((k) => {
    const figures = points.map((point) => point[k]);
    return Math.max(...figures) - Math.min(...figures) <= setOutTolerance.value;
  });
  if (axis === undefined) return null;
  return `${axis === 0 ? 'x' : 'y'} ${points.map((point) => figureText(point[axis], 0)).join(', ')}`;
}

/** Its name is said again: beside a door the figures of the next one may stand as near. */
function besideLabel(setting: JointSetting, words: string, onString: ReadonlySet<JointSetting>): LabelItem {
  const { joint } = setting;
  const inOpening = joint.kind === 'doorway' || joint.kind === 'neck';
  return {
    shape: 'label',
    layer: 'labels',
    ref: { kind: 'joint', id: joint.id },
    seat: { kind: 'beside', line: joint.line, inOpening },
    forms: [[{ text: `${joint.id} ${words}`, style: `joint-${joint.kind}` }]],
    priority: besidePriority + joint.lengthM,
    ...(onString.has(setting) && { saidAgain: true }),
  };
}

/** Free space between an end and its figures, and between them and the joint, mm on paper. */
const endGapMm = { along: 2.5, beside: 1.2 } as const;

/** x and y of both ends and of every bend, each beside the joint where it is. */
function endLabels({ joint, points, places }: JointSetting, scale: number): readonly LabelItem[] {
  return places.map((place, i): LabelItem => {
    const [x, y] = (points[i] ?? [0, 0]) as Point;
    const form = [{ text: `x ${figureText(x, 0)} y ${figureText(y, 0)}`, style: `joint-${joint.kind}` }] as const;
    const { widthMm, heightMm } = formSize(form);
    const on = i === 0 ? places[1] : places[i - 1];
    const [ux, uy] = pointDirection(place, on ?? lineMiddle(joint.line));
    const [alongMm, asideMm] = [(endGapMm.along + widthMm / 2) * scale, (endGapMm.beside + heightMm / 2) * scale];
    const seats = [1, -1].map(
      (side): LabelPlace => ({
        at: [place[0] + ux * alongMm - side * uy * asideMm, place[1] + uy * alongMm + side * ux * asideMm],
        direction: [ux, uy],
      }),
    );
    return {
      shape: 'label',
      layer: 'labels',
      ref: { kind: 'joint', id: joint.id },
      seat: { kind: 'beside', line: joint.line, inOpening: true, places: seats },
      forms: [form],
      priority: besidePriority + joint.lengthM,
    };
  });
}
