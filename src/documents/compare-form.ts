import { type ComparedVersion, type Comparison, comparisonIsEmpty } from './compare.ts';
import {
  compareBaysTable,
  compareFindingsTable,
  compareJointsTable,
  compareOrderTable,
  compareQuantitiesTable,
  compareSettingsTable,
  comparisonSummary,
} from './compare-tables.ts';
import type { Form, FormBlock } from './form.ts';
import type { Table } from './table.ts';

/** The revision on paper: what changed, with room to say who has taken note. */
export function comparisonForm(comparison: Comparison): Form {
  const { before, now, caution, notes, counts } = comparison;
  return {
    title: 'Revision: what changed',
    subject: now.plan,
    blocks: [
      ...(caution === null
        ? []
        : [{ kind: 'head', text: 'Caution' } as const, { kind: 'text', lines: [caution] } as const]),
      ...(notes.length === 0 ? [] : [{ kind: 'head', text: 'Note' } as const, { kind: 'text', lines: notes } as const]),
      {
        kind: 'fields',
        fields: [['Before', versionText(before)], ['Now', versionText(now)], ...comparisonSummary(comparison)],
      },
      ...(comparisonIsEmpty(counts) ? [] : changedBlocks(comparison)),
      { kind: 'signatures', parties: ['Designer', 'Heating', 'Screed', 'Tiling'] },
    ],
  };
}

/** Of two plans that are the same there is nothing to list and nothing to take out of use. */
function changedBlocks(comparison: Comparison): readonly FormBlock[] {
  const { settings, findings } = comparison;
  return [
    ...(settings.length === 0
      ? [{ kind: 'text', lines: ['No setting changed.'] } as const]
      : tableBlocks(compareSettingsTable(comparison))),
    ...tableBlocks(compareJointsTable(comparison)),
    ...tableBlocks(compareBaysTable(comparison)),
    ...tableBlocks(compareQuantitiesTable(comparison)),
    ...tableBlocks(compareOrderTable(comparison)),
    ...(findings.came.length + findings.went.length === 0
      ? [{ kind: 'text', lines: ['No finding came or went.'] } as const]
      : tableBlocks(compareFindingsTable(comparison))),
    {
      kind: 'text',
      lines: ['Joints that moved are set out anew. Sheets of the earlier version are taken out of use.'],
    },
  ];
}

function versionText({ plan, date, revision }: ComparedVersion): string {
  return [plan, ...(revision === '' ? [] : [`revision ${revision}`]), date].join(', ');
}

/** A table of nothing is told by its notes. */
function tableBlocks(table: Table): readonly FormBlock[] {
  const head: FormBlock = { kind: 'head', text: table.title };
  return table.rows.length === 0 ? [head, { kind: 'text', lines: table.notes }] : [head, { kind: 'table', table }];
}
