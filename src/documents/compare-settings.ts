import type { Plan } from '../plan/plan.ts';
import type { PlanFile } from '../plan/schema.ts';
import type { Pair } from './compare-match.ts';
import { paperSettings } from './compare-paper-settings.ts';
import { doorwayNames } from './doorway-places.ts';
import type { PaperSource } from './paper-source.ts';
import { ruleSetName } from './sheet-content.ts';
import { bondNames, tileSizeText } from './tile-words.ts';
import { oneLine } from './words.ts';

/** A setting of the plan, a room or a doorway that is another now, or a thing that came or went. */
export interface SettingChange {
  /** Name of the room, the doorway or the thing; null: of the whole plan. */
  readonly of: string | null;
  readonly words: string;
  readonly unit: string | null;
  /** Null: `unset` says what that is. */
  readonly before: SettingValue;
  readonly now: SettingValue;
  readonly unset: Unset;
}

/** What it means that there is no value: an entry that is open, a thing that is not there, or a room that takes what the plan has. */
type Unset = 'not entered' | 'none' | 'as the plan';

export type SettingValue = string | number | null;

/** @param unset not entered, where it is left out */
type Setting<T> = readonly [
  words: string,
  unit: string | null,
  value: (of: T) => SettingValue | undefined,
  unset?: Unset,
];

const planSettings: readonly Setting<PaperSource>[] = [
  ['Name', null, ({ plan }) => plan.name],
  ['Rule set', null, ({ plan }) => ruleSetName(plan.ruleSet)],
  ['Screed', null, ({ plan }) => plan.screed.class],
  ['Thickness of the screed', 'mm', ({ plan }) => plan.screed.thicknessMm],
  ['Expansion of the screed', '1e-6/K', ({ plan }) => Number((plan.screed.expansionPerK * 1e6).toFixed(6))],
  ['Shrinkage still to come', 'mm/m', ({ plan }) => plan.screed.shrinkageMmPerM],
  ['Swelling still to come', 'mm/m', ({ plan }) => plan.screed.swellingMmPerM],
  ['Document behind limits and expansion', null, ({ plan }) => plan.screed.source],
  ['Largest bay, entered', 'm2', ({ file }) => file.screed?.limits?.areaM2],
  ['Longest side, entered', 'm', ({ file }) => file.screed?.limits?.lengthM],
  ['Length to width, entered', null, ({ file }) => file.screed?.limits?.aspect],
  ['Length to width held from, entered', 'm', ({ file }) => file.screed?.limits?.aspectFromM],
  ['Temperature at laying', '\u00b0C', ({ plan }) => plan.temperatures.layingC],
  ['Highest temperature', '\u00b0C', ({ plan }) => plan.temperatures.highestC],
  ['Lowest temperature', '\u00b0C', ({ plan }) => plan.temperatures.lowestC],
  ['Temperature below', '\u00b0C', ({ plan }) => plan.temperatures.belowC],
  ['Outside diameter of the pipes', 'mm', ({ plan }) => plan.heating?.pipeOutsideMm],
  ['Spacing of the pipes', 'mm', ({ plan }) => plan.heating?.pipeSpacingMm],
  ['Imposed load', 'kN/m2', ({ plan }) => plan.loads?.imposedKPa],
  ['Point load', 'kN', ({ plan }) => plan.loads?.pointKN],
  ['Dead load allowed for', 'kN/m2', ({ plan }) => plan.loads?.deadAllowanceKPa],
  ['Insulation', 'mm', ({ plan }) => plan.buildUp?.insulationMm],
  ['Adhesive', 'mm', ({ plan }) => plan.buildUp?.adhesiveMm],
  ['Covering', 'mm', ({ plan }) => plan.buildUp?.coveringMm],
  ['Joint profile', 'mm', ({ plan }) => plan.jointProfile.widthMm],
  ['Share that the joint profile closes', null, ({ plan }) => plan.jointProfile.usableTravel],
  ['Edge strip', 'mm', ({ plan }) => plan.edgeStrip.thicknessMm],
  ['Share that the edge strip closes', null, ({ plan }) => plan.edgeStrip.usableTravel],
  ['Sealant', 'mm', ({ plan }) => plan.sealant.widthMm],
  ['Movement that the sealant takes, of its width', null, ({ plan }) => plan.sealant.capability],
  ['Tiles', null, ({ plan: { tiles } }) => tiles && `${tileSizeText(tiles)}, ${bondNames[tiles.bond]}`, 'none'],
  ['Tile fields', null, ({ plan }) => plan.tileFields.length],
  ['Layout goes for', null, ({ plan }) => aimNames[plan.layout.aim]],
  ['Depth of a re-entrant corner', 'mm', ({ plan }) => plan.layout.reentrantMm],
  ['Side of a column that needs a joint', 'mm', ({ plan }) => plan.layout.columnMm],
  ['Share of the width that makes a neck', null, ({ plan }) => plan.layout.neckRatio],
];

const aimNames: Readonly<Record<Plan['layout']['aim'], string>> = {
  'least-joint': 'the least joint',
  'even-bays': 'even bays',
  'grout-lines': 'grout lines',
};

type RoomFile = PlanFile['rooms'][number];

/** What a room has of its own: what it takes from the plan is told there. */
const roomSettings: readonly Setting<RoomFile>[] = [
  ['Name', null, ({ name }) => name],
  ['Heated', null, ({ heated }) => (heated === false ? 'no' : 'yes')],
  ['Heating zone', null, ({ zone }) => zone, 'none'],
  ['Covering', null, ({ covering }) => covering ?? 'stone-or-ceramic'],
  ['Temperature at laying, its own', '\u00b0C', ({ temperatures }) => temperatures?.layingC, 'as the plan'],
  ['Highest temperature, its own', '\u00b0C', ({ temperatures }) => temperatures?.highestC, 'as the plan'],
  ['Lowest temperature, its own', '\u00b0C', ({ temperatures }) => temperatures?.lowestC, 'as the plan'],
  ['Temperature below, its own', '\u00b0C', ({ temperatures }) => temperatures?.belowC, 'as the plan'],
  ['Insulation, its own', 'mm', ({ buildUp }) => buildUp?.insulationMm, 'as the plan'],
  ['Adhesive, its own', 'mm', ({ buildUp }) => buildUp?.adhesiveMm, 'as the plan'],
  ['Thickness of the covering, its own', 'mm', ({ buildUp }) => buildUp?.coveringMm, 'as the plan'],
];

const doorwaySettings: readonly Setting<Plan['doorways'][number]>[] = [
  ['Depth of the opening', 'mm', ({ wallMm }) => wallMm],
  ['Leaf', null, ({ leaf }) => (leaf ? 'yes' : 'no')],
];

export function settingChanges(
  before: PaperSource,
  now: PaperSource,
  rooms: readonly Pair<Plan['rooms'][number]>[],
): readonly SettingChange[] {
  const roomFile = ({ file }: PaperSource, id: string | undefined) => file.rooms.find((room) => room.id === id);
  const doorways = new Map(now.plan.doorways.map((doorway) => [doorway.id, doorway]));
  const names = doorwayNames(now);
  return [
    ...changesOf(null, [...planSettings, ...paperSettings], before, now),
    ...rooms.flatMap((pair) =>
      changesOf(pair.now?.name ?? null, roomSettings, roomFile(before, pair.before?.id), roomFile(now, pair.now?.id)),
    ),
    ...before.plan.doorways.flatMap((doorway) =>
      changesOf(names.get(doorway.id) ?? null, doorwaySettings, doorway, doorways.get(doorway.id)),
    ),
  ];
}

/** What is in one version alone has no settings that changed: that it came or went is told elsewhere. */
function changesOf<T>(
  of: string | null,
  settings: readonly Setting<T>[],
  before: T | undefined,
  now: T | undefined,
): readonly SettingChange[] {
  if (before === undefined || now === undefined) return [];
  return settings.flatMap(([words, unit, value, unset = 'not entered']): SettingChange[] => {
    const [earlier, later] = [shown(value(before)), shown(value(now))];
    return earlier === later ? [] : [{ of: of && oneLine(of), words, unit, before: earlier, now: later, unset }];
  });
}

function shown(value: SettingValue | undefined): SettingValue {
  return typeof value === 'string' ? oneLine(value) || null : (value ?? null);
}
