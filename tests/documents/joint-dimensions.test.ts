import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DrawingItem, LabelItem, LineItem, PlacedLabel } from '../../src/documents/drawing.ts';
import { drawingOf } from '../../src/documents/drawing-list.ts';
import { dimensionedDrawing, dimensionsLeft, jointDimensions } from '../../src/documents/joint-dimensions.ts';
import { spread } from '../../src/documents/joint-dimensions-string.ts';
import { labelsPlace } from '../../src/documents/label-place.ts';
import { legendOf } from '../../src/documents/legend.ts';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import { testPointItems } from '../../src/documents/point-items.ts';
import { jointSettings } from '../../src/documents/setting-out.ts';
import { marks } from '../../src/documents/symbols.ts';
import { formSize } from '../../src/documents/text-width.ts';
import { type Point, pointDistance } from '../../src/geometry/point.ts';
import { regionContains } from '../../src/geometry/region.ts';
import { boxOf } from '../../src/geometry/ring.ts';
import { lineHits, outlineOf } from './label-check.ts';
import {
  basePapers,
  floorNames,
  floorSource,
  hallSource,
  lowerCorners,
  turned,
  withPapers,
} from './setting-out-fixture.ts';

function labelsIn(items: readonly DrawingItem[]): readonly LabelItem[] {
  return items.filter((item) => item.shape === 'label');
}

function linesIn(items: readonly DrawingItem[], style: LineItem['style']): readonly LineItem[] {
  return items.filter((item) => item.shape === 'line').filter((item) => item.style === style);
}

function textOf({ forms: [form] }: LabelItem): string {
  return (form ?? [])
    .map(({ text }) => text)
    .join(' ')
    .replaceAll('\u00a0', ' ');
}

function dimensionsOf(source: PaperSource, scale: number): readonly DrawingItem[] {
  return jointDimensions(source, drawingOf(source.plan, source.analysis), { scale });
}

/** Scale at which a floor of this size is usually printed: 1 : 50 up to a house, 1 : 100 up to a block, 1 : 200 beyond. */
function scaleOf({ plan }: PaperSource): number {
  const { minX, maxX, minY, maxY } = boxOf(plan.rooms.flatMap(({ outline }) => outline));
  const longestMm = Math.max(maxX - minX, maxY - minY);
  return longestMm < 25_000 ? 50 : longestMm < 80_000 ? 100 : 200;
}

describe('a hall of 9 x 6 m with one joint in its middle', () => {
  const base = basePapers([
    [0, 6000],
    [9000, 6000],
  ]);

  it('has one string with 0 at the base point and 4500 J1 at the joint, joined to its end by a thin line', () => {
    const items = dimensionsOf(hallSource(base), 50);
    const [string, ...leaders] = linesIn(items, 'running');
    // by hand: from x 0 to x 4500, 12 mm of paper above the hall, 600 mm at 1 : 50
    expect(string?.points).toEqual([
      [0, -600],
      [4500, -600],
    ]);
    // and from the base point 7 mm of paper, 350 mm, along the lower wall and square to it
    const ways = leaders.filter(({ ref }) => ref.id === 'origin').map(({ points }) => points);
    expect(ways).toEqual([
      [
        [0, 6000],
        [350, 6000],
      ],
      [
        [0, 6000],
        [0, 5650],
      ],
    ]);
    expect(leaders).toHaveLength(2 + ways.length);
    expect(labelsIn(items).map(textOf).sort()).toEqual(['0', '1', '2', '4500 J1', 'x', 'y']);
    const [extension] = linesIn(items, 'extension');
    expect(extension?.points.map(([x]) => x)).toEqual([4500, 4500]);
    expect(extension?.points.map(([, y]) => y)).toEqual([-120, -600]);
  });

  it('has the string beside the floor also where it is set out from its own walls', () => {
    const items = dimensionsOf(hallSource(), 50);
    expect(linesIn(items, 'running')[0]?.points.map(([, y]) => y)).toEqual([-600, -600]);
    expect(labelsIn(items).map(textOf)).toContain('4500 J1');
  });

  it('has a 0 on the plan where its one grid line begins, also where no string of dimensions shows it', () => {
    const items = dimensionsOf(hallSource({ gridLines: [{ name: 'A', from: [-500, 0], to: [-2500, 9000] }] }), 50);
    // the line runs askew to the joint, which is set out by both ends: its own 0 is all that is marked
    expect(linesIn(items, 'running').map(({ ref }) => ref.id)).toEqual(['origin', 'origin']);
    const origins = items.flatMap((item) =>
      item.shape === 'mark' && item.style === 'running-origin' ? [item.at] : [],
    );
    expect(origins).toEqual([[-500, 0]]);
    // its ring and the circle with the letter are clear of each other: a radius each and half a line each, mm on paper
    const ends = items.flatMap((item) => (item.shape === 'mark' && item.style === 'grid-end' ? [item.at] : []));
    const clearMm = marks['running-origin'].reachMm.up + marks['grid-end'].reachMm.up;
    for (const end of ends) expect(pointDistance(end, [-500, 0]) / 50).toBeGreaterThan(clearMm);
    // straight on in the line, whose way on the sheet is 2 m to the left in 9 m down
    for (const [x, y] of ends) expect((x + 500) * 9 + y * 2).toBeCloseTo(0, 3);
    // and the legend has no running dimension where there is none
    const words = legendOf({ items, box: null }).map((row) => row.words);
    expect(words).toContain('Origin of running dimensions');
    expect(words.join()).not.toContain('Running dimension,');
    expect(labelsIn(items).map(textOf)).toEqual(expect.arrayContaining(['0', 'x', 'y']));
  });

  it('has its grid lines lettered at both ends, and the legend says what is drawn', () => {
    const gridLines: NonNullable<Parameters<typeof hallSource>[0]>['gridLines'] = [
      { name: 'A', from: [0, -2000], to: [0, 8000] },
      { name: '1', from: [-2000, 6000], to: [11_000, 6000] },
    ];
    const source = hallSource({ gridLines });
    const drawing = dimensionedDrawing(source, drawingOf(source.plan, source.analysis), { scale: 50 });
    const ends = drawing.items.filter((item) => item.shape === 'mark' && item.style === 'grid-end');
    expect(ends.map((item) => item.shape === 'mark' && item.text).sort()).toEqual(['1', '1', 'A', 'A']);
    expect(legendOf(drawing).map(({ words }) => words)).toEqual(
      expect.arrayContaining(['Running dimension, mm from its 0', 'Grid line of the building']),
    );
  });

  it.each([50, 100, 200])(
    'has no end of a grid line over another at 1 : %i, with lines 250 mm apart both ways',
    (scale) => {
      const upright = (name: string, x: number) => ({ name, from: [x, -2000], to: [x, 8000] }) as const;
      const level = (name: string, y: number) => ({ name, from: [-2000, y], to: [11_000, y] }) as const;
      const lines = [upright('A', 0), upright('A.1', 250), upright('A.2', 500), level('1', 0), level('2', 250)];
      const gridLines = lines.map(({ name, from, to }) => ({
        name,
        from: [...from] as [number, number],
        to: [...to] as [number, number],
      }));
      const ends = dimensionsOf(hallSource({ gridLines }), scale).flatMap((item) =>
        item.shape === 'mark' && item.style === 'grid-end' ? [item] : [],
      );
      expect(ends).toHaveLength(2 * lines.length);
      // two circles are clear of each other where their middles are two radii apart: what a mark reaches to is its radius and half its line
      ends.forEach((end, i) => {
        for (const other of ends.slice(i + 1))
          expect(pointDistance(end.at, other.at)).toBeGreaterThanOrEqual(
            2 * marks['grid-end'].reachMm.left * scale - 1,
          );
      });
    },
  );

  it('has grid lines drawn no further than a little beyond the floor, and none that pass it far off', () => {
    const gridLines: NonNullable<Parameters<typeof hallSource>[0]>['gridLines'] = [
      { name: 'A', from: [0, -300_000], to: [0, 300_000] },
      { name: '1', from: [-300_000, 0], to: [300_000, 0] },
      { name: 'Z', from: [90_000, -300_000], to: [90_000, 300_000] },
    ];
    const items = dimensionsOf(hallSource({ gridLines }), 50);
    const lines = linesIn(items, 'grid-line');
    expect(new Set(lines.map(({ ref }) => ref.id))).toEqual(new Set(['grid-line-1', 'grid-line-2']));
    const { minX, maxX, minY, maxY } = boxOf(lines.flatMap(({ points }) => points));
    // a sheet of the hall of 9 x 6 m at 1 : 50 is 180 x 120 mm; 50 mm of paper, 2.5 m, are more than an end and its stub take
    expect(Math.min(minX, minY)).toBeGreaterThan(-2500);
    expect(maxX).toBeLessThan(9000 + 2500);
    expect(maxY).toBeLessThan(6000 + 2500);
  });

  it('is set out from base points far off, which are not drawn and leave the sheet as large as it is', () => {
    const far = basePapers([
      [-200_000, 150_000],
      [-150_000, 150_000],
    ]);
    const source = hallSource(far);
    const { items, box } = dimensionedDrawing(source, drawingOf(source.plan, source.analysis), { scale: 50 });
    expect(items.filter((item) => item.shape === 'mark' && item.style === 'base-point')).toEqual([]);
    // by hand: 4500 + 200 000; there is no 0 on the sheet
    expect(labelsIn(items).map(textOf)).toContain('204 500 J1');
    expect(labelsIn(items).map(textOf)).not.toContain('0');
    expect((box?.maxX ?? 0) - (box?.minX ?? 0)).toBeLessThan(2 * 9000);
    expect((box?.maxY ?? 0) - (box?.minY ?? 0)).toBeLessThan(2 * 9000);
  });

  it('has a box that holds its figures', () => {
    const source = hallSource(base);
    const { items, box } = dimensionedDrawing(source, drawingOf(source.plan, source.analysis), { scale: 50 });
    for (const { at, label } of labelsPlace({ items }, { paperPerPlan: 1 / 50 })) {
      if (label.seat.kind !== 'beside' || label.seat.places === undefined) continue;
      expect(at[1]).toBeGreaterThan(box?.minY ?? 0);
      expect(at[1] - formSize(label.forms[0] ?? []).widthMm * 25).toBeGreaterThanOrEqual((box?.minY ?? 0) - 200);
    }
  });
});

it('crowded figures step aside by no more than they must, in their order', () => {
  // by hand: 0 and 1 want one place, 4 apart they share the way: -1.5 and 2.5
  expect(spread([0, 1, 10], 4)).toEqual([-1.5, 2.5, 10]);
  const figures = fc.array(fc.integer({ min: -5000, max: 50_000 }), { maxLength: 40 });
  fc.assert(
    fc.property(figures, fc.integer({ min: 1, max: 900 }), (some, apart) => {
      const wanted = [...some].sort((a, b) => a - b);
      const found = spread(wanted, apart);
      for (const [i, at] of found.slice(1).entries()) expect(at - (found[i] ?? 0)).toBeGreaterThanOrEqual(apart - 1e-6);
      wanted.forEach((want, i) => {
        const isFree = [wanted[i - 1], wanted[i + 1]].every(
          (next) => next === undefined || Math.abs(next - want) >= apart * 40,
        );
        if (isFree) expect(found[i]).toBeCloseTo(want, 6);
      });
    }),
    { seed: 21 },
  );
});

/** Whether two blocks of text may meet at all: their middles are nearer than half of both together. */
function isNear(a: PlacedLabel, b: PlacedLabel, scale: number): boolean {
  const reach = ({ widthMm, heightMm }: PlacedLabel) => Math.hypot(widthMm, heightMm) / 2;
  return pointDistance(a.at, b.at) <= (reach(a) + reach(b)) * scale;
}

function mayHit({ at, widthMm, heightMm }: PlacedLabel, line: readonly Point[], scale: number): boolean {
  const { minX, minY, maxX, maxY } = boxOf(line);
  const reach = (Math.hypot(widthMm, heightMm) / 2) * scale;
  return at[0] >= minX - reach && at[0] <= maxX + reach && at[1] >= minY - reach && at[1] <= maxY + reach;
}

describe.each(floorNames)('on the sheet of %s', (name) => {
  const plain = floorSource(name);
  const scale = scaleOf(plain);
  it.each([
    ['with base points', basePapers(lowerCorners(plain))],
    ['from the walls', {}],
  ])('%s no text stands over text, a joint or a line of dimensions', (_how, papers) => {
    const source = withPapers(plain, papers);
    const drawing = dimensionedDrawing(source, drawingOf(source.plan, source.analysis), { scale });
    const placed = labelsPlace(drawing, { paperPerPlan: 1 / scale });
    const lines = drawing.items.flatMap((item) =>
      item.shape === 'line' && (item.layer === 'joints' || ['running', 'extension'].includes(item.style))
        ? [item.points]
        : [],
    );
    placed.forEach((label, i) => {
      for (const line of lines.filter((each) => mayHit(label, each, scale)))
        expect(lineHits(label, line, scale), textOf(label.label)).toBe(false);
      for (const other of placed.slice(i + 1).filter((each) => isNear(label, each, scale)))
        expect(lineHits(label, outlineOf(other, scale), scale), textOf(label.label)).toBe(false);
    });
    expect(placed.length).toBeGreaterThan(0);
  });

  it('figures rise along each string beside the floor, and all of them find room', () => {
    const source = withPapers(plain, basePapers(lowerCorners(plain)));
    const drawing = dimensionedDrawing(source, drawingOf(source.plan, source.analysis), { scale });
    const placed = labelsPlace(drawing, { paperPerPlan: 1 / scale });
    const [from] = lowerCorners(plain);
    const settings = jointSettings(source);
    for (const [axis, k] of [
      ['x', 0],
      ['y', 1],
    ] as const) {
      const own = settings.filter(({ lies }) => lies === axis);
      const told = placed.filter(({ label: { seat, forms } }) => {
        const isString = seat.kind === 'beside' && seat.places?.length === 1;
        return isString && forms[0]?.[0]?.style === 'bay-figure' && isAlong(seat.places[0]?.direction, 1 - k);
      });
      const figures = told
        .map(({ at, label }) => ({ alongMm: axis === 'x' ? at[0] - from[0] : from[1] - at[1], mm: figureOf(label) }))
        .sort((a, b) => a.alongMm - b.alongMm)
        .map(({ mm }) => mm);
      expect(figures).toEqual([...figures].sort((a, b) => a - b));
      // one for each figure that is told of joints, and the origin
      const wanted = new Set(own.length === 0 ? [] : [0, ...own.map(({ runningMm }) => runningMm ?? 0)]);
      expect(new Set(figures)).toEqual(wanted);
    }
  });

  it('no thin line from a joint to its figure runs over the floor', () => {
    const source = withPapers(plain, basePapers(lowerCorners(plain)));
    const items = dimensionsOf(source, scale);
    for (const { points } of linesIn(items, 'extension')) {
      const [a, b] = points as readonly [Point, Point];
      for (let share = 0.02; share <= 1; share += 0.02) {
        const at: Point = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
        expect(source.analysis.bays.some((each) => regionContains(each, at))).toBe(false);
      }
    }
  });
});

function isAlong(direction: Point | undefined, axis: number): boolean {
  return direction !== undefined && Math.abs(direction[axis] ?? 0) > 0.9;
}

/** Example: "12 350 J7, J12" -> 12350 */
function figureOf(label: LabelItem): number {
  return Number((/^-?[\d ]+(?= J|$)/u.exec(textOf(label))?.[0] ?? 'NaN').replaceAll(' ', ''));
}

it('a plan turned on its sheet has the same figures on its strings', () => {
  const plain = floorSource('1-dwelling');
  const source = withPapers(plain, basePapers(lowerCorners(plain)));
  const texts = (of: PaperSource) => labelsIn(dimensionsOf(of, 50)).map(textOf).sort();
  expect(texts(turned(source, 23, [500, -900]))).toEqual(texts(source));
});

it('says of which joints the figures have found no room, and nothing where all have', () => {
  const source = withPapers(floorSource('1-dwelling'), {});
  const settings = jointSettings(source);
  const figures = labelsIn(dimensionsOf(source, 50)).filter((label) => /^J\d+ \d+ from /u.test(textOf(label)));
  const [one, other] = figures;
  if (one === undefined || other === undefined) throw new Error('no doorways');
  expect(dimensionsLeft(settings, [])).toBeNull();
  expect(dimensionsLeft(settings, [one])).toBe(
    `Only in the list Setting out of joints are the figures of ${one.ref.id}.`,
  );
  expect(dimensionsLeft(settings, [other, one])).toContain(`${one.ref.id}, ${other.ref.id}.`);
  // names that have found no room are told by themselves
  const names = labelsIn(drawingOf(source.plan, source.analysis).items);
  expect(dimensionsLeft(settings, names)).toBeNull();
  // the figure beside a joint that stands on a string beside the floor as well is not missed
  const plain = floorSource('1-dwelling');
  const based = withPapers(plain, basePapers(lowerCorners(plain)));
  const beside = labelsIn(dimensionsOf(based, 50)).filter((label) => /^J\d+ [xy] /u.test(textOf(label)));
  expect(beside.length).toBeGreaterThan(5);
  expect(dimensionsLeft(jointSettings(based), beside)).toBeNull();
});

it('marks where dryness is tested, by name or number, and cuts a name that is too long', () => {
  const testPoints: { name?: string; at: [number, number] }[] = [
    { at: [1000, 1000] },
    { name: 'window', at: [2000, 1000] },
    { name: `\u202e=1+1\n${'x'.repeat(10_000)}`, at: [3000, 1000] },
  ];
  const items = testPointItems(hallSource({}, { records: { testPoints } }), 50);
  expect(items.filter((item) => item.shape === 'mark').map(({ at }) => at)).toEqual(testPoints.map(({ at }) => at));
  const labels = labelsIn(items);
  expect(labels.map(textOf).slice(0, 2)).toEqual(['1', 'window']);
  expect(textOf(labels[2] as LabelItem)).not.toMatch(/[\p{Cc}\u202e]/u);
  expect(formSize((labels[2] as LabelItem).forms[0] ?? []).widthMm).toBeLessThanOrEqual(30);
});
