import type { BayLimits, Covering, LimitSources } from './plan.ts';
import {
  defaultRuleSet,
  defaultScreedClass,
  defaults,
  type Figure,
  type LimitRow,
  limitRow,
  type RuleSetKey,
  ruleSets,
} from './reference.ts';
import type { PlanFile } from './schema.ts';

/** Limits of a bay on one floor: the plan's own figures first, then the row of its rule set. Infinity where there is none. */
export function limitsOf(file: PlanFile, heated: boolean, covering: Covering): BayLimits {
  const own = file.screed?.limits;
  const row = rowOf(file, heated, covering);
  return {
    areaM2: own?.areaM2 ?? limitValue(row.area),
    lengthM: own?.lengthM ?? limitValue(row.length),
    aspect: own?.aspect ?? limitValue(row.aspect),
    aspectFromM: own?.aspectFromM ?? defaults.aspectFromM.value,
    ...(rectangleMayPass(file, row) ? { rectangleMayPass: true } : {}),
  };
}

/** Where each of them comes from. */
export function limitSourcesOf(file: PlanFile, heated: boolean, covering: Covering): LimitSources {
  const own = file.screed?.limits;
  const row = rowOf(file, heated, covering);
  const document = file.screed?.source ?? 'data-sheet';
  const source = (entered: number | undefined, figure: Figure | null) =>
    entered === undefined ? (figure?.source ?? row.source) : document;
  return {
    areaM2: source(own?.areaM2, row.area),
    lengthM: source(own?.lengthM, row.length),
    aspect: source(own?.aspect, row.aspect),
    aspectFromM: source(own?.aspectFromM, defaults.aspectFromM),
  };
}

function ruleSetOf(file: PlanFile): RuleSetKey {
  return file.ruleSet ?? defaultRuleSet;
}

function rowOf(file: PlanFile, heated: boolean, covering: Covering): LimitRow {
  return limitRow(ruleSetOf(file), file.screed?.class ?? defaultScreedClass, heated, covering);
}

function limitValue(figure: Figure | null): number {
  return figure === null ? Infinity : figure.value;
}

/** The allowance belongs to the rule set's own figures: a user's area or side is held as entered. */
function rectangleMayPass(file: PlanFile, row: LimitRow): boolean {
  const ruleSet = ruleSets[ruleSetOf(file)];
  const own = file.screed?.limits;
  return (
    ruleSet.rectangleMayPass && ruleSet.rows.includes(row) && own?.areaM2 === undefined && own?.lengthM === undefined
  );
}
