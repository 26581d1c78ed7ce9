import type { Point } from '../../src/geometry/point.ts';
import type { Ring } from '../../src/geometry/ring.ts';
import type { Chance } from './chance.ts';
import type { PlanJson, TilesJson } from './plan-json.ts';

/** The same plan elsewhere: turned, mirrored, moved, its corners shaken. */

export type Place = (p: Point) => Point;

export function turned(angleDeg: number): Place {
  const c = Math.cos((angleDeg * Math.PI) / 180);
  const s = Math.sin((angleDeg * Math.PI) / 180);
  return ([x, y]) => [c * x - s * y, s * x + c * y];
}

export const mirrored: Place = ([x, y]) => [-x, y];

export function moved(dx: number, dy: number): Place {
  return ([x, y]) => [x + dx, y + dy];
}

/** Every corner by up to `mostMm` in a direction of its own; the same point always moves the same way. */
export function shaken(mostMm: number, chance: Chance): Place {
  const known = new Map<string, Point>();
  return (p) => {
    const key = `${p[0]} ${p[1]}`;
    const old = known.get(key);
    if (old !== undefined) return old;
    const angle = chance.number(0, 2 * Math.PI);
    const by = chance.number(0, mostMm);
    const fresh: Point = [p[0] + by * Math.cos(angle), p[1] + by * Math.sin(angle)];
    known.set(key, fresh);
    return fresh;
  };
}

/** The plan with every point put through `place`, to 0.1 mm. */
export function planPlaced(plan: PlanJson, place: Place): PlanJson {
  const point: Place = (p) => {
    const [x, y] = place(p);
    return [Math.round(x * 10) / 10, Math.round(y * 10) / 10];
  };
  const line = (points: readonly Point[]) => points.map(point);
  const outlined = <T extends { readonly outline: Ring }>(list: readonly T[]) =>
    list.map((item) => ({ ...item, outline: line(item.outline) }));
  const lined = <T extends { readonly line: readonly Point[] }>(list: readonly T[]) =>
    list.map((item) => ({ ...item, line: line(item.line) }));
  return {
    ...plan,
    rooms: plan.rooms.map((r) => ({ ...r, outline: line(r.outline), holes: (r.holes ?? []).map(line) })),
    doorways: (plan.doorways ?? []).map((d) => ({ ...d, line: [point(d.line[0]), point(d.line[1])] as const })),
    columns: outlined(plan.columns ?? []),
    pipes: (plan.pipes ?? []).map((p) => ({ ...p, centre: point(p.centre) })),
    joinery: outlined(plan.joinery ?? []),
    slabContacts: outlined(plan.slabContacts ?? []),
    structuralJoints: lined(plan.structuralJoints ?? []),
    sunZones: outlined(plan.sunZones ?? []),
    drawnJoints: lined(plan.drawnJoints ?? []),
    noJoint: lined(plan.noJoint ?? []),
    keepClear: outlined(plan.keepClear ?? []),
    ...(plan.tiles ? { tiles: tilesPlaced(plan.tiles, place) } : {}),
    ...(plan.tileFields ? { tileFields: plan.tileFields.map((field) => tilesPlaced(field, place)) } : {}),
  };
}

/** So far off that what rounds or shakes a point does not turn the grid, mm. */
const FAR_MM = 1e6;

/** The same tiles elsewhere. Mirrored, a grid begins at another corner of its tile, for its courses are counted the other way, and they are shifted the
 *  other way; a mirrored herringbone is none that a plan can have. */
function tilesPlaced<T extends TilesJson>(tiles: T, place: Place): T {
  const { origin = [0, 0], angleDeg = 0, lengthMm, widthMm, groutMm = 3, bond = 'straight', offsetMm } = tiles;
  const c = Math.cos((angleDeg * Math.PI) / 180);
  const s = Math.sin((angleDeg * Math.PI) / 180);
  const at = (x: number, y: number) => place([origin[0] + x * c - y * s, origin[1] + x * s + y * c]);
  const [o, u, v] = [at(0, 0), at(FAR_MM, 0), at(0, FAR_MM)];
  const isMirrored = (u[0] - o[0]) * (v[1] - o[1]) < (u[1] - o[1]) * (v[0] - o[0]);
  if (isMirrored && bond === 'herringbone') throw new Error('a mirrored herringbone is no bond of a plan');
  const moduleMm = lengthMm + groutMm;
  const shiftMm = bond === 'third' ? moduleMm / 3 : (offsetMm ?? moduleMm / 3);
  const isShifted = bond === 'third' || bond === 'offset';
  return {
    ...tiles,
    origin: isMirrored ? at(0, widthMm) : o,
    angleDeg: (Math.atan2(u[1] - o[1], u[0] - o[0]) * 180) / Math.PI,
    ...(isMirrored && isShifted ? { bond: 'offset', offsetMm: moduleMm - shiftMm } : {}),
  };
}
