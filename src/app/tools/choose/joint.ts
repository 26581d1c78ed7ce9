import { type Point, pointDirection, pointDistance } from '../../../geometry/point.ts';
import type { Analysis, Joint } from '../../../plan/analysis.ts';
import { jointsKept } from '../../../plan/edits/joints.ts';
import { objectChanged } from '../../../plan/edits/objects.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import type { Thing } from '../../state/thing.ts';
import { handCatchAlong } from '../catch.ts';
import { catchesOf, fileWithout } from '../catch-lines.ts';
import type { SketchMark } from '../sketch.ts';
import type { Hand, Scene, Stance, Turn } from '../stance.ts';
import { joiningLine, restedOn } from './joint-lines.ts';

/** A joint that the hand may move: a drawn one, or one that the tool found, which becomes a drawn one. */
export interface DraggedJoint {
  readonly joint: Joint;
  readonly analysis: Analysis;
  readonly name: string;
}

/** What the chosen thing is, if it is a joint that can be moved: what the building or a doorway dictates stays. */
export function jointDragged(thing: Thing, { result }: Scene): DraggedJoint | null {
  const joint = thing.kind === 'joint' ? result?.analysis.joints.find(({ key }) => key === thing.key) : undefined;
  if (joint === undefined || result === null) return null;
  const movable = joint.kind === 'field' || joint.kind === 'neck' || joint.kind === 'drawn';
  return movable ? { joint, analysis: result.analysis, name: `Move joint ${joint.id}` } : null;
}

interface Dragging {
  readonly name: string;
  readonly from: Point;
  /** The plan with the joint as a drawn one. */
  readonly file: PlanFile;
  readonly id: string;
  readonly line: readonly Point[];
  /** Square to the joint. */
  readonly across: Point;
  readonly analysis: Analysis;
}

/** A joint is dragged square to itself, its ends on the walls and joints that it meets. */
export function joint(dragged: DraggedJoint, hand: Hand, { file }: Scene): Stance {
  const { analysis, name } = dragged;
  const drawn = drawnOf(dragged, file);
  const line = drawn?.line ?? [];
  const [ux, uy] = pointDirection(line[0] ?? [0, 0], line.at(-1) ?? [0, 0]);
  if (drawn === null) return over;
  return jointAt(
    { name, from: hand.at, file: drawn.file, id: drawn.id, line, across: [-uy, ux], analysis },
    hand.at,
    [],
  );
}

const over: Stance = {
  tool: 'choose',
  hint: '',
  underway: true,
  typed: null,
  sketch: () => ({ marks: [] }),
  grabs: () => true,
  on: () => ({ next: 'rest' }),
};

/** The joint as a drawn one of the plan, kept with what it rests on. */
function drawnOf({ joint: { id, kind, sources }, analysis }: DraggedJoint, file: PlanFile) {
  const own = (file.drawnJoints ?? []).find((each) => kind === 'drawn' && sources.includes(each.id));
  if (own !== undefined) return { file, id: own.id, line: own.line };
  const kept = jointsKept(file, analysis.joints, [id]);
  const drawn = kept.file.drawnJoints?.find((each) => each.id === kept.ids[0]);
  return drawn === undefined ? null : { file: kept.file, id: drawn.id, line: drawn.line };
}

function jointAt(dragging: Dragging, at: Point, marks: readonly SketchMark[]): Stance {
  return {
    tool: 'choose',
    hint: 'Let go where the joint belongs. Escape puts it back.',
    underway: true,
    typed: null,
    live: { id: dragging.id, at },
    sketch: () => ({ marks }),
    grabs: () => true,
    on(act, scene): Turn {
      if (act.kind !== 'drag' && act.kind !== 'drop') {
        return { next: act.kind === 'hover' ? jointAt(dragging, at, marks) : 'rest' };
      }
      return moved(dragging, act.hand, scene, act.kind === 'drop');
    },
  };
}

function moved(dragging: Dragging, hand: Hand, { wishes }: Scene, isOver: boolean): Turn {
  const { file, id, line, across, from, name, analysis } = dragging;
  const start = line[0] as Point;
  const by: Point = [hand.at[0] - from[0], hand.at[1] - from[1]];
  const catches = catchesOf(fileWithout(file, [id]), wishes.wallMm);
  const raw: Point = [start[0] + by[0], start[1] + by[1]];
  const caught = handCatchAlong(catches, { ...hand, at: raw }, start, across);
  const shift: Point = [caught.at[0] - start[0], caught.at[1] - start[1]];
  const shifted = line.map(([x, y]): Point => [x + shift[0], y + shift[1]]);
  const placed = line.length === 2 ? joiningLine(shifted as [Point, Point], analysis.bays) : shifted;
  if (placed === null || pointDistance(placed[0] as Point, placed.at(-1) as Point) < 1) {
    const words: SketchMark = { mark: 'words', at: hand.at, text: 'No floor here', tone: 'wrong' };
    return isOver ? { next: 'rest' } : { next: jointAt(dragging, hand.at, [words]), preview: file };
  }
  const resting = restedOn(placed, analysis.joints);
  const kept = jointsKept(file, analysis.joints, resting).file;
  const after = objectChanged(kept, id, { line: placed });
  if (!isOver) return { next: jointAt(dragging, hand.at, caught.marks), preview: after };
  return { next: 'rest', step: { name, file: after }, choose: [{ kind: 'object', key: id }] };
}
