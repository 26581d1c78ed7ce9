import type { Point } from '../geometry/point.ts';
import type { DrawingItem, DrawingRef, LabelItem, LabelLine, LabelPlace, LineItem, MarkItem } from './drawing.ts';
import { readingAngle } from './label-seats.ts';
import { framePoint, type SetOutFrame } from './setting-out-frame.ts';
import { formSize } from './text-width.ts';

/** A string of running dimensions: a line from its origin, with a tick and a figure for each joint. Figures in mm of the frame; what is drawn beside them
 *  in mm on paper, which `scale` brings to the plan. */
export interface RunningString {
  readonly frame: SetOutFrame;
  /** Which figure runs along it. */
  readonly axis: 'x' | 'y';
  /** The other figure of all of it. */
  readonly atMm: number;
  /** The side that its figures stand on: of greater or of lesser `atMm`. */
  readonly side: 1 | -1;
  readonly scale: number;
  readonly id: string;
  /** Whether its 0 is drawn, or lies too far off the floor: then it begins before its first tick. */
  readonly begins: 'at-0' | 'off-sheet';
}

export interface RunningTick {
  readonly runningMm: number;
  readonly text: string;
  readonly ref: DrawingRef;
}

/** Figures are lettered before joints and bays: each has one place only. */
const figurePriority = 6e6;

/** From the foot of the string: the tick, the bend of the leader, its end, the begin of the figure, mm on paper. */
const leader = { straightMm: 1.8, bentMm: 4.6, endMm: 6, figureMm: 7 } as const;
/** Figures stand no closer than this beside each other, mm on paper: a line of text and a hair. */
const pitchMm = 4.8;

export function stringPoint({ frame, axis, atMm }: RunningString, runningMm: number, besideMm = 0): Point {
  return framePoint(frame, axis === 'x' ? [runningMm, atMm + besideMm] : [atMm + besideMm, runningMm]);
}

/** The line with its origin and a tick for each figure. */
export function stringLine(string: RunningString, ticks: readonly RunningTick[]): readonly DrawingItem[] {
  const ref: DrawingRef = { kind: 'object', id: string.id };
  const figures = ticks.map(({ runningMm }) => runningMm);
  const ends = stringEnds(string, figures).map((mm) => stringPoint(string, mm));
  const { along, across } = string.frame;
  const angleDeg = readingAngle(string.axis === 'x' ? along : across);
  const mark = (style: MarkItem['style'], mm: number, of: DrawingRef): MarkItem => ({
    shape: 'mark',
    layer: 'marks',
    style,
    at: stringPoint(string, mm),
    text: null,
    ref: of,
    angleDeg,
  });
  return [
    line('running', ends, ref),
    ...ticks.map(({ runningMm, ref: of }) => mark('running-tick', runningMm, of)),
    ...(string.begins === 'at-0' ? [mark('running-origin', 0, ref)] : []),
  ];
}

/** A string whose 0 is not drawn begins so far before its first tick, mm on paper. */
const beforeMm = 6;

function stringEnds({ begins, scale }: RunningString, figures: readonly number[]): readonly [number, number] {
  if (begins === 'at-0') return [Math.min(0, ...figures), Math.max(0, ...figures)];
  const [least, most] = [Math.min(...figures), Math.max(...figures)];
  // towards its 0, which lies beyond all of them one way
  return least > 0 ? [least - beforeMm * scale, most] : [least, most + beforeMm * scale];
}

/** Figures square to the string, each at the end of a leader that bends aside where figures would crowd; they rise with the string and never cross. */
export function figuresOutward(string: RunningString, ticks: readonly RunningTick[]): readonly DrawingItem[] {
  const { scale, side, frame, axis } = string;
  const all = withOrigin(string, ticks);
  const seats = spread(
    all.map(({ runningMm }) => runningMm / scale),
    pitchMm,
  );
  const way = axis === 'x' ? frame.across : frame.along;
  return all.flatMap(({ runningMm, text, ref }, i): DrawingItem[] => {
    const seatMm = (seats[i] ?? 0) * scale;
    const at = (mm: number, outMm: number) => stringPoint(string, mm, side * outMm * scale);
    const form = [figureLine(text)];
    const place = { at: at(seatMm, leader.figureMm + formSize(form).widthMm / 2), direction: way };
    const course = [
      at(runningMm, 0),
      at(runningMm, leader.straightMm),
      at(seatMm, leader.bentMm),
      at(seatMm, leader.endMm),
    ];
    return [line('running', course, ref), figure(form, [place], course, ref)];
  });
}

/** Figures along the string, before their tick as it runs, or behind it where something stands there. */
export function figuresAlong(string: RunningString, ticks: readonly RunningTick[]): readonly DrawingItem[] {
  const { scale, side, frame, axis } = string;
  const way = axis === 'x' ? frame.along : frame.across;
  return withOrigin(string, ticks).map(({ runningMm, text, ref }): DrawingItem => {
    const form = [figureLine(text)];
    const { widthMm, heightMm } = formSize(form);
    const [asideMm, offMm] = [widthMm / 2 + besideTickMm, heightMm / 2 + offStringMm];
    const ways = runningMm === 0 ? [1] : runningMm > 0 ? [-1, 1] : [1, -1];
    const places = [side, -side].flatMap((over) =>
      ways.map(
        (to): LabelPlace => ({
          at: stringPoint(string, runningMm + to * asideMm * scale, over * offMm * scale),
          direction: way,
        }),
      ),
    );
    const tick = stringPoint(string, runningMm);
    const led = { from: [tick], forms: [[{ text, style: 'figure-small' }]] } as const;
    return { ...figure(form, places, [tick, tick], ref), led };
  });
}

/** Free space between a figure and its tick, and between a figure and its string, mm on paper. */
const besideTickMm = 2.1;
const offStringMm = 0.3;

function withOrigin({ id, begins }: RunningString, ticks: readonly RunningTick[]): readonly RunningTick[] {
  if (begins === 'off-sheet') return [...ticks].sort((a, b) => a.runningMm - b.runningMm);
  const origin: RunningTick = { runningMm: 0, text: '0', ref: { kind: 'object', id } };
  return [
    ...ticks.filter(({ runningMm }) => runningMm !== 0),
    ticks.find(({ runningMm }) => runningMm === 0) ?? origin,
  ].sort((a, b) => a.runningMm - b.runningMm);
}

function figureLine(text: string): LabelLine {
  return { text, style: 'bay-figure' };
}

function figure(
  form: readonly LabelLine[],
  places: readonly LabelPlace[],
  course: readonly Point[],
  ref: DrawingRef,
): LabelItem {
  return {
    shape: 'label',
    layer: 'labels',
    ref,
    seat: { kind: 'beside', line: course, inOpening: true, places },
    forms: [form],
    priority: figurePriority,
  };
}

export function line(style: LineItem['style'], points: readonly Point[], ref: DrawingRef): LineItem {
  return { shape: 'line', layer: 'marks', style, points, ref };
}

/** Rising places at least so far apart, as near as can be to those that are wanted: neighbours that crowd share the way aside.
 *  Example: 0, 1, 10 at 4 -> -1.5, 2.5, 10 */
export function spread(wanted: readonly number[], apart: number): readonly number[] {
  const groups: { sum: number; count: number }[] = [];
  wanted.forEach((want, i) => {
    let group = { sum: want - i * apart, count: 1 };
    for (
      let last = groups.at(-1);
      last !== undefined && last.sum / last.count >= group.sum / group.count;
      last = groups.at(-1)
    ) {
      groups.pop();
      group = { sum: last.sum + group.sum, count: last.count + group.count };
    }
    groups.push(group);
  });
  return groups
    .flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count))
    .map((base, i) => base + i * apart);
}
