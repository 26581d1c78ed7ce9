import { runCrosses } from '../../../geometry/crossing.ts';
import { type Point, pointDirection, pointDistance } from '../../../geometry/point.ts';
import { WELD_MM } from '../../../geometry/tolerance.ts';
import { type Caught, handCatch, squareWay } from '../catch.ts';
import { type Sketch, type SketchMark, sketchLine } from '../sketch.ts';
import type { Act, Hand, Scene, Stance, Turn } from '../stance.ts';
import { directionOf, wayOf } from './direction.ts';
import { drawEnd, rectangleOf } from './end.ts';
import type { DrawKind } from './kinds.ts';

export interface Drawn {
  /** Corners set so far, the first first. */
  readonly points: readonly Point[];
  /** Where the run under way would end. */
  readonly at: Caught;
  /** Where the hand itself is: held to right angles it says no quarter. */
  readonly hand: Point;
  /** Whether a line began on a side of something: it ends at the next. */
  readonly begun: boolean;
  /** Whether arrow keys led the hand here: Enter then sets a corner. */
  readonly steered: boolean;
}

/** One corner or more are set: the hand leads the next run.
 *  @param again the state in which the next outline or line is begun */
export function running(kind: DrawKind, again: Stance, drawn: Drawn): Stance {
  const last = drawn.points.at(-1) as Point;
  return {
    tool: kind.tool,
    hint: hintOf(kind, drawn),
    underway: true,
    hand: drawn.at.at,
    typed: {
      label: 'Length',
      at: drawn.at.at,
      lengthMm: pointDistance(last, drawn.at.at),
      directionDeg: directionOf(last, drawn.at.at),
      sides: kind.closed && drawn.points.length === 1,
    },
    sketch: (scene) => sketchOf(kind, drawn, scene),
    grabs: () => true,
    on: (act, scene) => runningOn(kind, again, drawn, act, scene),
  };
}

function hintOf({ closed, noun }: DrawKind, { points, begun }: Drawn): string {
  if (!closed && begun) return `Press where ${noun} ends: on a wall it ends there. Enter ends it anywhere.`;
  if (!closed) return `Press for the next point of ${noun}. Enter ends it, Escape takes a point back.`;
  if (points.length === 1) return 'Press for the next corner, or type a length, or two sides such as 4.5 x 3 m.';
  return 'Press for the next corner or type a length. The first corner or Enter closes, Escape takes a corner back.';
}

function isRectangle({ closed }: DrawKind, { points }: Drawn, { wishes }: Scene): boolean {
  return closed && points.length === 1 && wishes.outline === 'rectangle';
}

function sketchOf(kind: DrawKind, drawn: Drawn, scene: Scene): Sketch {
  const { points, at } = drawn;
  const corners = points.map((point): SketchMark => ({ mark: 'corner', at: point, tone: 'hand' }));
  if (isRectangle(kind, drawn, scene)) {
    const ring = rectangleOf(points[0] as Point, at.at);
    return { marks: [{ mark: 'line', points: ring, closed: true, tone: 'hand' }, ...corners, ...at.marks] };
  }
  const crossing = runCrosses(points, at.at);
  const run = sketchLine([points.at(-1) as Point, at.at], crossing === null ? 'hand' : 'wrong');
  return { marks: [sketchLine(points), run, ...corners, ...at.marks] };
}

function holdOf({ points }: Drawn, square: boolean) {
  const [from, before] = [points.at(-1) ?? null, points.at(-2) ?? null];
  return {
    from,
    before: before === null || from === null ? null : pointDirection(before, from),
    own: points.slice(0, -1),
    square,
  };
}

function runningOn(kind: DrawKind, again: Stance, drawn: Drawn, act: Act, scene: Scene): Turn {
  const led = (at: Caught, hand: Point, steered = false) => running(kind, again, { ...drawn, at, hand, steered });
  const catching = (hand: Hand) =>
    handCatch(scene.catches, hand, holdOf(drawn, scene.wishes.square && !isRectangle(kind, drawn, scene)));
  const last = drawn.points.at(-1) as Point;
  switch (act.kind) {
    case 'hover':
    case 'down':
    case 'drag':
      return { next: led(catching(act.hand), act.hand.at) };
    case 'drop':
    case 'press':
    case 'hold':
      return pressed(kind, again, drawn, catching(act.hand), scene);
    case 'steer': {
      const [x, y] = drawn.at.at;
      const to: Point = [x + act.by[0], y + act.by[1]];
      return { next: led({ at: to, marks: [], onSide: false }, to, true) };
    }
    case 'length': {
      const way = act.directionDeg === null ? wayHeld(drawn, scene) : wayOf(act.directionDeg);
      if (way === null)
        return { next: running(kind, again, drawn), refused: 'Point the way of the run, or give its direction too.' };
      return cornerSet(kind, again, drawn, runEnd(last, way, act.lengthMm), scene);
    }
    case 'sides':
      return sided(kind, again, drawn, act.sidesMm, scene);
    case 'place':
      return cornerSet(kind, again, drawn, { at: act.at, marks: [], onSide: false }, scene);
    case 'enter':
      return drawn.steered ? cornerSet(kind, again, drawn, drawn.at, scene) : closed(kind, again, drawn, scene);
    case 'leave':
      return { next: running(kind, again, drawn) };
    case 'back':
      return { next: stepBack(kind, again, drawn) };
  }
}

function runEnd(last: Point, way: Point, lengthMm: number): Caught {
  return { at: [last[0] + way[0] * lengthMm, last[1] + way[1] * lengthMm], marks: [], onSide: false };
}

/** Which way the hand points: held to right angles where they are wished. */
function wayHeld({ points, at }: Drawn, { wishes, catches }: Scene): Point | null {
  const [last, before] = [points.at(-1) as Point, points.at(-2) ?? null];
  if (pointDistance(last, at.at) === 0) return null;
  if (!wishes.square) return pointDirection(last, at.at);
  return squareWay(last, at.at, before === null ? null : pointDirection(before, last), catches.grout?.near(last));
}

function pressed(kind: DrawKind, again: Stance, drawn: Drawn, caught: Caught, scene: Scene): Turn {
  const { points } = drawn;
  if (isRectangle(kind, drawn, scene)) {
    return drawEnd(kind, rectangleOf(points[0] as Point, caught.at), scene, again, running(kind, again, drawn));
  }
  const onFirst = pointDistance(caught.at, points[0] as Point) < WELD_MM;
  const onLast = pointDistance(caught.at, points.at(-1) as Point) < WELD_MM;
  if (kind.closed && onFirst && points.length > 2) return closed(kind, again, { ...drawn, at: caught }, scene);
  if (!kind.closed && onLast && points.length > 1) return closed(kind, again, drawn, scene);
  if (!kind.closed && drawn.begun && caught.onSide && !onLast) {
    return drawEnd(kind, [...points, caught.at], scene, again, running(kind, again, drawn));
  }
  return cornerSet(kind, again, drawn, caught, scene);
}

function cornerSet(kind: DrawKind, again: Stance, drawn: Drawn, caught: Caught, scene: Scene): Turn {
  const { points } = drawn;
  const last = points.at(-1) as Point;
  const stay = running(kind, again, { ...drawn, at: caught });
  if (pointDistance(last, caught.at) < WELD_MM) return { next: stay };
  if (kind.closed && points.length > 2 && pointDistance(points[0] as Point, caught.at) < WELD_MM) {
    return closed(kind, again, drawn, scene);
  }
  if (runCrosses(points, caught.at) !== null) {
    return { next: stay, refused: 'This run would cross what is drawn: an outline may not cross itself.' };
  }
  return { next: running(kind, again, { ...drawn, points: [...points, caught.at], at: caught, steered: false }) };
}

function sided(
  kind: DrawKind,
  again: Stance,
  drawn: Drawn,
  [width, height]: readonly [number, number],
  scene: Scene,
): Turn {
  const { points, hand } = drawn;
  const stay = running(kind, again, drawn);
  if (!kind.closed || points.length > 1) {
    return { next: stay, refused: 'Two sides make a rectangle from its first corner: type one length for this run.' };
  }
  const [x, y] = points[0] as Point;
  const to: Point = [x + (hand[0] < x ? -width : width), y + (hand[1] < y ? -height : height)];
  return drawEnd(kind, rectangleOf([x, y], to), scene, again, stay);
}

function closed(kind: DrawKind, again: Stance, { points, at, ...drawn }: Drawn, scene: Scene): Turn {
  return drawEnd(kind, points, scene, again, running(kind, again, { points, at, ...drawn }));
}

function stepBack(kind: DrawKind, again: Stance, drawn: Drawn): Stance {
  const points = drawn.points.slice(0, -1);
  return points.length === 0 ? again : running(kind, again, { ...drawn, points, steered: false });
}
