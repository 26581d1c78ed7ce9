import type { Point } from '../geometry/point.ts';
import type { Region, Ring } from '../geometry/ring.ts';
import { lineInside } from '../geometry/scanline.ts';
import { cornerTurn, NOTCH_RAD } from './notch.ts';
import type { PartCut } from './part.ts';

/** Cuts to begin with that no straight cut through a whole rectangle can make: one chord from a corner where its line crosses more floor
 *  further on; the two pinwheels round a core, in which every joint stops at the next; and the bay beside one side of a core, with a joint
 *  that goes on along the side at one corner and one square to it at the other. */
export function startsOf(region: Region): PartCut[][] {
  const rings = [region.outline, ...region.holes];
  const chords = rings.flatMap((ring) => cornerChords(ring, rings));
  const single = region.holes.length > 0 ? [] : chords.filter((chord) => chord.more).map((chord) => [chord.cut]);
  const around = region.holes.flatMap((hole) => [...pinwheels(hole, rings), ...besideSides(hole, rings)]);
  return [...around, ...single];
}

interface CornerChord {
  readonly cut: PartCut;
  /** Whether the line crosses floor elsewhere too. */
  readonly more: boolean;
}

/** The chords that go on straight from the walls of each corner that turns in. */
function cornerChords(ring: Ring, rings: readonly Ring[]): CornerChord[] {
  return ring.flatMap((p, i) => {
    const a = ring[(i + ring.length - 1) % ring.length] as Point;
    const b = ring[(i + 1) % ring.length] as Point;
    if (cornerTurn(a, p, b) >= -NOTCH_RAD) return [];
    return ([0, 1] as const).flatMap((axis) => chordAt(rings, axis, p, 0) ?? []);
  });
}

/** The chord through p along an axis that starts at p; with a side, only the one that goes that way. */
function chordAt(rings: readonly Ring[], axis: 0 | 1, p: Point, side: -1 | 0 | 1): CornerChord | null {
  const other = axis === 0 ? 1 : 0;
  const chords = lineInside(rings, axis, p[axis]);
  const own = chords.find(([from, to]) => (side >= 0 && from === p[other]) || (side <= 0 && to === p[other]));
  if (!own) return null;
  const at = (along: number): Point => (axis === 0 ? [p[axis], along] : [along, p[axis]]);
  return { cut: { kind: 'field', from: at(own[0]), to: at(own[1]) }, more: chords.length > 1 };
}

/** Both ways round a core with four square corners. */
function pinwheels(hole: Ring, rings: readonly Ring[]): PartCut[][] {
  if (hole.length !== 4) return [];
  return [true, false].flatMap((onward) => {
    const cuts = hole.map((p, i): PartCut | null => {
      const from = hole[(i + (onward ? 3 : 1)) % 4] as Point;
      const axis = from[0] === p[0] ? 0 : from[1] === p[1] ? 1 : null;
      if (axis === null) return null;
      const other = axis === 0 ? 1 : 0;
      return chordAt(rings, axis, p, p[other] > from[other] ? 1 : -1)?.cut ?? null;
    });
    const found = cuts.filter((cut): cut is PartCut => cut !== null);
    return found.length === 4 ? [found] : [];
  });
}

function besideSides(hole: Ring, rings: readonly Ring[]): PartCut[][] {
  if (hole.length !== 4) return [];
  return hole.flatMap((p, i) => {
    const q = hole[(i + 1) % 4] as Point;
    const axis = p[0] === q[0] ? 0 : p[1] === q[1] ? 1 : null;
    if (axis === null) return [];
    const across = axis === 0 ? 1 : 0;
    const beyond = hole[(i + 2) % 4] as Point;
    const off = q[axis] > beyond[axis] ? 1 : -1;
    const onward = q[across] > p[across] ? 1 : -1;
    const cut = (axisOf: 0 | 1, from: Point, side: 1 | -1) => chordAt(rings, axisOf, from, side)?.cut;
    return [
      [cut(axis, p, onward === 1 ? -1 : 1), cut(across, q, off)],
      [cut(across, p, off), cut(axis, q, onward)],
    ].flatMap(([a, b]) => (a && b ? [[a, b]] : []));
  });
}
