import { type Floor, floorComponents } from '../floor/floor.ts';
import { type Point, pointDistance } from '../geometry/point.ts';
import { regionArea, regionCentroid, regionPerimeter } from '../geometry/region.ts';
import type { Region } from '../geometry/ring.ts';
import { CRUMB_MM2, GRID_PER_MM, WELD_MM } from '../geometry/tolerance.ts';
import type { BayPiece, BayShape } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import { columnEdgesOf, columnsFilled, isColumnLoop, regionsOf, type Traced } from './filled.ts';
import { type BayFigures, type BayRules, bayMeasure } from './measure.ts';
import { edgeEnds, strictest } from './parts.ts';

/** A bay with what later steps need of it. */
export interface BayBody {
  readonly shape: BayShape;
  readonly figures: BayFigures;
  readonly rules: BayRules;
  /** Whether it is nothing but floor of a doorway. */
  readonly isInDoorway: boolean;
  readonly faces: readonly number[];
  readonly pieces: readonly BayPiece[];
  readonly centre: Point;
}

/** What knows the faces and edges of a floor by component. */
export interface FloorMap {
  readonly floor: Floor;
  /** By face the number of its bay; -1 where no floor lies. */
  readonly of: readonly number[];
  readonly facesOf: readonly (readonly number[])[];
  readonly edgesOf: readonly (readonly number[])[];
  /** By face the room that its floor is counted to: its own, or for a doorway the room that it opens to or, between two joints, lies against. */
  readonly roomOf: readonly number[];
  readonly columnEdges: ReadonlySet<string>;
}

/** A room along a doorway's floor, and over what length, mm. */
interface RoomSide {
  readonly room: number;
  readonly length: number;
}

export function floorMap(floor: Floor, doorwayRooms: readonly (readonly [number, number] | null)[]): FloorMap {
  const { of, count } = floorComponents(floor);
  const facesOf: number[][] = Array.from({ length: count }, () => []);
  const edgesOf: number[][] = Array.from({ length: count }, () => []);
  floor.faces.forEach((_, f) => {
    facesOf[of[f] as number]?.push(f);
  });
  const roomOf = floor.faces.map((face) => face.room);
  // What a doorway's floor opens to counts for more than what lies beyond its joints.
  const opens = new Map<number, RoomSide>();
  const beside = new Map<number, RoomSide>();
  floor.subdivision.edges.forEach((edge, i) => {
    const [left, right] = [of[edge.left] as number, of[edge.right] as number];
    edgesOf[left]?.push(i);
    if (right !== left) edgesOf[right]?.push(i);
    const sides = left >= 0 && left === right ? opens : beside;
    for (const [face, other] of [
      [edge.left, edge.right],
      [edge.right, edge.left],
    ] as const) {
      const room = floor.faces[other]?.room ?? -1;
      if ((floor.faces[face]?.doorway ?? -1) < 0 || room < 0) continue;
      const [a, b] = edgeEnds(floor, i);
      const length = pointDistance(a, b);
      if (length > (sides.get(face)?.length ?? 0)) sides.set(face, { room, length });
    }
  });
  floor.faces.forEach((face, f) => {
    if (!face.floor || face.room >= 0) return;
    roomOf[f] = opens.get(f)?.room ?? beside.get(f)?.room ?? doorwayRooms[face.doorway]?.[0] ?? -1;
  });
  return { floor, of, facesOf, edgesOf, roomOf, columnEdges: columnEdgesOf(floor) };
}

/** Every bay of the floor, numbered in reading order: from the top of the sheet down, from left to right. */
export function bayBodies(plan: Plan, map: FloorMap): BayBody[] {
  const found = map.facesOf.flatMap((faces, bay) => bayBody(plan, map, faces, bay) ?? []);
  const order = found.map((_, i) => i).sort((a, b) => readingOrder(found[a] as BayBody, found[b] as BayBody) || a - b);
  const keys = new Map<string, number>();
  const lone = loneRooms(found);
  return order.map((i, n) => {
    const draft = found[i] as BayBody;
    const key = bayKey(draft, lone);
    const times = (keys.get(key) ?? 0) + 1;
    keys.set(key, times);
    const id = `B${n + 1}`;
    const shape = { ...draft.shape, id, key: times > 1 ? `${key}#${times}` : key };
    return { ...draft, shape, pieces: draft.pieces.map((piece) => ({ ...piece, bay: id })) };
  });
}

/** Rooms that are one bay and the bay nothing else: known by the room, wherever its walls are moved to. */
function loneRooms(bays: readonly BayBody[]): ReadonlySet<string> {
  const counts = new Map<string, number>();
  for (const { shape } of bays) for (const room of shape.rooms) counts.set(room, (counts.get(room) ?? 0) + 1);
  const alone = bays.flatMap(({ shape: { rooms } }) => (rooms.length === 1 ? rooms : []));
  return new Set(alone.filter((room) => counts.get(room) === 1));
}

function bayKey({ shape: { rooms }, centre }: BayBody, lone: ReadonlySet<string>): string {
  const [only] = rooms;
  return only !== undefined && lone.has(only) ? `bay:${only}` : `bay:${rooms.join('+')}@${placeKey(centre)}`;
}

/** Bays whose middles lie within this of each other in height stand in one row, mm. */
const ROW_MM = 2000;

function readingOrder(a: BayBody, b: BayBody): number {
  return (
    Math.floor(a.centre[1] / ROW_MM) - Math.floor(b.centre[1] / ROW_MM) ||
    a.centre[0] - b.centre[0] ||
    a.centre[1] - b.centre[1]
  );
}

function bayBody(plan: Plan, map: FloorMap, faces: readonly number[], bay: number): BayBody[] | null {
  const { floor, edgesOf, of } = map;
  const edges = edgesOf[bay] as readonly number[];
  const [outer] = regionsOf(floor, (f) => of[f] === bay, edges);
  if (!outer || isCrumb(outer.region)) return null;
  const isMeasured = (f: number) => of[f] === bay && (floor.faces[f]?.room ?? -1) >= 0;
  const measured = regionsOf(floor, isMeasured, edges);
  // Where a doorway inside the bay has no joint the rooms on its sides are one bay, reveal and all.
  const inner = (measured.length === 1 ? measured[0] : undefined) ?? outer;
  const areaByRoom = new Map<number, number>();
  for (const f of faces) {
    const room = map.roomOf[f] as number;
    areaByRoom.set(room, (areaByRoom.get(room) ?? 0) + faceAreaMm2(floor, f));
  }
  const rooms = [...areaByRoom.keys()].filter((r) => r >= 0).sort((a, b) => a - b);
  const limits = strictest(rooms.flatMap((r) => plan.rooms[r]?.limits ?? []));
  const rules: BayRules = { limits, layout: plan.layout };
  const figures = tracedMeasure(map, inner, rules);
  const centre = regionCentroid(outer.region);
  const ids = rooms.map((r) => plan.rooms[r]?.id ?? '');
  return [
    {
      faces,
      figures,
      rules,
      isInDoorway: measured.length === 0,
      centre,
      pieces: [...areaByRoom]
        .filter(([r]) => r >= 0)
        .map(([r, mm2]) => ({
          bay: '',
          room: plan.rooms[r]?.id ?? '',
          areaM2: mm2 / 1e6,
          regions: areaByRoom.size === 1 ? [outer.region] : roomRegions(map, bay, r),
        })),
      shape: {
        id: '',
        key: '',
        rooms: ids,
        outline: outer.region.outline,
        measured: inner.region.outline,
        holes: outer.region.holes,
        areaM2: regionArea(outer.region) / 1e6,
        lengthM: figures.lengthM,
        widthM: figures.widthM,
        aspect: figures.aspect,
        perimeterM: regionPerimeter(outer.region) / 1000,
        within: figures.breaches.every((breach) => breach.rule === 'core'),
      },
    },
  ];
}

/** The floor of a bay that counts to one of its rooms. */
function roomRegions({ floor, of, roomOf, edgesOf }: FloorMap, bay: number, room: number): Region[] {
  const has = (f: number) => of[f] === bay && roomOf[f] === room;
  return regionsOf(floor, has, edgesOf[bay] as readonly number[]).map(({ region }) => region);
}

/** What welding left between two edges: thinner than the weld all along. */
function isCrumb(region: Region): boolean {
  const thinnest = WELD_MM;
  return regionArea(region) < Math.max(CRUMB_MM2, (regionPerimeter(region) / 2) * thinnest);
}

/** A place coarse enough to survive small edits: half metres. */
export function placeKey([x, y]: Point): string {
  return `${Math.round(x / 500) / 2},${Math.round(y / 500) / 2}`;
}

function faceAreaMm2(floor: Floor, face: number): number {
  return (floor.subdivision.faces[face]?.area ?? 0) / (GRID_PER_MM * GRID_PER_MM);
}

/** Measures some faces as one bay. */
export function facesMeasure(
  map: FloorMap,
  has: (face: number) => boolean,
  edges: readonly number[],
  rules: BayRules,
): BayFigures | null {
  const isMeasured = (f: number) => has(f) && (map.floor.faces[f]?.room ?? -1) >= 0;
  const measured = regionsOf(map.floor, isMeasured, edges);
  const inner = (measured.length === 1 ? measured[0] : undefined) ?? regionsOf(map.floor, has, edges)[0];
  return inner ? tracedMeasure(map, inner, rules) : null;
}

function tracedMeasure(map: FloorMap, { loops, region }: Traced, rules: BayRules): BayFigures {
  const cores = region.holes.filter((_, i) => !isColumnLoop(map.columnEdges, loops[i + 1] ?? []));
  const measured: Region = { outline: region.outline, holes: cores };
  return bayMeasure(measured, columnsFilled(map.floor, map.columnEdges, loops[0] ?? []), rules, regionArea(region));
}
