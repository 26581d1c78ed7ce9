import { catchesOf } from '../../../src/app/tools/catch-lines.ts';
import { resting } from '../../../src/app/tools/choose/resting.ts';
import type { Act, Hand, Scene, Stance, Turn } from '../../../src/app/tools/stance.ts';
import { tileTools } from '../../../src/app/tools/tiles/tile-tools.ts';
import { firstWishes } from '../../../src/app/tools/wishes.ts';
import type { Point } from '../../../src/geometry/point.ts';
import { wallsOf } from '../../../src/plan/edits/doorways.ts';
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
    ...over,
  };
}

export function handAt(at: Point, over: Partial<Hand> = {}): Hand {
  return { at, reachMm: 60, loose: false, things: [], ...over };
}

export const pressAt = (...at: Point): Act => ({ kind: 'press', hand: handAt(at) });
export const hoverAt = (...at: Point): Act => ({ kind: 'hover', hand: handAt(at) });
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
