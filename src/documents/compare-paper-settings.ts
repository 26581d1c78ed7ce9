import { orderingOf, type PriceKey } from '../plan/papers.ts';
import type { PlanFile } from '../plan/schema.ts';
import type { PaperSource } from './paper-source.ts';
import { statusNames } from './words.ts';

/** What is entered for papers, orders, pour and records, as a comparison tells it: field by field, what is a list in one line. */

type Entered = string | number | null | undefined;
type PaperSetting = readonly [words: string, unit: string | null, value: (of: PaperSource) => Entered, unset?: 'none'];
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
  basePoints: ['Base points', null, 'none'],
  gridLines: ['Grid lines', null, 'none'],
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
const pourTold: Readonly<Record<keyof Fields<'pour'>, Told>> = {
  mostM3PerDay: ['Most screed in a day', 'm3'],
  access: ['Access for the pour', null],
  days: ['Days of the pour', null, 'none'],
};
const recordsTold: Readonly<Record<keyof Fields<'records'>, Told>> = {
  laidOn: ['Last bay laid on', null],
  dataSheetDays: ['Wait by the data sheet', 'd'],
  dataSheet: ['Data sheet', null],
  highestSupplyC: ['Highest supply', '\u00b0C'],
  testPoints: ['Test points', null, 'none'],
};

export const paperSettings: readonly PaperSetting[] = [
  ...settingsOf('papers', papersTold),
  ['Revisions', null, ({ file }) => file.papers?.revisions?.map(({ mark }) => mark).join(', '), 'none'],
  [
    'Notes on joints',
    null,
    ({ file }) => file.papers?.joints?.map((note) => Object.values(note).join(' ')).join('; '),
    'none',
  ],
  ...orderSettings(),
  ...settingsOf('pour', pourTold),
  ...settingsOf('records', recordsTold),
];

/** As orders are worked out, so that a figure that is entered and is the usual one is no change; shares in percent, as they are entered. */
function orderSettings(): readonly PaperSetting[] {
  const keys = Object.keys(orderTold) as (keyof typeof orderTold)[];
  const prices = Object.keys(priceTold) as PriceKey[];
  return [
    ...keys.map((key): PaperSetting => {
      const [words, unit] = orderTold[key];
      return [
        words,
        unit,
        ({ file }) => {
          const value = orderingOf(file)[key];
          if (unit === '%' && typeof value === 'number') return Number((100 * value).toFixed(4));
          return typeof value === 'object' ? value?.join(' + ') || null : value === '' ? null : value;
        },
      ];
    }),
    ...prices.map((key): PaperSetting => {
      const words = priceTold[key];
      return [
        `Price: ${words.charAt(0).toLowerCase()}${words.slice(1)}`,
        null,
        ({ file }) => orderingOf(file).prices[key] ?? null,
      ];
    }),
  ];
}

function settingsOf(
  section: 'papers' | 'pour' | 'records',
  told: Readonly<Record<string, Told>>,
): readonly PaperSetting[] {
  return Object.entries(told).map(([field, [words, unit, ...unset]]): PaperSetting => {
    const value = ({ file }: PaperSource) => (file[section] as Readonly<Record<string, unknown>> | undefined)?.[field];
    const told = (source: PaperSource) => enteredText(field, value(source));
    return [words, unit, told, ...unset];
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
  if (typeof value !== 'object' || value === null) return String(value);
  return Object.values(value).map(flatText).join(' ');
}
