import type { Point } from '../../src/geometry/point.ts';
import { type DoorFloor, lineInside } from './expected-floor.ts';
import { area, boundsOf, distance, type Shape, shapeMeet } from './planar.ts';
import { figure, isInDoorway, named, type Scene } from './scene.ts';

/** The tongue of floor between the joint of a doorway and the room is no notch up to this, mm. */
const tongueMm = 300;

/** No bay of a room reaches further into a doorway than a tongue may. Openings that are no rectangle, or that share their floor with another
 *  doorway or a joint of the building, have more than one reading and are left out. */
export function tongueFaults(scene: Scene): string[] {
  const { floor, plan, bays } = scene;
  return floor.doors.flatMap((door) => {
    const { id } = door.doorway;
    const shared = floor.doors.some((other) => other !== door && area(shapeMeet(other.reach, door.reach)) > 1);
    const structural = plan.structuralJoints.some(({ line }) => lineInside(line, door.reach).length > 0);
    if (door.joins.length !== 2 || !door.clear || shared || structural || named(scene, id)) return [];
    if (door.joins.some((room) => floor.muddled.has(room)) || !isRectangle(door)) return [];
    return bays
      .filter((b) => !isInDoorway(b))
      .map((b) => ({ bay: b.bay.id, deepMm: depthMm(door, shapeMeet(b.shape, door.floor)) }))
      .filter(({ deepMm }) => deepMm > tongueMm * 1.001 + 1)
      .map(({ bay, deepMm }) => `${bay} reaches ${figure(deepMm)} mm into doorway ${id}`);
  });
}

/** How far a shape reaches through the wall of a doorway. */
function depthMm({ doorway }: DoorFloor, shape: Shape): number {
  if (area(shape) < 1000) return 0;
  const [a, b] = doorway.line;
  const along = (p: Point): Point => [
    ((b[0] - a[0]) * (p[0] - a[0]) + (b[1] - a[1]) * (p[1] - a[1])) / distance(a, b),
    ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / distance(a, b),
  ];
  const { y0, y1 } = boundsOf(shape.flatMap((r) => r.outline.map(along)));
  return y1 - y0;
}

function isRectangle(door: DoorFloor): boolean {
  const whole = distance(door.doorway.line[0], door.doorway.line[1]) * depthMm(door, door.floor);
  return whole - area(door.floor) < 1000 + 0.005 * whole;
}
