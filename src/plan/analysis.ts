import type { Point } from '../geometry/point.ts';
import type { Ring } from '../geometry/ring.ts';

/** What is derived from a plan, in the shape that `--json` prints: the product's contract. Coordinates in mm. */
export interface Analysis {
  readonly format: 'screed-bays/analysis';
  readonly version: 1;
  readonly plan: string;
  readonly bays: readonly Bay[];
  readonly joints: readonly Joint[];
  readonly edges: readonly Edge[];
  readonly findings: readonly Finding[];
  readonly quantities: Quantities;
  readonly proof: Proof;
}

/** A bay as the split leaves it. */
export interface BayShape {
  /** Number on the sheet: B1, B2, ... in reading order. */
  readonly id: string;
  /** Which bay it is, across edits. */
  readonly key: string;
  readonly rooms: readonly string[];
  readonly outline: Ring;
  /** The outline without the floor of doorways: what the limits hold on. */
  readonly measured: Ring;
  /** Columns, pipes, cores and built-off joinery inside the bay. */
  readonly holes: readonly Ring[];
  /** Whole bay, net of holes. */
  readonly areaM2: number;
  /** Sides of the least-area rectangle round `measured`. */
  readonly lengthM: number;
  readonly widthM: number;
  readonly aspect: number;
  /** Outer ring and holes. */
  readonly perimeterM: number;
  /** Area, length, aspect and re-entrant corners all within the limits. */
  readonly within: boolean;
}

export interface Bay extends BayShape {
  /** The point of no movement. */
  readonly stillPoint: Point;
}

export type JointKind = 'doorway' | 'neck' | 'field' | 'structural' | 'zone' | 'drawn';
export const jointKinds: readonly JointKind[] = ['doorway', 'neck', 'field', 'structural', 'zone', 'drawn'];

/** Whether the split put the joint there of its own accord; the rest are dictated by the building, a doorway, a heating zone or the user. */
export function jointIsFound({ kind }: Pick<JointLine, 'kind'>): boolean {
  return kind === 'field' || kind === 'neck';
}

/** One stretch of joint between one pair of bays, as the split leaves it. */
export interface JointLine {
  readonly id: string;
  readonly key: string;
  readonly kind: JointKind;
  /** Ids of the plan's objects that the joint stands for (doorway, structural or drawn joint); empty for field and neck joints. */
  readonly sources: readonly string[];
  readonly line: readonly Point[];
  /** Joints of one straight line share a run. */
  readonly run: string;
  readonly lengthM: number;
  readonly bays: readonly [string, string];
  /** Why it is here, in words. */
  readonly reasons: readonly string[];
}

/** What each joint must take, mm. */
export interface JointMovement {
  readonly closingMm: number;
  readonly openingMm: number;
  readonly slidingMm: number;
  /** Each bay stopped at its far side, so that all of its growth arrives here. */
  readonly worstClosingMm: number;
  /** Width of the profile in the screed (the structural joint's own width where that is what it is). */
  readonly profileMm: number;
  readonly profileTakesMm: number;
  /** Least width of the sealant line. */
  readonly sealantNeedsMm: number;
}

export interface JointGrout {
  readonly onGroutLine: boolean | null;
  readonly offGroutMm: number | null;
}

export interface Joint extends JointLine, JointMovement, JointGrout {}

export type EdgeAlong = 'wall' | 'column' | 'pipe' | 'joinery';

/** A stretch of a bay's boundary that is no joint: edge strip stands here. */
export interface EdgeLine {
  readonly id: string;
  readonly along: EdgeAlong;
  readonly bay: string;
  readonly room: string;
  /** Id of the column, pipe or joinery; null at a wall. */
  readonly object: string | null;
  /** Open polyline; a ring round an object repeats its first point at the end. */
  readonly line: readonly Point[];
  readonly lengthM: number;
}

export interface Edge extends EdgeLine {
  /** The largest outward movement along it. */
  readonly movementMm: number;
}

export type Severity = 'fault' | 'caution' | 'note';

export interface Finding {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  /** A place on the plan; null where the finding is about the whole plan. */
  readonly at: Point | null;
  /** Ids of bays, joints and objects of the plan. */
  readonly refs: readonly string[];
  /** Key of `shared/sources.json`, or the document the user named. */
  readonly source: string;
}

/** A place that is held to the slab, cut to one bay. */
export interface HeldPlace {
  readonly bay: string;
  /** Id of the joinery, the slab contact, or the room without insulation. */
  readonly object: string;
  readonly cause: 'no-insulation' | 'fixed-through' | 'slab-contact';
  readonly areaM2: number;
  readonly centre: Point;
}

/** Net, no allowance. */
export interface Quantities extends RoomQuantities {
  readonly rooms: readonly ({ readonly room: string } & RoomQuantities)[];
}

export interface RoomQuantities {
  readonly edgeStripM: number;
  readonly jointM: Readonly<Record<JointKind, number>>;
  readonly sealantLitres: number;
  readonly screedM3: number;
  readonly screedKg: number;
  readonly insulationM2: number;
  readonly slabContactM2: number;
  readonly floorM2: number;
}

export interface Proof {
  /** Length of field and neck joints, m. */
  readonly fieldJointM: number;
  /** No layout on these lines, with these rules, has less; null where no bound is known. */
  readonly atLeastM: number | null;
}

/** The floor split, before movement: what `src/bays` gives and movement, tiling and take-off read. */
export interface Split {
  readonly bays: readonly BayShape[];
  readonly joints: readonly JointLine[];
  readonly edges: readonly EdgeLine[];
  /** For each bay id: the floor of the bay in each room, net of columns, pipes and holes, as disjoint regions. Sums to the bay. Doorway floor is shared out to a neighbouring room. */
  readonly pieces: readonly BayPiece[];
}

export interface BayPiece {
  readonly bay: string;
  readonly room: string;
  readonly areaM2: number;
}
