import { regionsIntersect } from '../geometry/clip.ts';
import { regionArea, regionPerimeter } from '../geometry/region.ts';
import { type Box, boxOf, type Region, type Ring, ringArea, ringSignedArea } from '../geometry/ring.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { BayShape } from '../plan/analysis.ts';

/** A bay with what the questions of this folder ask of it again and again. */
export interface BayBody {
  readonly id: string;
  readonly rooms: readonly string[];
  readonly region: Region;
  readonly box: Box;
  /** Outline and holes, each with the side on which the screed lies: 1 to the right of its way on the sheet, -1 to the left. */
  readonly rings: readonly { readonly ring: Ring; readonly side: number }[];
}

export function bayBody(bay: BayShape): BayBody {
  const region = { outline: bay.outline, holes: bay.holes };
  return {
    id: bay.id,
    rooms: bay.rooms,
    region,
    box: boxOf(bay.outline),
    rings: [
      { ring: bay.outline, side: Math.sign(ringSignedArea(bay.outline)) },
      ...bay.holes.map((ring) => ({ ring, side: -Math.sign(ringSignedArea(ring)) })),
    ],
  };
}

/** An outline with its box: of what stands or shines on the floor. */
export interface Footprint {
  readonly outline: Ring;
  readonly box: Box;
}

export function footprintOf(outline: Ring): Footprint {
  return { outline, box: boxOf(outline) };
}

/** The part of the bay under a footprint, mm; nothing where they meet along less than the width of a weld.
 *  Example: a bay of 4 x 3 m and a footprint over its right metre -> one region of 1 x 3 m. */
export function bayUnder(bay: BayBody, { outline, box }: Footprint): Region[] {
  return boxesOverlap(bay.box, box) ? regionsWide(regionsIntersect([bay.region], [{ outline, holes: [] }])) : [];
}

/** Whether a footprint covers any of the bay. Upright rectangles, which most are, are settled by their boxes. */
export function bayIsUnder(bay: BayBody, footprint: Footprint): boolean {
  if (!boxesOverlap(bay.box, footprint.box)) return false;
  const plain = bay.region.holes.length === 0 && isUprightRectangle(bay.region.outline, bay.box);
  return (plain && isUprightRectangle(footprint.outline, footprint.box)) || bayUnder(bay, footprint).length > 0;
}

/** Without those that are narrower on average than a weld: what snapping leaves where two things only touch. */
export function regionsWide(regions: readonly Region[]): Region[] {
  return regions.filter((region) => regionArea(region) > (regionPerimeter(region) / 2) * WELD_MM);
}

function boxesOverlap(a: Box, b: Box): boolean {
  return (
    Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX) > WELD_MM &&
    Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY) > WELD_MM
  );
}

function isUprightRectangle(ring: Ring, box: Box): boolean {
  return ring.length === 4 && ringArea(ring) === (box.maxX - box.minX) * (box.maxY - box.minY);
}
