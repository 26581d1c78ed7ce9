import type { Point } from '../../geometry/point.ts';
import type { DoorwayWall } from '../../plan/edits/doorways.ts';
import type { PlanFile } from '../../plan/schema.ts';
import type { Result } from '../state/analysisStore.ts';
import type { WorkStep } from '../state/boardStore.ts';
import type { Thing } from '../state/thing.ts';
import type { Catches, GroutCatches } from './catch-lines.ts';
import type { Sketch, SketchMark } from './sketch.ts';
import type { Wishes } from './wishes.ts';

/** The hand on the board at one moment. */
export interface Hand {
  /** Where it points, mm of the plan, not caught by anything. */
  readonly at: Point;
  /** By how much it may miss, mm. */
  readonly reachMm: number;
  /** A key is held (or a finger rests) that adds to what is chosen, and in drawing lets go of every hold. */
  readonly loose: boolean;
  /** What lies under it: one thing, or the findings under one pin. */
  readonly things: readonly Thing[];
}

/** What a person does with a tool, whether by pointer, keys or typed figures. Lengths in mm. */
export type Act =
  | { readonly kind: 'hover' | 'down' | 'drag' | 'drop' | 'press' | 'hold'; readonly hand: Hand }
  /** The pointer left, or the gesture was taken back. */
  | { readonly kind: 'leave' }
  /** Enter. */
  | { readonly kind: 'enter' }
  /** Escape, Backspace: one step back. */
  | { readonly kind: 'back' }
  /** Arrow keys: `by` is the way. */
  | { readonly kind: 'steer'; readonly by: Point }
  /** A typed length; `directionDeg` counts from the right, against the clock; null: the way that the hand points. */
  | { readonly kind: 'length'; readonly lengthMm: number; readonly directionDeg: number | null }
  /** Two typed sides of a rectangle. */
  | { readonly kind: 'sides'; readonly sidesMm: readonly [number, number] }
  /** A typed place. */
  | { readonly kind: 'place'; readonly at: Point };

/** What a tool knows besides the act. */
export interface Scene {
  readonly file: PlanFile;
  readonly catches: Catches;
  readonly walls: () => readonly DoorwayWall[];
  readonly result: Result | null;
  readonly chosen: readonly Thing[];
  readonly step: WorkStep;
  readonly wishes: Wishes;
  /** Null until the later parts of the screen are there. */
  readonly tiles: TileTools | null;
  /** The drag of a doorway by its id, from the later parts as well. */
  readonly opening: OpeningDrag | null;
}

/** Null where the plan has no such doorway. */
export type OpeningDrag = (id: string, scene: Scene) => Stance | null;

/** What the hand does with tiles; it comes with the later parts of the screen. */
export interface TileTools {
  /** The tool for set-out points, taken up. */
  readonly start: (scene: Scene) => Stance;
  /** The drag of the set-out point under the open hand; null where there is none. */
  readonly taken: (hand: Hand, scene: Scene) => Stance | null;
  readonly marks: (scene: Scene) => readonly SketchMark[];
  /** What the grout lines of a plan make of the hand.
   *  @param line only those that run the way of this line  @param under of the field there */
  readonly grout: (file: PlanFile, line?: readonly Point[], under?: Point) => GroutCatches;
}

/** A step of the plan: its name, as undo tells it, and the plan after it. */
export interface Step {
  readonly name: string;
  readonly file: PlanFile;
}

/** What an act brings about. */
export interface Turn {
  /** `rest`: the tool is put down, or the gesture is over. */
  readonly next: Stance | 'rest';
  /** The plan as it would be if the gesture ended now. */
  readonly preview?: PlanFile;
  readonly step?: Step;
  /** What is chosen from now on. */
  readonly choose?: readonly Thing[];
  /** Findings under one pin, to choose from. */
  readonly open?: readonly Thing[];
  readonly hover?: Thing | null;
  /** Why the act was not done. */
  readonly refused?: string;
}

/** One state of a tool. */
export interface Stance {
  /** Of which tool; `choose` is in hand when no other is. */
  readonly tool: ToolName;
  /** What to do next, in words. */
  readonly hint: string;
  /** What keys do besides: not said where the hand is a finger. */
  readonly keys?: string;
  /** What is drawn over the board. */
  readonly sketch: (scene: Scene) => Sketch;
  /** What a typed figure means here; null where none is taken. */
  readonly typed: TypedMeaning | null;
  /** Whether a drag that begins here is the tool's; the board moves else. */
  readonly grabs: (hand: Hand, scene: Scene) => boolean;
  readonly on: (act: Act, scene: Scene) => Turn;
  /** Whether a gesture or a drawing is under way: Escape has something to step back from. */
  readonly underway: boolean;
  /** The drawn joint under the hand: its bays are shown against their limits. */
  readonly live?: { readonly id: string; readonly at: Point };
  /** Whose set-out point the tool holds: a tile field's by its id, null for that of the whole floor. */
  readonly tilesOf?: string | null;
  /** Where the hand of a drawing tool is, mm: keys lead it from there. Null before it is on the board. */
  readonly hand?: Point | null;
}

/** The run under the hand, to be shown and typed over. */
export interface TypedMeaning {
  readonly label: string;
  /** Beside which place it stands, mm. */
  readonly at: Point;
  readonly lengthMm: number | null;
  readonly directionDeg: number | null;
  /** Whether two sides may be typed. */
  readonly sides: boolean;
}

export const toolNames = [
  'choose',
  'room',
  'hole',
  'doorway',
  'column',
  'pipe',
  'joinery',
  'slabContact',
  'structuralJoint',
  'sunZone',
  'keepClear',
  'drawnJoint',
  'setOut',
  'paperPoint',
] as const;
export type ToolName = (typeof toolNames)[number];
