import type { Point } from '../geometry/point.ts';
import type { Ring } from '../geometry/ring.ts';
import { circle } from './circle.ts';
import type { Drawing } from './drawing.ts';
import { fillInks, type Ink, lineInks, markInks } from './ink.ts';
import { type LegendRow, legendOf } from './legend.ts';
import type { SheetLayout } from './sheet.ts';
import type { NumberedFinding, SheetContent } from './sheet-content.ts';
import { type Stroke, type TextStyleName, textStyles } from './styles.ts';
import { marks } from './symbols.ts';
import { textLines } from './text-width.ts';
import { cautionLines, countText, findingText } from './words.ts';

const rowMm = 4.6;
const padMm = 4;
const sampleMm = 20;
const headMm = 31;
const fineStroke: Stroke = { widthMm: 0.25, colour: 'faint', dashMm: [], cap: 'butt' };

/** A pen that writes down a column. */
interface Column {
  readonly inks: Ink[];
  readonly left: number;
  readonly width: number;
  y: number;
}

/** The strip beside the drawing: title, facts, scale bar, legend, findings as far as there is room, cautions at the foot. */
export function stripInks(
  drawing: Drawing,
  content: SheetContent,
  layout: SheetLayout,
  unlettered: number,
): readonly Ink[] {
  const { strip } = layout;
  const column: Column = { inks: [], left: strip.x + padMm, width: strip.width - 2 * padMm, y: strip.y + padMm };
  titleBlock(column, content, layout);
  scaleBar(column, layout.scale);
  legend(column, legendOf(drawing, 1 / layout.scale));

  const foot = footRows(column.width, unlettered);
  const footTop = strip.y + strip.height - padMm - foot.length * rowMm;
  findingList(column, content.findings, footTop - padMm);
  column.y = footTop;
  rule(column, -padMm / 2);
  for (const row of foot) textRow(column, row, 'sheet-text');
  return column.inks;
}

function titleBlock(column: Column, { title, facts }: SheetContent, { scale, paper }: SheetLayout): void {
  for (const row of clipped(textLines(title, 'sheet-title', column.width), 3)) {
    textRow(column, row, 'sheet-title', rowMm * 1.4);
  }
  textRow(column, 'Bays and movement joints', 'sheet-text');
  column.y += 1.5;
  rule(column, 0);
  column.y += 1.5;
  for (const [head, text] of [['Scale', `1 : ${scale} on ${paper}`] as const, ...facts]) {
    const top = column.y;
    textRow(column, head, 'sheet-head');
    column.y = top;
    for (const row of textLines(text, 'sheet-text', column.width - headMm))
      textRow(column, row, 'sheet-text', rowMm, headMm);
  }
  textRow(column, 'Which way north lies is not known.', 'sheet-text');
  column.y += 2.5;
}

/** Metres that a bar of four parts may stand for. */
const barPartsM = [0.1, 0.2, 0.25, 0.5, 1, 2, 2.5, 5, 10, 20, 50, 100, 200, 500, 1000];
const barParts = 4;
const longestBarMm = 62;

function scaleBar(column: Column, scale: number): void {
  const partM = barPartsM.filter((m) => (m * 1000 * barParts) / scale <= longestBarMm).at(-1) ?? 0.1;
  const partMm = (partM * 1000) / scale;
  const top = column.y;
  for (let i = 0; i < barParts; i++) {
    const x = column.left + i * partMm;
    column.inks.push({
      ink: 'path',
      lines: [box(x, top, x + partMm, top + 1.6)],
      closed: true,
      fill: i % 2 === 0 ? 'ink' : 'paper',
      stroke: { widthMm: 0.25, colour: 'ink', dashMm: [], cap: 'butt' },
    });
  }
  for (const i of [0, 2, 4]) {
    const label = i === 4 ? `${partM * i} m` : String(partM * i);
    text(column, label, 'sheet-text', [column.left + i * partMm, top + 4.4], i === 0 ? 'start' : 'middle');
  }
  column.y += 9;
}

function legend(column: Column, rows: readonly LegendRow[]): void {
  rule(column, -1);
  column.y += 1;
  for (const row of rows) {
    const lines = textLines(row.words, 'sheet-text', column.width - sampleMm - 2);
    const height = Math.max(lines.length * rowMm + 0.6, row.shape === 'mark' ? marks[row.style].reachMm.up + 2.4 : 5.6);
    column.inks.push(...sampleInks(row, [column.left, column.y + height / 2]));
    const top = column.y;
    column.y += (height - lines.length * rowMm) / 2;
    for (const line of lines) textRow(column, line, 'sheet-text', rowMm, sampleMm + 2);
    column.y = top + height;
  }
  column.y += 2;
}

function sampleInks(row: LegendRow, [x, y]: Point): readonly Ink[] {
  const right = x + sampleMm - 2;
  if (row.shape === 'line')
    return lineInks(row.style, [
      [x + 1.5, y],
      [right, y],
    ]);
  if (row.shape === 'fill') {
    // a pipe is known by being round
    const outline = row.style === 'pipe' ? circle([(x + right) / 2, y], 1.6) : box(x + 3, y - 2, right - 2, y + 2);
    return fillInks(row.style, outline, []);
  }
  const { left, right: reach, up, down } = marks[row.style].reachMm;
  return markInks({ style: row.style, text: null }, [(x + right + left - reach) / 2, y + (up - down) / 2]);
}

/** Faults first and in the order of the analysis; says how many have found no room. */
function findingList(column: Column, findings: readonly NumberedFinding[], bottom: number): void {
  rule(column, -1);
  column.y += 1;
  const faults = findings.filter(({ finding }) => finding.severity === 'fault');
  const others = findings.filter(({ finding }) => finding.severity !== 'fault');
  const cautions = findings.filter(({ finding }) => finding.severity === 'caution').length;
  textRow(
    column,
    faults.length === 0 ? 'No fault found' : countText('fault', faults.length),
    faults.length === 0 ? 'sheet-head' : 'sheet-fault',
  );
  textRow(column, `${countText('caution', cautions)}, ${countText('note', others.length - cautions)}`, 'sheet-text');
  const all = [...faults, ...others];
  for (const [i, { number, finding }] of all.entries()) {
    const rows = textLines(findingText(finding), 'sheet-text', column.width - 8);
    const last = i === all.length - 1;
    if (column.y + (rows.length + (last ? 0 : 1)) * rowMm > bottom) {
      textRow(column, `${all.length - i} more in the analysis`, 'sheet-head');
      return;
    }
    const top = column.y;
    textRow(column, String(number), finding.severity === 'fault' ? 'sheet-fault' : 'sheet-head');
    column.y = top;
    for (const row of rows) textRow(column, row, 'sheet-text', rowMm, 8);
    column.y += 0.8;
  }
}

function footRows(width: number, unlettered: number): readonly string[] {
  const lines =
    unlettered === 0
      ? cautionLines
      : [`Without room on the drawing: ${unlettered} of the names. See the lists.`, ...cautionLines];
  return lines.flatMap((line) => textLines(line, 'sheet-text', width));
}

function clipped(lines: readonly string[], most: number): readonly string[] {
  return lines.length <= most ? lines : [...lines.slice(0, most - 1), `${lines[most - 1] ?? ''}\u2026`];
}

function textRow(column: Column, line: string, style: TextStyleName, height = rowMm, indent = 0): void {
  text(column, line, style, [column.left + indent, column.y + height / 2], 'start');
  column.y += height;
}

function text(column: Column, line: string, style: TextStyleName, at: Point, anchor: 'start' | 'middle'): void {
  const { colour } = textStyles[style];
  column.inks.push({ ink: 'text', text: line, style, colour, at, anchor, angleDeg: 0, halo: null });
}

/** A thin line across the column. */
function rule(column: Column, down: number): void {
  const y = column.y + down;
  column.inks.push({
    ink: 'path',
    lines: [
      [
        [column.left, y],
        [column.left + column.width, y],
      ],
    ],
    closed: false,
    fill: null,
    stroke: fineStroke,
  });
}

function box(left: number, top: number, right: number, bottom: number): Ring {
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}
