import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import type { Joint } from '../../src/plan/analysis.ts';
import { analysed } from '../contract/analysed.ts';
import { box, type PlanJson, planJson, type RoomJson, type TilesJson } from '../floors/plan-json.ts';
import { tilePlane } from '../oracle/tile-plane.ts';

const long: TilesJson = { lengthMm: 600, widthMm: 300, groutMm: 3, origin: [0, 0] };
const square: TilesJson = { lengthMm: 600, widthMm: 600, groutMm: 3, origin: [0, 0] };
const left: RoomJson = { id: 'r1', name: 'Left', outline: box(0, 0, 1806, 1806) };
const right: RoomJson = { id: 'r2', name: 'Right', outline: box(1926, 0, 1806, 1806) };
const door = (x: number): Partial<PlanJson> => ({
  doorways: [
    {
      id: 'd1',
      line: [
        [x, 500],
        [x, 1400],
      ],
      wallMm: 120,
      leaf: true,
    },
  ],
});

function grouts(json: PlanJson): Partial<Joint>[] {
  return analysed(json).analysis.joints.map(({ onGroutLine, offGroutMm, cutsTiles, tilesAt, bondLets }) => ({
    ...{ onGroutLine, tilesAt, bondLets, cutsTiles },
    offGroutMm: offGroutMm === null ? null : Math.round(offGroutMm * 1000) / 1000,
  }));
}

describe('what the tiles do at a joint', () => {
  it('cuts them under the leaf, where the field runs on', () => {
    // 1866 - 1807.5; tiles of three rows in 500-1400
    expect(grouts(planJson('Door', [left, right], { tiles: square, ...door(1866) }))).toEqual([
      { onGroutLine: false, offGroutMm: 58.5, cutsTiles: 3, tilesAt: 'cut', bondLets: true },
    ]);
  });

  it('lets the field restart at a doorway; the nearer grout counts, and the tiles of both fields that it cuts', () => {
    // the other field begins at 1926: its grout stands at 1924.5, 58.5 beyond the joint at 1866; the nearer of the two is 58.5 from both.
    const tileFields = [{ id: 't2', rooms: ['r2'], ...square, origin: [1926, 0] as const }];
    expect(grouts(planJson('Door', [left, right], { tiles: square, tileFields, ...door(1866) }))).toEqual([
      { onGroutLine: false, offGroutMm: 58.5, cutsTiles: 6, tilesAt: 'restart', bondLets: true },
    ]);
    // set out from the joint, half a grout beyond: on the line of its own, the other field is still cut
    const own = [{ id: 't2', rooms: ['r2'], ...square, origin: [1867.5, 0] as const }];
    expect(grouts(planJson('Door', [left, right], { tiles: square, tileFields: own, ...door(1866) }))).toEqual([
      { onGroutLine: true, offGroutMm: 0, cutsTiles: 3, tilesAt: 'restart', bondLets: true },
    ]);
  });

  it('ends them where only one side is tiled, in the plan file either by covering or by fields', () => {
    const end = { onGroutLine: false, offGroutMm: 58.5, cutsTiles: 3, tilesAt: 'one-side', bondLets: true };
    const bare = { ...right, covering: 'timber' } as RoomJson;
    expect(grouts(planJson('Door', [left, bare], { tiles: square, ...door(1866) }))).toEqual([end]);
    const tileFields = [{ id: 't1', rooms: ['r1'], ...square }];
    expect(grouts(planJson('Door', [left, right], { tileFields, ...door(1866) }))).toEqual([end]);
  });

  it('has nothing to tell where neither side is tiled', () => {
    const none = { onGroutLine: null, offGroutMm: null, cutsTiles: 0, tilesAt: null, bondLets: null };
    expect(grouts(planJson('Door', [left, right], door(1866)))).toEqual([none]);
    const far = { id: 'r3', name: 'Far', outline: box(9000, 0, 2000, 2000) };
    const tileFields = [{ id: 't3', rooms: ['r3'], ...square }];
    expect(grouts(planJson('Door', [left, right, far], { tileFields, ...door(1866) }))).toEqual([none]);
  });

  it('parts two fields of one open floor, where the joint lies in the grout of one', () => {
    const open = [
      { id: 'r1', name: 'Kitchen', outline: box(0, 0, 1804.5, 1806) },
      { id: 'r2', name: 'Hall', outline: box(1804.5, 0, 1806, 1806) },
    ];
    const drawnJoints = [
      {
        id: 'x1',
        line: [
          [1804.5, 0],
          [1804.5, 1806],
        ] as const,
      },
    ];
    const tileFields = [{ id: 't1', rooms: ['r1'], ...square, origin: [300, 0] as const }];
    // the hall's own grid begins at 1806, with its grout at 1804.5; the kitchen's grout stands at 1504.5 and 2107.5, and three of its tiles are cut
    const tiles = { ...square, origin: [1806, 0] as const };
    expect(grouts(planJson('Open', open, { tiles, tileFields, drawnJoints }))).toEqual([
      { onGroutLine: true, offGroutMm: 0, cutsTiles: 3, tilesAt: 'restart', bondLets: true },
    ]);
  });

  it('takes structural joints as all others', () => {
    const structural = (x: number) =>
      planJson('Hall', [left], {
        tiles: square,
        structuralJoints: [
          {
            id: 's1',
            line: [
              [x, 0],
              [x, 1806],
            ],
            widthMm: 20,
          },
        ],
      });
    expect(grouts(structural(601.5))).toEqual([
      { onGroutLine: true, offGroutMm: 0, cutsTiles: 0, tilesAt: 'on-line', bondLets: true },
    ]);
    expect(grouts(structural(800))).toEqual([
      { onGroutLine: false, offGroutMm: 198.5, cutsTiles: 3, tilesAt: 'cut', bondLets: true },
    ]);
  });

  it('lets joints run along the courses of half bond and not across them', () => {
    const hall = { id: 'r1', name: 'Hall', outline: box(0, 0, 1806, 1815) };
    const drawn = (...line: Point[]) =>
      planJson('Hall', [hall], { tiles: { ...long, bond: 'half' }, drawnJoints: [{ id: 'x1', line }] });
    expect(grouts(drawn([0, 604.5], [1806, 604.5]))).toEqual([
      { onGroutLine: true, offGroutMm: 0, cutsTiles: 0, tilesAt: 'on-line', bondLets: true },
    ]);
    // six courses: every other has its grout there, three tiles are cut
    expect(grouts(drawn([601.5, 0], [601.5, 1815]))).toEqual([
      { onGroutLine: false, offGroutMm: 301.5, cutsTiles: 3, tilesAt: 'cut', bondLets: false },
    ]);
  });

  it('lets no joint run straight through a herringbone, nor askew to any grid', () => {
    const hall = { id: 'r1', name: 'Hall', outline: box(0, 0, 1200, 1200) };
    const drawn = (tiles: TilesJson) =>
      planJson('Hall', [hall], {
        tiles,
        drawnJoints: [
          {
            id: 'x1',
            line: [
              [0, 600],
              [1200, 600],
            ],
          },
        ],
      });
    // tiles of 200 x 100: at 600 the heads and sides of four tiles lie along every 400, and one upright tile stands across: 3 in 1200
    expect(grouts(drawn({ lengthMm: 200, widthMm: 100, groutMm: 0, origin: [0, 0], bond: 'herringbone' }))).toEqual([
      { onGroutLine: false, offGroutMm: 100, cutsTiles: 3, tilesAt: 'cut', bondLets: false },
    ]);
    expect(grouts(drawn({ ...square, angleDeg: 30 }))).toMatchObject([{ onGroutLine: false, bondLets: false }]);
    expect(grouts(drawn({ ...square, angleDeg: 2.1 }))).toMatchObject([{ bondLets: false }]);
    expect(grouts(drawn({ ...square, angleDeg: 1.9 }))).toMatchObject([{ bondLets: true }]);
  });

  it('turns with the floor: a joint on the grout of a turned grid is on it', () => {
    const turn = (p: Point): Point => tilePlane({ origin: [0, 0], angleDeg: 30 }).from(p);
    const hall = { id: 'r1', name: 'Hall', outline: box(0, 0, 3012, 1806).map(turn) };
    const line = [turn([1204.5, 0]), turn([1204.5, 1806])];
    const [joint] = analysed(
      planJson('Hall', [hall], { tiles: { ...square, angleDeg: 30 }, drawnJoints: [{ id: 'x1', line }] }),
    ).analysis.joints;
    // corners are rounded to 0.1 mm
    expect(joint?.offGroutMm).toBeLessThan(0.1);
    expect(joint?.onGroutLine).toBe(true);
  });
});
