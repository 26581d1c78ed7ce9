import { describe, expect, it } from 'vitest';
import { comparisonOf } from '../../src/documents/compare.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { rectangle } from './compare-fixture.ts';
import { box } from './fixture.ts';
import { hallAndStore } from './paper-fixture.ts';

/** What is drawn otherwise within the same box, and what of a thing is entered otherwise. Places are read off the drawing of the test; corners stand in their
 *  order along the outline. */

function told(before: Partial<PlanFile>, now: Partial<PlanFile>) {
  return comparisonOf(hallAndStore(before), hallAndStore(now)).settings.map(({ of, words, before: was, now: is }) => [
    of,
    words,
    was,
    is,
  ]);
}

const [, store] = hallAndStore().file.rooms;
const hallOf = (outline: readonly Point[], holes: readonly (readonly Point[])[] = []): Partial<PlanFile> => ({
  rooms: [{ id: 'hall', name: 'Hall', outline, holes }, ...(store ? [store] : [])] as PlanFile['rooms'],
});
// 12 x 5 m as in the fixture
const plain = hallOf(box(0, 0, 12_000, 5000));

describe('a room', () => {
  it('that lost a corner of its floor is told by the corners, its box being the same', () => {
    const notched = hallOf([
      [0, 0],
      [12_000, 0],
      [12_000, 4500],
      [8000, 4500],
      [8000, 5000],
      [0, 5000],
    ]);
    expect(told(plain, notched)).toEqual([
      ['Hall', 'Room, corners that changed', '12000, 5000', '8000, 5000; 8000, 4500; 12000, 4500'],
    ]);
  });

  it('whose wall was moved is told by its box, and what else changed in it by the corners', () => {
    expect(told(plain, hallOf(box(0, 0, 12_500, 5000)))).toEqual([
      ['Hall', 'Room, from and to', '0, 0 to 12000, 5000', '0, 0 to 12500, 5000'],
    ]);
    const both = hallOf([
      [0, 0],
      [12_500, 0],
      [12_500, 5000],
      [400, 5000],
      [0, 4600],
    ]);
    expect(told(plain, both).map(([, words]) => words)).toEqual(['Room, from and to', 'Room, corners that changed']);
  });

  it('that has a hole now, or one of another shape, is told by the hole', () => {
    const hole = box(7000, 2000, 300, 300);
    const cut: Point[] = [...hole.slice(0, 3), [7000, 2200]];
    expect(told(plain, hallOf(box(0, 0, 12_000, 5000), [hole]))).toEqual([
      ['Hall', 'Hole in the room, from and to', null, '7000, 2000 to 7300, 2300'],
    ]);
    expect(told(hallOf(box(0, 0, 12_000, 5000), [hole]), hallOf(box(0, 0, 12_000, 5000), [cut]))).toEqual([
      ['Hall', 'Hole in the room, corners that changed', '7000, 2300', '7000, 2200'],
    ]);
  });

  it('is the same drawn from another corner, the other way round', () => {
    const turned = [...box(0, 0, 12_000, 5000).slice(2), ...box(0, 0, 12_000, 5000).slice(0, 2)].reverse();
    expect(told(plain, hallOf(turned))).toEqual([]);
  });

  it('of very many new corners lists the first of them and counts the rest', () => {
    // twenty steps of 100 mm in the far wall: 40 corners, two of them where the wall ends
    const steps = Array.from({ length: 20 }, (_, i): Point[] => [
      [12_000 - i * 200, 5000 - (i % 2) * 100],
      [12_000 - (i + 1) * 200, 5000 - (i % 2) * 100],
    ]).flat();
    const [[, , , is] = []] = told(plain, hallOf([[0, 0], [12_000, 0], ...steps, [0, 5000]]));
    expect(String(is).split(';')).toHaveLength(8);
    expect(is).toMatch(/ and \d+ more$/u);
  });
});

describe('a thing', () => {
  const joinery = (over: Partial<NonNullable<PlanFile['joinery']>[number]>): Partial<PlanFile> => ({
    joinery: [{ id: 'u1', name: 'Island', outline: box(5000, 1000, 2000, 900), ...over }] as PlanFile['joinery'],
  });

  it('of joinery is told by what lies below it, how it is held, and its name', () => {
    expect(told(joinery({ under: 'no-insulation' }), joinery({ under: 'insulated' }))).toEqual([
      ['Island', 'Below the joinery', 'screed on the slab, no insulation', 'insulation and screed'],
    ]);
    expect(told(joinery({}), joinery({ fixedThrough: true }))).toEqual([
      ['Island', 'Bolted through to the slab', 'no', 'yes'],
    ]);
    expect(told(joinery({}), joinery({ name: 'Bar' }))).toEqual([['Bar', 'Name', 'Island', 'Bar']]);
  });

  it('that is another in the same box is told by its corners: a column, and a joint of the building with a bend', () => {
    const column = (outline: readonly Point[]): Partial<PlanFile> => ({
      columns: [{ id: 'c1', outline }] as PlanFile['columns'],
    });
    const square = box(4000, 2000, 300, 300);
    const cut: Point[] = [
      [4000, 2000],
      [4300, 2000],
      [4300, 2300],
      [4150, 2300],
      [4000, 2150],
    ];
    expect(told(column(square), column(cut))).toEqual([
      ['c1', 'Column, corners that changed', '4000, 2300', '4000, 2150; 4150, 2300'],
    ]);
    const building = (bendMm: number): Partial<PlanFile> => ({
      structuralJoints: [
        {
          id: 's1',
          line: [
            [6000, 0],
            [6400, bendMm],
            [6200, 5000],
          ],
          widthMm: 20,
        },
      ] as PlanFile['structuralJoints'],
    });
    expect(told(building(2000), building(2500))).toEqual([
      ['s1', 'Joint of the building, points that changed', '6400, 2000', '6400, 2500'],
    ]);
  });

  it('is told by its size: the diameter of a pipe, the width of a joint of the building', () => {
    const pipe = (diameterMm: number): Partial<PlanFile> => ({
      pipes: [{ id: 'p1', centre: [3000, 3000], diameterMm }],
    });
    expect(told(pipe(110), pipe(125))).toEqual([['p1', 'Diameter of the pipe', 110, 125]]);
    const building = (widthMm: number): Partial<PlanFile> => ({
      structuralJoints: [
        {
          id: 's1',
          line: [
            [6000, 0],
            [6000, 5000],
          ],
          widthMm,
        },
      ] as PlanFile['structuralJoints'],
    });
    expect(told(building(20), building(30))).toEqual([['s1', 'Width of the joint of the building', 20, 30]]);
  });

  it('of sun is told where it is new, is moved, gone or warmer', () => {
    const sun = (x: number, highestC: number): Partial<PlanFile> => ({
      sunZones: [{ id: 'z1', outline: box(x, 0, 2000, 1500), highestC }] as PlanFile['sunZones'],
    });
    const [here, there] = ['1000, 0 to 3000, 1500', '1500, 0 to 3500, 1500'];
    expect(told({}, sun(1000, 50))).toEqual([['z1', 'Sunlit floor, from and to', null, here]]);
    expect(told(sun(1000, 50), {})).toEqual([['z1', 'Sunlit floor, from and to', here, null]]);
    expect(told(sun(1000, 50), sun(1500, 50))).toEqual([['z1', 'Sunlit floor, from and to', here, there]]);
    expect(told(sun(1000, 50), sun(1000, 60))).toEqual([['z1', 'Highest temperature in the sun', 50, 60]]);
  });

  it('that keeps joints off is told where it comes and goes: an area, and a line', () => {
    const area: Partial<PlanFile> = {
      keepClear: [{ id: 'k1', outline: box(8000, 1000, 500, 500) }] as PlanFile['keepClear'],
    };
    const line: Partial<PlanFile> = {
      noJoint: [
        {
          id: 'n1',
          line: [
            [8000, 0],
            [8000, 5000],
          ],
        },
      ] as PlanFile['noJoint'],
    };
    expect(told({}, area)).toEqual([
      ['k1', 'Area to keep clear of joints, from and to', null, '8000, 1000 to 8500, 1500'],
    ]);
    expect(told(line, {})).toEqual([['n1', 'Joint taken away, from and to', '8000, 0 to 8000, 5000', null]]);
  });

  it('under another id in the same place is the same thing, and is told by what else it is now', () => {
    const pipe = (id: string, diameterMm: number): Partial<PlanFile> => ({
      pipes: [{ id, centre: [3000, 3000], diameterMm }],
    });
    expect(told(pipe('p1', 110), pipe('p9', 110))).toEqual([]);
    expect(told(pipe('p1', 110), pipe('p9', 125))).toEqual([['p9', 'Diameter of the pipe', 110, 125]]);
  });
});

describe('tiles', () => {
  const tiles = { lengthMm: 600, widthMm: 300, groutMm: 3, bond: 'half', allowance: 0.1 } as const;
  const field = { id: 'f1', rooms: ['store'], lengthMm: 200, widthMm: 200, groutMm: 2 } as const;

  it('are told by where they begin, how they are turned, how many are ordered and how many are in a box', () => {
    const now = { ...tiles, origin: [10, 20] as const, angleDeg: 5, allowance: 0.15, tilesPerBox: 8 };
    expect(told({ tiles }, { tiles: now })).toEqual([
      [null, 'Set-out point of the tiles', '0, 0', '10, 20'],
      [null, 'Turn of the tiles', 0, 5],
      [null, 'Tiles to order beyond those laid', 10, 15],
      [null, 'Tiles in a box', null, 8],
    ]);
  });

  it('of a field are told as those of the floor are, with its rooms', () => {
    const fields = (over: object): Partial<PlanFile> => ({ tiles, tileFields: [{ ...field, ...over }] });
    expect(told(fields({}), fields({ widthMm: 400, allowance: 0.3 }))).toEqual([
      ['Field f1', 'Width of the tiles', 200, 400],
      // what is usual where none is entered is another test's matter
      ['Field f1', 'Tiles to order beyond those laid', expect.any(Number), 30],
    ]);
    expect(told(fields({}), fields({ rooms: ['hall', 'store'] }))[0]).toEqual([
      'Field f1',
      'Rooms of the tile field',
      'Store',
      'Hall, Store',
    ]);
    expect(told({ tiles }, fields({})).map(([of, words, was]) => [of, words, was])).toEqual([
      ['Field f1', 'Tile field', null],
    ]);
  });

  it('that went along with a floor moved on its sheet lie as they lay', () => {
    const moved = (dx: number, originMm: number): Partial<PlanFile> => ({
      rooms: [rectangle('hall', [dx, 0], [12_000 + dx, 5000])],
      doorways: [],
      tiles: { ...tiles, origin: [originMm, 0] },
    });
    expect(told(moved(0, 100), moved(700, 800))).toEqual([]);
    expect(told(moved(0, 100), moved(700, 850))).toEqual([[null, 'Set-out point of the tiles', '800, 0', '850, 0']]);
  });
});

describe('what is entered of a joint or a revision', () => {
  it('is told field by field, so that words in another field are a change', () => {
    const note = (over: object): Partial<PlanFile> => ({ papers: { joints: [{ key: 'doorway:d1', ...over }] } });
    const rows = told(note({ profile: 'angle', pipes: 2 }), note({ colour: 'angle', pipes: 4 }));
    expect(rows.map(([, words, was, is]) => [words, was, is])).toEqual([
      ['Profile', 'angle', null],
      ['Colour', null, 'angle'],
      ['Pipes through the joint', 2, 4],
    ]);
    const [joint] = hallAndStore().analysis.joints.filter(({ key }) => key === 'doorway:d1');
    expect(new Set(rows.map(([of]) => of))).toEqual(new Set([`Joint ${joint?.id}`]));
  });

  it('is told of a revision whose words are others under the same mark', () => {
    const revision = (text: string): Partial<PlanFile> => ({ papers: { revisions: [{ mark: 'A', text }] } });
    expect(told(revision('Joint moved'), revision('Joint taken out'))).toEqual([
      ['Revision A', 'What the revision changes', 'Joint moved', 'Joint taken out'],
    ]);
  });
});
