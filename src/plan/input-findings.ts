import type { FindingFact } from './finding.ts';
import { limitFindings } from './limit-findings.ts';
import type { Plan } from './plan.ts';
import { screedTypeOf } from './reference.ts';

/** What the entered figures leave open: no rooms at all, limits that are not the rule set's, temperatures out of order, beyond the screed's or taken
 *  from the plan. `offFloor`: ids of things that touch no floor. About the plan as a whole; the floor and the bays have findings of their own. */
export function inputFindings(plan: Plan, offFloor: ReadonlySet<string>): readonly FindingFact[] {
  return [
    ...emptyFindings(plan),
    ...limitFindings(plan),
    ...temperatureFindings(plan, offFloor),
    ...temperatureOrderFindings(plan),
    ...unheatedFindings(plan),
    ...tileFieldFindings(plan),
  ];
}

function emptyFindings({ rooms }: Plan): readonly FindingFact[] {
  return rooms.length > 0 ? [] : [{ code: 'no-rooms', at: null, refs: [] }];
}

/** Unheated rooms that warm with the plan for want of a temperature of their own: the safe reading, and said. */
function unheatedFindings({ rooms, temperatures: { layingC, highestC } }: Plan): readonly FindingFact[] {
  const warmed = rooms.filter((room) => !room.heated && !room.hasOwnHighest);
  if (warmed.length === 0 || highestC <= layingC) return [];
  return [
    {
      code: 'unheated-as-plan',
      names: warmed.map((room) => room.name),
      highestC,
      at: warmed[0]?.outline[0] ?? null,
      refs: warmed.map((room) => room.id),
    },
  ];
}

/** Rooms whose highest temperature lies below that of laying, or the lowest above it. */
function temperatureOrderFindings({ rooms }: Plan): readonly FindingFact[] {
  const odd = rooms.filter(({ temperatures: t }) => t.highestC < t.layingC || t.lowestC > t.layingC);
  if (odd.length === 0) return [];
  return [
    {
      code: 'temperatures-reversed',
      names: odd.map((room) => room.name),
      at: odd[0]?.outline[0] ?? null,
      refs: odd.map((room) => room.id),
    },
  ];
}

/** The hottest of rooms and of sun zones over floor against what the screed takes next to the pipes. */
function temperatureFindings({ rooms, screed, sunZones }: Plan, offFloor: ReadonlySet<string>): readonly FindingFact[] {
  const limitC = screedTypeOf(screed.class).highest.value;
  const places = [
    ...rooms.filter((room) => room.heated).map((room) => ({ id: room.id, highestC: room.temperatures.highestC })),
    ...sunZones.filter(({ id }) => !offFloor.has(id)),
  ];
  const hot = places.filter((place) => place.highestC > limitC);
  if (hot.length === 0) return [];
  const highestC = Math.max(...hot.map((place) => place.highestC));
  return [{ code: 'screed-hot', at: null, refs: hot.map((place) => place.id), highestC, limitC }];
}

function tileFieldFindings({ rooms, tileFields }: Plan): readonly FindingFact[] {
  const known = new Set(rooms.map((room) => room.id));
  const unknown = tileFields.flatMap((field) =>
    field.rooms
      .filter((room) => !known.has(room))
      .map(
        (room): FindingFact => ({ code: 'tile-field-unknown-room', at: null, refs: [field.id], field: field.id, room }),
      ),
  );
  const twice = rooms.flatMap(({ id, name, outline }): FindingFact[] => {
    const [first, ...others] = tileFields.filter((field) => field.rooms.includes(id));
    if (first === undefined) return [];
    return others.map((field) => ({
      ...{ code: 'tile-room-twice', field: field.id, first: first.id, name },
      ...{ at: outline[0] ?? null, refs: [field.id, first.id, id] },
    }));
  });
  return [...unknown, ...twice];
}
