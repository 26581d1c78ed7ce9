import { orderingOf } from '../plan/papers.ts';
import { rules } from '../plan/reference.ts';
import { fillInks } from './ink.ts';
import type { PaperSource } from './paper-source.ts';
import { type FloorLayers, layerTop, thicknessText } from './section-layers.ts';
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
import { part, type Section, type SectionPlace } from './section-sketch.ts';
import { wholeMmText } from './tile-words.ts';

/** Edges of the floor, and pipes through it and in it. */

/** What is shown of a floor beside a pipe. */
const pipeFloorMm = 50;
/** How thick the wall of a sleeve is drawn. */
const sleeveWallMm = 4;

export function edgeSection(source: PaperSource, floor: FloorLayers): Section {
  const { edgeStrip } = source.plan;
  const wall = wallShownMm;
  const inner = wall + edgeStrip.thicknessMm;
  const width = inner + floorShownMm;
  const slab = layerTop(floor, 'slab');
  const skirting = [inner + 4, -wallShownMm * 1.5] as const;
  return {
    title: 'Edge at a wall, after the covering is grouted',
    about: 'The same at columns, stairs, door frames and what is built off the slab.',
    widthMm: width,
    aboveMm: 2 * wallShownMm,
    belowMm: totalMm(floor),
    parts: [
      ...layerParts(floor, inner, width),
      ...layerParts(floor, 0, width, 'slab'),
      part('wall-cut', 0, -2 * wallShownMm, wall, slab),
      part('section-foam', wall, 0, inner, slab),
      ...membrane(floor, inner, width, Math.max(layerTop(floor, 'screed'), 0)),
      part('section-plain', wall, skirting[1], skirting[0], -3),
    ],
    callouts: [
      { at: [skirting[0] - 6, -wallShownMm * 0.8], words: 'skirting, fixed to the wall alone, clear of the floor' },
      {
        at: [wall + edgeStrip.thicknessMm / 2, layerTop(floor, 'screed') / 2],
        words: `edge strip ${thicknessText(edgeStrip.thicknessMm)}, trimmed; neither adhesive nor grout bridges it`,
      },
      ...membraneCallout(source, floor, width - 20),
      ...layerCallouts(floor, width - 12),
    ],
    ticksMm: layerTicks(floor),
    spans: [{ side: 'below', fromMm: wall, toMm: inner, words: thicknessText(edgeStrip.thicknessMm) }],
  };
}

export function pipeSection(source: PaperSource, floor: FloorLayers): Section {
  const { pipes, edgeStrip } = source.plan;
  const diameters = [...new Set(pipes.map(({ diameterMm }) => diameterMm))].sort((a, b) => a - b);
  const diameterMm = diameters[0] ?? 0;
  const gap = edgeStrip.thicknessMm;
  const { stripTrimMm } = orderingOf(source.file);
  const middle = pipeFloorMm + gap + diameterMm / 2;
  const width = 2 * middle;
  const [left, right] = [middle - diameterMm / 2, middle + diameterMm / 2];
  const below = totalMm(floor);
  const slab = layerTop(floor, 'slab');
  const all = diameters.length === 1 ? '' : `, drawn ${thicknessText(diameterMm)}`;
  return {
    title: 'Pipe through the screed',
    about: `${pipes.length} in the plan, ${namesText(diameters.map(thicknessText))} across${all}.`,
    widthMm: width,
    aboveMm: stripTrimMm + wallShownMm,
    belowMm: below,
    parts: [
      ...layerParts(floor, 0, left - gap),
      ...layerParts(floor, right + gap, width),
      ...layerParts(floor, 0, width, 'slab'),
      ...membrane(floor, 0, left - gap),
      ...membrane(floor, right + gap, width),
      part('section-foam', left - gap, -stripTrimMm, left, slab),
      part('section-foam', right, -stripTrimMm, right + gap, slab),
      part('section-plain', left, -stripTrimMm - wallShownMm, right, below),
    ],
    callouts: [
      { at: [middle, -stripTrimMm - wallShownMm / 2], words: 'pipe, free of the floor' },
      {
        at: [right + gap / 2, -stripTrimMm / 2],
        words: `${stripWords(source)}, all round`,
      },
      ...layerCallouts(floor, width - 12),
    ],
    ticksMm: layerTicks(floor),
    spans: [{ side: 'below', fromMm: left, toMm: right, words: thicknessText(diameterMm) }],
  };
}

/** Along a heating pipe, across a joint. */
export function sleeveSection({ plan }: PaperSource, floor: FloorLayers): Section {
  const sleeveMm = rules.sleeveMm.value;
  const { widthMm } = plan.jointProfile;
  const pipeMm = plan.heating?.pipeOutsideMm ?? 0;
  const width = sleeveMm + 2 * floorShownMm;
  const middle = width / 2;
  const y = layerTop(floor, 'insulation') - pipeMm / 2 - sleeveWallMm;
  const aroundMm = pipeMm / 2 + sleeveWallMm;
  const [screed, insulation] = [layerTop(floor, 'screed'), layerTop(floor, 'insulation')];
  return {
    title: 'Sleeve on a heating pipe that crosses a joint',
    about: 'Supply and return of a circuit only; the circuit itself does not cross.',
    widthMm: width,
    aboveMm: 4,
    belowMm: totalMm(floor),
    parts: [
      ...layerParts(floor, 0, width),
      part('section-foam', middle - widthMm / 2, screed, middle + widthMm / 2, insulation),
      part('section-plain', middle - sleeveMm / 2, y - aroundMm, middle + sleeveMm / 2, y + aroundMm),
      { kind: 'inks', inks: (place) => pipeAlong(place, [0, y - pipeMm / 2, width, y + pipeMm / 2]) },
    ],
    callouts: [
      {
        at: [middle, (screed + y - aroundMm) / 2],
        words: `joint profile ${thicknessText(widthMm)} wide, cut out for the sleeve`,
      },
      {
        at: [middle + sleeveMm / 2 - 8, y - aroundMm + sleeveWallMm / 2],
        words: `sleeve ${wholeMmText(sleeveMm)} long at the least, in the middle of the joint`,
      },
      { at: [width - 14, y], words: `heating pipe ${thicknessText(pipeMm)}` },
      ...layerCallouts(floor, width - 12),
    ],
    ticksMm: [],
    spans: [
      { side: 'below', fromMm: middle - sleeveMm / 2, toMm: middle, words: wholeMmText(sleeveMm / 2) },
      { side: 'below', fromMm: middle, toMm: middle + sleeveMm / 2, words: wholeMmText(sleeveMm / 2) },
    ],
  };
}

function pipeAlong(place: SectionPlace, [left, top, right, bottom]: readonly [number, number, number, number]) {
  return fillInks(
    'section-plain',
    [place(left, top), place(right, top), place(right, bottom), place(left, bottom)],
    [],
  );
}
