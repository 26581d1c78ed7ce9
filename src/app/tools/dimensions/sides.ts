import { type Point, pointBetween, pointDistance, pointEquals } from '../../../geometry/point.ts';
import { rayMeets } from '../../../geometry/segment.ts';
import { DIRECTION_DEG } from '../../../geometry/tolerance.ts';
import { edgeLengthSet } from '../../../plan/edits/corners.ts';
import { objectFind } from '../../../plan/edits/objects.ts';
import { type RoomEdge, roomEdges } from '../../../plan/edits/walls.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { refusalWords } from '../choose/refusals.ts';
import { objectNoun } from '../nouns.ts';
import type { Dimension, Dimensioned } from './dimension.ts';

/** So many sides of a room are measured, the longest: a curved wall has hundreds that nobody sets by hand. */
const mostSides = 60;
const straightAcross = Math.cos((DIRECTION_DEG * Math.PI) / 180);

/** The length of each side of a room and of its holes, beside the side on the floor. A typed length moves the far corner with the side that starts
 *  there. Example: a room of 4000 x 3000, side 2 -> [4000, 0] to [4000, 3000], 3000 mm */
export function sideDimensions(file: PlanFile, id: string): readonly Dimension[] {
  const found = objectFind(file, id);
  if (found?.list !== 'rooms') return [];
  const edges = roomEdges(found.object).filter(({ lengthMm }) => lengthMm > 0);
  const longest = new Set([...edges].sort((p, q) => q.lengthMm - p.lengthMm).slice(0, mostSides));
  const noun = objectNoun(file, id);
  return edges
    .filter((edge) => longest.has(edge))
    .map((edge) => {
      const { ring, edge: corner, a, b, away } = edge;
      const of = ring === 0 ? noun : `hole ${ring} in ${noun}`;
      const name = `Side ${corner + 1} of ${of}`;
      return {
        key: `side ${ring} ${corner}`,
        name,
        from: a,
        to: b,
        lengthMm: pointDistance(a, b),
        aside: [-away[0], -away[1]],
        stems: [isFree(edge, edges, a), isFree(edge, edges, b)],
        depthMm: depthBeside(edge, edges),
        edit: (lengthMm) => sideSet(file, edge, lengthMm, name),
      };
    });
}

function sideSet(file: PlanFile, { roomId, ring, edge }: RoomEdge, lengthMm: number, name: string): Dimensioned {
  const edited = edgeLengthSet(file, { id: roomId, ring, corner: edge }, lengthMm);
  if (edited.kind === 'refused') return { kind: 'refused', words: refusalWords(edited.why) };
  return { kind: 'done', step: { name: `Set s${name.slice(1)}`, file: edited.file } };
}

/** Whether no other side goes from the end of this one straight across the floor. */
function isFree({ ring, away }: RoomEdge, edges: readonly RoomEdge[], end: Point): boolean {
  return !edges.some((other) => {
    if (other.ring !== ring) return false;
    const sign = pointEquals(other.a, end) ? -1 : pointEquals(other.b, end) ? 1 : 0;
    return (other.along[0] * away[0] + other.along[1] * away[1]) * sign >= straightAcross;
  });
}

/** From the middle of a side across the floor to the next side, mm. */
function depthBeside(edge: RoomEdge, edges: readonly RoomEdge[]): number {
  const middle = pointBetween(edge.a, edge.b, 0.5);
  let least = Infinity;
  for (const other of edges) {
    if (other === edge) continue;
    const met = rayMeets(middle, [-edge.away[0], -edge.away[1]], other.a, other.b);
    if (met !== null && met < least) least = met;
  }
  return least;
}
