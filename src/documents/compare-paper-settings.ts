import { onGrid } from '../geometry/tolerance.ts';
import type { Joint } from '../plan/analysis.ts';
import { currencyShown, type JointEntry, noJointEntry, orderingOf, type PriceKey, pourOf } from '../plan/papers.ts';
import type { PlanFile } from '../plan/schema.ts';
import { changesOf, entriesOf, percentOf, type Setting, type SettingChange } from './compare-changes.ts';
import type { Pair } from './compare-match.ts';
import { keyWords } from './entry-words.ts';
import type { PaperSource } from './paper-source.ts';
import { pourDaysGiven } from './pour-entered.ts';
import { type RegisterEntries, registerEntries } from './register-entries.ts';
import { oneLine, statusNames } from './words.ts';

/** What is entered for papers, orders, pour and records, as a comparison tells it: field by field, what is a list in one line. */

type Entered = string | number | null | undefined;
type PaperSetting = Setting<PaperSource>;
type Fields<Section extends 'papers' | 'order' | 'pour' | 'records'> = Required<NonNullable<PlanFile[Section]>>;
/** @param unset of lists, which have no line where there is nothing */
type Told = readonly [words: string, unit: string | null, unset?: 'none'];

const faceNames = { plaster: 'finished wall', structure: 'bare structure', strip: 'edge strip' } as const;

const papersTold: Readonly<Record<Exclude<keyof Fields<'papers'>, 'joints' | 'revisions'>, Told>> = {
  project: ['Project', null],
  number: ['Sheet number', null],
  status: ['Status of the sheets', null],
  designer: ['Responsible designer', null],
  date: ['Day of the sheets', null],
  northDeg: ['Way to the north', '\u00b0'],
  face: ['Dimensions from', null],
  basePoints: ['Base points', 'mm', 'none'],
  gridLines: ['Grid lines', 'mm', 'none'],
  paper: ['Paper, wished', null],
  scale: ['Scale, wished', null],
};
/** What can be entered for orders: its words, on screen as well, and its unit. */
export const orderTold: Readonly<Record<Exclude<keyof Fields<'order'>, 'prices'>, Told>> = {
  stripRollM: ['Roll of edge strip', 'm'],
  stripTrimMm: ['Edge strip above the floor', 'mm'],
  stripOverlapMm: ['Overlap of edge strip', 'mm'],
  stripAllowance: ['Edge strip cut to waste', '%'],
  profileBarM: ['Bar of joint profile', 'm'],
  profileSpares: ['Spare bars', null],
  sealantAllowance: ['Sealant lost', '%'],
  cartridgeMl: ['Cartridge of sealant', 'ml'],
  perimeterShare: ['Perimeter joint filled with sealant', '%'],
  backerAllowance: ['Backer cut to waste', '%'],
  sleevesPerJoint: ['Pipes through a joint', null],
  sleeveSpares: ['Spare sleeves', null],
  screedAllowance: ['Screed lost', '%'],
  loadM3: ['Load of screed', 'm3'],
  insulationAllowance: ['Insulation cut to waste', '%'],
  insulationLayersMm: ['Layers of insulation', 'mm'],
  insulationPackM2: ['Pack of insulation', 'm2'],
  membraneLapMm: ['Lap of the membrane', 'mm'],
  membraneWidthM: ['Membrane, width', 'm'],
  membraneRollM2: ['Roll of membrane', 'm2'],
  membraneUpturnMm: ['Membrane turned up', 'mm'],
  currency: ['Currency', null],
};
/** What is priced, on screen as well. */
export const priceTold: Readonly<Record<PriceKey, string>> = {
  stripRoll: 'A roll of edge strip',
  profileBar: 'A bar of profile',
  sealantCartridge: 'A cartridge of sealant',
  backerM: 'A metre of backer',
  sleeve: 'A sleeve',
  screedM3: 'A m\u00b3 of screed',
  insulationM2: 'A m\u00b2 of insulation, a layer',
  membraneM2: 'A m\u00b2 of membrane',
  tile: 'A tile',
};
const pourTold: Readonly<Record<Exclude<keyof Fields<'pour'>, 'days'>, Told>> = {
  mostM3PerDay: ['Most screed in a day', 'm3'],
  access: ['Access for the pour', 'mm'],
};
const recordsTold: Readonly<Record<keyof Fields<'records'>, Told>> = {
  laidOn: ['Last bay laid on', null],
  dataSheetDays: ['Wait by the data sheet', 'd'],
  dataSheet: ['Data sheet', null],
  highestSupplyC: ['Highest supply', '\u00b0C'],
  testPoints: ['Test points', 'mm', 'none'],
};

type Revision = NonNullable<Fields<'papers'>['revisions']>[number];

/** A list is told row by row: what stands in it is known by its mark. */
const revisionSettings: readonly Setting<Revision>[] = [
  ['papers.revisions.date', 'Day of the revision', null, ({ date }) => date],
  ['papers.revisions.text', 'What the revision changes', null, ({ text }) => text],
  ['papers.revisions.by', 'Revision by', null, ({ by }) => by],
];

/** What is entered of a joint for the register. */
const jointSettings: readonly Setting<JointEntry>[] = [
  ['papers.joints.profile', 'Profile', null, ({ profile }) => profile],
  ['papers.joints.sealant', 'Sealant', null, ({ sealant }) => sealant],
  ['papers.joints.colour', 'Colour', null, ({ colour }) => colour],
  ['papers.joints.fixing', 'Fixing', null, ({ fixing }) => fixing],
  ['papers.joints.lock', 'Key or dowel against lipping', null, ({ lock }) => lock],
  ['papers.joints.pipes', 'Pipes through the joint', null, ({ pipes }) => pipes],
  ['papers.joints.decidedBy', 'Who decides', null, ({ decidedBy }) => decidedBy],
  ['papers.joints.suppliedBy', 'Who supplies', null, ({ suppliedBy }) => suppliedBy],
  ['papers.joints.photo', 'Photo', null, ({ photo }) => photo],
];

/** @param priceUnit what a price is in; null: not known */
const settings = (priceUnit: (key: PriceKey) => string | null): readonly PaperSetting[] => [
  ...settingsOf('papers', papersTold),
  ['papers.revisions.mark', 'Revisions', null, ({ file }) => marksOf(file), 'none'],
  ...orderSettings(priceUnit),
  ...settingsOf('pour', pourTold),
  ...settingsOf('records', recordsTold),
];

/** By the bays as they are named now, wherever the keys that are entered have followed them. */
const daysSetting: PaperSetting = ['pour.days', 'Days of the pour', null, daysText, 'none'];

/** Entries of the plan file that are told here. */
export const paperEntries: readonly string[] = [
  ...entriesOf([...settings(() => null), daysSetting]),
  ...entriesOf(revisionSettings),
  ...['papers.joints.key', ...entriesOf(jointSettings)],
];

export function paperSettings(
  before: PaperSource,
  now: PaperSource,
  joints: readonly Pair<Joint>[],
): readonly SettingChange[] {
  const [wereRevised, areRevised] = [revisionsBy(before.file), revisionsBy(now.file)];
  return [
    ...changesOf(
      null,
      settings((key) => priceCurrency(key, [before.file, now.file])),
      { before, now },
    ),
    // what was entered before, as it would stand on the floor of now: a day that has followed its bay is no change
    ...changesOf(null, [daysSetting], { before: { ...now, file: before.file }, now }),
    ...[...areRevised].flatMap(([key, revision]) =>
      changesOf(`Revision ${revision.mark}`, revisionSettings, { before: wereRevised.get(key), now: revision }),
    ),
    ...entryChanges(before, now, joints),
  ];
}

/** What is entered of a joint, wherever it lies now; of one that went or is not on the floor what is entered of it still. */
function entryChanges(before: PaperSource, now: PaperSource, joints: readonly Pair<Joint>[]): readonly SettingChange[] {
  const [were, are] = [registerEntries(before), registerEntries(now)];
  const entryOf = ({ joints: of }: RegisterEntries, joint: Joint | null) =>
    (joint === null ? undefined : of.get(joint.key)) ?? noJointEntry;
  const gone = new Map([...were.gone, ...are.gone].map(({ key, words }) => [key, words]));
  const goneEntry = ({ gone: of }: RegisterEntries, key: string) =>
    of.find((each) => each.key === key)?.entry ?? noJointEntry;
  return [
    ...joints.flatMap((pair) =>
      changesOf(`Joint ${(pair.now ?? pair.before)?.id ?? ''}${pair.now === null ? ' of before' : ''}`, jointSettings, {
        before: entryOf(were, pair.before),
        now: entryOf(are, pair.now),
      }),
    ),
    ...[...gone].flatMap(([key, words]) =>
      changesOf(`No joint any more: ${words}`, jointSettings, {
        before: goneEntry(were, key),
        now: goneEntry(are, key),
      }),
    ),
  ];
}

function daysText(source: PaperSource): string | null {
  const { keys } = pourDaysGiven(source);
  const ids = new Map(source.analysis.bays.map(({ key, id }) => [key, id]));
  const bayText = (key: string) => ids.get(keys.get(key) ?? key) ?? keyWords('bay', key, source);
  const days = pourOf(source.file).days.map(({ date, bays }) =>
    [date ?? 'without a date', bays.map(bayText).join(', ')].join(': '),
  );
  return days.length === 0 ? null : days.join('; ');
}

function marksOf({ papers }: PlanFile): string | undefined {
  return papers?.revisions?.map(({ mark }) => mark).join(', ');
}

/** By their marks; of several of one mark each by its number as well. */
function revisionsBy({ papers }: PlanFile): ReadonlyMap<string, Revision> {
  const counts = new Map<string, number>();
  return new Map(
    (papers?.revisions ?? []).map((revision) => {
      const count = (counts.get(revision.mark) ?? 0) + 1;
      counts.set(revision.mark, count);
      return [`${revision.mark} ${count}`, revision];
    }),
  );
}

/** As orders are worked out, so that a figure that is entered and is the usual one is no change; shares in percent, as they are entered. */
function orderSettings(priceUnit: (key: PriceKey) => string | null): readonly PaperSetting[] {
  const keys = Object.keys(orderTold) as (keyof typeof orderTold)[];
  const prices = Object.keys(priceTold) as PriceKey[];
  return [
    ...keys.map((key): PaperSetting => {
      const [words, unit] = orderTold[key];
      return [
        `order.${key}`,
        words,
        unit,
        ({ file }) => {
          const value = orderingOf(file)[key];
          if (unit === '%' && typeof value === 'number') return percentOf(value);
          return typeof value === 'object' ? value?.join(' + ') || null : value === '' ? null : value;
        },
      ];
    }),
    ...prices.map((key): PaperSetting => {
      const words = priceTold[key];
      return [
        `order.prices.${key}`,
        `Price: ${words.charAt(0).toLowerCase()}${words.slice(1)}`,
        priceUnit(key),
        ({ file }) => orderingOf(file).prices[key] ?? null,
      ];
    }),
  ];
}

/** What a price is in, in all that enter it; null: in different ones, or it is not entered in which. */
function priceCurrency(key: PriceKey, files: readonly PlanFile[]): string | null {
  const orders = files.map(orderingOf).filter(({ prices }) => prices[key] !== undefined);
  const [first = '', ...others] = new Set(orders.map(({ currency }) => oneLine(currencyShown(currency))));
  return others.length > 0 ? null : first || null;
}

function settingsOf(
  section: 'papers' | 'pour' | 'records',
  told: Readonly<Record<string, Told>>,
): readonly PaperSetting[] {
  return Object.entries(told).map(([field, [words, unit, ...unset]]): PaperSetting => {
    const value = ({ file }: PaperSource) => (file[section] as Readonly<Record<string, unknown>> | undefined)?.[field];
    const told = (source: PaperSource) => enteredText(field, value(source));
    return [`${section}.${field}`, words, unit, told, ...unset];
  });
}

/** Words of what is chosen from a few. */
const chosenWords: Readonly<Record<string, string>> = { ...statusNames, ...faceNames };

function enteredText(field: string, value: unknown): Entered {
  if (value === undefined || typeof value === 'number') return value;
  const text = flatText(value);
  return field === 'status' || field === 'face' ? (chosenWords[text] ?? text) : text;
}

/** Example: [{ name: "P1", at: [0, 5000] }] -> "P1 0, 5000" */
function flatText(value: unknown): string {
  if (Array.isArray(value)) return value.map(flatText).join(typeof value[0] === 'object' ? '; ' : ', ');
  if (typeof value === 'number') return String(onGrid(value) + 0);
  if (typeof value !== 'object' || value === null) return String(value);
  return Object.values(value).map(flatText).join(' ');
}
