import { orderingOf } from '../plan/papers.ts';
import { lineInks } from './ink.ts';
import type { PaperSource } from './paper-source.ts';
import { type FloorLayers, floorMm, layerDepth, layerTop, thicknessText } from './section-layers.ts';
import { part, type SectionCallout, type SectionPart } from './section-sketch.ts';
import { wholeMmText } from './tile-words.ts';
import { oneLine, textBefore } from './words.ts';

/** What all sections share: layers, membrane, words. */

/** What is shown of a floor beside what the section is of, and what of a wall or pipe above it. */
export const floorShownMm = 90;
export const wallShownMm = 20;
/** Rooms and joints that are named before the rest is counted. */
const mostNamed = 8;

/** Layers below the finished floor between two sides; the screed and what lies over it may stop short of them. */
export function layerParts(
  { topMm, layers }: FloorLayers,
  left: number,
  right: number,
  from: 'covering' | 'slab' = 'covering',
): readonly SectionPart[] {
  let top = topMm;
  return layers.flatMap((layer) => {
    const [above, below] = [top, top + layer.drawnMm];
    top = below;
    return from === 'covering' || layer.part === 'slab' ? [part(layer.fill, left, above, right, below)] : [];
  });
}

export function layerCallouts({ topMm, layers }: FloorLayers, xMm: number): readonly SectionCallout[] {
  let top = topMm;
  return layers.map(({ drawnMm, words }) => {
    const at = [xMm, top + drawnMm / 2] as const;
    top += drawnMm;
    return { at, words };
  });
}

export function layerTicks({ topMm, layers }: FloorLayers): readonly number[] {
  let top = topMm;
  const ticks = layers.map(({ drawnMm }) => {
    top += drawnMm;
    return top;
  });
  // the slab is cut off, not measured
  return [topMm, ...ticks.slice(0, -1)];
}

export function totalMm(floor: FloorLayers): number {
  return floor.topMm + floorMm(floor);
}

export function membrane(floor: FloorLayers, left: number, right: number, upturn?: number): readonly SectionPart[] {
  if (layerDepth(floor, 'insulation') === 0) return [];
  const y = layerTop(floor, 'insulation');
  return [
    {
      kind: 'inks',
      inks: (place) =>
        lineInks('membrane', [...(upturn === undefined ? [] : [place(left, upturn)]), place(left, y), place(right, y)]),
    },
  ];
}

export function membraneCallout({ file }: PaperSource, floor: FloorLayers, xMm: number): readonly SectionCallout[] {
  if (layerDepth(floor, 'insulation') === 0) return [];
  const lap = wholeMmText(orderingOf(file).membraneLapMm);
  return [{ at: [xMm, layerTop(floor, 'insulation')], words: `membrane, laps ${lap}, turned up at edges` }];
}

export function stripWords({ plan, file }: PaperSource): string {
  const trim = wholeMmText(orderingOf(file).stripTrimMm);
  return `edge strip ${thicknessText(plan.edgeStrip.thicknessMm)}, from the slab to ${trim} above the finished floor; trimmed only after the covering is grouted`;
}

export function coveringText(floor: FloorLayers): string {
  return floor.layers.find(({ part: each }) => each === 'covering')?.words ?? 'a floor without covering';
}

/** Example: "J1, J2 and 3 more" */
export function namesText(names: readonly string[]): string {
  const shown = names
    .slice(0, names.length > mostNamed + 1 ? mostNamed : mostNamed + 1)
    .map((name) => textBefore(oneLine(name)));
  const left = names.length - shown.length;
  return `${shown.join(', ')}${left > 0 ? ` and ${left} more` : ''}`;
}
