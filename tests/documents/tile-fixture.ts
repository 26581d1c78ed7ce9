import type { Point } from '../../src/geometry/point.ts';
import type { Analysis, TileFieldReport, WallCut } from '../../src/plan/analysis.ts';
import type { Plan, TileGrid } from '../../src/plan/plan.ts';
import { analysisOf, planOf } from './fixture.ts';

/** The plan of `fixture.ts` with tiles of 600 x 600 mm and grout of 3 mm from the corner of the hall, and what a tiler finds there by hand: tiles lie
 *  at multiples of 603 mm. The hall is 9000 mm long: 14 whole tiles end at 14 * 603 - 3 = 8439, grout to 8442, so 558 mm are left. It is 4000 mm
 *  deep: 6 tiles end at 3615, grout to 3618, so 382 mm are left; its leg of 7000 mm: 11 tiles to 6630, grout to 6633, so 367 mm. */

export const grid: TileGrid = {
  lengthMm: 600,
  widthMm: 600,
  groutMm: 3,
  origin: [0, 0],
  angleDeg: 0,
  bond: 'straight',
  shiftMm: 0,
  unknownBond: null,
  allowance: 0.1,
  tilesPerBox: 4,
};

export function wallCut(
  bay: string,
  room: string | null,
  line: readonly [Point, Point],
  sizesMm: readonly number[],
  over: Partial<WallCut> = {},
): WallCut {
  return {
    bay,
    room,
    along: 'wall',
    object: null,
    line,
    sizesMm,
    wholeMm: 600,
    leastShare: Math.min(...sizesMm) / 600,
    isAskew: false,
    tiles: 4,
    wholeOffMm: null,
    ...over,
  };
}

export function fieldReport(over: Partial<TileFieldReport> = {}): TileFieldReport {
  return {
    id: null,
    rooms: ['r1', 'r2'],
    origin: grid.origin,
    angleDeg: grid.angleDeg,
    lengthMm: grid.lengthMm,
    widthMm: grid.widthMm,
    groutMm: grid.groutMm,
    bond: grid.bond,
    full: 90,
    cut: 60,
    underHalf: 7,
    slivers: 5,
    smallestCutMm: 96,
    inJoint: 0,
    sawn: { cut: 60, underHalf: 7, slivers: 5, smallestCutMm: 96 },
    tileM2: 51.4,
    groutM2: 0.6,
    laid: 130,
    fromOffCuts: 20,
    allowance: 0.1,
    order: 143,
    boxes: 36,
    // 3 x 5 modules from the corner: 1809 and 3015
    firstTile: [
      [1809, 3015],
      [2409, 3015],
      [2409, 3615],
      [1809, 3615],
    ],
    cuts: [
      // whole tiles at the upper wall
      wallCut(
        'B2',
        'r1',
        [
          [4000, 0],
          [9000, 0],
        ],
        [600],
        { tiles: 0 },
      ),
      wallCut(
        'B2',
        'r1',
        [
          [9000, 0],
          [9000, 4000],
        ],
        [558],
      ),
      // the kitchen begins at 4120: tile 6 of a course covers 3618 to 4218, of which 98 mm are left, tile 14 of it 8442 to 9042
      wallCut(
        'B3',
        'r2',
        [
          [4120, 7000],
          [4120, 4120],
        ],
        [98],
      ),
      wallCut(
        'B3',
        'r2',
        [
          [4120, 7000],
          [9000, 7000],
        ],
        [250],
      ),
      wallCut(
        'B1',
        null,
        [
          [4000, 0],
          [4000, 4000],
        ],
        [382],
        { along: 'joint', object: 'J1' },
      ),
      // within the doorway's reveal
      wallCut(
        'B2',
        'r1',
        [
          [6000, 4000],
          [6000, 4060],
        ],
        [30],
        { along: 'jamb' },
      ),
    ],
    ...over,
  };
}

/** Of its 60 pieces 6 slivers under half fall into the perimeter joint: 90 + 60 - 6 - 20 = 124 to lay, x 1.1 = 136.4. */
export const jointedReport = fieldReport({
  ...{ underHalf: 13, slivers: 11, smallestCutMm: 7, inJoint: 6 },
  sawn: { cut: 54, underHalf: 7, slivers: 5, smallestCutMm: 96 },
  ...{ laid: 124, order: 137, boxes: 35 },
});

export function tiledPlan(over: Partial<Plan> = {}): Plan {
  return planOf({ tiles: grid, ...over });
}

export function tiledAnalysis(
  fields: readonly TileFieldReport[] = [fieldReport()],
  over: Partial<Analysis> = {},
): Analysis {
  const analysis = analysisOf();
  const [first = fieldReport()] = fields;
  const { full, cut, underHalf, slivers, smallestCutMm, inJoint, sawn, origin, angleDeg } = first;
  // J1 at 4000: 3616.5 and 4219.5 are the grout lines beside it. J2 at 4060: 3616.5 and 4219.5 as well.
  const grout = { onGroutLine: false, bondLets: true } as const;
  const joints = analysis.joints.map((joint) =>
    joint.id === 'J1'
      ? { ...joint, ...grout, offGroutMm: 219.5, cutsTiles: 7, tilesAt: 'cut' as const }
      : { ...joint, ...grout, offGroutMm: 159.5, cutsTiles: 2, tilesAt: 'cut' as const },
  );
  return {
    ...analysis,
    joints,
    tiles: { origin, angleDeg, full, cut, underHalf, slivers, smallestCutMm, inJoint, sawn, fields },
    ...over,
  };
}
