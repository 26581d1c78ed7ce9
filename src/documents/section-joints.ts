import { EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import { type Joint, type JointKind, jointKinds } from '../plan/analysis.ts';
import type { Room } from '../plan/plan.ts';
import { jointIsSealed, sealantDepth } from '../takeoff/sealant.ts';
import type { PaperSource } from './paper-source.ts';
import { type FloorLayers, layerDepth, layerTop, thicknessText } from './section-layers.ts';
import {
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
import { floorsLevelled, type JointFloors, sidesFinder, sidesText } from './section-sides.ts';
import { part, type Section, type SectionCallout, type SectionPart } from './section-sketch.ts';
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
  readonly floors: JointFloors;
  /** Rooms to the left and to the right of the joints. */
  readonly rooms: readonly [readonly Room[], readonly Room[]];
  readonly profileMm: number;
  readonly isSealed: boolean;
  readonly hasLeaf: boolean;
}

/** Joints that are made alike together. Kinds that differ only in why they stand there are made alike. */
function jointMakes(source: PaperSource, floors: readonly FloorLayers[]): readonly JointMake[] {
  const { plan, analysis } = source;
  const bays = new Map(analysis.bays.map((bay) => [bay.id, bay]));
  const rooms = new Map(plan.rooms.map((room) => [room.id, room]));
  const leaves = new Set(plan.doorways.filter(({ leaf }) => leaf).map(({ id }) => id));
  const sidesOf = sidesFinder(source, floors);
  const makes = new Map<string, JointMake>();
  for (const kind of jointKinds) {
    for (const joint of analysis.joints.filter((each) => each.kind === kind)) {
      const sides = sidesOf(joint);
      if (sides === null) continue;
      const { profileMm } = joint;
      const [left, right] = sides;
      const isSealed = jointIsSealed(joint, bays, rooms);
      const hasLeaf = kind === 'doorway' && joint.sources.some((id) => leaves.has(id));
      const make = kind === 'doorway' || kind === 'structural' ? kind : 'field';
      const key = [make, ...sides.map(({ floor }) => floors.indexOf(floor)), profileMm, isSealed, hasLeaf].join(' ');
      const own = { kind, floors: [left.floor, right.floor] as const, profileMm, isSealed, hasLeaf };
      const known = makes.get(key) ?? { ...own, joints: [], rooms: [[], []] };
      makes.set(key, {
        ...known,
        joints: [...known.joints, joint],
        rooms: [withRoom(known.rooms[0], left.room), withRoom(known.rooms[1], right.room)],
      });
    }
  }
  return [...makes.values()];
}

function withRoom(rooms: readonly Room[], room: Room): readonly Room[] {
  return rooms.includes(room) ? rooms : [...rooms, room];
}

function jointSection(source: PaperSource, make: JointMake): Section {
  const { profileMm, isSealed, hasLeaf } = make;
  const [left, right] = floorsLevelled(make.floors);
  const width = 2 * floorShownMm + profileMm;
  const middle = width / 2;
  const sealantMm = source.plan.sealant.widthMm;
  const either = (part: 'screed' | 'insulation') => [layerTop(left, part), layerTop(right, part)];
  // sealant up to the lower floor, the profile between both screeds
  const [surface, screed] = [Math.max(left.topMm, right.topMm), Math.min(...either('screed'))];
  const insulation = Math.max(...either('insulation'));
  const deepMm = Math.max(0, Math.min(sealantDepth(sealantMm), screed - surface));
  const profile = [middle - profileMm / 2, middle + profileMm / 2] as const;
  const hasSealant = isSealed && screed > surface;
  const place = { middle, surface, screed, deepMm, sealantMm, hasSealant };
  return {
    title: `${kindsText(make.joints)}${make.kind === 'doorway' ? (hasLeaf ? ', under the leaf' : ', no leaf') : ''}`,
    about: `${namesText(make.joints.map(({ id }) => id))}. ${sidesText(make.floors, make.rooms)}`,
    widthMm: width,
    aboveMm: hasLeaf ? gapUnderLeafMm + wallShownMm : 4,
    belowMm: totalMm(right),
    parts: [
      ...floorParts([left, right], [middle, middle], width),
      part('section-foam', profile[0], screed, profile[1], insulation),
      ...(hasSealant ? sealantParts(place) : []),
      ...(hasLeaf ? [leafPart(middle)] : []),
    ],
    callouts: [
      ...(hasLeaf ? [{ at: [middle, -gapUnderLeafMm - wallShownMm / 2] as const, words: 'door leaf, closed' }] : []),
      ...sealantCallouts(place, make),
      {
        at: [middle, screed + (insulation - screed) * profileShare],
        words: `joint profile ${thicknessText(profileMm)} wide, ${depthText(left, right)}down to the insulation; mesh cut`,
      },
      ...layerCallouts(right, width - 12),
      ...membraneCallout(source, right, width - 20),
    ],
    leftCallouts: leftCallouts(source, [left, right]),
    ticksMm: layerTicks(right),
    spans: [{ side: 'below', fromMm: profile[0], toMm: profile[1], words: thicknessText(profileMm) }],
  };
}

/** Floors up to a joint from both sides, on one slab. */
function floorParts(
  [left, right]: JointFloors,
  [from, to]: readonly [number, number],
  width: number,
): readonly SectionPart[] {
  const [one, other] = [layerParts(left, 0, from), layerParts(right, to, width)];
  return [
    ...(from === to ? partsJoined(one, other) : [...one, ...other]),
    ...(left === right && from === to
      ? membrane(left, 0, width)
      : [...membrane(left, 0, from), ...membrane(right, to, width)]),
  ];
}

/** Layers that go on beyond the joint, such as insulation and slab, in one. */
function partsJoined(left: readonly SectionPart[], right: readonly SectionPart[]): readonly SectionPart[] {
  const through = new Set<SectionPart>();
  const joined = left.map((one) => {
    const beyond = right.find((other) => partsMeet(one, other));
    if (one.kind !== 'fill' || beyond?.kind !== 'fill') return one;
    through.add(beyond);
    const [from, top, , bottom] = one.box;
    return part(one.style, from, top, beyond.box[2], bottom);
  });
  return [...joined, ...right.filter((other) => !through.has(other))];
}

function partsMeet(one: SectionPart, other: SectionPart): boolean {
  if (one.kind !== 'fill' || other.kind !== 'fill' || one.style !== other.style) return false;
  return [1, 3].every((i) => Math.abs((one.box[i] ?? 0) - (other.box[i] ?? 0)) < EQUAL_LENGTH_MM);
}

/** What of the left floor is not told of the right one. */
function leftCallouts(source: PaperSource, [left, right]: JointFloors): readonly SectionCallout[] {
  if (left === right) return [];
  const told = new Set(right.layers.map(({ words }) => words));
  const own = layerCallouts(left, leftAtMm).filter(({ words }) => !told.has(words));
  const isToldThere = membraneCallout(source, right, 0).length > 0;
  return [...own, ...(isToldThere ? [] : membraneCallout(source, left, leftAtMm + 8))];
}

/** Where the leaders to the left begin, from the left side of the section. */
const leftAtMm = 12;

function leafPart(middle: number): SectionPart {
  const [above, below] = [-gapUnderLeafMm - wallShownMm, -gapUnderLeafMm];
  return part('section-plain', middle - leafMm / 2, above, middle + leafMm / 2, below);
}

/** Depth of the profile, where it is known and the same on both sides. */
function depthText(left: FloorLayers, right: FloorLayers): string {
  const screed = right.layers.find(({ part: each }) => each === 'screed');
  const isLevel = Math.abs(layerTop(left, 'screed') - layerTop(right, 'screed')) < EQUAL_LENGTH_MM;
  return screed?.isEntered && isLevel ? `${thicknessText(screed.drawnMm)} deep, ` : 'full depth, ';
}

interface SealantPlace {
  readonly middle: number;
  /** The lower of the finished floors, and the higher of the screeds. */
  readonly surface: number;
  readonly screed: number;
  readonly deepMm: number;
  readonly sealantMm: number;
  readonly hasSealant: boolean;
}

function sealantParts({ middle, surface, screed, deepMm, sealantMm }: SealantPlace): readonly SectionPart[] {
  const [left, right] = [middle - sealantMm / 2, middle + sealantMm / 2];
  const foot = surface + deepMm;
  return [
    part('section-plain', left, surface, right, screed),
    ...(screed > foot ? [part('section-foam', left, foot, right, screed)] : []),
    part('section-solid', left, surface, right, foot),
  ];
}

function sealantCallouts(place: SealantPlace, make: JointMake): readonly SectionCallout[] {
  const { middle, surface, screed, deepMm, sealantMm, hasSealant } = place;
  if (!hasSealant) return [{ at: [middle, surface], words: unsealedText(make) }];
  const sealant = {
    at: [middle, surface + deepMm / 2] as const,
    words: `sealant ${thicknessText(sealantMm)} wide, ${thicknessText(deepMm)} deep, bonded on two sides only`,
  };
  const foot = surface + deepMm;
  return [
    sealant,
    screed > foot
      ? { at: [middle, (foot + screed) / 2], words: `backer ${thicknessText(sealantMm)} wide` }
      : { at: [middle, foot], words: 'release tape under the sealant' },
  ];
}

function unsealedText({ floors, isSealed }: JointMake): string {
  if (isSealed) return 'the covering ends at the joint: its edge and the sealant by its maker\u2019s detail';
  return floors.every(({ covering }) => covering === 'none')
    ? 'no covering: the joint stays as it is'
    : 'covering without sealant: over the joint by its maker\u2019s detail';
}

function structuralSection(source: PaperSource, { joints, floors, rooms, profileMm }: JointMake): Section {
  const [one, other] = floorsLevelled(floors);
  const width = 2 * floorShownMm + profileMm;
  const [left, right] = [floorShownMm, floorShownMm + profileMm];
  const top = Math.min(one.topMm, other.topMm);
  const slab = layerTop(other, 'slab');
  const stripMm = Math.min(source.plan.edgeStrip.thicknessMm, profileMm / 2);
  const below = totalMm(other);
  return {
    title: kindsText(joints),
    about: `${namesText(joints.map(({ id }) => id))}. ${sidesText(floors, rooms)} In the same place and never narrower than the joint of the slab.`,
    widthMm: width,
    aboveMm: 4,
    belowMm: below,
    parts: [
      ...floorParts([one, other], [left, right], width),
      part('section-plain', left, Math.max(one.topMm, other.topMm), right, below),
      part('section-foam', left, one.topMm, left + stripMm, slab),
      part('section-foam', right - stripMm, other.topMm, right, slab),
      part('section-solid', left - floorShownMm / 6, top, right + floorShownMm / 6, top + structuralCoverMm),
    ],
    callouts: [
      {
        at: [right, top + structuralCoverMm / 2],
        words: 'profile for movement in three directions, fixed as its maker says, over the gap',
      },
      {
        at: [right - stripMm / 2, layerTop(other, 'screed') + layerDepth(other, 'screed') * profileShare],
        words: 'all layers and the edge strip cut; pipes cross only by the engineer\u2019s detail',
      },
      ...layerCallouts(other, width - 12),
    ],
    leftCallouts: leftCallouts(source, [one, other]),
    ticksMm: layerTicks(other),
    spans: [{ side: 'below', fromMm: left, toMm: right, words: thicknessText(profileMm) }],
  };
}

function kindsText(joints: readonly Joint[]): string {
  const [first = '', ...others] = [...new Set(joints.map(({ kind }) => jointKindNames[kind]))];
  return [first, ...others.map((name) => name.toLowerCase())].join(', ');
}
