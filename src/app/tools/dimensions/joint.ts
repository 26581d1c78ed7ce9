import { lineStraight } from '../../../geometry/line.ts';
import { type Point, pointDirection, pointDistance } from '../../../geometry/point.ts';
import { DIRECTION_DEG, EQUAL_LENGTH_MM, SAME_LINE_MM } from '../../../geometry/tolerance.ts';
import type { Joint } from '../../../plan/analysis.ts';
import { roomEdges } from '../../../plan/edits/walls.ts';
import { type DrawnJoint, jointAsDrawn, jointDragged, jointShifted } from '../choose/joint.ts';
import { objectNoun } from '../nouns.ts';
import { type Dimension, type Dimensioned, type DimensionScene, tooLong, wayWords } from './dimension.ts';

/** A joint that is measured. */
interface Measured {
  readonly noun: string;
  readonly from: Point;
  readonly to: Point;
  /** Joints of the analysis that are the same line. */
  readonly isOwn: (joint: Joint) => boolean;
  /** As a drawn one of the plan; null where it cannot be drawn. */
  readonly drawn: () => DrawnJoint | null;
}

/** What lies beside the joint on one side of it. */
interface Beside {
  readonly way: Point;
  readonly lengthMm: number;
  /** From which to which place along the joint, mm. */
  readonly low: number;
  readonly high: number;
}

const mostSlant = Math.sin((DIRECTION_DEG * Math.PI) / 180);
/** The line stands so far along what lies opposite: in the middle it would cover the joint's own words. */
const lineShare = 0.25;

/** From a straight joint to the next wall or joint parallel to it on either side, square to it: the least distance over the length that they have in
 *  common. A typed distance moves a drawn joint, and draws one that was found, as a drag does.
 *  Example: a joint at x 4000 in a room from x 0 to 9000 -> 4000 to the left, 5000 to the right */
export function jointDimensions(scene: DimensionScene): readonly Dimension[] {
  const measured = measuredOf(scene);
  if (measured === null) return [];
  const { noun, from, to } = measured;
  const [ux, uy] = pointDirection(from, to);
  const sides = ([-1, 1] as const).map((side) => besideOf(scene, measured, [-uy * side, ux * side]));
  return sides.flatMap((beside, i): readonly Dimension[] => {
    const other = sides[1 - i];
    if (!beside) return [];
    const { way, lengthMm, low, high } = beside;
    const atMm = low + (high - low) * lineShare;
    const at: Point = [from[0] + ux * atMm, from[1] + uy * atMm];
    const mostMm = other ? lengthMm + other.lengthMm : Infinity;
    return [
      {
        key: wayWords(way),
        name: `From ${noun} ${wayWords(way)}`,
        from: at,
        to: [at[0] + way[0] * lengthMm, at[1] + way[1] * lengthMm],
        lengthMm,
        aside: null,
        stems: [false, false],
        depthMm: Infinity,
        edit: (mm) => shifted(measured, beside, mm, mostMm),
      },
    ];
  });
}

function shifted({ noun, drawn }: Measured, { way, lengthMm }: Beside, mm: number, mostMm: number): Dimensioned {
  const joint = drawn();
  if (mm < EQUAL_LENGTH_MM) return { kind: 'refused', words: 'A joint has floor on both sides' };
  if (mm >= mostMm) return tooLong('The next wall or joint stands there', mostMm);
  const by = lengthMm - mm;
  const file = joint && jointShifted(joint, [way[0] * by, way[1] * by]);
  if (joint === null || file === null) return { kind: 'refused', words: 'No floor here' };
  return { kind: 'done', step: { name: `Move ${noun}`, file }, choose: [{ kind: 'object', key: joint.id }] };
}

function measuredOf({ file, result, chosen, joint }: DimensionScene): Measured | null {
  const [thing] = chosen;
  if (thing === undefined || result === null) return null;
  const dragged = jointDragged(thing, { file, result });
  const found = dragged?.found ?? null;
  // A found joint that is being dragged is a drawn one of the shown plan already.
  const drawnId = dragged?.drawn ?? joint;
  const own = file.drawnJoints?.find(({ id }) => id === drawnId);
  const [from, to, ...more] = lineStraight(own?.line ?? found?.line ?? []);
  if (from === undefined || to === undefined || more.length > 0 || pointDistance(from, to) === 0) return null;
  return {
    noun: found === null ? objectNoun(file, own?.id ?? '') : `joint ${found.id}`,
    from,
    to,
    isOwn: ({ run, sources }) => run === found?.run || (own !== undefined && sources.includes(own.id)),
    drawn() {
      if (own !== undefined) return { file, id: own.id, line: own.line, analysis: result.analysis };
      return dragged && jointAsDrawn(dragged, file);
    },
  };
}

function besideOf({ file, result }: DimensionScene, { from, to, isOwn }: Measured, way: Point): Beside | null {
  const along = pointDirection(from, to);
  const lengthMm = pointDistance(from, to);
  const place = ([x, y]: Point): Point => {
    const [dx, dy] = [x - from[0], y - from[1]];
    return [dx * along[0] + dy * along[1], dx * way[0] + dy * way[1]];
  };
  let best: Beside | null = null;
  const take = (a: Point, b: Point) => {
    const [p, q] = [place(a), place(b)];
    const [first, last] = p[0] <= q[0] ? [p, q] : [q, p];
    const [low, high] = [Math.max(0, first[0]), Math.min(lengthMm, last[0])];
    const [runMm, riseMm] = [last[0] - first[0], last[1] - first[1]];
    if (high - low <= SAME_LINE_MM || Math.abs(riseMm) > mostSlant * Math.hypot(runMm, riseMm)) return;
    const away = (at: number) => first[1] + (riseMm * (at - first[0])) / runMm;
    const leastMm = Math.min(away(low), away(high));
    if (leastMm >= EQUAL_LENGTH_MM && (best === null || leastMm < best.lengthMm)) {
      best = { way, lengthMm: leastMm, low, high };
    }
  };
  for (const room of file.rooms) {
    for (const { a, b, away } of roomEdges(room)) if (away[0] * way[0] + away[1] * way[1] > 0) take(a, b);
  }
  for (const joint of result?.analysis.joints ?? []) {
    if (isOwn(joint)) continue;
    for (const [i, b] of joint.line.slice(1).entries()) take(joint.line[i] as Point, b);
  }
  return best;
}
