import { describe, expect, it } from 'vitest';
import { fieldSetOuts } from '../../src/documents/set-out.ts';
import type { CornerPlaces } from '../../src/documents/set-out-corners.ts';
import type { RoomSetOut } from '../../src/documents/set-out-rooms.ts';
import { wallFaces } from '../../src/documents/set-out-walls.ts';
import type { Point } from '../../src/geometry/point.ts';
import { gridFrame } from '../../src/plan/tile-grid.ts';
import { box } from './fixture.ts';
import { laidOut, sheetWords } from './set-out-fixture.ts';
import { fieldReport, tiledAnalysis, tiledPlan, wallCut } from './tile-fixture.ts';

const tiles = { lengthMm: 600, widthMm: 600, groutMm: 3, origin: [0, 0] as Point };

/** A hall of 5 x 4 m and beyond a wall of 100 mm a store of 2 x 3 m, tiles of 600 mm from the upper left corner of the hall. */
function twoRooms(over: object = {}) {
  return laidOut({
    rooms: [
      { id: 'hall', name: 'Hall', outline: box(0, 0, 5000, 4000) },
      { id: 'store', name: 'Store', outline: box(5100, 0, 2000, 3000) },
    ],
    doorways: [
      {
        id: 'd',
        line: [
          [5050, 1000],
          [5050, 1900],
        ],
        wallMm: 100,
        leaf: true,
      },
    ],
    tiles: { ...tiles, ...over },
  });
}

function oneHall(outline: readonly Point[], over: object = {}, file: object = {}) {
  return laidOut({ rooms: [{ id: 'hall', name: 'Hall', outline }], tiles: { ...tiles, ...over }, ...file });
}

function roomsOf({ plan, analysis }: ReturnType<typeof laidOut>): readonly RoomSetOut[] {
  return fieldSetOuts(plan, analysis, wallFaces(analysis)).flatMap(({ rooms }) => rooms);
}

function textOf({ plan, analysis }: ReturnType<typeof laidOut>): string {
  return sheetWords(plan, analysis);
}

/** Where measured corners lie: each wall gives a line so far in front of it. */
function placed({ walls, fromMm }: CornerPlaces): readonly Point[] {
  return fromMm.map(([one, other]): Point => {
    const [a, b] = walls.map(({ into }) => into) as [Point, Point];
    const [p, q] = walls.map(({ line: [[x, y]], into }, i) => x * into[0] + y * into[1] + (i === 0 ? one : other)) as [
      number,
      number,
    ];
    const det = a[0] * b[1] - a[1] * b[0];
    return [(p * b[1] - q * a[1]) / det, (a[0] * q - b[0] * p) / det];
  });
}

function rest(mm: number, module: number): number {
  const off = ((mm % module) + module) % module;
  return Math.min(off, module - off);
}

describe('every room on the set-out sheet', () => {
  it('has the cut at each of its walls, whole tiles by name, and the lengths of a check', () => {
    // Store: the tile from 8 * 603 = 4824 to 5424 leaves 5424 - 5100 = 324; the one from 11 * 603 = 6633 leaves 7100 - 6633 = 467; below, the one from
    // 4 * 603 = 2412 leaves 588. From the grout at 5424 the right wall is 1676 mm off and from that at 600 the lower wall 2400: 1500 and 2000 fit.
    expect(textOf(twoRooms())).toContain(
      'Store Left 324, right 467, upper whole, lower 588. Square 1500, 2000, 2500 mm.',
    );
    // Hall: 5000 - 4824 = 176 and 4000 - 3618 = 382; its square is checked by the reference lines
    expect(textOf(twoRooms())).toContain('Hall Left whole, right 176, upper whole, lower 382. Store');
  });

  it('tells the cuts of a wall that steps in the order of the wall', () => {
    // upper walls at 0 and at 1000: 1203 - 1000 = 203; right walls at 3000 and 5000: 3000 - 2412 = 588 and 5000 - 4824 = 176
    const stepped = oneHall([
      [0, 0],
      [3000, 0],
      [3000, 1000],
      [5000, 1000],
      [5000, 4000],
      [0, 4000],
    ]);
    expect(textOf(stepped)).toContain('Left whole, right 588 then 176, upper whole then 203, lower 382.');
  });

  it('tells whole tiles that stand off a wall which runs in the grout before them', () => {
    // tiles from 2 mm on: the wall at 0 lies in the grout from -1 to 2
    expect(textOf(oneHall(box(0, 0, 5000, 4000), { origin: [2, 0] }))).toContain('Left whole 2 off the wall, right');
  });

  it('has a corner of a tile where courses are shifted', () => {
    const store = roomsOf(twoRooms({ widthMm: 300, bond: 'third' })).find(({ room }) => room === 'store');
    expect(store?.byCuts).toBe(false);
    const [[x = 0, y = 0] = []] = store?.places ? placed(store.places) : [];
    // upper or lower side of a course of 303 mm, a side of a tile in a course that is shifted by 201 mm a course
    const course = Math.floor(y / 303);
    expect(store?.places?.fromMm).toHaveLength(1);
    const isRight = store?.places?.corner.endsWith('right') ? 600 : 0;
    const isLower = store?.places?.corner.startsWith('lower') ? 300 : 0;
    expect(rest(y - isLower, 303)).toBeCloseTo(0, 6);
    expect(rest(x - isRight - course * 201, 603)).toBeCloseTo(0, 6);
  });

  it('has the same corner of two tiles where no wall runs with the tiles', () => {
    const turned = twoRooms({ angleDeg: 30 });
    const store = roomsOf(turned).find(({ room }) => room === 'store');
    const found = store?.places ? placed(store.places) : [];
    expect(found).toHaveLength(2);
    const { toGrid } = gridFrame({ origin: [0, 0], angleDeg: 30 });
    const [one, other] = found.map(toGrid) as [Point, Point];
    // both in one course, a number of tiles apart
    expect(one[1]).toBeCloseTo(other[1], 6);
    expect(rest(one[0] - other[0], 603)).toBeCloseTo(0, 6);
    expect(Math.min(rest(one[0], 603), rest(one[0] - 600, 603))).toBeCloseTo(0, 6);
    expect(textOf(turned)).toMatch(
      /Store Other walls \d+ to \d+\. [A-Z][a-z ]+ corners of two tiles of one row: \d+ mm from the/u,
    );
  });

  it('is told to go on from another where it has no two walls to measure from', () => {
    // open to the hall on the whole of its left side and walls only above and below
    const plan = tiledPlan();
    const analysis = tiledAnalysis([fieldReport({ cuts: [] })]);
    const faces = wallFaces(analysis).filter(({ room }) => room === 'r1');
    const kitchen = fieldSetOuts(plan, analysis, faces)
      .flatMap(({ rooms }) => rooms)
      .find(({ room }) => room === 'r2');
    expect(kitchen).toMatchObject({ byCuts: false, places: null });
    const bare = { ...analysis, edges: analysis.edges.filter(({ bay }) => bay !== 'B3') };
    expect(sheetWords(plan, bare)).toContain(
      'Kitchen No two straight walls to measure from: its grout lines run on from Hall.',
    );
  });

  it('leaves out cuts that fall into the perimeter joint', () => {
    // the strip of the plan is 10 mm wide
    const cut = (mm: number) =>
      wallCut(
        'B3',
        'r2',
        [
          [4120, 7000],
          [4120, 4120],
        ],
        [mm],
      );
    const edges = tiledAnalysis().edges.map((edge) => (edge.bay === 'B3' ? { ...edge, room: 'r2' } : edge));
    const text = (mm: number) => sheetWords(tiledPlan(), tiledAnalysis([fieldReport({ cuts: [cut(mm)] })], { edges }));
    expect(text(10)).toContain('Kitchen Left 10 (left out).');
    expect(text(11)).toContain('Kitchen Left 11.');
  });
});

describe('curved walls', () => {
  const round = Array.from({ length: 48 }, (_, i): Point => {
    const turn = (2 * Math.PI * i) / 48;
    return [Math.round(3000 + 3000 * Math.cos(turn)), Math.round(3000 + 3000 * Math.sin(turn))];
  });
  const rotunda = oneHall(round);

  it('are no walls to measure along, but stand in the way', () => {
    expect(wallFaces(rotunda.analysis).every(({ isCurve }) => isCurve)).toBe(true);
    const text = textOf(rotunda);
    expect(text).toContain('No straight wall runs along it or meets it');
    expect(text).not.toMatch(/from the [a-z ]+ corner/u);
  });

  it('are said to carry no mark of narrow cuts, with the least and the greatest cut', () => {
    expect(textOf(rotunda)).toContain('Curved walls and walls askew to the tiles are met by cuts of every size');
    expect(textOf(rotunda)).toMatch(/Hall Other walls \d+ to \d+\./u);
    expect(textOf(twoRooms())).not.toContain('Curved walls');
  });

  it('are not what a bay window with three long sides is', () => {
    const bay = oneHall([
      [0, 0],
      [4000, 0],
      [5500, 800],
      [5500, 3200],
      [4000, 4000],
      [0, 4000],
    ]);
    expect(wallFaces(bay.analysis).some(({ isCurve }) => isCurve)).toBe(false);
  });
});
