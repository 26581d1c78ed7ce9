import type { Cut } from '../floor/barrier.ts';
import { type Floor, floorComponents } from '../floor/floor.ts';
import { type Point, pointDistance } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import { type Box, boxMiddle, boxOf, type Region, type Ring, ringArea, ringSignedArea } from '../geometry/ring.ts';
import { rayMeets, segmentDistance } from '../geometry/segment.ts';
import { GRID_PER_MM, onGrid, WELD_MM } from '../geometry/tolerance.ts';
import { limitExceeded } from '../plan/exceed.ts';
import type { BayLimits, Plan, Room } from '../plan/plan.ts';
import { type TiledField, tiledFields } from '../plan/tile-grid.ts';
import { columnEdgesOf, regionFilled, regionsOf } from './filled.ts';
import { partGrout } from './grout.ts';
import { longerSide } from './measure.ts';
import type { Part, PartColumn, PartCut } from './part.ts';

/** A part where it lies: what the search needs, moved to the origin, and what brings its cuts back to the plan. */
export interface PlacedPart {
  readonly part: Part;
  readonly rooms: readonly Room[];
  readonly origin: Point;
  /** Places of the plan, mm: the mouths of doorways, each with the joint line of its doorway. */
  readonly mouths: readonly {
    readonly mouth: readonly [Point, Point];
    readonly joint: readonly (readonly [Point, Point])[];
  }[];
}

/** The parts of a floor that its standing joints leave. */
export function partsOf(plan: Plan, floor: Floor): PlacedPart[] {
  const { subdivision, faces } = floor;
  const { of, count } = floorComponents(floor);
  const bodyOf = bodiesOf(floor, of);
  const edgesOf: number[][] = Array.from({ length: count }, () => []);
  const barriersOf: (readonly [Point, Point])[][] = Array.from({ length: count }, () => []);
  subdivision.edges.forEach((edge, i) => {
    const left = bodyOf[edge.left] as number;
    const right = bodyOf[edge.right] as number;
    if (left >= 0) edgesOf[left]?.push(i);
    if (right >= 0 && right !== left) edgesOf[right]?.push(i);
    if (!isJoint(floor, i)) return;
    // By component and not by body: the joint of a doorway lies between two stretches of its floor, and what it touches has its joint.
    const ends = edgeEnds(floor, i);
    for (const component of new Set([of[edge.left], of[edge.right]])) barriersOf[component as number]?.push(ends);
  });
  const roomsOf: Set<number>[] = Array.from({ length: count }, () => new Set());
  faces.forEach((face, f) => {
    if ((of[f] as number) >= 0 && face.room >= 0) roomsOf[of[f] as number]?.add(face.room);
  });
  const columns = plan.columns.map((column) => columnOf(column.outline, plan));
  const doorJoints = doorwayJoints(floor);
  const columnEdges = columnEdgesOf(floor);
  const fields = tiledFields(plan);
  const parts: PlacedPart[] = [];
  for (let c = 0; c < count; c++) {
    const rooms = [...(roomsOf[c] ?? [])].map((r) => plan.rooms[r] as Room);
    if (rooms.length === 0) continue;
    const edges = edgesOf[c] as number[];
    const barriers = barriersOf[c] as (readonly [Point, Point])[];
    const mouths = mouthsOf(floor, edges, of, c, doorJoints);
    for (const traced of regionsOf(floor, (f) => bodyOf[f] === c, edges)) {
      const region = regionFilled(floor, columnEdges, traced);
      parts.push(placePart(plan, fields, rooms, region, columns, barriers, mouths));
    }
  }
  return parts;
}

/** Whether a column takes floor of a region, its columns filled in; one in a wall or in the notch of an L does not, and asks for no joint. */
function standsIn({ ring, box }: PartColumn, region: Region): boolean {
  const centre = boxMiddle(box);
  const inset = ([x, y]: Point): Point => [
    centre[0] + (x - centre[0]) * INSET_SHARE,
    centre[1] + (y - centre[1]) * INSET_SHARE,
  ];
  return ring.some((p, i) => {
    const q = ring[(i + 1) % ring.length] as Point;
    return regionContains(region, inset(p)) || regionContains(region, inset([(p[0] + q[0]) / 2, (p[1] + q[1]) / 2]));
  });
}

/** Just inside the faces of a column: one flush with a wall takes no floor. */
const INSET_SHARE = 0.98;

function placePart(
  plan: Plan,
  fields: readonly TiledField[],
  rooms: readonly Room[],
  region: { outline: Ring; holes: readonly Ring[] },
  columns: readonly PartColumn[],
  barriers: readonly (readonly [Point, Point])[],
  mouths: PlacedPart['mouths'],
): PlacedPart {
  const box = boxOf(region.outline);
  const origin: Point = [box.minX, box.minY];
  const move = ([x, y]: Point): Point => [onGrid(x - origin[0]), onGrid(y - origin[1])];
  const moveRing = (ring: Ring): Ring => ring.map(move);
  const near = (ring: Ring) => boxesMeet(boxOf(ring), box);
  const part: Part = {
    region: { outline: moveRing(region.outline), holes: region.holes.map(moveRing) },
    limits: strictest(rooms.map((room) => room.limits)),
    layout: plan.layout,
    columns: columns
      .filter((column) => boxesMeet(column.box, box) && standsIn(column, region))
      .map((column) => {
        const touched = barriers.some((ends) => touches(column, ends));
        const ring = moveRing(column.ring);
        return { ...column, ring, box: boxOf(ring), needsJoint: column.needsJoint && !touched };
      }),
    mouths: mouths.map(({ mouth }): readonly [Point, Point] => [move(mouth[0]), move(mouth[1])]),
    keepClear: plan.keepClear.filter((area) => near(area.outline)).map((area) => moveRing(area.outline)),
    noJoint: plan.noJoint.filter((line) => near(line.line)).map((line) => line.line.map(move)),
    joinery: plan.joinery
      .filter((j) => j.under !== 'built-off-slab' && near(j.outline))
      .map((j) => moveRing(j.outline)),
    hints: plan.sunZones.filter((zone) => near(zone.outline)).map((zone) => moveRing(zone.outline)),
    grout: partGrout(plan, fields, rooms, origin),
  };
  return { part, rooms, origin, mouths };
}

/** Whether an edge parts floor from floor. */
function isJoint({ barriers, faces, subdivision }: Floor, edge: number): boolean {
  const { left, right } = subdivision.edges[edge] as { left: number; right: number };
  return barriers[edge] !== null && faces[left]?.floor === true && faces[right]?.floor === true;
}

function touches({ ring, box }: PartColumn, ends: readonly [Point, Point]): boolean {
  if (!boxesMeet(boxOf(ends), box)) return false;
  const weld = WELD_MM;
  return ends.some((end) => ring.some((p, i) => segmentDistance(p, ring[(i + 1) % ring.length] as Point, end) <= weld));
}

function boxesMeet(a: Box, b: Box): boolean {
  return a.minX <= b.maxX && a.maxX >= b.minX && a.minY <= b.maxY && a.maxY >= b.minY;
}

function columnOf(ring: Ring, plan: Plan): PartColumn {
  return {
    // Drawn in either direction; the search sums areas along rings that run clockwise.
    ring: ringSignedArea(ring) < 0 ? ring.toReversed() : ring,
    box: boxOf(ring),
    areaMm2: ringArea(ring),
    needsJoint: limitExceeded(longerSide(ring), plan.layout.columnMm),
  };
}

/** A bay across rooms takes the strictest limit among them. */
export function strictest(limits: readonly BayLimits[]): BayLimits {
  return {
    areaM2: Math.min(...limits.map((l) => l.areaM2)),
    lengthM: Math.min(...limits.map((l) => l.lengthM)),
    aspect: Math.min(...limits.map((l) => l.aspect)),
    aspectFromM: Math.min(...limits.map((l) => l.aspectFromM)),
    ...(limits.every((l) => l.rectangleMayPass) ? { rectangleMayPass: true } : {}),
  };
}

/** By face the component whose body it belongs to: its rooms' floor, and the columns and pipes that stand in it alone; -1 for doorways and the rest. */
function bodiesOf(floor: Floor, of: readonly number[]): number[] {
  const { subdivision, faces } = floor;
  const body = faces.map((face, f) => (face.floor && face.doorway < 0 ? (of[f] as number) : -1));
  const shared = new Map<number, Set<number>>();
  const isFilled = (f: number) => {
    const along = faces[f]?.obstacle?.along;
    return (along === 'column' || along === 'pipe') && (faces[f]?.room ?? -1) >= 0;
  };
  for (const edge of subdivision.edges) {
    for (const [inner, outer] of [
      [edge.left, edge.right],
      [edge.right, edge.left],
    ] as const) {
      if (!isFilled(inner) || (body[outer] as number) < 0) continue;
      shared.set(inner, (shared.get(inner) ?? new Set()).add(body[outer] as number));
    }
  }
  for (const [face, components] of shared) {
    const [only, ...more] = components;
    if (only !== undefined && more.length === 0) body[face] = only;
  }
  return body;
}

export function edgeEnds({ subdivision }: Floor, edge: number): readonly [Point, Point] {
  const { from, to } = subdivision.edges[edge] as { from: number; to: number };
  const at = (p: number): Point => [
    (subdivision.x[p] as number) / GRID_PER_MM,
    (subdivision.y[p] as number) / GRID_PER_MM,
  ];
  return [at(from), at(to)];
}

function doorwayJoints(floor: Floor): ReadonlyMap<number, (readonly [Point, Point])[]> {
  const joints = new Map<number, (readonly [Point, Point])[]>();
  floor.subdivision.edges.forEach((edge, i) => {
    if (!floor.barriers[i]) return;
    for (const face of [edge.left, edge.right]) {
      const doorway = floor.faces[face]?.doorway ?? -1;
      if (doorway < 0) continue;
      const list = joints.get(doorway) ?? [];
      list.push(edgeEnds(floor, i));
      joints.set(doorway, list);
    }
  });
  return joints;
}

function mouthsOf(
  floor: Floor,
  edges: readonly number[],
  of: readonly number[],
  component: number,
  joints: ReturnType<typeof doorwayJoints>,
): PlacedPart['mouths'] {
  return edges.flatMap((i) => {
    const edge = floor.subdivision.edges[i];
    if (!edge) return [];
    const [left, right] = [floor.faces[edge.left], floor.faces[edge.right]];
    if (of[edge.left] !== component || of[edge.right] !== component || floor.barriers[i]) return [];
    const doorway = Math.max(left?.doorway ?? -1, right?.doorway ?? -1);
    if (doorway < 0 || (left?.doorway ?? -1) === (right?.doorway ?? -1)) return [];
    return [{ mouth: edgeEnds(floor, i), joint: joints.get(doorway) ?? [] }];
  });
}

/** The cuts of a part as they lie on the plan, on grid steps; one that ends in the mouth of a doorway runs on to the joint under the leaf. */
export function cutsPlace({ origin, mouths }: PlacedPart, cuts: readonly PartCut[]): Cut[] {
  return cuts.map((cut) => {
    const from: Point = [cut.from[0] + origin[0], cut.from[1] + origin[1]];
    const to: Point = [cut.to[0] + origin[0], cut.to[1] + origin[1]];
    const line = [onward(to, from, mouths), from, to, onward(from, to, mouths)].filter((p): p is Point => p !== null);
    return {
      kind: cut.kind,
      line: line.map(([x, y]) => [Math.round(x * GRID_PER_MM), Math.round(y * GRID_PER_MM)] as const),
    };
  });
}

function onward(before: Point, end: Point, mouths: PlacedPart['mouths']): Point | null {
  const weld = WELD_MM;
  const length = pointDistance(before, end);
  if (length === 0) return null;
  const direction: Point = [(end[0] - before[0]) / length, (end[1] - before[1]) / length];
  for (const { mouth, joint } of mouths) {
    const inMouth =
      segmentDistance(mouth[0], mouth[1], end) < weld &&
      pointDistance(mouth[0], end) > weld &&
      pointDistance(mouth[1], end) > weld;
    if (!inMouth) continue;
    const met = joint.map(([a, b]) => rayMeets(end, direction, a, b)).filter((d): d is number => d !== null);
    if (met.length > 0) {
      const d = Math.min(...met);
      return [end[0] + direction[0] * d, end[1] + direction[1] * d];
    }
  }
  return null;
}
