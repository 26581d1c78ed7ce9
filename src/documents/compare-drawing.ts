import type { Point } from '../geometry/point.ts';
import { papersOf } from '../plan/papers.ts';
import type { Plan } from '../plan/plan.ts';
import { type BayVersion, type Change, type Comparison, comparisonOf, type JointVersion } from './compare.ts';
import { sourceOver } from './compare-shift.ts';
import { changesText } from './compare-tables.ts';
import { outlinesLeft } from './compare-things.ts';
import { sidesChained, sidesGone, sidesOf, wallsOf } from './compare-walls.ts';
import type { Drawing, DrawingItem, LabelForm, LabelItem, LineItem } from './drawing.ts';
import { itemsInOrder } from './drawing-list.ts';
import { floorDrawing } from './floor-drawing.ts';
import type { PaperSource } from './paper-source.ts';
import { thingOutlines } from './set-out-things.ts';
import { boxWith, placeIsDrawn } from './setting-out-sheet.ts';
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
  const { off } = goneLines(sourceOver(before, now), now, comparison.joints);
  return sheetPages(drawingAsIs(drawing), changesStrip(drawing, comparison, { block, off }), papersOf(now.file));
}

const subject = 'Revision: what changed';

function drawingOfChanges(before: PaperSource, now: PaperSource, { joints, bays }: Comparison): Drawing {
  const { items, box: ownBox } = floorDrawing(now);
  const byNow = { joints: changesByNow(joints), bays: changesByNow(bays) };
  const linesNow = new Map(now.analysis.joints.map(({ id, line }) => [id, line]));
  const earlier = sourceOver(before, now);
  const gone = goneLines(earlier, now, joints);
  const left = linesLeft(earlier.plan, now.plan);
  const made = joints.flatMap((change): readonly DrawingItem[] => {
    const ref = { kind: 'joint', id: change.now?.id ?? '' } as const;
    const line = (style: LineItem['style'], points: LineItem['points'] = []): readonly LineItem[] =>
      points.length < 2 ? [] : [{ shape: 'line', layer: 'edges', style, points, ref }];
    const [was, is] = [gone.drawn.get(change.before?.id ?? ''), linesNow.get(change.now?.id ?? '')];
    if (change.what === 'moved') return [...line('revision-gone', was), ...line('revision-moved', is)];
    if (change.what === 'appeared') return line('revision-new', is);
    return change.what === 'went' ? [...line('revision-gone', was), ...goneLabel(change, was)] : [];
  });
  const kept = items.filter(isOfJoints).map((item) => (item.shape === 'label' ? relabelled(item, byNow) : item));
  const leftLines = left.map(
    (points): LineItem => ({
      shape: 'line',
      layer: 'edges',
      style: 'revision-left',
      points,
      ref: { kind: 'joint', id: '' },
    }),
  );
  return {
    items: itemsInOrder([...kept, ...leftLines, ...made]),
    box: boxWith(ownBox, [...gone.drawn.values(), ...left].flat()),
  };
}

/** Where walls stood, and the sides of columns, joinery and pipes, and where none stands now. */
function linesLeft(before: Plan, now: Plan): readonly LineItem['points'][] {
  const [walls, things] = [wallsOf(now), sidesOf(thingOutlines(now))];
  const left = [
    ...sidesGone(wallsOf(before), walls),
    ...sidesGone(sidesOf(outlinesLeft(before, now)), [...walls, ...things]),
  ];
  return sidesChained(left.filter(({ a, b }) => placeIsDrawn(now, a) && placeIsDrawn(now, b)));
}

function changesByNow<T extends { readonly id: string }>(
  changes: readonly Change<T>[],
): ReadonlyMap<string, Change<T>> {
  return new Map(changes.flatMap((change) => (change.now === null ? [] : [[change.now.id, change]])));
}

interface GoneLines {
  /** By the ids of the earlier version. */
  readonly drawn: ReadonlyMap<string, readonly Point[]>;
  /** Joints that lay too far off the floor of now to be drawn. */
  readonly off: number;
}

/** Where joints were that moved or went. */
function goneLines(before: PaperSource, now: PaperSource, joints: Comparison['joints']): GoneLines {
  const left = new Set(
    joints.flatMap(({ what, before: was }) => (was !== null && (what === 'moved' || what === 'went') ? [was.id] : [])),
  );
  const lines = before.analysis.joints.filter(({ id }) => left.has(id));
  const drawn = lines.filter(({ line }) => line.every((place) => placeIsDrawn(now.plan, place)));
  return { drawn: new Map(drawn.map(({ id, line }) => [id, line])), off: lines.length - drawn.length };
}

/** Neither findings nor what belongs to tiles and movement alone. */
function isOfJoints(item: DrawingItem): boolean {
  return item.layer !== 'findings' && item.layer !== 'tiles' && item.shape !== 'mark';
}

interface ChangesByNow {
  readonly joints: ReadonlyMap<string, Change<JointVersion>>;
  readonly bays: ReadonlyMap<string, Change<BayVersion>>;
}

/** Bays by name and what they were called, joints by what became of them. */
function relabelled(label: LabelItem, { joints, bays }: ChangesByNow): LabelItem {
  const { kind, id } = label.ref;
  if (kind === 'bay') return { ...label, forms: bayForms(label.forms.slice(-2), bays.get(id)?.before?.id ?? id, id) };
  const change = kind === 'joint' ? joints.get(id) : undefined;
  if (change?.now === undefined || change.now === null) return label;
  const style = `joint-${change.now.kind}` as const;
  const isMarked = change.what === 'moved' || change.what === 'appeared';
  return {
    ...label,
    forms: textsOf(change, id).map((text) => [{ text, style }]),
    priority: label.priority + (isMarked ? changedFirst : 0),
  };
}

/** Under its number what a bay was called, where there is room. */
function bayForms([named = [], ...others]: readonly LabelForm[], was: string, id: string): readonly LabelForm[] {
  const before: readonly LabelForm[] = was === id ? [] : [[...named, { text: `was ${was}`, style: 'bay-figure' }]];
  return [...before, named, ...others];
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

/** @param off joints that lay too far off to be drawn */
function changesStrip(
  drawing: Drawing,
  { before, now, caution, notes, joints, bays }: Comparison,
  { block, off }: { readonly block: TitleBlock; readonly off: number },
): SheetStrip {
  const named = (parts: readonly string[]) => parts.filter((part) => part !== '').join(', ');
  return stripOf({
    block,
    facts: [
      ...(caution === null ? [] : [['Caution', caution] as const]),
      ...notes.map((note) => ['Note', note] as const),
      ['Before', named([before.revision, before.date])],
      ['Now', named([now.revision, now.date])],
      ['Joints', changesText(joints, 'joint')],
      ['Bays', changesText(bays, 'bay')],
      ...(off === 0
        ? []
        : [['Not drawn', `where ${off} ${off === 1 ? 'joint' : 'joints'} lay before: too far off`] as const]),
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
