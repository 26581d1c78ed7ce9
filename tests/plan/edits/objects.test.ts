import { expect, test } from 'vitest';
import type { Point } from '../../../src/geometry/point.ts';
import {
  objectAdded,
  objectChanged,
  objectFind,
  objectLists,
  objectPoints,
  objectRings,
  objectsAdded,
  objectsBox,
  objectsRemoved,
} from '../../../src/plan/edits/objects.ts';
import { planEmpty } from '../../../src/plan/empty.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';
import { planWrite } from '../../../src/plan/write.ts';
import { box, house, houseIds } from './house.ts';

function found(id: string) {
  const object = objectFind(house, id);
  if (!object) throw new Error(`no object ${id}`);
  return object;
}

test('every object of the plan is found by its id, with the list that it stands in', () => {
  expect(houseIds.map((id) => found(id).list)).toEqual([
    ...['rooms', 'rooms', 'rooms', 'doorways', 'doorways'],
    ...objectLists.slice(2),
  ]);
  expect(found('c1').object).toBe(house.columns?.[0]);
  expect(objectFind(house, 't1')).toBeNull();
  expect(objectFind(house, 'r9')).toBeNull();
});

test('the points of a room are those of its outline and its holes, of a pipe the four furthest of its circle', () => {
  expect(objectPoints(found('r3'))).toEqual([...box(0, 3200, 8000, 2800), ...box(6000, 4000, 600, 800)]);
  expect(objectRings(found('r3'))).toHaveLength(2);
  expect(objectPoints(found('x1'))).toEqual([
    [3000, 3200],
    [3000, 4500],
    [3300, 6000],
  ]);
  expect(objectRings(found('x1'))).toEqual([]);
  expect(objectPoints(found('p1'))).toEqual([
    [445, 500],
    [555, 500],
    [500, 445],
    [500, 555],
  ]);
});

test('the box round objects takes the whole of each', () => {
  expect(objectsBox(house, ['p1', 'c1'])).toEqual({ minX: 445, minY: 445, maxX: 1300, maxY: 1300 });
  expect(objectsBox(house, ['x1'])).toEqual({ minX: 3000, minY: 3200, maxX: 3300, maxY: 6000 });
  expect(objectsBox(house, [])).toBeNull();
});

test('an id stays taken while something is entered under it, though what had it is gone', () => {
  const file: PlanFile = {
    ...planEmpty('Test'),
    papers: { joints: [{ key: 'drawn:x1@5.5,9', profile: 'P' }] },
    pour: { days: [{ bays: ['bay:r1+r2@3,4'] }] },
  };
  const line: Point[] = [
    [0, 0],
    [0, 1000],
  ];
  expect(objectAdded(file, 'drawnJoints', { line }).id).toBe('x2');
  expect(objectAdded({ ...file, papers: {} }, 'drawnJoints', { line }).id).toBe('x1');
  expect(objectAdded(file, 'rooms', { outline: box(0, 0, 1000, 1000) }).id).toBe('r3');
});

test('what is added takes the first free number, and stands on the grid of 0.1 mm', () => {
  const empty = planEmpty('Test');
  const one = objectAdded(empty, 'pipes', { centre: [500.04, 500.06], diameterMm: 110 });
  expect(one).toEqual({ file: { ...empty, pipes: [{ id: 'p1', centre: [500, 500.1], diameterMm: 110 }] }, id: 'p1' });
  const two = objectAdded(house, 'rooms', { outline: box(0, 7000, 1000, 1000) });
  expect(two.id).toBe('r4');
  expect(two.file.rooms.slice(0, 3)).toEqual(house.rooms);
  expect(two.file.columns).toBe(house.columns);
  const gap = objectsRemoved(house, ['r2']);
  const many = objectsAdded(gap, [
    { list: 'rooms', object: { outline: box(0, 7000, 1000, 1000) } },
    { list: 'columns', object: { outline: box(0, 8000, 100, 100) } },
    { list: 'rooms', object: { outline: box(2000, 7000, 1000, 1000) } },
  ]);
  expect(many.ids).toEqual(['r2', 'c2', 'r4']);
});

test('no place of an object is a nought below nought, which a file does not tell from nought', () => {
  const { file } = objectAdded(planEmpty('Test'), 'pipes', { centre: [-0, -0.04], diameterMm: 110 });
  expect(file.pipes?.[0]?.centre).toEqual([0, 0]);
});

test('each kind of object has its own letter', () => {
  const outline = box(0, 0, 100, 100);
  const line = [
    [0, 0],
    [0, 100],
  ] as const;
  const { ids } = objectsAdded(planEmpty('Test'), [
    { list: 'rooms', object: { outline } },
    { list: 'doorways', object: { line } },
    { list: 'columns', object: { outline } },
    { list: 'pipes', object: { centre: [0, 0], diameterMm: 50 } },
    { list: 'joinery', object: { outline } },
    { list: 'slabContacts', object: { outline } },
    { list: 'structuralJoints', object: { line } },
    { list: 'sunZones', object: { outline, highestC: 50 } },
    { list: 'drawnJoints', object: { line } },
    { list: 'noJoint', object: { line } },
    { list: 'keepClear', object: { outline } },
  ]);
  expect(ids).toEqual(['r1', 'd1', 'c1', 'p1', 'j1', 'k1', 's1', 'u1', 'x1', 'n1', 'q1']);
});

test('removing what was added gives back the same file', () => {
  const { file, ids } = objectsAdded(house, [
    { list: 'rooms', object: { outline: box(0, 7000, 1000, 1000) } },
    { list: 'columns', object: { outline: box(0, 8000, 100, 100) } },
  ]);
  expect(planWrite(objectsRemoved(file, ids))).toBe(planWrite(house));
  const empty = planEmpty('Test');
  const pipe = objectAdded(empty, 'pipes', { centre: [0, 0], diameterMm: 50 });
  expect(planWrite(objectsRemoved(pipe.file, [pipe.id]))).toBe(planWrite(empty));
});

test('a list that loses its last object leaves the file, the rooms stay as an empty list', () => {
  const bare = objectsRemoved(house, houseIds);
  const { papers, pour, records } = house;
  expect(bare).toEqual({ ...planEmpty('House'), papers, pour, records });
  expect('columns' in objectsRemoved(house, ['c1'])).toBe(false);
});

test('a tile field loses the rooms that are removed, and goes with the last of them', () => {
  const one = objectsRemoved(house, ['r1']);
  expect(one.tileFields?.map(({ rooms }) => rooms)).toEqual([['r2'], ['r3']]);
  expect(one.tileFields?.[1]).toBe(house.tileFields?.[1]);
  expect(objectsRemoved(house, ['r1', 'r2']).tileFields?.map(({ id }) => id)).toEqual(['t2']);
  expect('tileFields' in objectsRemoved(house, ['r1', 'r2', 'r3'])).toBe(false);
});

test('fields of an object are set and taken out, the rest of the plan stays the same', () => {
  const named = objectChanged(house, 'r1', { name: 'Pantry', zone: 'A' });
  expect(named.rooms[0]).toEqual({ id: 'r1', name: 'Pantry', outline: box(0, 0, 4000, 3000), zone: 'A' });
  expect(named.rooms[1]).toBe(house.rooms[1]);
  expect(named.columns).toBe(house.columns);
  expect(objectChanged(named, 'r1', { name: undefined, zone: undefined }).rooms[0]).not.toHaveProperty('name');
  expect(objectChanged(house, 'p1', { centre: [1.04, 2], diameterMm: 80 }).pipes).toEqual([
    { id: 'p1', centre: [1, 2], diameterMm: 80 },
  ]);
});

test('an edit that changes nothing gives the plan itself', () => {
  expect(objectChanged(house, 'r1', { name: 'Kitchen', zone: undefined })).toBe(house);
  expect(objectChanged(house, 'r1', { outline: box(0, 0, 4000, 3000) })).toBe(house);
  expect(objectChanged(house, 'r9', { name: 'Nobody' })).toBe(house);
  expect(objectsRemoved(house, ['r9'])).toBe(house);
  expect(objectsAdded(house, []).file).toBe(house);
});
