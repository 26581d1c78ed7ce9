import { lineMiddle } from '../geometry/line.ts';
import type { Point } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { Analysis, Joint, WallCut } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import { groutText, tilesAtText } from './grout-words.ts';
import { perSource } from './paper-source.ts';
import { type JointDistance, jointDistances } from './set-out-joints.ts';
import { block, opening, type TextBlock } from './set-out-text.ts';
import { wallFaces } from './set-out-walls.ts';
import { cutSizesText, wholeMmText } from './tile-words.ts';
import { figureText, type Names, namesOf, textBefore } from './words.ts';

/** Joints with what is said of each; those of one run that say the same stand together. */
export function jointBlocks(
  plan: Plan,
  analysis: Analysis,
  distances: ReadonlyMap<string, readonly JointDistance[]>,
): readonly TextBlock[] {
  const names = namesOf(plan, analysis);
  const jambs = jambCuts(analysis);
  const rooms = bayRooms(analysis);
  const groups = new Map<
    string,
    { readonly joints: Joint[]; readonly name: string; readonly place: string; readonly back: string | null }
  >();
  for (const joint of analysis.joints) {
    const name = names.joint(joint);
    const place = placeText(joint, distances.get(joint.id) ?? [], rooms, names);
    const back = tilesBackText(joint, plan, analysis);
    const key = [joint.run, joint.kind, name, place, groutText(joint), joint.tilesAt, back].join('\n');
    const group = groups.get(key) ?? { joints: [], name, place, back };
    groups.set(key, group);
    group.joints.push(joint);
  }
  const blocks = [...groups.values()].map(({ joints, name, place, back }) =>
    block(
      `${joints.map(({ id }) => id).join(', ')} ${name}`,
      [[place, tileText(joints, back, jambs)].filter(isText).join('; ')],
      { what: 'joint', count: joints.length },
    ),
  );
  const head = opening('Joints', [
    'From the walls on both sides, square to the joint at its middle; in a doorway from the faces of its own wall, in the order of its rooms, and the cuts at its jambs.',
    'Off by: from the nearest grout line that runs its way.',
    jointLineText(plan),
  ]);
  return blocks.length === 0 ? [] : [head, ...blocks];
}

/** What is left open in the tiling over each joint. */
function jointLineText({ sealant: { widthMm } }: Plan): string {
  return `Each is left open in the tiling, straight and right over the joint in the screed, for ${figureText(widthMm, 1)}\u00a0mm of sealant: ${figureText(widthMm / 2, 1)}\u00a0mm come off the cuts on each side, on a grout line what is told there. A joint of the building takes its own profile.`;
}

/** What comes off the tiles on each side of a joint that lies on a grout line narrower than its sealant; null where nothing does.
 *  Example: sealant of 8 mm, grout of 3 -> "2.5 mm come off the tiles on both sides" */
function tilesBackText(joint: Joint, { sealant, rooms }: Plan, { bays, tiles }: Analysis): string | null {
  if (joint.tilesAt !== 'on-line' || joint.kind === 'structural') return null;
  const beside = new Set(bays.flatMap((bay) => (joint.bays.includes(bay.id) ? bay.rooms : [])));
  const own = (tiles?.fields ?? []).filter((each) => each.rooms.some((room) => beside.has(room)));
  const middle = lineMiddle(joint.line);
  const here = rooms.filter((room) => regionContains(room, middle)).map(({ id }) => id);
  const field = own.find((each) => here.some((id) => each.rooms.includes(id))) ?? own[0];
  const backMm = field === undefined ? 0 : (sealant.widthMm - field.groutMm) / 2;
  return backMm <= 0 ? null : `${figureText(backMm, 1)}\u00a0mm come off the tiles on both sides`;
}

/** Where each joint lies, by its id: what tables say of it. */
export function jointPlaces(plan: Plan, analysis: Analysis): ReadonlyMap<string, string> {
  return placesOf(plan)(analysis);
}

const placesOf = perSource((plan: Plan) =>
  perSource((analysis: Analysis): ReadonlyMap<string, string> => {
    const names = namesOf(plan, analysis);
    const distances = jointDistances(plan, analysis, wallFaces(analysis));
    const rooms = bayRooms(analysis);
    return new Map(
      analysis.joints.map((joint) => [joint.id, placeText(joint, distances.get(joint.id) ?? [], rooms, names)]),
    );
  }),
);

type BayRooms = ReadonlyMap<string, readonly string[]>;

function bayRooms({ bays }: Pick<Analysis, 'bays'>): BayRooms {
  return new Map(bays.map(({ id, rooms }) => [id, rooms]));
}

function isText(text: string): boolean {
  return text !== '';
}

/** Example: "upper wall 6600 mm, lower wall 4800 mm"; of a doorway "faces 60 and 140 mm", in the order of its name. */
function placeText(joint: Joint, distances: readonly JointDistance[], roomsOf: BayRooms, names: Names): string {
  const rooms = joint.bays.map((id) => roomsOf.get(id) ?? []);
  const [one, other] = rooms.map((own) => distances.find(({ room, ownWall }) => ownWall && own.includes(room)));
  if (one !== undefined && other !== undefined && one !== other && names.jointAcross(joint))
    return `faces ${figureText(one.distanceMm, 0)} and ${wholeMmText(other.distanceMm)}`;
  const isPlain = new Set(rooms.flat()).size === 1;
  return distances
    .map((distance) => {
      const { room, side, ownWall } = distance;
      const isNamed = isPlain && rooms[0]?.includes(room);
      const wall = ownWall ? 'face' : `${side} wall`;
      return `${wall}${isNamed ? '' : ` of ${textBefore(names.room(room))}`} ${lengthText(distance)}`;
    })
    .join(', ');
}

function lengthText({ distanceMm, ends: [a, b] }: JointDistance): string {
  if (a === undefined || b === undefined) return wholeMmText(distanceMm);
  return `${wholeMmText(a.distanceMm)} at its ${a.side} end and ${wholeMmText(b.distanceMm)} at its ${b.side} end`;
}

function tileText(
  joints: readonly Joint[],
  back: string | null,
  jambs: ReadonlyMap<string, readonly WallCut[]>,
): string {
  const [first] = joints;
  if (first === undefined || first.onGroutLine === null) return 'no tiles here';
  const cutsTiles = joints.reduce((sum, joint) => sum + joint.cutsTiles, 0);
  const cuts = joints.flatMap(({ id }) => jambs.get(id) ?? []).flatMap(({ sizesMm }) => sizesMm);
  const sizesMm = [...cuts].sort((a, b) => a - b);
  const atJambs = sizesMm.length === 0 ? null : `jambs ${cutSizesText({ sizesMm, isAskew: false, wholeOffMm: null })}`;
  const at = back ?? tilesAtText({ ...first, cutsTiles });
  return [groutText(first), at, atJambs].filter((part) => part !== null).join('; ');
}

/** Cuts at the jambs of each doorway joint. */
function jambCuts({ joints, tiles }: Analysis): ReadonlyMap<string, readonly WallCut[]> {
  const cuts = (tiles?.fields ?? []).flatMap((field) =>
    field.cuts.filter(({ along, tiles: count }) => along === 'jamb' && count > 0),
  );
  const isAt = ({ line: [a, b] }: WallCut, end: Point | undefined) =>
    end !== undefined && segmentDistance(a, b, end) <= WELD_MM;
  const doorways = joints.filter(({ kind }) => kind === 'doorway');
  return new Map(
    doorways.map(({ id, line, bays }) => [
      id,
      cuts.filter((cut) => bays.includes(cut.bay) && (isAt(cut, line[0]) || isAt(cut, line[line.length - 1]))),
    ]),
  );
}
