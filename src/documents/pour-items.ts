import type { Bay } from '../plan/analysis.ts';
import { pourOf } from '../plan/papers.ts';
import type { Drawing, DrawingItem, LabelItem, LabelSeat, LineItem, MarkItem } from './drawing.ts';
import { itemsInOrder } from './drawing-list.ts';
import type { PaperSource } from './paper-source.ts';
import { type PourLot, pourPlanOf } from './pour-plan.ts';
import { placeIsDrawn } from './setting-out-sheet.ts';
import { type FillStyleName, tintCount } from './styles.ts';
import { bayTints } from './tint.ts';
import { areaText } from './words.ts';

/** The plan as it is laid, in painting order: floor, things and joints of a drawing, with the bays of a day in one tint, the day of each, and the joints at which work stops. What the
 *  drawing has to say of movement, tiles and findings is left out. */
export function pourItems(source: PaperSource, drawing: Drawing): readonly DrawingItem[] {
  const { lots } = pourPlanOf(source);
  const dams = new Set(lots.flatMap((lot) => lot.dams.map(({ joint }) => joint)));
  const tints = lotTints(source, lots);
  const kept = drawing.items.filter(isKept).map((item): DrawingItem => {
    const style = item.shape === 'fill' && item.layer === 'bays' ? tints.get(item.ref.id) : undefined;
    return style === undefined || item.shape !== 'fill' ? item : { ...item, style };
  });
  const stops = kept.flatMap((item): readonly LineItem[] =>
    item.shape === 'line' && item.layer === 'joints' && dams.has(item.ref.id)
      ? [{ ...item, style: 'dam', bareEnds: 'both' }]
      : [],
  );
  // the stops first: the line of the joint is seen on them
  return itemsInOrder([...stops, ...kept, ...accessMarks(source), ...lotLabels(lots, drawing)]);
}

/** Where it is entered: one that is taken for want of it stands in words only, as does one too far off. */
function accessMarks({ file, plan }: PaperSource): readonly MarkItem[] {
  const { access } = pourOf(file);
  if (access === null || !placeIsDrawn(plan, access)) return [];
  return [
    { shape: 'mark', layer: 'marks', style: 'access', at: access, text: null, ref: { kind: 'object', id: 'access' } },
  ];
}

/** For each bay the tint of its day; days that meet at a joint differ. */
function lotTints({ analysis }: PaperSource, lots: readonly PourLot[]): ReadonlyMap<string, FillStyleName> {
  const dayOf = new Map(lots.flatMap(({ day, bays }) => bays.map(({ id }) => [id, String(day)] as const)));
  const joints = analysis.joints.map(({ bays: [one, other] }) => ({
    bays: [dayOf.get(one) ?? one, dayOf.get(other) ?? other] as const,
  }));
  const tints = bayTints({ bays: lots.map(({ day }) => ({ id: String(day) })), joints }, tintCount);
  return new Map([...dayOf].map(([id, day]) => [id, `bay-${tints.get(day) ?? 0}` as FillStyleName]));
}

function isKept({ layer, shape, ref }: DrawingItem): boolean {
  if (layer === 'tiles' || layer === 'marks' || layer === 'findings') return false;
  return shape !== 'label' || (ref.kind !== 'bay' && ref.kind !== 'joint');
}

/** Where the drawing has the names of the bays. */
function lotLabels(lots: readonly PourLot[], { items }: Drawing): readonly LabelItem[] {
  const seats = new Map(
    items.flatMap((item) =>
      item.shape === 'label' && item.ref.kind === 'bay' ? [[item.ref.id, item.seat] as const] : [],
    ),
  );
  return lots.flatMap((lot) =>
    lot.bays.flatMap((bay) => {
      const seat = seats.get(bay.id);
      return seat === undefined ? [] : [dayLabel(bay, lot, seat)];
    }),
  );
}

/** Before the names of things: the day is what the plan is for. */
const dayPriority = 5e6;

function dayLabel(bay: Bay, { day, date }: PourLot, seat: LabelSeat): LabelItem {
  const name = { text: `Day ${day}`, style: 'bay-name' } as const;
  const short = { text: String(day), style: 'bay-name' } as const;
  const id = { text: bay.id, style: 'bay-figure' } as const;
  const figure = { text: `${bay.id}, ${areaText(bay.areaM2)}`, style: 'bay-figure' } as const;
  const on = date === null ? [] : [{ text: date, style: 'bay-figure' } as const];
  return {
    shape: 'label',
    layer: 'labels',
    ref: { kind: 'bay', id: bay.id },
    seat,
    forms: [[name, ...on, figure], [name, figure], [name, id], [name], [short]],
    priority: dayPriority + bay.areaM2,
  };
}
