import { regionsSubtract, regionsUnion } from '../geometry/clip.ts';
import type { Point } from '../geometry/point.ts';
import { regionArea, regionCentroid } from '../geometry/region.ts';
import type { Region } from '../geometry/ring.ts';
import type { HeldPlace } from '../plan/analysis.ts';
import type { FindingFact } from '../plan/finding.ts';
import { type Outlined, type Plan, roomIsBare } from '../plan/plan.ts';
import { type BayBody, bayUnder, footprintOf, regionsWide } from './bay-body.ts';
import { bayFloorOf } from './bay-rooms.ts';

/** A held place with its ground, and the name that people know it by. */
export interface HeldGround {
  readonly place: HeldPlace;
  readonly name: string;
  readonly isRoom: boolean;
  readonly regions: readonly Region[];
}

/** A thing of the plan that holds the floor under it, or a room that holds all of its own. */
export interface Holder {
  readonly id: string;
  readonly name: string;
  readonly cause: HeldPlace['cause'];
  readonly isRoom: boolean;
  /** Its floor in a bay, mm. */
  groundIn(bay: BayBody): readonly Region[];
}

/** What in the plan holds the floor to the slab. Joinery that is built off the slab is a hole in the floor, not floor that is held,
 *  whether it is bolted down or not. A room without insulation (0 mm; not given is not 0) lies on the slab as a whole: it comes after the
 *  things in it, which are told of by their own names. What is fixed through comes last: floor on bare slab is held there already. */
export function planHolders(plan: Plan): Holder[] {
  const floored = plan.joinery.filter((unit) => unit.under !== 'built-off-slab');
  const bare = floored.filter((unit) => unit.under === 'no-insulation');
  const fixed = floored.filter((unit) => unit.under === 'insulated' && unit.fixedThrough);
  const rooms = new Map(plan.rooms.map((room) => [room.id, room]));
  return [
    ...bare.map((unit) => thingHolder(unit, 'no-insulation')),
    ...plan.slabContacts.map((contact) => thingHolder({ ...contact, name: contact.id }, 'slab-contact')),
    ...plan.rooms.filter(roomIsBare).map(
      (room): Holder => ({
        id: room.id,
        name: room.name,
        cause: 'no-insulation',
        isRoom: true,
        groundIn: (bay) => bayFloorOf(bay, room, rooms),
      }),
    ),
    ...fixed.map((unit) => thingHolder(unit, 'fixed-through')),
  ];
}

function thingHolder(thing: Outlined & { readonly name: string }, cause: HeldPlace['cause']): Holder {
  const footprint = footprintOf(thing.outline);
  return { id: thing.id, name: thing.name, cause, isRoom: false, groundIn: (bay) => bayUnder(bay, footprint) };
}

/** The places of one bay that are held to the slab. Ground under two holders counts once, for the first. */
export function bayHeldGround(bay: BayBody, holders: readonly Holder[]): HeldGround[] {
  const grounds: HeldGround[] = [];
  for (const { id, name, cause, isRoom, groundIn } of holders) {
    const under = groundIn(bay);
    if (under.length === 0) continue;
    const taken = grounds.flatMap((ground) => ground.regions);
    const regions = taken.length === 0 ? under : regionsWide(regionsSubtract(under, taken));
    if (regions.length === 0) continue;
    const { areaMm2, centre } = regionsCentre(regions);
    grounds.push({ place: { bay: bay.id, object: id, cause, areaM2: areaMm2 / 1e6, centre }, name, isRoom, regions });
  }
  return grounds;
}

/** In how many separate places the grounds hold a bay: two units side by side hold it in one. */
export function heldPlaceCount(grounds: readonly HeldGround[]): number {
  const regions = grounds.flatMap((ground) => ground.regions);
  return regions.length < 2 ? regions.length : regionsWide(regionsUnion(regions)).length;
}

/** Area, mm2, and area-weighted mean of the centroids of disjoint regions. Example: 1 m2 at x = 0 and 3 m2 at x = 4000 -> x = 3000. */
export function regionsCentre(regions: readonly Region[]): { readonly areaMm2: number; readonly centre: Point } {
  let areaMm2 = 0;
  let x = 0;
  let y = 0;
  for (const region of regions) {
    const area = regionArea(region);
    const [cx, cy] = regionCentroid(region);
    areaMm2 += area;
    x += cx * area;
    y += cy * area;
  }
  return { areaMm2, centre: [x / areaMm2, y / areaMm2] };
}

/** One finding for each held place: it is a fault of the floor wherever it is. */
export function heldPlaceFindings(grounds: readonly HeldGround[]): FindingFact[] {
  return grounds.map(({ place, name, isRoom }) => ({
    code: 'slab-contact',
    at: place.centre,
    refs: [place.object, place.bay],
    name,
    isRoom,
    bay: place.bay,
    areaM2: place.areaM2,
    cause: place.cause,
  }));
}
