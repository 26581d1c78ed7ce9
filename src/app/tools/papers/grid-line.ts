import { type Point, pointDirection, pointDistance } from '../../../geometry/point.ts';
import { gridEndsApart, gridLineAdded, gridLinesOf } from '../../../plan/edits/grid-lines.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { type Caught, freeHold, handCatch, squareWay } from '../catch.ts';
import { directionOf, wayOf } from '../draw/direction.ts';
import { placeFree } from '../draw/first.ts';
import { type SketchMark, sketchLine } from '../sketch.ts';
import type { Act, Hand, Scene, Stance, Turn } from '../stance.ts';
import { gridLineName } from './names.ts';
import { placeThing } from './places.ts';

/** Grid lines for the papers, by their two ends. */

/** Grid lines; their names stand among those of the drawing. */
export function gridLineMarks(file: PlanFile): readonly SketchMark[] {
  return gridLinesOf(file).map(({ from, to }) => sketchLine([from, to], 'guide'));
}

/** The tool, taken up: a press sets the first end, and so does the beginning of a drag.
 *  @param from where a drag began that sets both ends */
export function gridLineHeld(at: Caught | null = null, from: Caught | null = null): Stance {
  return {
    tool: 'paperPoint',
    hint: 'Press for the first end of the grid line. A press on one that stands chooses it.',
    underway: false,
    hand: at?.at ?? null,
    typed: null,
    sketch() {
      if (at === null) return { marks: [] };
      const drawn = from === null ? ({ mark: 'dot', at: at.at, tone: 'hand' } as const) : sketchLine([from.at, at.at]);
      return { marks: [drawn, ...at.marks] };
    },
    grabs: () => true,
    on: (act, scene) => heldOn(at, from, act, scene),
  };
}

function heldOn(at: Caught | null, from: Caught | null, act: Act, scene: Scene): Turn {
  switch (act.kind) {
    case 'hover':
      return { next: gridLineHeld(handCatch(scene.catches, act.hand, freeHold)) };
    case 'down': {
      const caught = handCatch(scene.catches, act.hand, freeHold);
      return { next: gridLineHeld(caught, caught) };
    }
    case 'drag':
      return { next: gridLineHeld(from === null ? null : handHeld(from.at, act.hand, scene), from) };
    case 'drop':
      return from === null || at === null ? { next: gridLineHeld(at) } : ended(from.at, at, scene);
    case 'press':
    case 'hold': {
      const caught = handCatch(scene.catches, act.hand, freeHold);
      return { next: gridLineRun(caught.at, caught) };
    }
    case 'steer': {
      const [x, y] = at?.at ?? placeFree(scene);
      return { next: gridLineHeld(uncaught([x + act.by[0], y + act.by[1]])) };
    }
    case 'place':
      return { next: gridLineRun(act.at, uncaught(act.at)) };
    case 'enter':
      return { next: at === null ? gridLineHeld() : gridLineRun(at.at, at) };
    case 'length':
    case 'sides':
      return { next: gridLineHeld(at) };
    case 'leave':
      return { next: gridLineHeld() };
    case 'back':
      return { next: 'rest' };
  }
}

/** The first end is set: the hand leads the line to the other. */
function gridLineRun(from: Point, at: Caught): Stance {
  return {
    tool: 'paperPoint',
    hint: 'Press for the other end, or type the length. Escape takes the first end back.',
    underway: true,
    hand: at.at,
    typed: {
      label: 'Length',
      at: at.at,
      lengthMm: pointDistance(from, at.at),
      directionDeg: directionOf(from, at.at),
      sides: false,
    },
    sketch: () => ({
      marks: [sketchLine([from, at.at]), { mark: 'corner', at: from, tone: 'hand' }, ...at.marks],
    }),
    grabs: () => true,
    on: (act, scene) => runOn(from, at, act, scene),
  };
}

function runOn(from: Point, at: Caught, act: Act, scene: Scene): Turn {
  switch (act.kind) {
    case 'hover':
    case 'down':
    case 'drag':
      return { next: gridLineRun(from, handHeld(from, act.hand, scene)) };
    case 'drop':
    case 'press':
    case 'hold':
      return ended(from, handHeld(from, act.hand, scene), scene);
    case 'steer':
      return { next: gridLineRun(from, uncaught([at.at[0] + act.by[0], at.at[1] + act.by[1]])) };
    case 'place':
      return ended(from, uncaught(act.at), scene);
    case 'enter':
      return ended(from, at, scene);
    case 'length': {
      const way = act.directionDeg === null ? wayHeld(from, at.at, scene) : wayOf(act.directionDeg);
      if (way === null)
        return { next: gridLineRun(from, at), refused: 'Point the way of the line, or give its direction too.' };
      return ended(from, uncaught([from[0] + way[0] * act.lengthMm, from[1] + way[1] * act.lengthMm]), scene);
    }
    case 'sides':
      return { next: gridLineRun(from, at), refused: 'A grid line has one length: type one.' };
    case 'leave':
      return { next: gridLineRun(from, at) };
    case 'back':
      return { next: gridLineHeld(at) };
  }
}

function uncaught(at: Point): Caught {
  return { at, marks: [], onSide: false };
}

/** Held to right angles where they are wished, as what is drawn is. */
function handHeld(from: Point, hand: Hand, { catches, wishes }: Scene): Caught {
  return handCatch(catches, hand, { ...freeHold, from, square: wishes.square });
}

function wayHeld(from: Point, to: Point, { wishes }: Scene): Point | null {
  if (pointDistance(from, to) === 0) return null;
  return wishes.square ? squareWay(from, to, null) : pointDirection(from, to);
}

function ended(from: Point, at: Caught, { file }: Scene): Turn {
  const ends = { from, to: at.at };
  if (!gridEndsApart(ends)) return { next: gridLineRun(from, at), refused: 'The two ends would lie at one place.' };
  const after = gridLineAdded(file, ends);
  const line = gridLinesOf(after).at(-1);
  if (after === file || line === undefined)
    return { next: gridLineRun(from, at), refused: 'This lies beyond the sheet.' };
  return {
    next: gridLineHeld(at),
    step: { name: `${gridLineName(line)} placed`, file: after },
    choose: [placeThing({ kind: 'grid', index: gridLinesOf(after).length - 1 })],
  };
}
