import { papersOf } from '../plan/papers.ts';
import { type Change, type Comparison, comparisonOf, type JointVersion } from './compare.ts';
import { changesText } from './compare-tables.ts';
import type { Drawing, DrawingItem, LabelItem, LineItem } from './drawing.ts';
import { drawingOf, itemsInOrder } from './drawing-list.ts';
import type { PaperSource } from './paper-source.ts';
import { type Sheets, sheetPages } from './sheet-pages.ts';
import { drawingAsIs, type SheetStrip, stripOf } from './strip-flow.ts';
import { wholeMmText } from './tile-words.ts';
import { type TitleBlock, titleBlockOf } from './title-block.ts';

/** What changed is named before what did not. */
const changedFirst = 6e6;

/** The joints as they are now, those that moved or are new marked, and in thin dashes those that stood elsewhere or are gone. */
export function comparisonDrawing(before: PaperSource, now: PaperSource): Drawing {
  return drawingOfChanges(before, now, comparisonOf(before, now));
}

export function comparisonPages(before: PaperSource, now: PaperSource): Sheets {
  const comparison = comparisonOf(before, now);
  const drawing = drawingOfChanges(before, now, comparison);
  const block = titleBlockOf(now, subject);
  return sheetPages(drawingAsIs(drawing), changesStrip(drawing, comparison, block), papersOf(now.file));
}

const subject = 'Revision: what changed';

function drawingOfChanges(before: PaperSource, now: PaperSource, { joints }: Comparison): Drawing {
  const { items, box } = drawingOf(now.plan, now.analysis);
  const byNow = new Map(joints.flatMap((change) => (change.now === null ? [] : [[change.now.id, change]])));
  const linesNow = new Map(now.analysis.joints.map(({ id, line }) => [id, line]));
  const linesBefore = new Map(before.analysis.joints.map(({ id, line }) => [id, line]));
  const made = joints.flatMap((change): readonly DrawingItem[] => {
    const ref = { kind: 'joint', id: change.now?.id ?? '' } as const;
    const line = (style: LineItem['style'], points: LineItem['points'] = []): readonly LineItem[] =>
      points.length < 2 ? [] : [{ shape: 'line', layer: 'edges', style, points, ref }];
    const [was, is] = [linesBefore.get(change.before?.id ?? ''), linesNow.get(change.now?.id ?? '')];
    if (change.what === 'moved') return [...line('revision-gone', was), ...line('revision-moved', is)];
    if (change.what === 'appeared') return line('revision-new', is);
    return change.what === 'went' ? [...line('revision-gone', was), ...goneLabel(change, was)] : [];
  });
  const kept = items.filter(isOfJoints).map((item) => (item.shape === 'label' ? relabelled(item, byNow) : item));
  return { items: itemsInOrder([...kept, ...made]), box };
}

/** Neither findings nor what belongs to tiles and movement alone. */
function isOfJoints(item: DrawingItem): boolean {
  return item.layer !== 'findings' && item.layer !== 'tiles' && item.shape !== 'mark';
}

/** Bays by name, joints by what became of them. */
function relabelled(label: LabelItem, byNow: ReadonlyMap<string, Change<JointVersion>>): LabelItem {
  const { kind, id } = label.ref;
  if (kind === 'bay') return { ...label, forms: label.forms.slice(-2) };
  const change = kind === 'joint' ? byNow.get(id) : undefined;
  if (change?.now === undefined || change.now === null) return label;
  const style = `joint-${change.now.kind}` as const;
  const isMarked = change.what === 'moved' || change.what === 'appeared';
  return {
    ...label,
    forms: textsOf(change, id).map((text) => [{ text, style }]),
    priority: label.priority + (isMarked ? changedFirst : 0),
  };
}

/** Longest first. Example: "J3 moved 300 mm, was J4" */
function textsOf({ what, before, movedMm }: Change<JointVersion>, id: string): readonly string[] {
  const was = before === null || before.id === id ? [] : [`was ${before.id}`];
  if (what === 'appeared') return [`${id} new`, id];
  if (what !== 'moved') return [[id, ...was].join(', '), id];
  const moved = `${id} moved ${wholeMmText(movedMm)}`;
  return [[moved, ...was].join(', '), moved, id];
}

function goneLabel({ before }: Change<JointVersion>, line: LineItem['points'] = []): readonly LabelItem[] {
  if (before === null || line.length < 2) return [];
  return [
    {
      shape: 'label',
      layer: 'labels',
      ref: { kind: 'joint', id: '' },
      seat: { kind: 'beside', line, inOpening: before.kind === 'doorway' || before.kind === 'neck' },
      forms: [[{ text: `was ${before.id}, gone`, style: 'object-name' }], [{ text: before.id, style: 'object-name' }]],
      priority: changedFirst,
    },
  ];
}

function changesStrip(drawing: Drawing, { before, now, caution, joints }: Comparison, block: TitleBlock): SheetStrip {
  const named = (parts: readonly string[]) => parts.filter((part) => part !== '').join(', ');
  return stripOf({
    block,
    facts: [
      ...(caution === null ? [] : [['Caution', caution] as const]),
      ['Before', named([before.revision, before.date])],
      ['Now', named([now.revision, now.date])],
      ['Joints', changesText(joints, 'joint')],
    ],
    drawing: drawingAsIs(drawing),
    parts: [],
    mayLeave: [() => true],
    leftText: () => [],
    note: ({ labels: { length } }) =>
      length === 0 ? null : `Without room on the drawing: ${length} of the names. See the list of changes.`,
    noteLines: 2,
  });
}
