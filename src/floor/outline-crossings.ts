import { type Chain, chainOnGrid } from '../geometry/noding.ts';
import type { Point } from '../geometry/point.ts';
import { ringIsConvex, ringSignedArea } from '../geometry/ring.ts';
import { type Subdivision, subdivisionOf } from '../geometry/subdivision.ts';
import { CRUMB_MM2, GRID_PER_MM } from '../geometry/tolerance.ts';
import type { FindingFact } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import type { Linework, Role } from './linework.ts';

/** A thing of the plan by the name that people know it by. */
interface Named {
  readonly id: string;
  readonly name: string;
}

/** Outlines of any thing in the plan that cross themselves. Those that bound floor are looked at in its plane, the others in one of their own. */
export function outlineFindings(
  plan: Plan,
  { chains, roles }: Pick<Linework, 'chains' | 'roles'>,
  plane: Subdivision,
): FindingFact[] {
  const joinery = new Map(plan.joinery.map((unit) => [unit.id, unit]));
  const lying = [
    ...plan.joinery.filter((unit) => unit.under !== 'built-off-slab'),
    ...plan.slabContacts.map(({ id, outline }) => ({ id, name: `slab contact ${id}`, outline })),
    ...plan.sunZones.map(({ id, outline }) => ({ id, name: `sun zone ${id}`, outline })),
    ...plan.keepClear.map(({ id, outline }) => ({ id, name: `keep-clear area ${id}`, outline })),
  ].filter(({ outline }) => !ringIsConvex(outline));
  const lyingChains = lying.map(({ outline }) => chainOnGrid(outline, true));
  const found = [
    ...outlineCrossings(chains, plane).map(([chain, at]) => [roleName(plan, joinery, roles[chain]), at] as const),
    ...(lying.length === 0 ? [] : outlineCrossings(lyingChains, subdivisionOf(lyingChains))).map(
      ([chain, at]) => [lying[chain], at] as const,
    ),
  ];
  return found.flatMap(([thing, at]): FindingFact[] =>
    thing ? [{ code: 'outline-crossing', name: thing.name, at, refs: [thing.id] }] : [],
  );
}

/** What a line of the floor's plane stands for; undefined where no outline was drawn for it. */
function roleName(plan: Plan, joinery: ReadonlyMap<string, Named>, role: Role | undefined): Named | undefined {
  if (role?.kind === 'room') return plan.rooms[role.room];
  if (role?.kind === 'room-hole') {
    const { id, name } = plan.rooms[role.room] as Named;
    return { id, name: `a hole of ${name}` };
  }
  if (role?.kind !== 'obstacle' || role.along === 'pipe') return undefined;
  return role.along === 'column' ? { id: role.id, name: `column ${role.id}` } : joinery.get(role.id);
}

/** The closed chains of a plane that cross themselves, by number, each with a place, mm. One that only touches itself, or runs out and back along
 *  one line, does not cross. What a chain winds round and what lies inside it differ in area by what it winds round twice or the
 *  wrong way; a convex one, as most are, does neither. */
function outlineCrossings(chains: readonly Chain[], plane: Subdivision): readonly (readonly [number, Point | null])[] {
  const inside = new Map(
    chains.flatMap(({ points, closed }, i) => (closed && !ringIsConvex(points) ? [[i, 0] as [number, number]] : [])),
  );
  if (inside.size === 0) return [];
  for (const face of plane.faces) {
    for (const chain of face.inside) {
      const area = inside.get(chain);
      if (area !== undefined) inside.set(chain, area + face.area);
    }
  }
  return [...inside].flatMap(([chain, area]) => {
    const walk = plane.walks[chain] ?? [];
    const wound = ringSignedArea(walk.slice(0, -1).map((p): Point => [plane.x[p] as number, plane.y[p] as number]));
    const crosses = Math.abs(Math.abs(wound) - area) > CRUMB_MM2 * GRID_PER_MM ** 2;
    return crosses ? [[chain, crossingPlace(plane, walk)] as const] : [];
  });
}

/** The first point at which the walk goes over itself; where it only runs along itself, the first that it passes twice. */
function crossingPlace({ x, y }: Subdivision, walk: readonly number[]): Point | null {
  const count = walk.length - 1;
  const place = (p: number): Point => [(x[p] as number) / GRID_PER_MM, (y[p] as number) / GRID_PER_MM];
  const angle = (from: number, to: number) =>
    Math.atan2((y[to] as number) - (y[from] as number), (x[to] as number) - (x[from] as number));
  const arms = (i: number): Arms => {
    const [p, q, r] = [walk[(i + count - 1) % count], walk[i], walk[(i + 1) % count]] as [number, number, number];
    return [angle(q, p), angle(q, r)];
  };
  const passed = new Map<number, number[]>();
  let twice: number | null = null;
  for (let i = 0; i < count; i++) {
    const point = walk[i] as number;
    const before = passed.get(point);
    if (before === undefined) passed.set(point, [i]);
    else {
      twice ??= point;
      if (before.some((j) => areAcross(arms(j), arms(i)))) return place(point);
      before.push(i);
    }
  }
  return twice === null ? null : place(twice);
}

/** The angles at which a walk comes to a point and leaves it. */
type Arms = readonly [number, number];

/** Whether two ways through a point lie across each other: not where they share an arm. */
function areAcross([a, b]: Arms, [c, d]: Arms): boolean {
  const [low, high] = a < b ? [a, b] : [b, a];
  if ([c, d].some((angle) => angle === low || angle === high)) return false;
  const isBetween = (angle: number) => angle > low && angle < high;
  return isBetween(c) !== isBetween(d);
}
