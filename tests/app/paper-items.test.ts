import { describe, expect, it } from 'vitest';
import type { BoardDrawing } from '../../src/app/canvas/drawing.ts';
import { itemsPlace } from '../../src/app/canvas/hit.ts';
import { paperItemsOn } from '../../src/app/canvas/paperItems.ts';
import { viewportPaperPerPlan } from '../../src/app/canvas/viewport.ts';
import type { PlacedLabel } from '../../src/documents/drawing.ts';
import { drawingOf } from '../../src/documents/drawing-list.ts';
import { labelsPlace } from '../../src/documents/label-place.ts';
import { legendOf } from '../../src/documents/legend.ts';
import { marks } from '../../src/documents/symbols.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { lineHits, outlineOf } from '../documents/label-check.ts';
import { demoText, paperSourceOf } from '../documents/paper-fixture.ts';

type Points = Partial<Pick<PlanFile, 'papers' | 'records' | 'pour'>>;

/** The dwelling on the board. Its floor is 18 m wide and 11.4 m deep, from [0, 0]. */
const { file: dwelling, plan, analysis } = paperSourceOf(demoText('1-dwelling'));
const drawing = drawingOf(plan, analysis);
const plain: BoardDrawing = {
  items: itemsPlace(drawing.items),
  boxAt: () => drawing.box,
  drawing,
  place: (pxPerMm, within) => labelsPlace(drawing, { paperPerPlan: viewportPaperPerPlan({ pxPerMm }), within }),
};
const everywhere = { minX: -1e6, minY: -1e6, maxX: 1e6, maxY: 1e6 };

function boardWith(points: Points): BoardDrawing {
  return paperItemsOn(plain, { file: { ...dwelling, ...points }, plan });
}

const textOf = ({ form }: PlacedLabel) => form[0]?.text ?? '';
const namesOn = (board: BoardDrawing, pxPerMm: number) =>
  board.place(pxPerMm, everywhere).filter(({ form }) => form[0]?.style === 'sheet-head');

/** Zooms of the board: the whole dwelling on a small tablet, on two screens, a few rooms, one room; px for 1 mm. */
const zooms = [0.015, 0.027, 0.044, 0.1, 0.25];

/** In the middle of each bay, at each finding and beside it; a longer name among them. */
const crowded: Points = {
  papers: {
    basePoints: analysis.findings.flatMap(({ at }, i) => (at === null ? [] : [{ name: `P${i + 1}`, at: [...at] }])),
    gridLines: [
      { name: 'A', from: [2600, -1500], to: [2600, 12_500] },
      { name: '1', from: [-1500, 9000], to: [19_000, 9000] },
    ],
  },
  records: {
    testPoints: [
      ...analysis.bays.map(({ stillPoint }, i) => ({
        name: i === 4 ? 'Window' : `T${i + 1}`,
        at: [...stillPoint] as [number, number],
      })),
      ...analysis.findings.flatMap(({ at }, i) =>
        at === null ? [] : [{ name: `F${i + 1}`, at: [at[0] + 250, at[1] - 250] as [number, number] }],
      ),
    ],
  },
  pour: { access: [7900, 1250] },
};

describe('names of points on the board', () => {
  it.each(zooms)('no name stands over another name, a size, a pin or a symbol, at %d px for 1 mm', (pxPerMm) => {
    const board = boardWith(crowded);
    const scale = 1 / viewportPaperPerPlan({ pxPerMm });
    const placed = board.place(pxPerMm, everywhere);
    expect(placed.length).toBeGreaterThan(10);
    const outlines = placed.map((label) => outlineOf(label, scale));
    const signs = board.items.flatMap(({ item }) => {
      if (item.shape !== 'mark' || item.clearMm !== undefined) return [];
      const { left, right, up, down } = marks[item.style].reachMm;
      const at = (dx: number, dy: number): Point => [item.at[0] + dx * scale, item.at[1] + dy * scale];
      return [[at(-left, -up), at(right, -up), at(right, down), at(-left, down), at(-left, -up)]];
    });
    expect(signs.length).toBeGreaterThan(analysis.bays.length);
    placed.forEach((label, i) => {
      outlines.forEach((other, k) => {
        if (k !== i) expect([textOf(label), k, lineHits(label, other, scale)]).toEqual([textOf(label), k, false]);
      });
      if (label.label.seat.kind === 'beside' && label.label.ref.kind === 'joint') return;
      for (const sign of signs) expect([textOf(label), lineHits(label, sign, scale)]).toEqual([textOf(label), false]);
    });
  });

  it('each point in the middle of a bay has its name beside it once its room is seen from near', () => {
    const names = namesOn(boardWith(crowded), 0.25).map(textOf);
    for (const i of analysis.bays.keys()) expect(names).toContain(i === 4 ? 'Window' : `T${i + 1}`);
  });

  it('the names of bays stand where they stood when no point is marked', () => {
    for (const pxPerMm of zooms)
      expect(boardWith({}).place(pxPerMm, everywhere)).toEqual(plain.place(pxPerMm, everywhere));
  });

  it('a name stands on its own side of a wall', () => {
    // the porch is 1.4 m wide and ends at x 7200 and 8600; "Access" takes more than its half at this zoom
    const names = namesOn(boardWith({ pour: { access: [7900, 1250] } }), 0.02);
    for (const { at } of names) expect(at[0] > 7200 && at[0] < 8600).toBe(true);
    const near = namesOn(boardWith({ pour: { access: [7900, 1250] } }), 0.25);
    expect(near.map(textOf)).toEqual(['Access']);
  });

  it('a name that is hostile is shown as harmless text of bounded width', () => {
    const name = `\u202e=1+1\n${'x'.repeat(10_000)}`;
    const [label] = namesOn(boardWith({ records: { testPoints: [{ name, at: [2600, 9000] }] } }), 0.25);
    expect(label?.widthMm).toBeLessThanOrEqual(30);
    expect(label === undefined ? '' : textOf(label)).not.toMatch(/[\p{Cc}\u202e]/u);
  });

  it('the key explains the symbols of points while they are on the board, and not otherwise', () => {
    const words = (board: BoardDrawing) =>
      board.drawing === null ? [] : legendOf(board.drawing).map((row) => row.words);
    expect(words(boardWith(crowded))).toContain('Base point, marked on site');
    expect(words(boardWith({}))).not.toContain('Base point, marked on site');
  });
});

describe('fitting the floor', () => {
  const beside: Points = {
    papers: {
      basePoints: [
        { name: 'Corner of the drive', at: [-5000, 3000] },
        { name: 'Gate post', at: [24_000, 3000] },
      ],
    },
  };

  it('counts points beside the floor and all of their names, at the size that these have there', () => {
    const board = boardWith(beside);
    for (const pxPerMm of zooms) {
      const box = board.boxAt(pxPerMm);
      const scale = 1 / viewportPaperPerPlan({ pxPerMm });
      const names = namesOn(board, pxPerMm);
      expect(names).toHaveLength(2);
      for (const [x, y] of [...names.flatMap((name) => outlineOf(name, scale)), [-5000, 3000], [24_000, 3000]]) {
        expect(x).toBeGreaterThanOrEqual(box?.minX ?? NaN);
        expect(x).toBeLessThanOrEqual(box?.maxX ?? NaN);
        expect(y).toBeGreaterThanOrEqual(box?.minY ?? NaN);
        expect(y).toBeLessThanOrEqual(box?.maxY ?? NaN);
      }
    }
  });

  it('has the name of a point beside the floor on the side of the floor, where it is seen', () => {
    const [left, right] = namesOn(boardWith(beside), 0.044);
    expect(left?.at[0]).toBeGreaterThan(-5000);
    expect(right?.at[0]).toBeLessThan(24_000);
  });

  it('leaves out a point that lies too far off for the sheets', () => {
    // sheets draw what lies up to half the floor's longer side beyond it, here 9 m
    const board = boardWith({ papers: { basePoints: [{ name: 'Church', at: [900_000, 0] }] } });
    expect(board.boxAt(0.044)).toEqual(drawing.box);
    expect(board.items.length).toBe(plain.items.length + 1);
  });
});
