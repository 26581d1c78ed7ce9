import type { Drawing, DrawingItem, FillItem, LineItem, MarkItem } from './drawing.ts';
import { groutShown } from './ink.ts';
import type { FillStyleName, LineStyleName, MarkStyleName } from './styles.ts';
import { markShown } from './symbols.ts';
import { jointKindNames } from './words.ts';

/** One row of the legend: a sample and its words. */
export type LegendRow = { readonly words: string } & (
  | Pick<LineItem, 'shape' | 'style'>
  | Pick<FillItem, 'shape' | 'style'>
  | Pick<MarkItem, 'shape' | 'style'>
);

type Styles<Name extends string> = readonly (readonly [style: Name, words: string])[];

const lines: Styles<LineStyleName> = [
  ['edge-wall', 'Floor edge, edge strip'],
  ['edge-object', 'Edge strip round an object'],
  ['joint-doorway', jointKindNames.doorway],
  ['joint-neck', jointKindNames.neck],
  ['joint-field', jointKindNames.field],
  ['joint-structural', jointKindNames.structural],
  ['joint-zone', jointKindNames.zone],
  ['joint-drawn', jointKindNames.drawn],
  ['structural-course', 'Structural joint of the building'],
  ['drawn-course', 'Drawn by hand'],
  ['no-joint', 'Joint taken away'],
  ['revision-moved', 'Joint that moved'],
  ['revision-new', 'New joint'],
  ['revision-gone', 'Joint, where it was'],
  ['revision-left', 'Wall or thing, where it was'],
  ['leaf', 'Door leaf, closed'],
  ['dam', 'Stop of work at a joint'],
  ['room-outline', 'Room without a bay'],
  ['grout', 'Grout lines of the tiles'],
  ['first-tile', 'First whole tile'],
  ['reference', 'Reference line'],
  ['running', 'Running dimension, mm from its 0'],
  ['extension', 'From a joint to its figure'],
  ['grid-line', 'Grid line of the building'],
  ['dimension', 'Distance, square to the wall'],
  ['check', 'Check that the lines are square'],
  ['cut-under-half', 'Tiles cut to under half'],
  ['cut-sliver', 'Slivers: cut to under a third'],
];

const fills: Styles<FillStyleName> = [
  ['column', 'Column'],
  ['pipe', 'Pipe through the screed'],
  ['joinery-insulated', 'Joinery on the floor'],
  ['joinery-built-off', 'Built off the slab'],
  ['held', 'Held to the slab (no insulation)'],
  ['sun', 'Sun on the floor'],
  ['keep-clear', 'Keep clear of joints'],
];

const symbols: Styles<MarkStyleName> = [
  ['fixed-through', 'Fixed through to the slab'],
  ['still-point', 'Still point of a bay'],
  ['set-out', 'Set-out point and way of the courses'],
  ['base-point', 'Base point, marked on site'],
  ['running-origin', 'Origin of running dimensions'],
  ['test-point', 'Dryness is tested here'],
  ['access', 'Access: screed is brought in'],
  ['pin-fault', 'Fault, with its number'],
  ['pin-caution', 'Caution, with its number'],
  ['pin-note', 'Note, with its number'],
];

/** Rows for what the drawing shows and for nothing else. Strokes are explained as lines.
 *  @param paperPerPlan of a sheet; the board shows at one zoom what it leaves out at another */
export function legendOf(drawing: Drawing, paperPerPlan = Infinity): readonly LegendRow[] {
  const used = new Set(drawing.items.map((item) => usedStyle(item, paperPerPlan)));
  const rows: readonly LegendRow[] = [
    ...lines.map(([style, words]) => ({ shape: 'line' as const, style, words })),
    ...fills.map(([style, words]) => ({ shape: 'fill' as const, style, words })),
    ...symbols.map(([style, words]) => ({ shape: 'mark' as const, style, words })),
  ];
  // x and y from an origin are drawn alike: a running dimension is known by its ticks
  const isTold = (style: string) => style !== 'running' || used.has('mark running-tick');
  return rows.filter(({ shape, style }) => used.has(`${shape} ${style}`) && isTold(style));
}

function usedStyle(item: DrawingItem, paperPerPlan: number): string {
  if (item.shape === 'label' || (item.shape === 'mark' && !markShown(item, paperPerPlan))) return '';
  if (item.shape !== 'ruled') return `${item.shape} ${item.style}`;
  return item.grout === undefined || groutShown(item.grout.leastMm, paperPerPlan) ? `line ${item.style}` : '';
}
