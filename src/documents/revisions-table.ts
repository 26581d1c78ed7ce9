import { papersOf, type Revision } from '../plan/papers.ts';
import type { PaperSource } from './paper-source.ts';
import { columnText, type Table, tableOf } from './table.ts';
import { oneLine } from './words.ts';

/** The list of revisions: the newest last, each in full. The title block of a sheet has room for the newest, and for so many lines of each. */
export function revisionsTable({ file }: Pick<PaperSource, 'file'>): Table {
  const columns = [
    columnText<Revision>('Revision', ({ mark }) => oneLine(mark)),
    columnText<Revision>('Date', ({ date }) => oneLine(date)),
    columnText<Revision>('Change', ({ text }) => oneLine(text)),
    columnText<Revision>('By', ({ by }) => oneLine(by)),
  ];
  return tableOf({ name: 'revisions', title: 'Revisions' }, columns, papersOf(file).revisions);
}
