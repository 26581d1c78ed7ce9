import { lazy } from 'react';

/** Parts of the screen that are not in the file of the first view but in one of their own, which is fetched by the first
 *  of them that is asked for. */
const parts = () => import('./later-parts.ts');

export const Card = lazy(async () => ({ default: (await parts()).Card }));
export const Begin = lazy(async () => ({ default: (await parts()).Begin }));
export const CoveringsPanel = lazy(async () => ({ default: (await parts()).CoveringsPanel }));
export const FloorPanel = lazy(async () => ({ default: (await parts()).FloorPanel }));
export const ObstaclesPanel = lazy(async () => ({ default: (await parts()).ObstaclesPanel }));
export const OpeningsPanel = lazy(async () => ({ default: (await parts()).OpeningsPanel }));
export const PapersPanel = lazy(async () => ({ default: (await parts()).PapersPanel }));

/** So long after the first view stands, ms. */
const afterMs = 2000;

/** Fetches them once the first view stands, so that they are there when they are asked for. */
export function laterFetch(): void {
  setTimeout(parts, afterMs);
}
