import type { Point } from '../geometry/point.ts';
import { type Box, boxMiddle } from '../geometry/ring.ts';
import type { Drawing, DrawingItem, LabelForm, LabelItem, PlacedLabel } from './drawing.ts';
import { type Ink, itemInks, labelInks, lineInks, type PaperPlace, paperPoint } from './ink.ts';
import { boxHolds, inksWithin } from './ink-clip.ts';
import { formsNamed, labelIsName, labelsLed } from './label-led.ts';
import { labelsPlace } from './label-place.ts';
import type { Page, PageGroup } from './page.ts';
import type { PaperBox, SheetLayout } from './sheet.ts';
import type { NamesLeft, SheetStrip } from './strip-flow.ts';
import { penStroke } from './strip-pen.ts';
import { type TextStyleName, textStyles } from './styles.ts';
import { marks } from './symbols.ts';
import { textWidthMm } from './text-width.ts';
import { acrossWords, type SheetCount } from './title-block.ts';

/** A page with a drawing to scale and a strip beside it. */
export interface Sheet extends Page {
  readonly layout: SheetLayout;
}

/** Where an empty drawing has its sheet: a room of one metre. */
const emptyBox = { minX: 0, minY: 0, maxX: 1000, maxY: 1000 };

export function drawingBox({ box }: Drawing): Box {
  return box ?? emptyBox;
}

/** What of the names of a drawing stands on none of its sheets.
 *  @param lettered labels in the forms that they stand in */
export function namesLeft(
  { items }: Pick<Drawing, 'items'>,
  lettered: readonly { readonly item: LabelItem; readonly form: LabelForm }[],
): NamesLeft {
  const seated = new Set(lettered.map(({ item }) => item));
  const labels = items.filter((item): item is LabelItem => item.shape === 'label');
  const named = new Set(lettered.flatMap(({ form }) => roomsOf(form)));
  const rooms = new Set(labels.flatMap(({ forms }) => forms.flatMap(roomsOf)));
  const told = formsNamed(lettered.map(({ item, form }) => ({ label: item, form })));
  // a joint that its figure has named is not missed by its name
  const isTold = (label: LabelItem) => told.has(label.ref.id) && labelIsName(label);
  return {
    labels: labels.filter((item) => !seated.has(item) && !isTold(item)),
    rooms: [...rooms].filter((id) => !named.has(id)).length,
  };
}

function roomsOf(form: LabelForm): readonly string[] {
  return form.flatMap(({ rooms = [] }) => rooms);
}

/** A drawing in one piece in the middle of its frame, with its strip.
 *  @param left names that are known to have no room; those of this sheet where it is left out */
export function sheetInOne(
  drawing: Drawing,
  strip: SheetStrip,
  layout: SheetLayout,
  count: SheetCount = { page: 1, of: 1 },
  left?: NamesLeft,
): Sheet {
  const place = placeCentred(boxMiddle(drawingBox(drawing)), layout.drawing, layout.scale);
  const { paperPerPlan } = place;
  const last = labelsLed(drawing.items, { paperPerPlan, window: planBox(layout.drawing, place) });
  const placed = labelsPlace(drawing, { paperPerPlan, last });
  const lettered = new Map(placed.map((label) => [label.label, label]));
  const groups = drawingGroups(drawing, { place, lettered, across: acrossGroup(strip, layout.drawing) });
  const own = namesLeft(
    drawing,
    placed.map(({ label, form }) => ({ item: label, form })),
  );
  const inks = strip.inks(layout, left ?? own, count);
  return sheetWith(strip, layout, count, [
    ...groups,
    { ref: null, inks: [frameInk(layout.drawing), frameInk(layout.strip)] },
    { ref: null, inks },
  ]);
}

export function sheetWith(
  { block }: Pick<SheetStrip, 'block'>,
  layout: SheetLayout,
  count: SheetCount,
  groups: readonly PageGroup[],
): Sheet {
  const { paper, widthMm, heightMm, scale } = layout;
  const subject = count.of === 1 ? block.subject : `${block.subject}, sheet ${count.page} of ${count.of}`;
  return { layout, paper, widthMm, heightMm, scale, title: block.title, subject, part: block.subject, groups };
}

/** @param middle mm on the plan, that comes to lie in the middle of the box on paper */
export function placeCentred(middle: Point, { x, y, width, height }: PaperBox, scale: number): PaperPlace {
  const paperPerPlan = 1 / scale;
  return {
    paperPerPlan,
    offsetMm: [x + width / 2 - middle[0] * paperPerPlan, y + height / 2 - middle[1] * paperPerPlan],
  };
}

/** What of the plan a box on paper shows. */
function planBox({ x, y, width, height }: PaperBox, { paperPerPlan, offsetMm }: PaperPlace): Box {
  const [left, top] = [(x - offsetMm[0]) / paperPerPlan, (y - offsetMm[1]) / paperPerPlan];
  return { minX: left, minY: top, maxX: left + width / paperPerPlan, maxY: top + height / paperPerPlan };
}

export interface GroupOptions {
  readonly place: PaperPlace;
  readonly lettered: ReadonlyMap<LabelItem, PlacedLabel>;
  readonly across: PageGroup | null;
  /** Nothing is drawn beyond it, mm on paper. */
  readonly window?: Box;
}

/** Items in their order; what stands across the sheet lies on the tints of the bays and beneath all else. */
export function drawingGroups(drawing: Drawing, options: GroupOptions): readonly PageGroup[] {
  const { across } = options;
  const groups = (items: readonly DrawingItem[]) =>
    items
      .flatMap((item): PageGroup | readonly PageGroup[] => {
        const group = { ref: item.ref, inks: inksOf(item, options) };
        return item.shape === 'label' ? [{ ref: null, inks: leaderInks(item, options) }, group] : group;
      })
      .filter(({ inks }) => inks.length > 0);
  const isFloor = ({ layer }: DrawingItem) => layer === 'bays';
  return [
    ...groups(drawing.items.filter(isFloor)),
    ...(across === null ? [] : [across]),
    ...groups(drawing.items.filter((item) => !isFloor(item))),
  ];
}

function inksOf(item: DrawingItem, { place, lettered, window }: GroupOptions): readonly Ink[] {
  if (item.shape === 'label') {
    const label = lettered.get(item);
    return label === undefined ? [] : toLeader(label, labelInks(label, paperPoint(place, label.at)), place);
  }
  if (window === undefined) return itemInks(item, place);
  // a symbol is whole or not there: where its place lies on a sheet by itself there is room for all of it
  if (item.shape === 'mark') {
    const { left, right, up, down } = marks[item.style].reachMm;
    const reach = item.angleDeg === undefined ? 0 : Math.max(left, right, up, down);
    const [x, y] = paperPoint(place, item.at);
    const box = {
      minX: x - Math.max(left, reach),
      minY: y - Math.max(up, reach),
      maxX: x + Math.max(right, reach),
      maxY: y + Math.max(down, reach),
    };
    return boxHolds(window, box) ? itemInks(item, place) : [];
  }
  return inksWithin(itemInks(item, place), window);
}

/** The dot that a leader begins with, mm on paper. */
const dotMm = 0.4;

/** A text beside the end of its leader begins or ends there: as wide as it was reckoned with it is in few fonts. */
function toLeader(
  { leader, at, angleDeg, widthMm }: PlacedLabel,
  inks: readonly Ink[],
  { paperPerPlan }: PaperPlace,
): readonly Ink[] {
  if (leader === undefined) return inks;
  const turn = (angleDeg * Math.PI) / 180;
  const along: Point = [Math.cos(turn), Math.sin(turn)];
  const tipMm = ((leader.to[0] - at[0]) * along[0] + (leader.to[1] - at[1]) * along[1]) * paperPerPlan;
  // one that ends under or over its text stays in its middle
  if (Math.abs(tipMm) < widthMm / 2) return inks;
  const mm = (Math.sign(tipMm) * widthMm) / 2;
  return inks.map((ink) =>
    ink.ink === 'text'
      ? { ...ink, at: [ink.at[0] + along[0] * mm, ink.at[1] + along[1] * mm], anchor: tipMm < 0 ? 'start' : 'end' }
      : ink,
  );
}

function leaderInks(item: LabelItem, { place, lettered }: GroupOptions): readonly Ink[] {
  const leader = lettered.get(item)?.leader;
  if (leader === undefined) return [];
  const [centre, tip] = [paperPoint(place, leader.from), paperPoint(place, leader.to)];
  const dot: Ink = { ink: 'disc', centre, radiusMm: dotMm, fill: 'faint', stroke: null };
  return [...lineInks('extension', [centre, tip]), ...(leader.begins === 'line' ? [dot] : [])];
}

/** Heights of the letters across a sheet, the largest first. */
const acrossStyles = ['across-37', 'across-26', 'across-18', 'across-13', 'across-9', 'across-6'] as const;
const acrossClearMm = 8;

/** What a sheet that nobody answers for says from corner to corner. */
export function acrossGroup({ block }: Pick<SheetStrip, 'block'>, frame: PaperBox): PageGroup | null {
  const text = acrossWords(block);
  if (text === null) return null;
  const [width, height] = [frame.width - 2 * acrossClearMm, frame.height - 2 * acrossClearMm];
  const turn = Math.atan2(height, width);
  const fitsIn = (style: TextStyleName) => {
    const [long, high] = [textWidthMm(text, style), textStyles[style].capMm];
    return (
      long * Math.cos(turn) + high * Math.sin(turn) <= width && long * Math.sin(turn) + high * Math.cos(turn) <= height
    );
  };
  const style = acrossStyles.find(fitsIn) ?? 'across-6';
  const { colour } = textStyles[style];
  const at: Point = [frame.x + frame.width / 2, frame.y + frame.height / 2];
  const angleDeg = (-turn * 180) / Math.PI;
  return { ref: null, inks: [{ ink: 'text', text, style, colour, at, anchor: 'middle', angleDeg, halo: null }] };
}

export function frameInk({ x, y, width, height }: PaperBox): Ink {
  const lines: Point[][] = [
    [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
  ];
  return { ink: 'path', lines, closed: true, fill: null, stroke: penStroke(0.35, 'ink') };
}
