import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';

/** A plan file as a value, as far as the test floors write it. */
export interface PlanJson {
  readonly format: 'screed-bays/plan';
  readonly version: 1;
  readonly name: string;
  readonly rooms: readonly RoomJson[];
  readonly ruleSet?: string;
  readonly screed?: {
    readonly class?: string;
    readonly thicknessMm?: number;
    readonly limits?: LimitsJson;
    readonly expansionPerK?: number;
    readonly shrinkageMmPerM?: number;
    readonly swellingMmPerM?: number;
    readonly source?: string;
  };
  readonly temperatures?: TemperaturesJson;
  readonly doorways?: readonly {
    readonly id: string;
    readonly line: readonly [Point, Point];
    readonly wallMm: number;
    readonly leaf: boolean;
  }[];
  readonly columns?: readonly OutlinedJson[];
  readonly pipes?: readonly { readonly id: string; readonly centre: Point; readonly diameterMm: number }[];
  readonly joinery?: readonly (OutlinedJson & {
    readonly name: string;
    readonly under: 'insulated' | 'no-insulation' | 'built-off-slab';
    readonly fixedThrough: boolean;
  })[];
  readonly slabContacts?: readonly OutlinedJson[];
  readonly structuralJoints?: readonly (LinedJson & { readonly widthMm: number })[];
  readonly sunZones?: readonly (OutlinedJson & { readonly highestC: number })[];
  readonly drawnJoints?: readonly LinedJson[];
  readonly noJoint?: readonly LinedJson[];
  readonly keepClear?: readonly OutlinedJson[];
  readonly jointProfile?: { readonly widthMm: number; readonly usableTravel: number };
  readonly edgeStrip?: { readonly thicknessMm: number; readonly usableTravel: number };
  readonly sealant?: { readonly widthMm: number; readonly capability: number };
  readonly tiles?: TilesJson;
  readonly tileFields?: readonly (TilesJson & { readonly id: string; readonly rooms: readonly string[] })[];
  readonly layout?: {
    readonly aim?: 'least-joint' | 'even-bays' | 'grout-lines';
    readonly reentrantMm?: number;
    readonly columnMm?: number;
    readonly neckRatio?: number;
  };
}

export interface TilesJson {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly groutMm?: number;
  readonly origin?: Point;
  readonly angleDeg?: number;
  readonly bond?: string;
  readonly offsetMm?: number;
  readonly allowance?: number;
  readonly tilesPerBox?: number;
}

export interface RoomJson {
  readonly id: string;
  readonly name: string;
  readonly outline: Ring;
  readonly holes?: readonly Ring[];
  readonly heated?: boolean;
  readonly zone?: string;
  readonly temperatures?: TemperaturesJson;
  readonly buildUp?: { readonly insulationMm?: number };
}

export interface TemperaturesJson {
  readonly layingC?: number;
  readonly highestC?: number;
  readonly lowestC?: number;
  readonly belowC?: number;
}

export interface LimitsJson {
  readonly areaM2: number;
  readonly lengthM: number;
  readonly aspect: number;
  readonly aspectFromM?: number;
}

interface OutlinedJson {
  readonly id: string;
  readonly outline: Ring;
}

interface LinedJson {
  readonly id: string;
  readonly line: readonly Point[];
}

/** A plan of one room or several, everything else left to the defaults. */
export function planJson(name: string, rooms: readonly RoomJson[], rest: Partial<PlanJson> = {}): PlanJson {
  return { format: 'screed-bays/plan', version: 1, name, rooms, ...rest };
}

export function box(x: number, y: number, width: number, depth: number): Ring {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + depth],
    [x, y + depth],
  ];
}
