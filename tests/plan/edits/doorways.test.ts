import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/geometry/point.ts';
import {
  type DoorwayWall,
  doorwayDepthSet,
  doorwayInWall,
  doorwayPlace,
  doorwaySlid,
  doorwaysFollow,
  doorwayWidened,
  type WallFace,
  wallAt,
  wallsOf,
} from '../../../src/plan/edits/doorways.ts';
import { objectsMoved } from '../../../src/plan/edits/move.ts';
import { objectAdded, objectChanged } from '../../../src/plan/edits/objects.ts';
import { planEmpty } from '../../../src/plan/empty.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';
import { box, doorwayOf, house } from './house.ts';

function roomsAt(...outlines: (readonly Point[])[]): PlanFile {
  return { ...planEmpty('Rooms'), rooms: outlines.map((outline, i) => ({ id: `r${i + 1}`, outline })) };
}

function facts(walls: readonly DoorwayWall[]) {
  return walls.map(({ faces, lengthMm, depthMm }) => [
    faces.map(({ roomId, edge }: WallFace) => `${roomId}/${edge}`).join(' '),
    lengthMm,
    depthMm,
  ]);
}

function wallOf(file: PlanFile, number = 0): DoorwayWall {
  const wall = wallsOf(file)[number];
  if (!wall) throw new Error('no wall');
  return wall;
}

describe('walls', () => {
  it('lie where edges of rooms look at each other, as far as they overlap', () => {
    const walls = wallsOf(house);
    expect(facts(walls)).toEqual([
      ['r1/1 r2/3', 3000, 120],
      ['r1/2 r3/0', 4000, 200],
      ['r2/2 r3/0', 3880, 200],
      // The shaft is no deeper than a wall may be.
      ['r3/1 r3/3', 800, 600],
    ]);
    expect(walls[0]?.faces.map(({ from, to }) => [from, to])).toEqual([
      [
        [4000, 0],
        [4000, 3000],
      ],
      [
        [4120, 0],
        [4120, 3000],
      ],
    ]);
  });

  it('are at most 600 mm deep and at least 100 mm long, with a gap of more than 1 mm', () => {
    const beside = (x: number, y = 0) => wallsOf(roomsAt(box(0, 0, 4000, 3000), box(4000 + x, y, 4000, 3000))).length;
    expect([1, 1.1, 600, 600.1].map((gap) => beside(gap))).toEqual([0, 1, 1, 0]);
    expect([2900, 2900.1].map((down) => beside(120, down))).toEqual([1, 0]);
  });

  it('do not lie between rooms that overlap, nor inside a room', () => {
    expect(wallsOf(roomsAt(box(0, 0, 4000, 3000), box(3800, 0, 4000, 3000)))).toEqual([]);
    expect(wallsOf(roomsAt(box(0, 0, 500, 3000)))).toEqual([]);
  });

  it('may lie between two edges of one room, and round a room inside a room', () => {
    const screen: PlanFile = {
      ...planEmpty('Hall'),
      rooms: [{ id: 'r1', outline: box(0, 0, 9000, 6000), holes: [box(4000, 2000, 120, 3000)] }],
    };
    expect(facts(wallsOf(screen))).toEqual([['r1/1 r1/3', 3000, 120]]);
    const hall: PlanFile = {
      ...planEmpty('Hall'),
      rooms: [
        { id: 'r1', outline: box(0, 0, 9000, 6000), holes: [box(3000, 2000, 2000, 2000)] },
        { id: 'r2', outline: box(3100, 2100, 1800, 1800) },
      ],
    };
    expect(wallsOf(hall)).toHaveLength(4);
  });

  it('end where another room stands between', () => {
    // A cupboard of 300 mm depth from 1000 to 2000, between rooms 500 mm apart, touching neither.
    const cupboard = wallsOf(roomsAt(box(0, 0, 4000, 3000), box(0, 3500, 4000, 3000), box(1000, 3100, 1000, 300)));
    expect(facts(cupboard)).toEqual([
      ['r1/2 r2/0', 2000, 500],
      ['r1/2 r2/0', 1000, 500],
      ['r1/2 r3/0', 1000, 100],
      ['r2/0 r3/2', 1000, 100],
    ]);
    // One that fills the whole depth shares both edges.
    const filled = wallsOf(roomsAt(box(0, 0, 4000, 3000), box(0, 3500, 4000, 3000), box(1000, 3000, 1000, 500)));
    expect(facts(filled)).toEqual([
      ['r1/2 r2/0', 2000, 500],
      ['r1/2 r2/0', 1000, 500],
    ]);
  });

  it('may lean by 2 degrees and no more', () => {
    const leaning = (x: number) =>
      wallsOf(
        roomsAt(box(0, 0, 4000, 3000), [
          [4200, 0],
          [8000, 0],
          [8000, 3000],
          [4200 + x, 3000],
        ]),
      );
    // tan 2 degrees = 0.0349: 104.7 mm on 3000
    expect(leaning(104)).toHaveLength(1);
    expect(leaning(105.5)).toHaveLength(0);
    expect(leaning(100)[0]?.depthMm).toBeCloseTo(250, 9);
  });

  it('of a thousand rooms are found in one go', () => {
    const rooms = Array.from({ length: 1000 }, (_, i) => box((i % 40) * 4120, Math.floor(i / 40) * 3120, 4000, 3000));
    // 39 x 25 upright ones and 40 x 24 level ones
    expect(wallsOf(roomsAt(...rooms))).toHaveLength(975 + 960);
  });
});

describe('the wall at a point', () => {
  const walls = wallsOf(house);

  it('is the one that the point lies in, else the nearest within reach', () => {
    expect(wallAt(walls, [4050, 900], 0)).toEqual({ wall: walls[0], alongMm: 900 });
    expect(wallAt(walls, [3960, 2950], 100)).toMatchObject({ wall: walls[0] });
    expect(wallAt(walls, [3900, 2990], 300)).toMatchObject({ wall: walls[1] });
    expect(wallAt(walls, [2000, 1500], 500)).toBeNull();
  });

  it('ends with its stretch', () => {
    expect(wallAt(walls, [4060, -40], 50)).toEqual({ wall: walls[0], alongMm: 0 });
    expect(wallAt(walls, [4060, -60], 50)).toBeNull();
  });
});

describe('a doorway put into a wall', () => {
  const wall = wallOf(house);

  it('stands where it is put, as wide and as deep in the wall as wanted', () => {
    expect(doorwayInWall(wall, { alongMm: 1450, widthMm: 900, depthShare: 0.5 })).toEqual({
      line: [
        [4060, 1000],
        [4060, 1900],
      ],
      wallMm: 120,
    });
    expect(doorwayInWall(wall, { alongMm: 1450, widthMm: 900, depthShare: 1, leaf: false })).toEqual({
      line: [
        [4120, 1000],
        [4120, 1900],
      ],
      wallMm: 120,
      leaf: false,
    });
  });

  it('is pushed along until both jambs stand in the wall', () => {
    expect(doorwayInWall(wall, { alongMm: 100, widthMm: 900, depthShare: 0 })?.line).toEqual([
      [4000, 0],
      [4000, 900],
    ]);
    expect(doorwayInWall(wall, { alongMm: 9000, widthMm: 900, depthShare: 0 })?.line).toEqual([
      [4000, 2100],
      [4000, 3000],
    ]);
  });

  it('is none where it is wider than the wall is long', () => {
    expect(doorwayInWall(wall, { alongMm: 1500, widthMm: 3000, depthShare: 0.5 })).not.toBeNull();
    expect(doorwayInWall(wall, { alongMm: 1500, widthMm: 3000.1, depthShare: 0.5 })).toBeNull();
  });

  it('is found again in that wall, at that place', () => {
    const wish = fc.record({
      wall: fc.constantFrom(...wallsOf(house)),
      alongMm: fc.integer({ min: 0, max: 4000 }),
      widthMm: fc.integer({ min: 300, max: 3000 }),
      depthShare: fc.double({ min: 0, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(wish, ({ wall, ...place }) => {
        const doorway = doorwayInWall(wall, place);
        if (doorway === null) return;
        const found = doorwayPlace(wallsOf(house), { id: 'd9', ...doorway });
        expect(found?.wall).toEqual(wall);
        expect(Math.abs((found?.depthMm ?? 0) - place.depthShare * wall.depthMm)).toBeLessThanOrEqual(0.05 + 1e-9);
        expect(found?.widthMm).toBeCloseTo(place.widthMm, 6);
        expect((found?.startMm ?? 0) + (found?.widthMm ?? 0) + (found?.endMm ?? 0)).toBeCloseTo(wall.lengthMm, 6);
      }),
    );
  });
});

describe('a doorway in its wall', () => {
  it('is told by its distances from the ends of the wall and from its faces', () => {
    expect(doorwayPlace(wallsOf(house), doorwayOf(house, 'd1'))).toEqual({
      wall: wallOf(house),
      alongMm: 1450,
      widthMm: 900,
      depthMm: 60,
      startMm: 1000,
      endMm: 1100,
    });
    // The bottom wall of r1 runs from right to left.
    expect(doorwayPlace(wallsOf(house), doorwayOf(house, 'd2'))).toMatchObject({
      startMm: 2100,
      endMm: 1000,
      depthMm: 100,
    });
  });

  it('has no place where its line runs across the wall, or lies in no wall', () => {
    const walls = wallsOf(house);
    expect(
      doorwayPlace(walls, {
        id: 'd9',
        line: [
          [4000, 1000],
          [4120, 1000],
        ],
      }),
    ).toBeNull();
    expect(
      doorwayPlace(walls, {
        id: 'd9',
        line: [
          [2000, 1000],
          [2000, 1900],
        ],
      }),
    ).toBeNull();
  });

  it('slides along it as far as its jambs let it', () => {
    expect(doorwayOf(doorwaySlid(house, 'd1', 2000), 'd1').line).toEqual([
      [4060, 1550],
      [4060, 2450],
    ]);
    expect(doorwayOf(doorwaySlid(house, 'd1', 200), 'd1').line).toEqual([
      [4060, 0],
      [4060, 900],
    ]);
    expect(doorwaySlid(house, 'd1', 1450)).toBe(house);
    // r1's bottom wall begins at the right: 450 from its start is 3550 from the left.
    expect(doorwayOf(doorwaySlid(house, 'd2', 0), 'd2').line).toEqual([
      [3100, 3100],
      [4000, 3100],
    ]);
  });

  it('becomes wider about its middle, and moves where the wall ends', () => {
    expect(doorwayOf(doorwayWidened(house, 'd1', 1000), 'd1').line).toEqual([
      [4060, 950],
      [4060, 1950],
    ]);
    const low = doorwaySlid(house, 'd1', 0);
    expect(doorwayOf(doorwayWidened(low, 'd1', 1000), 'd1').line).toEqual([
      [4060, 0],
      [4060, 1000],
    ]);
    expect(doorwayWidened(house, 'd1', 3100)).toBe(house);
    expect(doorwayWidened(house, 'd1', 900)).toBe(house);
    expect(doorwayWidened(house, 'd1', 0)).toBe(house);
  });

  it('has its line anywhere between the faces, not beyond', () => {
    expect(doorwayOf(doorwayDepthSet(house, 'd1', 20), 'd1').line).toEqual([
      [4020, 1000],
      [4020, 1900],
    ]);
    expect(doorwayOf(doorwayDepthSet(house, 'd1', 500), 'd1').line).toEqual([
      [4120, 1000],
      [4120, 1900],
    ]);
    expect(doorwayOf(doorwayDepthSet(house, 'd1', -5), 'd1').line).toEqual([
      [4000, 1000],
      [4000, 1900],
    ]);
  });

  it('that stands in no wall is made wider all the same, and neither slides nor shifts', () => {
    const { file } = objectAdded(house, 'doorways', {
      line: [
        [2000, -60],
        [2900, -60],
      ],
    });
    expect(doorwayOf(doorwayWidened(file, 'd3', 1000), 'd3').line).toEqual([
      [1950, -60],
      [2950, -60],
    ]);
    expect(doorwaySlid(file, 'd3', 100)).toBe(file);
    expect(doorwayDepthSet(file, 'd3', 100)).toBe(file);
    expect(doorwaySlid(house, 'r1', 100)).toBe(house);
  });
});

describe('doorways follow their walls', () => {
  it('along the face that stays where the other room moves along the wall', () => {
    const moved = objectsMoved(house, ['r2'], [0, 300]);
    expect(doorwayOf(moved, 'd1')).toBe(doorwayOf(house, 'd1'));
    // 1200 down: the wall is left from 1200 to 3000, and the doorway is pushed into it.
    expect(doorwayOf(objectsMoved(house, ['r2'], [0, 1200]), 'd1').line).toEqual([
      [4060, 1200],
      [4060, 2100],
    ]);
    // 2200 down: 800 mm are left, the doorway needs 900.
    expect(doorwayOf(objectsMoved(house, ['r2'], [0, 2200]), 'd1')).toBe(doorwayOf(house, 'd1'));
  });

  it('midway where the rooms move differently along the wall', () => {
    const one = objectsMoved(house, ['r1'], [0, 100]);
    const both = { ...one, rooms: objectsMoved(one, ['r2'], [0, 300]).rooms };
    expect(doorwayOf(doorwaysFollow(house, both), 'd1').line).toEqual([
      [4060, 1200],
      [4060, 2100],
    ]);
  });

  it('and keep their share of its depth', () => {
    const near = doorwayDepthSet(house, 'd1', 30);
    // A quarter of 120 is 30; the wall becomes 200.
    const moved = objectsMoved(near, ['r2'], [80, 0]);
    expect(doorwayOf(moved, 'd1')).toEqual({
      id: 'd1',
      line: [
        [4050, 1000],
        [4050, 1900],
      ],
      wallMm: 200,
    });
  });

  it('unless the edit moved them itself, or what changed is no wall of theirs', () => {
    const own = objectsMoved(house, ['r1', 'd1'], [0, 100]);
    expect(doorwayOf(own, 'd1').line).toEqual([
      [4060, 1100],
      [4060, 2000],
    ]);
    expect(doorwaysFollow(house, house)).toBe(house);
    const named = objectChanged(house, 'r1', { name: 'Pantry' });
    expect(doorwaysFollow(house, named)).toBe(named);
    const column = objectsMoved(house, ['c1'], [10, 0]);
    expect(column.doorways).toBe(house.doorways);
  });
});
