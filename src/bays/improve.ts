import { regionsIntersect } from '../geometry/clip.ts';
import type { Point } from '../geometry/point.ts';
import { regionArea, regionContains } from '../geometry/region.ts';
import { regionInBox } from '../geometry/region-clip.ts';
import { boxOf, type Region } from '../geometry/ring.ts';
import { EQUAL_LENGTH_MM, GRID_PER_MM } from '../geometry/tolerance.ts';
import { cutTouches, edgeCut, groupOf, isBetween, isInner } from './group.ts';
import { cutRate, groutAlong, groutFrom } from './grout.ts';
import { cutPrice } from './lattice.ts';
import { type LayoutOptions, regionLayout } from './layout.ts';
import { BREACH_PRICE, pieceExcess, piecePrice } from './leaf.ts';
import { isBox } from './measure.ts';
import type { Part, PartCut } from './part.ts';
import { edgeAxis, type Pieces, piecesOf, piecesRegion } from './pieces.ts';
import type { Layout } from './table.ts';

/** Bays of a group at most: beyond that a group is no easier than the whole. */
const MOST_IN_GROUP = 6;

/** More even bays count as better where their squared areas sum to less by this share. */
const EVENER = 0.01;

/** Makes a layout shorter piece by piece: a few neighbouring bays are taken out, the floor they leave is split anew with candidate lines
 *  of its own, and the better split stays. Finds what straight cuts through the whole cannot: steps, pinwheels, a joint that only one
 *  side needs. Stops when a round brings nothing or the steps are spent.
 *  @param steps groups to try at most */
export function layoutImprove(
  region: Region,
  part: Part,
  layout: Layout,
  options: LayoutOptions & { readonly steps: number; readonly only?: 'off-grout' },
): Layout {
  let cuts = layout.cuts;
  const tried = new Set<string>();
  const hopeless = new Set<string>();
  let steps = options.steps;
  for (let better = true; better && steps > 0 && !options.budget.isSpent; ) {
    const pieces = piecesOf(region, cuts);
    const beside = neighboursOf(pieces);
    const names = new Map(pieces.faces.map((face) => [face, faceName(pieces, face)]));
    const taken = new Set<number>();
    const changed: { readonly group: ReadonlySet<number>; readonly cuts: readonly PartCut[] }[] = [];
    for (const group of groupsOf(beside)) {
      const isWhole = group.size === pieces.faces.length;
      // The whole has been sought already.
      if (isWhole || [...group].some((face) => taken.has(face))) continue;
      const name = [...group]
        .map((face) => names.get(face))
        .sort()
        .join(' ');
      if (tried.has(name)) continue;
      tried.add(name);
      if (options.only === 'off-grout' && !isOffGrout(pieces, group, part)) continue;
      if (steps-- <= 0 || options.budget.isSpent) break;
      const found = groupSolve(pieces, group, part, options, hopeless);
      if (!found) continue;
      changed.push({ group, cuts: found });
      // Its neighbours wait for the next round: their joints may have moved.
      for (const face of group) for (const other of [face, ...(beside.get(face) ?? [])]) taken.add(other);
    }
    better = changed.length > 0;
    const kept = pieces.between.filter((edge) => !changed.some(({ group }) => isInner(pieces, edge, group)));
    if (better) cuts = [...kept.map((edge) => edgeCut(pieces, edge)), ...changed.flatMap((change) => change.cuts)];
  }
  return layoutPrice(region, part, cuts, options.marginMm);
}

/** Better cuts inside a group; null where there are none.
 *  @param hopeless groups, as they lie to themselves, that are known to have none */
function groupSolve(
  pieces: Pieces,
  group: ReadonlySet<number>,
  part: Part,
  options: LayoutOptions,
  hopeless: Set<string>,
): readonly PartCut[] | null {
  const own = groupOf(pieces, group, part);
  if (own === null) return null;
  const { floor, inner } = own;
  const shape = groupShape(floor, inner, own.part);
  if (hopeless.has(shape)) return null;
  const before = layoutPrice(floor, own.part, inner, options.marginMm);
  const after = regionLayout(floor, own.part, options);
  const shorter = after.cost < before.cost - EQUAL_LENGTH_MM;
  const evener = after.cost <= before.cost + EQUAL_LENGTH_MM && after.uneven < before.uneven * (1 - EVENER);
  if (!shorter && !evener) {
    hopeless.add(shape);
    return null;
  }
  return after.cuts;
}

function faceName({ subdivision }: Pieces, face: number): string {
  const loop = subdivision.faces[face]?.loops[0] ?? [];
  return loop.map((p) => `${subdivision.x[p]},${subdivision.y[p]}`).join(';');
}

/** Whether a joint inside a group lies off the grout lines that run its way. */
function isOffGrout(pieces: Pieces, group: ReadonlySet<number>, { grout }: Part): boolean {
  return [...group].some((face) =>
    (pieces.edgesOf.get(face) ?? []).some((edge) => {
      if (!isInner(pieces, edge, group) || !isBetween(pieces, edge)) return false;
      const axis = edgeAxis(pieces, edge);
      return axis !== null && groutAlong(grout, axis) !== null && cutRate(grout, edgeCut(pieces, edge)) > 1;
    }),
  );
}

/** A group as it lies to itself: the same wherever it stands, unless things stand near it that bear on the search. */
function groupShape(floor: Region, inner: readonly PartCut[], part: Part): string {
  const { minX, minY, maxX, maxY } = boxOf(floor.outline);
  const near = (points: readonly Point[]) => {
    const box = boxOf(points);
    return box.minX <= maxX && box.maxX >= minX && box.minY <= maxY && box.maxY >= minY;
  };
  const things = [...part.keepClear, ...part.noJoint, ...part.joinery, ...part.mouths, ...part.hints];
  const [x, y] = things.some(near) ? [0, 0] : [minX, minY];
  const move = (p: Point) => [Math.round((p[0] - x) * GRID_PER_MM), Math.round((p[1] - y) * GRID_PER_MM)];
  return JSON.stringify([
    [floor.outline, ...floor.holes].map((ring) => ring.map(move)),
    inner.map((cut) => [move(cut.from), move(cut.to)]),
    ([0, 1] as const).map((axis) => {
      const rows = groutAlong(part.grout, axis);
      const from = axis === 0 ? minX : minY;
      return rows && Math.round((groutFrom(rows, from) - from) * GRID_PER_MM);
    }),
    part.columns.map((column) => [move([column.box.minX, column.box.minY]), column.needsJoint]),
  ]);
}

/** For each piece those beside it. */
export function neighboursOf({ subdivision, faces, between }: Pieces): ReadonlyMap<number, ReadonlySet<number>> {
  const beside = new Map(faces.map((face) => [face, new Set<number>()]));
  for (const i of between) {
    const edge = subdivision.edges[i];
    if (!edge) continue;
    beside.get(edge.left)?.add(edge.right);
    beside.get(edge.right)?.add(edge.left);
  }
  return beside;
}

/** Groups worth a try: every two neighbours with whom both touch, then every bay with all its neighbours. */
function* groupsOf(beside: ReadonlyMap<number, ReadonlySet<number>>): Generator<Set<number>> {
  for (const [face, others] of beside) {
    for (const other of others) if (other > face) yield new Set([face, other]);
  }
  for (const [face, others] of beside) {
    for (const other of others) {
      if (other < face) continue;
      const group = new Set([face, other]);
      for (const third of others) if (beside.get(other)?.has(third)) group.add(third);
      if (group.size > 2 && group.size <= MOST_IN_GROUP) yield group;
    }
  }
  for (const [face, others] of beside) {
    const group = new Set([face, ...others]);
    if (group.size > 2 && group.size <= MOST_IN_GROUP) yield group;
  }
}

/** What a layout costs by the same prices as the search. */
export function layoutPrice(region: Region, part: Part, cuts: readonly PartCut[], marginMm: number): Layout {
  const rules = { limits: part.limits, layout: part.layout };
  let cost = cuts.reduce((sum, cut) => sum + cutPrice(cut, part), 0);
  let uneven = 0;
  for (const column of part.columns) {
    if (column.needsJoint && !cuts.some((cut) => cutTouches(cut, column.box))) cost += BREACH_PRICE;
  }
  const pieces = piecesOf(region, cuts);
  for (const face of pieces.faces) {
    for (const piece of piecesRegion(pieces, new Set([face]))) {
      const net = Math.max(0, regionArea(piece) - columnsArea(piece, part.columns));
      cost += pieceExcess(piece, net, rules, marginMm) * BREACH_PRICE + piecePrice(piece, part);
      uneven += (net / 1e6) ** 2;
    }
  }
  return { cuts, cost, uneven };
}

/** What columns take of a piece, those that stand across its sides as well, mm2. */
function columnsArea(piece: Region, columns: Part['columns']): number {
  const box = boxOf(piece.outline);
  const plain = isBox(piece);
  return columns.reduce((sum, { box: own, ring, areaMm2 }) => {
    if (own.minX >= box.maxX || own.maxX <= box.minX || own.minY >= box.maxY || own.maxY <= box.minY) return sum;
    const inBox = own.minX >= box.minX && own.maxX <= box.maxX && own.minY >= box.minY && own.maxY <= box.maxY;
    // A column lies wholly in the piece far more often than across its sides.
    if (inBox && (plain || ring.every((p) => regionContains(piece, p)))) return sum + areaMm2;
    const column = { outline: ring, holes: [] };
    const shared = plain ? regionInBox(column, box) : regionsIntersect([piece], [column]);
    return shared.reduce((own, region) => own + regionArea(region), sum);
  }, 0);
}
