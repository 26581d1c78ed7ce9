import type { ComparedVersion, Comparison } from '../documents/compare.ts';
import { comparisonSummary, comparisonTables } from '../documents/compare-tables.ts';
import { cellDecimals, columnHead, plain, type Table, type TableColumn } from '../documents/table.ts';
import { figureText, oneLine } from '../documents/words.ts';
import { tableLines } from './table-lines.ts';

/** What the command line prints of two versions of a plan.
 *  @param files as the user named them */
export function comparisonText(
  comparison: Comparison,
  files: { readonly before: string; readonly now: string },
): string {
  const { before, now, caution, notes } = comparison;
  const sections = [
    ...(caution === null ? [] : [[caution]]),
    ...notes.map((note) => [note]),
    [
      `Before: ${versionText(before)} (${oneLine(files.before)})`,
      `Now:    ${versionText(now)} (${oneLine(files.now)})`,
      ...comparisonSummary(comparison).map(([of, text]) => `${of}: ${text}`),
    ],
    ...comparisonTables(comparison).map(sectionLines),
  ];
  return `${sections.map((lines) => lines.join('\n')).join('\n\n')}\n\n`;
}

function versionText({ plan, revision }: ComparedVersion): string {
  return revision === '' ? plan : `${plan}, revision ${revision}`;
}

function sectionLines(table: Table): readonly string[] {
  const { title, columns, rows, notes } = table;
  if (rows.length === 0) return [`${title}: none`, ...notes.map((note) => `  ${note}`)];
  const cells = rows.map((row, r) =>
    row.map((cell, i) => cellText(cell, cellDecimals(table, columns[i] as TableColumn, r))),
  );
  const sides = columns.map(({ decimals }) => (decimals === null ? 'l' : 'r')).join('');
  return [title, ...tableLines([columns.map(columnHead), ...cells], sides), ...notes.map((note) => `  ${note}`)];
}

function cellText(cell: Table['rows'][number][number], decimals: number | null): string {
  if (cell === null) return '';
  if (typeof cell === 'string') return oneLine(plain(cell));
  return decimals === null ? String(cell) : figureText(cell, decimals);
}
