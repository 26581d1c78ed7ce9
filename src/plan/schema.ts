import * as z from 'zod/mini';
import type { Point } from '../geometry/point.ts';
import type { Ring } from '../geometry/ring.ts';
import { ruleSetKeys, screedClassKeys } from './reference.ts';
import { listOf } from './schema-list.ts';
import { orderSchema, papersSchema, pourSchema, recordsSchema } from './schema-papers.ts';
import { point, pointList } from './schema-points.ts';
import { FARTHEST_MM } from './snap.ts';

/** The plan file as people write it: only `format`, `version`, `name` and `rooms` are required, the rest takes the rule set's default.
 *  mm, C, x to the right, y down. `shared/plan.schema.json` is generated from this file. */

// Without this the library probes for `new Function`, which a strict content security policy reports as a violation.
z.config({ jitless: true });

export const PLAN_FORMAT = 'screed-bays/plan';
export const PLAN_VERSION = 1;
export const coverings = ['stone-or-ceramic', 'resilient', 'timber', 'textile', 'none'] as const;

const atLeast = (least: number, most: number, text: string) =>
  z.optional(z.number().check(z.gte(least), z.lte(most), z.describe(text)));
const above = (least: number, most: number, text: string) =>
  z.optional(z.number().check(z.gt(least), z.lte(most), z.describe(text)));
const celsius = (text: string) => atLeast(-100, 1000, `${text}, C`);
const share = (text: string) => atLeast(0, 1, `${text}, 0 to 1`);
const width = (text: string) => above(0, FARTHEST_MM, `${text}, mm`);
const length = (text: string) => atLeast(0, FARTHEST_MM, `${text}, mm`);
const flag = (text: string) => z.optional(z.boolean().check(z.describe(text)));
const list = <T extends z.core.$ZodType>(item: T) => z.optional(listOf(item));

const id = z.string().check(z.minLength(1), z.describe('Used once in the whole plan'));
const name = z.optional(z.string());
const ring = pointList<Ring>({
  least: 3,
  distinct: 3,
  text: 'Corners, mm, in either direction, not closed by a repeat',
});
const polyline = pointList<readonly Point[]>({ least: 2, distinct: 1, text: 'Points of the line, mm' });
const segment = pointList<readonly [Point, Point]>({ least: 2, most: 2, distinct: 1, text: 'Two points, mm' });

const temperatures = z.optional(
  z.strictObject({
    layingC: celsius('At laying'),
    highestC: celsius('Highest of the screed, first heating included'),
    lowestC: celsius('Lowest of the screed'),
    belowC: celsius('Of the room or ground below'),
  }),
);

const buildUp = z.optional(
  z.strictObject({
    insulationMm: length('Insulation below the screed; 0: the floor lies on the slab'),
    adhesiveMm: length('Adhesive or bedding'),
    coveringMm: length('Covering'),
  }),
);

const screed = z.strictObject({
  class: z.optional(z.enum(screedClassKeys)),
  thicknessMm: width('Nominal thickness, pipe included'),
  limits: z.optional(
    z.strictObject({
      areaM2: above(0, 1e8, 'Largest bay, m2'),
      lengthM: above(0, 1e4, 'Longest side, m'),
      aspect: atLeast(1, 1e4, 'Length to width'),
      aspectFromM: atLeast(0, 1e4, 'Bays up to this length are not held to length to width, m; 0 holds all'),
    }),
  ),
  expansionPerK: atLeast(0, 1e-3, 'Linear thermal expansion, 1/K'),
  shrinkageMmPerM: atLeast(0, 100, 'Moisture movement still to come that opens joints, mm/m'),
  swellingMmPerM: atLeast(0, 100, 'Moisture movement still to come that closes joints, mm/m'),
  source: z.optional(z.string().check(z.describe('The document behind limits and expansion'))),
});

const room = z.strictObject({
  id,
  name,
  outline: ring,
  holes: list(ring),
  heated: flag('True where left out'),
  zone: z.optional(z.string().check(z.describe('Rooms with different zones are heated apart'))),
  covering: z.optional(z.enum(coverings)),
  temperatures,
  buildUp,
});

const doorway = z.strictObject({
  id,
  line: segment,
  wallMm: length('Depth of the opening'),
  leaf: flag('False: arch, sliding or pocket door. True where left out'),
});

const joinery = z.strictObject({
  id,
  name,
  outline: ring,
  under: z.optional(z.enum(['insulated', 'no-insulation', 'built-off-slab'])),
  fixedThrough: flag('Bolted through the screed to the slab'),
});

const outlined = z.strictObject({ id, outline: ring });
const lined = z.strictObject({ id, line: polyline });

const tileSizes = {
  lengthMm: z.number().check(z.gt(0), z.lte(FARTHEST_MM), z.describe('Length of a tile, mm')),
  widthMm: z.number().check(z.gt(0), z.lte(FARTHEST_MM), z.describe('Width of a tile, mm')),
  groutMm: length('Grout line'),
  origin: z.optional(point('A corner of the grid, mm')),
  angleDeg: atLeast(-1e6, 1e6, 'Turn of the grid, degrees'),
  bond: z.optional(z.string().check(z.describe('straight, half, third, offset or herringbone'))),
  offsetMm: length('Shift of each course against the one before, where the bond is offset'),
  allowance: share('Tiles to order beyond those laid, as a share'),
  tilesPerBox: z.optional(z.number().check(z.int(), z.gte(1), z.lte(10_000), z.describe('Tiles in a box'))),
};

export const planFileSchema = z.strictObject({
  format: z.literal(PLAN_FORMAT),
  version: z.literal(PLAN_VERSION),
  name: z.string(),
  ruleSet: z.optional(z.enum(ruleSetKeys)),
  screed: z.optional(screed),
  temperatures,
  heating: z.optional(
    z.strictObject({ pipeOutsideMm: width('Outside diameter of the pipe'), pipeSpacingMm: width('Pipe spacing') }),
  ),
  loads: z.optional(
    z.strictObject({
      imposedKPa: z.number().check(z.gte(0), z.lte(1e4), z.describe('Imposed load, kN/m2')),
      pointKN: atLeast(0, 1e4, 'Point load, kN'),
      deadAllowanceKPa: atLeast(0, 1e4, 'Dead load that the slab was designed for, kN/m2'),
    }),
  ),
  buildUp,
  rooms: listOf(room),
  doorways: list(doorway),
  columns: list(outlined),
  pipes: list(
    z.strictObject({ id, centre: point('Centre, mm'), diameterMm: z.number().check(z.gt(0), z.lte(FARTHEST_MM)) }),
  ),
  joinery: list(joinery),
  slabContacts: list(outlined),
  structuralJoints: list(z.strictObject({ id, line: polyline, widthMm: length('Width of the joint') })),
  sunZones: list(
    z.strictObject({
      id,
      outline: ring,
      highestC: z.number().check(z.gte(-100), z.lte(1000), z.describe('In the sun, C')),
    }),
  ),
  drawnJoints: list(lined),
  noJoint: list(lined),
  keepClear: list(outlined),
  jointProfile: z.optional(
    z.strictObject({ widthMm: width('Width in the screed'), usableTravel: share('Share that it closes') }),
  ),
  edgeStrip: z.optional(
    z.strictObject({ thicknessMm: width('Thickness'), usableTravel: share('Share that it closes') }),
  ),
  sealant: z.optional(
    z.strictObject({
      widthMm: width('Width of the line'),
      capability: above(0, 1, 'Movement as a share of the width, 0 to 1'),
    }),
  ),
  tiles: z.optional(z.strictObject(tileSizes)),
  tileFields: list(z.strictObject({ id, rooms: listOf(z.string()), ...tileSizes })),
  layout: z.optional(
    z.strictObject({
      aim: z.optional(z.enum(['least-joint', 'even-bays', 'grout-lines'])),
      reentrantMm: length('A pocket deeper than this is a re-entrant corner'),
      columnMm: length('A column or core with a longer side needs a joint'),
      neckRatio: share('A passage this narrow against both sides is a neck; 0 switches it off'),
    }),
  ),
  papers: z.optional(papersSchema),
  order: z.optional(orderSchema),
  pour: z.optional(pourSchema),
  records: z.optional(recordsSchema),
});

type DeepReadonly<T> = T extends object ? { readonly [K in keyof T]: DeepReadonly<T[K]> } : T;

export type PlanFile = DeepReadonly<z.infer<typeof planFileSchema>>;
