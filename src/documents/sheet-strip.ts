import { labelIsFigure } from './joint-dimensions.ts';
import type { NumberedFinding, SheetContent } from './sheet-content.ts';
import { isPin } from './sheet-pins.ts';
import { columnMm, type SheetDrawing, type SheetStrip, stripOf } from './strip-flow.ts';
import { type StripPart, textPart } from './strip-parts.ts';
import { rowMm, rule, textRow } from './strip-pen.ts';
import { textLines } from './text-width.ts';
import { countText, findingText } from './words.ts';

/** A finding in the strip; the head that says how many there are is none. */
interface FindingPart extends StripPart {
  readonly finding: NumberedFinding | null;
}

/** So many findings have room, or the sheet is a larger one; the rest stands in the analysis. */
const findingsShown = 2;

/** The strip beside the joint plan: facts, scale, legend, findings as far as there is room. */
export function jointStrip(drawing: SheetDrawing, { block, facts, findings, leftOut }: SheetContent): SheetStrip {
  const parts = findingParts(findings);
  const least = Math.min(parts.length, 1 + findingsShown);
  return stripOf<FindingPart>({
    block,
    facts,
    drawing,
    parts,
    mayLeave: [(left) => parts.length - left.length >= least],
    leftText(left) {
      const told = left.flatMap(({ finding }) => finding ?? []);
      const faults = told.filter(({ finding }) => finding.severity === 'fault').length;
      if (told.length === 0) return [];
      const ofThem = faults === 0 ? '' : `, ${countText('fault', faults)} among them`;
      return [
        told.length < findings.length
          ? `${told.length} more in the list of findings${ofThem}`
          : `${told.length} in the list of findings, none here`,
      ];
    },
    note({ labels, rooms }, _, scale) {
      const names = labels.filter((label) => !labelIsFigure(label) && label.saidAgain === undefined).length;
      const told = [
        ...(names === 0 ? [] : [`${names} ${names === 1 ? 'name has' : 'names have'} no room: see the lists.`]),
        ...(rooms === 0 ? [] : [`${rooms} ${rooms === 1 ? 'room is' : 'rooms are'} not named here: see the lists.`]),
      ];
      const drawn = drawing.at(scale).items.filter(isPin).length;
      const pins = findings.filter(({ finding }) => finding.at !== null).length - drawn;
      const hidden = pins <= 0 ? [] : [`${pins} ${pins === 1 ? 'pin has' : 'pins have'} no room: see the findings.`];
      return [...leftOut(labels, scale), ...told, ...hidden].join(' ') || null;
    },
    noteLines: 5,
  });
}

/** Faults first and in the order of the analysis. */
function findingParts(findings: readonly NumberedFinding[]): readonly FindingPart[] {
  const faults = findings.filter(({ finding }) => finding.severity === 'fault');
  const others = findings.filter(({ finding }) => finding.severity !== 'fault');
  const cautions = others.filter(({ finding }) => finding.severity === 'caution').length;
  const counts = textPart(
    [`${countText('caution', cautions)}, ${countText('note', others.length - cautions)}`],
    'sheet-text',
  );
  const head: FindingPart = {
    finding: null,
    heightMm: 1 + rowMm + counts.heightMm,
    ink(column) {
      rule(column, -1);
      column.y += 1;
      if (faults.length === 0) textRow(column, 'No fault found', 'sheet-head');
      else textRow(column, countText('fault', faults.length), 'sheet-fault');
      counts.ink(column);
    },
  };
  return [head, ...[...faults, ...others].map(findingPart)];
}

const numberMm = 8;

function findingPart(each: NumberedFinding): FindingPart {
  const { number, finding } = each;
  const rows = textLines(findingText(finding), 'sheet-text', columnMm - numberMm);
  return {
    finding: each,
    standsAlone: true,
    heightMm: Math.max(1, rows.length) * rowMm + 0.8,
    ink(column) {
      const top = column.y;
      textRow(column, String(number), finding.severity === 'fault' ? 'sheet-fault' : 'sheet-head');
      column.y = top;
      for (const row of rows) textRow(column, row, 'sheet-text', rowMm, numberMm);
      column.y = top + Math.max(1, rows.length) * rowMm + 0.8;
    },
  };
}
