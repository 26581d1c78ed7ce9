import type { Analysis, Bay, Joint } from '../plan/analysis.ts';
import { namesText, naturalOrder } from '../plan/figure-words.ts';
import { type Ordering, orderingOf, type Pour, pourOf } from '../plan/papers.ts';
import type { Plan } from '../plan/plan.ts';
import { type PaperSource, perSource } from './paper-source.ts';
import { pointCautionTexts } from './point-cautions.ts';
import { type FloorExit, pourApartWords, pourExit } from './pour-days.ts';
import { pourDaysGiven, pourHeldM3, pourM3, pourNetM3, pourVolumeCautions } from './pour-entered.ts';
import { floorWays, lotOrder, lotTaken } from './pour-order.ts';

/** Which bays are laid on which day. No bay is ever divided: every stop of work lies on a movement joint. */
export interface PourPlan {
  readonly exit: FloorExit | null;
  readonly lots: readonly PourLot[];
  /** What the plan rests on, and what of the entered days could not be taken. */
  readonly told: readonly string[];
}

export interface PourLot {
  /** From 1. */
  readonly day: number;
  /** Null: not entered. */
  readonly date: string | null;
  /** In the order in which they are laid. */
  readonly bays: readonly Bay[];
  /** Ids. */
  readonly rooms: readonly string[];
  readonly areaM2: number;
  readonly netM3: number;
  readonly netKg: number;
  /** With the allowance. */
  readonly orderM3: number;
  /** Of mixer or truck. */
  readonly loads: number;
  readonly dams: readonly PourDam[];
  /** Ids of bays that are reached over fresh screed only. */
  readonly sealed: readonly string[];
  readonly cautions: readonly string[];
}

/** A joint at which the work stops: between a bay of the lot and one that is laid later. */
export interface PourDam {
  readonly joint: string;
  readonly lengthM: number;
  readonly laid: string;
  readonly later: string;
}

interface Context {
  readonly plan: Plan;
  readonly pour: Pour;
  readonly order: Ordering;
  readonly bays: ReadonlyMap<string, Bay>;
  readonly joints: ReadonlyMap<string, readonly Joint[]>;
}

/** The lots of the days that are entered, in their order; then the bays that no day names, as many a day as may be laid in one.
 *  Example: bays of 5, 5 and 4 m3 in a row from the access, 12 m3 a day with 5 % allowance -> the two farthest, then the one at the access */
export const pourPlanOf = perSource(pourPlanMade);

function pourPlanMade(source: PaperSource): PourPlan {
  const { plan, analysis, file } = source;
  const exit = pourExit(source);
  if (exit === null) return { exit, lots: [], told: ['There is no bay to lay.'] };
  const bays = new Map(analysis.bays.map((bay) => [bay.id, bay]));
  const context: Context = {
    plan,
    pour: pourOf(file),
    order: orderingOf(file),
    bays,
    joints: jointsByBay(analysis),
  };
  const floor = floorWays(analysis, exit);
  const given = pourDaysGiven(source);
  const left = new Set(bays.keys());
  const lots: PourLot[] = [];
  const lay = (date: string | null, ids: readonly string[]) => {
    const lot = lotOrder(floor, ids, left);
    for (const id of ids) left.delete(id);
    lots.push(lotOf({ day: lots.length + 1, date, ...lot, left }, context));
  };
  for (const { date, bays: ids } of given.days) lay(date, ids);
  const unnamed = left.size;
  const share = (ids: readonly string[]) => laidM3(ids, context) / context.pour.mostM3PerDay;
  while (left.size > 0)
    lay(null, lotTaken(floor, { left, before: lots.at(-1)?.bays.map(({ id }) => id) ?? [], share }));
  return {
    exit,
    lots,
    told: [
      exit.words,
      ...pointCautionTexts(source, { kind: 'access', most: 1 }),
      ...pourApartWords(floor),
      ...given.told,
      ...(given.days.length > 0 && unnamed > 0
        ? [
            `${unnamed} ${unnamed === 1 ? 'bay that no day names follows' : 'bays that no day names follow'} after the entered days.`,
          ]
        : []),
    ],
  };
}

interface Lot {
  readonly day: number;
  readonly date: string | null;
  readonly bays: readonly string[];
  readonly sealed: readonly string[];
  /** Laid on a later day. */
  readonly left: ReadonlySet<string>;
}

function lotOf({ day, date, bays: ids, sealed, left }: Lot, context: Context): PourLot {
  const { plan, order } = context;
  const bays = ids.flatMap((id) => context.bays.get(id) ?? []);
  const areaM2 = bays.reduce((sum, bay) => sum + bay.areaM2, 0);
  const netM3 = pourNetM3(areaM2, plan);
  const orderM3 = laidM3(ids, context);
  return {
    day,
    date,
    bays,
    rooms: [...new Set(bays.flatMap(({ rooms }) => rooms))],
    areaM2,
    netM3,
    netKg: netM3 * plan.screed.densityKgPerM3,
    orderM3,
    loads: Math.ceil(pourHeldM3(orderM3 / order.loadM3)),
    dams: damsOf(ids, left, context),
    sealed,
    cautions: [...pourVolumeCautions(bays, orderM3, context.pour), ...sealedCautions(sealed)],
  };
}

function damsOf(lot: readonly string[], left: ReadonlySet<string>, { joints }: Context): readonly PourDam[] {
  return lot
    .flatMap((laid) =>
      (joints.get(laid) ?? []).flatMap(({ id, lengthM, bays: [one, other] }): PourDam[] => {
        const later = one === laid ? other : one;
        return left.has(later) ? [{ joint: id, lengthM, laid, later }] : [];
      }),
    )
    .sort((a, b) => naturalOrder(a.joint, b.joint));
}

function jointsByBay({ joints }: Analysis): ReadonlyMap<string, readonly Joint[]> {
  const byBay = new Map<string, Joint[]>();
  for (const joint of joints)
    for (const id of joint.bays) {
      const own = byBay.get(id);
      if (own === undefined) byBay.set(id, [joint]);
      else own.push(joint);
    }
  return byBay;
}

function sealedCautions(sealed: readonly string[]): readonly string[] {
  if (sealed.length === 0) return [];
  const verb = sealed.length === 1 ? 'is' : 'are';
  return [
    `${namesText(sealed)} ${verb} reached over fresh screed only: lay ${sealed.length === 1 ? 'it' : 'them'} earlier, or by another way.`,
  ];
}

function laidM3(ids: readonly string[], { plan, order, bays }: Context): number {
  return pourM3(
    ids.flatMap((id) => bays.get(id) ?? []),
    { plan, order },
  );
}
