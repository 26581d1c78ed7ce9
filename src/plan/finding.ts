import type { Point } from '../geometry/point.ts';
import type { Covering } from './plan.ts';

/** A finding before it is put into words: a closed union of codes with the values that the words need. */
export type FindingFact = FindingPlace & FindingValues;

interface FindingPlace {
  readonly at: Point | null;
  readonly refs: readonly string[];
  /** In place of the code's own source: the user's document, or the rule set's source of the limit that is broken. */
  readonly source?: string;
}

type Limit = { readonly bay: string; readonly value: number; readonly limit: number };

/** Cut tiles narrower than they should be, in some rooms. */
export interface NarrowCut {
  readonly names: readonly string[];
  readonly count: number;
  readonly smallestMm: number;
  readonly smallestIn: string;
}

/** Joints at which tiles are cut. */
interface JointCut {
  readonly joints: readonly string[];
  readonly tiles: number;
  /** How far off the grout at the most. */
  readonly mostMm: number;
}

/** Limits of a rule set that stand in for those of the one asked for; null where it sets none or the user entered his own. */
export interface LimitsTaken {
  readonly ruleSet: string;
  readonly names: readonly string[];
  readonly instead: string;
  readonly areaM2: number | null;
  readonly lengthM: number | null;
  readonly aspect: number | null;
}

/** What is to touch floor. Joinery is known by its name, the rest by its id. */
export type OffFloor =
  | 'column'
  | 'pipe'
  | 'joinery'
  | 'slab contact'
  | 'sun zone'
  | 'keep-clear area'
  | 'taken-away joint';

/** What keeps a joint where the user took one away. */
export type JointKeeper =
  | { readonly kind: 'doorway' | 'structural' | 'drawn'; readonly id: string }
  | { readonly kind: 'zone'; readonly names: readonly [string, string] };

export type FindingValues =
  // the floor
  | { readonly code: 'outline-crossing'; readonly name: string }
  | {
      readonly code: 'hole-off-room';
      readonly name: string;
      readonly areaM2: number;
      readonly isWhole: boolean;
    }
  | { readonly code: 'rooms-overlap'; readonly names: readonly [string, string]; readonly areaM2: number }
  | { readonly code: 'room-too-thin'; readonly name: string }
  | { readonly code: 'room-unreached'; readonly name: string }
  | { readonly code: 'doorway-joins-nothing'; readonly doorway: string }
  | { readonly code: 'doorway-one-room'; readonly doorway: string; readonly name: string }
  | { readonly code: 'object-off-floor'; readonly what: OffFloor; readonly id: string }
  | { readonly code: 'no-joint-stands'; readonly id: string; readonly keepers: readonly JointKeeper[] }
  | { readonly code: 'drawn-joint-loose'; readonly id: string; readonly reachMm: number }
  | { readonly code: 'joint-idle'; readonly what: 'drawn' | 'structural'; readonly id: string }
  | { readonly code: 'structural-joint-loose'; readonly id: string }
  | {
      readonly code: 'doorway-blocked';
      readonly doorway: string;
      /** Whether the floor on its two sides is one bay all the same, with an open side beside it; else something stands in it. */
      readonly isOpen: boolean;
    }
  // the bays
  | {
      readonly code: 'layout-too-many-bays';
      readonly names: readonly string[];
      readonly bays: number;
      readonly most: number;
    }
  | { readonly code: 'layout-unfinished'; readonly names: readonly string[]; readonly corners: number }
  | ({ readonly code: 'bay-area' } & Limit)
  | ({ readonly code: 'bay-length' } & Limit)
  | ({ readonly code: 'bay-aspect' } & Limit)
  | ({ readonly code: 'bay-aspect-allowance'; readonly fromM: number } & Limit)
  | ({ readonly code: 'bay-reentrant' } & Limit)
  | { readonly code: 'bay-narrow'; readonly bay: string; readonly widthMm: number; readonly leastMm: number }
  | { readonly code: 'bay-core'; readonly bay: string; readonly sideMm: number; readonly limitMm: number }
  | {
      readonly code: 'neck-unjointed';
      readonly bay: string;
      readonly widthMm: number;
      /** The clear width beside it, on the narrower side. */
      readonly besideMm: number;
      /** A neck has at most this share of the width beside it. */
      readonly limit: number;
    }
  | {
      readonly code: 'column-off-joint';
      readonly column: string;
      readonly bay: string;
      readonly sideMm: number;
      readonly limitMm: number;
    }
  | { readonly code: 'column-one-direction'; readonly column: string }
  | { readonly code: 'column-in-bay'; readonly column: string; readonly bay: string }
  | { readonly code: 'joint-through-joinery'; readonly joint: string; readonly name: string }
  | { readonly code: 'joint-through-keep-clear'; readonly joint: string; readonly area: string }
  // held places and movement
  | {
      readonly code: 'slab-contact';
      readonly name: string;
      /** Whether it is a room that has no insulation, and not a thing in one. */
      readonly isRoom: boolean;
      readonly bay: string;
      readonly areaM2: number;
      readonly cause: 'no-insulation' | 'fixed-through' | 'slab-contact';
    }
  | {
      readonly code: 'held-twice';
      readonly bay: string;
      readonly names: readonly string[];
      readonly stress: string;
      readonly stressNPerMm2: number;
      readonly strengthNPerMm2: number;
    }
  | { readonly code: 'profile-overrun'; readonly joint: string; readonly needsMm: number; readonly takesMm: number }
  | { readonly code: 'profile-worst-case'; readonly joint: string; readonly needsMm: number; readonly takesMm: number }
  | { readonly code: 'strip-overrun'; readonly edge: string; readonly needsMm: number; readonly takesMm: number }
  | { readonly code: 'strip-travel'; readonly takesMm: number; readonly leastMm: number }
  | { readonly code: 'sealant-narrow'; readonly joint: string; readonly needsMm: number; readonly widthMm: number }
  | { readonly code: 'sealant-least-width'; readonly widthMm: number; readonly leastMm: number }
  | { readonly code: 'screed-thin'; readonly thicknessMm: number; readonly leastMm: number }
  | { readonly code: 'cover-thin'; readonly coverMm: number; readonly leastMm: number }
  | {
      readonly code: 'screed-thick';
      readonly thicknessMm: number;
      readonly deadKPa: number;
      readonly allowanceKPa: number;
    }
  // what the plan leaves open
  | { readonly code: 'no-rooms' }
  | { readonly code: 'temperatures-reversed'; readonly names: readonly string[] }
  | { readonly code: 'unheated-as-plan'; readonly names: readonly string[]; readonly highestC: number }
  | { readonly code: 'screed-hot'; readonly highestC: number; readonly limitC: number }
  | ({ readonly code: 'rule-set-other-screed'; readonly screed: string } & LimitsTaken)
  | ({ readonly code: 'rule-set-other-floor'; readonly floor: string } & LimitsTaken)
  | { readonly code: 'limits-not-entered'; readonly ruleSet: string; readonly instead: string }
  | { readonly code: 'limits-from-memory'; readonly ruleSet: string }
  | { readonly code: 'limits-carried-over'; readonly names: readonly string[] }
  | { readonly code: 'tile-field-unknown-room'; readonly field: string; readonly room: string }
  | {
      readonly code: 'tile-room-twice';
      readonly field: string;
      /** The field that it belongs to. */
      readonly first: string;
      readonly name: string;
    }
  // the tiles; field: null for those of the whole floor
  | {
      readonly code: 'tile-field-covering';
      readonly field: string;
      readonly name: string;
      readonly covering: Covering;
    }
  | { readonly code: 'tile-field-empty'; readonly field: string }
  | { readonly code: 'tile-field-edge'; readonly bay: string; readonly names: readonly [string, string] }
  | { readonly code: 'tile-bond-unknown'; readonly field: string | null; readonly bond: string }
  | {
      readonly code: 'tile-grout-narrow';
      readonly field: string | null;
      readonly groutMm: number;
      readonly leastMm: number;
    }
  | {
      readonly code: 'tile-grout-wide';
      readonly field: string | null;
      readonly groutMm: number;
      /** The shorter side of the tile. */
      readonly sideMm: number;
    }
  | { readonly code: 'tile-herringbone-square'; readonly field: string | null; readonly sideMm: number }
  | {
      readonly code: 'tile-offset-large';
      readonly field: string | null;
      readonly offsetMm: number;
      readonly mostMm: number;
      readonly sideMm: number;
    }
  | { readonly code: 'tile-perimeter-narrow'; readonly stripMm: number; readonly leastMm: number }
  | {
      readonly code: 'tile-too-fine';
      readonly field: string | null;
      readonly names: readonly string[];
      readonly lengthMm: number;
      readonly widthMm: number;
    }
  | ({ readonly code: 'tile-slivers' } & NarrowCut)
  | ({ readonly code: 'tile-cuts-small' } & NarrowCut)
  | ({ readonly code: 'tile-joint-off-grout' } & JointCut)
  | ({ readonly code: 'tile-joint-across-courses' } & JointCut)
  | ({ readonly code: 'tile-standing-cut' } & JointCut)
  | { readonly code: 'not-checked'; readonly what: string; readonly missing: string };

export type FindingCode = FindingValues['code'];
