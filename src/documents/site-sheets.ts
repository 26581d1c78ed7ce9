import type { Point } from '../geometry/point.ts';
import { papersOf, pourOf, recordsOf } from '../plan/papers.ts';
import type { Drawing, DrawingItem } from './drawing.ts';
import { itemsInOrder } from './drawing-list.ts';
import { floorDrawing } from './floor-drawing.ts';
import type { PaperSource } from './paper-source.ts';
import { type PointCaution, pointCautionTexts } from './point-cautions.ts';
import { testPointItems } from './point-items.ts';
import { pourItems } from './pour-items.ts';
import { type PourLot, pourPlanOf } from './pour-plan.ts';
import { boxWith, placeIsDrawn } from './setting-out-sheet.ts';
import { type Sheets, sheetPages } from './sheet-pages.ts';
import { drawingAsIs, type SheetDrawing, type SheetStrip, stripOf } from './strip-flow.ts';
import { titleBlockOf } from './title-block.ts';
import { figureText } from './words.ts';

/** Sheets that the site works by, beside the joint plan: in which order bays are poured, and where dryness is tested. */

type Facts = readonly (readonly [head: string, text: string])[];

/** The plan day by day, with the joints at which work stops. */
export function pourPages(source: PaperSource): Sheets {
  const { items, box } = floorDrawing(source);
  const { access } = pourOf(source.file);
  const drawing: Drawing = {
    items: pourItems(source, { items, box }),
    box: boxWith(box, access === null ? [] : drawnPlaces(source, [access])),
  };
  const facts = [...cautionFacts(source, 'access'), ...pourPlanOf(source).lots.slice(0, mostDays).map(lotFact)];
  return sitePages(source, 'Pour plan', drawingAsIs(drawing), facts);
}

/** So many cautions stand beside the drawing; the form has more of them. */
const mostCautions = 3;

function cautionFacts(source: PaperSource, kind: PointCaution['kind']): Facts {
  const texts = pointCautionTexts(source, { kind, most: mostCautions });
  return texts.map((text) => ['Caution', text.replace(/\.$/u, '')]);
}

/** So many days stand beside the drawing; all of them are in the list. */
const mostDays = 20;

/** Example: "Day 2": "2027-03-02, 4 bays, 6.3 m3" */
function lotFact({ day, date, bays, netM3 }: PourLot): Facts[number] {
  const count = bays.length === 1 ? '1 bay' : `${bays.length} bays`;
  const volume = `${figureText(netM3, 1)}\u00a0m\u00b3 net`;
  return [`Day ${day}`, [...(date === null ? [] : [date]), count, volume].join(', ')];
}

/** Where dryness is tested; null where no point is marked. */
export function testPointPages(source: PaperSource): Sheets | null {
  const points = recordsOf(source.file).testPoints;
  if (points.length === 0) return null;
  const { items, box } = floorDrawing(source);
  const plain = items.filter(isOfFloor);
  const places = points.map(({ at: place }) => place);
  const held = boxWith(box, drawnPlaces(source, places));
  const at = (scale: number): Drawing => ({
    items: itemsInOrder([...plain, ...testPointItems(source, scale)]),
    box: held,
  });
  const facts: Facts = [
    ['Test points', String(points.length)],
    ...cautionFacts(source, 'test'),
    ['Released by', 'the test alone, never by a date'],
  ];
  return sitePages(source, 'Test points for dryness', { at, small: { items: plain, box: held } }, facts);
}

/** The marks beside the floor that are drawn. */
function drawnPlaces({ plan }: PaperSource, places: readonly Point[]): readonly Point[] {
  return places.filter((place) => placeIsDrawn(plan, place));
}

/** Floor, things in it and joints, with the names of the bays. */
function isOfFloor({ layer, shape, ref }: DrawingItem): boolean {
  if (layer === 'tiles' || layer === 'marks' || layer === 'findings') return false;
  return shape !== 'label' || ref.kind !== 'joint';
}

function sitePages(source: PaperSource, subject: string, drawing: SheetDrawing, facts: Facts): Sheets {
  return sheetPages(drawing, siteStrip(source, subject, drawing, facts), papersOf(source.file));
}

function siteStrip(source: PaperSource, subject: string, drawing: SheetDrawing, facts: Facts): SheetStrip {
  return stripOf({
    block: titleBlockOf(source, subject),
    facts,
    drawing,
    parts: [],
    mayLeave: [() => true],
    leftText: () => [],
    note: ({ labels: { length } }) =>
      length === 0 ? null : `Without room on the drawing: ${length} of the names. See the lists.`,
    noteLines: 2,
  });
}
