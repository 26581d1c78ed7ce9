import type { Point } from '../geometry/point.ts';
import { type Box, boxMiddle } from '../geometry/ring.ts';
import type { Drawing, LabelItem } from './drawing.ts';
import { type Ink, itemInks, labelInks, type PaperPlace, paperPoint } from './ink.ts';
import { labelsPlace } from './label-place.ts';
import type { Page, PageGroup } from './page.ts';
import type { PaperBox, SheetLayout } from './sheet.ts';

/** A page with a drawing to scale and a strip beside it. */
export interface Sheet extends Page {
  readonly layout: SheetLayout;
}

/** What stands beside a drawing. */
export interface SheetStrip {
  readonly title: string;
  readonly subject: string;
  /** The paper that drawing and strip need. @param box round the drawing, mm on the plan */
  layout(box: Box): SheetLayout;
  /** @param unlettered labels that have found no room */
  inks(layout: SheetLayout, unlettered: readonly LabelItem[]): readonly Ink[];
}

/** Where an empty drawing has its sheet: a room of one metre. */
const emptyBox = { minX: 0, minY: 0, maxX: 1000, maxY: 1000 };

/** A drawing to scale on paper, with its strip. */
export function sheetOf(drawing: Drawing, strip: SheetStrip): Sheet {
  const box = drawing.box ?? emptyBox;
  const layout = strip.layout(box);
  const middle = boxMiddle(box);
  const paperPerPlan = 1 / layout.scale;
  const [cx, cy] = [layout.drawing.x + layout.drawing.width / 2, layout.drawing.y + layout.drawing.height / 2];
  const place: PaperPlace = {
    paperPerPlan,
    offsetMm: [cx - middle[0] * paperPerPlan, cy - middle[1] * paperPerPlan],
  };
  const placed = labelsPlace(drawing, { paperPerPlan });
  const lettered = new Map(placed.map((label) => [label.label, label]));
  const unlettered = drawing.items.filter((item) => item.shape === 'label').filter((label) => !lettered.has(label));
  const groups = drawing.items.map((item): PageGroup => {
    if (item.shape !== 'label') return { ref: item.ref, inks: itemInks(item, place) };
    const label = lettered.get(item);
    return {
      ref: item.ref,
      inks: label === undefined ? [] : labelInks(label, paperPoint(place, label.at)),
    };
  });
  const { paper, widthMm, heightMm, scale } = layout;
  return {
    layout,
    paper,
    widthMm,
    heightMm,
    scale,
    title: strip.title,
    subject: strip.subject,
    groups: [
      ...groups.filter(({ inks }) => inks.length > 0),
      { ref: null, inks: [frame(layout.drawing), frame(layout.strip)] },
      { ref: null, inks: strip.inks(layout, unlettered) },
    ],
  };
}

function frame({ x, y, width, height }: PaperBox): Ink {
  const lines: Point[][] = [
    [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
  ];
  return {
    ink: 'path',
    lines,
    closed: true,
    fill: null,
    stroke: { widthMm: 0.35, colour: 'ink', dashMm: [], cap: 'butt' },
  };
}
