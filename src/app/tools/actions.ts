import type { Point } from '../../geometry/point.ts';
import { pointDirection, pointDistance } from '../../geometry/point.ts';
import type { Box } from '../../geometry/ring.ts';
import { boxMiddle, boxOf } from '../../geometry/ring.ts';
import type { Joint } from '../../plan/analysis.ts';
import {
  type AlignSide,
  objectsAligned,
  objectsDistributed,
  objectsRepeated,
  type Repeat,
} from '../../plan/edits/arrange.ts';
import { objectsCopied, objectsPasted, type PlanClip } from '../../plan/edits/copy.ts';
import { doorwayPlace, wallsOf } from '../../plan/edits/doorways.ts';
import { jointsKept } from '../../plan/edits/joints.ts';
import { drawnTakenAway, jointsLetGo, jointTakenAway } from '../../plan/edits/joints-gone.ts';
import { objectsMirrored, objectsTurned } from '../../plan/edits/move.ts';
import { type ObjectList, objectPoints, objectsBox, objectsFound, objectsRemoved } from '../../plan/edits/objects.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { countOf, nameText } from '../parts/format.ts';
import { analysisStore } from '../state/analysisStore.ts';
import { boardLetGo, boardRefuse, boardStore, boardTell, type WorkStep } from '../state/boardStore.ts';
import { commit, planStore } from '../state/planStore.ts';
import { pointerStore } from '../state/pointerStore.ts';
import { planIds, type Thing } from '../state/thing.ts';
import { toolPutDown } from './hand.ts';
import { countNoun, objectNoun } from './nouns.ts';
import { placeChosen, placeRemoved } from './papers/places.ts';
import { toolStore } from './toolStore.ts';

/** What is done with chosen things: each a step of the plan and a word about it, the same from a card and from a key. */

const fileNow = (): PlanFile => planStore.getState().history.present.file;

/** Ids of the chosen things that the plan itself has. */
function idsChosen(): readonly string[] {
  const { chosen } = boardStore.getState();
  return objectsFound(fileNow(), planIds(chosen)).map(({ object }) => object.id);
}

function nounOf(ids: readonly string[]): string {
  return ids.length === 1 ? nameText(objectNoun(fileNow(), ids[0] ?? '')) : countNoun(ids.length);
}

export function thingsOf(file: PlanFile, ids: readonly string[]): readonly Thing[] {
  return objectsFound(file, ids).map(({ list, object }) => ({
    kind: list === 'rooms' ? 'room' : 'object',
    key: object.id,
  }));
}

/** Puts an edit in and says so; says why not where it comes to nothing. */
function done(name: string, told: string, file: PlanFile, refused: string): boolean {
  if (file === fileNow()) {
    boardRefuse(refused, []);
    return false;
  }
  commit(name, () => file);
  boardTell(told);
  return true;
}

const offSheet = 'Nothing was changed: something would lie beyond the sheet.';

/** Joints that are chosen by themselves, as the analysis has them; none while it is of a plan that is no more. */
function jointsChosen(): readonly Joint[] {
  const { result } = analysisStore.getState();
  const joints = result?.file === fileNow() ? result.analysis.joints : [];
  const keys = new Set(boardStore.getState().chosen.flatMap(({ kind, key }) => (kind === 'joint' ? [key] : [])));
  return joints.filter(({ key }) => keys.has(key));
}

/** Removes what is chosen; a joint is taken away, and so is what papers mark. */
export function chosenRemove(): void {
  gestureLeave();
  const ids = idsChosen();
  if (ids.length > 0) {
    const noun = nounOf(ids);
    const left = objectsRemoved(fileNow(), ids);
    const doorways = doorwaysLost(fileNow(), left);
    const also = doorways.length === 0 ? '' : ` with ${countOf(doorways.length, 'doorway', 'doorways')}`;
    if (done(`Remove ${noun}`, `Removed: ${noun}${also}.`, objectsRemoved(left, doorways), offSheet)) boardLetGo();
    return;
  }
  const [joint, ...more] = jointsChosen();
  if (joint !== undefined) jointsTakeAway([joint, ...more]);
  else placeTakeAway();
}

function placeTakeAway(): void {
  const place = placeChosen(fileNow(), boardStore.getState().chosen);
  if (place === null) return;
  const noun = place.name.charAt(0).toLowerCase() + place.name.slice(1);
  if (done(`Take ${noun} away`, `Taken away: ${noun}.`, placeRemoved(fileNow(), place), offSheet)) boardLetGo();
}

/** Doorways that had a wall and have none any more: they go with the room that they led to. */
function doorwaysLost(before: PlanFile, after: PlanFile): readonly string[] {
  if (after.rooms === before.rooms || after.doorways === undefined) return [];
  const [had, has] = [wallsOf(before), wallsOf(after)];
  return after.doorways
    .filter((doorway) => doorwayPlace(had, doorway) !== null && doorwayPlace(has, doorway) === null)
    .map(({ id }) => id);
}

/** Chosen things that can be turned, mirrored and lined up: a doorway keeps to its wall and goes with it. */
function idsLoose(): readonly string[] {
  const ids = idsChosen();
  const doorways = new Set(fileNow().doorways?.map(({ id }) => id));
  const loose = ids.filter((id) => !doorways.has(id));
  if (loose.length === 0 && ids.length > 0)
    boardRefuse('A doorway keeps to its wall: slide it along, or turn its rooms.', []);
  return loose;
}

/** Whether something is being drawn, which is not to be lost. */
function isDrawing(): boolean {
  const { tool, underway } = toolStore.getState().stance;
  return underway && tool !== 'choose';
}

/** A gesture with what is chosen is taken back before something else is done with it. */
function gestureLeave(): void {
  if (toolStore.getState().stance.underway) toolPutDown();
}

/** A copy stands clear of what it is a copy of by so much; a room by its wall, mm. */
const clearMm = 200;

/** By how much a copy stands beside: to the right, or along the wall where all are doorways, mm. */
function besideMove(clip: PlanClip): Point {
  const [first] = clip;
  if (first?.list === 'doorways' && clip.every(({ list }) => list === 'doorways')) {
    const [a, b] = first.object.line;
    const [ux, uy] = pointDirection(a, b);
    const by = pointDistance(a, b) + clearMm;
    return [ux * by, uy * by];
  }
  const { minX, maxX } = clipBox(clip);
  const gap = clip.some(({ list }) => list === 'rooms') ? toolStore.getState().wishes.wallMm : clearMm;
  return [maxX - minX + gap, 0];
}

function clipBox(clip: PlanClip): Box {
  return boxOf(clip.flatMap(objectPoints));
}

export function chosenDuplicate(): void {
  const clip = objectsCopied(fileNow(), idsChosen());
  if (clip.length > 0) clipAdd('Duplicate', 'Duplicated', clip, besideMove(clip));
}

/** Adds copies and chooses them. @returns what was added; null where it could not be */
function clipAdd(verb: string, told: string, clip: PlanClip, by: Point): readonly string[] | null {
  const { file, ids } = objectsPasted(fileNow(), clip, by);
  // Named by what was added: its number is its own.
  const [only, ...more] = ids;
  const noun = only === undefined || more.length > 0 ? countNoun(ids.length) : nameText(objectNoun(file, only));
  if (!done(`${verb} ${noun}`, `${told}: ${noun}.`, file, 'Not added: it would lie beyond the sheet.')) return null;
  boardStore.setState({ chosen: thingsOf(file, ids), opened: [] });
  return ids;
}

function clipNoun(clip: PlanClip): string {
  const [only, ...more] = clip;
  if (only === undefined || more.length > 0) return countNoun(clip.length);
  // Of an object that the plan may have no more.
  return nameText(objectNoun({ ...fileNow(), rooms: [], [only.list]: [only.object] }, only.object.id));
}

export function chosenCopy(): void {
  const clip = objectsCopied(fileNow(), idsChosen());
  if (clip.length === 0) return;
  toolStore.setState({ clip });
  boardTell(`Copied: ${clipNoun(clip)}.`);
}

export function chosenCut(): void {
  gestureLeave();
  const ids = idsChosen();
  if (ids.length === 0) return;
  const noun = nounOf(ids);
  toolStore.setState({ clip: objectsCopied(fileNow(), ids) });
  if (done(`Cut ${noun}`, `Cut: ${noun}.`, objectsRemoved(fileNow(), ids), offSheet)) boardLetGo();
}

/** What is pasted under the hand is set down at a whole step, mm. */
const stepMm = 10;

/** Pastes what was copied: under the pointer where it is over the board, beside the original else, and the next time
 *  beside what was pasted. */
export function clipPaste(): void {
  const { clip } = toolStore.getState();
  if (clip === null || isDrawing()) return;
  gestureLeave();
  const { at } = pointerStore.getState();
  const ids = clipAdd('Paste', 'Pasted', clip, at === null ? besideMove(clip) : moveTo(clip, at));
  if (ids !== null) toolStore.setState({ clip: objectsCopied(fileNow(), ids) });
}

function moveTo(clip: PlanClip, [x, y]: Point): Point {
  const [middleX, middleY] = boxMiddle(clipBox(clip));
  const whole = (mm: number) => Math.round(mm / stepMm) * stepMm;
  return [whole(x - middleX), whole(y - middleY)];
}

/** What a step of the work is about. */
const stepLists: Readonly<Record<WorkStep, readonly ObjectList[]>> = {
  floor: ['rooms'],
  openings: ['doorways'],
  obstacles: ['columns', 'pipes', 'joinery', 'slabContacts', 'structuralJoints', 'sunZones', 'keepClear'],
  joints: ['drawnJoints'],
  coverings: ['rooms'],
  papers: [],
};

export function chosenAll(): void {
  const file = fileNow();
  const lists = stepLists[boardStore.getState().step];
  const ids = lists.flatMap((list) => (file[list] ?? []).map(({ id }) => id));
  if (ids.length === 0 || isDrawing()) return;
  toolPutDown();
  boardStore.setState({ chosen: thingsOf(file, ids), opened: [] });
  boardTell(`Chosen: ${nounOf(ids)}.`);
}

export function chosenTurn(angleDeg: number): void {
  const ids = idsLoose();
  const about = meanOf(ids);
  if (about === null) return;
  const noun = nounOf(ids);
  done(
    `Turn ${noun} by ${angleDeg} degrees`,
    `Turned: ${noun}.`,
    objectsTurned(fileNow(), ids, about, angleDeg),
    angleDeg % 360 === 0 ? 'A whole turn changes nothing.' : offSheet,
  );
}

export function chosenMirror(axis: 'left-right' | 'top-bottom'): void {
  const ids = idsLoose();
  const about = middleOf(ids);
  if (about === null) return;
  const noun = nounOf(ids);
  const file = objectsMirrored(fileNow(), ids, about, axis);
  done(`Mirror ${noun}`, `Mirrored: ${noun}.`, file, 'Mirrored it is the same.');
}

/** What things are turned about: the mean of their points, which stays where it is. A turn and the turn back
 *  meet again. */
function meanOf(ids: readonly string[]): Point | null {
  const points = objectsFound(fileNow(), ids).flatMap(objectPoints);
  if (points.length === 0) return null;
  const mean = (axis: 0 | 1) => points.reduce((sum, point) => sum + point[axis], 0) / points.length;
  return [mean(0), mean(1)];
}

/** What things are mirrored about: the middle of the box round them. */
function middleOf(ids: readonly string[]): Point | null {
  const box = objectsBox(fileNow(), ids);
  return box === null ? null : boxMiddle(box);
}

export function chosenAlign(side: AlignSide): void {
  const ids = idsLoose();
  if (ids.length === 0) return;
  const noun = nounOf(ids);
  done(`Align ${noun}`, `Aligned: ${noun}.`, objectsAligned(fileNow(), ids, side), 'They stand in line already.');
}

export function chosenDistribute(axis: 'x' | 'y'): void {
  const ids = idsLoose();
  if (ids.length === 0) return;
  const noun = nounOf(ids);
  const file = objectsDistributed(fileNow(), ids, axis);
  done(`Distribute ${noun}`, `Distributed: ${noun}.`, file, 'They stand evenly already.');
}

/** Repeats an object in a row or rows, and chooses them all. */
export function objectRepeat(id: string, repeat: Repeat): void {
  const { file, ids } = objectsRepeated(fileNow(), id, repeat);
  const noun = objectNoun(fileNow(), id);
  const told = `${ids.length + 1} in all.`;
  if (done(`Repeat ${noun}`, told, file, 'Not repeated: it would be too many, or lie beyond the sheet.')) {
    boardStore.setState({ chosen: thingsOf(file, [id, ...ids]), opened: [] });
  }
}

/** Keeps found joints as they are, as joints drawn by hand, and says which others have to be kept with them. */
export function jointsKeep(joints: readonly Joint[]): void {
  const all = analysisStore.getState().result?.analysis.joints ?? [];
  const { file, ids, also } = jointsKept(
    fileNow(),
    all,
    joints.map(({ id }) => id),
  );
  const noun = jointNoun(joints);
  const with_ =
    also.length === 0 ? '' : ` With it, since it rests on them or they go on in its line: ${also.join(', ')}.`;
  if (!done(`Keep ${noun}`, `Kept: ${noun}.${with_}`, file, 'This joint stands anyway.')) return;
  boardStore.setState({ chosen: thingsOf(file, ids.slice(0, joints.length)), opened: [] });
}

/** Takes joints away: the tool finds none at their places any more, whether it had found them or they were drawn. */
export function jointsTakeAway(joints: readonly Joint[]): void {
  const noun = jointNoun(joints);
  const file = joints.reduce(jointTakenAway, fileNow());
  if (done(`Take ${noun} away`, `Taken away: ${noun}.`, file, 'What dictates this joint keeps it.')) boardLetGo();
}

/** The same for a joint as it was drawn. */
export function drawnTakeAway(id: string): void {
  const noun = objectNoun(fileNow(), id);
  if (done(`Take ${noun} away`, `Taken away: ${noun}.`, drawnTakenAway(fileNow(), [id]), offSheet)) boardLetGo();
}

function jointNoun(joints: readonly Joint[]): string {
  return joints.length === 1 ? `joint ${joints[0]?.id ?? ''}` : `${joints.length} joints`;
}

/** Lets the tool find joints again where these were drawn or taken away. */
export function jointsFindAgain(ids: readonly string[]): void {
  const noun = nounOf(ids);
  const file = objectsRemoved(fileNow(), ids);
  if (done(`Let go of ${noun}`, 'The tool finds the joints here again.', file, offSheet)) boardLetGo();
}

export function jointsFindAllAgain(): void {
  const file = jointsLetGo(fileNow(), { drawn: true, taken: true });
  const told = 'The tool finds all joints again.';
  const ids = [...(fileNow().drawnJoints ?? []), ...(fileNow().noJoint ?? [])].map(({ id }) => id);
  if (!done('Find all joints again', told, file, told)) return;
  const { chosen } = boardStore.getState();
  boardStore.setState({ chosen: chosen.filter(({ key }) => !ids.includes(key)) });
}
