import { papersOf, type Revision } from '../plan/papers.ts';
import type { Form, FormBlock } from './form.ts';
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

/** The same on paper: a cell of a printed table has an end, words under a head go on over as many pages as they need. */
export function revisionsForm({ file, plan }: Pick<PaperSource, 'file' | 'plan'>): Form {
  const blocks = papersOf(file).revisions.flatMap(({ mark, date, text, by }): readonly FormBlock[] => [
    {
      kind: 'head',
      text: [mark, date, by]
        .map(oneLine)
        .filter((words) => words !== '')
        .join(', '),
    },
    { kind: 'text', lines: [oneLine(text)] },
  ]);
  return { title: 'Revisions', subject: oneLine(plan.name), blocks };
}
