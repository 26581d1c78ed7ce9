import { AREA_SLACK_M2 } from '../geometry/tolerance.ts';
import {
  type HeldPlace,
  type JointKind,
  jointKinds,
  type Quantities,
  type RoomQuantities,
  type Split,
} from '../plan/analysis.ts';
import type { Plan, Screed } from '../plan/plan.ts';
import { bayAreas, placeIsBare } from './bay-floors.ts';
import { bayRoomShares, jointRoomShares, placeRoomShares, type RoomShare } from './room-share.ts';
import { jointIsSealed, sealantLitres } from './sealant.ts';

/** What the floor takes, net and without allowance, in all and by room.
 *
 *  Accepts: a resolved plan, its split and the places that are held to the slab. Guarantees: the rooms, in the plan's order, add up to the
 *  whole.
 *
 *  Steps: 1. each thing is measured once, with the shares of it that fall to rooms (room-share); 2. it is booked to the whole and to its
 *  rooms; 3. what follows from floor area, screed and insulation, is worked out from the sums. */
export function takeoffOf(plan: Plan, split: Split, held: readonly HeldPlace[]): Quantities {
  const whole = emptyTally();
  const byRoom = new Map(plan.rooms.map((room) => [room.id, emptyTally()]));
  for (const { kind, amount, shares } of [...floorEntries(plan, split, held), ...jointEntries(plan, split)]) {
    whole[kind] += amount;
    for (const { room, share } of shares) {
      const tally = byRoom.get(room);
      if (tally !== undefined) tally[kind] += amount * share;
    }
  }
  return {
    ...quantitiesOf(whole, plan.screed),
    rooms: [...byRoom].map(([room, tally]) => ({ room, ...quantitiesOf(tally, plan.screed) })),
  };
}

/** What is measured on the drawing, m, m2 and litres; the rest follows. `bareM2` is floor without insulation below. */
type Measure = JointKind | 'edgeStripM' | 'sealantLitres' | 'floorM2' | 'bareM2';
type Tally = Record<Measure, number>;

interface Entry {
  readonly kind: Measure;
  readonly amount: number;
  readonly shares: readonly RoomShare[];
}

function emptyTally(): Tally {
  return { ...jointsOf(() => 0), edgeStripM: 0, sealantLitres: 0, floorM2: 0, bareM2: 0 };
}

function floorEntries(plan: Plan, split: Split, held: readonly HeldPlace[]): Entry[] {
  const bays = bayRoomShares(bayAreas(split));
  const rooms = new Map(plan.rooms.map((room) => [room.id, room]));
  return [
    ...split.pieces.map(
      ({ room, areaM2 }): Entry => ({ kind: 'floorM2', amount: areaM2, shares: [{ room, share: 1 }] }),
    ),
    ...split.edges.map(
      ({ room, lengthM }): Entry => ({ kind: 'edgeStripM', amount: lengthM, shares: [{ room, share: 1 }] }),
    ),
    ...held
      .filter(placeIsBare)
      .map((place): Entry => ({ kind: 'bareM2', amount: place.areaM2, shares: placeRoomShares(place, bays, rooms) })),
  ];
}

function jointEntries(plan: Plan, split: Split): Entry[] {
  const shares = bayRoomShares(bayAreas(split));
  const bays = new Map(split.bays.map((bay) => [bay.id, bay]));
  const rooms = new Map(plan.rooms.map((room) => [room.id, room]));
  return split.joints.flatMap((joint): Entry[] => {
    const own = jointRoomShares(joint, shares);
    const length: Entry = { kind: joint.kind, amount: joint.lengthM, shares: own };
    if (!jointIsSealed(joint, bays, rooms)) return [length];
    return [length, { kind: 'sealantLitres', amount: sealantLitres(joint.lengthM, plan.sealant.widthMm), shares: own }];
  });
}

/** Screed is taken at its nominal thickness, everywhere; insulation under all floor but that on bare slab.
 *  Example: 20 m2 at 65 mm and 2000 kg/m3, 2 m2 of it on bare slab -> 1.3 m3, 2600 kg, 18 m2 of insulation. */
function quantitiesOf(tally: Tally, screed: Screed): RoomQuantities {
  const screedM3 = (tally.floorM2 * screed.thicknessMm) / 1000;
  return {
    edgeStripM: tally.edgeStripM,
    jointM: jointsOf((kind) => tally[kind]),
    sealantLitres: tally.sealantLitres,
    screedM3,
    screedKg: screedM3 * screed.densityKgPerM3,
    insulationM2: insulatedM2(tally),
    slabContactM2: tally.bareM2,
    floorM2: tally.floorM2,
  };
}

/** Nought, and not what rounding leaves of it, where all floor lies on bare slab. */
function insulatedM2({ floorM2, bareM2 }: Tally): number {
  return floorM2 - bareM2 > AREA_SLACK_M2 ? floorM2 - bareM2 : 0;
}

function jointsOf(figure: (kind: JointKind) => number): Record<JointKind, number> {
  return Object.fromEntries(jointKinds.map((kind) => [kind, figure(kind)])) as Record<JointKind, number>;
}
