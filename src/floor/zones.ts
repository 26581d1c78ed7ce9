import { rectangleRound } from '../geometry/hull.ts';
import { vectorLength } from '../geometry/point.ts';
import { facesBoundary, loopPoints, type Subdivision } from '../geometry/subdivision.ts';
import { GRID_PER_MM } from '../geometry/tolerance.ts';
import { limitExceeded } from '../plan/exceed.ts';
import { type Plan, type Room, roomIsBare } from '../plan/plan.ts';
import { rules } from '../plan/reference.ts';
import type { FloorFace } from './faces.ts';

/** An unheated, insulated strip along a wall up to this wide is part of the bay on its long side, mm. */
const STRIP_WIDTH_MM = rules.unheatedStripMm.value;

/** Says whether two rooms with no wall between them need a joint because they are heated differently. */
export function zoneRule(
  plan: Plan,
  subdivision: Subdivision,
  faces: readonly FloorFace[],
): (a: number, b: number) => boolean {
  const keys = plan.rooms.map((room) => (room.heated ? `heated ${room.zone ?? ''}` : 'unheated'));
  if (new Set(keys).size < 2) return () => false;
  const strips = plan.rooms.map((room, i) => !room.heated && isWallStrip(plan, room, i, subdivision, faces));
  return (a, b) => {
    if (keys[a] === keys[b]) return false;
    const [p, q] = [plan.rooms[a], plan.rooms[b]];
    return !((strips[a] && q?.heated) || (strips[b] && p?.heated));
  };
}

/** Narrow, on insulation, and with a wall along a long side: never an island, never bare slab. */
function isWallStrip(
  plan: Plan,
  room: Room,
  index: number,
  subdivision: Subdivision,
  faces: readonly FloorFace[],
): boolean {
  const sides = rectangleRound(room.outline);
  if (limitExceeded(sides.width, STRIP_WIDTH_MM) || roomIsBare(room)) return false;
  const own = (face: number) => faces[face]?.room === index;
  const edges = subdivision.edges.flatMap((edge, i) => (own(edge.left) !== own(edge.right) ? [i] : []));
  let open = 0;
  let walled = 0;
  for (const i of edges) {
    const edge = subdivision.edges[i];
    if (!edge) continue;
    const [a, b] = loopPoints(subdivision, [edge.from, edge.to], GRID_PER_MM);
    if (!a || !b) continue;
    const length = vectorLength(b[0] - a[0], b[1] - a[1]);
    const other = faces[own(edge.left) ? edge.right : edge.left];
    if (other && other.room >= 0) open += length;
    else walled += length;
  }
  if (walled < sides.length * 0.9 || open > sides.length + 2 * sides.width + 1) return false;
  const outline = facesBoundary(subdivision, own, edges)[0]?.[0] ?? [];
  return outline.length > 2 && !plan.slabContacts.some((contact) => contact.outline.some((p) => within(room, p)));
}

function within(room: Room, [x, y]: readonly [number, number]): boolean {
  const xs = room.outline.map((p) => p[0]);
  const ys = room.outline.map((p) => p[1]);
  return x >= Math.min(...xs) && x <= Math.max(...xs) && y >= Math.min(...ys) && y <= Math.max(...ys);
}
