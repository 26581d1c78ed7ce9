import { createAnalyser } from '../../../src/analysis/analyser.ts';
import type { Result } from '../../../src/app/state/analysisStore.ts';
import { catchesOf } from '../../../src/app/tools/catch-lines.ts';
import { opening } from '../../../src/app/tools/choose/opening.ts';
import { resting } from '../../../src/app/tools/choose/resting.ts';
import type { Act, Hand, Scene, Stance, Turn } from '../../../src/app/tools/stance.ts';
import { tileTools } from '../../../src/app/tools/tiles/tile-tools.ts';
import { firstWishes } from '../../../src/app/tools/wishes.ts';
import { drawingOf } from '../../../src/documents/drawing-list.ts';
import type { Point } from '../../../src/geometry/point.ts';
import { wallsOf } from '../../../src/plan/edits/doorways.ts';
import { planResolve } from '../../../src/plan/resolve.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';

/** What tests of tools do again and again: a scene round a plan, a hand, and acts one after the other. */
export function sceneOf(file: PlanFile, over: Partial<Scene> = {}): Scene {
  const wishes = over.wishes ?? firstWishes;
  const walls = wallsOf(file);
  return {
    file,
    catches: catchesOf(file, wishes.wallMm),
    walls: () => walls,
    result: null,
    chosen: [],
    step: 'floor',
    wishes,
    tiles: tileTools,
    opening,
    ...over,
  };
}

/** The plan as the analysis leaves it on the board. */
export function resultOf(file: PlanFile): Result {
  const plan = planResolve(file);
  const analysis = createAnalyser().analyse(plan, {});
  if (analysis === null) throw new Error('cancelled');
  return { revision: 1, sheet: 1, file, plan, analysis, drawing: drawingOf(plan, analysis) };
}

export function handAt(at: Point, over: Partial<Hand> = {}): Hand {
  return { at, reachMm: 60, loose: false, things: [], ...over };
}

export const pressAt = (...at: Point): Act => ({ kind: 'press', hand: handAt(at) });
export const hoverAt = (...at: Point): Act => ({ kind: 'hover', hand: handAt(at) });
/** A drag from one place to another by way of the middle.  @param over what lies where it begins, or the keys held */
export const drag = (from: Point, to: Point, over: Partial<Hand> = {}): readonly Act[] => [
  { kind: 'down', hand: handAt(from, over) },
  { kind: 'drag', hand: handAt([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], over) },
  { kind: 'drag', hand: handAt(to, over) },
  { kind: 'drop', hand: handAt(to, over) },
];

/** The same, with the hand still down. */
export const lead = (from: Point, to: Point, over: Partial<Hand> = {}): readonly Act[] =>
  drag(from, to, over).slice(0, -1);

/** What is written over the board. */
export const wordsOf = (stance: Stance, scene: Scene): readonly string[] =>
  stance.sketch(scene).marks.flatMap((mark) => (mark.mark === 'words' ? [mark.text] : []));

export const length = (lengthMm: number, directionDeg: number | null = null): Act => ({
  kind: 'length',
  lengthMm,
  directionDeg,
});

/** Acts one after the other; the last turn. */
export function acted(start: Stance, scene: Scene, acts: readonly Act[]): Turn {
  let turn: Turn = { next: start };
  for (const act of acts) {
    const stance = turn.next === 'rest' ? resting() : turn.next;
    turn = stance.on(act, scene);
  }
  return turn;
}

export const emptyFile: PlanFile = { format: 'screed-bays/plan', version: 1, name: 'Test', rooms: [] };

/** A hall of 6 by 4.5 m and, beyond a wall of 120 mm to its right, a kitchen of 3.5 by 4.5 m. */
export const twoRooms: PlanFile = {
  ...emptyFile,
  rooms: [
    {
      id: 'r1',
      name: 'Hall',
      outline: [
        [0, 0],
        [6000, 0],
        [6000, 4500],
        [0, 4500],
      ],
    },
    {
      id: 'r2',
      name: 'Kitchen',
      outline: [
        [6120, 0],
        [9620, 0],
        [9620, 4500],
        [6120, 4500],
      ],
    },
  ],
};

/** A hall of 12 by 5 m: over 8 m and 40 m2, one joint halves it at x = 6000. */
export const longHall: PlanFile = {
  ...emptyFile,
  rooms: [
    {
      id: 'r1',
      name: 'Hall',
      outline: [
        [0, 0],
        [12000, 0],
        [12000, 5000],
        [0, 5000],
      ],
    },
  ],
};
