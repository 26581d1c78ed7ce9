import { papersOf } from '../plan/papers.ts';
import { analysisText } from './analysis-text.ts';
import { csvOf } from './csv.ts';
import { drawingOf } from './drawing-list.ts';
import type { PaperFonts, PaperSource } from './paper-source.ts';
import { registerTable } from './register.ts';
import { setOutSheet } from './set-out.ts';
import { sheetContent } from './sheet-content.ts';
import { pageSvg, svgOf } from './svg.ts';
import type { Table } from './table.ts';
import { baysTable, findingsTable, jointsTable, quantitiesTable } from './tables.ts';
import { cutsTable, tilesTable } from './tile-tables.ts';

export interface PlanDocument {
  /** End of the file's name. */
  readonly name: string;
  /** Makes it when it is asked for: text is UTF-8. */
  readonly make: () => string | Uint8Array | Promise<Uint8Array>;
}

/** Every document of a plan. The same source gives the same bytes.
 *  @param _fonts asked for by those that need them */
export function documentsOf(source: PaperSource, _fonts: () => Promise<PaperFonts>): readonly PlanDocument[] {
  const { plan, analysis } = source;
  return [
    { name: 'analysis.json', make: () => analysisText(analysis) },
    ...planTables(source).map(({ name, make }) => ({ name: `${name}.csv`, make: () => csvOf(make(source)) })),
    { name: 'tables.xlsx', make: () => workbook(source) },
    { name: 'plan.svg', make: () => svgOf(drawingOf(plan, analysis), sheetContent(plan, analysis)) },
    ...(analysis.tiles === null ? [] : [{ name: 'set-out.svg', make: () => pageSvg(setOutSheet(plan, analysis)) }]),
  ];
}

/** A table by its name before it is made: a large floor has long ones. */
interface NamedTable {
  readonly name: string;
  readonly make: (source: PaperSource) => Table;
}

const tables: readonly NamedTable[] = [
  { name: 'quantities', make: quantitiesTable },
  { name: 'joints', make: jointsTable },
  { name: 'joint-register', make: registerTable },
  { name: 'bays', make: baysTable },
  { name: 'findings', make: findingsTable },
];
const tileTables: readonly NamedTable[] = [
  { name: 'tiles', make: tilesTable },
  { name: 'cuts', make: cutsTable },
];

/** Tables of a plan in the order of the workbook's sheets. */
export function planTables({ analysis }: PaperSource): readonly NamedTable[] {
  return analysis.tiles === null ? tables : [...tables, ...tileTables];
}

async function workbook(source: PaperSource): Promise<Uint8Array> {
  const { tablesXlsx } = await import('./xlsx.ts');
  const { plan, file, date } = source;
  return tablesXlsx(
    planTables(source).map(({ make }) => make(source)),
    { title: plan.name, date: papersOf(file).date ?? date },
  );
}
