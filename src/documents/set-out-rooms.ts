import { pointBetween, pointDistance } from '../geometry/point.ts';
import { boxOf, type Ring } from '../geometry/ring.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { Analysis, Bay, TileFieldReport, WallCut } from '../plan/analysis.ts';
import type { Plan, TileGrid } from '../plan/plan.ts';
import { gridFrame, tiledFields } from '../plan/tile-grid.ts';
import { type SquareCheck, squareCheck } from './set-out-check.ts';
import { type CornerPlaces, cornerPlaces, gridCorners, type RoomFloor } from './set-out-corners.ts';
import { lineAcross } from './set-out-lines.ts';
import { thingsOf } from './set-out-things.ts';
import { type Face, faceDistance, faceIsAlong, faceSide, type Side } from './set-out-walls.ts';
import { cutLine, isAlongTiles } from './tile-items.ts';

/** What a tiler sets out one room by, without going through another. */
export interface RoomSetOut {
  readonly room: string;
  /** Cuts at the walls that run with the tiles or square to them. */
  readonly sides: readonly WallSide[];
  /** Cuts at curved walls and at walls askew to the tiles. */
  readonly others: readonly WallCut[];
  /** Whether the cuts alone give the first grout lines, by two walls square to each other. */
  readonly byCuts: boolean;
  /** Corners of tiles with their distances from two walls, where the cuts do not give the place of every tile; null where no two walls do. */
  readonly places: CornerPlaces | null;
  /** Null where the room is too small. */
  readonly check: SquareCheck | null;
}

export interface WallSide {
  readonly side: Side;
  /** Where the wall steps, from left to right or from top to bottom. */
  readonly cuts: readonly WallCut[];
}

/** Of every room of a field, in the order of the plan. */
export function roomSetOuts(
  plan: Plan,
  field: TileFieldReport,
  faces: readonly Face[],
  { bays }: Pick<Analysis, 'bays'>,
): readonly RoomSetOut[] {
  const grid = tiledFields(plan).find(({ id }) => id === field.id)?.grid;
  if (grid === undefined) return [];
  const things = thingsOf(plan);
  const byId = new Map(bays.map((bay) => [bay.id, bay]));
  const cuts = new Map<string, WallCut[]>();
  for (const cut of field.cuts) {
    if (cut.along !== 'wall' || cut.room === null) continue;
    const own = cuts.get(cut.room) ?? [];
    cuts.set(cut.room, own);
    own.push(cut);
  }
  return plan.rooms
    .filter(({ id }) => field.rooms.includes(id))
    .map((room) => {
      const own = faces.filter((face) => face.room === room.id);
      return roomSetOut({ room, grid, faces: own, things }, cuts.get(room.id) ?? [], byId);
    });
}

function roomSetOut(floor: RoomFloor, cuts: readonly WallCut[], bays: ReadonlyMap<string, Bay>): RoomSetOut {
  const { grid, faces } = floor;
  const ways = gridWays(grid);
  const sides = new Map<Side, { readonly face: Face; readonly cut: WallCut }[]>();
  const others: WallCut[] = [];
  for (const cut of cuts) {
    const face = faceOf(cut, faces, bays.get(cut.bay));
    if (face !== null && isAlongTiles(cut, grid.angleDeg)) {
      const own = sides.get(faceSide(face)) ?? [];
      sides.set(faceSide(face), own);
      own.push({ face, cut });
    } else if (cut.tiles > 0 && (cut.isAskew || face !== null)) others.push(cut);
  }
  const straight = [...sides.values()].flat().filter(({ cut }) => !cut.isAskew);
  const [along, across] = ways.map((way) => straight.some(({ face }) => faceIsAlong(face, way)));
  const byCuts = grid.bond === 'straight' && along === true && across === true;
  return {
    room: floor.room.id,
    sides: [...sides]
      .sort(([a], [b]) => sideOrder.indexOf(a) - sideOrder.indexOf(b))
      .map(([side, own]) => ({ side, cuts: inOrder(own) })),
    others,
    byCuts,
    places: byCuts ? null : cornerPlaces(floor, along === true || across === true ? 1 : 2),
    check: roomCheck(floor),
  };
}

const sideOrder: readonly Side[] = [
  'left',
  'right',
  'upper',
  'lower',
  'upper left',
  'lower right',
  'upper right',
  'lower left',
];

function gridWays({ angleDeg }: Pick<TileGrid, 'angleDeg'>) {
  const { toSheet } = gridFrame({ origin: [0, 0], angleDeg });
  return [toSheet([1, 0]), toSheet([0, 1])] as const;
}

/** The wall that a cut lies along; null at a nib and at a curve. */
function faceOf(cut: WallCut, faces: readonly Face[], bay: Bay | undefined): Face | null {
  const line = bay === undefined ? null : cutLine(cut, bay);
  if (line === null) return null;
  const lies = (face: Face) => !face.isCurve && line.every((end) => Math.abs(faceDistance(face, end)) <= WELD_MM);
  const middle = pointBetween(...line, 0.5);
  const off = ({ line: [a, b] }: Face) => pointDistance(a, middle) + pointDistance(middle, b) - pointDistance(a, b);
  return [...faces].filter(lies).sort((p, q) => off(p) - off(q))[0] ?? null;
}

function inOrder(own: readonly { readonly face: Face; readonly cut: WallCut }[]): readonly WallCut[] {
  // a wall at the side steps down the sheet, any other across it
  const place = ({ face: { into }, cut: { line } }: (typeof own)[number]) =>
    pointBetween(...line, 0.5)[Math.abs(into[0]) > Math.abs(into[1]) ? 1 : 0];
  return [...own].sort((a, b) => place(a) - place(b)).map(({ cut }) => cut);
}

/** So far from the middle of a room towards its corners the lines of a check cross, as a share: they then have most of the room to run. */
const checkShares = [0, 0.8];

function roomCheck(floor: RoomFloor): SquareCheck | null {
  const { room, grid, faces, things } = floor;
  const ways = gridWays(grid);
  const box = boxOf(room.outline);
  const middle = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2] as const;
  const corners: Ring = [
    [box.minX, box.minY],
    [box.maxX, box.minY],
    [box.maxX, box.maxY],
    [box.minX, box.maxY],
  ];
  const starts = checkShares.flatMap((share) =>
    (share === 0 ? corners.slice(0, 1) : corners).map((corner) => pointBetween(middle, corner, share)),
  );
  let best: SquareCheck | null = null;
  for (const start of starts) {
    const [found] = gridCorners(floor, start);
    if (found === undefined) continue;
    const across = (way: (typeof ways)[number]) => lineAcross(room, faces, found.at, way);
    const check = squareCheck({ corner: found.at, ways, lines: [across(ways[0]), across(ways[1])] }, faces, things);
    if (check !== null && (best === null || check.acrossMm > best.acrossMm)) best = check;
  }
  return best;
}
