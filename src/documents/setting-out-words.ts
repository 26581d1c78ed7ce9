import type { Point } from '../geometry/point.ts';
import { papersOf, setOutTolerance } from '../plan/papers.ts';
import { isTwoFigured } from './joint-dimensions-words.ts';
import type { PaperSource } from './paper-source.ts';
import { isInWall, type JointSetting, jointSettings, wholeMm } from './setting-out.ts';
import { borrowedText, settingOutCautions } from './setting-out-cautions.ts';
import { setOutChecks } from './setting-out-checks.ts';
import { frameFigures, gridName, pointName, type SetOutFrame } from './setting-out-frame.ts';
import { wholeMmText } from './tile-words.ts';
import { figureText } from './words.ts';

/** What a sheet with dimensions says of them, sentence by sentence: from where, from which face, how exactly, and what to check. */
export function settingOutNotes(source: PaperSource): readonly string[] {
  const settings = jointSettings(source);
  const frames = framesOf(settings);
  return [
    ...(settings.length === 0 ? ['The floor has no joints to set out.'] : []),
    ...frames.filter(({ room }) => room === null).map(({ from, ways }) => `From ${from}: ${ways}.`),
    ...(frames.some(({ room }) => room !== null)
      ? ['x along the wall that is named, from its end; y square to it, into the room.']
      : []),
    ...settingOutCautions(source),
    ...(frames.length > 0 ? [`Measured from ${faceText(source, frames)}.`] : []),
    ...(isFromWalls(frames) && papersOf(source.file).basePoints.length === 0 ? ['The plan has no base points.'] : []),
    ...placesNotes(source, frames),
    `Running dimensions in whole mm, each from its origin. Tolerance ${toleranceText()} (common practice).`,
    ...setOutChecks(source).map(({ words, lengthMm }) => `Check: ${words}, ${wholeMmText(lengthMm)}.`),
  ];
}

/** The same for the strip beside a drawing, in few words: each with its head. None where the floor has no joints. */
export function settingOutFacts(source: PaperSource): readonly (readonly [head: string, text: string])[] {
  const settings = jointSettings(source);
  const frames = framesOf(settings);
  const cautions = settings.length === 0 ? [] : settingOutCautions(source);
  const borrowed = [borrowedText(source) ?? []].flat();
  const told = cautions.map((text) => ['Caution', text.replace(/\.$/u, '')] as const);
  if (frames.length === 0) return told;
  // one for the whole floor; of several rooms the list names the wall of each
  const only = frames.length === 1 ? frames[0] : undefined;
  const checks = setOutChecks(source).map(({ words, lengthMm }) => `${words}, ${wholeMmText(lengthMm)}`);
  return [
    ...told,
    ['Origin', only?.from ?? ['in each room, where its dimensions have their 0', ...borrowed].join('; ')],
    ...(only === undefined ? [] : [['x and y', only.ways] as const]),
    ['Measured from', faceText(source, frames)],
    ['Tolerance', toleranceText()],
    ...figureFacts(settings),
    ...(only === undefined ? ['diagonals in the list Setting out of joints'] : checks).map(
      (text) => ['Check', text] as const,
    ),
  ];
}

/** How figures beside joints are read, where the plan has such joints. */
function figureFacts(settings: readonly JointSetting[]): readonly (readonly [head: string, text: string])[] {
  return [
    ...(settings.some(isInWall) ? [['Doorways', 'mm from the face of the wall in the room named'] as const] : []),
    ...(settings.some((each) => isTwoFigured(each) && !isInWall(each))
      ? [['x 100 / 102', 'a joint out of square, each figure at its own end'] as const]
      : []),
  ];
}

function framesOf(settings: readonly JointSetting[]): readonly SetOutFrame[] {
  return [...new Set(settings.flatMap(({ frame }) => frame ?? []))];
}

function toleranceText(): string {
  return `\u00b1${wholeMmText(setOutTolerance.value)}`;
}

function faceText({ file, plan }: PaperSource, frames: readonly SetOutFrame[]): string {
  if (!isFromWalls(frames)) return 'marked points and lines: no dimension depends on plaster or edge strip';
  const { face } = papersOf(file);
  if (face === 'strip')
    return `the face of the edge strip, ${wholeMmText(plan.edgeStrip.thicknessMm)} in front of the finished wall`;
  return face === 'structure'
    ? 'finished walls as drawn; the plan has no thickness of plaster: from the bare structure, add the plaster'
    : 'finished walls as drawn, plaster on';
}

/** The same of one frame, in few words: lists that go by themselves say it of every joint. */
export function frameFaceText({ file }: Pick<PaperSource, 'file'>, frame: SetOutFrame): string {
  if (!isFromWalls([frame])) return 'marks';
  const { face } = papersOf(file);
  if (face === 'strip') return 'face of the edge strip';
  return face === 'structure' ? 'finished wall: add the plaster' : 'finished wall';
}

function isFromWalls(frames: readonly SetOutFrame[]): boolean {
  return frames.some(({ by }) => by === 'walls');
}

/** Base points and grid lines in the frame of the floor. */
function placesNotes({ file }: PaperSource, frames: readonly SetOutFrame[]): readonly string[] {
  const frame = frames.find(({ room }) => room === null);
  if (frame === undefined) return [];
  const { basePoints, gridLines } = papersOf(file);
  const at = (place: Point) => {
    const [x, y] = frameFigures(frame, place).map(wholeMm) as [number, number];
    return `x ${figureText(x, 0)} y ${figureText(y, 0)}`;
  };
  return [
    ...basePoints.map((point) => `Base point ${pointName(point)}: ${at(point.at)}.`),
    ...gridLines.map((line) => `Grid line ${gridName(line)}: ${at(line.from)} to ${at(line.to)}.`),
  ];
}
