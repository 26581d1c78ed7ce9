import type { Point } from '../../../geometry/point.ts';
import { boxOf } from '../../../geometry/ring.ts';
import { type Caught, freeHold, handCatch } from '../catch.ts';
import { type Sketch, sketchRing } from '../sketch.ts';
import type { Act, Scene, Stance, Turn } from '../stance.ts';
import { drawEnd, rectangleOf } from './end.ts';
import type { DrawKind } from './kinds.ts';
import { running } from './running.ts';

/** Nothing is drawn yet: the next press sets the first corner.
 *  @param from where a drag began that sets two corners at once */
export function first(kind: DrawKind, at: Caught | null = null, from: Caught | null = null): Stance {
  return {
    tool: kind.tool,
    hint: hintOf(kind),
    underway: false,
    hand: at?.at ?? null,
    typed: {
      label: 'Sides',
      at: at?.at ?? [0, 0],
      lengthMm: null,
      directionDeg: null,
      sides: kind.closed,
    },
    sketch: (scene) => sketchOf(kind, at, from, scene),
    grabs: () => true,
    on: (act, scene) => firstOn(kind, at, from, act, scene),
  };
}

function hintOf({ closed, noun }: DrawKind): string {
  return closed
    ? `Press for the first corner of ${noun}, or type its sides, such as 4.5 x 3 m.`
    : `Press where ${noun} begins.`;
}

function sketchOf(kind: DrawKind, at: Caught | null, from: Caught | null, { wishes }: Scene): Sketch {
  if (at === null) return { marks: [] };
  if (from === null) return { marks: [{ mark: 'dot', at: at.at, tone: 'hand' }, ...at.marks] };
  const drawn =
    kind.closed && wishes.outline === 'rectangle'
      ? sketchRing(rectangleOf(from.at, at.at))
      : ({ mark: 'line', points: [from.at, at.at], closed: false, tone: 'hand' } as const);
  return { marks: [drawn, ...at.marks] };
}

function firstOn(kind: DrawKind, at: Caught | null, from: Caught | null, act: Act, scene: Scene): Turn {
  const same = first(kind, at, from);
  switch (act.kind) {
    case 'hover':
      return { next: first(kind, handCatch(scene.catches, act.hand, freeHold)) };
    case 'down': {
      const caught = handCatch(scene.catches, act.hand, freeHold);
      return { next: first(kind, caught, caught) };
    }
    case 'drag': {
      const rectangle = kind.closed && scene.wishes.outline === 'rectangle';
      const hold = { from: from?.at ?? null, before: null, own: [], square: scene.wishes.square && !rectangle };
      return { next: first(kind, handCatch(scene.catches, act.hand, hold), from) };
    }
    case 'drop':
      return from === null || at === null ? { next: same } : begun(kind, from, at, scene);
    case 'press':
    case 'hold': {
      const caught = handCatch(scene.catches, act.hand, freeHold);
      return {
        next: running(kind, first(kind), {
          points: [caught.at],
          at: caught,
          hand: caught.at,
          begun: caught.onSide,
          steered: false,
        }),
      };
    }
    case 'steer': {
      const [x, y] = at?.at ?? placeFree(scene);
      const to: Point = [x + act.by[0], y + act.by[1]];
      return { next: first(kind, { at: to, marks: [], onSide: false }) };
    }
    case 'place':
    case 'enter': {
      const place = act.kind === 'place' ? act.at : (at?.at ?? placeFree(scene));
      const caught: Caught = { at: place, marks: [], onSide: false };
      return {
        next: running(kind, first(kind), { points: [place], at: caught, hand: place, begun: false, steered: false }),
      };
    }
    case 'sides':
      return kind.closed ? sides(kind, at?.at ?? placeFree(scene), act.sidesMm, scene) : { next: same };
    case 'length':
      return { next: same, refused: `Set where ${kind.noun} begins first, then type the length of its run.` };
    case 'leave':
      return { next: first(kind) };
    case 'back':
      return { next: 'rest' };
  }
}

/** A drag sets two corners at once: a rectangle, or the first run. */
function begun(kind: DrawKind, from: Caught, at: Caught, scene: Scene): Turn {
  if (kind.closed && scene.wishes.outline === 'rectangle') {
    return drawEnd(kind, rectangleOf(from.at, at.at), scene, first(kind));
  }
  if (!kind.closed && from.onSide && at.onSide) return drawEnd(kind, [from.at, at.at], scene, first(kind));
  return {
    next: running(kind, first(kind), { points: [from.at, at.at], at, hand: at.at, begun: from.onSide, steered: false }),
  };
}

function sides(kind: DrawKind, [x, y]: Point, [width, height]: readonly [number, number], scene: Scene): Turn {
  return drawEnd(kind, rectangleOf([x, y], [x + width, y + height]), scene, first(kind));
}

/** Where something is begun without a pointer: the sheet's origin, or a wall's depth to the right of what is drawn. */
export function placeFree({ file, wishes }: Scene): Point {
  if (file.rooms.length === 0) return [0, 0];
  const { maxX, minY } = boxOf(file.rooms.flatMap(({ outline }) => outline));
  return [maxX + wishes.wallMm, minY];
}
