import { describe, expect, test } from 'vitest';
import {
  agreementUsed,
  roomsTiled,
  tileFieldAdded,
  tileOriginMoved,
  tilesChanged,
  tilesFind,
  tilesLaid,
  tilesTakenAway,
} from '../../../src/plan/edits/tiles.ts';
import { planEmpty } from '../../../src/plan/empty.ts';
import { planRead } from '../../../src/plan/read.ts';
import { planResolve } from '../../../src/plan/resolve.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';
import { gridFrame, tiledFields, tileModule } from '../../../src/plan/tile-grid.ts';
import { planWrite } from '../../../src/plan/write.ts';
import { box, frozen } from './house.ts';

/** A kitchen of 12 m2, a larger bedroom with timber, and a bath. */
const bare: PlanFile = frozen({
  ...planEmpty('Flat'),
  rooms: [
    { id: 'r1', name: 'Bath', outline: box(0, 3100, 2000, 2000) },
    { id: 'r2', name: 'Kitchen', outline: box(500, 0, 4000, 3000) },
    { id: 'r3', name: 'Bedroom', outline: box(4600, 0, 5000, 5000), covering: 'timber' },
  ],
});
const tiled = tilesLaid(bare);

const fieldRooms = (file: PlanFile) => (file.tileFields ?? []).map(({ id, rooms }) => [id, ...rooms]);

describe('the tiles of the floor', () => {
  test('are laid at the usual size, set out from the largest room that takes tiles', () => {
    expect(tiled.tiles).toEqual({ lengthMm: 600, widthMm: 600, origin: [500, 0] });
    // Of the reference data: what was not entered stays open.
    expect(planResolve(tiled).tiles?.groutMm).toBe(3);
    expect(tilesLaid(tiled)).toBe(tiled);
  });

  test('are laid on a sheet without rooms as well', () => {
    expect(tilesLaid(planEmpty('Empty')).tiles).toEqual({ lengthMm: 600, widthMm: 600 });
  });

  test('change figure by figure; what becomes no different is the same plan', () => {
    const wide = tilesChanged(tiled, null, { lengthMm: 800, groutMm: 4 });
    expect(wide.tiles).toEqual({ lengthMm: 800, widthMm: 600, groutMm: 4, origin: [500, 0] });
    expect(tilesChanged(wide, null, { groutMm: undefined }).tiles).not.toHaveProperty('groutMm');
    expect(tilesChanged(wide, null, { lengthMm: 800, origin: [500, 0] })).toBe(wide);
    expect(tilesChanged(bare, null, { lengthMm: 800 })).toBe(bare);
  });

  test('lose the shift of their courses with the bond that it belongs to', () => {
    const own = tilesChanged(tiled, null, { bond: 'offset', offsetMm: 150 });
    expect(tilesChanged(own, null, { offsetMm: 200 }).tiles).toMatchObject({ bond: 'offset', offsetMm: 200 });
    expect(tilesChanged(own, null, { bond: 'half' }).tiles).not.toHaveProperty('offsetMm');
  });

  test('are set out from another point, on the grid of the plan and on its sheet', () => {
    expect(tileOriginMoved(tiled, null, [123.456, -7]).tiles?.origin).toEqual([123.5, -7]);
    expect(tileOriginMoved(tiled, null, [2e7, 0])).toBe(tiled);
  });

  test('are taken away, and the fields keep theirs', () => {
    const { file } = tileFieldAdded(tiled, ['r1']);
    expect(tilesTakenAway(file, null)).not.toHaveProperty('tiles');
    expect(tilesTakenAway(file, null).tileFields).toBe(file.tileFields);
    expect(tilesTakenAway(bare, null)).toBe(bare);
  });
});

describe('a tile field', () => {
  test('begins as the tiles that its rooms have, and changes without them', () => {
    const { file, id } = tileFieldAdded(tiled, ['r1']);
    expect(id).toBe('t1');
    // The same tiles: 500 + 0 x 603, 0 + 6 x 603, the first corner of a tile in the bath, which lies from [0, 3100].
    expect(file.tileFields).toEqual([{ id: 't1', rooms: ['r1'], lengthMm: 600, widthMm: 600, origin: [500, 3618] }]);
    const small = tilesChanged(file, 't1', { lengthMm: 200, widthMm: 200 });
    expect(tilesFind(small, 't1')?.lengthMm).toBe(200);
    expect(tilesFind(small, null)?.lengthMm).toBe(600);
    // Of the field that the room is in, where it is in one.
    expect(tileFieldAdded(small, ['r1', 'r2']).file.tileFields?.[0]).toMatchObject({ id: 't2', lengthMm: 200 });
  });

  test('of shifted or turned courses begins as the same tiles as well', () => {
    for (const change of [{ bond: 'third' }, { bond: 'half', angleDeg: 45 }, { angleDeg: -30, lengthMm: 900 }]) {
      const before = tilesChanged(tiled, null, change);
      const { file } = tileFieldAdded(before, ['r1']);
      const { tiles, tileFields } = planResolve(file);
      if (tiles === null || tileFields[0] === undefined) throw new Error('no tiles');
      // A corner of the grid: whole courses on, and along the course whole tiles and the shift of so many courses.
      const [x, y] = gridFrame(tiles).toGrid(tileFields[0].origin);
      const [along, across] = tileModule(tiles);
      const courses = Math.round(y / across);
      expect(y).toBeCloseTo(courses * across, 0);
      const rest = (x - courses * tiles.shiftMm) / along;
      expect(rest).toBeCloseTo(Math.round(rest), 3);
    }
  });

  test('takes its rooms out of the field that they were in, and a field left empty goes', () => {
    const two = tileFieldAdded(tiled, ['r1', 'r2']).file;
    const parted = tileFieldAdded(two, ['r2']).file;
    expect(fieldRooms(parted)).toEqual([
      ['t1', 'r1'],
      ['t2', 'r2'],
    ]);
    expect(fieldRooms(roomsTiled(parted, ['r1'], 't2'))).toEqual([['t2', 'r2', 'r1']]);
    expect(roomsTiled(parted, ['r2'], 't2')).toBe(parted);
  });

  test('gives its rooms back to the tiles of the floor', () => {
    const { file } = tileFieldAdded(tiled, ['r1', 'r2']);
    expect(fieldRooms(roomsTiled(file, ['r2'], null))).toEqual([['t1', 'r1']]);
    expect(roomsTiled(file, ['r1', 'r2'], null)).toEqual(tiled);
    expect(tilesTakenAway(file, 't1')).toEqual(tiled);
    const [all, ...more] = tiledFields(planResolve(roomsTiled(file, ['r1', 'r2'], null)));
    expect([all?.id, all?.rooms.map(({ id }) => id), more]).toEqual([null, ['r1', 'r2'], []]);
  });

  test('is made of rooms that there are, and of a floor without tiles as well', () => {
    expect(tileFieldAdded(tiled, ['nowhere'])).toEqual({ file: tiled, id: null });
    expect(tileFieldAdded(bare, ['r1']).file.tileFields?.[0]).toMatchObject({ lengthMm: 600, rooms: ['r1'] });
    expect(roomsTiled(tiled, ['r1'], 't9')).toBe(tiled);
  });

  test('takes an id that nothing in the plan has', () => {
    const columns = [{ id: 't1', outline: box(600, 100, 300, 300) }];
    expect(tileFieldAdded({ ...tiled, columns }, ['r1']).id).toBe('t2');
  });
});

test('a way of joints and grout lines to agree is one edit: every set-out point, and what the layout aims at', () => {
  const { file } = tileFieldAdded(tiled, ['r1']);
  const setOuts = [
    { field: null, origin: [510, 20] },
    { field: 't1', origin: [0, 3105.5] },
  ] as const;
  const used = agreementUsed(file, { setOuts, aim: 'grout-lines' });
  expect([used.tiles?.origin, used.tileFields?.[0]?.origin, used.layout?.aim]).toEqual([
    [510, 20],
    [0, 3105.5],
    'grout-lines',
  ]);
  expect(agreementUsed(used, { setOuts, aim: null })).toBe(used);
  expect(planRead(planWrite(used))).toEqual({ kind: 'plan', file: used });
});
