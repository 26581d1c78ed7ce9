import drawingStartsJson from '../../shared/drawing-starts.json' with { type: 'json' };
import materialsJson from '../../shared/materials.json' with { type: 'json' };
import ruleSetsJson from '../../shared/rule-sets.json' with { type: 'json' };
import screedClassesJson from '../../shared/screed-classes.json' with { type: 'json' };
import thicknessJson from '../../shared/thickness.json' with { type: 'json' };

/** The reference data of `shared/`: every figure with its unit, range and source. The key types are made from the files and the
 *  compiler checks the files against the shapes below, so that neither can go stale. */

export type ScreedTypeKey = keyof typeof screedClassesJson.types;
export type ScreedClassKey = keyof typeof screedClassesJson.classes;
export type RuleSetKey = keyof typeof ruleSetsJson.ruleSets;
export type MaterialKey = keyof typeof materialsJson;
export type DefaultKey = keyof typeof ruleSetsJson.defaults;
export type RuleKey = keyof typeof ruleSetsJson.rules;
export type DrawingStartKey = keyof typeof drawingStartsJson.starts;

export interface Figure {
  readonly value: number;
  readonly unit: string;
  /** Least and greatest seen; null where one figure was seen. */
  readonly range: readonly number[] | null;
  /** Key of `shared/sources.json`, which also tells the figure's standing. */
  readonly source: string;
}

export interface Material {
  readonly name: string;
  readonly expansion: Figure | null;
  readonly conductivity: Figure | null;
  readonly density: Figure | null;
}

export interface ScreedType {
  readonly name: string;
  readonly expansion: Figure;
  readonly elasticModulus: Figure;
  readonly density: Figure;
  readonly shrinkage: Figure;
  /** Highest temperature next to the pipes. */
  readonly highest: Figure;
  /** Days after laying. */
  readonly firstHeating: Figure;
  readonly dryness: Figure;
}

export interface ScreedClass {
  readonly compressive: Figure;
  readonly flexural: Figure;
  /** Key of the thickness table's rows. */
  readonly thickness: string;
}

export interface LimitRow {
  /** null: heated or not. */
  readonly heated: boolean | null;
  /** stone-or-ceramic, other, or any. */
  readonly covering: string;
  /** null: no limit. */
  readonly area: Figure | null;
  readonly length: Figure | null;
  readonly aspect: Figure | null;
  readonly source: string;
  /** That of its source. */
  readonly standing: string;
}

export interface RuleSet {
  readonly name: string;
  /** Types of screed that it is written for; any other takes the fallback's limits. */
  readonly screeds: readonly string[];
  readonly rectangleMayPass: boolean;
  readonly sealantLeastWidth: Figure;
  readonly note: string;
  /** The first row that fits holds; where none fits, the fallback's. */
  readonly rows: readonly LimitRow[];
}

export interface ThicknessRow {
  /** Least nominal thickness without the pipe, a figure a column. */
  readonly least: readonly number[];
  /** Least cover over the pipe. */
  readonly cover: Figure;
  /** Where sources disagree. */
  readonly note: string;
}

export interface ThicknessTable {
  readonly unit: string;
  readonly source: string;
  readonly columnSource: string;
  readonly columns: readonly {
    readonly areaLoadKPa: number;
    readonly pointLoadKN: number;
    readonly insulationGivesMm: number;
  }[];
  readonly rows: Readonly<Record<string, ThicknessRow>>;
}

export const materials: Readonly<Record<MaterialKey, Material>> = materialsJson;
export const screedTypes: Readonly<Record<ScreedTypeKey, ScreedType>> = screedClassesJson.types;
export const screedClasses: Readonly<Record<ScreedClassKey, ScreedClass>> = screedClassesJson.classes;
export const ruleSets: Readonly<Record<RuleSetKey, RuleSet>> = ruleSetsJson.ruleSets;
export const thicknessTable: ThicknessTable = thicknessJson;
/** What a plan takes where it says nothing. */
export const defaults: Readonly<Record<DefaultKey, Figure>> = ruleSetsJson.defaults;
/** What the drawing tools start with. */
export const drawingStarts: Readonly<Record<DrawingStartKey, Figure>> = drawingStartsJson.starts;
/** Usual widths of doorways, jamb to jamb, mm. */
export const doorwayWidthsMm: readonly number[] = drawingStartsJson.doorwayWidths.valuesMm;
/** Figures of the rules that a plan cannot change. */
export const rules: Readonly<Record<RuleKey, Figure>> = ruleSetsJson.rules;

function keysOf<K extends string>(record: Readonly<Record<K, unknown>>): readonly K[] {
  return Object.keys(record) as K[];
}

export const screedClassKeys = keysOf(screedClasses);
export const ruleSetKeys = keysOf(ruleSets);
export const defaultRuleSet: RuleSetKey = 'en-strict';
export const defaultScreedClass: ScreedClassKey = 'CT-C25-F4';

/** CT of CT-C25-F4. */
export function screedTypeKey(key: ScreedClassKey): ScreedTypeKey {
  return key.slice(0, key.indexOf('-')) as ScreedTypeKey;
}

export function screedTypeOf(key: ScreedClassKey): ScreedType {
  return screedTypes[screedTypeKey(key)];
}

/** The row of limits for a floor: the rule set's own, else the strict reading of EN 1264-4. */
export function limitRow(
  ruleSet: RuleSetKey,
  screedClass: ScreedClassKey,
  heated: boolean,
  covering: string,
): LimitRow {
  const own = limitRowOwn(ruleSet, screedClass, heated, covering);
  const row = own ?? limitRowOwn(defaultRuleSet, screedClass, heated, covering);
  if (row === undefined) throw new Error(`${defaultRuleSet} has no limits for this floor`);
  return row;
}

/** The rule set's own row for a floor; undefined where it does not speak of such a floor. A set written for another type of screed speaks
 *  of none. */
export function limitRowOwn(
  ruleSet: RuleSetKey,
  screedClass: ScreedClassKey,
  heated: boolean,
  covering: string,
): LimitRow | undefined {
  if (!ruleSetFitsScreed(ruleSet, screedClass)) return undefined;
  return ruleSets[ruleSet].rows.find(
    (row) =>
      (row.heated === null || row.heated === heated) &&
      (row.covering === 'any' || (row.covering === 'stone-or-ceramic') === (covering === 'stone-or-ceramic')),
  );
}

export function ruleSetFitsScreed(ruleSet: RuleSetKey, screedClass: ScreedClassKey): boolean {
  return ruleSets[ruleSet].screeds.includes(screedTypeKey(screedClass));
}
