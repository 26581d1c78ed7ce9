import type { Plan, TileGrid } from '../plan/plan.ts';
import type { PlanFile } from '../plan/schema.ts';
import { changesOf, entriesOf, percentOf, type Setting, type SettingChange } from './compare-changes.ts';
import type { Pair } from './compare-match.ts';
import { pointText } from './compare-places.ts';
import type { PaperSource } from './paper-source.ts';
import { bondNames, tileSizeText } from './tile-words.ts';
import { namesOf, oneLine } from './words.ts';

/** Tiles with what the plan file has of them: of the shift it holds what is entered, which another bond takes up. */
interface Tiles {
  readonly grid: TileGrid;
  readonly file: NonNullable<PlanFile['tiles']> | undefined;
  /** Names of the rooms; empty: all others. */
  readonly rooms: string;
}

const tileSettings: readonly Setting<Tiles>[] = [
  ['lengthMm', 'Length of the tiles', 'mm', ({ grid }) => grid.lengthMm],
  ['widthMm', 'Width of the tiles', 'mm', ({ grid }) => grid.widthMm],
  ['groutMm', 'Grout', 'mm', ({ grid }) => grid.groutMm],
  ['bond', 'Bond', null, ({ grid }) => bondText(grid)],
  ['offsetMm', 'Shift of each course, entered', 'mm', ({ file }) => file?.offsetMm],
  ['origin', 'Set-out point of the tiles', 'mm', ({ grid }) => pointText(grid.origin)],
  ['angleDeg', 'Turn of the tiles', '\u00b0', ({ grid }) => grid.angleDeg],
  ['allowance', 'Tiles to order beyond those laid', '%', ({ grid }) => percentOf(grid.allowance)],
  ['tilesPerBox', 'Tiles in a box', null, ({ grid }) => grid.tilesPerBox],
];

const fieldSettings: readonly Setting<Tiles>[] = [
  ['rooms', 'Rooms of the tile field', null, ({ rooms }) => rooms, 'none'],
  ...tileSettings,
];

/** Entries of the plan file that are told here. */
export const tileEntries: readonly string[] = [
  ...entriesOf(tileSettings).map((entry) => `tiles.${entry}`),
  ...['id', ...entriesOf(fieldSettings)].map((entry) => `tileFields.${entry}`),
];

/** Tiles of the floor and of its fields that came, went or lie otherwise. A field is known by its rooms; where they are others, by its id. */
export function tileChanges(
  before: PaperSource,
  now: PaperSource,
  rooms: readonly Pair<Plan['rooms'][number]>[],
): readonly SettingChange[] {
  const floor = { before: floorTiles(before), now: floorTiles(now) };
  const newIds = new Map(rooms.flatMap((pair) => (pair.before && pair.now ? [[pair.before.id, pair.now.id]] : [])));
  const names = [namesOf(before.plan, before.analysis), namesOf(now.plan, now.analysis)] as const;
  const nowRooms = new Set(now.plan.rooms.map(({ id }) => id));
  const nowName = (id: string | undefined) => (id !== undefined && nowRooms.has(id) ? names[1].room(id) : null);
  const beforeName = (id: string) => names[0].room(id);
  return [
    ...laidChanges(null, 'Tiles', floor),
    ...changesOf(null, tileSettings, floor),
    ...fieldPairs(before, now, newIds).flatMap((pair) => {
      const of = `Field ${oneLine(pair.now?.id ?? pair.before?.id ?? '')}`;
      const field = {
        before: fieldTiles(before, pair.before, (id) => nowName(newIds.get(id)) ?? beforeName(id)),
        now: fieldTiles(now, pair.now, (id) => nowName(id) ?? id),
      };
      return [...laidChanges(of, 'Tile field', field), ...changesOf(of, fieldSettings, field)];
    }),
  ];
}

/** Tiles that came or went. Example: "600 × 300 mm, grout 3 mm, half bond; Hall, Bath" */
function laidChanges(of: string | null, words: string, { before, now }: Pair<Tiles>): readonly SettingChange[] {
  if ((before === null) === (now === null)) return [];
  const text = (tiles: Tiles | null) => {
    if (tiles === null) return null;
    const laid = `${tileSizeText(tiles.grid)}, ${bondText(tiles.grid)}`;
    return tiles.rooms === '' ? laid : `${laid}; ${tiles.rooms}`;
  };
  return [{ of, words, unit: null, before: text(before), now: text(now), unset: 'none' }];
}

function bondText({ bond, unknownBond }: TileGrid): string {
  return unknownBond === null
    ? bondNames[bond]
    : `${bondNames[bond]}, since \u201c${oneLine(unknownBond)}\u201d is none`;
}

function floorTiles({ plan, file }: PaperSource): Tiles | null {
  return plan.tiles && { grid: plan.tiles, file: file.tiles, rooms: '' };
}

type Field = Plan['tileFields'][number];

/** A room that is named twice is tiled once, and in which order rooms are named is nothing to the tiles.
 *  @param nameOf a room, as it is called now: what it is called otherwise is told of the room */
function fieldTiles({ file }: PaperSource, field: Field | null, nameOf: (room: string) => string): Tiles | null {
  if (field === null) return null;
  return {
    grid: field,
    file: file.tileFields?.find(({ id }) => id === field.id),
    rooms: [...new Set(field.rooms.map(nameOf))].sort().join(', '),
  };
}

function fieldPairs(
  { plan: before }: PaperSource,
  { plan: now }: PaperSource,
  newIds: ReadonlyMap<string, string>,
): readonly Pair<Field>[] {
  const roomsText = (ids: readonly string[]) => [...new Set(ids)].sort().join('\n');
  const partners = new Map<Field, Field>();
  const isLeft = (field: Field) => ![...partners.values()].includes(field);
  const found = (field: Field) =>
    before.tileFields.find(
      (each) => isLeft(each) && roomsText(each.rooms.map((id) => newIds.get(id) ?? id)) === roomsText(field.rooms),
    );
  const known = (field: Field) => before.tileFields.find((each) => isLeft(each) && each.id === field.id);
  for (const partnerOf of [found, known]) {
    for (const field of now.tileFields.filter((each) => !partners.has(each))) {
      const partner = partnerOf(field);
      if (partner !== undefined) partners.set(field, partner);
    }
  }
  return [
    ...now.tileFields.map((field) => ({ before: partners.get(field) ?? null, now: field })),
    ...before.tileFields.filter(isLeft).map((field) => ({ before: field, now: null })),
  ];
}
