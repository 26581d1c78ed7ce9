import type { PlanFile } from '../plan/schema.ts';
import type { PaperSource } from './paper-source.ts';
import { statusNames } from './words.ts';

/** What is entered for papers, orders, pour and records, as a comparison tells it: field by field, what is a list in one line. */

type Entered = string | number | null | undefined;
type PaperSetting = readonly [words: string, unit: string | null, value: (of: PaperSource) => Entered];
type Fields<Section extends 'papers' | 'order' | 'pour' | 'records'> = Required<NonNullable<PlanFile[Section]>>;
type Told = readonly [words: string, unit: string | null];

const faceNames = { plaster: 'finished wall', structure: 'bare structure', strip: 'edge strip' } as const;

const papersTold: Readonly<Record<Exclude<keyof Fields<'papers'>, 'joints' | 'revisions'>, Told>> = {
  project: ['Project', null],
  number: ['Sheet number', null],
  status: ['Status of the sheets', null],
  designer: ['Responsible designer', null],
  date: ['Day of the sheets', null],
  northDeg: ['Way to the north', '\u00b0'],
  face: ['Dimensions from', null],
  basePoints: ['Base points', null],
  gridLines: ['Grid lines', null],
  paper: ['Paper, wished', null],
  scale: ['Scale, wished', null],
};
/** What can be entered for orders: its words, on screen as well, and its unit. */
export const orderTold: Readonly<Record<keyof Fields<'order'>, Told>> = {
  stripRollM: ['Roll of edge strip', 'm'],
  stripTrimMm: ['Edge strip above the floor', 'mm'],
  stripOverlapMm: ['Overlap of edge strip', 'mm'],
  stripAllowance: ['Edge strip cut to waste', 'share'],
  profileBarM: ['Bar of joint profile', 'm'],
  profileSpares: ['Spare bars', null],
  sealantAllowance: ['Sealant lost', 'share'],
  cartridgeMl: ['Cartridge of sealant', 'ml'],
  perimeterShare: ['Perimeter joint filled with sealant', 'share'],
  backerAllowance: ['Backer cut to waste', 'share'],
  sleevesPerJoint: ['Pipes through a joint', null],
  sleeveSpares: ['Spare sleeves', null],
  screedAllowance: ['Screed lost', 'share'],
  loadM3: ['Load of screed', 'm3'],
  insulationAllowance: ['Insulation cut to waste', 'share'],
  insulationLayersMm: ['Layers of insulation', 'mm'],
  insulationPackM2: ['Pack of insulation', 'm2'],
  membraneLapMm: ['Lap of the membrane', 'mm'],
  membraneWidthM: ['Membrane, width', 'm'],
  membraneRollM2: ['Roll of membrane', 'm2'],
  membraneUpturnMm: ['Membrane turned up', 'mm'],
  currency: ['Currency', null],
  prices: ['Prices', null],
};
const pourTold: Readonly<Record<keyof Fields<'pour'>, Told>> = {
  mostM3PerDay: ['Most screed in a day', 'm3'],
  access: ['Access for the pour', null],
  days: ['Days of the pour', null],
};
const recordsTold: Readonly<Record<keyof Fields<'records'>, Told>> = {
  laidOn: ['Last bay laid on', null],
  dataSheetDays: ['Wait by the data sheet', 'd'],
  dataSheet: ['Data sheet', null],
  highestSupplyC: ['Highest supply', '\u00b0C'],
  testPoints: ['Test points', null],
};

export const paperSettings: readonly PaperSetting[] = [
  ...settingsOf('papers', papersTold),
  ['Revisions', null, ({ file }) => file.papers?.revisions?.map(({ mark }) => mark).join(', ')],
  ['Notes on joints', null, ({ file }) => file.papers?.joints?.map((note) => Object.values(note).join(' ')).join('; ')],
  ...settingsOf('order', orderTold),
  ...settingsOf('pour', pourTold),
  ...settingsOf('records', recordsTold),
];

function settingsOf(
  section: 'papers' | 'order' | 'pour' | 'records',
  told: Readonly<Record<string, Told>>,
): readonly PaperSetting[] {
  return Object.entries(told).map(([field, [words, unit]]): PaperSetting => {
    const value = ({ file }: PaperSource) => (file[section] as Readonly<Record<string, unknown>> | undefined)?.[field];
    return [words, unit, (source) => enteredText(field, value(source))];
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
