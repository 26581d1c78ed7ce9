import { dateLater } from '../plan/calendar.ts';
import { roundedText } from '../plan/figure-words.ts';
import { heatingSteps, type Records, secondStart } from '../plan/papers.ts';
import { type Plan, planIsHeated } from '../plan/plan.ts';
import { type Figure, type ScreedType, screedTypeOf } from '../plan/reference.ts';
import { sourceStanding, sourceWhere } from './source-words.ts';
import { heldSpace, oneLine } from './words.ts';

/** When a heated screed is first warmed, and how. It holds no day for covering: only a dryness test releases a floor. */
export interface FirstHeating {
  /** Null: not entered, and all days are counted from the laying. */
  readonly laidOn: string | null;
  /** From the laying to the earliest first heating: the later of standard and data sheet. */
  readonly waitDays: number;
  /** Day by day. */
  readonly days: readonly HeatingDay[];
  /** The first day after the last step, on which the floor cools down: no release. */
  readonly after: HeatingMoment;
  /** Dry enough to cover: measured, never reckoned. */
  readonly dryness: Figure;
  /** What the dates rest on. */
  readonly told: readonly string[];
  readonly cautions: readonly string[];
  /** Where the figures come from. */
  readonly sources: readonly string[];
}

/** @remarks the laying is day 0 */
export interface HeatingMoment {
  readonly day: number;
  readonly date: string | null;
}

export interface HeatingDay extends HeatingMoment {
  /** From 1. */
  readonly step: number;
  readonly words: string;
  readonly leastC: number;
  readonly mostC: number;
}

/** The earliest first heating is so many days after laying as the standard asks of the type of screed (EN 1264-4: 21 cement, 7 calcium sulfate), or as
 *  the data sheet does where that is later. Example: cement laid on 2027-03-01, no data sheet -> from 2027-03-22 on three days at 20 to 25 C,
 *  from 2027-03-25 on four days at the highest supply. */
export function firstHeatingOf(plan: Plan, records: Records): FirstHeating {
  const type = screedTypeOf(plan.screed.class);
  const { laidOn } = records;
  const waitDays = Math.max(type.firstHeating.value, records.dataSheetDays ?? 0);
  const moment = (day: number): HeatingMoment => ({ day, date: laidOn === null ? null : dateLater(laidOn, day) });
  const supplyC = highestSupply(plan, records);
  const mostC = Math.min(supplyC, type.highest.value);
  const days: HeatingDay[] = [];
  for (const [i, { words, days: length, supplyC: wanted }] of heatingSteps.entries()) {
    const [leastC, highC] = wanted === null ? [mostC, mostC] : (wanted.range ?? [wanted.value, wanted.value]);
    for (let day = 0; day < length.value; day++) {
      days.push({
        ...moment(waitDays + days.length),
        step: i + 1,
        words,
        leastC: Math.min(leastC ?? mostC, mostC),
        mostC: Math.min(highC ?? mostC, mostC),
      });
    }
  }
  return {
    laidOn,
    waitDays,
    days,
    after: moment(waitDays + days.length),
    dryness: type.dryness,
    told: toldOf(plan, records, type),
    cautions: supplyC > mostC ? [tooHotText(supplyC, type.highest)] : [],
    sources: [type.firstHeating, ...heatingSteps.map((step) => step.days), type.highest, type.dryness, secondStart]
      .map(({ source }) => sourceText(source))
      .filter((text, i, all) => all.indexOf(text) === i),
  };
}

/** Example: "20 to 25 \u00b0C" */
export function heatingSupplyText({ leastC, mostC }: Pick<HeatingDay, 'leastC' | 'mostC'>): string {
  return leastC === mostC ? celsius(mostC) : `${roundedText(leastC, 1)} to ${celsius(mostC)}`;
}

/** Example: "2027-03-22", or "day 21" where the laying date is not known */
export function heatingMomentText({ day, date }: HeatingMoment): string {
  return date ?? `day ${day}`;
}

/** What releases the floor, and what does not. */
export function drynessText({ value }: Figure, plan: Plan): string {
  const heating = planIsHeated(plan) ? ', nor does the end of the first heating' : '';
  return `No date releases the floor for covering${heating}: only a dryness test at the marked points does, at most ${roundedText(value, 2)} CM-%.`;
}

function highestSupply({ temperatures }: Plan, { highestSupplyC }: Records): number {
  return highestSupplyC ?? temperatures.highestC;
}

function toldOf(plan: Plan, records: Records, type: ScreedType): readonly string[] {
  const { screed } = plan;
  return [
    ...(records.laidOn === null
      ? ['The day on which the last bay is laid is not known: days are counted from it, as day 0.']
      : []),
    waitText(records, type),
    `The screed is ${screed.class}, ${roundedText(screed.thicknessMm, 1)}${heldSpace}mm thick. The wait holds for any thickness: a thicker screed dries more slowly, and none makes the wait shorter.`,
    ...(records.highestSupplyC === null
      ? [
          `The highest supply temperature of the design is not entered: the plan\u2019s highest temperature, ${celsius(plan.temperatures.highestC)}, stands in for it.`,
        ]
      : []),
    drynessText(type.dryness, plan),
    `After tiling the heating starts again when the maker of the adhesive allows it, and then gets at most ${roundedText(secondStart.value, 1)}${heldSpace}K warmer a day.`,
  ];
}

function waitText({ dataSheetDays, dataSheet }: Records, { name, firstHeating }: ScreedType): string {
  const standard = firstHeating.value;
  const sheet = oneLine(dataSheet) === '' ? 'The data sheet' : `The data sheet (${oneLine(dataSheet)})`;
  const wait = `${name} is first heated ${dayCount(standard)} after laying at the earliest`;
  if (dataSheetDays === null)
    return `${wait}. No days of the data sheet are entered: where it asks for more, it holds.`;
  if (dataSheetDays > standard)
    return `${wait}. ${sheet} asks for ${dayCount(dataSheetDays)}, which is later and holds.`;
  if (dataSheetDays === standard) return `${wait}. ${sheet} asks for the same.`;
  return `${wait}. ${sheet} allows ${dayCount(dataSheetDays)}: the standard\u2019s ${dayCount(standard)} are later and hold.`;
}

function tooHotText(supplyC: number, highest: Figure): string {
  return `The highest supply temperature, ${celsius(supplyC)}, passes the ${celsius(highest.value)} that this screed bears next to the pipes. The days ask for no more than ${celsius(highest.value)}; the designer of the heating decides.`;
}

function sourceText(key: string): string {
  return `${sourceWhere(key)} (${sourceStanding(key)})`;
}

function dayCount(days: number): string {
  return `${days} ${days === 1 ? 'day' : 'days'}`;
}

function celsius(value: number): string {
  return `${roundedText(value, 1)}${heldSpace}\u00b0C`;
}
