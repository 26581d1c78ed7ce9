import type { Point } from '../geometry/point.ts';
import type { Region, Ring } from '../geometry/ring.ts';
import { lineInside } from '../geometry/scanline.ts';
import { groutAlong } from './grout.ts';
import { lineBesideCorner } from './grout-lines.ts';
import { cornerTurn, NOTCH_RAD } from './notch.ts';
import type { Part, PartCut } from './part.ts';

/** Cuts to begin with that no straight cut through a whole rectangle can make: one chord from a corner where its line crosses more floor
 *  further on; the two pinwheels round a core, in which every joint stops at the next; and the bay beside one side of a core, with a joint
 *  that goes on along the side at one corner and one square to it at the other. */
export function startsOf(region: Region, part: Part): PartCut[][] {
  const rings = [region.outline, ...region.holes];
  const chords = rings.flatMap((ring) => cornerChords(ring, rings, part));
  const single = region.holes.length > 0 ? [] : chords.filter((chord) => chord.more).map((chord) => [chord.cut]);
  const around = region.holes.flatMap((hole) => [...pinwheels(hole, rings, part), ...besideSides(hole, rings, part)]);
  return [...around, ...single];
}

interface CornerChord {
  readonly cut: PartCut;
  /** Whether the line crosses floor elsewhere too. */
  readonly more: boolean;
}

/** The chords that go on straight from the walls of each corner that turns in. */
function cornerChords(ring: Ring, rings: readonly Ring[], part: Part): CornerChord[] {
  return ring.flatMap((p, i) => {
    const a = ring[(i + ring.length - 1) % ring.length] as Point;
    const b = ring[(i + 1) % ring.length] as Point;
    if (cornerTurn(a, p, b) >= -NOTCH_RAD) return [];
    return ([0, 1] as const).flatMap((axis) => chordAt(rings, part, axis, ring, i, 0) ?? []);
  });
}

/** The chord along an axis that starts at a corner, or in the grout line beside it; with a side, only the one that goes that way. */
function chordAt(
  rings: readonly Ring[],
  { grout, layout }: Part,
  axis: 0 | 1,
  ring: Ring,
  corner: number,
  side: -1 | 0 | 1,
): CornerChord | null {
  const other = axis === 0 ? 1 : 0;
  const p = ring[corner] as Point;
  const rows = groutAlong(grout, axis);
  const line = (rows && lineBesideCorner(rows, ring, corner, axis, layout.reentrantMm)) ?? p[axis];
  const chords = lineInside(rings, axis, line);
  const own = chords.find(([from, to]) => (side >= 0 && from === p[other]) || (side <= 0 && to === p[other]));
  if (!own) return null;
  const at = (along: number): Point => (axis === 0 ? [line, along] : [along, line]);
  return { cut: { kind: 'field', from: at(own[0]), to: at(own[1]) }, more: chords.length > 1 };
}

/** Both ways round a core with four square corners. */
function pinwheels(hole: Ring, rings: readonly Ring[], part: Part): PartCut[][] {
  if (hole.length !== 4) return [];
  return [true, false].flatMap((onward) => {
    const cuts = hole.map((p, i): PartCut | null => {
      const from = hole[(i + (onward ? 3 : 1)) % 4] as Point;
      const axis = from[0] === p[0] ? 0 : from[1] === p[1] ? 1 : null;
      if (axis === null) return null;
      const other = axis === 0 ? 1 : 0;
      return chordAt(rings, part, axis, hole, i, p[other] > from[other] ? 1 : -1)?.cut ?? null;
    });
    const found = cuts.filter((cut): cut is PartCut => cut !== null);
    return found.length === 4 ? [found] : [];
  });
}

function besideSides(hole: Ring, rings: readonly Ring[], part: Part): PartCut[][] {
  if (hole.length !== 4) return [];
  return hole.flatMap((p, i) => {
    const next = (i + 1) % 4;
    const q = hole[next] as Point;
    const axis = p[0] === q[0] ? 0 : p[1] === q[1] ? 1 : null;
    if (axis === null) return [];
    const across = axis === 0 ? 1 : 0;
    const beyond = hole[(i + 2) % 4] as Point;
    const off = q[axis] > beyond[axis] ? 1 : -1;
    const onward = q[across] > p[across] ? 1 : -1;
    const cut = (axisOf: 0 | 1, corner: number, side: 1 | -1) => chordAt(rings, part, axisOf, hole, corner, side)?.cut;
    return [
      [cut(axis, i, onward === 1 ? -1 : 1), cut(across, next, off)],
      [cut(across, i, off), cut(axis, next, onward)],
    ].flatMap(([a, b]) => (a && b ? [[a, b]] : []));
  });
}
