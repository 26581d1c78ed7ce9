import { edgesWalk } from '../geometry/chain-walk.ts';
import { lineStraight } from '../geometry/line.ts';
import { type Point, pointDistance } from '../geometry/point.ts';
import { loopPoints } from '../geometry/subdivision.ts';
import { GRID_PER_MM } from '../geometry/tolerance.ts';
import type { EdgeAlong, EdgeLine } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import type { BayBody, FloorMap } from './bay-shapes.ts';

/** The stretches of bays' boundaries that are no joint: along walls by room, and round columns, pipes and built-off joinery. */
export function edgeLines(
  plan: Plan,
  map: FloorMap,
  bays: readonly BayBody[],
  bayNumber: ReadonlyMap<number, number>,
): EdgeLine[] {
  const { floor, of, roomOf } = map;
  const groups = new Map<
    string,
    { bay: number; room: number; along: EdgeAlong; object: string | null; ends: [number, number][] }
  >();
  floor.subdivision.edges.forEach((edge) => {
    const left = bayNumber.get(of[edge.left] as number);
    const right = bayNumber.get(of[edge.right] as number);
    if ((left === undefined) === (right === undefined)) return;
    const [inner, outer] = left !== undefined ? [edge.left, edge.right] : [edge.right, edge.left];
    const bay = (left ?? right) as number;
    const obstacle = floor.faces[outer]?.obstacle ?? null;
    const room = roomOf[inner] as number;
    const along = obstacle?.along ?? 'wall';
    const key = `${bay} ${room} ${along} ${obstacle?.id ?? ''}`;
    const group = groups.get(key) ?? { bay, room, along, object: obstacle?.id ?? null, ends: [] };
    group.ends.push([edge.from, edge.to]);
    groups.set(key, group);
  });
  const sorted = [...groups.values()].sort(
    (a, b) => a.bay - b.bay || a.room - b.room || alongOrder(a.along) - alongOrder(b.along),
  );
  return sorted
    .flatMap(({ bay, room, along, object, ends }) =>
      edgesWalk(ends).map((walk) => {
        const points = loopPoints(floor.subdivision, walk, GRID_PER_MM);
        const lengthM =
          points.reduce((sum, p, i) => (i === 0 ? 0 : sum + pointDistance(points[i - 1] as Point, p)), 0) / 1000;
        return {
          along,
          object,
          bay: bays[bay]?.shape.id ?? '',
          room: plan.rooms[room]?.id ?? '',
          line: lineStraight(points),
          lengthM,
        };
      }),
    )
    .map((edge, i) => ({ id: `E${i + 1}`, ...edge }));
}

function alongOrder(along: EdgeAlong): number {
  return ['wall', 'column', 'pipe', 'joinery'].indexOf(along);
}
