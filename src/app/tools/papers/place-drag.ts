import { type Point, pointDirection } from '../../../geometry/point.ts';
import { segmentNearest } from '../../../geometry/segment.ts';
import { SAME_LINE_MM } from '../../../geometry/tolerance.ts';
import { gridEndsApart } from '../../../plan/edits/grid-lines.ts';
import { FARTHEST_MM } from '../../../plan/snap.ts';
import { type Caught, freeHold, handCatch, handCatchAlong } from '../catch.ts';
import { draggedStance } from '../dragged.ts';
import { type SketchMark, sketchLine } from '../sketch.ts';
import type { Hand, Scene, Stance, Turn } from '../stance.ts';
import { type PaperPlace, type PlaceHeld, placeMoved, placeThing } from './places.ts';

interface PlaceDrag extends PlaceHeld {
  /** Where the hand took it, mm. */
  readonly from: Point;
  /** What the hand goes back to: the open hand, or the tool that places points. */
  readonly back: Stance | 'rest';
}

/** The drag of a point, of an end of a grid line, or of the line square to itself. */
export function placeDrag(held: PlaceHeld, hand: Hand, back: PlaceDrag['back']): Stance {
  return dragAt({ ...held, from: hand.at, back }, []);
}

function dragAt(drag: PlaceDrag, marks: readonly SketchMark[]): Stance {
  const { back, place } = drag;
  return draggedStance({
    tool: back === 'rest' ? 'choose' : back.tool,
    hint: `Let go where the ${place.kind !== 'grid' ? 'point' : drag.end === null ? 'line' : 'end of the line'} belongs.`,
    marks,
    led: (hand, scene, isOver) => led(drag, hand, scene, isOver),
    back: () => givenUp(back),
  });
}

/** What the hand that is still down does until it lets go means nothing: a tool would place a point there. */
function givenUp(back: PlaceDrag['back']): Stance | 'rest' {
  if (back === 'rest') return back;
  const stance: Stance = {
    ...back,
    on(act, scene) {
      if (act.kind === 'drag') return { next: stance };
      return act.kind === 'drop' ? { next: back } : back.on(act, scene);
    },
  };
  return stance;
}

function led(drag: PlaceDrag, hand: Hand, scene: Scene, isOver: boolean): Turn {
  const { place, back } = drag;
  const { points, marks, at } = moved(drag, hand, scene);
  const refused = placeRefused(points);
  if (refused !== null) {
    if (isOver) return { next: back, refused: `${refused}.` };
    const words: SketchMark = { mark: 'words', at, text: refused, tone: 'wrong' };
    return { next: dragAt(drag, [{ mark: 'dot', at, tone: 'wrong' }, words]), preview: scene.file };
  }
  const file = placeMoved(scene.file, place, points);
  if (isOver) {
    return { next: back, step: { name: `${place.name} moved`, file }, choose: [placeThing(place)] };
  }
  const own: SketchMark = points.length > 1 ? sketchLine(points) : { mark: 'dot', at, tone: 'hand' };
  return { next: dragAt(drag, [own, ...marks]), preview: file };
}

/** Why a place cannot be there, without a full stop; null where it can. */
export function placeRefused(points: readonly Point[]): string | null {
  if (points.some(([x, y]) => Math.max(Math.abs(x), Math.abs(y)) > FARTHEST_MM)) return 'This lies beyond the sheet';
  const [from, to] = points;
  const meet = from !== undefined && to !== undefined && !gridEndsApart({ from, to });
  return meet ? 'The two ends would lie at one place' : null;
}

/** Where the hand brings it, caught as it is when it is placed. */
function moved(drag: PlaceDrag, hand: Hand, scene: Scene): Caught & Pick<PaperPlace, 'points'> {
  const { place, end, from } = drag;
  const by: Point = [hand.at[0] - from[0], hand.at[1] - from[1]];
  if (end === null) return lineMoved(place.points, from, { ...hand, at: by }, scene);
  const caught = endCaught(drag, { ...hand, at: plus(place.points[end] ?? from, by) }, scene);
  return { ...caught, points: place.points.map((at, i) => (i === end ? caught.at : at)) };
}

/** An end is held to right angles where they are wished, unless the line was askew before. */
function endCaught({ place, end }: PlaceDrag, hand: Hand, { catches, wishes }: Scene): Caught {
  const other = place.points.find((_, i) => i !== end);
  if (other === undefined) return handCatch(catches, hand, freeHold);
  const own = place.points[end ?? 0] ?? other;
  const isSquare = [0, 1].some((axis) => Math.abs((own[axis] ?? 0) - (other[axis] ?? 0)) <= SAME_LINE_MM);
  return handCatch(catches, hand, { ...freeHold, from: other, square: wishes.square && isSquare });
}

/** @param hand `at`: by how much it went */
function lineMoved(points: readonly Point[], from: Point, hand: Hand, { catches }: Scene): ReturnType<typeof moved> {
  const [a = from, b = from] = points;
  const [ux, uy] = pointDirection(a, b);
  const foot = segmentNearest(a, b, from).at;
  const caught = handCatchAlong(catches, { ...hand, at: plus(foot, hand.at) }, foot, [-uy, ux]);
  const by: Point = [caught.at[0] - foot[0], caught.at[1] - foot[1]];
  return { ...caught, points: points.map((at) => plus(at, by)) };
}

function plus([x, y]: Point, [dx, dy]: Point): Point {
  return [x + dx, y + dy];
}
