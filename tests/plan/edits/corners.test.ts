import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Point } from '../../../src/geometry/point.ts';
import { ringSignedArea } from '../../../src/geometry/ring.ts';
import {
  cornerAdded,
  cornerMoved,
  cornerRemoved,
  edgeLengthSet,
  edgeMoved,
  rectangleSizeSet,
  ringSet,
} from '../../../src/plan/edits/corners.ts';
import { doorwayPlace, wallsOf } from '../../../src/plan/edits/doorways.ts';
import { planEmpty } from '../../../src/plan/empty.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';
import { box, doorwayOf, fileOf, frozen, house, roomOf } from './house.ts';

const corner = (id: string, number: number, ring = 0) => ({ id, ring, corner: number });
const face = { wholeWall: false };
const wall = { wholeWall: true };

/** An L: the notch is 2000 x 1000 at the lower right. */
const ell: PlanFile = frozen({
  ...planEmpty('L'),
  rooms: [
    {
      id: 'r1',
      outline: [
        [0, 0],
        [4000, 0],
        [4000, 2000],
        [2000, 2000],
        [2000, 3000],
        [0, 3000],
      ],
    },
  ],
});

describe('a corner', () => {
  it('goes where it is put, to 0.1 mm, and everything else stays', () => {
    const edited = fileOf(cornerMoved(house, corner('r1', 0), [-200.04, 50.06]));
    expect(roomOf(edited, 'r1').outline).toEqual([
      [-200, 50.1],
      [4000, 0],
      [4000, 3000],
      [0, 3000],
    ]);
    expect(edited.rooms[1]).toBe(house.rooms[1]);
    expect(edited.doorways).toBe(house.doorways);
    const hole = fileOf(cornerMoved(house, corner('r3', 2, 1), [6700, 4900]));
    expect(roomOf(hole, 'r3').holes?.[0]?.[2]).toEqual([6700, 4900]);
    expect(roomOf(hole, 'r3').outline).toBe(roomOf(house, 'r3').outline);
    const line = fileOf(cornerMoved(house, corner('x1', 1), [2900, 4500]));
    expect(line.drawnJoints?.[0]?.line).toEqual([
      [3000, 3200],
      [2900, 4500],
      [3300, 6000],
    ]);
  });

  it('put where it is gives the plan itself', () => {
    expect(fileOf(cornerMoved(house, corner('r1', 2), [4000, 3000]))).toBe(house);
  });

  it('is not put where the outline would cross itself; the place is told', () => {
    expect(cornerMoved(house, corner('r1', 0), [6000, 1500])).toEqual({
      kind: 'refused',
      why: 'crosses',
      at: [4000, 2000],
    });
    expect(cornerMoved(house, corner('r3', 0, 1), [6000, 5200])).toMatchObject({ why: 'crosses' });
  });

  it('is not put on its neighbour, nor 0.9 mm from it', () => {
    expect(cornerMoved(house, corner('r1', 0), [0.9, 3000])).toMatchObject({ why: 'corners-meet' });
    expect(cornerMoved(house, corner('d1', 0), [4060, 1900])).toMatchObject({ why: 'corners-meet' });
    expect(cornerMoved(house, corner('r1', 0), [0, 2999])).toMatchObject({ kind: 'edited' });
  });

  it('can be put right in an outline that crosses itself already', () => {
    const crossed: PlanFile = {
      ...planEmpty('Crossed'),
      columns: [
        {
          id: 'c1',
          outline: [
            [0, 0],
            [400, 0],
            [0, 400],
            [400, 400],
          ],
        },
      ],
    };
    expect(cornerMoved(crossed, corner('c1', 1), [500, 0]).kind).toBe('edited');
  });

  it('is not put off the sheet', () => {
    expect(cornerMoved(house, corner('r1', 0), [-1e7 - 1, 0])).toEqual({ kind: 'refused', why: 'off-sheet' });
  });

  it('that no object has is told', () => {
    for (const ref of [corner('r1', 4), corner('r1', -1), corner('r1', 0, 1), corner('r9', 0), corner('p1', 0)]) {
      expect(cornerMoved(house, ref, [0, 0])).toEqual({ kind: 'refused', why: 'no-such-corner' });
      expect(cornerRemoved(house, ref).kind).toBe('refused');
      expect(edgeMoved(house, ref, 10, face)).toEqual({ kind: 'refused', why: 'no-such-corner' });
      expect(edgeLengthSet(house, ref, 10)).toEqual({ kind: 'refused', why: 'no-such-corner' });
    }
    expect(cornerAdded(house, corner('d1', 0), [4060, 1500])).toEqual({ kind: 'refused', why: 'no-such-corner' });
    expect(cornerAdded(house, corner('x1', 2), [0, 0])).toEqual({ kind: 'refused', why: 'no-such-corner' });
    expect(edgeMoved(house, corner('x1', 2), 10, face)).toEqual({ kind: 'refused', why: 'no-such-corner' });
  });

  it('is added on an edge and removed again', () => {
    const added = fileOf(cornerAdded(house, corner('r1', 3), [0, 1500]));
    expect(roomOf(added, 'r1').outline).toEqual([...box(0, 0, 4000, 3000), [0, 1500]]);
    expect(fileOf(cornerRemoved(added, corner('r1', 4)))).toEqual(house);
    expect(fileOf(cornerAdded(house, corner('s1', 0), [5100, 4000])).structuralJoints?.[0]?.line).toHaveLength(3);
  });

  it('is not removed where two would be left, of a line where one would', () => {
    const triangle = fileOf(cornerRemoved(house, corner('r1', 0)));
    expect(roomOf(triangle, 'r1').outline).toHaveLength(3);
    expect(cornerRemoved(triangle, corner('r1', 0))).toEqual({ kind: 'refused', why: 'too-few-corners' });
    expect(cornerRemoved(house, corner('s1', 0))).toEqual({ kind: 'refused', why: 'too-few-corners' });
    expect(cornerRemoved(house, corner('d1', 0))).toEqual({ kind: 'refused', why: 'too-few-corners' });
  });

  it('that is added beside a doorway leaves the doorway in its wall', () => {
    const added = fileOf(cornerAdded(house, corner('r1', 0), [2000, -300]));
    expect(doorwayOf(added, 'd1')).toBe(doorwayOf(house, 'd1'));
    const split = fileOf(cornerAdded(house, corner('r1', 1), [4000, 2500]));
    expect(doorwayOf(split, 'd1')).toBe(doorwayOf(house, 'd1'));
  });
});

describe('an edge', () => {
  it('moves outwards by a positive length, and a rectangle stays one', () => {
    const edited = fileOf(edgeMoved(house, corner('r1', 3), 250, face));
    expect(roomOf(edited, 'r1').outline).toEqual([
      [-250, 0],
      [4000, 0],
      [4000, 3000],
      [-250, 3000],
    ]);
    const hole = fileOf(edgeMoved(house, corner('r3', 0, 1), 100, face));
    expect(roomOf(hole, 'r3').holes).toEqual([box(6000, 3900, 600, 900)]);
  });

  it('of a line moves to the left of the way along it', () => {
    expect(fileOf(edgeMoved(house, corner('d1', 0), 30, face)).doorways?.[0]?.line).toEqual([
      [4090, 1000],
      [4090, 1900],
    ]);
  });

  it('is not drawn onto or through the opposite one', () => {
    expect(edgeMoved(house, corner('r1', 0), -3000, face)).toMatchObject({ why: 'too-few-corners' });
    expect(edgeMoved(house, corner('r1', 0), -3200, face)).toMatchObject({ why: 'crosses' });
    expect(edgeMoved(ell, corner('r1', 4), -3000.5, face)).toMatchObject({ kind: 'refused' });
    expect(edgeMoved(ell, corner('r1', 2), 1000, face)).toMatchObject({ why: 'corners-meet' });
  });

  it('between two corners that stand in one wall makes a niche with square sides', () => {
    const one = fileOf(cornerAdded(ell, corner('r1', 0), [1000, 0]));
    const two = fileOf(cornerAdded(one, corner('r1', 1), [1900, 0]));
    expect(roomOf(fileOf(edgeMoved(two, corner('r1', 1), 300, face)), 'r1').outline.slice(0, 6)).toEqual([
      [0, 0],
      [1000, 0],
      [1000, -300],
      [1900, -300],
      [1900, 0],
      [4000, 0],
    ]);
  });

  it('that is one face of a wall makes the wall thicker, its doorway stays in the middle', () => {
    const thicker = fileOf(edgeMoved(house, corner('r1', 2), -80, face));
    expect(roomOf(thicker, 'r1').outline[2]).toEqual([4000, 2920]);
    // The wall is 280 mm now, from 2920 to 3200.
    expect(doorwayOf(thicker, 'd2')).toEqual({
      id: 'd2',
      line: [
        [1000, 3060],
        [1900, 3060],
      ],
      wallMm: 280,
      leaf: false,
    });
    expect(doorwayOf(thicker, 'd1')).toBe(doorwayOf(house, 'd1'));
  });

  it('whose room leaves the wall leaves the doorway behind', () => {
    const gone = fileOf(edgeMoved(house, corner('r1', 1), -700, face));
    expect(doorwayOf(gone, 'd1')).toBe(doorwayOf(house, 'd1'));
    const opened = fileOf(edgeMoved(house, corner('r1', 1), 120, face));
    expect(doorwayOf(opened, 'd1')).toBe(doorwayOf(house, 'd1'));
  });

  it('moves with its whole wall: the faces on both sides, and the doorways in it', () => {
    const edited = fileOf(edgeMoved(house, corner('r1', 1), 250, wall));
    expect(roomOf(edited, 'r1').outline).toEqual(box(0, 0, 4250, 3000));
    expect(roomOf(edited, 'r2').outline).toEqual(box(4370, 0, 3630, 3000));
    expect(edited.rooms[2]).toBe(house.rooms[2]);
    expect(doorwayOf(edited, 'd1')).toEqual({
      id: 'd1',
      line: [
        [4310, 1000],
        [4310, 1900],
      ],
      wallMm: 120,
    });
    expect(doorwayOf(edited, 'd2')).toBe(doorwayOf(house, 'd2'));
  });

  it('takes every room along a wall that runs past several', () => {
    // From the one room to the long one below, from there to the other room above.
    const edited = fileOf(edgeMoved(house, corner('r1', 2), 100, wall));
    expect(roomOf(edited, 'r1').outline).toEqual(box(0, 0, 4000, 3100));
    expect(roomOf(edited, 'r2').outline).toEqual(box(4120, 0, 3880, 3100));
    expect(roomOf(edited, 'r3').outline).toEqual(box(0, 3300, 8000, 2700));
    expect(doorwayOf(edited, 'd2').line).toEqual([
      [1000, 3200],
      [1900, 3200],
    ]);
    expect(doorwayOf(edited, 'd1')).toBe(doorwayOf(house, 'd1'));
  });

  it('with its whole wall keeps the doorway between the faces, and the wall as thick as it was', () => {
    const by = fc.integer({ min: -5000, max: 10_000 }).map((steps) => steps / 10);
    fc.assert(
      fc.property(fc.constantFrom('r1', 'r2', 'r3'), fc.nat(3), by, (id, number, byMm) => {
        const edited = edgeMoved(house, corner(id, number), byMm, wall);
        if (edited.kind === 'refused') return;
        const walls = wallsOf(edited.file);
        for (const [doorway, wallMm] of [
          ['d1', 120],
          ['d2', 200],
        ] as const) {
          const place = doorwayPlace(walls, doorwayOf(edited.file, doorway));
          expect(place?.wall.depthMm).toBeCloseTo(wallMm, 6);
          expect(place?.depthMm).toBeCloseTo(wallMm / 2, 6);
          expect(place?.startMm).toBeGreaterThanOrEqual(0);
          expect(place?.endMm).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });

  it('never turns an outline inside out', () => {
    const by = fc.integer({ min: -60_000, max: 60_000 }).map((steps) => steps / 10);
    fc.assert(
      fc.property(fc.nat(5), by, (number, byMm) => {
        const edited = edgeMoved(ell, corner('r1', number), byMm, face);
        if (edited.kind === 'edited') expect(ringSignedArea(roomOf(edited.file, 'r1').outline)).toBeGreaterThan(0);
      }),
    );
  });
});

describe('the length of an edge', () => {
  it('moves its far corner and the edge that begins there, so that right angles stay', () => {
    const edited = fileOf(edgeLengthSet(house, corner('r3', 0), 8500));
    expect(roomOf(edited, 'r3').outline).toEqual(box(0, 3200, 8500, 2800));
    const back = fileOf(edgeLengthSet(house, corner('r3', 2), 8500));
    expect(roomOf(back, 'r3').outline).toEqual(box(-500, 3200, 8500, 2800));
    const notch = fileOf(edgeLengthSet(ell, corner('r1', 2), 2500));
    expect(roomOf(notch, 'r1').outline).toEqual([
      [0, 0],
      [4000, 0],
      [4000, 2000],
      [1500, 2000],
      [1500, 3000],
      [0, 3000],
    ]);
  });

  it('moves the far corner alone where the next edge runs on, and the end of a line', () => {
    const split = fileOf(cornerAdded(ell, corner('r1', 0), [1000, 0]));
    expect(roomOf(fileOf(edgeLengthSet(split, corner('r1', 0), 1200)), 'r1').outline[1]).toEqual([1200, 0]);
    expect(fileOf(edgeLengthSet(house, corner('d1', 0), 1010)).doorways?.[0]?.line).toEqual([
      [4060, 1000],
      [4060, 2010],
    ]);
    const line: PlanFile = {
      ...planEmpty('Line'),
      noJoint: [
        {
          id: 'n1',
          line: [
            [0, 0],
            [1000, 0],
            [1000, 1000],
          ],
        },
      ],
    };
    expect(fileOf(edgeLengthSet(line, corner('n1', 0), 1500)).noJoint?.[0]?.line).toEqual([
      [0, 0],
      [1500, 0],
      [1500, 1000],
    ]);
  });

  it('is at least 1 mm', () => {
    expect(edgeLengthSet(house, corner('r1', 0), 0)).toMatchObject({ why: 'corners-meet' });
    expect(edgeLengthSet(house, corner('r1', 0), -500)).toMatchObject({ why: 'corners-meet' });
  });
});

test('a table of corners is taken whole or refused', () => {
  const triangle: readonly Point[] = [
    [0, 0],
    [3000, 0],
    [0, 3000],
  ];
  expect(roomOf(fileOf(ringSet(house, 'r1', 0, triangle)), 'r1').outline).toEqual(triangle);
  expect(ringSet(house, 'r1', 0, triangle.slice(1))).toEqual({ kind: 'refused', why: 'too-few-corners' });
  expect(
    ringSet(house, 'r1', 0, [
      [0, 0],
      [4000, 0],
      [0, 3000],
      [4000, 3000],
    ]),
  ).toEqual({
    kind: 'refused',
    why: 'crosses',
    at: [2000, 1500],
  });
  expect(ringSet(house, 'r1', 1, triangle)).toEqual({ kind: 'refused', why: 'no-such-corner' });
  expect(ringSet(house, 'd1', 0, triangle)).toEqual({ kind: 'refused', why: 'no-such-corner' });
  expect(fileOf(ringSet(house, 'r1', 0, box(0, 0, 4000, 3000)))).toBe(house);
});

test('a rectangle takes the width and height that are entered, its top left corner stays', () => {
  expect(roomOf(fileOf(rectangleSizeSet(house, 'r1', { widthMm: 3900.04 })), 'r1').outline).toEqual(
    box(0, 0, 3900, 3000),
  );
  expect(fileOf(rectangleSizeSet(house, 'c1', { widthMm: 400, heightMm: 500 })).columns?.[0]?.outline).toEqual(
    box(1000, 1000, 400, 500),
  );
  expect(rectangleSizeSet(house, 'c1', { widthMm: 0 })).toMatchObject({ why: 'corners-meet' });
  expect(rectangleSizeSet(ell, 'r1', { widthMm: 500 })).toEqual({ kind: 'refused', why: 'not-a-rectangle' });
  expect(rectangleSizeSet(house, 'p1', { widthMm: 500 })).toEqual({ kind: 'refused', why: 'not-a-rectangle' });
  expect(rectangleSizeSet(house, 'r9', { widthMm: 500 })).toEqual({ kind: 'refused', why: 'no-such-corner' });
});
