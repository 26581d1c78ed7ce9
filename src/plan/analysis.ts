import type { Point } from '../geometry/point.ts';
import type { Region, Ring } from '../geometry/ring.ts';
import type { TileBond } from './plan.ts';

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
  /** Null where no room has tiles. */
  readonly tiles: Tiles | null;
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
  /** Its floor in each of its rooms, which adds up to its area. */
  readonly floors: readonly BayFloor[];
  /** Of it what lies on bare slab. */
  readonly bareM2: number;
}

export interface BayFloor {
  readonly room: string;
  readonly areaM2: number;
  /** Of it what lies on bare slab. */
  readonly bareM2: number;
}

export type JointKind = 'doorway' | 'neck' | 'field' | 'structural' | 'zone' | 'drawn';
export const jointKinds: readonly JointKind[] = ['doorway', 'neck', 'field', 'structural', 'zone', 'drawn'];

/** Whether the split put the joint there of its own accord; the rest are dictated by the building, a doorway, a heating zone or the user. */
export function jointIsFound({ kind }: Pick<JointLine, 'kind'>): boolean {
  return kind === 'field' || kind === 'neck';
}

/** Whether the joint parts the floor of a room, found or drawn by hand: it can be brought into grout. */
export function jointIsInRoom({ kind }: Pick<JointLine, 'kind'>): boolean {
  return kind === 'drawn' || jointIsFound({ kind });
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

/** A joint in the grid of the tiles over it; all null, or 0, where it has none on either side. */
export interface JointGrout {
  readonly onGroutLine: boolean | null;
  /** The largest distance, along the joint, from its middle to the nearest line of grout that runs its way, mm. */
  readonly offGroutMm: number | null;
  /** Tiles that it runs through and that have to be cut along it. */
  readonly cutsTiles: number;
  /** What the tiles do at it. `on-line`: it lies in grout; `cut`: tiles are cut along it, straight; `restart`: another tile field begins beyond
   *  it, so that both end at it; `one-side`: only one side has tiles. */
  readonly tilesAt: 'on-line' | 'cut' | 'restart' | 'one-side' | null;
  /** Whether some line of grout runs its way at all: not across shifted courses, not in a herringbone, not askew to the grid. */
  readonly bondLets: boolean | null;
  /** Why it lies off the grout lines; null where it does not, or has no tiles. */
  readonly whyOff: WhyOff | null;
}

/** Why a joint lies off the grout lines: it stands where a `doorway`, a joint of the `building`, a change of `zone`, the `user` or a `neck` puts it; no
 *  grout runs straight its way in this `bond`, or it runs `askew` to the grid; the layout does not `aim` for grout lines; or it does and found none that a
 *  `corner` that turns in or a `column` that needs a joint can be met from, or that the `limits` of the bays allow. */
export type WhyOff =
  | 'doorway'
  | 'building'
  | 'zone'
  | 'user'
  | 'neck'
  | 'bond'
  | 'askew'
  | 'aim'
  | 'corner'
  | 'column'
  | 'limits';

export const untiledJoint: JointGrout = {
  onGroutLine: null,
  offGroutMm: null,
  cutsTiles: 0,
  tilesAt: null,
  bondLets: null,
  whyOff: null,
};

/** The tiling of a floor. `origin` and `angleDeg` are the set-out point in use: of the tiles of the whole floor, or of the first tile field where there
 *  are only fields. Counts are those of all fields together. */
export interface Tiles extends TileCounts {
  readonly origin: Point;
  readonly angleDeg: number;
  readonly fields: readonly TileFieldReport[];
}

/** Tiles clipped to the faces of walls, things and joints. */
export interface TileCounts extends CutCounts {
  /** Tiles laid whole. */
  readonly full: number;
  /** Cut pieces no wider than the perimeter joint, that fall into it: all of the piece lies within the width of the edge strip of a wall or thing. */
  readonly inJoint: number;
  /** What is cut apart from those: what a tiler saws. */
  readonly sawn: CutCounts;
}

export interface CutCounts {
  /** Tiles of which a cut piece lies on the floor, by a wall, a thing in the floor or a joint. */
  readonly cut: number;
  /** Cut pieces narrower than half a tile, and than a third. */
  readonly underHalf: number;
  readonly slivers: number;
  /** Least width of a cut piece, mm; null where none is cut. */
  readonly smallestCutMm: number | null;
}

export interface TileFieldReport extends TileCounts {
  /** Of the plan's tile field; null for the tiles of the whole floor. */
  readonly id: string | null;
  readonly rooms: readonly string[];
  readonly origin: Point;
  readonly angleDeg: number;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly groutMm: number;
  readonly bond: TileBond;
  /** Of the tiles' faces, and the floor between them; together the floor of the field. */
  readonly tileM2: number;
  readonly groutM2: number;
  /** Tiles laid whole and tiles sawn for the cut pieces, off-cuts used again. */
  readonly laid: number;
  /** Cut pieces that come from the tile of another: its off-cut, or its other side where a joint parts it. */
  readonly fromOffCuts: number;
  readonly allowance: number;
  /** `laid` and the allowance, to whole tiles, and to whole boxes where the box is known. */
  readonly order: number;
  readonly boxes: number | null;
  /** Corners of the whole tile to begin with: the one nearest the middle of the field's largest room; null where none is whole. */
  readonly firstTile: Ring | null;
  readonly cuts: readonly WallCut[];
}

/** How many pieces are cut. A tile that a joint parts is one cut tile and two pieces: whole tiles and pieces, less those that fall into the perimeter
 *  joint and those from off-cuts, are the tiles to lay.
 *  Example: 100 whole, 112 to lay, 8 from off-cuts, 3 into the perimeter joint -> 23 pieces */
export function tilePieces({
  full,
  laid,
  fromOffCuts,
  inJoint,
}: Pick<TileFieldReport, 'full' | 'laid' | 'fromOffCuts' | 'inJoint'>): number {
  return laid - full + fromOffCuts + inJoint;
}

/** The cut tiles along one straight stretch of wall, jamb, thing or joint. */
export interface WallCut {
  readonly bay: string;
  /** Null along a joint. */
  readonly room: string | null;
  readonly along: EdgeAlong | 'jamb' | 'joint';
  /** Id of the joint, or of the column, pipe or joinery; null at a wall. */
  readonly object: string | null;
  readonly line: readonly [Point, Point];
  /** Sizes square to the line, in mm, each once, rising: one along a straight course, several where courses are shifted, the least and the greatest
   *  where the line runs askew. To the face of the wall: the width of the perimeter joint comes off. */
  readonly sizesMm: readonly number[];
  /** Of a whole tile the same way: the longer, where tiles lie both ways in a herringbone. */
  readonly wholeMm: number;
  /** The narrowest cut as a share of its whole tile the same way, less what falls into the perimeter joint; 1 where none is cut. */
  readonly leastShare: number;
  readonly isAskew: boolean;
  /** Cut tiles along it; 0 where whole tiles meet it. */
  readonly tiles: number;
  /** How far whole tiles end before it, within their grout, mm: all of them, or those of some courses where courses are shifted. Null where none does,
   *  askew and in a herringbone. */
  readonly wholeOffMm: number | null;
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
  /** Where it lies, net of holes. */
  readonly regions: readonly Region[];
}
