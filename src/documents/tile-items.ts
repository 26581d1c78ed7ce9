import { type Point, pointBetween, pointDirection } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import { type Box, boxOf, type Ring } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { DIRECTION_DEG, WELD_MM } from '../geometry/tolerance.ts';
import type { Analysis, Bay, WallCut } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import { rules } from '../plan/reference.ts';
import type { DrawingItem, DrawingRef, MarkItem, RuledItem } from './drawing.ts';
import type { RuledStyleName } from './styles.ts';
import { tileFloors } from './tile-floor.ts';
import { groutStrokes, type Strokes } from './tile-lines.ts';

/** The tiles of a plan: grout lines bay by bay, the whole tile to begin with, narrow cuts along walls, and where each field is set out. */
export function tileItems(plan: Plan, analysis: Analysis): DrawingItem[] {
  const floors = tileFloors(plan, analysis);
  const bays = new Map(analysis.bays.map((bay) => [bay.id, bay]));
  const grout = floors.flatMap(({ grid, pieces }) =>
    pieces.map(({ bay, region }) => ({
      ...ruled('grout', groutStrokes(grid, region), { kind: 'bay', id: bay }),
      grout: { leastMm: Math.min(grid.lengthMm, grid.widthMm), groutMm: grid.groutMm },
    })),
  );
  const marked = floors.flatMap(({ report, pieces }) => {
    const [bay] = pieces;
    const ref = { kind: 'bay', id: bay?.bay ?? '' } as const;
    return [...cutItems(report, bays), ...(report.firstTile === null ? [] : [firstTileItem(report.firstTile, ref)])];
  });
  return [...grout, ...marked].filter(({ strokes }) => strokes.length > 0);
}

/** Where each field is set out. A point off the drawing is not drawn: it would take the sheet with it.
 *  @param box round the rest of the drawing */
export function setOutMarks({ tiles }: Analysis, box: Box | null): MarkItem[] {
  if (tiles === null || box === null) return [];
  const { minX, minY, maxX, maxY } = box;
  return tiles.fields
    .filter(({ origin: [x, y] }) => x >= minX && x <= maxX && y >= minY && y <= maxY)
    .map(({ id, origin, angleDeg }) => {
      const ref = { kind: 'object', id: id ?? 'tiles' } as const;
      return { shape: 'mark', layer: 'marks', style: 'set-out', at: origin, text: null, angleDeg, ref };
    });
}

function firstTileItem(corners: readonly Point[], ref: DrawingRef): RuledItem {
  const sides = corners.flatMap((a, k) => {
    const b = corners[(k + 1) % corners.length] as Point;
    return [a[0], a[1], b[0], b[1]];
  });
  return ruled('first-tile', new Float64Array(sides), ref);
}

/** Walls that leave the direction of the tiles by more are met by cuts of every size: that is the look of a turned field, not a fault of its place. */
const mostAskewDeg = DIRECTION_DEG;
type CutStyle = Extract<RuledStyleName, `cut-${string}`>;

/** Bands inside the walls along which tiles are cut to less than half, or less than a third. */
function cutItems(
  { angleDeg, cuts }: { readonly angleDeg: number; readonly cuts: readonly WallCut[] },
  bays: ReadonlyMap<string, Bay>,
): RuledItem[] {
  const bands = new Map<string, { readonly style: CutStyle; readonly bay: string; readonly strokes: number[] }>();
  for (const cut of cuts) {
    const [style, bay] = [cutMark(cut), bays.get(cut.bay)];
    if (style === null || bay === undefined || !isAlongTiles(cut, angleDeg)) continue;
    const line = cutLine(cut, bay);
    if (line === null) continue;
    const key = `${style} ${cut.bay}`;
    const band = bands.get(key) ?? { style, bay: cut.bay, strokes: [] };
    bands.set(key, band);
    band.strokes.push(...line.flat());
  }
  return [...bands.values()].map(({ style, bay, strokes }) =>
    ruled(style, new Float64Array(strokes), { kind: 'bay', id: bay }),
  );
}

/** How a cut along a wall or a thing is marked; null where it is as wide as is wished. Jambs are too short to be marked, round pipes tiles are drilled,
 *  and along joints both sides are seen together. */
export function cutMark(cut: WallCut): CutStyle | null {
  return cut.along === 'jamb' || cut.along === 'joint' || cut.along === 'pipe' ? null : cutNarrow(cut);
}

/** How narrow the narrowest cut along a wall is. */
export function cutNarrow({ leastShare }: WallCut): CutStyle | null {
  if (leastShare < rules.sliverShare.value - shareSlack) return 'cut-sliver';
  return leastShare < rules.cutLeastShare.value - shareSlack ? 'cut-under-half' : null;
}

/** A cut of just half a tile is not under half, whatever rounding makes of it. */
const shareSlack = 1e-3;

/** Whether a wall runs with the tiles or square to them. */
export function isAlongTiles({ line: [a, b] }: WallCut, angleDeg: number): boolean {
  const turnDeg = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI - angleDeg;
  return Math.abs(turnDeg - Math.round(turnDeg / 90) * 90) <= mostAskewDeg;
}

/** So far inside a wall its bay is looked for, mm: less than any bay is wide. */
const besideMm = 5;

/** The line of a cut with the floor on its right; null where it stands for a curve, whose middle lies off it. */
export function cutLine({ line: [a, b] }: WallCut, { outline, holes }: Bay): readonly [Point, Point] | null {
  const [x, y] = pointBetween(a, b, 0.5);
  if (![outline, ...holes].some((ring) => isOnRing(ring, [x, y]))) return null;
  const [ux, uy] = pointDirection(a, b);
  return regionContains({ outline, holes }, [x - uy * besideMm, y + ux * besideMm]) ? [a, b] : [b, a];
}

function isOnRing(ring: Ring, p: Point): boolean {
  return ring.some((a, k) => segmentDistance(a, ring[(k + 1) % ring.length] as Point, p) <= WELD_MM);
}

export function ruled(style: RuledStyleName, strokes: Strokes, ref: DrawingRef): RuledItem {
  return { shape: 'ruled', layer: 'tiles', style, strokes, box: strokesBox(strokes), ref };
}

function strokesBox(strokes: Strokes): Box {
  return boxOf(Array.from({ length: strokes.length / 2 }, (_, k) => [strokes[2 * k] ?? 0, strokes[2 * k + 1] ?? 0]));
}
