import firstHeatingJson from '../../shared/first-heating.json' with { type: 'json' };
import orderStartsJson from '../../shared/order-starts.json' with { type: 'json' };
import type { Point } from '../geometry/point.ts';
import { FIGURE_SLACK_MM } from '../geometry/tolerance.ts';
import type { Figure } from './reference.ts';
import type { PlanFile } from './schema.ts';
import type { jointLocks, paperScales, paperSizes, paperStatuses, setOutFaces } from './schema-papers.ts';

/** What papers, orders and records need of a plan file, with every default filled in. Apart from `resolve.ts`: neither the analysis nor the first
 *  view of the editor has need of it. */

export type PaperStatus = (typeof paperStatuses)[number];
/** What dimensions are taken from: the finished wall as drawn, the bare structure, or the face of the edge strip. */
export type SetOutFace = (typeof setOutFaces)[number];
export type PaperSize = (typeof paperSizes)[number];
export type PaperScale = (typeof paperScales)[number];
export type JointLock = (typeof jointLocks)[number];
export type OrderStartKey = keyof typeof orderStartsJson.starts;
export type PriceKey = keyof NonNullable<NonNullable<PlanFile['order']>['prices']>;

/** What an order starts with where the plan says nothing. */
export const orderStarts: Readonly<Record<OrderStartKey, Figure>> = orderStartsJson.starts;
/** How exactly joints are set out. */
export const setOutTolerance: Figure = orderStartsJson.setOutToleranceMm;
/** Two base points are to be at least so far apart. */
export const leastBase: Figure = orderStartsJson.leastBaseMm;

export interface HeatingStep {
  readonly words: string;
  readonly days: Figure;
  /** Null: the highest supply temperature of the design. */
  readonly supplyC: Figure | null;
}
export const heatingSteps: readonly HeatingStep[] = firstHeatingJson.steps;
/** How fast a start after tiling may go, K a day. */
export const secondStart: Figure = firstHeatingJson.secondStartKPerDay;

export interface Papers {
  readonly project: string;
  readonly number: string;
  readonly status: PaperStatus;
  /** Empty: nobody is responsible, and the sheets say that they are not checked for construction. */
  readonly designer: string;
  /** Day of the sheets; null: undated. */
  readonly date: string | null;
  /** Clockwise from up the sheet; null: not known. */
  readonly northDeg: number | null;
  readonly revisions: readonly Revision[];
  readonly face: SetOutFace;
  readonly basePoints: readonly NamedPoint[];
  readonly gridLines: readonly GridLine[];
  /** Null: the smallest sheet and largest scale that serve. */
  readonly paper: PaperSize | null;
  readonly scale: PaperScale | null;
  /** What is entered of joints, by their keys. */
  readonly joints: ReadonlyMap<string, JointEntry>;
}

export interface Revision {
  readonly mark: string;
  readonly date: string;
  readonly text: string;
  readonly by: string;
}

export interface NamedPoint {
  readonly name: string;
  readonly at: Point;
}

/** A line of the building's grid. */
export interface GridLine {
  readonly name: string;
  readonly from: Point;
  readonly to: Point;
}

/** What is entered of one joint; empty where nothing is. */
export interface JointEntry {
  readonly profile: string;
  readonly sealant: string;
  readonly colour: string;
  readonly fixing: string;
  /** Against lipping; null: not decided. */
  readonly lock: JointLock | null;
  /** Heating pipes that cross it; null: not entered. */
  readonly pipes: number | null;
  readonly decidedBy: string;
  readonly suppliedBy: string;
  readonly photo: string;
}

/** Packs, allowances and spares. Shares are of the net. */
export interface Ordering extends Readonly<Record<Exclude<OrderStartKey, 'mostM3PerDay'>, number>> {
  /** Null: not sold by the pack. */
  readonly insulationPackM2: number | null;
  /** From the slab up; empty: one layer, as thick as the insulation of the room. */
  readonly insulationLayersMm: readonly number[];
  readonly currency: string;
  readonly prices: Readonly<Partial<Record<PriceKey, number>>>;
}

export interface Pour {
  readonly mostM3PerDay: number;
  readonly access: Point | null;
  readonly days: readonly PourDay[];
}

export interface PourDay {
  readonly date: string | null;
  /** Keys of bays. */
  readonly bays: readonly string[];
}

export interface Records {
  readonly laidOn: string | null;
  readonly dataSheetDays: number | null;
  readonly dataSheet: string;
  readonly highestSupplyC: number | null;
  readonly testPoints: readonly NamedPoint[];
}

export const noJointEntry: JointEntry = {
  profile: '',
  sealant: '',
  colour: '',
  fixing: '',
  lock: null,
  pipes: null,
  decidedBy: '',
  suppliedBy: '',
  photo: '',
};

export function papersOf({ papers = {} }: PlanFile): Papers {
  return {
    project: papers.project ?? '',
    number: papers.number ?? '',
    status: papers.status ?? 'for-information',
    designer: (papers.designer ?? '').trim(),
    date: papers.date ?? null,
    northDeg: papers.northDeg ?? null,
    revisions: (papers.revisions ?? []).map(({ mark, date = '', text = '', by = '' }) => ({ mark, date, text, by })),
    face: papers.face ?? 'plaster',
    basePoints: named(papers.basePoints),
    gridLines: papers.gridLines ?? [],
    paper: papers.paper ?? null,
    scale: papers.scale ?? null,
    joints: jointEntries(papers.joints),
  };
}

/** Entries of one joint are taken together, field by field: the later goes before the earlier. */
function jointEntries(entries: NonNullable<PlanFile['papers']>['joints'] = []): Papers['joints'] {
  const joints = new Map<string, JointEntry>();
  for (const { key, ...entry } of entries) joints.set(key, { ...(joints.get(key) ?? noJointEntry), ...given(entry) });
  return joints;
}

export function orderingOf({ order = {} }: PlanFile): Ordering {
  const keys = Object.keys(orderStarts).filter((key) => key !== 'mostM3PerDay') as Exclude<
    OrderStartKey,
    'mostM3PerDay'
  >[];
  const figures = Object.fromEntries(keys.map((key) => [key, order[key] ?? orderStarts[key].value])) as Record<
    (typeof keys)[number],
    number
  >;
  return {
    ...figures,
    insulationPackM2: order.insulationPackM2 ?? null,
    insulationLayersMm: order.insulationLayersMm ?? [],
    currency: order.currency ?? '',
    prices: given(order.prices ?? {}),
  };
}

/** Whether layers that are entered are together as thick as the insulation, mm. */
export function layersMakeUp(layersMm: readonly number[], insulationMm: number): boolean {
  const sumMm = layersMm.reduce((sum, mm) => sum + mm, 0);
  return Math.abs(sumMm - insulationMm) <= FIGURE_SLACK_MM;
}

/** A currency is told with at most so many letters. */
export const currencyLetters = 8;

/** A currency as it is told beside figures: one that is too long, as a file may have it, is cut. Example: "Dollars each" -> "Dollars…" */
export function currencyShown(currency: string): string {
  const letters = [...currency];
  return letters.length > currencyLetters ? `${letters.slice(0, currencyLetters - 1).join('')}…` : currency;
}

/** Digits that a price is told with behind the decimal mark. */
export const priceLeastDigits = 2;
export const priceMostDigits = 4;

/** Those that a price is told with: as it was typed. Example: 7.5 -> 2; 0.125 -> 3 */
export function priceDigits(price: number): number {
  let digits = priceLeastDigits;
  while (digits < priceMostDigits && Number(price.toFixed(digits)) !== price) digits++;
  return digits;
}

export function pourOf({ pour = {} }: PlanFile): Pour {
  return {
    mostM3PerDay: pour.mostM3PerDay ?? orderStarts.mostM3PerDay.value,
    access: pour.access ?? null,
    days: (pour.days ?? []).map(({ date, bays }) => ({ date: date ?? null, bays })),
  };
}

export function recordsOf({ records = {} }: PlanFile): Records {
  return {
    laidOn: records.laidOn ?? null,
    dataSheetDays: records.dataSheetDays ?? null,
    dataSheet: records.dataSheet ?? '',
    highestSupplyC: records.highestSupplyC ?? null,
    testPoints: named(records.testPoints),
  };
}

/** Points by their own names, or by their numbers. */
/** A name of nothing that is seen is none: the number in the list stands for it. */
function named(
  points: readonly { readonly name?: string | undefined; readonly at: Point }[] = [],
): readonly NamedPoint[] {
  return points.map(({ name = '', at }, i) => ({ name: /^[\s\p{Cf}]*$/u.test(name) ? String(i + 1) : name, at }));
}

/** The fields that have a value: an edit may leave one behind as undefined. */
function given<T extends object>(fields: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>;
  };
}
