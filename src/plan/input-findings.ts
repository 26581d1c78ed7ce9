import type { FindingFact } from './finding.ts';
import type { Plan, Room } from './plan.ts';
import { defaultRuleSet, ruleSetFitsScreed, ruleSets, type SourceKey, screedTypeOf, sourceOf } from './reference.ts';

/** What the entered figures leave open: rules that do not fit the screed, limits that were never entered, limits that are recalled or
 *  carried over, temperatures beyond the screed's. About the plan as a whole; the floor and the bays have findings of their own. */
export function inputFindings(plan: Plan): readonly FindingFact[] {
  return [
    ...ruleSetFindings(plan),
    ...carriedOverFindings(plan),
    ...temperatureFindings(plan),
    ...temperatureOrderFindings(plan),
    ...tileFieldFindings(plan),
  ];
}

function ruleSetFindings({ ruleSet: key, screed, rooms }: Plan): readonly FindingFact[] {
  const ruleSet = ruleSets[key].name;
  const instead = ruleSets[defaultRuleSet].name;
  const whole = { at: null, refs: [] };
  if (!ruleSetFitsScreed(key, screed.class)) {
    return [{ ...whole, code: 'rule-set-other-screed', ruleSet, screed: screed.class, instead }];
  }
  const taken = rooms.flatMap(limitKeys);
  if (
    key === 'data-sheet' &&
    rooms.length > 0 &&
    taken.every((source) => sourceOf(source) !== null && source !== key)
  ) {
    return [{ ...whole, code: 'limits-not-entered', ruleSet, instead }];
  }
  const recalled = taken.find((source) => sourceOf(source)?.standing === 'memory');
  return recalled === undefined ? [] : [{ ...whole, code: 'limits-from-memory', ruleSet, source: recalled }];
}

/** Sources of the three limits proper. */
function limitKeys({ limitSources }: Room): readonly string[] {
  return [limitSources.areaM2, limitSources.lengthM, limitSources.aspect];
}

/** One note for each of the two readings that take over the limits of heated floor under stone or ceramic. */
function carriedOverFindings(plan: Plan): readonly FindingFact[] {
  const carried: readonly SourceKey[] = ['heated-other-coverings', 'unheated-hard-covering'];
  return carried.flatMap((source): readonly FindingFact[] => {
    const rooms = plan.rooms.filter((room) => limitKeys(room).some((key) => key === source));
    const refs = rooms.map((room) => room.id);
    return rooms.length === 0
      ? []
      : [{ code: 'limits-carried-over', at: null, refs, source, names: rooms.map((room) => room.name) }];
  });
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

/** The hottest of rooms and sun zones against what the screed takes next to the pipes. */
function temperatureFindings({ rooms, screed, sunZones }: Plan): readonly FindingFact[] {
  const limitC = screedTypeOf(screed.class).highest.value;
  const places = [
    ...rooms.filter((room) => room.heated).map((room) => ({ id: room.id, highestC: room.temperatures.highestC })),
    ...sunZones,
  ];
  const hot = places.filter((place) => place.highestC > limitC);
  if (hot.length === 0) return [];
  const highestC = Math.max(...hot.map((place) => place.highestC));
  return [{ code: 'screed-hot', at: null, refs: hot.map((place) => place.id), highestC, limitC }];
}

function tileFieldFindings({ rooms, tileFields }: Plan): readonly FindingFact[] {
  const known = new Set(rooms.map((room) => room.id));
  return tileFields.flatMap((field) =>
    field.rooms
      .filter((room) => !known.has(room))
      .map(
        (room): FindingFact => ({ code: 'tile-field-unknown-room', at: null, refs: [field.id], field: field.id, room }),
      ),
  );
}
