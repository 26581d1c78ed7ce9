import type { Point } from '../../geometry/point.ts';
import { boxOf, ringArea } from '../../geometry/ring.ts';
import { SAME_LINE_MM } from '../../geometry/tolerance.ts';
import { drawingStarts } from '../reference.ts';
import { planResolve } from '../resolve.ts';
import type { PlanFile } from '../schema.ts';
import { FARTHEST_MM, pointSnapped } from '../snap.ts';
import { gridFrame, tileModule } from '../tile-grid.ts';
import { type Change, changed, changedIfNew } from './fields.ts';
import { idsFree } from './ids.ts';
import { planSectionChanged } from './settings.ts';

/** Edits of the tiles: of those of the whole floor, and of fields that some rooms have for themselves. An edit that changes nothing gives the file
 *  itself. Places in mm, snapped to 0.1 mm. */

/** Whose tiles: a tile field's by its id; null: those of the whole floor. */
export type TilesOf = string | null;

export type TilesFile = NonNullable<PlanFile['tiles']>;
type TileFieldFile = NonNullable<PlanFile['tileFields']>[number];

/** Lays tiles on the whole floor, of the usual size and set out from the least corner of the largest room that takes them. A floor that has tiles
 *  keeps them. Example: a room from [500, 200] -> { lengthMm: 600, widthMm: 600, origin: [500, 200] } */
export function tilesLaid(file: PlanFile): PlanFile {
  return file.tiles === undefined ? changed(file, { tiles: tilesAtFirst(file) }) : file;
}

function tilesAtFirst({ rooms }: PlanFile): TilesFile {
  const tiled = rooms.filter(({ covering }) => (covering ?? 'stone-or-ceramic') === 'stone-or-ceramic');
  const [largest] = [...tiled].sort((a, b) => ringArea(b.outline) - ringArea(a.outline));
  const size = { lengthMm: drawingStarts.tileLengthMm.value, widthMm: drawingStarts.tileWidthMm.value };
  if (largest === undefined) return size;
  const { minX, minY } = boxOf(largest.outline);
  return { ...size, origin: pointSnapped([minX, minY]) };
}

/** The tiles of the floor or of a field, as the file has them; undefined where it has none. */
export function tilesFind(file: PlanFile, of: TilesOf): TilesFile | undefined {
  return of === null ? file.tiles : file.tileFields?.find(({ id }) => id === of);
}

/** Changes some fields of the tiles; undefined takes one out, so that it goes back to its default. The shift of courses goes with the bond that it
 *  belongs to. Example: null, { bond: 'half' } -> the courses of the whole floor shifted by half a tile */
export function tilesChanged(file: PlanFile, of: TilesOf, change: Change<TilesFile>): PlanFile {
  const origin = change.origin === undefined ? {} : { origin: pointSnapped(change.origin) };
  const loses = 'bond' in change && change.bond !== 'offset';
  const fields = { ...change, ...origin, ...(loses ? { offsetMm: undefined } : {}) };
  if (of === null) {
    const tiles = file.tiles && changedIfNew(file.tiles, fields);
    return tiles === file.tiles ? file : changed(file, { tiles });
  }
  return fieldsReplaced(file, (field) => [field.id === of ? changedIfNew(field, fields) : field]);
}

/** Moves the set-out point; one beyond the sheet changes nothing. */
export function tileOriginMoved(file: PlanFile, of: TilesOf, to: Point): PlanFile {
  return Math.max(Math.abs(to[0]), Math.abs(to[1])) > FARTHEST_MM ? file : tilesChanged(file, of, { origin: to });
}

/** Takes the tiles of the whole floor away, or a field: its rooms have the tiles of the floor again. */
export function tilesTakenAway(file: PlanFile, of: TilesOf): PlanFile {
  if (of !== null) return fieldsReplaced(file, (field) => (field.id === of ? [] : [field]));
  return file.tiles === undefined ? file : changed(file, { tiles: undefined });
}

/** Gives rooms a tile field of their own, which begins as the tiles that the first of them has, and gives its id: null where the plan has none of
 *  these rooms. The tiles stay where they lie; the set-out point is another corner of the same grid, in the first room.
 *  Example: a floor of 600 x 600 with 3 mm from [0, 0], r2 from [5000, 0] -> a field t1 of r2, 600 x 600, from [5427, 0] */
export function tileFieldAdded(
  file: PlanFile,
  rooms: readonly string[],
): { readonly file: PlanFile; readonly id: string | null } {
  const known = file.rooms.filter(({ id }) => rooms.includes(id)).map(({ id }) => id);
  const [first] = known;
  if (first === undefined) return { file, id: null };
  const had = file.tileFields?.find((field) => field.rooms.includes(first)) ?? file.tiles ?? tilesAtFirst(file);
  const id = idsFree(file)('t');
  const field: TileFieldFile = { ...had, ...originIn(file, had, first), id, rooms: known };
  const left = roomsLeft(file, known, null);
  return { file: changed(left, { tileFields: [...(left.tileFields ?? []), field] }), id };
}

/** Where the same tiles are set out from within a room. Courses that are shifted take the shift along; a herringbone keeps its point. */
function originIn(file: PlanFile, tiles: TilesFile, roomId: string): Pick<TilesFile, 'origin'> {
  const { tiles: grid, rooms } = planResolve({ ...file, tiles });
  const room = rooms.find(({ id }) => id === roomId);
  if (grid === null || room === undefined || grid.bond === 'herringbone') return {};
  const { toGrid, toSheet } = gridFrame(grid);
  const [along, across] = tileModule(grid);
  const { minX, minY } = boxOf(room.outline.map(toGrid));
  const courses = Math.ceil((minY - SAME_LINE_MM) / across);
  const shiftMm = courses * grid.shiftMm;
  const tilesOn = Math.ceil((minX - shiftMm - SAME_LINE_MM) / along);
  return { origin: pointSnapped(toSheet([shiftMm + tilesOn * along, courses * across])) };
}

/** Puts rooms into a field of the plan, out of the one that they were in; null: back to the tiles of the floor. A field without rooms goes. */
export function roomsTiled(file: PlanFile, rooms: readonly string[], into: TilesOf): PlanFile {
  if (into === null) return roomsLeft(file, rooms, null);
  if (file.tileFields?.some(({ id }) => id === into) !== true) return file;
  const known = file.rooms.filter(({ id }) => rooms.includes(id)).map(({ id }) => id);
  return fieldsReplaced(roomsLeft(file, known, into), (field) => {
    const more = field.id === into ? known.filter((id) => !field.rooms.includes(id)) : [];
    return [more.length === 0 ? field : { ...field, rooms: [...field.rooms, ...more] }];
  });
}

/** The rooms out of every field but one. */
function roomsLeft(file: PlanFile, rooms: readonly string[], but: TilesOf): PlanFile {
  return fieldsReplaced(file, (field) => {
    const kept = field.rooms.filter((id) => !rooms.includes(id));
    if (field.id === but || kept.length === field.rooms.length) return [field];
    return kept.length === 0 ? [] : [{ ...field, rooms: kept }];
  });
}

function fieldsReplaced(file: PlanFile, replace: (field: TileFieldFile) => readonly TileFieldFile[]): PlanFile {
  const before = file.tileFields ?? [];
  const after = before.flatMap(replace);
  if (after.length === before.length && after.every((field, i) => field === before[i])) return file;
  return changed(file, { tileFields: after.length === 0 ? undefined : after });
}

/** What makes joints and grout lines agree, put into the plan: where fields are set out, and what the layout aims at; null leaves that as it is. */
export interface AgreementUse {
  readonly setOuts: readonly { readonly field: TilesOf; readonly origin: Point }[];
  readonly aim: NonNullable<NonNullable<PlanFile['layout']>['aim']> | null;
}

export function agreementUsed(file: PlanFile, { setOuts, aim }: AgreementUse): PlanFile {
  const placed = setOuts.reduce((after, { field, origin }) => tileOriginMoved(after, field, origin), file);
  return aim === null || aim === placed.layout?.aim ? placed : planSectionChanged(placed, 'layout', { aim });
}
