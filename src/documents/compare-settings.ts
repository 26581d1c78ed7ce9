import type { Joint } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import type { PlanFile } from '../plan/schema.ts';
import { changesOf, entriesOf, type Setting, type SettingChange } from './compare-changes.ts';
import type { Pair } from './compare-match.ts';
import { paperEntries, paperSettings } from './compare-paper-settings.ts';
import { thingChanges, thingEntries } from './compare-things.ts';
import { tileChanges, tileEntries } from './compare-tiles.ts';
import { untoldChanges } from './compare-untold.ts';
import type { PaperSource } from './paper-source.ts';
import { ruleSetName } from './sheet-content.ts';

/** All that is entered or drawn otherwise in one of two versions. */

const planSettings: readonly Setting<PaperSource>[] = [
  ['name', 'Name', null, ({ plan }) => plan.name],
  ['ruleSet', 'Rule set', null, ({ plan }) => ruleSetName(plan.ruleSet)],
  ['screed.class', 'Screed', null, ({ plan }) => plan.screed.class],
  ['screed.thicknessMm', 'Thickness of the screed', 'mm', ({ plan }) => plan.screed.thicknessMm],
  [
    'screed.expansionPerK',
    'Expansion of the screed',
    '1e-6/K',
    ({ plan }) => Number((plan.screed.expansionPerK * 1e6).toFixed(6)),
  ],
  ['screed.shrinkageMmPerM', 'Shrinkage still to come', 'mm/m', ({ plan }) => plan.screed.shrinkageMmPerM],
  ['screed.swellingMmPerM', 'Swelling still to come', 'mm/m', ({ plan }) => plan.screed.swellingMmPerM],
  ['screed.source', 'Document behind limits and expansion', null, ({ plan }) => plan.screed.source],
  ['screed.limits.areaM2', 'Largest bay, entered', 'm2', ({ file }) => file.screed?.limits?.areaM2],
  ['screed.limits.lengthM', 'Longest side, entered', 'm', ({ file }) => file.screed?.limits?.lengthM],
  ['screed.limits.aspect', 'Length to width, entered', null, ({ file }) => file.screed?.limits?.aspect],
  [
    'screed.limits.aspectFromM',
    'Length to width held from, entered',
    'm',
    ({ file }) => file.screed?.limits?.aspectFromM,
  ],
  ['temperatures.layingC', 'Temperature at laying', '\u00b0C', ({ plan }) => plan.temperatures.layingC],
  ['temperatures.highestC', 'Highest temperature', '\u00b0C', ({ plan }) => plan.temperatures.highestC],
  ['temperatures.lowestC', 'Lowest temperature', '\u00b0C', ({ plan }) => plan.temperatures.lowestC],
  ['temperatures.belowC', 'Temperature below', '\u00b0C', ({ plan }) => plan.temperatures.belowC],
  ['heating.pipeOutsideMm', 'Outside diameter of the pipes', 'mm', ({ plan }) => plan.heating?.pipeOutsideMm],
  ['heating.pipeSpacingMm', 'Spacing of the pipes', 'mm', ({ plan }) => plan.heating?.pipeSpacingMm],
  ['loads.imposedKPa', 'Imposed load', 'kN/m2', ({ plan }) => plan.loads?.imposedKPa],
  ['loads.pointKN', 'Point load', 'kN', ({ plan }) => plan.loads?.pointKN],
  ['loads.deadAllowanceKPa', 'Dead load allowed for', 'kN/m2', ({ plan }) => plan.loads?.deadAllowanceKPa],
  ['buildUp.insulationMm', 'Insulation', 'mm', ({ plan }) => plan.buildUp?.insulationMm],
  ['buildUp.adhesiveMm', 'Adhesive', 'mm', ({ plan }) => plan.buildUp?.adhesiveMm],
  ['buildUp.coveringMm', 'Covering', 'mm', ({ plan }) => plan.buildUp?.coveringMm],
  ['jointProfile.widthMm', 'Joint profile', 'mm', ({ plan }) => plan.jointProfile.widthMm],
  [
    'jointProfile.usableTravel',
    'Share that the joint profile closes',
    null,
    ({ plan }) => plan.jointProfile.usableTravel,
  ],
  ['edgeStrip.thicknessMm', 'Edge strip', 'mm', ({ plan }) => plan.edgeStrip.thicknessMm],
  ['edgeStrip.usableTravel', 'Share that the edge strip closes', null, ({ plan }) => plan.edgeStrip.usableTravel],
  ['sealant.widthMm', 'Sealant', 'mm', ({ plan }) => plan.sealant.widthMm],
  ['sealant.capability', 'Movement that the sealant takes, of its width', null, ({ plan }) => plan.sealant.capability],
  ['layout.aim', 'Layout goes for', null, ({ plan }) => aimNames[plan.layout.aim]],
  ['layout.reentrantMm', 'Depth of a re-entrant corner', 'mm', ({ plan }) => plan.layout.reentrantMm],
  ['layout.columnMm', 'Side of a column that needs a joint', 'mm', ({ plan }) => plan.layout.columnMm],
  ['layout.neckRatio', 'Share of the width that makes a neck', null, ({ plan }) => plan.layout.neckRatio],
];

const aimNames: Readonly<Record<Plan['layout']['aim'], string>> = {
  'least-joint': 'the least joint',
  'even-bays': 'even bays',
  'grout-lines': 'grout lines',
};

type RoomFile = PlanFile['rooms'][number];

/** What a room has of its own: what it takes from the plan is told there. */
const roomSettings: readonly Setting<RoomFile>[] = [
  ['rooms.name', 'Name', null, ({ name }) => name],
  ['rooms.heated', 'Heated', null, ({ heated }) => (heated === false ? 'no' : 'yes')],
  ['rooms.zone', 'Heating zone', null, ({ zone }) => zone, 'none'],
  ['rooms.covering', 'Covering', null, ({ covering }) => covering ?? 'stone-or-ceramic'],
  [
    'rooms.temperatures.layingC',
    'Temperature at laying, its own',
    '\u00b0C',
    ({ temperatures }) => temperatures?.layingC,
    'as the plan',
  ],
  [
    'rooms.temperatures.highestC',
    'Highest temperature, its own',
    '\u00b0C',
    ({ temperatures }) => temperatures?.highestC,
    'as the plan',
  ],
  [
    'rooms.temperatures.lowestC',
    'Lowest temperature, its own',
    '\u00b0C',
    ({ temperatures }) => temperatures?.lowestC,
    'as the plan',
  ],
  [
    'rooms.temperatures.belowC',
    'Temperature below, its own',
    '\u00b0C',
    ({ temperatures }) => temperatures?.belowC,
    'as the plan',
  ],
  ['rooms.buildUp.insulationMm', 'Insulation, its own', 'mm', ({ buildUp }) => buildUp?.insulationMm, 'as the plan'],
  ['rooms.buildUp.adhesiveMm', 'Adhesive, its own', 'mm', ({ buildUp }) => buildUp?.adhesiveMm, 'as the plan'],
  [
    'rooms.buildUp.coveringMm',
    'Thickness of the covering, its own',
    'mm',
    ({ buildUp }) => buildUp?.coveringMm,
    'as the plan',
  ],
];

/** Of no meaning to the floor: what a file says of itself. */
const silentEntries = ['format', 'version'];

/** Entries of the plan file that have rows of their own. */
export const entriesTold: ReadonlySet<string> = new Set([
  ...silentEntries,
  ...entriesOf(planSettings),
  ...paperEntries,
  ...entriesOf(roomSettings),
  ...thingEntries,
  ...tileEntries,
]);

export function settingChanges(
  before: PaperSource,
  now: PaperSource,
  {
    rooms,
    joints,
  }: { readonly rooms: readonly Pair<Plan['rooms'][number]>[]; readonly joints: readonly Pair<Joint>[] },
): readonly SettingChange[] {
  const roomFile = ({ file }: PaperSource, id: string | undefined) => file.rooms.find((room) => room.id === id);
  return [
    ...changesOf(null, planSettings, { before, now }),
    ...paperSettings(before, now, joints),
    ...rooms.flatMap((pair) =>
      changesOf(pair.now?.name ?? null, roomSettings, {
        before: roomFile(before, pair.before?.id),
        now: roomFile(now, pair.now?.id),
      }),
    ),
    ...thingChanges(before, now, rooms),
    ...tileChanges(before, now, rooms),
    ...untoldChanges(before.file, now.file, entriesTold),
  ];
}
