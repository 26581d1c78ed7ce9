import type { Edge, EdgeAlong } from '../../src/plan/analysis.ts';
import { between, circle, distanceToSegments, lineSegments, type Segment, segments } from './planar.ts';
import { figure, type Scene } from './scene.ts';

/** Each edge says rightly what it runs along. */

interface Object {
  readonly id: string;
  readonly along: EdgeAlong;
  readonly sides: readonly Segment[];
  /** A pipe's circle is drawn by some number of corners. */
  readonly slackMm: number;
}

export function edgeFaults(scene: Scene): string[] {
  const { plan, floor, analysis } = scene;
  const objects: Object[] = [
    ...plan.columns.map((c) => ({ id: c.id, along: 'column' as const, sides: segments(c.outline), slackMm: 0.5 })),
    ...plan.joinery
      .filter((j) => j.under === 'built-off-slab')
      .map((j) => ({ id: j.id, along: 'joinery' as const, sides: segments(j.outline), slackMm: 0.5 })),
    ...plan.pipes.map((p) => {
      const sides = segments(circle(p.centre, p.diameterMm));
      return { id: p.id, along: 'pipe' as const, sides, slackMm: 0.5 + p.diameterMm * 0.04 };
    }),
  ];
  const walls = [...floor.rooms.map((r) => r.shape), ...floor.doors.map((d) => d.floor)]
    .flat()
    .flatMap((r) => [r.outline, ...r.holes].flatMap(segments));
  return analysis.edges.flatMap((edge) => oneEdge(edge, objects, walls));
}

function oneEdge(edge: Edge, objects: readonly Object[], walls: readonly Segment[]): string[] {
  for (const [a, b] of lineSegments(edge.line)) {
    const middle = between(a, b, 0.5);
    const beside = objects.filter((o) => distanceToSegments(middle, o.sides) < o.slackMm);
    const where = `${edge.id} at ${middle.map(figure).join(' ')}`;
    const own = beside.find((o) => o.along === edge.along);
    if (edge.along !== 'wall' && own === undefined) return [`${where} runs along no ${edge.along}`];
    if (edge.along !== 'wall' || beside.length === 0 || distanceToSegments(middle, walls) < 1) continue;
    return [`${where} is called a wall and runs along ${beside.map((o) => o.id).join(', ')}`];
  }
  return [];
}
