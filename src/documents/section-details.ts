import { type Joint, type JointKind, jointKinds } from '../plan/analysis.ts';
import { orderingOf } from '../plan/papers.ts';
import { rules } from '../plan/reference.ts';
import { jointIsSealed, sealantDepth } from '../takeoff/sealant.ts';
import { circle } from './circle.ts';
import { fillInks, lineInks } from './ink.ts';
import type { PaperSource } from './paper-source.ts';
import { coveringNames, type FloorLayers, floorLayers, layerDepth, layerTop, thicknessText } from './section-layers.ts';
import { part, type Section, type SectionCallout, type SectionPart, type SectionPlace } from './section-sketch.ts';
import { wholeMmText } from './tile-words.ts';
import { jointKindNames, oneLine, textBefore } from './words.ts';

/** The sections of a plan: its floors, and how joints, edges and pipes are made in them. */

/** What is shown of a floor beside what the section is of, and what of a wall or pipe above it. */
const floorShownMm = 90;
const wallShownMm = 20;
/** Of the covering or screed, what lies above the floor: so much is shown of a leaf or a skirting. */
const leafMm = 40;
const gapUnderLeafMm = 6;
/** Where in the depth of the screed the words of a profile begin: clear of those of the screed. */
const profileShare = 0.75;
/** Rooms and joints that are named before the rest is counted. */
const mostNamed = 8;

/** Floors; then joints, edges and pipes as the plan has them; then sleeves. Those of a group are drawn to one scale. */
export function sectionGroups(source: PaperSource): readonly (readonly Section[])[] {
  const { plan, analysis } = source;
  const floors = floorLayers(source);
  const [main] = floors;
  if (main === undefined) return [];
  return [
    floors.map((floor) => floorSection(source, floor)),
    [
      ...jointSections(source, floors),
      edgeSection(source, main),
      ...(plan.pipes.length > 0 ? [pipeSection(source, main)] : []),
    ],
    plan.heating !== null && analysis.joints.length > 0 ? [sleeveSection(source, main)] : [],
  ];
}

/** Layers below the finished floor between two sides; the screed and what lies over it may stop short of them. */
function layerParts(
  { layers }: FloorLayers,
  left: number,
  right: number,
  from: 'covering' | 'slab' = 'covering',
): readonly SectionPart[] {
  let top = 0;
  return layers.flatMap((layer) => {
    const [above, below] = [top, top + layer.drawnMm];
    top = below;
    return from === 'covering' || layer.part === 'slab' ? [part(layer.fill, left, above, right, below)] : [];
  });
}

function layerCallouts({ layers }: FloorLayers, xMm: number): readonly SectionCallout[] {
  let top = 0;
  return layers.map(({ drawnMm, words }) => {
    const at = [xMm, top + drawnMm / 2] as const;
    top += drawnMm;
    return { at, words };
  });
}

function layerTicks({ layers }: FloorLayers): readonly number[] {
  let top = 0;
  const ticks = layers.map(({ drawnMm }) => {
    top += drawnMm;
    return top;
  });
  // the slab is cut off, not measured
  return [0, ...ticks.slice(0, -1)];
}

function totalMm({ layers }: FloorLayers): number {
  return layers.reduce((sum, { drawnMm }) => sum + drawnMm, 0);
}

function membrane(floor: FloorLayers, left: number, right: number, upturn?: number): readonly SectionPart[] {
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

function membraneCallout({ file }: PaperSource, floor: FloorLayers, xMm: number): readonly SectionCallout[] {
  if (layerDepth(floor, 'insulation') === 0) return [];
  const lap = wholeMmText(orderingOf(file).membraneLapMm);
  return [{ at: [xMm, layerTop(floor, 'insulation')], words: `membrane, laps ${lap}, turned up at edges` }];
}

function stripWords({ plan, file }: PaperSource): string {
  const trim = wholeMmText(orderingOf(file).stripTrimMm);
  return `edge strip ${thicknessText(plan.edgeStrip.thicknessMm)}, from the slab to ${trim} above the finished floor; trimmed only after the covering is grouted`;
}

function floorSection(source: PaperSource, floor: FloorLayers): Section {
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

interface JointMake {
  readonly joints: readonly Joint[];
  readonly kind: JointKind;
  readonly floor: FloorLayers;
  readonly profileMm: number;
  readonly isSealed: boolean;
  readonly hasLeaf: boolean;
}

/** Joints that are made alike together. Kinds that differ only in why they stand there are made alike. */
function jointMakes({ plan, analysis }: PaperSource, floors: readonly FloorLayers[]): readonly JointMake[] {
  const bays = new Map(analysis.bays.map((bay) => [bay.id, bay]));
  const rooms = new Map(plan.rooms.map((room) => [room.id, room]));
  const leaves = new Set(plan.doorways.filter(({ leaf }) => leaf).map(({ id }) => id));
  const floorOf = new Map(floors.flatMap((floor) => floor.rooms.map(({ id }) => [id, floor] as const)));
  const makes = new Map<string, JointMake>();
  for (const kind of jointKinds) {
    for (const joint of analysis.joints.filter((each) => each.kind === kind)) {
      const beside = joint.bays.flatMap((id) => bays.get(id)?.rooms ?? []).flatMap((id) => floorOf.get(id) ?? []);
      const isSealed = jointIsSealed(joint, bays, rooms);
      // sealant stands in the hard covering
      const floor =
        (isSealed && beside.find(({ covering }) => covering === 'stone-or-ceramic')) || beside[0] || floors[0];
      if (floor === undefined) continue;
      const hasLeaf = kind === 'doorway' && joint.sources.some((id) => leaves.has(id));
      const make = kind === 'doorway' || kind === 'structural' ? kind : 'field';
      const key = [make, floors.indexOf(floor), joint.profileMm, isSealed, hasLeaf].join(' ');
      const known = makes.get(key) ?? { joints: [], kind, floor, profileMm: joint.profileMm, isSealed, hasLeaf };
      makes.set(key, { ...known, joints: [...known.joints, joint] });
    }
  }
  return [...makes.values()];
}

function jointSections(source: PaperSource, floors: readonly FloorLayers[]): readonly Section[] {
  return jointMakes(source, floors).map((make) =>
    make.kind === 'structural' ? structuralSection(source, make) : jointSection(source, make),
  );
}

function jointSection(source: PaperSource, make: JointMake): Section {
  const { floor, profileMm, isSealed, hasLeaf } = make;
  const width = 2 * floorShownMm + profileMm;
  const middle = width / 2;
  const sealantMm = source.plan.sealant.widthMm;
  const [screed, insulation] = [layerTop(floor, 'screed'), layerTop(floor, 'insulation')];
  const deepMm = Math.min(sealantDepth(sealantMm), screed);
  const profile = [middle - profileMm / 2, middle + profileMm / 2] as const;
  const sealant = [middle - sealantMm / 2, middle + sealantMm / 2] as const;
  const hasSealant = isSealed && screed > 0;
  return {
    title: `${kindsText(make.joints)}${make.kind === 'doorway' ? (hasLeaf ? ', under the leaf' : ', no leaf') : ''}`,
    about: `${namesText(make.joints.map(({ id }) => id))}. In ${coveringText(floor)}.`,
    widthMm: width,
    aboveMm: hasLeaf ? gapUnderLeafMm + wallShownMm : 4,
    belowMm: totalMm(floor),
    parts: [
      ...layerParts(floor, 0, width),
      ...membrane(floor, 0, width),
      part('section-foam', profile[0], screed, profile[1], insulation),
      ...(hasSealant
        ? [
            part('section-plain', sealant[0], 0, sealant[1], screed),
            ...(screed - deepMm > 0 ? [part('section-foam', sealant[0], deepMm, sealant[1], screed)] : []),
            part('section-solid', sealant[0], 0, sealant[1], deepMm),
          ]
        : []),
      ...(hasLeaf
        ? [
            part(
              'section-plain',
              middle - leafMm / 2,
              -gapUnderLeafMm - wallShownMm,
              middle + leafMm / 2,
              -gapUnderLeafMm,
            ),
          ]
        : []),
    ],
    callouts: [
      ...(hasLeaf ? [{ at: [middle, -gapUnderLeafMm - wallShownMm / 2] as const, words: 'door leaf, closed' }] : []),
      ...sealantCallouts({ middle, screed, deepMm, sealantMm, hasSealant, floor }),
      {
        at: [middle, screed + (insulation - screed) * profileShare],
        words: `joint profile ${thicknessText(profileMm)} wide, ${depthText(floor)}down to the insulation; mesh cut`,
      },
      ...layerCallouts(floor, width - 12),
      ...membraneCallout(source, floor, width - 20),
    ],
    ticksMm: layerTicks(floor),
    spans: [{ side: 'below', fromMm: profile[0], toMm: profile[1], words: thicknessText(profileMm) }],
  };
}

/** Depth of the profile, where it is known. */
function depthText(floor: FloorLayers): string {
  const screed = floor.layers.find(({ part: each }) => each === 'screed');
  return screed?.isEntered ? `${thicknessText(screed.drawnMm)} deep, ` : 'full depth, ';
}

interface SealantPlace {
  readonly middle: number;
  readonly screed: number;
  readonly deepMm: number;
  readonly sealantMm: number;
  readonly hasSealant: boolean;
  readonly floor: FloorLayers;
}

function sealantCallouts({
  middle,
  screed,
  deepMm,
  sealantMm,
  hasSealant,
  floor,
}: SealantPlace): readonly SectionCallout[] {
  if (!hasSealant) {
    const words =
      floor.covering === 'none'
        ? 'no covering: the joint stays as it is'
        : 'covering without sealant: over the joint by its maker\u2019s detail';
    return [{ at: [middle, 0], words }];
  }
  const sealant = {
    at: [middle, deepMm / 2] as const,
    words: `sealant ${thicknessText(sealantMm)} wide, ${thicknessText(deepMm)} deep, bonded on two sides only`,
  };
  const isBacked = screed - deepMm > 0;
  return [
    sealant,
    isBacked
      ? { at: [middle, (deepMm + screed) / 2], words: `backer ${thicknessText(sealantMm)} wide` }
      : { at: [middle, deepMm], words: 'release tape under the sealant' },
  ];
}

function structuralSection(source: PaperSource, { joints, floor, profileMm }: JointMake): Section {
  const width = 2 * floorShownMm + profileMm;
  const [left, right] = [floorShownMm, floorShownMm + profileMm];
  const slab = layerTop(floor, 'slab');
  const stripMm = Math.min(source.plan.edgeStrip.thicknessMm, profileMm / 2);
  const below = totalMm(floor);
  return {
    title: kindsText(joints),
    about: `${namesText(joints.map(({ id }) => id))}. In the same place and never narrower than the joint of the slab.`,
    widthMm: width,
    aboveMm: 4,
    belowMm: below,
    parts: [
      ...layerParts(floor, 0, left),
      ...layerParts(floor, right, width),
      ...membrane(floor, 0, left),
      ...membrane(floor, right, width),
      part('section-plain', left, 0, right, below),
      part('section-foam', left, 0, left + stripMm, slab),
      part('section-foam', right - stripMm, 0, right, slab),
      part('section-solid', left - floorShownMm / 6, 0, right + floorShownMm / 6, structuralCoverMm),
    ],
    callouts: [
      {
        at: [right, structuralCoverMm / 2],
        words: 'profile for movement in three directions, fixed as its maker says, over the gap',
      },
      {
        at: [right - stripMm / 2, layerTop(floor, 'screed') + layerDepth(floor, 'screed') / 2],
        words: 'all layers and the edge strip cut; pipes cross only by the engineer\u2019s detail',
      },
      ...layerCallouts(floor, width - 12),
    ],
    ticksMm: layerTicks(floor),
    spans: [{ side: 'below', fromMm: left, toMm: right, words: thicknessText(profileMm) }],
  };
}

/** How thick the cover of a structural joint is drawn. */
const structuralCoverMm = 6;

function edgeSection(source: PaperSource, floor: FloorLayers): Section {
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

function pipeSection(source: PaperSource, floor: FloorLayers): Section {
  const { pipes, edgeStrip } = source.plan;
  const diameters = [...new Set(pipes.map(({ diameterMm }) => diameterMm))].sort((a, b) => a - b);
  const diameterMm = diameters[0] ?? 0;
  const gap = edgeStrip.thicknessMm;
  const { stripTrimMm } = orderingOf(source.file);
  const middle = floorShownMm + gap + diameterMm / 2;
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
function sleeveSection({ plan }: PaperSource, floor: FloorLayers): Section {
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

/** How thick the wall of a sleeve is drawn. */
const sleeveWallMm = 4;

function pipeAlong(place: SectionPlace, [left, top, right, bottom]: readonly [number, number, number, number]) {
  return fillInks(
    'section-plain',
    [place(left, top), place(right, top), place(right, bottom), place(left, bottom)],
    [],
  );
}

function coveringText(floor: FloorLayers): string {
  return floor.layers.find(({ part: each }) => each === 'covering')?.words ?? 'a floor without covering';
}

function kindsText(joints: readonly Joint[]): string {
  const [first = '', ...others] = [...new Set(joints.map(({ kind }) => jointKindNames[kind]))];
  return [first, ...others.map((name) => name.toLowerCase())].join(', ');
}

/** Example: "J1, J2 and 3 more" */
function namesText(names: readonly string[]): string {
  const shown = names
    .slice(0, names.length > mostNamed + 1 ? mostNamed : mostNamed + 1)
    .map((name) => textBefore(oneLine(name)));
  const left = names.length - shown.length;
  return `${shown.join(', ')}${left > 0 ? ` and ${left} more` : ''}`;
}
