import type { Point } from '../../src/geometry/point.ts';
import type { Region, Ring } from '../../src/geometry/ring.ts';
import type { Analysis } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';
// biome-ignore lint/correctness/useImportExtensions: the rule takes the declarations beside the file for the file itself
import { jtsClosed, jtsPieces } from '../geometry/jts.mjs';
import { expectedFloor } from './expected-floor.ts';
import { distance, lineSegments, segments, signedArea } from './planar.ts';

/** Quantities measured from the geometry of the plan with a library of its own (jsts): floor is rooms and openings of doorways less what stands on the
 *  slab; strip stands along all of its boundary; joints are what bays have of boundary beyond that. */
export interface MeasuredFloor {
  readonly floorM2: number;
  readonly screedM3: number;
  readonly edgeM: number;
  readonly jointM: number;
  /** Lines under closed leaves, jamb to jamb. */
  readonly doorwayM: number;
  /** Of the lines of the building's joints what lies on the floor. */
  readonly structuralM: number;
}

export function measuredFloor(plan: Plan, analysis: Pick<Analysis, 'bays'>): MeasuredFloor {
  const expected = expectedFloor(plan);
  const solid = [...expected.rooms.map(({ shape }) => shape), ...expected.doors.map(({ floor }) => floor)].flat();
  const things = united(expected.obstacles.flat());
  const closed = jtsClosed(united(solid), slitMm);
  const floor = things.length === 0 ? closed : jtsPieces('subtract', closed, things);
  const floorM2 = floor.reduce((sum, region) => sum + areaMm2(region), 0) / 1e6;
  const edgeM = boundaryM(floor);
  const baysM = boundaryM(analysis.bays);
  return {
    floorM2,
    screedM3: (floorM2 * plan.screed.thicknessMm) / 1000,
    edgeM,
    jointM: (baysM - edgeM) / 2,
    doorwayM: plan.doorways.reduce((sum, { line }) => sum + distance(line[0], line[1]), 0) / 1000,
    structuralM: plan.structuralJoints.reduce((sum, { line }) => sum + onFloorMm(line, floor), 0) / 1000,
  };
}

/** Rooms that were traced miss each other by up to a millimetre, and no wall is so thin. */
const slitMm = 2.2;

/** On the plan's grid of 0.1 mm: rooms and openings meet there exactly. */
function united(regions: readonly Region[]): readonly Region[] {
  const onGrid = (ring: Ring) => ring.map(([x, y]): Point => [Math.round(x * 10) / 10, Math.round(y * 10) / 10]);
  return halvesUnited(regions.map(({ outline, holes }) => ({ outline: onGrid(outline), holes: holes.map(onGrid) })));
}

/** Half and half, so that no piece is gone over for each of the others. */
function halvesUnited(regions: readonly Region[]): readonly Region[] {
  if (regions.length < 2) return regions;
  const half = Math.ceil(regions.length / 2);
  return jtsPieces('union', halvesUnited(regions.slice(0, half)), halvesUnited(regions.slice(half)));
}

function areaMm2({ outline, holes }: Region): number {
  return Math.abs(signedArea(outline)) - holes.reduce((sum, hole) => sum + Math.abs(signedArea(hole)), 0);
}

function boundaryM(regions: readonly Pick<Region, 'outline' | 'holes'>[]): number {
  const sides = regions.flatMap(({ outline, holes }) => [outline, ...holes].flatMap(segments));
  return sides.reduce((sum, [a, b]) => sum + distance(a, b), 0) / 1000;
}

/** A line drawn 1 mm wide and cut to the floor: its area in mm2 is its length in mm. */
function onFloorMm(line: readonly Point[], floor: readonly Region[]): number {
  return lineSegments(line).reduce((sum, [a, b]) => {
    const d = distance(a, b);
    const [nx, ny] = [(b[1] - a[1]) / d / 2, (a[0] - b[0]) / d / 2];
    const outline: Ring = [
      [a[0] + nx, a[1] + ny],
      [b[0] + nx, b[1] + ny],
      [b[0] - nx, b[1] - ny],
      [a[0] - nx, a[1] - ny],
    ];
    const cut = jtsPieces('intersect', [{ outline, holes: [] }], floor);
    return sum + cut.reduce((all, region) => all + areaMm2(region), 0);
  }, 0);
}
