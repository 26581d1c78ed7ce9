import { createAnalyser } from '../../src/analysis/analyser.ts';
import { setOutPages } from '../../src/documents/set-out.ts';
import { setOutLines } from '../../src/documents/set-out-lines.ts';
import { wallFaces } from '../../src/documents/set-out-walls.ts';
import { pageSvg } from '../../src/documents/svg.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';
import type { Analysis, Edge } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { planRead } from '../../src/plan/read.ts';
import { planResolve } from '../../src/plan/resolve.ts';
import { analysisOf, bay, room } from './fixture.ts';
import { paperSource } from './paper-fixture.ts';
import { fieldReport, tiledAnalysis, tiledPlan } from './tile-fixture.ts';

/** One room, all of it walls, with its first whole tile. */
export function oneRoom(outline: Ring, firstTile: Ring, angleDeg = 0, over: Partial<Plan> = {}) {
  const plan = tiledPlan({ rooms: [room('r1', 'Hall', outline)], doorways: [], ...over });
  const edge: Edge = {
    ...(analysisOf().edges[0] as Edge),
    bay: 'B1',
    line: [...outline, outline[0] as Point],
  };
  const report = fieldReport({ rooms: ['r1'], firstTile, angleDeg, cuts: [] });
  const analysis = tiledAnalysis([report], { bays: [bay('B1', ['r1'], outline, 6, 4)], joints: [], edges: [edge] });
  return { plan, analysis, lines: setOutLines(plan, report, wallFaces(analysis), analysis) };
}

export function words(svg: string): string {
  return [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/gu)].map(([, inside]) => inside).join(' ');
}

/** Text of a sheet with every space that holds words together as any other. */
export function sheetWords(plan: Plan, analysis: Analysis): string {
  return words(pageSvg(setOutPages(paperSource(plan, analysis))[0])).replaceAll('\u00a0', ' ');
}

/** A plan file as the analyser lays it out. */
export function laidOut(file: object): { readonly plan: Plan; readonly analysis: Analysis } {
  const read = planRead(JSON.stringify({ format: 'screed-bays/plan', version: 1, name: 'Rooms', ...file }));
  if (!('file' in read)) throw new Error(JSON.stringify(read));
  const plan = planResolve(read.file);
  return { plan, analysis: createAnalyser().analyse(plan, {}) as Analysis };
}
