import type { DoorFloor } from './expected-floor.ts';
import {
  area,
  at,
  boundsApart,
  distance,
  distanceToSegment,
  ringLength,
  rings,
  type Shape,
  shapeLess,
  shapeMeet,
} from './planar.ts';
import { figure, isInDoorway, named, type Scene, type SceneBay } from './scene.ts';

/** Bays and holes tile the floor, and neighbours share their corners. */

export function tilingFaults(scene: Scene): string[] {
  return [...coverFaults(scene), ...overlapFaults(scene), ...vertexFaults(scene), ...measuredFaults(scene)];
}

function edgeAllowance(shape: Shape): number {
  return shape.flatMap(rings).reduce((sum, ring) => sum + ringLength(ring), 0) + 10;
}

/** Every room is covered but for what stands on it; no bay lies off the floor. */
function coverFaults(scene: Scene): string[] {
  const { floor, bays } = scene;
  const faults = [...floor.muddled]
    .filter((id) => isSilent(scene, id))
    .map((id) => `the floor of room ${id} is lost or counted twice and no finding names it`);
  const clear = (shape: Shape) => shapeLess(shape, floor.obstacles);
  let least = 0;
  let allowance = 0;
  for (const { id, shape } of floor.rooms) {
    if (floor.muddled.has(id)) continue;
    const net = clear(shape);
    const covered = bays.reduce((sum, b) => sum + (b.rooms.find((r) => r.room.id === id)?.areaMm2 ?? 0), 0);
    const slack = edgeAllowance(shape) + edgeAllowance(net);
    if (Math.abs(area(net) - covered) > slack)
      faults.push(`room ${id}: floor ${figure(area(net) / 1e6)} m2, bays ${figure(covered / 1e6)} m2`);
    least += area(net);
    allowance += slack;
  }
  const doors = floor.doors.map((door) => doorCover(scene, door));
  faults.push(...doors.flatMap((d) => d.faults));
  if (floor.muddled.size > 0) return faults;
  const reached = doors.reduce((sum, d) => sum + d.coveredMm2, 0);
  const total = bays.reduce((sum, b) => sum + area(b.shape), 0);
  if (total - least - reached > allowance + doors.length * 2000)
    faults.push(`${figure((total - least - reached) / 1e6)} m2 of bays lie off the floor`);
  return faults;
}

/** A room of muddled outline that no finding names, though it lies over another or has no bay. */
function isSilent(scene: Scene, id: string): boolean {
  if (named(scene, id)) return false;
  return !scene.floor.crossing.has(id) || !scene.analysis.bays.some((b) => b.rooms.includes(id));
}

function doorCover(scene: Scene, door: DoorFloor): { coveredMm2: number; faults: string[] } {
  const { id } = door.doorway;
  const meet = (shape: Shape) =>
    shape.length === 0 ? 0 : scene.bays.reduce((sum, b) => sum + area(shapeMeet(b.shape, shape)), 0);
  const coveredMm2 = meet(door.reach);
  const floor = door.floor.reduce<number>((sum, piece) => sum + area(shapeLess([piece], scene.floor.obstacles)), 0);
  const inFloor = door.floor.reduce<number>((sum, piece) => sum + meet([piece]), 0);
  const slack = edgeAllowance(door.floor) + 500;
  const faults: string[] = [];
  if (floor - inFloor > slack && !isDoorShared(scene, door))
    faults.push(`doorway ${id}: ${figure((floor - inFloor) / 1e6)} m2 of its floor in no bay`);
  if (door.clear && coveredMm2 - floor > slack && !isDoorShared(scene, door))
    faults.push(`doorway ${id}: ${figure((coveredMm2 - floor) / 1e6)} m2 of bay outside its opening`);
  return { coveredMm2, faults };
}

/** Two openings over one another: their floor is not told apart here. */
function isDoorShared(scene: Scene, door: DoorFloor): boolean {
  return scene.floor.doors.some((other) => other !== door && area(shapeMeet(other.reach, door.reach)) > 1);
}

function overlapFaults({ bays }: Scene): string[] {
  return bays.flatMap((one, i) =>
    bays.slice(i + 1).flatMap((two) => {
      if (boundsApart(one.bounds, two.bounds, 0)) return [];
      const shared = area(shapeMeet(one.shape, two.shape));
      return shared > Math.min(edgeAllowance(one.shape), edgeAllowance(two.shape))
        ? [`${one.bay.id} and ${two.bay.id} overlap by ${figure(shared / 1e6)} m2`]
        : [];
    }),
  );
}

/** A corner of one bay on a side of another is a corner of that one too. */
function vertexFaults({ bays }: Scene): string[] {
  return bays.flatMap((one) =>
    bays.flatMap((two) => {
      if (one === two || boundsApart(one.bounds, two.bounds, 1)) return [];
      const corners = new Set(two.shape.flatMap(rings).flatMap((ring) => ring.map((p) => `${p[0]} ${p[1]}`)));
      return one.shape
        .flatMap(rings)
        .flat()
        .filter((p) => !corners.has(`${p[0]} ${p[1]}`) && two.sides.some((s) => distanceToSegment(p, s) < 0.05))
        .map((p) => `corner ${p.join(' ')} of ${one.bay.id} is no corner of ${two.bay.id}, on whose side it lies`);
    }),
  );
}

/** `measured` is the outline without the floor of doorways; a bay of nothing else is measured whole. */
function measuredFaults(scene: Scene): string[] {
  return scene.bays.flatMap((b) => {
    const measured = [{ outline: b.bay.measured, holes: [] }];
    const outer = [{ outline: b.bay.outline, holes: [] }];
    const slack = edgeAllowance(measured);
    const outside = area(measured) - area(shapeMeet(measured, outer));
    const name = b.bay.id;
    if (outside > slack + columnNotches(scene, b))
      return [`${name}: measured reaches ${figure(outside / 1e6)} m2 out of its outline`];
    const doors = scene.floor.doors.map((d) => area(shapeMeet(outer, d.reach)));
    const left = area(outer) - area(measured) + outside;
    if (left > doors.reduce((sum, a) => sum + a, 0) + slack) return [`${name}: measured leaves out more than doorways`];
    const kept = scene.floor.doors.reduce((sum, d) => sum + area(shapeMeet(measured, d.floor)), 0);
    const tongue = isInDoorway(b) || area(measured) < area(outer) / 2;
    return kept > slack && !tongue ? [`${name}: measured holds ${figure(kept / 1e6)} m2 of doorway`] : [];
  });
}

/** Floor that a filled column notch may add to `measured`. */
function columnNotches(scene: Scene, b: SceneBay): number {
  return scene.plan.columns
    .filter((c) => c.outline.some((p) => b.sides.some((s) => distanceToSegment(p, s) < 1)))
    .reduce((sum, c) => sum + distance(at(c.outline, 0), at(c.outline, 2)) ** 2, 0);
}
