import { type Point, pointDistance } from '../geometry/point.ts';
import type { Analysis, TileFieldReport } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import type { Drawing, DrawingItem, DrawingRef, LabelItem, LineItem } from './drawing.ts';
import { drawingOf, itemsInOrder } from './drawing-list.ts';
import { groutText } from './grout-words.ts';
import type { ReferenceLine, SetOutLines } from './set-out-lines.ts';
import type { RoomSetOut } from './set-out-rooms.ts';
import { type LineStyleName, lineStyles } from './styles.ts';
import { cutLine, cutMark } from './tile-items.ts';
import { cutIsLeftOut, cutSizesText, wholeMmText } from './tile-words.ts';
import { type Names, namesOf } from './words.ts';

/** A field with the lines that it is set out from; null where it has no whole tile. */
export interface FieldSetOut {
  readonly report: TileFieldReport;
  readonly lines: SetOutLines | null;
  readonly rooms: readonly RoomSetOut[];
}

/** Numbers of the reference lines of a field: 1 and 2 of the first, 3 and 4 of the next. */
export function lineNumbers(field: number): readonly [number, number] {
  return [2 * field + 1, 2 * field + 2];
}

/** What is set out first is named first; cut sizes stand where there is room. */
const priorities = { lines: 6e6, cuts: 0.5e6 } as const;

/** The drawing for the tiler: the plan without what the screed alone needs, with the reference lines, their distances and the sizes of the cuts. */
export function setOutDrawing(plan: Plan, analysis: Analysis, fields: readonly FieldSetOut[]): Drawing {
  const names = namesOf(plan, analysis);
  const { items, box } = drawingOf(plan, analysis);
  const screedOnly = new Set([...plan.sunZones, ...plan.keepClear, ...plan.slabContacts].map(({ id }) => id));
  const kept = items
    .filter((item) => isForTiler(item) && !(item.ref.kind === 'object' && screedOnly.has(item.ref.id)))
    .map((item) => (item.shape === 'label' ? relabelled(item, analysis, names) : item));
  const made = fields.flatMap((field, i) => [
    ...(field.lines === null ? [] : lineItems(field.lines, lineNumbers(i))),
    ...cutLabels(field, analysis, plan.edgeStrip.thicknessMm),
  ]);
  return { items: itemsInOrder([...kept, ...made]), box };
}

function isForTiler(item: DrawingItem): boolean {
  if (item.layer === 'findings') return false;
  if (item.shape === 'mark') return item.style === 'set-out';
  if (item.shape === 'fill') return item.style !== 'held';
  return item.shape !== 'line' || !['drawn-course', 'no-joint'].includes(item.style);
}

/** Bays by number and room, joints by how they lie in the grid: areas and movements are on the plan. */
function relabelled(label: LabelItem, { bays, joints }: Analysis, names: Names): LabelItem {
  const { kind, id } = label.ref;
  const bay = kind === 'bay' ? bays.find((each) => each.id === id) : undefined;
  if (bay !== undefined) {
    const [number] = label.forms.at(-1) ?? [];
    if (number === undefined) return label;
    const name = { text: names.bay(bay), style: 'bay-figure' } as const;
    return { ...label, forms: [...(names.rooms === 1 ? [] : [[number, name]]), [number]] };
  }
  const joint = kind === 'joint' ? joints.find((each) => each.id === id) : undefined;
  if (joint === undefined) return label;
  const style = `joint-${joint.kind}` as const;
  const grout = groutText(joint);
  return {
    ...label,
    forms: [...(grout === null ? [] : [`${id} ${grout}`]), id].map((text) => [{ text, style }]),
  };
}

function lineItems({ lines, check, corner }: SetOutLines, numbers: readonly [number, number]): readonly DrawingItem[] {
  const ref: DrawingRef = { kind: 'object', id: `line-${numbers[0]}` };
  const checks =
    check === null
      ? []
      : [
          line('check', [check.onFirst, check.onSecond], ref),
          figure([check.onFirst, check.onSecond], wholeMmText(check.acrossMm), ref),
          figure([corner, check.onFirst], wholeMmText(check.firstMm), ref),
          figure([corner, check.onSecond], wholeMmText(check.secondMm), ref),
        ];
  return [...lines.flatMap((each, i) => referenceItems(each, `Line ${numbers[i]}`, ref)), ...checks];
}

/** A distance along a wall is drawn so far off it, mm on the plan. */
const offWallMm = 120;

function referenceItems({ line: course, fromWall, fromCorner }: ReferenceLine, name: string, ref: DrawingRef) {
  return [
    line('reference', course, ref),
    figure(course, name, ref),
    ...fromWall.flatMap(({ onWall, onLine, distanceMm }) => [
      line('dimension', [onWall, onLine], ref),
      figure([onWall, onLine], wholeMmText(distanceMm), ref),
    ]),
    ...fromCorner.flatMap(({ alongWall, into, distanceMm }) => {
      if (distanceMm === 0) return [];
      const beside = alongWall.map(([x, y]): Point => [x + into[0] * offWallMm, y + into[1] * offWallMm]);
      return [line('dimension', beside, ref), figure(beside, wholeMmText(distanceMm), ref, true)];
    }),
  ];
}

function line(style: LineStyleName, points: readonly Point[], ref: DrawingRef): LineItem {
  return { shape: 'line', layer: 'marks', style, points, ref };
}

/** Words beside a line that may be longer than it. */
function figure(course: readonly Point[], text: string, ref: DrawingRef, onRight = false): LabelItem {
  return {
    shape: 'label',
    layer: 'labels',
    ref,
    seat: { kind: 'beside', line: course, inOpening: true, onRight },
    forms: [[{ text, style: 'bay-figure' }]],
    priority: priorities.lines,
  };
}

/** Sizes of the cuts along walls and what is built in, on the side of the tiles. Those that the strip tells of a room are its own, others of what they
 *  are cut to. */
function cutLabels({ report, rooms }: FieldSetOut, { bays }: Analysis, jointMm: number): readonly LabelItem[] {
  const byId = new Map(bays.map((bay) => [bay.id, bay]));
  const told = new Set(rooms.flatMap(({ sides, others }) => [...sides.flatMap(({ cuts }) => cuts), ...others]));
  return report.cuts.flatMap((cut): LabelItem[] => {
    const bay = byId.get(cut.bay);
    if (bay === undefined || cut.tiles === 0 || cut.along === 'joint' || cut.along === 'pipe') return [];
    const course = cutLine(cut, bay);
    if (course === null) return [];
    const { insetMm, strokes } = lineStyles[cutMark(cut) ?? 'cut-sliver'];
    const size = cutSizesText(cut);
    // those at jambs are told with the joint
    const isTold = told.has(cut) || cut.along === 'jamb';
    const isLeftOut = cutIsLeftOut(cut, jointMm);
    return [
      {
        shape: 'label',
        layer: 'labels',
        ref: isTold ? { kind: 'room', id: cut.room ?? '' } : { kind: 'edge', id: cut.object ?? cut.bay },
        seat: {
          kind: 'beside',
          line: course,
          inOpening: false,
          onRight: true,
          ownMm: insetMm + strokes[0].widthMm,
        },
        forms: [...(isLeftOut ? [`${size}, left out`] : []), size].map((text) => [{ text, style: 'object-name' }]),
        priority: priorities.cuts + pointDistance(...course),
      },
    ];
  });
}
