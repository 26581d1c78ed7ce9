import { type BoxIndex, boxIndexOf } from '../geometry/box-index.ts';
import { lineMiddle } from '../geometry/line.ts';
import { type Chain, chainOnGrid } from '../geometry/noding.ts';
import type { Point } from '../geometry/point.ts';
import { boxAround, boxOf, type Ring, ringArea, ringCentroid, ringContains } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { subdivisionOf } from '../geometry/subdivision.ts';
import { CRUMB_MM2, GRID_PER_MM, WELD_GRID } from '../geometry/tolerance.ts';
import type { FindingFact, OffFloor } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import { type FloorFace, faceName } from './faces.ts';
import { type Linework, pipeRing, type Role } from './linework.ts';

/** A thing that is to stand or lie on floor. */
interface Thing {
  readonly what: OffFloor;
  readonly id: string;
  /** What people know it by. */
  readonly name: string;
  readonly at: Point;
  readonly chain: Chain;
  /** Whether it takes away the floor where it stands. */
  readonly takes: boolean;
}

/** Things that touch no floor of a room or doorway, or touch it along an edge only, and so do nothing. Columns are told of where joints are
 *  sought for them. Nearly always a corner that stands on floor settles it; the rest are laid over the outlines near them in one plane. */
export function offFloorFindings(plan: Plan, { chains, roles }: Pick<Linework, 'chains' | 'roles'>): FindingFact[] {
  const closed = chains.flatMap((chain, i) => (chain.closed ? [i] : []));
  const rings = closed.map((i) => chains[i]?.points ?? []);
  const ground: Ground = { rings, roles: closed.map((i) => roles[i] as Role), index: boxIndexOf(rings.map(boxOf)) };
  const doubtful = thingsOf(plan).filter((thing) => !hasCornerOn(thing, ground));
  const on = thingsLaidOver(doubtful, ground);
  return doubtful
    .filter((thing) => !on.has(thing))
    .map(({ what, id, name, at }): FindingFact => ({ code: 'object-off-floor', what, id: name, at, refs: [id] }));
}

function thingsOf(plan: Plan): readonly Thing[] {
  type Own = { readonly id: string; readonly name?: string; readonly outline: readonly Point[] };
  const area =
    (what: OffFloor, takes: boolean) =>
    ({ id, name = id, outline }: Own): Thing => ({
      what,
      id,
      name,
      at: ringCentroid(outline),
      chain: chainOnGrid(outline, true),
      takes,
    });
  return [
    ...plan.pipes.map((pipe) => ({ ...area('pipe', true)({ id: pipe.id, outline: pipeRing(pipe) }), at: pipe.centre })),
    ...plan.joinery.map((unit) => area('joinery', unit.under === 'built-off-slab')(unit)),
    ...plan.slabContacts.map(area('slab contact', false)),
    ...plan.sunZones.map(area('sun zone', false)),
    ...plan.keepClear.map(area('keep-clear area', false)),
    ...plan.noJoint.map(({ id, line }) => ({
      what: 'taken-away joint' as const,
      id,
      name: id,
      at: lineMiddle(line),
      chain: chainOnGrid(line, false),
      takes: false,
    })),
  ];
}

/** The outlines of a plan that bound floor, on grid steps. */
interface Ground {
  readonly rings: readonly Ring[];
  readonly roles: readonly Role[];
  readonly index: BoxIndex;
}

function isGround({ takes }: Thing, { floor, room, doorway }: FloorFace): boolean {
  return takes ? room >= 0 || doorway >= 0 : floor;
}

/** So many corners of a thing are tried: one that follows a wall of many corners has none that tells. */
const MOST_TRIED = 8;

/** Whether a corner of the thing lies on floor, further from every outline than a weld. */
function hasCornerOn(thing: Thing, { rings, roles, index }: Ground): boolean {
  const every = Math.ceil(thing.chain.points.length / MOST_TRIED);
  return thing.chain.points.some((p, corner) => {
    if (corner % every !== 0) return false;
    const near = index.near(boxAround(boxOf([p]), WELD_GRID));
    const inside = new Set(near.filter((i) => ringContains(rings[i] as Ring, p)));
    return isGround(thing, faceName(inside, roles)) && !near.some((i) => isBeside(rings[i] as Ring, p));
  });
}

function isBeside(ring: Ring, p: Point): boolean {
  return ring.some((a, i) => segmentDistance(a, ring[(i + 1) % ring.length] as Point, p) <= WELD_GRID);
}

/** The things that lie over floor, or as lines run through it or along its edge, found in a plane of them and the outlines near them. */
function thingsLaidOver(things: readonly Thing[], { rings, roles, index }: Ground): ReadonlySet<Thing> {
  const near = [...new Set(things.flatMap(({ chain }) => index.near(boxAround(boxOf(chain.points), WELD_GRID))))];
  if (near.length === 0) return new Set();
  const outlines = near.map((i): Chain => ({ points: rings[i] as Ring, closed: true }));
  const outlineRoles = near.map((i) => roles[i] as Role);
  const plane = subdivisionOf([...outlines, ...things.map(({ chain }) => chain)]);
  const faces = plane.faces.map((face) => faceName(face.inside, outlineRoles));
  const over = new Map<Thing, number>();
  const on = new Set<Thing>();
  plane.faces.forEach((face, f) => {
    for (const chain of face.inside) {
      const thing = things[chain - outlines.length];
      if (thing && isGround(thing, faces[f] as FloorFace)) over.set(thing, (over.get(thing) ?? 0) + face.area);
    }
  });
  const crumb = CRUMB_MM2 * GRID_PER_MM ** 2;
  for (const [thing, area] of over) if (area > Math.min(crumb, ringArea(thing.chain.points) / 2)) on.add(thing);
  for (const { chains, left, right } of plane.edges) {
    for (const chain of chains) {
      const thing = things[chain - outlines.length];
      if (thing && !thing.chain.closed && (faces[left]?.floor || faces[right]?.floor)) on.add(thing);
    }
  }
  return on;
}
