import * as z from 'zod/mini';
import { dateIsEnterable, dateYears } from './calendar.ts';
import { listOf } from './schema-list.ts';
import { point } from './schema-points.ts';

/** The part of the plan file that no figure of the floor depends on: what stands on the papers, how things are ordered, in what order the bays are
 *  poured, and what the records need. `papers.ts` fills the defaults. */

export const paperStatuses = ['for-information', 'for-comment', 'for-construction'] as const;
export const setOutFaces = ['plaster', 'structure', 'strip'] as const;
export const paperSizes = ['A4', 'A3', 'A2', 'A1', 'A0'] as const;
export const paperScales = [20, 25, 50, 100, 200] as const;
export const jointLocks = ['none', 'dowels', 'key'] as const;

const words = (text: string) => z.optional(z.string().check(z.describe(text)));
const between = (least: number, most: number, text: string) =>
  z.optional(z.number().check(z.gte(least), z.lte(most), z.describe(text)));
const above = (most: number, text: string) => z.optional(z.number().check(z.gt(0), z.lte(most), z.describe(text)));
const count = (least: number, most: number, text: string) =>
  z.optional(z.number().check(z.int(), z.gte(least), z.lte(most), z.describe(text)));
const allowance = (text: string) => between(0, 1, `${text}, a share of the net`);
const price = (text: string) => between(0, 1e9, `Price ${text}`);
const list = <T extends z.core.$ZodType>(item: T) => z.optional(listOf(item));

const date = (text: string) =>
  z.optional(
    z.string().check(
      z.refine(dateIsEnterable, {
        error: `must be a day of the years ${dateYears.first} to ${dateYears.last}, such as 2027-03-01`,
      }),
      z.describe(`${text}, such as 2027-03-01`),
    ),
  );

const revision = z.strictObject({
  mark: z.string().check(z.describe('Such as A')),
  date: date('Day of the revision'),
  text: words('What was changed'),
  by: words('Who changed it'),
});

/** What is entered of one joint for the register. */
const registered = z.strictObject({
  key: z.string().check(z.minLength(1), z.describe('Key of the joint')),
  profile: words('Profile'),
  sealant: words('Sealant'),
  colour: words('Colour'),
  fixing: words('How the profile is fixed'),
  lock: z.optional(z.enum(jointLocks)),
  pipes: count(0, 1000, 'Heating pipes that cross it; each has a sleeve'),
  decidedBy: words('Who decides'),
  suppliedBy: words('Who supplies'),
  photo: words('Number of the photo'),
});

export const papersSchema = z.strictObject({
  project: words('Project'),
  number: words('Number of the sheet'),
  status: z.optional(z.enum(paperStatuses)),
  designer: words('Who is responsible for the joint plan; without one the sheets are not checked for construction'),
  date: date('Day of the sheets'),
  northDeg: between(-360, 360, 'Way to the north, clockwise from up the sheet, degrees'),
  revisions: list(revision),
  face: z.optional(z.enum(setOutFaces)),
  basePoints: list(z.strictObject({ name: words('Such as 1'), at: point('Marked on site, mm') })),
  gridLines: list(
    z.strictObject({
      name: z.string().check(z.describe('Such as A or 1')),
      from: point('One end, mm'),
      to: point('Other end, mm'),
    }),
  ),
  paper: z.optional(z.enum(paperSizes)),
  scale: z.optional(z.literal([...paperScales])),
  joints: list(registered),
});

export const orderSchema = z.strictObject({
  stripRollM: above(1000, 'Length of a roll of edge strip, m'),
  stripTrimMm: between(0, 500, 'What of the edge strip stands above the finished floor until it is trimmed, mm'),
  stripOverlapMm: between(0, 1000, 'Overlap of edge strip at its ends, mm'),
  stripAllowance: allowance('Edge strip cut to waste'),
  profileBarM: above(100, 'Length of a bar of joint profile, m'),
  profileSpares: count(0, 1000, 'Bars to spare of each profile'),
  sealantAllowance: allowance('Sealant left in tubes and tools'),
  cartridgeMl: above(100_000, 'Content of a cartridge or foil, ml'),
  perimeterShare: allowance('Perimeter joint of stone or ceramic that is filled'),
  backerAllowance: allowance('Backer cut to waste'),
  sleevesPerJoint: count(0, 1000, 'Heating pipes that cross a joint of which none are entered'),
  sleeveSpares: count(0, 10_000, 'Sleeves to spare'),
  screedAllowance: allowance('Screed lost, and where the slab is low'),
  loadM3: above(100, 'Screed of one mixer or truck load, m3'),
  insulationAllowance: allowance('Insulation cut to waste'),
  insulationLayersMm: list(
    z.number().check(z.gt(0), z.lte(1000), z.describe('Thickness of a layer, from the slab up, mm')),
  ),
  insulationPackM2: above(10_000, 'Insulation in a pack, m2'),
  membraneLapMm: between(0, 2000, 'Lap of the membrane, mm'),
  membraneWidthM: above(100, 'Width of a roll of membrane, m'),
  membraneRollM2: above(100_000, 'Membrane on a roll, m2'),
  membraneUpturnMm: between(0, 1000, 'Membrane turned up at edges, mm'),
  currency: words('Such as EUR'),
  prices: z.optional(
    z.strictObject({
      stripRoll: price('of a roll of edge strip'),
      profileBar: price('of a bar of joint profile'),
      sealantCartridge: price('of a cartridge of sealant'),
      backerM: price('of a metre of backer'),
      sleeve: price('of a sleeve'),
      screedM3: price('of a m3 of screed'),
      insulationM2: price('of a m2 of a layer of insulation'),
      membraneM2: price('of a m2 of membrane'),
      tile: price('of a tile'),
    }),
  ),
});

export const pourSchema = z.strictObject({
  mostM3PerDay: above(1e5, 'Screed that is laid in one day, m3'),
  access: z.optional(point('Where screed is brought in and the last bay is left by, mm')),
  days: list(
    z.strictObject({
      date: date('Day of the pour'),
      bays: listOf(z.string().check(z.describe('Key of a bay'))),
    }),
  ),
});

export const recordsSchema = z.strictObject({
  laidOn: date('Day on which the last bay is laid'),
  dataSheetDays: count(0, 365, 'Days to first heating by the data sheet'),
  dataSheet: words('Data sheet of the screed'),
  highestSupplyC: between(20, 90, 'Highest supply temperature that the heating is designed for, C'),
  testPoints: list(z.strictObject({ name: words('Such as 1'), at: point('Where dryness is tested, mm') })),
});
