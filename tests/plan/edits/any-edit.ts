import fc from 'fast-check';
import type { Point } from '../../../src/geometry/point.ts';
import { type Joint, untiledJoint } from '../../../src/plan/analysis.ts';
import {
  type AlignSide,
  objectsAligned,
  objectsDistributed,
  objectsRepeated,
} from '../../../src/plan/edits/arrange.ts';
import { objectsCopied, objectsPasted } from '../../../src/plan/edits/copy.ts';
import {
  cornerAdded,
  cornerMoved,
  cornerRemoved,
  type Edited,
  edgeLengthSet,
  edgeMoved,
  type RingCorner,
  rectangleSizeSet,
  ringSet,
} from '../../../src/plan/edits/corners.ts';
import {
  doorwayDepthSet,
  doorwayInWall,
  doorwaySlid,
  doorwayWidened,
  wallsOf,
} from '../../../src/plan/edits/doorways.ts';
import {
  gridLineAdded,
  gridLineBeside,
  gridLineChanged,
  gridLineRemoved,
  gridLinesOf,
} from '../../../src/plan/edits/grid-lines.ts';
import { planJointNoted, planJointNotesTakenOut } from '../../../src/plan/edits/joint-notes.ts';
import { jointsKept, planJointNotesRenamed } from '../../../src/plan/edits/joints.ts';
import { jointsLetGo, jointTakenAway } from '../../../src/plan/edits/joints-gone.ts';
import { objectsMirrored, objectsMoved, objectsTurned } from '../../../src/plan/edits/move.ts';
import {
  objectAdded,
  objectChanged,
  objectFind,
  objectLists,
  objectRings,
  objectsRemoved,
} from '../../../src/plan/edits/objects.ts';
import {
  type PaperPoint,
  type PaperPointKind,
  paperPointAdded,
  paperPointChanged,
  paperPointRemoved,
  paperPoints,
} from '../../../src/plan/edits/paper-points.ts';
import {
  pourBaysFollowed,
  pourBaysPut,
  pourBaysTakenOut,
  pourDayAdded,
  pourDayDated,
  pourDayMoved,
  pourDayRemoved,
  pourDaysOf,
  pourDaysProposed,
} from '../../../src/plan/edits/pour-days.ts';
import { planPriceChanged } from '../../../src/plan/edits/settings.ts';
import {
  agreementUsed,
  roomsTiled,
  type TilesOf,
  tileFieldAdded,
  tileOriginMoved,
  tilesChanged,
  tilesLaid,
  tilesTakenAway,
} from '../../../src/plan/edits/tiles.ts';
import { tileBonds } from '../../../src/plan/plan.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';
import { box } from './house.ts';

/** An edit of any plan: what it takes of the plan is drawn from the plan that it is given. */
export interface AnyEdit {
  readonly name: string;
  readonly apply: (file: PlanFile) => PlanFile;
}

/** What an edit draws from: numbers to choose among the objects of a plan, lengths and a place. */
interface Draw {
  readonly picks: readonly number[];
  readonly place: Point;
  readonly by: Point;
  readonly shortMm: number;
  readonly angleDeg: number;
  readonly isYes: boolean;
}

/** Off the grid of the plan as well as on it. */
const thousandth = (value: number) => value / 1000;
const shortLength = fc.oneof(
  fc.integer({ min: -3000, max: 3000 }),
  fc.integer({ min: -500_000, max: 500_000 }).map(thousandth),
);
const placeOn = fc.oneof(
  { weight: 30, arbitrary: fc.integer({ min: -10_000, max: 20_000 }) },
  { weight: 20, arbitrary: fc.integer({ min: -1_000_000, max: 9_000_000 }).map(thousandth) },
  { weight: 1, arbitrary: fc.constantFrom(-1e7, 1e7, 2e7) },
);
const draw: fc.Arbitrary<Draw> = fc.record({
  picks: fc.array(fc.nat(10_000), { minLength: 4, maxLength: 4 }),
  place: fc.tuple(placeOn, placeOn),
  by: fc.tuple(placeOn, shortLength),
  shortMm: shortLength,
  angleDeg: fc.oneof(fc.constantFrom(90, 180, -90, 45), fc.integer({ min: -360_000, max: 360_000 }).map(thousandth)),
  isYes: fc.boolean(),
});

/** So many objects are enough: plans that only grow would be refused as too large. */
const MOST_OBJECTS = 40;

function idsOf(file: PlanFile): string[] {
  return objectLists.flatMap((list) => (file[list] ?? []).map(({ id }) => id));
}

function hasRoom(file: PlanFile): boolean {
  return idsOf(file).length < MOST_OBJECTS;
}

function idAt(file: PlanFile, pick = 0): string {
  const ids = idsOf(file);
  return ids[pick % Math.max(1, ids.length)] ?? 'none';
}

/** One to three objects. */
function someIds(file: PlanFile, { picks }: Draw): string[] {
  return [...new Set(picks.slice(0, 1 + ((picks[3] ?? 0) % 3)).map((pick) => idAt(file, pick)))];
}

function cornerAt(file: PlanFile, { picks }: Draw): RingCorner {
  const id = idAt(file, picks[0]);
  const found = objectFind(file, id);
  const rings = found && 'line' in found.object ? [found.object.line] : found ? objectRings(found) : [];
  const ring = (picks[1] ?? 0) % Math.max(1, rings.length);
  return { id, ring, corner: (picks[2] ?? 0) % Math.max(1, rings[ring]?.length ?? 1) };
}

function doorwayAt(file: PlanFile, { picks }: Draw): string {
  const doorways = file.doorways ?? [];
  return doorways[(picks[0] ?? 0) % Math.max(1, doorways.length)]?.id ?? 'none';
}

const pointKinds: readonly PaperPointKind[] = ['base', 'test', 'access'];

function pointKind({ picks }: Draw): PaperPointKind {
  return pointKinds[(picks[1] ?? 0) % pointKinds.length] ?? 'base';
}

function paperPointAt(file: PlanFile, draw: Draw): PaperPoint | undefined {
  const points = paperPoints(file, pointKind(draw));
  return points[(draw.picks[0] ?? 0) % Math.max(1, points.length)];
}

function lineAt(file: PlanFile, { picks: [pick = 0] }: Draw): number {
  return pick % Math.max(1, gridLinesOf(file).length);
}

function dayAt(file: PlanFile, { picks: [pick = 0] }: Draw): number {
  return pick % Math.max(1, pourDaysOf(file).length);
}

function bayKeys({ picks }: Draw): string[] {
  return picks.map((pick) => `B-${pick % 7}`);
}

function hasPoints(file: PlanFile): boolean {
  return pointKinds.flatMap((kind) => paperPoints(file, kind)).length > MOST_OBJECTS;
}

/** The tiles of the floor, or of one of its fields. */
function tilesAt({ tileFields = [] }: PlanFile, { picks }: Draw): TilesOf {
  return tileFields[(picks[1] ?? 0) % (tileFields.length + 1)]?.id ?? null;
}

/** The file of an edit; the one before where it was refused. */
function taken(file: PlanFile, edited: Edited): PlanFile {
  return edited.kind === 'edited' ? edited.file : file;
}

/** A joint as an analysis might tell it. */
function jointAt(id: string, line: readonly Point[], kind: Joint['kind'], sources: readonly string[]): Joint {
  return {
    ...{ id, key: id, kind, sources, line, run: id, lengthM: 1, bays: ['B1', 'B2'], reasons: [] },
    ...{
      closingMm: 1,
      openingMm: 0,
      slidingMm: 0,
      worstClosingMm: 1,
      profileMm: 10,
      profileTakesMm: 5,
      sealantNeedsMm: 4,
    },
    ...untiledJoint,
  };
}

const onSheet = ([x, y]: Point): Point => [x % 20_000, y % 20_000];

const edits: Readonly<Record<string, (file: PlanFile, draw: Draw) => PlanFile>> = {
  objectAdded: (file, { place, shortMm, picks: [pick = 0] }) => {
    if (!hasRoom(file)) return file;
    const [x, y] = onSheet(place);
    const size = Math.abs(shortMm) + 50;
    const outline = box(x, y, size, size);
    const line = [
      [x, y],
      [x + size, y],
    ] as const;
    switch (pick % 5) {
      case 0:
        return objectAdded(file, 'rooms', { outline }).file;
      case 1:
        return objectAdded(file, 'pipes', { centre: [x, y], diameterMm: size }).file;
      case 2:
        return objectAdded(file, 'sunZones', { outline, highestC: 50 }).file;
      case 3:
        return objectAdded(file, 'structuralJoints', { line }).file;
      default:
        return objectAdded(file, 'columns', { outline }).file;
    }
  },
  doorwayPut: (file, { picks: [pick = 0], shortMm, isYes }) => {
    const walls = wallsOf(file);
    const wall = walls[pick % Math.max(1, walls.length)];
    if (!wall || !hasRoom(file)) return file;
    const widthMm = 300 + Math.abs(shortMm) / 5;
    const doorway = doorwayInWall(wall, { alongMm: Math.abs(shortMm), widthMm, depthShare: 0.5, leaf: isYes });
    return doorway ? objectAdded(file, 'doorways', doorway).file : file;
  },
  objectChanged: (file, { picks, isYes }) => {
    const found = objectFind(file, idAt(file, picks[0]));
    if (found?.list === 'rooms') return objectChanged(file, found.object.id, { name: isYes ? 'Room' : undefined });
    if (found?.list === 'pipes')
      return objectChanged(file, found.object.id, { diameterMm: 50 + ((picks[1] ?? 0) % 200) });
    return file;
  },
  objectsRemoved: (file, draw) => (idsOf(file).length < 8 ? file : objectsRemoved(file, someIds(file, draw))),
  objectsMoved: (file, draw) => objectsMoved(file, someIds(file, draw), draw.isYes ? [draw.shortMm, 0] : draw.by),
  objectsTurned: (file, draw) => objectsTurned(file, someIds(file, draw), draw.place, draw.angleDeg),
  objectsMirrored: (file, draw) =>
    objectsMirrored(file, someIds(file, draw), draw.place, draw.isYes ? 'left-right' : 'top-bottom'),
  objectsPasted: (file, draw) =>
    hasRoom(file) ? objectsPasted(file, objectsCopied(file, someIds(file, draw)), draw.by).file : file,
  objectsAligned: (file, draw) => {
    const sides: readonly AlignSide[] = ['left', 'right', 'top', 'bottom', 'middle-x', 'middle-y'];
    return objectsAligned(file, someIds(file, draw), sides[(draw.picks[3] ?? 0) % sides.length] ?? 'left');
  },
  objectsDistributed: (file, draw) => objectsDistributed(file, someIds(file, draw), draw.isYes ? 'x' : 'y'),
  objectsRepeated: (file, { picks, by, isYes }) => {
    const repeat = { countX: 2, countY: isYes ? 2 : 1, spacingXMm: by[0], spacingYMm: by[1] };
    return hasRoom(file) ? objectsRepeated(file, idAt(file, picks[0]), repeat).file : file;
  },
  cornerMoved: (file, draw) => taken(file, cornerMoved(file, cornerAt(file, draw), draw.place)),
  cornerAdded: (file, draw) => taken(file, cornerAdded(file, cornerAt(file, draw), draw.place)),
  cornerRemoved: (file, draw) => taken(file, cornerRemoved(file, cornerAt(file, draw))),
  edgeMoved: (file, draw) =>
    taken(file, edgeMoved(file, cornerAt(file, draw), draw.shortMm, { wholeWall: draw.isYes })),
  edgeLengthSet: (file, draw) => taken(file, edgeLengthSet(file, cornerAt(file, draw), Math.abs(draw.place[0]))),
  ringSet: (file, draw) => {
    const { id, ring } = cornerAt(file, draw);
    return taken(file, ringSet(file, id, ring, [draw.place, draw.by, [draw.shortMm, 0]]));
  },
  rectangleSizeSet: (file, draw) =>
    taken(file, rectangleSizeSet(file, idAt(file, draw.picks[0]), { widthMm: draw.shortMm, heightMm: draw.place[1] })),
  doorwaySlid: (file, draw) => doorwaySlid(file, doorwayAt(file, draw), draw.shortMm),
  doorwayWidened: (file, draw) => doorwayWidened(file, doorwayAt(file, draw), draw.shortMm),
  doorwayDepthSet: (file, draw) => doorwayDepthSet(file, doorwayAt(file, draw), draw.shortMm),
  jointsKept: (file, { place, shortMm }) => {
    const [x, y] = onSheet(place);
    const found = jointAt(
      'J1',
      [
        [x, y],
        [x + Math.abs(shortMm) + 10, y],
      ],
      'field',
      [],
    );
    return hasRoom(file) ? jointsKept(file, [found], ['J1']).file : file;
  },
  jointTakenAway: (file, { place, shortMm, picks, isYes }) => {
    const [x, y] = onSheet(place);
    const line: readonly Point[] = [
      [x, y],
      [x, y + Math.abs(shortMm) + 10],
    ];
    const joint = isYes ? jointAt('J1', line, 'drawn', [idAt(file, picks[0])]) : jointAt('J1', line, 'neck', []);
    return hasRoom(file) ? jointTakenAway(file, joint) : file;
  },
  jointsLetGo: (file, { picks: [pick = 0], isYes }) =>
    pick % 4 === 0 ? jointsLetGo(file, { drawn: isYes, taken: !isYes }) : file,
  paperPointAdded: (file, draw) => (hasPoints(file) ? file : paperPointAdded(file, pointKind(draw), draw.place)),
  paperPointChanged: (file, draw) => {
    const point = paperPointAt(file, draw);
    const change = draw.isYes ? { at: draw.place } : { name: `P ${draw.shortMm}` };
    return point === undefined ? file : paperPointChanged(file, point, change);
  },
  paperPointRemoved: (file, draw) => {
    const point = paperPointAt(file, draw);
    return point === undefined ? file : paperPointRemoved(file, point);
  },
  gridLineAdded: (file, draw) => {
    const ends = draw.isYes ? gridLineBeside(file) : { from: draw.place, to: draw.by };
    return gridLinesOf(file).length < MOST_OBJECTS ? gridLineAdded(file, ends) : file;
  },
  gridLineChanged: (file, draw) =>
    gridLineChanged(file, lineAt(file, draw), draw.isYes ? { to: draw.place } : { name: `G ${draw.shortMm}` }),
  gridLineRemoved: (file, draw) => gridLineRemoved(file, lineAt(file, draw)),
  pourDayAdded: (file) => (pourDaysOf(file).length < MOST_OBJECTS ? pourDayAdded(file) : file),
  pourDayDated: (file, draw) => pourDayDated(file, dayAt(file, draw), draw.isYes ? '2027-03-01' : undefined),
  pourDayMoved: (file, draw) => pourDayMoved(file, dayAt(file, draw), draw.isYes ? 'earlier' : 'later'),
  pourDayRemoved: (file, draw) => pourDayRemoved(file, dayAt(file, draw)),
  pourBaysPut: (file, draw) => pourBaysPut(file, dayAt(file, draw), bayKeys(draw)),
  pourBaysTakenOut: (file, draw) => pourBaysTakenOut(file, dayAt(file, draw), bayKeys(draw)),
  pourBaysFollowed: (file, draw) => {
    const [from = '', to = ''] = bayKeys(draw);
    return pourBaysFollowed(file, new Map([[from, to]]));
  },
  pourDaysProposed: (file, draw) =>
    pourDaysProposed(file, [{ date: draw.isYes ? '2027-03-01' : null, bays: bayKeys(draw) }]),
  planJointNoted: (file, { picks, isYes }) =>
    planJointNoted(file, `J ${(picks[0] ?? 0) % 3}`, isYes ? { pipes: (picks[1] ?? 0) % 1000 } : { pipes: undefined }),
  planJointNotesRenamed: (file, { picks: [a = 0, b = 0] }) =>
    planJointNotesRenamed(
      file,
      new Map([
        [`J ${a % 3}`, `J ${3 + (b % 3)}`],
        [`J ${b % 3}`, `J ${3 + (a % 3)}`],
      ]),
    ),
  planJointNotesTakenOut: (file, { picks }) => planJointNotesTakenOut(file, [`J ${(picks[0] ?? 0) % 6}`]),
  planPriceChanged: (file, { picks, isYes }) => planPriceChanged(file, { tile: isYes ? picks[0] : undefined }),
  tilesLaid: (file) => tilesLaid(file),
  tilesChanged: (file, draw) => {
    const { picks, shortMm, angleDeg, isYes } = draw;
    const bond = tileBonds[(picks[2] ?? 0) % tileBonds.length];
    const lengthMm = 10 + Math.abs(shortMm);
    const change = isYes ? { bond, lengthMm } : { angleDeg, allowance: undefined, offsetMm: lengthMm / 4 };
    return tilesChanged(file, tilesAt(file, draw), change);
  },
  tileOriginMoved: (file, draw) => tileOriginMoved(file, tilesAt(file, draw), draw.place),
  tilesTakenAway: (file, draw) => ((draw.picks[0] ?? 0) % 4 === 0 ? tilesTakenAway(file, tilesAt(file, draw)) : file),
  tileFieldAdded: (file, draw) => tileFieldAdded(file, someIds(file, draw)).file,
  roomsTiled: (file, draw) => roomsTiled(file, someIds(file, draw), tilesAt(file, draw)),
  agreementUsed: (file, draw) =>
    agreementUsed(file, {
      setOuts: [{ field: tilesAt(file, draw), origin: draw.place }],
      aim: draw.isYes ? 'grout-lines' : null,
    }),
};

export const anyEditNames: readonly string[] = Object.keys(edits);

/** Any of the edits of drawn objects, of tiles and of what papers need, each as likely as the other. */
export const anyEdit: fc.Arbitrary<AnyEdit> = fc
  .tuple(fc.constantFrom(...Object.entries(edits)), draw)
  .map(([[name, edit], drawn]) => ({
    name,
    apply: (file) => edit(file, drawn),
    toString: () => `${name}(${JSON.stringify(drawn)})`,
  }));
