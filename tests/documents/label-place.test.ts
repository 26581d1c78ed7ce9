import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LabelItem, PlacedLabel } from '../../src/documents/drawing.ts';
import { drawingOf } from '../../src/documents/drawing-list.ts';
import { labelsPlace } from '../../src/documents/label-place.ts';
import { readingAngle } from '../../src/documents/label-seats.ts';
import { formSize, textWidthMm } from '../../src/documents/text-width.ts';
import type { Point } from '../../src/geometry/point.ts';
import { regionContains } from '../../src/geometry/region.ts';
import { type Bay, type Joint, jointKinds } from '../../src/plan/analysis.ts';
import { analysisOf, bay, box, finding, joint, planOf } from './fixture.ts';
import { lineHits, outlineOf, seenFrom } from './label-check.ts';

const scales = [20, 50, 100, 250, 500];

/** A grid of bays with joints of all kinds between them, turned about the origin. */
function gridDrawing(columns: number, rows: number, widthMm: number, heightMm: number, turnDeg: number) {
  const turn = (turnDeg * Math.PI) / 180;
  const turned = ([x, y]: Point): Point => [
    x * Math.cos(turn) - y * Math.sin(turn),
    x * Math.sin(turn) + y * Math.cos(turn),
  ];
  const id = (i: number, j: number) => `B${j * columns + i + 1}`;
  const bays: Bay[] = [];
  const joints: Joint[] = [];
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      bays.push(
        bay(
          id(i, j),
          ['r1'],
          box(i * widthMm, j * heightMm, widthMm, heightMm).map(turned),
          widthMm / 1e3,
          heightMm / 1e3,
        ),
      );
      const kind = jointKinds[(i + j) % jointKinds.length] as (typeof jointKinds)[number];
      const [x, y] = [i * widthMm, j * heightMm];
      if (i > 0)
        joints.push(
          joint(`J${joints.length}`, kind, [turned([x, y]), turned([x, y + heightMm])], [id(i - 1, j), id(i, j)]),
        );
      if (j > 0)
        joints.push(
          joint(`J${joints.length}`, kind, [turned([x, y]), turned([x + widthMm, y])], [id(i, j - 1), id(i, j)]),
        );
    }
  }
  const plan = planOf({
    rooms: planOf().rooms.slice(0, 1),
    doorways: [],
    columns: [],
    pipes: [],
    joinery: [],
    sunZones: [],
    keepClear: [],
  });
  const findings = bays.slice(0, 3).map(({ stillPoint }) => finding('fault', stillPoint, 'Side of 9.0 m is over 8 m.'));
  return drawingOf(plan, analysisOf({ bays, joints, edges: [], findings }));
}

const grids = fc.record({
  columns: fc.integer({ min: 1, max: 4 }),
  rows: fc.integer({ min: 1, max: 4 }),
  widthMm: fc.integer({ min: 700, max: 9000 }),
  heightMm: fc.integer({ min: 700, max: 9000 }),
  turnDeg: fc.integer({ min: 0, max: 359 }),
  scale: fc.constantFrom(...scales),
});

describe('labels', () => {
  it('never stand over a joint, over each other or upside down, whatever the plan and scale', () => {
    let seated = 0;
    fc.assert(
      fc.property(grids, ({ columns, rows, widthMm, heightMm, turnDeg, scale }) => {
        const drawing = gridDrawing(columns, rows, widthMm, heightMm, turnDeg);
        const placed = labelsPlace(drawing, { paperPerPlan: 1 / scale });
        seated += placed.length;
        const joints = drawing.items.flatMap((item) =>
          item.shape === 'line' && item.layer === 'joints' ? [item.points] : [],
        );
        for (const label of placed) {
          expect(Math.abs(label.angleDeg)).toBeLessThanOrEqual(92);
          for (const line of joints) expect(lineHits(label, line, scale)).toBe(false);
          for (const other of placed) {
            if (other !== label) expect(lineHits(label, outlineOf(other, scale), scale)).toBe(false);
          }
        }
      }),
      { seed: 11, numRuns: 60 },
    );
    expect(seated).toBeGreaterThan(100);
  });

  it('of a bay stay within their bay', () => {
    let seated = 0;
    fc.assert(
      fc.property(grids, ({ columns, rows, widthMm, heightMm, turnDeg, scale }) => {
        const placed = labelsPlace(gridDrawing(columns, rows, widthMm, heightMm, turnDeg), { paperPerPlan: 1 / scale });
        for (const label of placed) {
          const { seat } = label.label;
          if (seat.kind !== 'inside') continue;
          seated++;
          for (const corner of outlineOf(label, scale)) expect(regionContains(seat.region, corner)).toBe(true);
        }
      }),
      { seed: 12, numRuns: 40 },
    );
    expect(seated).toBeGreaterThan(50);
  });

  it('are shortened as the scale gets smaller, then left out', () => {
    const drawing = gridDrawing(2, 1, 6000, 4000, 0);
    const lines = scales.map((scale) => {
      const placed = labelsPlace(drawing, { paperPerPlan: 1 / scale });
      return placed.filter(({ label }) => label.ref.kind === 'bay').reduce((sum, { form }) => sum + form.length, 0);
    });
    // Number, area and sides of two bays; the only room needs no name.
    expect(lines[0]).toBe(6);
    expect(lines).toEqual([...lines].sort((a, b) => b - a));
    expect(labelsPlace(drawing, { paperPerPlan: 1 / 5000 })).toEqual([]);
  });

  it('name the room before figures of the bay, and cut its name short before they leave it out', () => {
    const name = 'Shower room of the guests';
    const rooms = planOf()
      .rooms.slice(0, 2)
      .map((each, i) => (i === 0 ? { ...each, name } : each));
    const plan = planOf({ rooms, doorways: [], columns: [], pipes: [], joinery: [], sunZones: [], keepClear: [] });
    const formAt = (scale: number) => {
      const bays = [bay('B1', ['r1'], box(0, 0, 1600, 1600), 1.6, 1.6)];
      const drawing = drawingOf(plan, analysisOf({ bays, joints: [], edges: [], findings: [] }));
      const [label] = labelsPlace(drawing, { paperPerPlan: 1 / scale }).filter(
        ({ label: { ref } }) => ref.kind === 'bay',
      );
      return label?.form.map(({ text }) => text);
    };
    // hand calculation: 1.6 m are 80, 32 and 27 mm of paper; letters are 1.5 mm wide or so and lines 3.5 mm high, with a
    // still point in the middle of the bay
    expect(formAt(20)).toEqual(['B1', name, '2.6 m\u00b2', '1.60 \u00d7 1.60 m']);
    expect(formAt(50)?.slice(0, 2)).toEqual(['B1', expect.stringMatching(/^Shower.*\u2026$/u)]);
    expect(formAt(60)).toEqual(['B1', expect.stringMatching(/^Sho.*\u2026$/u)]);
  });

  it('name a small bay before the joints beside it', () => {
    const small = gridDrawing(2, 1, 900, 1500, 0);
    const named = labelsPlace(small, { paperPerPlan: 1 / 50 }).filter(({ label }) => label.ref.kind === 'bay');
    expect(named).toHaveLength(2);
  });

  it('beside an intermediate joint stand nowhere but right beside it, and no longer than it is', () => {
    let seated = 0;
    fc.assert(
      fc.property(grids, ({ columns, rows, widthMm, heightMm, turnDeg, scale }) => {
        const drawing = gridDrawing(columns, rows, widthMm, heightMm, turnDeg);
        for (const label of labelsPlace(drawing, { paperPerPlan: 1 / scale })) {
          const { seat } = label.label;
          if (seat.kind !== 'beside' || seat.inOpening) continue;
          seated++;
          const ends = seat.line.map((point) => seenFrom(label, point, scale));
          const along = ends.map(([x]) => x);
          expect(Math.min(...along)).toBeLessThanOrEqual(-label.widthMm / 2 + 1e-6);
          expect(Math.max(...along)).toBeGreaterThanOrEqual(label.widthMm / 2 - 1e-6);
          for (const [, y] of ends) expect(Math.abs(y) - label.heightMm / 2).toBeLessThanOrEqual(5);
        }
      }),
      { seed: 13, numRuns: 40 },
    );
    expect(seated).toBeGreaterThan(50);
  });

  it('never belong to an object other than the one that they stand on', () => {
    const counter = {
      id: 'j9',
      name: '',
      outline: box(500, 500, 5000, 3000),
      under: 'insulated',
      fixedThrough: false,
    } as const;
    const plan = planOf({ joinery: [counter], columns: [], pipes: [], sunZones: [], keepClear: [], doorways: [] });
    const placed = labelsPlace(drawingOf(plan, analysisOf({ findings: [] })), { paperPerPlan: 1 / 20 });
    expect(placed.length).toBeGreaterThan(0);
    for (const { at } of placed) expect(regionContains({ outline: counter.outline, holes: [] }, at)).toBe(false);
  });

  it('have the ground that they stand on, and a clear one on a hatch', () => {
    const placed = labelsPlace(drawingOf(planOf(), analysisOf()), { paperPerPlan: 1 / 50 });
    const bays = placed.filter(({ label }) => label.ref.kind === 'bay');
    expect(bays.length).toBeGreaterThan(0);
    for (const { ground } of bays) expect(ground.colour).toMatch(/^tint/);
    const sun = placed.find(({ label }) => label.ref.id === 'u1');
    expect(sun?.ground.hatched).toBe(true);
  });

  it('of what lies in view stand there whether the rest is lettered or not', () => {
    const drawing = gridDrawing(4, 4, 5000, 4000, 0);
    const all = labelsPlace(drawing, { paperPerPlan: 1 / 50 });
    const within = { minX: -100, minY: -100, maxX: 9900, maxY: 7900 };
    const some = labelsPlace(drawing, { paperPerPlan: 1 / 50, within });
    expect(some.length).toBeGreaterThan(0);
    expect(some.length).toBeLessThan(all.length);
    const bay = (labels: readonly PlacedLabel[]) => labels.find(({ label }) => label.ref.id === 'B1');
    expect(bay(some)).toEqual(bay(all));
  });

  it('stand in the same places every time', () => {
    const place = () => labelsPlace(gridDrawing(3, 3, 5000, 3000, 17), { paperPerPlan: 1 / 100 });
    expect(place()).toEqual(place());
  });

  it('beside a doorway joint step past the reveal into the room', () => {
    const placed = labelsPlace(drawingOf(planOf(), analysisOf()), { paperPerPlan: 1 / 50 });
    const doorway = placed.find(({ label }) => label.ref.id === 'J2') as PlacedLabel;
    expect(doorway.form[0]?.text).toContain('closes 1.1 mm');
    for (const { line } of analysisOf().edges) expect(lineHits(doorway, line, 50)).toBe(false);
  });

  it('survive a joint without length and one with a bend', () => {
    const lines: Point[][] = [
      [
        [0, 0],
        [0, 0],
      ],
      [
        [0, 0],
        [4000, 0],
        [4000, 4000],
      ],
    ];
    const joints = lines.map((line, i) => joint(`J${i}`, 'drawn', line, ['B1', 'B2']));
    const { items } = drawingOf(planOf(), analysisOf({ joints }));
    const placed = labelsPlace(
      { items: items.filter((item): item is LabelItem => item.shape === 'label') },
      { paperPerPlan: 0.02 },
    );
    for (const { at } of placed) expect(at.every(Number.isFinite)).toBe(true);
    expect(placed.some(({ label }) => label.ref.id === 'J1')).toBe(true);
  });

  it('letter like bays alike: a number stands alone only where the longest would too', () => {
    const alone = gridDrawing(4, 4, 4000, 2500, 0)
      .items.filter((item) => item.shape === 'label')
      .filter(({ ref }) => ref.kind === 'bay')
      .flatMap(({ forms }) => forms.filter((form) => form.length === 1));
    for (const style of ['bay-name', 'bay-figure'] as const) {
      const widths = alone.filter(([line]) => line?.style === style).map((form) => formSize(form).widthMm);
      expect(widths).toHaveLength(16);
      expect(new Set(widths)).toEqual(new Set([textWidthMm('B16', style)]));
    }
  });

  it('run up the sheet in a corridor, and lie level in a room that is broader than high', () => {
    const angles = (widthMm: number, heightMm: number, scale: number) =>
      labelsPlace(gridDrawing(1, 1, widthMm, heightMm, 0), { paperPerPlan: 1 / scale })
        .filter(({ label }) => label.ref.kind === 'bay')
        .map(({ angleDeg }) => angleDeg);
    expect(angles(1200, 9000, 100)).toEqual([-90]);
    for (const scale of [50, 100, 200]) expect(angles(6000, 4500, scale)).toEqual([0]);
  });
});

describe('the reading angle', () => {
  it.each([
    [[1, 0], 0],
    [[-1, 0], 0],
    [[1, 1], 45],
    [[-1, -1], 45],
    [[1, -1], -45],
    [[0, 1], -90],
    [[0, -1], -90],
  ] as const)('of %j is %i degrees', (direction, degrees) => {
    expect(readingAngle(direction)).toBeCloseTo(degrees, 9);
  });

  it('does not turn round with rounding of an upright line', () => {
    expect(readingAngle([1e-9, 1])).toBeCloseTo(-90, 6);
    expect(readingAngle([-1e-9, 1])).toBeCloseTo(-90, 6);
  });
});
