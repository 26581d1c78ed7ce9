import { FIGURE_SLACK_MM } from '../geometry/tolerance.ts';
import type { Analysis, Bay, Edge } from '../plan/analysis.ts';
import type { Ordering } from '../plan/papers.ts';
import type { Plan, Room } from '../plan/plan.ts';
import type { TakeOffCell, TakeOffRef } from '../plan/take-off.ts';
import { type BayShares, bayRoomShares } from './room-share.ts';

/** What the lines of the take-off are measured from. */
export interface OrderFloor {
  readonly plan: Plan;
  readonly analysis: Pick<Analysis, 'bays' | 'joints' | 'edges' | 'tiles' | 'quantities'>;
  readonly ordering: Ordering;
  readonly rooms: ReadonlyMap<string, Room>;
  readonly bays: ReadonlyMap<string, Bay>;
  readonly shares: BayShares;
  /** Floor by bay and room, m2, and what of it has insulation below. */
  readonly floor: readonly TakeOffCell[];
  readonly insulated: readonly TakeOffCell[];
}

export function orderFloor(plan: Plan, analysis: OrderFloor['analysis'], ordering: Ordering): OrderFloor {
  const cells = (amount: (floor: { readonly areaM2: number; readonly bareM2: number }) => number) =>
    analysis.bays.flatMap(({ id, floors }) =>
      floors.map((floor): TakeOffCell => ({ bay: id, room: floor.room, amount: amount(floor) })),
    );
  return {
    plan,
    analysis,
    ordering,
    rooms: new Map(plan.rooms.map((room) => [room.id, room])),
    bays: new Map(analysis.bays.map((bay) => [bay.id, bay])),
    shares: bayRoomShares(analysis.bays.map(({ id, floors }) => [id, floors])),
    floor: cells(({ areaM2 }) => areaM2),
    insulated: cells(({ areaM2, bareM2 }) => Math.max(0, areaM2 - bareM2)),
  };
}

export function bayRefs(cells: readonly TakeOffCell[]): readonly TakeOffRef[] {
  const bays = new Map<string, string[]>();
  for (const { bay, room } of cells.filter(({ amount }) => amount > 0)) {
    bays.set(bay, [...(bays.get(bay) ?? []), room]);
  }
  return [...bays].map(([id, rooms]) => ({ kind: 'bay', id, rooms }));
}

export function edgeRefs(edges: readonly Edge[]): readonly TakeOffRef[] {
  return edges.map(({ id, room }) => ({ kind: 'edge', id, rooms: [room] }));
}

/** Things of rooms by a figure of theirs, such as the thickness of what lies below, the smallest first; null, where it is not known, last. */
export function byRoomFigure<T extends { readonly room: string }>(
  things: readonly T[],
  rooms: ReadonlyMap<string, Room>,
  figure: (room: Room) => number | null,
): readonly { readonly figure: number | null; readonly things: readonly T[] }[] {
  const groups: { readonly figure: number | null; readonly things: T[] }[] = [];
  const own = new Map([...rooms].map(([id, room]) => [id, figure(room)]));
  for (const thing of things) {
    const mm = own.get(thing.room) ?? null;
    const group = groups.find((each) =>
      each.figure === null || mm === null ? each.figure === mm : Math.abs(each.figure - mm) < FIGURE_SLACK_MM,
    );
    if (group) group.things.push(thing);
    else groups.push({ figure: mm, things: [thing] });
  }
  return groups.sort((a, b) => (a.figure ?? Infinity) - (b.figure ?? Infinity));
}
