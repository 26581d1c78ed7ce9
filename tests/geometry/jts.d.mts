import type { ClipOperation } from '../../src/geometry/clip.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { Region } from '../../src/geometry/ring.ts';

/** Area of what an outside library makes of two lists of disjoint regions with simple rings, in the square of their unit. */
export function jtsArea(operation: ClipOperation, a: readonly Region[], b: readonly Region[]): number;

/** The pieces that it makes, rings in either direction. */
export function jtsPieces(operation: ClipOperation, a: readonly Region[], b: readonly Region[]): Region[];

/** Regions without the slits in and between them that are narrower than the gap. */
export function jtsClosed(regions: readonly Region[], gap: number): Region[];

/** Areas of what lines enclose that meet only at their ends, net of what lies within. */
export function jtsFaceAreas(segments: readonly (readonly [Point, Point])[]): number[];
