import { type Joint, type JointKind, jointKinds } from '../plan/analysis.ts';
import { jointIsSealed, sealantDepth } from '../takeoff/sealant.ts';
import type { PaperSource } from './paper-source.ts';
import { type FloorLayers, layerDepth, layerTop, thicknessText } from './section-layers.ts';
import {
  coveringText,
  floorShownMm,
  layerCallouts,
  layerParts,
  layerTicks,
  membrane,
  membraneCallout,
  namesText,
  totalMm,
  wallShownMm,
} from './section-parts.ts';
import { part, type Section, type SectionCallout } from './section-sketch.ts';
import { jointKindNames } from './words.ts';

/** How thick a leaf is drawn, and how far over the floor. */
const leafMm = 40;
const gapUnderLeafMm = 6;
/** Where in the depth of the screed the words of a profile begin: clear of those of the screed. */
const profileShare = 0.75;
/** How thick the cover of a structural joint is drawn. */
const structuralCoverMm = 6;

/** One for each make of joint that the plan has. */
export function jointSections(source: PaperSource, floors: readonly FloorLayers[]): readonly Section[] {
  return jointMakes(source, floors).map((make) =>
    make.kind === 'structural' ? structuralSection(source, make) : jointSection(source, make),
  );
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
        at: [right - stripMm / 2, layerTop(floor, 'screed') + layerDepth(floor, 'screed') * profileShare],
        words: 'all layers and the edge strip cut; pipes cross only by the engineer\u2019s detail',
      },
      ...layerCallouts(floor, width - 12),
    ],
    ticksMm: layerTicks(floor),
    spans: [{ side: 'below', fromMm: left, toMm: right, words: thicknessText(profileMm) }],
  };
}

function kindsText(joints: readonly Joint[]): string {
  const [first = '', ...others] = [...new Set(joints.map(({ kind }) => jointKindNames[kind]))];
  return [first, ...others.map((name) => name.toLowerCase())].join(', ');
}
