import type { Ink } from './ink.ts';
import type { SheetLayout } from './sheet.ts';
import type { KeyPlan } from './sheet-key.ts';
import { northInks, scaleBarInks } from './strip-parts.ts';
import { columnIn, padMm, rowMm, rule, textRow } from './strip-pen.ts';
import { textLines, textLinesFirst } from './text-width.ts';
import { type SheetCount, sheetNumberText, type TitleBlock } from './title-block.ts';
import { notChecked, statusNames } from './words.ts';

/** The strip of a sheet that shows a part of a drawing: what it is of, which part, scale, who answers for it, cautions. */
export function narrowInks(block: TitleBlock, layout: SheetLayout, count: SheetCount, key: KeyPlan): readonly Ink[] {
  const { strip, scale, paper } = layout;
  const column = columnIn(strip);
  const rows = (text: string, style: 'sheet-title' | 'sheet-head' | 'sheet-text' | 'sheet-fault', most: number) => {
    for (const line of textLinesFirst(text, style, column.width, most))
      textRow(column, line, style, style === 'sheet-title' ? rowMm * 1.4 : rowMm);
  };
  rows(block.title, 'sheet-title', 3);
  rows(block.subject, 'sheet-text', 2);
  rows(sheetNumberText(block, count, { what: 'Sheet', style: 'sheet-head', widthMm: column.width }), 'sheet-head', 2);
  column.y += 2;
  rule(column, -1);
  rows(`Scale 1 : ${scale} on ${paper}`, 'sheet-text', 2);
  column.y += 1;
  scaleBarInks(column, scale, [column.left, column.y], column.width - 8);
  column.y += 9;
  if (block.northDeg !== null) {
    column.inks.push(...northInks([column.left + column.width / 2, column.y + 7.5], block.northDeg));
    column.y += 18;
  }
  column.inks.push(...key.inks([column.left, column.y]));
  column.y += key.heightMm + 3;
  rows('Legend and findings: sheet 1', 'sheet-text', 2);

  const foot = [
    ...(block.project === '' ? [] : textLinesFirst(block.project, 'sheet-text', column.width, 2)),
    statusNames[block.status],
    block.date,
    ...textLinesFirst(block.designer, 'sheet-text', column.width, 2),
  ];
  const cautions = block.cautions.flatMap((line) => textLines(line, 'sheet-text', column.width));
  const missing = [
    ...(block.designer === '' ? [notChecked] : []),
    ...(block.faults === null ? [] : [block.faults]),
  ].flatMap((words) => textLines(`${words}.`, 'sheet-fault', column.width));
  const lines = foot.length + cautions.length + missing.length;
  column.y = strip.y + strip.height - padMm - lines * rowMm - 1;
  rule(column, -1);
  for (const line of foot) textRow(column, line, 'sheet-text');
  for (const line of missing) textRow(column, line, 'sheet-fault');
  column.y += 1;
  for (const line of cautions) textRow(column, line, 'sheet-text');
  return column.inks;
}
