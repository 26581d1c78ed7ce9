import type { FindingFact } from '../plan/finding.ts';
import { type Plan, planIsHeated, type Screed } from '../plan/plan.ts';
import { screedClasses, type ThicknessTable, thicknessTable } from '../plan/reference.ts';
import { figureExceeds } from './figure.ts';

export type Loads = NonNullable<Plan['loads']>;

/** Column of the thickness table for two loads, counted from 0; null where a load is beyond the table.
 *
 *  The area load chooses, and the point load where that is the heavier: where it passes the one that stands beside the column. The first
 *  column names none, and is left where the point load in kN passes the area load in kN/m2.
 *  @param imposedKPa kN/m2   @param pointKN kN
 *  Source: sources.json#point-load-column. Example: 3 kN/m2 with a point load of 4 kN -> 3, the column of 5 kN/m2. */
export function thicknessColumn({ imposedKPa, pointKN }: Pick<Loads, 'imposedKPa' | 'pointKN'>): number | null {
  const { columns } = thicknessTable;
  const bears = ({ areaLoadKPa, pointLoadKN }: ThicknessTable['columns'][number]) =>
    imposedKPa <= areaLoadKPa && pointKN <= (pointLoadKN > 0 ? pointLoadKN : imposedKPa);
  const column = columns.findIndex(bears);
  return column < 0 ? null : column;
}

/** Least nominal thickness of a floating screed, mm; with heating pipes in it their outside diameter is added. Null where a load is beyond
 *  the table. Source: sources.json#din-18560-2-thickness.
 *  Example: CT-C25-F4 at 2 kN/m2 -> 45 mm, with pipes of 16 mm in it 61 mm. */
export function thicknessLeast(screedClass: Screed['class'], loads: Loads, pipeOutsideMm: number): number | null {
  const column = thicknessColumn(loads);
  if (column === null) return null;
  const least = thicknessRow(screedClass).least[column];
  if (least === undefined) throw new Error(`the thickness table has no column ${column} for ${screedClass}`);
  return least + pipeOutsideMm;
}

function thicknessRow(screedClass: Screed['class']): ThicknessTable['rows'][string] {
  const row = thicknessTable.rows[screedClasses[screedClass].thickness];
  if (row === undefined) throw new Error(`the thickness table has no row for ${screedClass}`);
  return row;
}

/** Screed over the crown of pipes that lie on the insulation, mm. Example: 65 mm with pipes of 16 mm -> 49 mm. */
export function thicknessCover(thicknessMm: number, pipeOutsideMm: number): number {
  return thicknessMm - pipeOutsideMm;
}

/** Standard acceleration of free fall, m/s2 (exact by definition). */
const GRAVITY_M_PER_S2 = 9.80665;

/** Dead load of the screed alone, kN/m2: thickness times density times gravity. Covering and insulation are not in it.
 *  @param thicknessMm mm   @param densityKgPerM3 kg/m3
 *  Source: sources.json#dead-load. Example: 65 mm at 2000 kg/m3 -> 1.27 kN/m2 */
export function thicknessDeadLoad(thicknessMm: number, densityKgPerM3: number): number {
  return ((thicknessMm / 1000) * densityKgPerM3 * GRAVITY_M_PER_S2) / 1000;
}

/** Whether the screed is thick enough for class, load and pipe, and not too heavy for what carries it. What cannot be judged for want of an
 *  input says so. The pipe counts wherever any room is heated: one thickness holds for the whole plan. */
export function thicknessFindings(plan: Plan): FindingFact[] {
  const heated = planIsHeated(plan);
  const pipeOutsideMm = heated ? (plan.heating?.pipeOutsideMm ?? null) : 0;
  return [
    ...leastFindings(plan, pipeOutsideMm),
    ...(heated ? coverFindings(plan, pipeOutsideMm) : []),
    ...deadLoadFindings(plan),
  ];
}

function leastFindings({ screed, loads }: Plan, pipeOutsideMm: number | null): FindingFact[] {
  const what = 'least thickness of the screed';
  if (loads === null) return [notChecked(what, 'the loads')];
  if (pipeOutsideMm === null) return [notChecked(what, 'the heating pipes')];
  const leastMm = thicknessLeast(screed.class, loads, pipeOutsideMm);
  if (leastMm === null) return [notChecked(what, loadsInTable())];
  return figureExceeds(leastMm, screed.thicknessMm)
    ? [{ code: 'screed-thin', at: null, refs: [], thicknessMm: screed.thicknessMm, leastMm }]
    : [];
}

function coverFindings({ screed }: Plan, pipeOutsideMm: number | null): FindingFact[] {
  const what = 'cover over the pipe';
  if (pipeOutsideMm === null) return [notChecked(what, 'the heating pipes')];
  const leastMm = thicknessRow(screed.class).cover.value;
  const coverMm = thicknessCover(screed.thicknessMm, pipeOutsideMm);
  return figureExceeds(leastMm, coverMm) ? [{ code: 'cover-thin', at: null, refs: [], coverMm, leastMm }] : [];
}

function deadLoadFindings({ screed, loads }: Plan): FindingFact[] {
  const allowanceKPa = loads?.deadAllowanceKPa ?? null;
  if (allowanceKPa === null) return [notChecked('dead load of the screed', 'the dead load that the structure allows')];
  const { thicknessMm } = screed;
  const deadKPa = thicknessDeadLoad(thicknessMm, screed.densityKgPerM3);
  return deadKPa > allowanceKPa
    ? [{ code: 'screed-thick', at: null, refs: [], thicknessMm, deadKPa, allowanceKPa }]
    : [];
}

/** The loads that the table goes up to, in words. */
function loadsInTable(): string {
  const area = Math.max(...thicknessTable.columns.map((column) => column.areaLoadKPa));
  const point = Math.max(...thicknessTable.columns.map((column) => column.pointLoadKN));
  return `loads up to ${area} kN/m² and ${point} kN, where the table ends`;
}

function notChecked(what: string, missing: string): FindingFact {
  return { code: 'not-checked', at: null, refs: [], what, missing };
}
