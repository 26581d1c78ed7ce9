import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import { movementOf } from '../../src/movement/movement.ts';
import type { Split } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { gridSplit, type PlanFields, planOf, rectangle, splitMoved, turned } from './grid-split.ts';

/** Floors of 1 to 4 by 1 to 3 bays with sides of 2 to 9 m, and something that holds one of them or none. */
const floors = fc
  .record({
    widths: fc.array(fc.integer({ min: 20, max: 90 }), { minLength: 1, maxLength: 4 }),
    heights: fc.array(fc.integer({ min: 20, max: 90 }), { minLength: 1, maxLength: 3 }),
    origin: fc.tuple(fc.integer({ min: -500, max: 500 }), fc.integer({ min: -500, max: 500 })),
    held: fc.boolean(),
    warmingK: fc.integer({ min: 5, max: 40 }),
    coolingK: fc.integer({ min: 0, max: 10 }),
    swellingMmPerM: fc.constantFrom(0, 0.2),
    shrinkageMmPerM: fc.constantFrom(0, 0.5),
  })
  .map(({ widths, heights, origin, held, warmingK, coolingK, swellingMmPerM, shrinkageMmPerM }) => {
    const lines = (start: number, sides: readonly number[]) =>
      [0, ...sides].map((_, n) => sides.slice(0, n).reduce((x, side) => x + side * 100, start * 100));
    const xs = lines(origin[0], widths);
    const ys = lines(origin[1], heights);
    const [x, y] = [xs[0] ?? 0, ys[0] ?? 0];
    const fields: PlanFields = {
      // no movement of these floors falls on what these take, so that the rounding of a turned corner cannot turn a verdict
      jointProfile: { widthMm: 9.737, usableTravel: 0.5 },
      edgeStrip: { thicknessMm: 9.9374, usableTravel: 0.5 },
      sealant: { widthMm: 8.1396, capability: 0.25 },
      screed: { swellingMmPerM, shrinkageMmPerM },
      temperatures: { layingC: 15, highestC: 15 + warmingK, lowestC: 15 - coolingK },
      rooms: [{ id: 'r1', name: 'Hall', outline: rectangle(x, y, (xs.at(-1) ?? 0) - x, (ys.at(-1) ?? 0) - y) }],
      slabContacts: held ? [{ id: 'k1', outline: rectangle(x + 300, y + 500, 1100, 700) }] : [],
    };
    return { fields, split: gridSplit(xs, ys, () => 'r1') };
  });

interface Figures {
  readonly joints: readonly (readonly number[])[];
  readonly edges: readonly number[];
  readonly findings: readonly string[];
}

function figuresOf(plan: Plan, split: Split): Figures {
  const movement = movementOf(plan, split);
  return {
    joints: [...movement.joints.values()].map((j) => [
      j.closingMm,
      j.openingMm,
      j.slidingMm,
      j.worstClosingMm,
      j.sealantNeedsMm,
    ]),
    edges: [...movement.edges.values()],
    findings: movement.findings.map((finding) => [finding.code, ...finding.refs].join(' ')),
  };
}

function expectSame(a: Figures, b: Figures, share = 1): void {
  const flat = (f: Figures) => [...f.joints.flat(), ...f.edges];
  expect(flat(a)).toHaveLength(flat(b).length);
  for (const [i, figure] of flat(a).entries()) expect((flat(b)[i] ?? Number.NaN) * share).toBeCloseTo(figure, 3);
}

function planMoved(fields: PlanFields, move: (p: Point) => Point): Plan {
  const rings = <T extends { readonly outline: readonly Point[] }>(things: readonly T[] | undefined) =>
    (things ?? []).map((thing) => ({ ...thing, outline: thing.outline.map(move) }));
  return planOf({ ...fields, rooms: rings(fields.rooms), slabContacts: rings(fields.slabContacts) });
}

const ways: readonly (readonly [string, (p: Point) => Point])[] = [
  ['turned by 90 degrees', turned(90)],
  ['turned by 30 degrees', turned(30)],
  ['turned by 213 degrees', turned(213)],
  ['mirrored', ([x, y]) => [-x, y]],
  ['mirrored across the sheet', ([x, y]) => [y, x]],
  ['moved by 120 m', ([x, y]) => [x + 120_000, y - 84_000]],
];

describe.each(ways)('a floor %s', (_, move) => {
  it('moves by the same figures and has the same findings', () => {
    fc.assert(
      fc.property(floors, ({ fields, split }) => {
        const before = figuresOf(planOf(fields), split);
        const after = figuresOf(planMoved(fields, move), splitMoved(split, move));
        expectSame(before, after);
        expect(after.findings).toEqual(before.findings);
      }),
      { numRuns: 40 },
    );
  });
});

describe('any floor', () => {
  it('moves twice as far at twice the warming', () => {
    fc.assert(
      fc.property(floors, ({ fields, split }) => {
        const at = (highestC: number) =>
          figuresOf(planOf({ ...fields, screed: {}, temperatures: { layingC: 15, highestC, lowestC: 15 } }), split);
        expectSame(at(45), at(30), 2);
      }),
    );
  });

  it('moves by the same figures when its bays are named the other way round at each joint', () => {
    fc.assert(
      fc.property(floors, ({ fields, split }) => {
        const swapped = {
          ...split,
          joints: split.joints.map((j) => ({ ...j, bays: [j.bays[1], j.bays[0]] as const, line: j.line.toReversed() })),
        };
        expectSame(figuresOf(planOf(fields), split), figuresOf(planOf(fields), swapped));
      }),
    );
  });

  it('never closes more in the centred case than in the worst', () => {
    fc.assert(
      fc.property(floors, ({ fields, split }) => {
        for (const joint of movementOf(planOf(fields), split).joints.values()) {
          expect(joint.worstClosingMm).toBeGreaterThanOrEqual(joint.closingMm);
        }
      }),
    );
  });

  it('closes no less at any joint because it shrinks', () => {
    fc.assert(
      fc.property(floors, ({ fields, split }) => {
        const dry = figuresOf(planOf({ ...fields, screed: { ...fields.screed, shrinkageMmPerM: 0.8 } }), split);
        const wet = figuresOf(planOf({ ...fields, screed: { ...fields.screed, shrinkageMmPerM: 0 } }), split);
        expect(dry.joints.map(([closing]) => closing)).toEqual(wet.joints.map(([closing]) => closing));
      }),
    );
  });
});

describe('a bay that lies free', () => {
  it('moves half of its growth out at each of its ends', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 400 }), fc.integer({ min: 10, max: 400 }), (width, height) => {
        const [w, h] = [width * 100, height * 100];
        const plan = planOf({
          screed: { expansionPerK: 12e-6 },
          temperatures: { layingC: 15, highestC: 40 },
          rooms: [{ id: 'r1', name: 'Hall', outline: rectangle(0, 0, w, h) }],
        });
        const { edges } = movementOf(
          plan,
          gridSplit([0, w], [0, h], () => 'r1'),
        );
        const [top, right, bottom, left] = [...edges.values()];
        expect(left).toBeCloseTo((12e-6 * 25 * w) / 2, 9);
        expect(right).toBeCloseTo((12e-6 * 25 * w) / 2, 9);
        expect(top).toBeCloseTo((12e-6 * 25 * h) / 2, 9);
        expect(bottom).toBeCloseTo((12e-6 * 25 * h) / 2, 9);
      }),
    );
  });
});
