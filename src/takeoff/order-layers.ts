import { roundedText } from '../plan/figure-words.ts';
import { layersMakeUp } from '../plan/papers.ts';
import { planIsHeated, roomIsBare } from '../plan/plan.ts';
import type { TakeOffCell } from '../plan/take-off.ts';
import { bayRefs, byRoomFigure, edgeRefs, type OrderFloor } from './order-floor.ts';
import { cellsSum, figureWords, type OrderDraft, orderOfCount, packCount, shareWords } from './order-line.ts';

/** Screed by volume, which is ordered, and by weight. */
export function screedDrafts(of: OrderFloor): readonly OrderDraft[] {
  const { plan, analysis, ordering, floor } = of;
  const { screedM3, screedKg } = analysis.quantities;
  const { screedAllowance, loadM3 } = ordering;
  if (floor.length === 0) return [];
  const { thicknessMm, densityKgPerM3 } = plan.screed;
  const share = { words: shareWords(screedAllowance, 'lost, and where the slab is low'), times: 1 + screedAllowance };
  const refs = bayRefs(floor);
  const m3 = (cell: TakeOffCell) => ({ ...cell, amount: (cell.amount * thicknessMm) / 1000 });
  const kg = (cell: TakeOffCell) => ({ ...cell, amount: m3(cell).amount * densityKgPerM3 });
  return [
    {
      key: 'screed:volume',
      group: 'screed',
      item: 'Screed',
      spec: `${plan.screed.class}, ${roundedText(thicknessMm, 1)} mm`,
      unit: 'm\u00b3',
      net: screedM3,
      allowance: share.words,
      gross: screedM3 * share.times,
      order: orderOfCount(packCount(screedM3 * share.times, loadM3), 'loads', figureWords(loadM3, 'm\u00b3')),
      paid: { key: 'screedM3', per: 'm\u00b3', amount: screedM3 * share.times },
      cells: floor.map(m3),
      refs,
      notes: [
        `At its nominal thickness everywhere.${planIsHeated(plan) ? ' The volume that heating pipes displace is ignored.' : ''}`,
        ...(ordering.prices.screedM3 === undefined ? [] : ['Priced by volume, not by whole loads.']),
      ],
      sources: ['order-practice'],
    },
    {
      key: 'screed:weight',
      group: 'screed',
      item: 'Screed, by weight',
      spec: `${plan.screed.class}, ${roundedText(densityKgPerM3, 0)} kg/m\u00b3`,
      unit: 'kg',
      net: screedKg,
      allowance: share.words,
      gross: screedKg * share.times,
      order: null,
      cells: floor.map(kg),
      refs,
      notes: ['The same screed, laid and hardened: dry mix and water are by the maker\u2019s data sheet.'],
      sources: ['density', 'order-practice'],
    },
  ];
}

/** Insulation, a line for each layer of each thickness; in whole square metres where no pack is entered. */
export function insulationDrafts(of: OrderFloor): readonly OrderDraft[] {
  const { insulated, rooms } = of;
  const laid = insulated.filter(({ amount }) => amount > 0);
  return byRoomFigure(laid, rooms, ({ buildUp }) => buildUp?.insulationMm ?? null).flatMap(({ figure, things }) =>
    layersOf(figure, of).map((layer) => insulationDraft(of, layer, things)),
  );
}

interface Layer {
  readonly key: string;
  readonly spec: string;
  readonly notes: readonly string[];
}

/** The layers that are entered where they make up the insulation of the room, else one. */
function layersOf(totalMm: number | null, { ordering: { insulationLayersMm: layers } }: OrderFloor): readonly Layer[] {
  if (totalMm === null) return [{ key: 'unknown', spec: 'thickness not known: build-up not entered', notes: [] }];
  const total = roundedText(totalMm, 1);
  const one: Layer = { key: total, spec: `${total} mm`, notes: [] };
  if (layers.length > 0 && !layersMakeUp(layers, totalMm)) {
    const entered = layers.map((mm) => roundedText(mm, 1)).join(' + ');
    return [{ ...one, notes: [`The layers entered, ${entered} mm, are not ${total} mm: counted as one.`] }];
  }
  if (layers.length < 2) return [one];
  return layers.map((mm, i) => ({
    key: `${total}:${i + 1}`,
    spec: `${roundedText(mm, 1)} mm, layer ${i + 1} of ${layers.length} from the slab up`,
    notes: [],
  }));
}

function insulationDraft(
  { analysis, ordering }: OrderFloor,
  { key, spec, notes }: Layer,
  cells: readonly TakeOffCell[],
): OrderDraft {
  const { insulationAllowance, insulationPackM2: packM2 } = ordering;
  const net = cellsSum(cells);
  const gross = net * (1 + insulationAllowance);
  const count = packCount(gross, packM2 ?? 1);
  return {
    key: `insulation:${key}`,
    group: 'insulation',
    item: 'Insulation',
    spec,
    unit: 'm\u00b2',
    net,
    allowance: shareWords(insulationAllowance, 'cut to waste'),
    gross,
    order:
      packM2 === null
        ? orderOfCount(count, 'm\u00b2', '')
        : orderOfCount(count, 'packs', figureWords(packM2, 'm\u00b2')),
    paid: { key: 'insulationM2', per: 'm\u00b2', amount: count === null ? null : count * (packM2 ?? 1) },
    cells,
    refs: bayRefs(cells),
    notes: [
      ...notes,
      ...(analysis.quantities.slabContactM2 > 0 ? ['None where the floor lies on the bare slab.'] : []),
    ],
    sources: ['order-practice'],
  };
}

/** The membrane over the insulation. */
export function membraneDrafts({ analysis, ordering, insulated, rooms }: OrderFloor): readonly OrderDraft[] {
  const net = analysis.quantities.insulationM2;
  if (net === 0) return [];
  const { membraneLapMm: lapMm, membraneWidthM: widthM, membraneRollM2, membraneUpturnMm: upturnMm } = ordering;
  const edges = analysis.edges.filter(({ room }) => {
    const own = rooms.get(room);
    return own !== undefined && !roomIsBare(own);
  });
  const upturnM2 = (edges.reduce((sum, { lengthM }) => sum + lengthM, 0) * upturnMm) / 1000;
  const coverM = widthM - lapMm / 1000;
  // a lap as wide as the roll covers nothing
  const isLaid = coverM > 0;
  const gross = (isLaid ? (net * widthM) / coverM : net) + upturnM2;
  const rolls = isLaid ? packCount(gross, membraneRollM2) : null;
  return [
    {
      key: 'membrane',
      group: 'membrane',
      item: 'Membrane over the insulation',
      spec: `rolls ${figureWords(widthM, 'm')} wide`,
      unit: 'm\u00b2',
      net,
      allowance: `laps of ${figureWords(lapMm, 'mm')}; ${figureWords(upturnMm, 'mm')} turned up along edges`,
      gross,
      order: orderOfCount(rolls, 'rolls', figureWords(membraneRollM2, 'm\u00b2')),
      paid: { key: 'membraneM2', per: 'm\u00b2', amount: rolls === null ? null : rolls * membraneRollM2 },
      cells: insulated,
      refs: [...bayRefs(insulated), ...edgeRefs(edges)],
      notes: isLaid ? [] : ['Laps as wide as the roll cannot be laid: they are not counted.'],
      sources: ['membrane-lap', 'order-practice'],
    },
  ];
}
