import type { Point } from '../geometry/point.ts';
import { circle } from './circle.ts';
import { fillInks, type Ink, lineInks, markInks } from './ink.ts';
import type { LegendRow } from './legend.ts';
import { box, type Column, headMm, penStroke, rowMm, rule, textAt, textRow } from './strip-pen.ts';
import { marks } from './symbols.ts';
import { textLines } from './text-width.ts';

/** The parts that strips are made of, each with the height that it takes: what has no room goes into the next column. */
export interface StripPart {
  readonly heightMm: number;
  /** Writes at the column's place and moves it down by the height. */
  readonly ink: (column: Column) => void;
  /** It is read without those before it, and goes on where one of them was too long for the room that is left. */
  readonly standsAlone?: true;
}

const sampleMm = 20;

/** Heads with their texts; the last is followed by a gap. */
export function factParts(
  facts: readonly (readonly [head: string, text: string])[],
  width: number,
): readonly StripPart[] {
  return facts.map(([head, text], i) => {
    const rows = textLines(text, 'sheet-text', width - headMm);
    const gap = i === facts.length - 1 ? 2.5 : 0;
    return {
      heightMm: Math.max(1, rows.length) * rowMm + gap,
      ink(column) {
        const top = column.y;
        textRow(column, head, 'sheet-head');
        column.y = top;
        for (const row of rows) textRow(column, row, 'sheet-text', rowMm, headMm);
        column.y = top + Math.max(1, rows.length) * rowMm + gap;
      },
    };
  });
}

/** Metres that a bar of four parts may stand for. */
const barPartsM = [0.1, 0.2, 0.25, 0.5, 1, 2, 2.5, 5, 10, 20, 50, 100, 200, 500, 1000];
const barParts = 4;
/** Room for the figure at its end and for the arrow beside it. */
const besideBarMm = 20;
const arrowMm = 4.6;
const scaleMm = 15;

/** Scale bar, and beside it the arrow to the north. Where north is not known a line under the bar says so. */
export function scalePart(scale: number, northDeg: number | null, width: number): StripPart {
  return {
    heightMm: scaleMm,
    ink(column) {
      const top = column.y;
      scaleBarInks(column, scale, [column.left, top + 2], width - besideBarMm);
      if (northDeg === null) {
        const words = textLines('Which way north lies is not known.', 'sheet-text', width);
        for (const [i, text] of words.entries())
          textAt(column, text, 'sheet-text', [column.left, top + 11.5 + i * rowMm], 'start');
      } else column.inks.push(...northInks([column.left + width - arrowMm - 3, top + 7], northDeg));
      column.y = top + scaleMm;
    },
  };
}

export function scaleBarInks(column: Column, scale: number, [left, top]: Point, longestMm: number): void {
  const partM = barPartsM.filter((m) => (m * 1000 * barParts) / scale <= longestMm).at(-1) ?? 0.1;
  const partMm = (partM * 1000) / scale;
  for (let i = 0; i < barParts; i++) {
    const x = left + i * partMm;
    column.inks.push({
      ink: 'path',
      lines: [box(x, top, x + partMm, top + 1.6)],
      closed: true,
      fill: i % 2 === 0 ? 'ink' : 'paper',
      stroke: penStroke(0.25, 'ink'),
    });
  }
  for (const i of [0, 2, 4]) {
    const label = i === 4 ? `${partM * i} m` : String(partM * i);
    textAt(column, label, 'sheet-text', [left + i * partMm, top + 4.4], i === 0 ? 'start' : 'middle');
  }
}

/** A needle in a ring, its north half solid, with an upright N before it. */
export function northInks(centre: Point, northDeg: number): readonly Ink[] {
  const turn = (northDeg * Math.PI) / 180;
  const at = (along: number, aside: number): Point => [
    centre[0] + along * Math.sin(turn) + aside * Math.cos(turn),
    centre[1] - along * Math.cos(turn) + aside * Math.sin(turn),
  ];
  const half = (tip: number, fill: 'ink' | 'paper'): Ink => ({
    ink: 'path',
    lines: [[at(tip, 0), at(0, 1.3), at(0, -1.3)]],
    closed: true,
    fill,
    stroke: penStroke(0.25, 'ink'),
  });
  return [
    { ink: 'disc', centre, radiusMm: arrowMm - 0.9, fill: null, stroke: penStroke(0.18, 'faint') },
    half(arrowMm, 'ink'),
    half(-arrowMm, 'paper'),
    {
      ink: 'text',
      text: 'N',
      style: 'sheet-head',
      colour: 'ink',
      at: at(arrowMm + 2.2, 0),
      anchor: 'middle',
      angleDeg: 0,
      halo: null,
    },
  ];
}

const legendGapMm = 2;
const leastSampleMm = 5;

/** Samples of what the drawing shows, the first under a rule. */
export function legendParts(rows: readonly LegendRow[], width: number): readonly StripPart[] {
  const pins = rows.filter(isPin);
  const samples = rows.filter((row) => !isPin(row)).map((row) => sampleOf(row, width));
  const all = pins.length === 0 ? samples : [...samples, pinsSample(pins, width)];
  return all.map(({ heightMm, ink }, i) => {
    const [before, after] = [i === 0 ? 1 : 0, i === all.length - 1 ? legendGapMm : 0];
    return {
      heightMm: before + heightMm + after,
      ink(column) {
        if (i === 0) rule(column, -1);
        const top = column.y + before;
        column.y = top;
        ink(column);
        column.y = top + heightMm + after;
      },
    };
  });
}

function sampleOf(row: LegendRow, width: number): StripPart {
  const reach = row.shape === 'mark' ? marks[row.style].reachMm : { up: 0, down: 0 };
  const least = row.shape === 'mark' ? reach.up + reach.down + 1.2 : leastSampleMm;
  return sampleRow(row.words, { width, besideMm: sampleMm + 2, least }, (at) => sampleInks(row, at));
}

/** A sample and its words beside it, both in the middle of their height. */
function sampleRow(
  words: string,
  { width, besideMm, least }: { readonly width: number; readonly besideMm: number; readonly least: number },
  sample: (at: Point) => readonly Ink[],
): StripPart {
  const lines = textLines(words, 'sheet-text', width - besideMm);
  const heightMm = Math.max(lines.length * rowMm + 0.4, least);
  return {
    heightMm,
    ink(column) {
      const top = column.y;
      column.inks.push(...sample([column.left, top + heightMm / 2]));
      column.y = top + (heightMm - lines.length * rowMm) / 2;
      for (const line of lines) textRow(column, line, 'sheet-text', rowMm, besideMm);
    },
  };
}

type PinRow = LegendRow & { readonly shape: 'mark'; readonly style: keyof typeof pinWords };

const pinWords = { 'pin-fault': 'fault', 'pin-caution': 'caution', 'pin-note': 'note' } as const;

function isPin(row: LegendRow): row is PinRow {
  return row.shape === 'mark' && row.style in pinWords;
}

/** Pins are tall: they stand side by side. Example: "Fault, caution, note, each with its number" */
function pinsSample(pins: readonly PinRow[], width: number): StripPart {
  const named = pins.map(({ style }) => pinWords[style]).join(', ');
  const words = `${named.charAt(0).toUpperCase()}${named.slice(1)}, ${pins.length > 1 ? 'each ' : ''}with its number`;
  const reaches = pins.map(({ style }) => marks[style].reachMm);
  const high = Math.max(...reaches.map(({ up, down }) => up + down));
  const besideMm =
    Math.max(
      sampleMm,
      reaches.reduce((sum, { left, right }) => sum + left + right + 1, 1),
    ) + 2;
  return sampleRow(words, { width, besideMm, least: high + 1.2 }, ([x, y]) => {
    let right = x + 1;
    return pins.flatMap(({ style }, i) => {
      const reach = reaches[i] ?? marks[style].reachMm;
      const at: Point = [right + reach.left, y + high / 2];
      right += reach.left + reach.right + 1;
      return markInks({ style, text: null }, at);
    });
  });
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

/** Rows of text that stay together. */
export function textPart(
  rows: readonly string[],
  style: 'sheet-text' | 'sheet-head' | 'sheet-fault',
  gap = 0,
): StripPart {
  return {
    heightMm: rows.length * rowMm + gap,
    ink(column) {
      for (const row of rows) textRow(column, row, style);
      column.y += gap;
    },
  };
}
