import { type Point, pointDirection, pointDistance } from '../../../geometry/point.ts';
import { WELD_MM } from '../../../geometry/tolerance.ts';
import { type Analysis, type Joint, jointIsFound } from '../../../plan/analysis.ts';
import { jointsKept, jointsRestedOn } from '../../../plan/edits/joints.ts';
import { objectChanged } from '../../../plan/edits/objects.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import type { Thing } from '../../state/thing.ts';
import { handCatchAlong } from '../catch.ts';
import { type Catches, catchesOf, fileWithout, type GroutCatches } from '../catch-lines.ts';
import type { SketchMark } from '../sketch.ts';
import type { Hand, Scene, Stance, Turn } from '../stance.ts';
import { dragging } from './dragging.ts';
import { joiningLine } from './joint-lines.ts';

/** A joint that the hand may move. */
export interface DraggedJoint {
  readonly name: string;
  readonly analysis: Analysis;
  /** The joint that the tool found; null where it is a drawn one of the plan. */
  readonly found: Joint | null;
  /** Id of the drawn joint; null where the tool found it. */
  readonly drawn: string | null;
}

/** What the chosen thing is, if it is a joint that can be moved: a drawn one, or one that the tool found. What the building
 *  or a doorway dictates stays. */
export function jointDragged(thing: Thing, { file, result }: Pick<Scene, 'file' | 'result'>): DraggedJoint | null {
  if (result === null) return null;
  const { analysis } = result;
  const joint = thing.kind === 'joint' ? analysis.joints.find(({ key }) => key === thing.key) : undefined;
  const ids = thing.kind === 'object' ? [thing.key] : joint?.kind === 'drawn' ? joint.sources : [];
  const drawn = file.drawnJoints?.find(({ id }) => ids.includes(id))?.id ?? null;
  if (drawn !== null) return { name: `Move joint ${joint?.id ?? drawn}`, analysis, found: null, drawn };
  // One that was found on a plan that is no more may lie elsewhere now.
  if (joint === undefined || !jointIsFound(joint) || result.file !== file) return null;
  return { name: `Move joint ${joint.id}`, analysis, found: joint, drawn: null };
}

/** A joint as a drawn one of the plan. */
export interface DrawnJoint {
  readonly file: PlanFile;
  readonly id: string;
  readonly line: readonly Point[];
  readonly analysis: Analysis;
}

interface JointDrag extends DrawnJoint {
  readonly name: string;
  readonly from: Point;
  /** Square to the joint. */
  readonly across: Point;
  /** The rest of the plan: made once, not at each move. */
  readonly catches: Catches;
  /** Grout lines that run its way, of the field under a place; none until the later parts of the screen are there. */
  readonly grout: ((under: Point) => GroutCatches) | null;
}

/** A joint is dragged square to itself, its ends on the walls and joints that it meets. */
export function joint(dragged: DraggedJoint, hand: Hand, { file, wishes, tiles }: Scene): Stance | null {
  const drawn = jointAsDrawn(dragged, file);
  if (drawn === null) return null;
  const { line } = drawn;
  const [ux, uy] = pointDirection(line[0] ?? [0, 0], line.at(-1) ?? [0, 0]);
  const catches = catchesOf(fileWithout(drawn.file, [drawn.id]), wishes.wallMm);
  const grout = tiles && ((under: Point) => tiles.grout(file, line, under));
  return jointAt({ ...drawn, name: dragged.name, from: hand.at, across: [-uy, ux], catches, grout }, hand.at, []);
}

/** The joint as a drawn one of the plan, kept with what it rests on. */
export function jointAsDrawn({ found, drawn, analysis }: DraggedJoint, file: PlanFile): DrawnJoint | null {
  const kept = found === null ? null : jointsKept(file, analysis.joints, [found.id]);
  const after = kept?.file ?? file;
  const own = after.drawnJoints?.find(({ id }) => id === (kept === null ? drawn : kept.ids[0]));
  return own === undefined ? null : { file: after, id: own.id, line: own.line, analysis };
}

function jointAt(drag: JointDrag, at: Point, marks: readonly SketchMark[]): Stance {
  return dragging({
    hint: 'Let go where the joint belongs.',
    keys: 'Escape puts it back.',
    live: { id: drag.id, at },
    marks,
    led: (hand, _scene, over) => moved(drag, hand, over),
  });
}

/** The plan with the joint moved, its ends brought to the walls and joints that it meets; null where there is no floor. */
export function jointShifted({ file, id, line, analysis }: DrawnJoint, [dx, dy]: Point): PlanFile | null {
  const shifted = line.map(([x, y]): Point => [x + dx, y + dy]);
  const placed = line.length === 2 ? joiningLine(shifted as [Point, Point], analysis.bays) : shifted;
  if (placed === null || pointDistance(placed[0] as Point, placed.at(-1) as Point) < WELD_MM) return null;
  const resting = jointsRestedOn(placed, analysis.joints).map(({ id: on }) => on);
  const kept = jointsKept(file, analysis.joints, resting).file;
  return objectChanged(kept, id, { line: placed });
}

function moved(drag: JointDrag, hand: Hand, isOver: boolean): Turn {
  const { file, id, line, across, from, name, grout } = drag;
  const start = line[0] as Point;
  const by: Point = [hand.at[0] - from[0], hand.at[1] - from[1]];
  const raw: Point = [start[0] + by[0], start[1] + by[1]];
  // Of the field under the hand: an end of the joint may lie on the edge of another.
  const catches = grout === null ? drag.catches : { ...drag.catches, grout: grout(hand.at) };
  const caught = handCatchAlong(catches, { ...hand, at: raw }, start, across);
  const after = jointShifted(drag, [caught.at[0] - start[0], caught.at[1] - start[1]]);
  if (after === null) {
    const words: SketchMark = { mark: 'words', at: hand.at, text: 'No floor here', tone: 'wrong' };
    return isOver ? { next: 'rest' } : { next: jointAt(drag, hand.at, [words]), preview: file };
  }
  if (!isOver) return { next: jointAt(drag, hand.at, caught.marks), preview: after };
  return { next: 'rest', step: { name, file: after }, choose: [{ kind: 'object', key: id }] };
}
