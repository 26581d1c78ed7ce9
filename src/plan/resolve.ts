import { limitSourcesOf, limitsOf } from './limits.ts';
import {
  type BuildUp,
  type Covering,
  type Doorway,
  type Joinery,
  type Plan,
  type Room,
  type Screed,
  type Temperatures,
  type TileGrid,
  tileBonds,
} from './plan.ts';
import {
  type DefaultKey,
  defaultRuleSet,
  defaultScreedClass,
  defaults,
  type Figure,
  screedClasses,
  screedTypeOf,
} from './reference.ts';
import type { PlanFile } from './schema.ts';
import { ringWelded } from './snap.ts';
import { tileAllowanceKey } from './tile-allowance.ts';
import { tiledFields } from './tile-grid.ts';

const of = (key: DefaultKey): number => defaults[key].value;

type RoomFile = PlanFile['rooms'][number];

/** Fills every default of a plan file from the reference data and welds its rings: what all levels above read.
 *  Loads, heating, build-up and tiles stay null where the file has none, so that the checks that need them read "not checked". */
export function planResolve(file: PlanFile): Plan {
  const plan: Plan = {
    name: file.name,
    ruleSet: file.ruleSet ?? defaultRuleSet,
    screed: screedOf(file),
    temperatures: temperaturesOf(file.temperatures),
    heating: file.heating
      ? { pipeOutsideMm: of('pipeOutsideMm'), pipeSpacingMm: of('pipeSpacingMm'), ...given(file.heating) }
      : null,
    loads: loadsOf(file),
    buildUp: buildUpOf(file.buildUp),
    rooms: file.rooms.map((room) => roomOf(file, room)),
    ...objectsOf(file),
    ...stripsOf(file),
    tiles: file.tiles ? tileGridOf(file.tiles) : null,
    tileFields: (file.tileFields ?? []).map((field) => ({ id: field.id, rooms: field.rooms, ...tileGridOf(field) })),
    layout: {
      aim: 'least-joint',
      reentrantMm: of('reentrantMm'),
      columnMm: of('columnMm'),
      neckRatio: of('neckRatio'),
      ...given(file.layout),
    },
  };
  return withAllowances(plan, file);
}

type Given<T> = { [K in keyof T]-?: Exclude<T[K], undefined> };

/** The fields that have a value: an edit may leave one behind as undefined. */
function given<T extends object>(fields: T | undefined): Partial<Given<T>> {
  const entries = Object.entries(fields ?? {}).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries) as Partial<Given<T>>;
}

function screedOf(file: PlanFile): Screed {
  const { screed } = file;
  const key = screed?.class ?? defaultScreedClass;
  const type = screedTypeOf(key);
  const own = screed?.expansionPerK;
  return {
    class: key,
    thicknessMm: screed?.thicknessMm ?? of('thicknessMm'),
    expansionPerK: own ?? type.expansion.value,
    expansionRangePerK: own === undefined ? rangeOf(type.expansion) : [own, own],
    elasticModulusNPerMm2: rangeOf(type.elasticModulus),
    densityKgPerM3: type.density.value,
    flexuralNPerMm2: screedClasses[key].flexural.value,
    compressiveNPerMm2: screedClasses[key].compressive.value,
    shrinkageMmPerM: screed?.shrinkageMmPerM ?? of('shrinkageMmPerM'),
    swellingMmPerM: screed?.swellingMmPerM ?? of('swellingMmPerM'),
    source: screed?.source ?? null,
  };
}

/** Least and greatest; twice the value where one figure was seen. */
function rangeOf(figure: Figure): readonly [number, number] {
  return [figure.range?.[0] ?? figure.value, figure.range?.[1] ?? figure.value];
}

function temperaturesOf(own: PlanFile['temperatures'], over?: RoomFile['temperatures']): Temperatures {
  const start = { layingC: of('layingC'), highestC: of('highestC'), lowestC: of('lowestC'), belowC: of('belowC') };
  return { ...start, ...given(own), ...given(over) };
}

function buildUpOf(own: PlanFile['buildUp'], over?: RoomFile['buildUp']): BuildUp | null {
  const entered = { ...given(own), ...given(over) };
  if (own === undefined && Object.keys(entered).length === 0) return null;
  const start = { insulationMm: of('insulationMm'), adhesiveMm: of('adhesiveMm'), coveringMm: of('coveringMm') };
  return { ...start, ...entered };
}

function loadsOf({ loads }: PlanFile): Plan['loads'] {
  if (loads === undefined) return null;
  return {
    imposedKPa: loads.imposedKPa,
    pointKN: loads.pointKN ?? of('pointKN'),
    deadAllowanceKPa: loads.deadAllowanceKPa ?? null,
  };
}

function roomOf(file: PlanFile, room: RoomFile): Room {
  const heated = room.heated ?? true;
  const covering: Covering = room.covering ?? 'stone-or-ceramic';
  return {
    id: room.id,
    name: nameOf(room),
    outline: ringWelded(room.outline),
    holes: (room.holes ?? []).map(ringWelded),
    heated,
    zone: room.zone ?? null,
    covering,
    temperatures: temperaturesOf(file.temperatures, room.temperatures),
    hasOwnHighest: room.temperatures?.highestC !== undefined,
    buildUp: buildUpOf(file.buildUp, room.buildUp),
    limits: limitsOf(file, heated, covering),
    limitSources: limitSourcesOf(file, heated, covering),
  };
}

/** What people call it; the id where it has no name, or one of which nothing would be seen. */
function nameOf({ id, name }: { readonly id: string; readonly name?: string | undefined }): string {
  return name !== undefined && /[^\s\p{Cc}]/u.test(name) ? name : id;
}

/** What stands on the floor, runs through it, lies on it or is drawn by hand. */
export type PlanObjects = Pick<
  Plan,
  | 'doorways'
  | 'columns'
  | 'pipes'
  | 'joinery'
  | 'slabContacts'
  | 'structuralJoints'
  | 'sunZones'
  | 'drawnJoints'
  | 'noJoint'
  | 'keepClear'
>;

function objectsOf(file: PlanFile): PlanObjects {
  return {
    doorways: (file.doorways ?? []).map(
      ({ id, line, wallMm, leaf }): Doorway => ({
        id,
        line,
        wallMm: wallMm ?? of('doorwayWallMm'),
        leaf: leaf ?? true,
      }),
    ),
    columns: (file.columns ?? []).map(welded),
    pipes: file.pipes ?? [],
    joinery: (file.joinery ?? []).map(joineryOf),
    slabContacts: (file.slabContacts ?? []).map(welded),
    structuralJoints: (file.structuralJoints ?? []).map(({ id, line, widthMm }) => ({
      id,
      line,
      widthMm: widthMm ?? of('structuralJointMm'),
    })),
    sunZones: (file.sunZones ?? []).map(welded),
    drawnJoints: file.drawnJoints ?? [],
    noJoint: file.noJoint ?? [],
    keepClear: (file.keepClear ?? []).map(welded),
  };
}

function welded<T extends { readonly outline: Room['outline'] }>(object: T): T {
  return { ...object, outline: ringWelded(object.outline) };
}

function joineryOf(joinery: NonNullable<PlanFile['joinery']>[number]): Joinery {
  return {
    id: joinery.id,
    name: nameOf(joinery),
    outline: ringWelded(joinery.outline),
    under: joinery.under ?? 'insulated',
    fixedThrough: joinery.fixedThrough ?? false,
  };
}

function stripsOf(file: PlanFile): Pick<Plan, 'jointProfile' | 'edgeStrip' | 'sealant'> {
  return {
    jointProfile: { widthMm: of('profileWidthMm'), usableTravel: of('profileTravel'), ...given(file.jointProfile) },
    edgeStrip: { thicknessMm: of('stripThicknessMm'), usableTravel: of('stripTravel'), ...given(file.edgeStrip) },
    sealant: { widthMm: of('sealantWidthMm'), capability: of('sealantCapability'), ...given(file.sealant) },
  };
}

type TilesFile = NonNullable<PlanFile['tiles']>;

function tileGridOf(tiles: TilesFile): TileGrid {
  const bond = tileBonds.find((each) => each === (tiles.bond ?? 'straight'));
  const grid = {
    lengthMm: tiles.lengthMm,
    widthMm: tiles.widthMm,
    groutMm: tiles.groutMm ?? of('groutMm'),
    origin: tiles.origin ?? ([0, 0] as const),
    angleDeg: tiles.angleDeg ?? 0,
    bond: bond ?? 'straight',
    unknownBond: bond === undefined ? (tiles.bond ?? null) : null,
  };
  return {
    ...grid,
    shiftMm: shiftOf(grid, tiles.offsetMm),
    allowance: tiles.allowance ?? of(tileAllowanceKey(grid, [])),
    tilesPerBox: tiles.tilesPerBox ?? null,
  };
}

function shiftOf({ bond, lengthMm, groutMm }: Omit<TileGrid, 'shiftMm' | 'allowance' | 'tilesPerBox'>, own?: number) {
  const moduleMm = lengthMm + groutMm;
  switch (bond) {
    case 'half':
      return moduleMm / 2;
    case 'third':
      return moduleMm / 3;
    case 'offset':
      return (own ?? moduleMm * of('tileOffsetShare')) % moduleMm;
    case 'straight':
    case 'herringbone':
      return 0;
  }
}

/** The usual allowances by how tiles lie in the rooms of their fields, where none is entered. */
function withAllowances(plan: Plan, { tiles, tileFields = [] }: PlanFile): Plan {
  const own = new Map<string | null, number | undefined>(tileFields.map(({ id, allowance }) => [id, allowance]));
  own.set(null, tiles?.allowance);
  const usual = new Map(
    tiledFields(plan).flatMap(({ id, grid, rooms }) =>
      own.get(id) === undefined ? [[id, of(tileAllowanceKey(grid, rooms))] as const] : [],
    ),
  );
  const allowed = <T extends TileGrid>(grid: T, id: string | null): T => ({
    ...grid,
    allowance: usual.get(id) ?? grid.allowance,
  });
  return {
    ...plan,
    tiles: plan.tiles && allowed(plan.tiles, null),
    tileFields: plan.tileFields.map((field) => allowed(field, field.id)),
  };
}
