import { type Point, pointDistance } from '../../src/geometry/point.ts';
import { type Ring, ringArea, ringPerimeter } from '../../src/geometry/ring.ts';
import type { BayShape, EdgeLine, JointKind, JointLine, Split } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { planResolve } from '../../src/plan/resolve.ts';
import type { PlanFile } from '../../src/plan/schema.ts';

/** Floors split by hand, so that the tests of movement and take-off lean on nothing that splits floors. */

export function rectangle(x: number, y: number, width: number, height: number): Ring {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}

export type PlanFields = Partial<PlanFile>;

export function planOf(fields: PlanFields): Plan {
  return planResolve({ format: 'screed-bays/plan', version: 1, name: 'By hand', rooms: [], ...fields });
}

export function bayOf(id: string, rooms: readonly string[], outline: Ring, holes: readonly Ring[] = []): BayShape {
  const areaM2 = (ringArea(outline) - holes.reduce((sum, hole) => sum + ringArea(hole), 0)) / 1e6;
  const perimeterM = [outline, ...holes].reduce((sum, ring) => sum + ringPerimeter(ring), 0) / 1000;
  return {
    id,
    key: id,
    rooms,
    outline,
    measured: outline,
    holes,
    areaM2,
    lengthM: 0,
    widthM: 0,
    aspect: 1,
    perimeterM,
    within: true,
  };
}

export function lineMm(line: readonly Point[]): number {
  return line.slice(1).reduce((sum, point, i) => sum + pointDistance(line[i] as Point, point), 0);
}

export function jointOf(
  id: string,
  bays: readonly [string, string],
  line: readonly Point[],
  kind: JointKind = 'field',
  sources: readonly string[] = [],
): JointLine {
  return { id, key: id, kind, sources, line, run: id, lengthM: lineMm(line) / 1000, bays, reasons: [] };
}

export function edgeOf(id: string, bay: string, room: string, line: readonly Point[]): EdgeLine {
  return { id, along: 'wall', bay, room, object: null, line, lengthM: lineMm(line) / 1000 };
}

/** Bays between the lines x and y, mm, each in the room that `room` names; joints where bays meet, edges where none does. */
export function gridSplit(
  xs: readonly number[],
  ys: readonly number[],
  room: (column: number, row: number) => string,
): Split {
  const columns = xs.length - 1;
  const rows = ys.length - 1;
  const bays: BayShape[] = [];
  const joints: JointLine[] = [];
  const edges: EdgeLine[] = [];
  const name = (c: number, r: number) => `B${r * columns + c + 1}`;
  const isBay = (c: number, r: number) => c >= 0 && c < columns && r >= 0 && r < rows;
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const [x0, x1, y0, y1] = [xs[c], xs[c + 1], ys[r], ys[r + 1]] as [number, number, number, number];
      bays.push(bayOf(name(c, r), [room(c, r)], rectangle(x0, y0, x1 - x0, y1 - y0)));
      const sides: readonly (readonly [number, number, readonly Point[]])[] = [
        [
          c,
          r - 1,
          [
            [x0, y0],
            [x1, y0],
          ],
        ],
        [
          c + 1,
          r,
          [
            [x1, y0],
            [x1, y1],
          ],
        ],
        [
          c,
          r + 1,
          [
            [x1, y1],
            [x0, y1],
          ],
        ],
        [
          c - 1,
          r,
          [
            [x0, y1],
            [x0, y0],
          ],
        ],
      ];
      for (const [nc, nr, line] of sides) {
        if (!isBay(nc, nr)) edges.push(edgeOf(`E${edges.length + 1}`, name(c, r), room(c, r), line));
        else if (nc > c || nr > r) joints.push(jointOf(`J${joints.length + 1}`, [name(c, r), name(nc, nr)], line));
      }
    }
  }
  const pieces = bays.map((bay) => ({ bay: bay.id, room: bay.rooms[0] as string, areaM2: bay.areaM2, regions: [] }));
  return { bays, joints, edges, pieces };
}

/** The same split, turned, mirrored or moved. */
export function splitMoved(split: Split, move: (p: Point) => Point): Split {
  return {
    ...split,
    bays: split.bays.map((bay) => ({
      ...bay,
      outline: bay.outline.map(move),
      measured: bay.measured.map(move),
      holes: bay.holes.map((hole) => hole.map(move)),
    })),
    joints: split.joints.map((joint) => ({ ...joint, line: joint.line.map(move) })),
    edges: split.edges.map((edge) => ({ ...edge, line: edge.line.map(move) })),
  };
}

export function turned(deg: number): (p: Point) => Point {
  const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  return ([x, y]) => [x * c - y * s, x * s + y * c];
}
