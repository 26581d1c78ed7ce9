import { existsSync, readFileSync } from 'node:fs';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import type { Cell, Table } from '../../src/documents/table.ts';
import type { Point } from '../../src/geometry/point.ts';
import { boxOf } from '../../src/geometry/ring.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { analysisOf, bay, box, joint, planOf, room } from './fixture.ts';
import { demoNames, demoText, paperSource, paperSourceOf } from './paper-fixture.ts';

export type Papers = NonNullable<PlanFile['papers']>;

/** A hall of 9 x 6 m, which the rules part into two halves of 4.5 m: one joint from [4500, 0] to [4500, 6000]. */
export function hallSource(papers: Papers = {}, over: Partial<PlanFile> = {}): PaperSource {
  return paperSourceOf(
    JSON.stringify({
      format: 'screed-bays/plan',
      version: 1,
      name: 'Hall',
      temperatures: { layingC: 15, highestC: 45, lowestC: 15 },
      screed: { class: 'CT-C25-F4', expansionPerK: 1.2e-5 },
      rooms: [
        {
          id: 'r1',
          name: 'Hall',
          outline: [
            [0, 0],
            [9000, 0],
            [9000, 6000],
            [0, 6000],
          ],
        },
      ],
      papers,
      ...over,
    }),
  );
}

/** A hall of 9 x 6 m made by hand with joints of any course, J1, J2 and so on, each a line by itself. */
export function handSource(lines: readonly (readonly Point[])[], papers: Papers = {}): PaperSource {
  const halls = ['B1', 'B2'].map((id, i) => bay(id, ['r1'], box(4500 * i, 0, 4500, 6000), 6, 4.5));
  const plan = planOf({ rooms: [room('r1', 'Hall', box(0, 0, 9000, 6000))], doorways: [] });
  const joints = lines.map((line, i) => ({
    ...joint(`J${i + 1}`, 'drawn', line, ['B1', 'B2']),
    run: `R${i + 1}`,
  }));
  return paperSource(plan, analysisOf({ bays: halls, joints, edges: [] }), { papers });
}

export function withPapers(source: PaperSource, papers: Papers): PaperSource {
  return { ...source, file: { ...source.file, papers } };
}

/** Base points at the lower corners of the box round the floor. */
export function lowerCorners({ plan }: PaperSource): readonly [Point, Point] {
  const { minX, maxX, maxY } = boxOf(plan.rooms.flatMap(({ outline }) => outline));
  return [
    [minX, maxY],
    [maxX, maxY],
  ];
}

export function basePapers(points: readonly Point[]): Papers {
  return { basePoints: points.map((at) => ({ at })) };
}

const realFolder = new URL('../../../shared/real-plans/', import.meta.url);
/** Dwellings, offices square and turned on the sheet, and a round one; the contract is kept by all floors of that folder, which takes longer. */
const realNames = ['duplex_L0', 'largebuilding_L0', 'resplan_0', 'westport_6', 'westport_5']
  .map((name) => `${name}.json`)
  .filter((name) => existsSync(new URL(name, realFolder)));

/** The demos and the floors of real buildings that lie beside the project, each analysed once. */
export const floorNames: readonly string[] = [...demoNames, ...realNames];

const made = new Map<string, PaperSource>();

export function floorSource(name: string): PaperSource {
  const known = made.get(name);
  if (known !== undefined) return known;
  const demo = demoNames.find((each) => each === name);
  const source = paperSourceOf(demo === undefined ? readFileSync(new URL(name, realFolder), 'utf8') : demoText(demo));
  made.set(name, source);
  return source;
}

/** A plan turned clockwise about the origin and then moved, with its analysis and what is marked on it. */
export function turned(source: PaperSource, angleDeg: number, [dx, dy]: Point): PaperSource {
  const [cos, sin] = [Math.cos((angleDeg * Math.PI) / 180), Math.sin((angleDeg * Math.PI) / 180)];
  const point = ([x, y]: Point): Point => [x * cos - y * sin + dx, x * sin + y * cos + dy];
  const region = <T extends { readonly outline: readonly Point[]; readonly holes: readonly (readonly Point[])[] }>(
    of: T,
  ): T => ({ ...of, outline: of.outline.map(point), holes: of.holes.map((hole) => hole.map(point)) });
  const { file, plan, analysis } = source;
  const papers = file.papers ?? {};
  return {
    ...source,
    file: {
      ...file,
      papers: {
        ...papers,
        basePoints: (papers.basePoints ?? []).map((each) => ({ ...each, at: [...point(each.at)] })),
      },
    },
    plan: { ...plan, rooms: plan.rooms.map(region) },
    analysis: {
      ...analysis,
      bays: analysis.bays.map(region),
      joints: analysis.joints.map((joint) => ({ ...joint, line: joint.line.map(point) })),
      edges: analysis.edges.map((edge) => ({ ...edge, line: edge.line.map(point) })),
    },
  };
}

/** A row of the list by its heads. */
export function rowOf({ columns, rows }: Table, at: number): Readonly<Record<string, Cell>> {
  return Object.fromEntries(columns.map(({ head }, i) => [head, rows[at]?.[i] ?? null]));
}
