import { describe, expect, it } from 'vitest';
import { comparisonDrawing, comparisonPages } from '../../src/documents/compare-drawing.ts';
import type { LabelItem } from '../../src/documents/drawing.ts';
import { legendOf } from '../../src/documents/legend.ts';
import { type Point, pointDistance } from '../../src/geometry/point.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { jointAt, rectangle } from './compare-fixture.ts';
import { box } from './fixture.ts';
import { pageTexts, textsOverText } from './page-text-check.ts';
import { hallAndStore } from './paper-fixture.ts';

/** What the drawing of a revision shows of where things were, and what bays were called. Places are read off the drawing of the test; a hall of 12 x 5 m. */

function left(before: Partial<PlanFile>, now: Partial<PlanFile>): readonly (readonly Point[])[] {
  return comparisonDrawing(hallAndStore(before), hallAndStore(now)).items.flatMap((item) =>
    item.shape === 'line' && item.style === 'revision-left' ? [item.points] : [],
  );
}

const columns = (id: string, outline: readonly Point[]): Partial<PlanFile> => ({
  columns: [{ id, outline }] as PlanFile['columns'],
});
const joinery = (id: string, outline: readonly Point[]): Partial<PlanFile> => ({
  joinery: [{ id, name: 'Island', outline, under: 'insulated' }] as PlanFile['joinery'],
});
const pipes = (id: string, centre: Point, diameterMm = 110): Partial<PlanFile> => ({
  pipes: [{ id, centre, diameterMm }] as PlanFile['pipes'],
});
const around = (outline: readonly Point[]) => [...outline, ...outline.slice(0, 1)];

describe('a thing that stood elsewhere', () => {
  it('is drawn where it was, all round: a column, joinery and a pipe that were moved', () => {
    const was = box(4000, 2000, 300, 300);
    expect(left(columns('c1', was), columns('c1', box(5000, 3000, 300, 300)))).toEqual([around(was)]);
    const unit = box(6000, 1000, 1800, 900);
    expect(left(joinery('u1', unit), joinery('u1', box(6000, 3000, 1800, 900)))).toEqual([around(unit)]);
    const [ring = []] = left(pipes('p1', [3000, 3000]), pipes('p1', [3500, 3000]));
    expect(ring.length).toBeGreaterThan(8);
    for (const place of ring) expect(pointDistance(place, [3000, 3000])).toBeCloseTo(55, 6);
    expect(ring.at(-1)).toEqual(ring[0]);
  });

  it('is drawn where it went, and where it is of another outline or diameter now', () => {
    const was = box(4000, 2000, 300, 300);
    expect(left(columns('c1', was), {})).toEqual([around(was)]);
    const cut: Point[] = [...was.slice(0, 3), [4100, 2200]];
    // the corner that was cut off: the two sides that ran to it
    expect(left(columns('c1', was), columns('c1', cut))).toEqual([
      [
        [4300, 2300],
        [4000, 2300],
        [4000, 2000],
      ],
    ]);
    const [ring = []] = left(pipes('p1', [3000, 3000], 160), pipes('p1', [3000, 3000], 110));
    for (const place of ring) expect(pointDistance(place, [3000, 3000])).toBeCloseTo(80, 6);
    expect(ring.length).toBeGreaterThan(8);
  });

  it('is not drawn where it stands as it stood under another id, nor where it is new', () => {
    const was = box(4000, 2000, 300, 300);
    expect(left(columns('c1', was), columns('c9', was))).toEqual([]);
    expect(left(joinery('c1', was), joinery('c9', was))).toEqual([]);
    expect(left(pipes('p1', [3000, 3000]), pipes('p9', [3000, 3000]))).toEqual([]);
    expect(left({}, columns('c1', was))).toEqual([]);
  });

  it('is not drawn over an edge that is there now: a wall that it stood at, or a side along which it was moved', () => {
    // moved by 600 mm along the left wall, by less than its own length
    const [was, is] = [box(0, 1000, 600, 1000), box(0, 1600, 600, 1000)];
    expect(left(joinery('u1', was), joinery('u1', is))).toEqual([
      [
        [0, 1000],
        [600, 1000],
        [600, 1600],
      ],
      [
        [600, 2000],
        [0, 2000],
      ],
    ]);
  });

  it('is drawn as it stood on the floor where the floor was moved on its sheet as a whole', () => {
    const moved = (dx: number, columnMm: number): Partial<PlanFile> => ({
      rooms: [rectangle('hall', [dx, 0], [12_000 + dx, 5000]), rectangle('store', [dx, 5100], [4000 + dx, 8000])],
      doorways: [],
      ...columns('c1', box(columnMm + dx, 2000, 300, 300)),
    });
    expect(left(moved(0, 4000), moved(20_000, 4000))).toEqual([]);
    expect(left(moved(0, 4000), moved(20_000, 4800))).toEqual([around(box(24_000, 2000, 300, 300))]);
  });

  it('is left out where it lay too far off the floor to be drawn', () => {
    expect(left(columns('c1', box(900_000, 2000, 300, 300)), {})).toEqual([]);
  });

  it('stands in the legend', () => {
    const drawing = comparisonDrawing(hallAndStore(columns('c1', box(4000, 2000, 300, 300))), hallAndStore());
    expect(legendOf(drawing).map(({ words }) => words)).toContain('Wall or thing, where it was');
  });
});

describe('a bay that has another number', () => {
  // wide limits: the hall is one bay, and two where a joint is drawn across it, 4 m and 8 m long; of those the larger is the bay of before
  const wide = { screed: { limits: { areaM2: 200, lengthM: 30, aspect: 20 } } };
  const [before, now] = [hallAndStore(wide), hallAndStore({ ...wide, ...jointAt(4000) })];
  const bayForms = (of: typeof now, is: typeof now) =>
    comparisonDrawing(of, is).items.flatMap((item): LabelItem['forms'][] =>
      item.shape === 'label' && item.ref.kind === 'bay' ? [item.forms] : [],
    );

  it('is lettered with the one it had, small under its own, and without where there is no room', () => {
    const texts = bayForms(before, now).map((forms) => forms.map((form) => form.map(({ text }) => text)));
    expect(texts.map(([first]) => first).sort()).toEqual([['B1'], ['B2', 'was B1'], ['B3', 'was B2']]);
    for (const [, ...others] of texts) expect(others.every((form) => form.length === 1)).toBe(true);
    const [name, was] = bayForms(before, now).find(([first]) => first?.length === 2)?.[0] ?? [];
    expect([name?.style, was?.style]).toEqual(['bay-name', 'bay-figure']);
  });

  it('is lettered with its number alone where that stayed', () => {
    expect(
      bayForms(now, now)
        .flat(2)
        .filter(({ text }) => text.startsWith('was')),
    ).toEqual([]);
  });

  it('is read on the sheet, where no text lies over another', () => {
    const pages = comparisonPages(before, now);
    expect(pages.flatMap(pageTexts).map(({ text }) => text)).toEqual(expect.arrayContaining(['was B1', 'was B2']));
    expect(pages.flatMap(textsOverText)).toEqual([]);
  });
});
