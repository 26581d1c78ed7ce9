import type { ComparedVersion, Comparison } from '../documents/compare.ts';
import { changesText, comparisonTables } from '../documents/compare-tables.ts';
import { columnHead, plain, type Table, type TableColumn } from '../documents/table.ts';
import { figureText, oneLine } from '../documents/words.ts';
import { tableLines } from './table-lines.ts';

/** What the command line prints of two versions of a plan.
 *  @param files as the user named them */
export function comparisonText(
  comparison: Comparison,
  files: { readonly before: string; readonly now: string },
): string {
  const { before, now, joints, bays } = comparison;
  const sections = [
    [
      `Before: ${versionText(before)} (${oneLine(files.before)})`,
      `Now:    ${versionText(now)} (${oneLine(files.now)})`,
      `Joints: ${changesText(joints, 'joint')}`,
      `Bays: ${changesText(bays, 'bay')}`,
    ],
    ...comparisonTables(comparison).map(sectionLines),
  ];
  return `${sections.map((lines) => lines.join('\n')).join('\n\n')}\n\n`;
}

function versionText({ plan, revision }: ComparedVersion): string {
  return revision === '' ? plan : `${plan}, revision ${revision}`;
}

function sectionLines({ title, columns, rows, notes }: Table): readonly string[] {
  if (rows.length === 0) return [`${title}: none`, ...notes.map((note) => `  ${note}`)];
  const cells = rows.map((row) => row.map((cell, i) => cellText(cell, columns[i] as TableColumn)));
  const sides = columns.map(({ decimals }) => (decimals === null ? 'l' : 'r')).join('');
  return [title, ...tableLines([columns.map(columnHead), ...cells], sides), ...notes.map((note) => `  ${note}`)];
}

function cellText(cell: Table['rows'][number][number], { decimals }: TableColumn): string {
  if (cell === null) return '';
  if (typeof cell === 'string') return oneLine(plain(cell));
  return decimals === null ? String(cell) : figureText(cell, decimals);
}
