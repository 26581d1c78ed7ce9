import type { Form } from './form.ts';
import { formPages } from './form-pages.ts';
import type { Page, PageGroup } from './page.ts';
import type { PageSet } from './page-sets.ts';
import type { PaperSource } from './paper-source.ts';
import type { ToldShare } from './plan-document.ts';
import { textAt } from './strip-pen.ts';
import { columnFigure, columnText, tableOf } from './table.ts';
import { oneLine } from './words.ts';

/** Several papers bound into one: what is in them first, and their pages numbered through. */

/** Pages of one paper that follow each other. */
interface Part {
  readonly name: string;
  readonly pages: readonly Page[];
  /** Number of its first page in all. */
  readonly from: number;
}

/** Sheets and records one after the other, behind a list of contents; no page is laid out anew. Lists are a paper of their own: of a large floor they have
 *  a thousand pages. */
export function handoverPages(
  source: PaperSource,
  sets: readonly PageSet[],
  told: ToldShare = () => {},
): readonly Page[] {
  const bound = sets.filter(({ group }) => group !== 'lists');
  const pages = bound.flatMap(({ pages }, i) => {
    told(i / bound.length);
    return pages((share) => told((i + share) / bound.length));
  });
  const contents = formPages([contentsForm(source, partsOf(pages, contentsLength))], source);
  const all = [...contents, ...pages];
  return all.map((page, i) => pageBound(page, { page: i + 1, of: all.length }, all[i - 1]));
}

/** A row for each kind of paper: they are few. */
const contentsLength = 1;

function partsOf(pages: readonly Page[], before: number): readonly Part[] {
  const parts: { name: string; pages: Page[]; from: number }[] = [];
  for (const [i, page] of pages.entries()) {
    const open = parts[parts.length - 1];
    if (open?.name === page.part) open.pages.push(page);
    else parts.push({ name: page.part, pages: [page], from: before + i + 1 });
  }
  return parts;
}

function contentsForm({ plan }: PaperSource, parts: readonly Part[]): Form {
  const columns = [
    columnText<Part>('Paper', ({ name }) => name),
    columnText<Part>('Size', ({ pages }) => [...new Set(pages.map(({ paper }) => paper))].join(', ')),
    columnFigure<Part>('Pages', null, 0, ({ pages }) => pages.length),
    columnFigure<Part>('From page', null, 0, ({ from }) => from),
  ];
  const notes = [
    'The number of a page in all stands in the middle of its foot; at the right of it, or in the title block, its number in its own paper.',
    'Lists of quantities, joints, bays, setting out and findings are papers of their own.',
  ];
  return {
    title: 'Contents',
    subject: oneLine(plan.name),
    blocks: [{ kind: 'table', table: tableOf({ name: 'contents', title: 'Contents', notes }, columns, parts) }],
  };
}

interface ThroughCount {
  readonly page: number;
  readonly of: number;
}

function pageBound(alone: Page, count: ThroughCount, before: Page | undefined): Page {
  const over = numberGroup(alone, count);
  const mark = before?.part === alone.part ? null : alone.part;
  return {
    ...alone,
    title: alone.part,
    subject: `page ${count.page} of ${count.of} in all`,
    groups: [...alone.groups, over],
    bound: { alone, over, mark },
  };
}

/** Of its middle, from the lower edge of the paper: below all frames, clear of what printers leave empty. */
const numberUpMm = 6.5;

function numberGroup({ widthMm, heightMm }: Page, { page, of }: ThroughCount): PageGroup {
  const column = { inks: [], left: 0, width: widthMm, y: 0 };
  textAt(column, `Page ${page} of ${of} in all`, 'sheet-head', [widthMm / 2, heightMm - numberUpMm], 'middle');
  return { ref: null, inks: column.inks };
}
