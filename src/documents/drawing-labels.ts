import { regionDeepestPoint } from '../geometry/deepest-point.ts';
import type { Ring } from '../geometry/ring.ts';
import type { Analysis, Bay, Joint } from '../plan/analysis.ts';
import type { LabelForm, LabelItem, LabelLine } from './drawing.ts';
import { textCut, textWidthMm } from './text-width.ts';
import { areaText, type DecimalMark, figureText, movementText, type Names, oneLine } from './words.ts';

/** Small bays are named first, since they have no room to step aside; then joints, whose text belongs beside their line;
 *  then the other bays and last the objects. Within each, the larger first. */
const priorities = { smallBay: 4e6, joint: 3e6, bay: 2e6, object: 1e6 } as const;
const smallBayM2 = 12;

/** A label sits in the middle of a bay where that is nearly as deep as its deepest point, so that like bays are lettered alike. */
const centreShare = 0.15;

/** A longer name than this is not drawn in full; lists carry all of it. */
const longestName = 28;

export function bayLabels(analysis: Analysis, names: Names, mark: DecimalMark): LabelItem[] {
  // Bays are numbered: the last has the longest number.
  const asWideAs = analysis.bays.at(-1)?.id ?? '';
  return analysis.bays.map((bay) => {
    const area: LabelLine = { text: areaText(bay.areaM2, mark), style: 'bay-figure' };
    const sides: LabelLine = {
      text: `${figureText(bay.lengthM, 2, mark)} \u00d7 ${figureText(bay.widthM, 2, mark)} m`,
      style: 'bay-figure',
    };
    const id: LabelLine = { text: bay.id, style: 'bay-name' };
    return {
      shape: 'label',
      layer: 'labels',
      ref: { kind: 'bay', id: bay.id },
      seat: {
        kind: 'inside',
        at: regionDeepestPoint(bay, centreShare).point,
        region: { outline: bay.outline, holes: bay.holes },
      },
      forms: [
        ...(names.rooms === 1 ? [] : namedForms(bay, names, { id, area, sides })),
        [id, area, sides],
        [id, area],
        [{ ...id, asWideAs }],
        [{ text: bay.id, style: 'bay-figure', asWideAs }],
      ],
      priority: (bay.areaM2 < smallBayM2 ? priorities.smallBay : priorities.bay) + bay.areaM2,
    };
  });
}

/** A name is cut no shorter than to some three letters, mm on paper. */
const leastNameMm = 11;

/** Figures stand in the lists as well: the name of the room gives way last, and is cut short before that. */
function namedForms(
  bay: Bay,
  names: Names,
  { id, area, sides }: Readonly<Record<'id' | 'area' | 'sides', LabelLine>>,
): readonly LabelForm[] {
  const text = shortened(names.bay(bay));
  const line = (words: string): LabelLine => ({ text: words, style: 'bay-figure', rooms: bay.rooms });
  const within = (widthMm: number) => line(textCut(text, 'bay-figure', Math.max(widthMm, leastNameMm)));
  const whole = line(text);
  const cut = within(textWidthMm(sides.text, sides.style));
  const named = cut.text === text ? [whole] : [whole, cut];
  return [
    ...[[area, sides], [area], []].flatMap((figures) => named.map((name): LabelForm => [id, name, ...figures])),
    [id, within(leastNameMm)],
  ];
}

export function jointLabels(analysis: Analysis, names: Names, mark: DecimalMark): LabelItem[] {
  return analysis.joints.map((joint) => {
    const movement = jointMovement(joint, mark);
    const form = (text: string): LabelForm => [{ text, style: `joint-${joint.kind}` }];
    return {
      shape: 'label',
      layer: 'labels',
      ref: { kind: 'joint', id: joint.id },
      seat: { kind: 'beside', line: joint.line, inOpening: joint.kind === 'doorway' || joint.kind === 'neck' },
      forms: [
        ...(names.jointAcross(joint) ? [form(`${joint.id} ${shortened(names.joint(joint))}, ${movement.words}`)] : []),
        form(`${joint.id} ${movement.words}`),
        form(`${joint.id} ${movement.figure}`),
        form(joint.id),
      ],
      priority: priorities.joint + joint.lengthM,
    };
  });
}

/** Closing is what the profile must take and comes first; a joint that only opens or slides says so. */
function jointMovement(joint: Joint, mark: DecimalMark): { readonly words: string; readonly figure: string } {
  const parts = [
    ['closes', joint.closingMm],
    ['opens', joint.openingMm],
    ['slides', joint.slidingMm],
  ] as const;
  const [word, mm] = parts.find(([, value]) => value >= 0.05) ?? parts[0];
  return { words: `${word} ${movementText(mm, mark)}`, figure: movementText(mm, mark) };
}

/** @param forms texts, longest first */
export function objectLabel(id: string, outline: Ring, forms: readonly string[]): LabelItem {
  const region = { outline, holes: [] };
  return {
    shape: 'label',
    layer: 'labels',
    ref: { kind: 'object', id },
    seat: { kind: 'inside', at: regionDeepestPoint(region).point, region },
    forms: forms.map((text) => [{ text: shortened(oneLine(text)), style: 'object-name' }]),
    priority: priorities.object,
  };
}

export function shortened(text: string): string {
  const characters = [...text];
  return characters.length <= longestName
    ? text
    : `${characters
        .slice(0, longestName - 1)
        .join('')
        .trimEnd()}\u2026`;
}
