import type { Point } from '../geometry/point.ts';
import { onGrid } from '../geometry/tolerance.ts';
import type { Joint } from '../plan/analysis.ts';
import { papersOf } from '../plan/papers.ts';
import type { Plan } from '../plan/plan.ts';
import { jointShift, mostMovedMm, type Pair } from './compare-match.ts';
import { floorShift, shiftText, sourceOver } from './compare-shift.ts';
import { wallShareOf, wallsOf } from './compare-walls.ts';
import type { PaperSource } from './paper-source.ts';
import { oneLine } from './words.ts';

/** Whether two plans are versions of one floor. Names and ids do not tell: every plan may begin with r1 and be called "Ground floor". Nor does the floor
 *  in common: two houses drawn from one corner have most of it. Walls do: a revision leaves most of them where they are, whatever becomes of rooms
 *  and joints, and floors of different buildings have few in common. */

/** Floors with less than this in common are different ones, as the mean of the shares of walls and joints. Buildings drawn from one corner have a fifth
 *  and less, two storeys of one house a quarter; a revision that moves every joint and no wall has half. */
const leastInCommon = 0.3;

/** What is in common, of the version that is in the other by the greater share: one that was drawn on has all that was there before. */
export interface InCommon {
  /** Of the walls, by length. */
  readonly wallShare: number;
  readonly joints: number;
  readonly ofJoints: number;
}

/** Null where both are versions of one floor, or one of them has no floor. */
export function floorsCaution(before: Plan, now: Plan, joints: readonly Pair<Joint>[]): string | null {
  const common = floorsInCommon(before, now, joints);
  if (common === null) return null;
  const { wallShare, joints: inPlace, ofJoints } = common;
  const share = ofJoints === 0 ? wallShare : (wallShare + inPlace / ofJoints) / 2;
  if (share >= leastInCommon) return null;
  const walls = `${Math.round(wallShare * 100)} % of the walls`;
  const placed = ofJoints === 0 ? '' : ` and ${inPlace} of ${ofJoints} ${ofJoints === 1 ? 'joint' : 'joints'}`;
  return `These seem to be two different floors: only ${walls}${placed} are where they were. See whether the right file was opened, and whether the floor was turned or moved on the sheet.`;
}

/** What is to be known before the rest is read, sentence by sentence. */
export function floorsNotes(before: PaperSource, now: PaperSource): readonly string[] {
  const empty = [
    ...(before.plan.rooms.length === 0 ? ['No room is drawn in the earlier version: all is told as new.'] : []),
    ...(now.plan.rooms.length === 0 ? ['No room is drawn in the version of now: all is told as gone.'] : []),
  ];
  const shift = floorShift(before.plan, now.plan);
  const alike = alikeText(before, now);
  return [...empty, ...(shift === null ? [] : [shiftText(shift)]), ...(alike === null ? [] : [alike])];
}

/** Storeys that are alike have the same walls: only their names tell that they are not versions of one floor. Null where names do not differ, or what is
 *  drawn does. */
function alikeText(before: PaperSource, now: PaperSource): string | null {
  const names = (
    [
      ['project', papersOf(before.file).project, papersOf(now.file).project],
      ['plan', before.plan.name, now.plan.name],
    ] as const
  )
    .map(([what, was, is]) => [what, oneLine(was), oneLine(is)] as const)
    // what is named for the first time is not named otherwise
    .filter(([, was, is]) => was !== '' && is !== '' && was !== is)
    .map(([what, was, is]) => `the ${what} is called \u201c${is}\u201d, before it was \u201c${was}\u201d`);
  if (names.length === 0 || now.plan.rooms.length === 0) return null;
  if (drawnText(sourceOver(before, now).plan) !== drawnText(now.plan)) return null;
  return `Both plans have the same geometry under different names: ${names.join('; ')}. Storeys that are alike look so: check that the right file was chosen.`;
}

/** All that is drawn, whatever it is called and in which order it was drawn. */
function drawnText(plan: Plan): string {
  const corners = (points: readonly Point[]) =>
    points
      .map(([x, y]) => `${onGrid(x)},${onGrid(y)}`)
      .sort()
      .join(' ');
  const outlined = [plan.columns, plan.joinery, plan.slabContacts, plan.sunZones, plan.keepClear];
  const lined = [plan.doorways, plan.structuralJoints, plan.drawnJoints, plan.noJoint];
  return [
    plan.rooms.map(({ outline, holes }) => [outline, ...holes].map(corners).sort().join('|')),
    ...outlined.map((things) => things.map(({ outline }) => corners(outline))),
    ...lined.map((things) => things.map(({ line }) => corners(line))),
    plan.pipes.map(({ centre, diameterMm }) => `${corners([centre])} ${diameterMm}`),
  ]
    .map((things) => [...things].sort().join('\n'))
    .join('\n\n');
}

/** Null where one of them has no walls. */
export function floorsInCommon(before: Plan, now: Plan, joints: readonly Pair<Joint>[]): InCommon | null {
  const [earlier, later] = [wallsOf(before), wallsOf(now)];
  if (earlier.length === 0 || later.length === 0) return null;
  const count = (side: 'before' | 'now') => joints.filter((pair) => pair[side] !== null).length;
  return {
    wallShare: Math.max(wallShareOf(earlier, later), wallShareOf(later, earlier)),
    joints: joints.filter(isInPlace).length,
    ofJoints: Math.min(count('before'), count('now')),
  };
}

/** Joints of doorways are paired by the doorway's id, which another building may have as well. */
function isInPlace({ before, now }: Pair<Joint>): boolean {
  if (before === null || now === null) return false;
  const { acrossMm, overlapMm } = jointShift(before, now);
  return acrossMm <= mostMovedMm && overlapMm > 0;
}
