import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/geometry/point.ts';
import { ringArea } from '../../../src/geometry/ring.ts';
import { objectsMirrored, objectsMoved, objectsTurned } from '../../../src/plan/edits/move.ts';
import { objectFind, objectRings } from '../../../src/plan/edits/objects.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';
import { planWrite } from '../../../src/plan/write.ts';
import { box, doorwayOf, house, houseIds, roomOf } from './house.ts';

const length = fc.double({ min: -20_000, max: 20_000, noNaN: true });
const vector: fc.Arbitrary<Point> = fc.tuple(length, length);
const someIds = fc.subarray(houseIds, { minLength: 1 });

/** mm2 to the whole one: the sums themselves round. */
function areas(file: PlanFile): number[] {
  return houseIds.flatMap((id) => {
    const found = objectFind(file, id);
    return found ? objectRings(found).map((ring) => Math.round(ringArea(ring))) : [];
  });
}

describe('objects that are moved', () => {
  it('keep everything but their place', () => {
    const moved = objectsMoved(house, ['c1', 'p1', 'x1'], [100, -50]);
    expect(moved.columns).toEqual([{ id: 'c1', outline: box(1100, 950, 300, 300) }]);
    expect(moved.pipes).toEqual([{ id: 'p1', centre: [600, 450], diameterMm: 110 }]);
    expect(moved.drawnJoints).toEqual([
      {
        id: 'x1',
        line: [
          [3100, 3150],
          [3100, 4450],
          [3400, 5950],
        ],
      },
    ]);
    expect(moved.rooms).toBe(house.rooms);
    expect(objectsMoved(house, ['r3'], [10, 0]).rooms[2]?.holes).toEqual([box(6010, 4000, 600, 800)]);
  });

  it('moved there and back are the same file', () => {
    fc.assert(
      fc.property(vector, (by) => {
        const there = objectsMoved(house, houseIds, by);
        expect(planWrite(objectsMoved(there, houseIds, [-by[0], -by[1]]))).toBe(planWrite(house));
      }),
    );
  });

  it('take with them the doorways of walls that move as a whole', () => {
    const moved = objectsMoved(house, ['r1', 'r2', 'r3'], [500, 250]);
    expect(doorwayOf(moved, 'd1')).toEqual({
      id: 'd1',
      line: [
        [4560, 1250],
        [4560, 2150],
      ],
      wallMm: 120,
    });
    expect(doorwayOf(moved, 'd2').line).toEqual([
      [1500, 3350],
      [2400, 3350],
    ]);
    // Only the wall between the two moves; the doorway below keeps to the room that stayed, in the middle of a wall 50 mm thicker.
    const two = objectsMoved(house, ['r1', 'r2'], [0, -50]);
    expect(doorwayOf(two, 'd1').line).toEqual([
      [4060, 950],
      [4060, 1850],
    ]);
    expect(doorwayOf(two, 'd2')).toEqual({
      id: 'd2',
      line: [
        [1000, 3075],
        [1900, 3075],
      ],
      wallMm: 250,
      leaf: false,
    });
  });

  it('stay where they are if they would leave the sheet', () => {
    expect(objectsMoved(house, ['c1'], [1e7, 0])).toBe(house);
    expect(objectsMoved(house, ['c1'], [0, 0])).toBe(house);
    expect(objectsMoved(house, ['c1'], [0.04, 0])).toBe(house);
  });
});

describe('objects that are turned', () => {
  it('turn clockwise on the sheet', () => {
    const turned = objectsTurned(house, ['p1'], [0, 500], 90);
    expect(turned.pipes?.[0]?.centre).toEqual([0, 1000]);
    const half = objectsTurned(house, ['p1'], [0, 0], 180);
    expect(half.pipes?.[0]?.centre).toEqual([-500, -500]);
    // 500 to the right of the point, by 30 degrees: 500 cos 30 = 433.0 and 500 sin 30 = 250
    expect(objectsTurned(house, ['p1'], [0, 500], 30).pipes?.[0]?.centre).toEqual([433, 750]);
  });

  it('are back after four quarter turns, doorways of the rooms with them', () => {
    fc.assert(
      fc.property(vector, someIds, fc.constantFrom(90, -90, 450), (about, ids, angle) => {
        const quarter = (file: PlanFile) => objectsTurned(file, ids, about, angle);
        const rooms = ['r1', 'r2', 'r3'];
        const withRooms = (file: PlanFile) => objectsTurned(file, rooms, about, angle);
        expect(planWrite(withRooms(withRooms(withRooms(withRooms(house)))))).toBe(planWrite(house));
        if (rooms.some((id) => ids.includes(id))) return;
        expect(planWrite(quarter(quarter(quarter(quarter(house)))))).toBe(planWrite(house));
      }),
    );
  });

  it('take their doorways round with them', () => {
    const turned = objectsTurned(house, ['r1', 'r2', 'r3'], [0, 0], 90);
    expect(roomOf(turned, 'r1').outline[2]).toEqual([-3000, 4000]);
    expect(doorwayOf(turned, 'd1').line).toEqual([
      [-1000, 4060],
      [-1900, 4060],
    ]);
  });
});

describe('objects that are mirrored', () => {
  it('lie on the other side of the line', () => {
    const mirrored = objectsMirrored(house, ['c1'], [2000, 0], 'left-right');
    expect(mirrored.columns?.[0]?.outline).toEqual([
      [3000, 1000],
      [2700, 1000],
      [2700, 1300],
      [3000, 1300],
    ]);
    const down = objectsMirrored(house, ['p1'], [0, 1000], 'top-bottom');
    expect(down.pipes?.[0]?.centre).toEqual([500, 1500]);
  });

  it('are back when mirrored twice', () => {
    fc.assert(
      fc.property(vector, fc.constantFrom('left-right' as const, 'top-bottom' as const), (about, axis) => {
        for (const ids of [houseIds, ['r1', 'r2', 'r3']]) {
          const once = objectsMirrored(house, ids, about, axis);
          expect(planWrite(objectsMirrored(once, ids, about, axis))).toBe(planWrite(house));
        }
      }),
    );
  });

  it('take their doorways to the other side', () => {
    const mirrored = objectsMirrored(house, ['r1', 'r2', 'r3'], [4000, 0], 'left-right');
    expect(doorwayOf(mirrored, 'd1').line).toEqual([
      [3940, 1000],
      [3940, 1900],
    ]);
    expect(doorwayOf(mirrored, 'd2').line).toEqual([
      [7000, 3100],
      [6100, 3100],
    ]);
  });
});

it('no area of floor changes where rooms are moved, turned or mirrored', () => {
  fc.assert(
    fc.property(vector, someIds, fc.double({ min: -720, max: 720, noNaN: true }), (at, ids, angle) => {
      const before = areas(house);
      expect(areas(objectsMoved(house, ids, at))).toEqual(before);
      expect(areas(objectsMirrored(house, ids, at, 'left-right'))).toEqual(before);
      // Each corner is taken to 0.1 mm: half a step on a perimeter of 21.6 m at most, either way.
      areas(objectsTurned(house, ids, at, angle)).forEach((area, i) => {
        expect(Math.abs(area - (before[i] as number))).toBeLessThan(0.1 * 21_600);
      });
    }),
  );
});
