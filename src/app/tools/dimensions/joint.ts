import { lineMiddle, lineStraight } from '../../../geometry/line.ts';
import { type Point, pointDirection, pointDistance, vectorLength } from '../../../geometry/point.ts';
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
/** The line stands so far along what lies opposite, the first that keeps off the words of bays and joints: in the middle it would cover the joint's own. */
const lineShares = [0.25, 0.75, 0.12, 0.88] as const;
/** So far, as a share of what lies opposite. */
const wordsShare = 0.1;

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
    const atMm = low + (high - low) * clearShare(scene, measured, beside);
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

/** How far along a joint and how far beside it a place lies, mm. */
function placeBeside({ from, to }: Measured, way: Point): (at: Point) => Point {
  const along = pointDirection(from, to);
  return ([x, y]) => {
    const [dx, dy] = [x - from[0], y - from[1]];
    return [dx * along[0] + dy * along[1], dx * way[0] + dy * way[1]];
  };
}

/** Where the line keeps off the words that stand beside the joint; where no place does, the farthest off. */
function clearShare({ result }: DimensionScene, measured: Measured, { way, lengthMm, low, high }: Beside): number {
  const place = placeBeside(measured, way);
  const wordsAt = (result?.drawing.items ?? []).flatMap((item) => {
    if (item.shape !== 'label') return [];
    const { seat } = item;
    const [atMm, awayMm] = place(seat.kind === 'inside' ? seat.at : lineMiddle(seat.line));
    const isBeside = awayMm > -SAME_LINE_MM && awayMm < lengthMm;
    return isBeside ? [(atMm - low) / (high - low)] : [];
  });
  const clear = (share: number) => Math.min(wordsShare, ...wordsAt.map((at) => Math.abs(at - share)));
  return [...lineShares].sort((a, b) => clear(b) - clear(a))[0] ?? lineShares[0];
}

function besideOf({ file, result }: DimensionScene, measured: Measured, way: Point): Beside | null {
  const { from, to, isOwn } = measured;
  const lengthMm = pointDistance(from, to);
  const place = placeBeside(measured, way);
  let best: Beside | null = null;
  const take = (a: Point, b: Point) => {
    const [p, q] = [place(a), place(b)];
    const [first, last] = p[0] <= q[0] ? [p, q] : [q, p];
    const [low, high] = [Math.max(0, first[0]), Math.min(lengthMm, last[0])];
    const [runMm, riseMm] = [last[0] - first[0], last[1] - first[1]];
    if (high - low <= SAME_LINE_MM || Math.abs(riseMm) > mostSlant * vectorLength(runMm, riseMm)) return;
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
