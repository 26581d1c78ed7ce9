import type { Point } from '../../../src/geometry/point.ts';
import type { Edited } from '../../../src/plan/edits/corners.ts';
import { planEmpty } from '../../../src/plan/empty.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';

export function box(x: number, y: number, width: number, height: number): readonly Point[] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}

/** Two rooms side by side behind a wall of 120 mm, a third below both behind one of 200 mm; a doorway in the middle of each wall.
 *
 *      r1 4000 x 3000 | r2 3880 x 3000
 *      ---------------------------------
 *      r3 8000 x 2800, with a shaft                 */
export const house: PlanFile = frozen({
  ...planEmpty('House'),
  papers: {
    joints: [{ key: 'J 1', pipes: 2 }],
    basePoints: [{ at: [0, 0] }, { name: 'Nail', at: [4000, 0] }],
    gridLines: [
      { name: 'A', from: [0, -400], to: [0, 6400] },
      { name: '1', from: [-400, 0], to: [8400, 0] },
    ],
  },
  pour: { access: [8000, 6000], days: [{ date: '2027-03-01', bays: ['B-1', 'B-2'] }, { bays: ['B-3'] }] },
  records: { testPoints: [{ at: [2000, 1500] }] },
  rooms: [
    { id: 'r1', name: 'Kitchen', outline: box(0, 0, 4000, 3000) },
    { id: 'r2', outline: box(4120, 0, 3880, 3000), covering: 'timber' },
    { id: 'r3', outline: box(0, 3200, 8000, 2800), holes: [box(6000, 4000, 600, 800)] },
  ],
  doorways: [
    {
      id: 'd1',
      line: [
        [4060, 1000],
        [4060, 1900],
      ],
      wallMm: 120,
    },
    {
      id: 'd2',
      line: [
        [1000, 3100],
        [1900, 3100],
      ],
      wallMm: 200,
      leaf: false,
    },
  ],
  columns: [{ id: 'c1', outline: box(1000, 1000, 300, 300) }],
  pipes: [{ id: 'p1', centre: [500, 500], diameterMm: 110 }],
  joinery: [{ id: 'j1', name: 'Counter', outline: box(4200, 100, 600, 1800), under: 'insulated' }],
  slabContacts: [{ id: 'k1', outline: box(7000, 5000, 400, 400) }],
  structuralJoints: [
    {
      id: 's1',
      line: [
        [5000, 3200],
        [5000, 6000],
      ],
      widthMm: 20,
    },
  ],
  sunZones: [{ id: 'u1', outline: box(200, 4000, 2000, 1500), highestC: 55 }],
  drawnJoints: [
    {
      id: 'x1',
      line: [
        [3000, 3200],
        [3000, 4500],
        [3300, 6000],
      ],
    },
  ],
  noJoint: [
    {
      id: 'n1',
      line: [
        [6500, 0],
        [6500, 3000],
      ],
    },
  ],
  keepClear: [{ id: 'q1', outline: box(2000, 500, 900, 900) }],
  tileFields: [
    { id: 't1', rooms: ['r1', 'r2'], lengthMm: 300, widthMm: 300 },
    { id: 't2', rooms: ['r3'], lengthMm: 600, widthMm: 600 },
  ],
});

export const houseIds = ['r1', 'r2', 'r3', 'd1', 'd2', 'c1', 'p1', 'j1', 'k1', 's1', 'u1', 'x1', 'n1', 'q1'];

/** The value, whose every part now throws when it is written to. */
export function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null) {
    Object.freeze(value);
    for (const part of Object.values(value)) frozen(part);
  }
  return value;
}

/** The file of an edit that must not be refused. */
export function fileOf(edited: Edited): PlanFile {
  if (edited.kind === 'refused') throw new Error(`refused: ${edited.why}`);
  return edited.file;
}

export function roomOf(file: PlanFile, id: string): PlanFile['rooms'][number] {
  const room = file.rooms.find((each) => each.id === id);
  if (!room) throw new Error(`no room ${id}`);
  return room;
}

export function doorwayOf(file: PlanFile, id: string): NonNullable<PlanFile['doorways']>[number] {
  const doorway = file.doorways?.find((each) => each.id === id);
  if (!doorway) throw new Error(`no doorway ${id}`);
  return doorway;
}
