import type { Form, FormBlock } from './form.ts';
import { blockPieces, type FormPiece } from './form-pages-blocks.ts';
import { piecesPaged } from './form-pages-breaks.ts';
import { type FormPaper, footInks, formBody, headInks } from './form-pages-frame.ts';
import { tablePieces, tableTightMm, tableWidthMm } from './form-pages-table.ts';
import type { Ink } from './ink.ts';
import type { Page } from './page.ts';
import type { PaperSource } from './paper-source.ts';
import type { PaperBox } from './sheet.ts';
import type { Column } from './strip-pen.ts';
import { type Table, tablePrinted } from './table.ts';
import { type TitleBlock, titleBlockOf } from './title-block.ts';
import { oneLine } from './words.ts';

/** ISO 216: standing for words and narrow tables, lying and larger for wide ones. */
const formPapers: readonly FormPaper[] = [
  { paper: 'A4 standing', widthMm: 210, heightMm: 297 },
  { paper: 'A4', widthMm: 297, heightMm: 210 },
  { paper: 'A3', widthMm: 420, heightMm: 297 },
];
const largestPaper: FormPaper = { paper: 'A3', widthMm: 420, heightMm: 297 };

/** A table as a paper of its own. */
export function tableForm(table: Table, subject: string): Form {
  return { title: table.title, subject, blocks: [{ kind: 'table', table: tablePrinted(table) }] };
}

/** Forms on pages, each beginning a new one, numbered through. A table's head stands again on each page that it goes on to. */
export function formPages(forms: readonly Form[], source: PaperSource): readonly Page[] {
  const laid = forms.flatMap((form) => {
    const paper = paperOf(form.blocks);
    const block = titleBlockOf(source, form.subject);
    return formColumns(form, paper, block).map((inks) => ({ form, paper, block, inks }));
  });
  return laid.map(({ form, paper, block, inks }, i): Page => {
    const count = { page: i + 1, of: laid.length };
    const { widthMm, heightMm } = paper;
    return {
      paper: paper.paper,
      widthMm,
      heightMm,
      scale: null,
      title: form.title,
      subject: `${form.subject}, page ${count.page} of ${count.of}`,
      part: oneLine(form.title),
      groups: [
        { ref: null, inks: headInks(form, block, paper) },
        { ref: null, inks },
        { ref: null, inks: footInks(block, paper, count) },
      ],
    };
  });
}

/** The smallest paper that all tables of a form fit on without cramping; the largest where one fits on none. What is filled in and signed stands upright
 *  where its tables can be read so: its pages have more room below each other. */
function paperOf(blocks: readonly FormBlock[]): FormPaper {
  const [upright] = formPapers;
  const tables = blocks.flatMap((block) => (block.kind === 'table' ? [block.table] : []));
  const fits = (paper: FormPaper, width: (table: Table) => number) =>
    tables.every((table) => width(table) <= formBody(paper).width);
  if (tables.length < blocks.length && upright !== undefined && fits(upright, tableTightMm)) return upright;
  return formPapers.find((paper) => fits(paper, tableWidthMm)) ?? largestPaper;
}

/** Inks of a form page by page, between head and foot. */
function formColumns(form: Form, paper: FormPaper, block: TitleBlock): readonly (readonly Ink[])[] {
  const body = formBody(paper, block);
  const pieces = form.blocks.flatMap((each, i) => {
    const own = piecesOf(form, i, body);
    return each.kind !== 'signatures' && form.blocks[i + 1]?.kind === 'signatures' ? endKept(own) : own;
  });
  return piecesPaged(pieces, body.height).map((page) => {
    const inks: Ink[] = [];
    const column: Column = { inks, left: body.x, width: body.width, y: body.y };
    for (const piece of page) piece.ink(column);
    return inks;
  });
}

function piecesOf({ blocks, title }: Form, i: number, body: PaperBox): readonly FormPiece[] {
  const [before, block] = [blocks[i - 1], blocks[i]];
  if (block === undefined) return [];
  if (block.kind !== 'table') return blockPieces(block, body);
  const isTold = block.table.title === (before?.kind === 'head' ? before.text : title);
  return tablePieces(block.table, body.width, isTold ? 'untitled' : 'titled');
}

/** So much at least of what is signed stands above the signatures, mm. */
const aboveSignaturesMm = 12;

/** Nobody signs a page with nothing on it: the end of what is signed stays with the signatures. */
function endKept(pieces: readonly FormPiece[]): readonly FormPiece[] {
  let [from, heightMm] = [pieces.length, 0];
  while (from > 0 && heightMm < aboveSignaturesMm) heightMm += pieces[--from]?.heightMm ?? 0;
  return pieces.map((piece, i): FormPiece => (i < from ? piece : { ...piece, keeps: true }));
}
