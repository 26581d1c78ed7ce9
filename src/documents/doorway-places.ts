import { lineMiddle } from '../geometry/line.ts';
import { type Point, pointDirection, pointDistance } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import { DIRECTION_DEG, EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import type { Analysis, Finding, Joint } from '../plan/analysis.ts';
import type { Doorway, Plan } from '../plan/plan.ts';
import { type PaperSource, perSource } from './paper-source.ts';
import { doorwayFaces } from './set-out-joints.ts';
import { wallFaces } from './set-out-walls.ts';
import { countsOf, findingText, type Names, namesOf, oneLine, textBefore } from './words.ts';

/** A doorway as it is set out: where its leaf and its joints stand between the faces of its wall. */
export interface DoorwayPlace {
  readonly doorway: Doorway;
  /** By what it joins. Examples: "Door Hall \u2013 Bath", "Door out of Hall (d3)" where another is named so too. */
  readonly name: string;
  /** From jamb to jamb. */
  readonly clearMm: number;
  /** From face to face; as entered where a face is not found. */
  readonly depthMm: number;
  readonly sides: readonly [DoorwaySide, DoorwaySide];
  readonly leaf: 'none' | 'first' | 'second' | 'middle' | 'unknown';
  readonly joints: readonly DoorwayJoint[];
  /** Why there is no joint; null where there is one. */
  readonly reason: string | null;
}

export interface DoorwaySide {
  /** Id of the room; null: no floor there. */
  readonly room: string | null;
  readonly name: string;
  /** From the line of the leaf to the face of the wall on this side, mm; null where no face was found. */
  readonly leafMm: number | null;
}

export interface DoorwayJoint {
  readonly joint: Joint;
  /** From its line to the faces of the wall, in the order of the sides; null where no face was found, or where it does not run along them. */
  readonly fromMm: readonly [number | null, number | null];
  /** From the line of the leaf, towards the second side, mm. */
  readonly offLeafMm: number;
  readonly isUnderLeaf: boolean;
  /** Whether it is a second one, at the face of a room. */
  readonly isSecond: boolean;
}

type DoorwaySource = Pick<PaperSource, 'plan' | 'analysis'>;

export const doorwayPlaces = perSource(doorwayPlacesFound);

function doorwayPlacesFound({ plan, analysis }: DoorwaySource): readonly DoorwayPlace[] {
  const names = namesOf(plan, analysis);
  const faces = wallFaces(analysis);
  const found = plan.doorways.map((doorway): DoorwayPlace => {
    const joints = jointsIn(doorway, analysis);
    const found = doorwayFaces(doorway, faces).map(({ way, met }) => ({
      way,
      room: met?.face.room ?? roomBeyond(doorway, way, plan),
      leafMm: met?.distanceMm ?? null,
    }));
    const [one, other] = inOrder(found, joints, analysis);
    const leafMm = [one?.leafMm ?? null, other?.leafMm ?? null] as const;
    const sides = [sideOf(one, names), sideOf(other, names)] as const;
    return {
      doorway,
      name: nameOf(doorway, sides),
      clearMm: pointDistance(...doorway.line),
      depthMm: leafMm[0] === null || leafMm[1] === null ? doorway.wallMm : leafMm[0] + leafMm[1],
      sides,
      leaf: leafSide(doorway, leafMm),
      joints: jointPlaces(doorway, joints, other?.way ?? [0, 0], leafMm),
      reason: joints.length > 0 ? null : reasonOf(doorway, analysis),
    };
  });
  const uses = countsOf(found.map(({ name }) => name));
  return found.map((place) => {
    const { name, doorway } = place;
    return uses.get(name) === 1 ? place : { ...place, name: `${textBefore(name)} (${oneLine(doorway.id)})` };
  });
}

function nameOf({ id, leaf }: Doorway, [one, other]: DoorwayPlace['sides']): string {
  const what = leaf ? 'Door' : 'Opening';
  if (one.room !== null && other.room !== null) return `${what} ${textBefore(one.name)} \u2013 ${other.name}`;
  const room = one.room === null ? other : one;
  return room.room === null ? `${what} ${oneLine(id)}` : `${what} out of ${room.name}`;
}

/** Names of doorways by their ids. */
export const doorwayNames = perSource(
  (source: DoorwaySource): ReadonlyMap<string, string> =>
    new Map(doorwayPlaces(source).map(({ doorway, name }) => [doorway.id, name])),
);

/** Inside a sentence. Example: "Door out of Hall" -> "door out of Hall" */
export function doorwayWithin(name: string): string {
  return `${name.charAt(0).toLowerCase()}${name.slice(1)}`;
}

const reasonStart = 'doorway ';

/** Why a joint stands where it does, a doorway by its name. Example: "doorway d3" -> "door Hall \u2013 Bath" */
export function reasonNamed(reason: string, names: ReadonlyMap<string, string>): string {
  const name = reason.startsWith(reasonStart) ? names.get(reason.slice(reasonStart.length)) : undefined;
  return name === undefined ? reason : doorwayWithin(name);
}

/** What a finding says, doorways by their names. Its message holds their ids, which stay in data.
 *  Examples: "Doorway d3 has no joint" -> "Door Hall \u2013 Bath has no joint"; "doorway d3 keeps it" -> "door Hall \u2013 Bath keeps it" */
export function findingNamed(
  { message, refs }: Pick<Finding, 'message' | 'refs'>,
  names: ReadonlyMap<string, string>,
): string {
  const doorways = refs.flatMap((id) => (names.has(id) ? [{ id, name: names.get(id) ?? '' }] : []));
  const first = doorways.find(({ id }) => message.startsWith(`Doorway ${id} `));
  if (first !== undefined)
    return findingText({ message: `${first.name}${message.slice(`Doorway ${first.id}`.length)}` });
  // the longest id first, so that d1 is not found in d12
  const byLength = [...doorways].sort((a, b) => b.id.length - a.id.length);
  const [said = '', ...rest] = message.split(` ${reasonStart}`);
  const told = rest.map((part) => {
    const found = byLength.find(({ id }) => part.startsWith(id));
    return found === undefined ? `${reasonStart}${part}` : `${doorwayWithin(found.name)}${part.slice(found.id.length)}`;
  });
  return findingText({ message: [said, ...told].join(' ') });
}

interface Found {
  readonly way: Point;
  readonly room: string | null;
  readonly leafMm: number | null;
}

function sideOf(found: Found | undefined, names: Names): DoorwaySide {
  const room = found?.room ?? null;
  return { room, name: room === null ? 'no floor' : names.room(room), leafMm: found?.leafMm ?? null };
}

/** In the order in which the joint names its rooms; as they come where there is none. */
function inOrder(found: readonly Found[], [first]: readonly Joint[], { bays }: Analysis): readonly Found[] {
  const rooms = bays.find(({ id }) => id === first?.bays[0])?.rooms ?? [];
  const isFirst = ({ room }: Found) => room !== null && rooms.includes(room);
  const [one, other] = found;
  if (one === undefined || other === undefined) return found;
  const isTurned = (!isFirst(one) && isFirst(other)) || (first === undefined && one.room === null);
  return isTurned ? [other, one] : [one, other];
}

/** So far beyond the depth of the wall floor is looked for where no wall stands beside the jambs, mm. */
const beyondMm = 100;

function roomBeyond({ line, wallMm }: Doorway, [dx, dy]: Point, { rooms }: Plan): string | null {
  const [x, y] = lineMiddle(line);
  const at: Point = [x + dx * (wallMm + beyondMm), y + dy * (wallMm + beyondMm)];
  return rooms.find((room) => regionContains(room, at))?.id ?? null;
}

/** Which face the line of the leaf is nearer to. */
function leafSide(
  { leaf, wallMm }: Doorway,
  [one, other]: readonly [number | null, number | null],
): DoorwayPlace['leaf'] {
  if (!leaf) return 'none';
  const first = one ?? (other === null ? null : wallMm - other);
  const second = other ?? (one === null ? null : wallMm - one);
  if (first === null || second === null) return 'unknown';
  if (Math.abs(first - second) < EQUAL_LENGTH_MM) return 'middle';
  return first < second ? 'first' : 'second';
}

/** Its own joints, and where it has none of its own, one of the building or of the user that stands in it from jamb to jamb. */
function jointsIn(doorway: Doorway, { joints }: Analysis): readonly Joint[] {
  const own = joints.filter(({ kind, sources }) => kind === 'doorway' && sources.includes(doorway.id));
  if (own.length > 0) return own;
  const way = pointDirection(...doorway.line);
  const middle = lineMiddle(doorway.line);
  const halfMm = pointDistance(...doorway.line) / 2;
  return joints.filter((joint) => {
    const [x, y] = lineMiddle(joint.line);
    const [dx, dy] = [x - middle[0], y - middle[1]];
    const alongMm = Math.abs(dx * way[0] + dy * way[1]);
    const acrossMm = Math.abs(dy * way[0] - dx * way[1]);
    return runsAlong(joint, way) && alongMm < halfMm && acrossMm <= doorway.wallMm;
  });
}

function runsAlong({ line }: Joint, [wx, wy]: Point): boolean {
  const [ux, uy] = pointDirection(line[0] ?? [0, 0], line[line.length - 1] ?? [0, 0]);
  return Math.abs(ux * wy - uy * wx) <= Math.sin((DIRECTION_DEG * Math.PI) / 180);
}

/** @param towards unit vector square to the doorway, to its second side */
function jointPlaces(
  { line, leaf }: Doorway,
  joints: readonly Joint[],
  towards: Point,
  [firstMm, secondMm]: readonly [number | null, number | null],
): readonly DoorwayJoint[] {
  const middle = lineMiddle(line);
  const way = pointDirection(...line);
  const placed = joints.map((joint) => {
    const [x, y] = lineMiddle(joint.line);
    const offLeafMm = (x - middle[0]) * towards[0] + (y - middle[1]) * towards[1];
    const isAlong = runsAlong(joint, way);
    return {
      joint,
      fromMm: [
        isAlong && firstMm !== null ? firstMm + offLeafMm : null,
        isAlong && secondMm !== null ? secondMm - offLeafMm : null,
      ] as const,
      offLeafMm,
      isUnderLeaf: leaf && isAlong && Math.abs(offLeafMm) < EQUAL_LENGTH_MM,
    };
  });
  const nearest = placed.reduce(
    (least, { offLeafMm }) => Math.min(least, Math.abs(offLeafMm)),
    Number.POSITIVE_INFINITY,
  );
  return placed
    .map((each) => ({ ...each, isSecond: Math.abs(each.offLeafMm) - nearest >= EQUAL_LENGTH_MM }))
    .sort((a, b) => Number(a.isSecond) - Number(b.isSecond) || a.offLeafMm - b.offLeafMm);
}

function reasonOf({ id }: Doorway, { findings }: Analysis): string {
  const found = findings.find(({ code, refs }) => code.startsWith('doorway-') && refs.includes(id));
  if (found === undefined) return 'No joint: the floor on both sides is one bay.';
  return findingText({ message: found.message.replace(`Doorway ${id} `, () => 'It ') });
}
