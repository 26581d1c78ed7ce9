import { type Records, recordsOf } from '../plan/papers.ts';
import { type FirstHeating, firstHeatingOf, heatingMomentText } from './first-heating.ts';
import type { PaperSource } from './paper-source.ts';
import { pourDaysGiven } from './pour-entered.ts';

/** First heating as the papers have it: where the pour is entered to end later than the day of laying, or every bay has its day and no day of laying is
 *  entered, the days are counted from the last pour, since they are never to begin early; no date is told where the last pour is not known. */
export function sourceHeating(source: PaperSource): FirstHeating {
  const records = recordsOf(source.file);
  const { laidOn, told = [], cautions = [] } = laidOf(source, records);
  const heating = firstHeatingOf(source.plan, { ...records, laidOn });
  return { ...heating, told: [...told, ...heating.told], cautions: [...cautions, ...heating.cautions] };
}

function laidOf(
  source: PaperSource,
  { laidOn }: Records,
): Pick<FirstHeating, 'laidOn'> & Partial<Pick<FirstHeating, 'told' | 'cautions'>> {
  const { days } = pourDaysGiven(source);
  const last = days.reduce<string | null>(
    (most, { date }) => (date !== null && (most === null || date > most) ? date : most),
    null,
  );
  const isAllDated =
    days.every(({ date }) => date !== null) && days.flatMap(({ bays }) => bays).length === source.analysis.bays.length;
  if (last === null || (laidOn !== null && last <= laidOn)) return { laidOn };
  if (laidOn === null)
    return isAllDated
      ? { laidOn: last, told: [`No laying date is entered: days are counted from the last day of the pour, ${last}.`] }
      : { laidOn };
  const entered = `The laying date that is entered, ${laidOn}, is before a day of the pour, ${last}`;
  return isAllDated
    ? { laidOn: last, cautions: [`${entered}, on which it ends: days are counted from the later.`] }
    : {
        laidOn: null,
        cautions: [`${entered}, and bays are poured on days without a date: enter the dates of all days.`],
      };
}

/** When heating must not begin: on the form and in the calendar. All but the days is common practice, no source. */
export function startBans({ waitDays, laidOn, days }: FirstHeating): readonly string[] {
  const [first] = days;
  const from = laidOn === null || first === undefined ? '' : `, which is before ${heatingMomentText(first)}`;
  return [
    `the screed is younger than ${waitDays} days${from}, or than the data sheet asks for`,
    'the pressure test is not signed, or a circuit holds air or has lost pressure',
    'the supply cannot be held at the wanted temperature, or no limiter is set',
    'the screed has open cracks, or edges that have lifted',
    'a joint or the edge strip is bridged by screed, mortar or plaster',
    'boards, stacks of material or coverings lie on the screed',
    'rooms are not ventilated, or stand in a draught',
  ];
}
