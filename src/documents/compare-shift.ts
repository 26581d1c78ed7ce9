import { type Point, pointDistance } from '../geometry/point.ts';
import { boxOf, type Region, ringPerimeter } from '../geometry/ring.ts';
import { EQUAL_LENGTH_MM, onGrid } from '../geometry/tolerance.ts';
import type { Analysis } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import type { PlanFile } from '../plan/schema.ts';
import type { PaperSource } from './paper-source.ts';
import { figureText } from './words.ts';

/** A floor that was moved on its sheet as a whole, such as one drawn anew from another corner. Nothing of it has changed on site: it is compared as if it
 *  lay where it was, and the move is told. The other choice, to tell every joint as moved, hides the one that was. */

/** How far the later floor lies from the earlier one; null: not moved, or not as a whole.
 *  Rooms that kept their shape tell: more than half of the walls of both versions have to have gone the same way, and no room may stand where it was. */
export function floorShift(before: Plan, now: Plan): Point | null {
  const kept = roomsKept(before.rooms, now.rooms);
  const moves = new Map<string, { readonly by: Point; readonly wallsMm: number }>();
  for (const { by, wallsMm } of kept) {
    const key = by.join(' ');
    moves.set(key, { by, wallsMm: wallsMm + (moves.get(key)?.wallsMm ?? 0) });
  }
  const all = [...moves.values()];
  const first = all.reduce((most, move) => (move.wallsMm > most.wallsMm ? move : most), { by: [0, 0], wallsMm: 0 });
  const halfMm = Math.max(wallsOf(before.rooms), wallsOf(now.rooms)) / 2;
  const hasStayed = all.some(({ by }) => pointDistance(by, [0, 0]) < EQUAL_LENGTH_MM);
  return first.wallsMm > halfMm && !hasStayed ? first.by : null;
}

/** The earlier version as the later one can be laid over it. */
export function sourceOver(before: PaperSource, now: PaperSource): PaperSource {
  const by = floorShift(before.plan, now.plan);
  return by === null ? before : sourceMoved(before, by);
}

/** Example: "The floor lies 20 000 mm to the right and 500 mm up on its sheet, as a whole. It is compared as if it had not been moved." */
export function shiftText([dx, dy]: Point): string {
  const way = (mm: number, [less, more]: readonly [string, string]) =>
    mm === 0 ? [] : [`${figureText(Math.abs(mm), 0)} mm ${mm < 0 ? less : more}`];
  const ways = [...way(dx, ['to the left', 'to the right']), ...way(dy, ['up', 'down'])];
  return `The floor lies ${ways.join(' and ')} on its sheet, as a whole. It is compared as if it had not been moved.`;
}

interface RoomKept {
  readonly by: Point;
  readonly wallsMm: number;
}

type Room = Plan['rooms'][number];

/** Rooms by their ids that kept their shape; where no id is known rooms of one shape in their order on the sheet, which a move leaves as it is. */
function roomsKept(before: readonly Room[], now: readonly Room[]): readonly RoomKept[] {
  const byId = new Map(now.map((room) => [room.id, room]));
  const known = before.flatMap((room) => {
    const other = byId.get(room.id);
    return other !== undefined && shapeText(room) === shapeText(other) ? [roomKept(room, other)] : [];
  });
  if (known.length > 0) return known;
  const shapes = byShape(now);
  return [...byShape(before)].flatMap(([shape, rooms]) => {
    const others = shapes.get(shape) ?? [];
    return rooms.length === others.length ? rooms.map((room, i) => roomKept(room, others[i] ?? room)) : [];
  });
}

function byShape(rooms: readonly Room[]): ReadonlyMap<string, readonly Room[]> {
  const inOrder = [...rooms].sort((a, b) => {
    const [one, other] = [boxOf(a.outline), boxOf(b.outline)];
    return one.minX - other.minX || one.minY - other.minY;
  });
  const shapes = new Map<string, readonly Room[]>();
  for (const room of inOrder) shapes.set(shapeText(room), [...(shapes.get(shapeText(room)) ?? []), room]);
  return shapes;
}

function roomKept(room: Room, other: Room): RoomKept {
  const [from, to] = [boxOf(room.outline), boxOf(other.outline)];
  return { by: [onGrid(to.minX - from.minX) + 0, onGrid(to.minY - from.minY) + 0], wallsMm: wallsOf([room]) };
}

/** The corners of a room from the corner of its box, whichever is the first. */
function shapeText({ outline, holes }: Region): string {
  const { minX, minY } = boxOf(outline);
  const corners = [outline, ...holes].flat().map(([x, y]) => `${onGrid(x - minX)},${onGrid(y - minY)}`);
  return corners.sort().join(' ');
}

function wallsOf(rooms: readonly Region[]): number {
  return rooms.flatMap(({ outline, holes }) => [outline, ...holes]).reduce((sum, ring) => sum + ringPerimeter(ring), 0);
}

function sourceMoved({ file, plan, analysis, date }: PaperSource, by: Point): PaperSource {
  const at = ([x, y]: Point): Point => [x + by[0], y + by[1]];
  return { file: fileMoved(file, at), plan: planMoved(plan, at), analysis: analysisMoved(analysis, at), date };
}

type Move = (point: Point) => Point;

/** What is entered by its place beside the floor itself, which is taken from the plan. */
function fileMoved(file: PlanFile, at: Move): PlanFile {
  const { papers, pour, records } = file;
  const place = <T extends { readonly at: Point }>(point: T): T => ({ ...point, at: at(point.at) });
  const line = <T extends { readonly from: Point; readonly to: Point }>(grid: T): T => ({
    ...grid,
    from: at(grid.from),
    to: at(grid.to),
  });
  return {
    ...file,
    ...(papers && {
      papers: {
        ...papers,
        ...(papers.basePoints && { basePoints: papers.basePoints.map(place) }),
        ...(papers.gridLines && { gridLines: papers.gridLines.map(line) }),
      },
    }),
    ...(pour && { pour: { ...pour, ...(pour.access && { access: at(pour.access) }) } }),
    ...(records && {
      records: { ...records, ...(records.testPoints && { testPoints: records.testPoints.map(place) }) },
    }),
  };
}

function planMoved(plan: Plan, at: Move): Plan {
  const outlined = <T extends { readonly outline: readonly Point[] }>(thing: T): T => ({
    ...thing,
    outline: thing.outline.map(at),
  });
  const lined = <T extends { readonly line: readonly Point[] }>(thing: T): T => ({
    ...thing,
    line: thing.line.map(at),
  });
  return {
    ...plan,
    rooms: plan.rooms.map((room) => ({ ...outlined(room), holes: room.holes.map((hole) => hole.map(at)) })),
    doorways: plan.doorways.map(({ line: [a, b], ...doorway }) => ({ ...doorway, line: [at(a), at(b)] })),
    columns: plan.columns.map(outlined),
    pipes: plan.pipes.map((pipe) => ({ ...pipe, centre: at(pipe.centre) })),
    joinery: plan.joinery.map(outlined),
    slabContacts: plan.slabContacts.map(outlined),
    structuralJoints: plan.structuralJoints.map(lined),
    sunZones: plan.sunZones.map(outlined),
    drawnJoints: plan.drawnJoints.map(lined),
    noJoint: plan.noJoint.map(lined),
    keepClear: plan.keepClear.map(outlined),
    tiles: plan.tiles && { ...plan.tiles, origin: at(plan.tiles.origin) },
    tileFields: plan.tileFields.map((field) => ({ ...field, origin: at(field.origin) })),
  };
}

/** Bays, joints, edges and findings, which are compared by place; what tiles come to stays as it is. */
function analysisMoved(analysis: Analysis, at: Move): Analysis {
  return {
    ...analysis,
    bays: analysis.bays.map((bay) => ({
      ...bay,
      outline: bay.outline.map(at),
      measured: bay.measured.map(at),
      holes: bay.holes.map((hole) => hole.map(at)),
      stillPoint: at(bay.stillPoint),
    })),
    joints: analysis.joints.map((joint) => ({ ...joint, line: joint.line.map(at) })),
    edges: analysis.edges.map((edge) => ({ ...edge, line: edge.line.map(at) })),
    findings: analysis.findings.map((finding) => ({ ...finding, at: finding.at && at(finding.at) })),
  };
}
