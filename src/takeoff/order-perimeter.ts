import type { Edge } from '../plan/analysis.ts';
import { roundedText } from '../plan/figure-words.ts';
import type { TakeOffCell } from '../plan/take-off.ts';
import { edgeRefs, type OrderFloor } from './order-floor.ts';
import { figureWords, type OrderDraft, orderOfCount, packCount, shareWords } from './order-line.ts';
import { edgeParts } from './order-strip.ts';
import { sealantDeepNotes, sealantDepth, sealantLitres } from './sealant.ts';

/** The joint that a covering of stone or ceramic leaves free along walls and round things, as wide as the edge strip below it: its length, and the sealant
 *  that it is filled with. Whether it is filled, or left open behind a skirting, the plan does not know: the share that is can be entered. */
export function perimeterDrafts({ plan, analysis, ordering, rooms }: OrderFloor): readonly OrderDraft[] {
  const { perimeterShare, sealantAllowance, cartridgeMl } = ordering;
  const edges = analysis.edges.filter(({ room }) => rooms.get(room)?.covering === 'stone-or-ceramic');
  if (edges.length === 0 || perimeterShare === 0) return [];
  const widthMm = plan.edgeStrip.thicknessMm;
  const spec = `${figureWords(widthMm, 'mm')} wide, ${figureWords(sealantDepth(widthMm), 'mm')} deep`;
  const litresPerM = sealantLitres(1, widthMm);
  const netM = perimeterShare * edges.reduce((sum, { lengthM }) => sum + lengthM, 0);
  const litres = netM * litresPerM;
  const gross = litres * (1 + sealantAllowance);
  const cartridges = packCount(gross * 1000, cartridgeMl);
  const [key, refs, sources] = [roundedText(widthMm, 1), edgeRefs(edges), ['perimeter-joint', 'sealant-depth']];
  return [
    {
      key: `perimeter:${key}`,
      group: 'perimeter',
      item: 'Perimeter joint of the covering',
      spec,
      unit: 'm',
      net: netM,
      parts: edgeParts(edges).map(({ name, amount }) => ({ name, amount: perimeterShare * amount })),
      allowance: 'none',
      gross: netM,
      order: null,
      cells: cellsOf(edges, perimeterShare),
      refs,
      notes: [
        'Along stone and ceramic, as wide as the edge strip, which lies below it.',
        perimeterShare === 1
          ? 'Assumed to be filled all round: enter the share where a skirting covers it.'
          : `${roundedText(100 * perimeterShare, 1)} % of its length is filled, as entered.`,
      ],
      sources,
    },
    {
      key: `perimeter-sealant:${key}`,
      group: 'perimeter',
      item: 'Sealant, perimeter joint of the covering',
      spec,
      unit: 'l',
      net: litres,
      allowance: shareWords(sealantAllowance, 'left in tubes and tools'),
      gross,
      order: orderOfCount(cartridges, 'cartridges', figureWords(cartridgeMl, 'ml')),
      paid: { key: 'sealantCartridge', per: 'cartridge', amount: cartridges },
      cells: cellsOf(edges, perimeterShare * litresPerM),
      refs,
      notes: sealantDeepNotes(netM, widthMm),
      sources: [...sources, 'order-practice'],
    },
  ];
}

function cellsOf(edges: readonly Edge[], perM: number): readonly TakeOffCell[] {
  return edges.map(({ bay, room, lengthM }) => ({ bay, room, amount: lengthM * perM }));
}
