import { orderingOf } from '../plan/papers.ts';
import { circle } from './circle.ts';
import { fillInks } from './ink.ts';
import type { PaperSource } from './paper-source.ts';
import { coveringNames, type FloorLayers, layerDepth, layerTop, thicknessText } from './section-layers.ts';
import {
  floorShownMm,
  layerCallouts,
  layerParts,
  layerTicks,
  membrane,
  membraneCallout,
  namesText,
  stripWords,
  totalMm,
  wallShownMm,
} from './section-parts.ts';
import { part, type Section, type SectionCallout, type SectionPart } from './section-sketch.ts';
import { wholeMmText } from './tile-words.ts';

/** A floor at a wall, with its pipes where it has any. */
export function floorSection(source: PaperSource, floor: FloorLayers): Section {
  const { plan, file } = source;
  const { heating, edgeStrip } = plan;
  const { stripTrimMm } = orderingOf(file);
  const isPiped = floor.heated && heating !== null;
  const spacing = heating?.pipeSpacingMm ?? 0;
  const wall = wallShownMm;
  const inner = wall + edgeStrip.thicknessMm;
  const firstPipe = inner + floorShownMm / 2;
  const width = isPiped ? firstPipe + spacing + floorShownMm / 2 : inner + 2 * floorShownMm;
  const slab = layerTop(floor, 'slab');
  const pipes = isPiped ? [firstPipe, firstPipe + spacing] : [];
  const pipeY = layerTop(floor, 'insulation') - (heating?.pipeOutsideMm ?? 0) / 2;
  return {
    title: `Build-up, ${coveringNames[floor.covering]}, ${floor.heated ? 'heated' : 'not heated'}`,
    about: aboutFloor(floor),
    widthMm: width,
    aboveMm: stripTrimMm + wallShownMm,
    belowMm: totalMm(floor),
    parts: [
      ...layerParts(floor, inner, width),
      ...layerParts(floor, 0, width, 'slab'),
      part('wall-cut', 0, -stripTrimMm - wallShownMm, wall, slab),
      part('section-foam', wall, -stripTrimMm, inner, slab),
      ...membrane(floor, inner, width, Math.max(layerTop(floor, 'screed'), 0)),
      ...pipes.map((x) => pipePart(x, pipeY, heating?.pipeOutsideMm ?? 0)),
    ],
    callouts: [
      { at: [wall + edgeStrip.thicknessMm / 2, -stripTrimMm / 2], words: stripWords(source) },
      ...layerCallouts(floor, width - 12),
      ...membraneCallout(source, floor, width - 20),
      ...(floor.heated ? [pipeCallout(plan, firstPipe + spacing, pipeY)] : []),
    ],
    ticksMm: layerTicks(floor),
    spans: isPiped
      ? [{ side: 'below', fromMm: firstPipe, toMm: firstPipe + spacing, words: wholeMmText(spacing) }]
      : [],
  };
}

function pipeCallout({ heating }: PaperSource['plan'], xMm: number, yMm: number): SectionCallout {
  const words =
    heating === null
      ? 'heating pipes: not entered'
      : `heating pipes ${thicknessText(heating.pipeOutsideMm)}, ${wholeMmText(heating.pipeSpacingMm)} apart`;
  return { at: [xMm, yMm], words };
}

function aboutFloor(floor: FloorLayers): string {
  const entered = floor.layers.filter(({ part: each }) => each !== 'slab');
  const isKnown = entered.every(({ isEntered }) => isEntered);
  const all = isKnown
    ? `${thicknessText(layerTop(floor, 'slab'))} from slab to finished floor`
    : 'height in all not known';
  const bare = layerDepth(floor, 'insulation') === 0 ? ', no insulation: the screed is held to the slab' : '';
  const rooms = namesText(floor.rooms.map(({ name }) => name));
  return `${rooms}: ${all}${bare}.`;
}

function pipePart(x: number, y: number, diameterMm: number): SectionPart {
  return {
    kind: 'inks',
    inks: (place) => {
      const [at, side] = [place(x, y), place(x + diameterMm / 2, y)];
      return fillInks('pipe', circle(at, side[0] - at[0]), []);
    },
  };
}
