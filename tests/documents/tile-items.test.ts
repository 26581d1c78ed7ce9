import { describe, expect, it } from 'vitest';
import type { RuledItem } from '../../src/documents/drawing.ts';
import { drawingOf } from '../../src/documents/drawing-list.ts';
import { itemInks } from '../../src/documents/ink.ts';
import { legendOf } from '../../src/documents/legend.ts';
import { sheetContent } from '../../src/documents/sheet-content.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { Analysis } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { drawingSvg } from './drawing-svg.ts';
import { analysisOf, bay, box, planOf, room } from './fixture.ts';
import { paperSource } from './paper-fixture.ts';
import { fieldReport, grid, tiledAnalysis, tiledPlan, wallCut } from './tile-fixture.ts';

function ruledItems(
  style: string,
  plan: Plan = tiledPlan(),
  analysis: Analysis = tiledAnalysis(),
): readonly RuledItem[] {
  return drawingOf(plan, analysis).items.flatMap((item) =>
    item.shape === 'ruled' && item.style === style ? [item] : [],
  );
}

const [grout] = ruledItems('grout');
function groutInk(scale: number) {
  return grout === undefined ? undefined : itemInks(grout, { paperPerPlan: 1 / scale, offsetMm: [0, 0] })[0];
}

describe('tiles on the drawing', () => {
  it('are drawn on the bays of their rooms and under what stands on the floor', () => {
    const { items } = drawingOf(tiledPlan(), tiledAnalysis());
    const layers = items.map(({ layer }) => layer);
    expect(ruledItems('grout').map(({ ref }) => ref.id)).toEqual(['B1', 'B2', 'B3']);
    expect(layers.lastIndexOf('bays')).toBeLessThan(layers.indexOf('tiles'));
    expect(layers.lastIndexOf('tiles')).toBeLessThan(layers.indexOf('objects'));
  });

  it('are left out where the floor has none', () => {
    const { items } = drawingOf(planOf(), analysisOf());
    expect(items.filter(({ shape }) => shape === 'ruled')).toEqual([]);
    expect(items.filter((item) => item.shape === 'mark' && item.style === 'set-out')).toEqual([]);
  });

  it('have the finest line, and grout its true width where that is more', () => {
    // 3 mm of grout: 0.06 mm at 1 : 50, 0.6 mm at 1 : 5
    expect(groutInk(50)).toMatchObject({ stroke: { widthMm: 0.13 } });
    expect(groutInk(5)).toMatchObject({ stroke: { widthMm: expect.closeTo(0.6, 9) } });
  });

  it('are left out where a tile of 600 mm would be less than 1.5 mm on paper, and then not explained either', () => {
    expect(groutInk(400)).toBeDefined();
    expect(groutInk(401)).toBeUndefined();
    const words = (scale: number) =>
      legendOf(drawingOf(tiledPlan(), tiledAnalysis()), 1 / scale).map((row) => row.words);
    expect(words(400)).toContain('Grout lines of the tiles');
    expect(words(401)).not.toContain('Grout lines of the tiles');
  });

  it('stop where another field or a room without tiles begins, though the bay goes on', () => {
    // one open floor of two rooms, side by side, under one bay
    const rooms = [room('r1', 'Hall', box(0, 0, 3000, 2000)), room('r2', 'Bar', box(3000, 0, 3000, 2000))];
    const floor = bay('B1', ['r1', 'r2'], box(0, 0, 6000, 2000), 6, 2);
    const field = { ...grid, id: 't1', rooms: ['r2'], origin: [3000, 0] as Point, lengthMm: 300, widthMm: 300 };
    const plan = tiledPlan({ rooms, tileFields: [field] });
    const reports = [fieldReport({ id: 't1', rooms: ['r2'] }), fieldReport({ rooms: ['r1'] })];
    const items = ruledItems('grout', plan, tiledAnalysis(reports, { bays: [floor], joints: [], edges: [] }));
    expect(items.map((item) => [item.box.minX, item.box.maxX])).toEqual([
      [3000, 6000],
      [0, 3000],
    ]);
    const bare = [rooms[0], { ...(rooms[1] as (typeof rooms)[number]), covering: 'timber' as const }];
    const only = ruledItems(
      'grout',
      tiledPlan({ rooms: bare as typeof rooms }),
      tiledAnalysis([fieldReport({ rooms: ['r1'] })], { bays: [floor], joints: [], edges: [] }),
    );
    expect(only.map((item) => [item.box.minX, item.box.maxX])).toEqual([[0, 3000]]);
  });

  it('take the floor of a doorway with the room that it lies against', () => {
    // the bay ends in the middle of the doorway of the wall at x = 3000, and is shared with an open room above
    const rooms = [room('r1', 'Hall', box(0, 0, 3000, 2000)), room('r2', 'Bar', box(0, -2000, 3000, 2000))];
    const outline: Point[] = [...box(0, -2000, 3000, 4000)];
    outline.splice(2, 0, [3000, 500], [3060, 500], [3060, 1400], [3000, 1400]);
    const floor = bay('B1', ['r1', 'r2'], outline, 4, 3);
    const field = { ...grid, id: 't1', rooms: ['r1'], groutMm: 3 };
    const plan = tiledPlan({ rooms, tiles: null, tileFields: [field] });
    const report = fieldReport({ id: 't1', rooms: ['r1'] });
    const [item] = ruledItems('grout', plan, tiledAnalysis([report], { bays: [floor], joints: [], edges: [] }));
    expect(item?.box).toMatchObject({ minX: 0, maxX: 3060, minY: 0, maxY: 2000 });
  });
});

describe('what marks the tiles', () => {
  it('is the whole tile to begin with, by its four sides', () => {
    const [first] = ruledItems('first-tile');
    expect(first?.box).toEqual({ minX: 1809, minY: 3015, maxX: 2409, maxY: 3615 });
    expect(first?.strokes).toHaveLength(16);
  });

  it('is a band inside each wall with cuts under a third, and another under half, but not at joints, jambs or wide cuts', () => {
    const bands = (style: string) => ruledItems(style).map(({ strokes }) => [...strokes]);
    // 98 of 600 mm at the left wall of the kitchen, run so that the kitchen lies on the right
    expect(bands('cut-sliver')).toEqual([[4120, 7000, 4120, 4120]]);
    expect(bands('cut-under-half')).toEqual([[9000, 7000, 4120, 7000]]);
  });

  it('lies inside the wall, clear of its edge, and is left out where the wall is too short for it', () => {
    const [band] = ruledItems('cut-sliver');
    if (band === undefined) throw new Error('no band');
    const lines = (scale: number) => {
      const [ink] = itemInks(band, { paperPerPlan: 1 / scale, offsetMm: [0, 0] });
      return ink?.ink === 'path' ? ink.lines : [];
    };
    const [from] = lines(50)[0] ?? [];
    // the wall stands at 4120 / 50 = 82.4 mm on paper; its edge is 0.9 mm wide, the band 1.3 mm deep
    expect((from?.[0] ?? 0) - 0.65).toBeGreaterThan(82.4 + 0.45);
    expect(lines(1000)).toEqual([]);
  });

  it('leaves walls askew to the tiles unmarked', () => {
    const cut = wallCut(
      'B3',
      'r2',
      [
        [4120, 4120],
        [9000, 4460],
      ],
      [20, 560],
      { isAskew: true },
    );
    const report = fieldReport({ cuts: [cut] });
    expect(ruledItems('cut-sliver', tiledPlan(), tiledAnalysis([report]))).toEqual([]);
  });

  it('is the set-out point, turned as the courses run, unless it lies off the drawing', () => {
    const at = (origin: Point) => {
      const { items, box: around } = drawingOf(tiledPlan(), tiledAnalysis([fieldReport({ origin, angleDeg: 30 })]));
      return {
        around,
        found: items.flatMap((item) => (item.shape === 'mark' && item.style === 'set-out' ? [item] : [])),
      };
    };
    expect(at([2000, 1000]).found).toMatchObject([{ at: [2000, 1000], angleDeg: 30, layer: 'marks' }]);
    expect(at([-5e6, 0]).found).toEqual([]);
    expect(at([-5e6, 0]).around).toEqual(at([2000, 1000]).around);
  });

  it('is explained beside the drawing', () => {
    const text = drawingSvg(
      drawingOf(tiledPlan(), tiledAnalysis()),
      sheetContent(paperSource(tiledPlan(), tiledAnalysis())),
    );
    for (const words of [
      '600 × 600\u00a0mm',
      'Grout lines of the tiles',
      'First whole tile',
      'Slivers: cut to under a third',
      'Tiles cut to under half',
    ])
      expect(text).toContain(words);
  });
});
