import { type Point, vectorLength } from '../../geometry/point.ts';
import { regionContains } from '../../geometry/region.ts';
import { boxOf } from '../../geometry/ring.ts';
import { segmentDistance } from '../../geometry/segment.ts';
import { type ObjectList, objectPoints, objectsOf, type PlanObject } from '../../plan/edits/objects.ts';
import type { PlanFile } from '../../plan/schema.ts';
import type { Thing } from '../state/thing.ts';
import { type Viewport, viewportLengthMm, viewportToPlan } from './viewport.ts';

/** Which kind of thing is meant where several lie: what is small and drawn on top of others first. */
const order: readonly ObjectList[] = [
  'drawnJoints',
  'noJoint',
  'structuralJoints',
  'pipes',
  'doorways',
  'columns',
  'slabContacts',
  'joinery',
  'sunZones',
  'keepClear',
  'rooms',
];

/** The thing of the plan under a place of the board; lines and small things may be missed by `reachPx`. */
export function planHit(file: PlanFile, view: Viewport, atPx: Point, reachPx: number): Thing | null {
  const at = viewportToPlan(view, atPx);
  const reachMm = viewportLengthMm(view, reachPx);
  let best: PlanObject | null = null;
  for (const found of objectsOf(file)) {
    const isAbove = best === null || order.indexOf(found.list) < order.indexOf(best.list);
    if (isAbove && objectHit(found, at, reachMm)) best = found;
  }
  if (best === null) return null;
  return { kind: best.list === 'rooms' ? 'room' : 'object', key: best.object.id };
}

function objectHit(found: PlanObject, at: Point, reachMm: number): boolean {
  const { minX, maxX, minY, maxY } = boxOf(objectPoints(found));
  if (at[0] < minX - reachMm || at[0] > maxX + reachMm || at[1] < minY - reachMm || at[1] > maxY + reachMm)
    return false;
  const { object } = found;
  if ('line' in object) {
    const reach = 'wallMm' in object && object.wallMm !== undefined ? Math.max(reachMm, object.wallMm / 2) : reachMm;
    return object.line.slice(1).some((b, i) => segmentDistance(object.line[i] ?? b, b, at) <= reach);
  }
  if ('centre' in object)
    return vectorLength(at[0] - object.centre[0], at[1] - object.centre[1]) <= Math.max(reachMm, object.diameterMm / 2);
  const holes = 'holes' in object ? (object.holes ?? []) : [];
  if (regionContains({ outline: object.outline, holes }, at)) return true;
  const isSmall = Math.max(maxX - minX, maxY - minY) < 2 * reachMm;
  return isSmall && found.list !== 'rooms';
}
