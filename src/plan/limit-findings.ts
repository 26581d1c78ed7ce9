import type { FindingFact, LimitsTaken } from './finding.ts';
import type { Plan, Room } from './plan.ts';
import { defaultRuleSet, limitRow, limitRowOwn, ruleSetFitsScreed, ruleSets } from './reference.ts';
import type { SourceKey } from './sources.ts';

const ruleRows = Object.values(ruleSets).flatMap((ruleSet) => ruleSet.rows);

/** What a limit that was not entered can rest on. */
const ruleSources: ReadonlySet<string> = new Set(
  ruleRows.flatMap(({ source, area, length, aspect }) => [
    source,
    ...[area, length, aspect].flatMap((f) => f?.source ?? []),
  ]),
);

/** Where the limits of the rooms are not those of the rule set that was asked for, or stand on less than print: a floor that the set does
 *  not speak of, limits that were never entered, recalled or carried over. */
export function limitFindings(plan: Plan): readonly FindingFact[] {
  return [...takenFindings(plan), ...ownFindings(plan), ...carriedOverFindings(plan)];
}

/** One caution for each kind of floor that the rule set does not speak of. A set without limits of its own has no such floor. */
function takenFindings(plan: Plan): readonly FindingFact[] {
  const { ruleSet: key, screed } = plan;
  if (ruleSets[key].rows.length === 0) return [];
  const silent = plan.rooms.filter(({ heated, covering }) => !limitRowOwn(key, screed.class, heated, covering));
  const kinds = new Set(silent.map(floorWords));
  return [...kinds].flatMap((floor): readonly FindingFact[] => {
    const rooms = silent.filter((room) => floorWords(room) === floor);
    const [room] = rooms as [Room];
    if (limitKeys(room).every(isEntered)) return [];
    const refs = rooms.map(({ id }) => id);
    const { source } = limitRow(key, screed.class, room.heated, room.covering);
    const place = { at: null, refs, source, ...limitsTaken(plan, rooms) };
    return ruleSetFitsScreed(key, screed.class)
      ? [{ ...place, code: 'rule-set-other-floor', floor }]
      : [{ ...place, code: 'rule-set-other-screed', screed: screed.class }];
  });
}

/** Floors that one row of limits is written for. */
function floorWords({ heated, covering }: Room): string {
  const under = covering === 'stone-or-ceramic' ? 'under stone or ceramic' : 'that is not under stone or ceramic';
  return `${heated ? 'heated' : 'unheated'} floor ${under}`;
}

/** @param rooms of one kind of floor */
function limitsTaken({ ruleSet }: Plan, rooms: readonly Room[]): LimitsTaken {
  const [{ limits, limitSources }] = rooms as [Room];
  const taken = (which: 'areaM2' | 'lengthM' | 'aspect') =>
    isEntered(limitSources[which]) || limits[which] === Infinity ? null : limits[which];
  return {
    ruleSet: ruleSets[ruleSet].name,
    names: rooms.map(({ name }) => name),
    instead: ruleSets[defaultRuleSet].name,
    areaM2: taken('areaM2'),
    lengthM: taken('lengthM'),
    aspect: taken('aspect'),
  };
}

/** Limits of a rule set that asks for the user's own, or gives its own from memory. */
function ownFindings({ ruleSet: key, rooms }: Plan): readonly FindingFact[] {
  const ruleSet = ruleSets[key].name;
  const whole = { at: null, refs: [] };
  const sources = rooms.flatMap(limitKeys);
  if (ruleSets[key].rows.length === 0 && sources.length > 0 && !sources.some(isEntered)) {
    return [{ ...whole, code: 'limits-not-entered', ruleSet, instead: ruleSets[defaultRuleSet].name }];
  }
  const recalled = sources.find((source) => ruleRows.some((row) => row.source === source && row.standing === 'memory'));
  return recalled === undefined ? [] : [{ ...whole, code: 'limits-from-memory', ruleSet, source: recalled }];
}

/** Sources of the three limits proper. */
function limitKeys({ limitSources }: Room): readonly string[] {
  return [limitSources.areaM2, limitSources.lengthM, limitSources.aspect];
}

/** Whether a limit is the user's: its source is the document that he named, or the data sheet where he named none. */
function isEntered(source: string): boolean {
  return !ruleSources.has(source) || source === ('data-sheet' satisfies SourceKey);
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
