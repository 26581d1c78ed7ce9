import type { Region } from '../../src/geometry/ring.ts';
import type { Analysis, Bay } from '../../src/plan/analysis.ts';
import type { BayLimits, Plan, Room } from '../../src/plan/plan.ts';
import { type ExpectedFloor, expectedFloor } from './expected-floor.ts';
import {
  area,
  type Bounds,
  between,
  boundsApart,
  boundsOf,
  boundsOfShape,
  distance,
  distanceToSegments,
  rings,
  type Segment,
  type Shape,
  segments,
  shapeLess,
  shapeMeet,
} from './planar.ts';

/** One analysis laid over the floor that its plan must give: what all the checks read. */

export interface SceneBay {
  readonly bay: Bay;
  readonly shape: Shape;
  readonly bounds: Bounds;
  /** Outer ring and holes. */
  readonly sides: readonly Segment[];
  /** Rooms under the bay with the floor that they share, mm2. */
  readonly rooms: readonly { readonly room: Room; readonly areaMm2: number }[];
}

export interface Scene {
  readonly plan: Plan;
  readonly analysis: Analysis;
  readonly floor: ExpectedFloor;
  readonly bays: readonly SceneBay[];
  readonly bayOf: ReadonlyMap<string, SceneBay>;
}

export function createScene(plan: Plan, analysis: Analysis): Scene {
  const floor = expectedFloor(plan);
  const rooms = plan.rooms
    .filter((room) => !floor.muddled.has(room.id))
    .map((room) => {
      const shape = floor.rooms.find(({ id }) => id === room.id)?.shape ?? [];
      return { room, shape, bounds: boundsOf(room.outline) };
    });
  const bays = analysis.bays.map((bay): SceneBay => {
    const shape = [{ outline: bay.outline, holes: bay.holes }];
    const bounds = boundsOfShape(shape);
    const under = rooms
      .filter((r) => !boundsApart(r.bounds, bounds, 0))
      .map((r) => ({ room: r.room, areaMm2: area(shapeMeet(shape, r.shape)) }))
      .filter((r) => r.areaMm2 > 1);
    return { bay, shape, bounds, sides: shape.flatMap(rings).flatMap(segments), rooms: under };
  });
  return { plan, analysis, floor, bays, bayOf: new Map(bays.map((b) => [b.bay.id, b])) };
}

/** Strictest limits among the rooms under a bay; null where a room of muddled outline makes them unsure. */
export function bayLimits(bay: SceneBay): BayLimits | null {
  const limits = bay.rooms.filter((r) => r.areaMm2 > 1000).map((r) => r.room.limits);
  if (limits.length === 0) return null;
  return {
    areaM2: Math.min(...limits.map((l) => l.areaM2)),
    lengthM: Math.min(...limits.map((l) => l.lengthM)),
    aspect: Math.min(...limits.map((l) => l.aspect)),
    aspectFromM: Math.min(...limits.map((l) => l.aspectFromM)),
    ...(limits.some((l) => l.rectangleMayPass) ? { rectangleMayPass: true } : {}),
  };
}

/** Whether a bay is nothing but floor of a doorway, between two joints. */
export function isInDoorway(bay: SceneBay): boolean {
  return bay.rooms.every((r) => r.areaMm2 < 1000);
}

/** The floor of a bay that is counted to a room: the room's own, and the floor of doorways that lies against it and no other room of the bay more. */
export function roomFloorIn(scene: Scene, bay: SceneBay, room: Room): Shape {
  const under = bay.rooms.filter((r) => r.areaMm2 > 1000).map((r) => r.room);
  const sharing = under.length > 0 ? under : scene.plan.rooms.filter(({ id }) => bay.bay.rooms.includes(id));
  if (!sharing.includes(room)) return [];
  if (sharing.length === 1) return bay.shape;
  const shapeOf = ({ outline, holes }: Room): Shape => [{ outline, holes }];
  const against = (piece: Region, { outline, holes }: Room) => {
    const sides = [outline, ...holes].flatMap(segments);
    const shared = segments(piece.outline).filter(([a, b]) =>
      [a, between(a, b, 0.5), b].every((p) => distanceToSegments(p, sides) < 1),
    );
    return shared.reduce((sum, [a, b]) => sum + distance(a, b), 0);
  };
  const openings = shapeLess(bay.shape, sharing.map(shapeOf)).filter(
    (piece) => against(piece, room) > 0 && sharing.every((other) => against(piece, other) <= against(piece, room)),
  );
  return [...shapeMeet(bay.shape, shapeOf(room)), ...openings];
}

/** Rooms that are said to have no insulation: their floor lies on the slab. */
export function bareRooms({ plan }: Scene): Room[] {
  return plan.rooms.filter(({ buildUp }) => buildUp !== null && buildUp.insulationMm === 0);
}

export function named(scene: Scene, id: string): boolean {
  return scene.analysis.findings.some((f) => f.refs.includes(id));
}

export function figure(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}
