import type { Analysis } from '../plan/analysis.ts';
import { currencyShown, type Ordering, type Papers } from '../plan/papers.ts';
import type { Plan } from '../plan/plan.ts';
import type { TakeOff, TakeOffCost } from '../plan/take-off.ts';
import { figureShown } from './figures-rounded.ts';
import { orderFloor } from './order-floor.ts';
import { profileDrafts, sealantDrafts, sleeveDrafts } from './order-joints.ts';
import { insulationDrafts, membraneDrafts, screedDrafts } from './order-layers.ts';
import { costDecimals, type OrderDraft, orderLine } from './order-line.ts';
import { perimeterDrafts } from './order-perimeter.ts';
import { stripDrafts } from './order-strip.ts';
import { tileDrafts } from './order-tiles.ts';

/** What is to be ordered for a floor: net, allowance, and packs.
 *
 *  Accepts: a plan and its analysis, how things are ordered, and what is entered of joints. Guarantees: nets are those of the analysis' quantities; as
 *  shown, rooms and bays add up to each line.
 *
 *  Steps: 1. each group measures its lines, by bay and room, and counts its packs (order-strip, order-joints, order-perimeter, order-layers, order-tiles); 2. figures
 *  are rounded so that they add up, and priced (order-line); 3. costs are summed. */
export function orderOf(
  plan: Plan,
  analysis: Pick<Analysis, 'bays' | 'joints' | 'edges' | 'tiles' | 'quantities'>,
  ordering: Ordering,
  papers: Pick<Papers, 'joints'>,
): TakeOff {
  const of = orderFloor(plan, analysis, ordering);
  const drafts = [
    ...stripDrafts(of),
    ...profileDrafts(of),
    ...sealantDrafts(of),
    ...perimeterDrafts(of),
    ...sleeveDrafts(of, papers),
    ...screedDrafts(of),
    ...insulationDrafts(of),
    ...membraneDrafts(of),
    ...tileDrafts(of),
  ];
  const lines = drafts.map((draft) => orderLine(draft, ordering));
  return { lines, currency: currencyShown(ordering.currency), cost: costOf(drafts, ordering, lines) };
}

function costOf(drafts: readonly OrderDraft[], { prices }: Ordering, lines: TakeOff['lines']): TakeOffCost | null {
  if (Object.keys(prices).length === 0) return null;
  const total = lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0);
  const unpriced = drafts.filter(({ paid }, i) => paid !== undefined && lines[i]?.cost === null);
  return { total: figureShown(total, costDecimals), unpriced: unpriced.map(({ key }) => key) };
}
