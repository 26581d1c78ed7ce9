import type { Point } from '../geometry/point.ts';
import type { Ring } from '../geometry/ring.ts';
import type { RuleSetKey, ScreedClassKey } from './reference.ts';

/** The plan with every default filled in: what all levels above read. Lengths in mm, snapped to 0.1 mm, temperatures in C.
 *  It is made from the plan file by `planResolve`; the editor keeps and changes the file form (`PlanFile`). */
export interface Plan {
  readonly name: string;
  readonly ruleSet: RuleSetKey;
  readonly screed: Screed;
  readonly temperatures: Temperatures;
  /** null: not given, so the checks that need it read "not checked". */
  readonly heating: { readonly pipeOutsideMm: number; readonly pipeSpacingMm: number } | null;
  readonly loads: {
    readonly imposedKPa: number;
    readonly pointKN: number;
    readonly deadAllowanceKPa: number | null;
  } | null;
  readonly buildUp: BuildUp | null;
  readonly rooms: readonly Room[];
  readonly doorways: readonly Doorway[];
  readonly columns: readonly Outlined[];
  readonly pipes: readonly Pipe[];
  readonly joinery: readonly Joinery[];
  readonly slabContacts: readonly Outlined[];
  readonly structuralJoints: readonly StructuralJoint[];
  readonly sunZones: readonly SunZone[];
  readonly drawnJoints: readonly Lined[];
  readonly noJoint: readonly Lined[];
  readonly keepClear: readonly Outlined[];
  readonly jointProfile: TravelStrip;
  readonly edgeStrip: { readonly thicknessMm: number; readonly usableTravel: number };
  readonly sealant: { readonly widthMm: number; readonly capability: number };
  readonly tiles: TileGrid | null;
  readonly tileFields: readonly TileField[];
  readonly layout: LayoutWishes;
}

/** Limits of one bay. Infinity where the rule sets none. `aspect` is held only where the length passes `aspectFromM`. */
export interface BayLimits {
  readonly areaM2: number;
  readonly lengthM: number;
  readonly aspect: number;
  readonly aspectFromM: number;
  /** A true rectangle within the aspect may pass the area and the side: the other reading of EN 1264-4. Absent: it may not. */
  readonly rectangleMayPass?: true;
}

/** Which source each limit has: a key of `shared/sources.json`, or the document that the user named. */
export type LimitSources = Readonly<Record<'areaM2' | 'lengthM' | 'aspect' | 'aspectFromM', string>>;

export interface Screed {
  /** Key of `shared/screed-classes.json`, such as CT-C25-F4. */
  readonly class: ScreedClassKey;
  readonly thicknessMm: number;
  /** Linear thermal expansion, 1/K. */
  readonly expansionPerK: number;
  readonly expansionRangePerK: readonly [number, number];
  readonly elasticModulusNPerMm2: readonly [number, number];
  readonly densityKgPerM3: number;
  readonly flexuralNPerMm2: number;
  readonly compressiveNPerMm2: number;
  /** Moisture movement still to come, mm per m, both >= 0. */
  readonly shrinkageMmPerM: number;
  readonly swellingMmPerM: number;
  /** The document the user names for limits or expansion of his own. */
  readonly source: string | null;
}

export interface Temperatures {
  readonly layingC: number;
  readonly highestC: number;
  readonly lowestC: number;
  /** Of the room or ground below. */
  readonly belowC: number;
}

export interface BuildUp {
  readonly insulationMm: number;
  readonly adhesiveMm: number;
  readonly coveringMm: number;
}

export type Covering = 'stone-or-ceramic' | 'resilient' | 'timber' | 'textile' | 'none';

export interface Room {
  readonly id: string;
  readonly name: string;
  readonly outline: Ring;
  readonly holes: readonly Ring[];
  readonly heated: boolean;
  readonly zone: string | null;
  readonly covering: Covering;
  /** The plan's, with the room's own overrides applied. */
  readonly temperatures: Temperatures;
  /** Whether the highest temperature is the room's own, not the plan's. */
  readonly hasOwnHighest: boolean;
  readonly buildUp: BuildUp | null;
  /** Limits of a bay in this room by rule set, covering, heating and the plan's overrides. */
  readonly limits: BayLimits;
  readonly limitSources: LimitSources;
}

/** Whether the floor of a room lies on the slab: insulation that is not given is not none. */
export function roomIsBare({ buildUp }: Room): boolean {
  return buildUp?.insulationMm === 0;
}

/** Whether any of the floor is heated. */
export function planIsHeated({ rooms }: Pick<Plan, 'rooms'>): boolean {
  return rooms.some((room) => room.heated);
}

export interface Doorway {
  readonly id: string;
  /** The line under the closed leaf, jamb to jamb. */
  readonly line: readonly [Point, Point];
  /** Depth of the opening. */
  readonly wallMm: number;
  readonly leaf: boolean;
}

export interface Outlined {
  readonly id: string;
  readonly outline: Ring;
}

export interface Lined {
  readonly id: string;
  readonly line: readonly Point[];
}

export interface Pipe {
  readonly id: string;
  readonly centre: Point;
  readonly diameterMm: number;
}

export interface Joinery extends Outlined {
  readonly name: string;
  readonly under: 'insulated' | 'no-insulation' | 'built-off-slab';
  readonly fixedThrough: boolean;
}

export interface StructuralJoint extends Lined {
  readonly widthMm: number;
}

export interface SunZone extends Outlined {
  readonly highestC: number;
}

export interface TravelStrip {
  readonly widthMm: number;
  /** Share of the width that the foam closes, 0 to 1. */
  readonly usableTravel: number;
}

/** How tiles lie against each other: courses in line, each course shifted against the one before (by half, a third, or as entered), or at right
 *  angles in turn. */
export const tileBonds = ['straight', 'half', 'third', 'offset', 'herringbone'] as const;
export type TileBond = (typeof tileBonds)[number];

export interface TileGrid {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly groutMm: number;
  /** A corner of a tile, that of its least x and y along the grid's own axes. */
  readonly origin: Point;
  /** Turn of the grid from the sheet's axes, from x towards y: clockwise on the sheet. */
  readonly angleDeg: number;
  readonly bond: TileBond;
  /** How far each course is shifted against the one before, mm; 0 where the courses are in line, and in a herringbone. */
  readonly shiftMm: number;
  /** The bond as the plan file has it, where it is none that is known and the tiles are taken as straight; else null. */
  readonly unknownBond: string | null;
  /** Tiles to order beyond those laid, as a share. */
  readonly allowance: number;
  readonly tilesPerBox: number | null;
}

export interface TileField extends TileGrid {
  readonly id: string;
  readonly rooms: readonly string[];
}

export interface LayoutWishes {
  readonly aim: 'least-joint' | 'even-bays' | 'grout-lines';
  /** A pocket of a bay deeper than this is a re-entrant corner, mm. */
  readonly reentrantMm: number;
  /** A column or core whose longer side exceeds this needs a joint, mm. */
  readonly columnMm: number;
  /** A passage at most this share of the width on both sides is a neck; 0 switches the rule off. */
  readonly neckRatio: number;
}
