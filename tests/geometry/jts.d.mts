import type { ClipOperation } from '../../src/geometry/clip.ts';
import type { Region } from '../../src/geometry/ring.ts';

/** Area of what an outside library makes of two lists of disjoint regions with simple rings, in the square of their unit. */
export function jtsArea(operation: ClipOperation, a: readonly Region[], b: readonly Region[]): number;
