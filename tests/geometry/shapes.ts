import fc from 'fast-check';
import type { Point } from '../../src/geometry/point.ts';
import { regionArea } from '../../src/geometry/region.ts';
import { type Region, type Ring, ringSignedArea } from '../../src/geometry/ring.ts';

/** Shapes for the tests of geometry, on the grid of 0.1 mm, and the ways in which each is laid on the sheet. */

export const onGrid = (x: number, y: number): Point => [Math.round(x * 10) / 10, Math.round(y * 10) / 10];

export const region = (outline: Ring, ...holes: Ring[]): Region => ({ outline, holes });

export const areaOf = (regions: readonly Region[]): number => regions.reduce((sum, one) => sum + regionArea(one), 0);

export const rectangle = (x: number, y: number, width: number, height: number): Ring => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

/** Outline clockwise on the sheet, holes the other way, wherever it is moved to. */
export const moved = (shape: Region, move: (p: Point) => Point): Region => ({
  outline: wound(shape.outline.map(move), 1),
  holes: shape.holes.map((hole) => wound(hole.map(move), -1)),
});

const wound = (ring: Ring, sign: 1 | -1): Ring => (ringSignedArea(ring) * sign < 0 ? ring.toReversed() : ring);

export const turn =
  (deg: number) =>
  ([x, y]: Point): Point => {
    const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
    return onGrid(x * c - y * s, x * s + y * c);
  };

export const ways: readonly (readonly [string, (p: Point) => Point])[] = [
  ['as drawn', (p) => p],
  ['turned by 90 degrees', turn(90)],
  ['turned by 17 degrees', turn(17)],
  ['turned by 45 degrees', turn(45)],
  ['mirrored', ([x, y]) => [-x, y]],
  ['moved far away', ([x, y]) => onGrid(x + 151_234.5, y - 87_654.3)],
];

export const rectangles = fc
  .record({
    x: fc.integer({ min: -20, max: 20 }),
    y: fc.integer({ min: -20, max: 20 }),
    width: fc.integer({ min: 2, max: 30 }),
    height: fc.integer({ min: 2, max: 30 }),
    hole: fc.boolean(),
  })
  // on a coarse lattice, so that sides and corners fall together often
  .map(({ x, y, width, height, hole }) => {
    const outline = rectangle(x * 500, y * 500, width * 500, height * 500);
    return hole ? region(outline, rectangle(x * 500 + 250, y * 500 + 250, width * 250, height * 250)) : region(outline);
  });

/** A ring round a centre with a corner in every direction in turn: never crosses itself. */
export const stars = fc
  .record({
    x: fc.integer({ min: -8000, max: 8000 }),
    y: fc.integer({ min: -8000, max: 8000 }),
    radii: fc.array(fc.integer({ min: 300, max: 9000 }), { minLength: 3, maxLength: 14 }),
  })
  .map(({ x, y, radii }) =>
    region(
      radii.map((radius, i) => {
        const angle = (2 * Math.PI * i) / radii.length;
        return onGrid(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
      }),
    ),
  );

/** A floor of steps on a lattice of 500 mm: walls of one side rise and fall, so that lines meet many corners at once. */
export const steps = fc
  .array(fc.record({ width: fc.integer({ min: 1, max: 6 }), height: fc.integer({ min: 1, max: 12 }) }), {
    minLength: 1,
    maxLength: 8,
  })
  .map((columns) => {
    const outline: Point[] = [[0, 0]];
    let x = 0;
    for (const { width, height } of columns) {
      outline.push([x, height * 500]);
      x += width * 500;
      outline.push([x, height * 500]);
    }
    outline.push([x, 0]);
    return region(outline.filter((p, i) => i === 0 || String(p) !== String(outline[i - 1])));
  });

export const shapes = fc.oneof(rectangles, stars);
