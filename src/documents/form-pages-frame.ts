import type { Form } from './form.ts';
import type { Ink } from './ink.ts';
import type { PaperBox } from './sheet.ts';
import { columnIn, padMm, rowMm, rule, textAt, textRow } from './strip-pen.ts';
import { textCut, textLines } from './text-width.ts';
import { type SheetCount, sheetNumberText, type TitleBlock } from './title-block.ts';
import { notChecked, oneLine, statusNames, textBefore } from './words.ts';

/** Head and foot of the pages of forms. */

export interface FormPaper {
  readonly paper: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

const marginMm = 12;
const headMm = 21;
/** What stands at the right of head and foot. */
const besideMm = 70;
/** Free above the foot. */
const footGapMm = 4;
const smallRowMm = 3.2;
const titleMm = 6.4;

/** What is free between head and foot.
 *  @param block whose cautions stand in the foot; the foot is at its highest where it is left out */
export function formBody({ widthMm, heightMm }: FormPaper, block?: TitleBlock): PaperBox {
  const width = widthMm - 2 * marginMm;
  const y = marginMm + headMm;
  return {
    x: marginMm,
    y,
    width,
    height: heightMm - marginMm - (block === undefined ? 0 : footMm(block, width) + footGapMm) - y,
  };
}

function cautionRows({ cautions }: TitleBlock, width: number): readonly string[] {
  return cautions.flatMap((line) => textLines(line, 'sheet-small', width - besideMm));
}

function footMm(block: TitleBlock, width: number): number {
  const beside = block.faults === null ? 2 : 3;
  return 2 + Math.max(cautionRows(block, width).length * smallRowMm, beside * rowMm);
}

/** A column over all of the page's width, from the top or the foot. */
function pageColumn({ widthMm }: FormPaper, y: number) {
  const column = columnIn({ x: marginMm - padMm, y: y - padMm, width: widthMm - 2 * marginMm + 2 * padMm, height: 0 });
  return column;
}

export function headInks(form: Form, block: TitleBlock, paper: FormPaper): readonly Ink[] {
  const column = pageColumn(paper, marginMm);
  const right = column.left + column.width;
  const room = column.width - besideMm;
  const beside = [statusNames[block.status], block.date];
  for (const [i, text] of beside.entries())
    textAt(column, text, i === 0 ? 'sheet-head' : 'sheet-text', [right, column.y + titleMm / 2 + i * rowMm], 'end');
  const subject = oneLine(form.subject);
  const about = [block.title, block.project].filter((part) => part !== '' && part !== subject);
  textRow(column, textCut(oneLine(form.title), 'sheet-title', room), 'sheet-title', titleMm);
  if (subject !== '') textRow(column, textCut(subject, 'sheet-text', room), 'sheet-text');
  if (about.length > 0) {
    const each = room / about.length - 3;
    const named = about.map((part) => textBefore(textCut(part, 'sheet-text', each)));
    textRow(column, named.join(' \u2013 '), 'sheet-text');
  }
  column.y = marginMm + headMm;
  rule(column, -3);
  return column.inks;
}

export function footInks(block: TitleBlock, paper: FormPaper, count: SheetCount): readonly Ink[] {
  const height = footMm(block, paper.widthMm - 2 * marginMm);
  const column = pageColumn(paper, paper.heightMm - marginMm - height);
  rule(column, 0);
  column.y += 2;
  const right = column.left + column.width;
  const page = sheetNumberText(block, count, { what: 'Page', style: 'sheet-text', widthMm: besideMm - 2 });
  textAt(column, page, 'sheet-text', [right, column.y + rowMm / 2], 'end');
  const answers = block.designer === '' ? notChecked : textCut(block.designer, 'sheet-text', besideMm - 2);
  const style = block.designer === '' ? 'sheet-fault' : 'sheet-text';
  textAt(column, answers, style, [right, column.y + 1.5 * rowMm], 'end');
  if (block.faults !== null) textAt(column, block.faults, 'sheet-fault', [right, column.y + 2.5 * rowMm], 'end');
  for (const line of cautionRows(block, column.width)) textRow(column, line, 'sheet-small', smallRowMm);
  return column.inks;
}
