import { regionDeepestPoint } from '../geometry/deepest-point.ts';
import type { Point } from '../geometry/point.ts';
import { regionArea } from '../geometry/region.ts';
import { regionInBox } from '../geometry/region-clip.ts';
import { type Box, boxAround, boxMiddle, boxOf } from '../geometry/ring.ts';
import type { Drawing, DrawingItem, LabelForm, LabelItem, LabelSeat, LineItem, PlacedLabel } from './drawing.ts';
import { itemsInOrder } from './drawing-list.ts';
import { boxesMeet, boxHolds, polylineWithin } from './ink-clip.ts';
import { labelsLed } from './label-led.ts';
import { labelsPlace } from './label-place.ts';
import { lineLength } from './label-seats.ts';
import type { ToldShare } from './plan-document.ts';
import { type BoxAt, type SheetWish, sheetChoose } from './sheet.ts';
import { type GridCell, overviewLayout, type SheetGrid, sheetGrid } from './sheet-grid.ts';
import {
  acrossGroup,
  drawingBox,
  drawingGroups,
  frameInk,
  namesLeft,
  placeCentred,
  type Sheet,
  sheetInOne,
  sheetWith,
} from './sheet-inks.ts';
import { boxCorners, keyPlanOf } from './sheet-key.ts';
import { matchInks, type Neighbours } from './sheet-match.ts';
import { narrowInks } from './sheet-narrow.ts';
import type { SheetDrawing, SheetStrip } from './strip-flow.ts';

/** The first of them is always there. */
export type Sheets = readonly [Sheet, ...Sheet[]];

/** A drawing to scale with its strip: on one sheet where it fits; else all of it in small on the first, and to scale over the sheets that follow. */
export function sheetPages(drawing: SheetDrawing, strip: SheetStrip, wish: SheetWish, told?: ToldShare): Sheets {
  const layout = sheetChoose(boxesOf(drawing), wish, strip.wants);
  return layout === null
    ? gridPages(drawing, strip, wish, told)
    : [sheetInOne(drawing.at(layout.scale), strip, layout)];
}

function boxesOf({ at, small }: SheetDrawing): BoxAt {
  const bare = drawingBox(small);
  return (scale, serves) => (serves(bare) ? drawingBox(at(scale)) : bare);
}

/** A cell of the grid that has something on it. */
interface UsedCell extends GridCell {
  readonly page: number;
}

function gridPages(scaled: SheetDrawing, strip: SheetStrip, wish: SheetWish, told: ToldShare = () => {}): Sheets {
  const grid = sheetGrid(boxesOf(scaled), wish);
  const drawing = scaled.at(grid.layout.scale);
  const cells = usedCells(drawing, grid);
  const of = cells.length + 1;
  const keyPlan = keyPlanOf(drawing, cells);
  const across = acrossGroup(strip, grid.window);
  const lettered: { readonly item: LabelItem; readonly form: LabelForm }[] = [];
  const near = itemsNear(drawing, grid.layout.scale);
  const parts = cells.map((cell): Sheet => {
    const part = { ...drawing, items: near(cell.shown) };
    const place = placeCentred(boxMiddle(cell.shown), grid.window, grid.layout.scale);
    told((cell.page - 1) / of);
    const placed = labelsIn(part, cell.own, place.paperPerPlan);
    for (const [item, { form }] of placed) lettered.push({ item, form });
    const { x, y, width, height } = grid.window;
    const window = { minX: x, minY: y, maxX: x + width, maxY: y + height };
    const count = { page: cell.page, of };
    return sheetWith(strip, grid.layout, count, [
      ...drawingGroups(part, { place, lettered: placed, across, window }),
      { ref: null, inks: matchInks(grid.window, neighboursOf(cell, cells)) },
      { ref: null, inks: [frameInk(grid.layout.drawing), frameInk(grid.layout.strip)] },
      { ref: null, inks: narrowInks(strip.block, grid.layout, count, keyPlan(cell)) },
    ]);
  });
  const [want = () => true] = strip.wants;
  const box = overviewBox(scaled.small, cells);
  const layout = overviewLayout(box, grid, want);
  const small = { items: [...scaled.small.items, ...sheetFrames(cells)], box };
  const overview = sheetInOne(
    { ...small, items: itemsInOrder(small.items) },
    strip,
    layout,
    { page: 1, of },
    namesLeft(drawing, lettered),
  );
  return [overview, ...parts];
}

/** Text and symbols reach no further from what they belong to, mm on paper. */
const reachMm = 40;

/** Looks up what may be seen in a part of the plan: a sheet of many does not go through all of the floor. */
function itemsNear({ items }: Drawing, scale: number): (shown: Box) => readonly DrawingItem[] {
  const boxes = items.map((item) => boxAround(itemBox(item), reachMm * scale));
  return (shown) => items.filter((_, i) => boxesMeet(boxes[i] as Box, shown));
}

function itemBox(item: DrawingItem): Box {
  switch (item.shape) {
    case 'fill':
      return boxOf(item.outline);
    case 'line':
      return boxOf(item.points);
    case 'ruled':
      return item.box;
    case 'mark':
      return pointBox(item.at);
    case 'label':
      return item.seat.kind === 'inside'
        ? boxOf(item.seat.region.outline)
        : boxOf([...item.seat.line, ...(item.seat.places ?? []).map(({ at }) => at)]);
  }
}

function usedCells(drawing: Drawing, { cells }: SheetGrid): readonly UsedCell[] {
  const used = cells.filter(({ own }) => drawing.items.some((item) => itemReaches(item, own)));
  return used.map((cell, i) => ({ ...cell, page: i + 2 }));
}

function itemReaches(item: DrawingItem, own: Box): boolean {
  switch (item.shape) {
    case 'fill':
      return regionInBox({ outline: item.outline, holes: item.holes }, own).length > 0;
    case 'line':
      return polylineWithin(item.points, own).length > 0;
    case 'mark':
      return boxHolds(own, pointBox(item.at));
    case 'ruled':
    case 'label':
      // grout lies on floor, and text stands beside what it belongs to
      return false;
  }
}

function pointBox([x, y]: Point): Box {
  return { minX: x, minY: y, maxX: x, maxY: y };
}

function neighboursOf({ column, row }: GridCell, cells: readonly UsedCell[]): Neighbours {
  const page = (dx: number, dy: number) =>
    cells.find((cell) => cell.column === column + dx && cell.row === row + dy)?.page ?? null;
  return { left: page(-1, 0), right: page(1, 0), up: page(0, -1), down: page(0, 1) };
}

/** Labels as they stand on a sheet of their own part of the plan: what reaches over a match line is named on both sides of it, and no text is cut. */
function labelsIn(drawing: Drawing, own: Box, paperPerPlan: number): ReadonlyMap<LabelItem, PlacedLabel> {
  const from = new Map<LabelItem, LabelItem>();
  const others: DrawingItem[] = [];
  for (const item of drawing.items) {
    if (item.shape !== 'label') others.push(item);
    else {
      const seat = seatIn(item.seat, own);
      if (seat !== null)
        from.set(seat === item.seat && item.led === undefined ? item : ledIn({ ...item, seat }, own), item);
    }
  }
  const items = [...others, edgeOf(own), ...from.keys()];
  const last = labelsLed(items, { paperPerPlan, window: own });
  const placed = labelsPlace({ items }, { paperPerPlan, within: own, last });
  const whole = placed.filter((label) => textWithin(label, own, paperPerPlan));
  return new Map(
    whole.flatMap((label) => {
      const item = from.get(label.label);
      return item === undefined ? [] : [[item, label] as const];
    }),
  );
}

/** A leader begins at what is on the sheet. */
function ledIn({ led, ...label }: LabelItem, own: Box): LabelItem {
  const from = led?.from.filter((at) => boxHolds(own, pointBox(at))) ?? [];
  return led === undefined || from.length === 0 ? label : { ...label, led: { ...led, from } };
}

function seatIn(seat: LabelSeat, own: Box): LabelSeat | null {
  if (seat.kind === 'inside') {
    const pieces = regionInBox(seat.region, own);
    if (pieces.length === 0 || pieces[0] === seat.region) return pieces.length === 0 ? null : seat;
    const region = pieces.reduce((a, b) => (regionArea(b) > regionArea(a) ? b : a));
    return { ...seat, region, at: regionDeepestPoint(region).point };
  }
  if (seat.places !== undefined) {
    const places = seat.places.filter(({ at }) => boxHolds(own, pointBox(at)));
    return places.length === 0 ? null : { ...seat, places };
  }
  const pieces = polylineWithin(seat.line, own);
  if (pieces.length === 0) return null;
  const line = pieces.reduce((a, b) => (lineLength(b) > lineLength(a) ? b : a));
  return line.length === seat.line.length ? seat : { ...seat, line };
}

/** Text keeps clear of a match line as of any other. */
function edgeOf(own: Box): LineItem {
  const corners = boxCorners(own);
  const points = [...corners, ...corners.slice(0, 1)];
  return { shape: 'line', layer: 'marks', style: 'match', points, ref: { kind: 'object', id: '' } };
}

function textWithin({ at, angleDeg, widthMm, heightMm }: PlacedLabel, own: Box, paperPerPlan: number): boolean {
  const turn = (angleDeg * Math.PI) / 180;
  const [cos, sin] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))];
  const reachX = (widthMm * cos + heightMm * sin) / 2 / paperPerPlan;
  const reachY = (widthMm * sin + heightMm * cos) / 2 / paperPerPlan;
  return boxHolds(own, { minX: at[0] - reachX, maxX: at[0] + reachX, minY: at[1] - reachY, maxY: at[1] + reachY });
}

/** Numbers of sheets are looked for first. */
const pageFirst = 9e6;

/** The parts of a drawing that the sheets show to scale. */
function sheetFrames(cells: readonly UsedCell[]): readonly DrawingItem[] {
  return cells.flatMap(({ own, page }): readonly DrawingItem[] => {
    const edge = edgeOf(own);
    const { ref } = edge;
    const region = { outline: edge.points.slice(0, -1), holes: [] };
    const text = [`Sheet ${page}`, String(page)];
    return [
      edge,
      {
        shape: 'label',
        layer: 'labels',
        ref,
        seat: { kind: 'inside', at: boxMiddle(own), region },
        forms: text.map((words) => [{ text: words, style: 'sheet-title' }]),
        priority: pageFirst,
      },
    ];
  });
}

function overviewBox(drawing: Drawing, cells: readonly UsedCell[]): Box {
  return boxOf([drawingBox(drawing), ...cells.map(({ own }) => own)].flatMap(boxCorners));
}
