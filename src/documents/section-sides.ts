import { lineMiddle } from '../geometry/line.ts';
import type { Point } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import type { Bay, Joint } from '../plan/analysis.ts';
import type { Room } from '../plan/plan.ts';
import type { PaperSource } from './paper-source.ts';
import { type FloorLayers, floorLowered, floorMm, thicknessText } from './section-layers.ts';
import { coveringText, namesText } from './section-parts.ts';

/** What lies on either side of a joint: rooms may have floors of their own. */

interface JointSide {
  readonly room: Room;
  readonly floor: FloorLayers;
}

export type JointFloors = readonly [left: FloorLayers, right: FloorLayers];

type Sides = readonly [left: JointSide, right: JointSide];

/** Finds the sides of joints, the floor that comes first in the plan to the left. */
export function sidesFinder(
  { plan, analysis }: PaperSource,
  floors: readonly FloorLayers[],
): (joint: Joint) => Sides | null {
  const bays = new Map(analysis.bays.map((bay) => [bay.id, bay]));
  const sides = new Map(floors.flatMap((floor) => floor.rooms.map((room) => [room.id, { room, floor }] as const)));
  const rooms = new Map(plan.rooms.map((room) => [room.id, room]));
  const sideOf = (bay: Bay | undefined, joint: Joint) => {
    const own = (bay?.rooms ?? []).flatMap((id) => rooms.get(id) ?? []);
    const [first, ...others] = own;
    const room = others.length === 0 ? first : nearest(own, lineMiddle(joint.line));
    return room === undefined ? undefined : sides.get(room.id);
  };
  return (joint) => {
    const found = joint.bays.map((id) => sideOf(bays.get(id), joint));
    const [one = found[1], other = found[0]] = found;
    if (one === undefined || other === undefined) return null;
    return floors.indexOf(one.floor) <= floors.indexOf(other.floor) ? [one, other] : [other, one];
  };
}

/** Of the rooms of a bay the one that the joint lies at. */
function nearest(rooms: readonly Room[], at: Point): Room | undefined {
  let best: { readonly room: Room; readonly mm: number } | undefined;
  for (const room of rooms) {
    const { outline } = room;
    const mm = regionContains(room, at)
      ? 0
      : Math.min(
          ...outline.map((corner, i) => segmentDistance(corner, outline[(i + 1) % outline.length] ?? corner, at)),
        );
    if (best === undefined || mm < best.mm) best = { room, mm };
  }
  return best?.room;
}

/** Both on the same slab, the higher finished floor at nought. */
export function floorsLevelled([left, right]: JointFloors): JointFloors {
  if (left === right) return [left, right];
  const high = Math.max(floorMm(left), floorMm(right));
  return [floorLowered(left, high - floorMm(left)), floorLowered(right, high - floorMm(right))];
}

/** Example: "In 11 mm stone or ceramic." or "Left 11 mm stone or ceramic: Hall. Right 14 mm timber covering: Study." */
export function sidesText([left, right]: JointFloors, rooms: readonly [readonly Room[], readonly Room[]]): string {
  if (left === right) return `In ${coveringText(left)}.`;
  const side = (floor: FloorLayers, own: readonly Room[]) =>
    `${coveringText(floor)}: ${namesText(own.map(({ name }) => name))}`;
  return `Left ${side(left, rooms[0])}. Right ${side(right, rooms[1])}.${stepText([left, right])}`;
}

/** What is entered of both sides may leave a step. */
function stepText([left, right]: JointFloors): string {
  const isKnown = [left, right].every(({ layers }) =>
    layers.every(({ part, isEntered }) => part === 'slab' || isEntered),
  );
  const stepMm = floorMm(left) - floorMm(right);
  if (!isKnown || Math.abs(stepMm) < EQUAL_LENGTH_MM) return '';
  return ` As entered, ${thicknessText(Math.abs(stepMm))} lower on the ${stepMm < 0 ? 'left' : 'right'}.`;
}
