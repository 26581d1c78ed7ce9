import { type Point, pointBetween, pointDistance } from '../../../geometry/point.ts';
import { boxOf } from '../../../geometry/ring.ts';
import { segmentDistance } from '../../../geometry/segment.ts';
import type { RingCorner } from '../../../plan/edits/corners.ts';
import { objectFind, objectRings } from '../../../plan/edits/objects.ts';
import { thingIsPlanned } from '../../state/thing.ts';
import type { SketchMark } from '../sketch.ts';
import type { Hand, Scene } from '../stance.ts';

/** A place on the one chosen thing that can be taken hold of. */
export interface Handle extends RingCorner {
  readonly part: 'corner' | 'side';
  readonly at: Point;
  /** Least side of the upright box round the thing, mm. */
  readonly leastMm: number;
  /** Ends of the side. */
  readonly side: readonly [Point, Point];
}

/** A thing of more corners is changed in its table: handles would hide it. */
const mostCorners = 60;

/** Handles of the one thing that is chosen; none where several are, or what is chosen is no thing of the plan. */
export function handlesOf({ chosen, file }: Pick<Scene, 'chosen' | 'file'>): readonly Handle[] {
  const [thing, ...more] = chosen;
  if (thing === undefined || more.length > 0 || !thingIsPlanned(thing)) return [];
  const found = objectFind(file, thing.key);
  if (found === null) return [];
  const id = thing.key;
  if ('line' in found.object) {
    const { line } = found.object;
    const corners = line.map((at, corner) => handle({ id, ring: 0, corner }, 'corner', line, false, at));
    return found.list === 'doorways' || line.length > mostCorners ? corners.slice(0, 2) : corners;
  }
  return objectRings(found).flatMap((ring, i) =>
    ring.length > mostCorners
      ? []
      : ring.flatMap((at, corner) => {
          const ref = { id, ring: i, corner };
          const next = ring[(corner + 1) % ring.length] ?? at;
          return [handle(ref, 'corner', ring, true, at), handle(ref, 'side', ring, true, pointBetween(at, next, 0.5))];
        }),
  );
}

function handle(ref: RingCorner, part: Handle['part'], points: readonly Point[], closed: boolean, at: Point): Handle {
  const a = points[ref.corner] ?? at;
  const b = points[closed ? (ref.corner + 1) % points.length : ref.corner + 1] ?? a;
  const { minX, maxX, minY, maxY } = boxOf(points);
  const leastMm = closed ? Math.min(maxX - minX, maxY - minY) : Math.max(maxX - minX, maxY - minY);
  return { ...ref, part, at, leastMm, side: [a, b] };
}

/** A thing is taken by its handles where it is so many times as wide as the hand may miss: a smaller one is moved. */
const leastReaches = 2;
/** Within the thing a handle reaches along at most this share of its side: the rest of it is there to be moved by. */
const insideShare = 0.25;

/** The handle under the hand: corners before sides. */
export function handleAt(handles: readonly Handle[], { at, reachMm }: Hand): Handle | null {
  if (handles.length === 0) return null;
  const { minX, maxX, minY, maxY } = boxOf(handles.map((each) => each.at));
  const isInside = at[0] >= minX && at[0] <= maxX && at[1] >= minY && at[1] <= maxY;
  const reachOf = ({ side: [a, b] }: Handle) =>
    isInside && pointDistance(a, b) > 0 ? Math.min(reachMm, pointDistance(a, b) * insideShare) : reachMm;
  // A side is taken anywhere along it.
  const away = ({ part, at: place, side: [a, b] }: Handle) =>
    part === 'side' ? segmentDistance(a, b, at) : pointDistance(place, at);
  const near = (part: Handle['part']) =>
    handles
      .filter((each) => each.part === part && each.leastMm >= leastReaches * reachMm)
      .filter((each) => away(each) <= reachOf(each))
      .sort((p, q) => away(p) - away(q))[0];
  return near('corner') ?? near('side') ?? null;
}

export function handleMarks(handles: readonly Handle[]): readonly SketchMark[] {
  return handles.map(({ part, at }) => ({ mark: part, at, tone: 'hand' }));
}
