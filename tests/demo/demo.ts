import { readFileSync } from 'node:fs';
import type { Point } from '../../src/geometry/point.ts';
import { boxOf, type Ring } from '../../src/geometry/ring.ts';
import type { Analysis, Finding } from '../../src/plan/analysis.ts';
import type { Plan, Room } from '../../src/plan/plan.ts';
import { planRead } from '../../src/plan/read.ts';
import { planResolve } from '../../src/plan/resolve.ts';
import { type Analysed, analysedOnce } from '../floors/analysed-once.ts';

/** A demo plan read as any other file, and its analysis. */
export function demoOpen(file: string): Analysed {
  const reading = planRead(readFileSync(new URL(`../../demo-plans/${file}`, import.meta.url), 'utf8'));
  if (reading.kind !== 'plan') throw new Error(`${file} is no plan: ${JSON.stringify(reading.problems)}`);
  return analysedOnce(planResolve(reading.file));
}

export function findingsToActOn({ findings }: Analysis): readonly Finding[] {
  return findings.filter((finding) => finding.severity !== 'note');
}

/** Bays that a finding is about: named by it, or beside a joint or edge that it names. */
export function baysOf(finding: Finding, { bays, joints, edges }: Analysis): ReadonlySet<string> {
  const named = new Set(finding.refs);
  return new Set([
    ...bays.filter((bay) => named.has(bay.id)).map((bay) => bay.id),
    ...joints.filter((joint) => named.has(joint.id)).flatMap((joint) => joint.bays),
    ...edges.filter((edge) => named.has(edge.id)).map((edge) => edge.bay),
  ]);
}

/** Bays that no finding is about, apart from those about the tiles on top of them. */
export function baysClean(analysis: Analysis): ReadonlySet<string> {
  const below = analysis.findings.filter(({ code }) => !code.startsWith('tile-'));
  const touched = new Set(below.flatMap((finding) => [...baysOf(finding, analysis)]));
  return new Set(analysis.bays.map((bay) => bay.id).filter((id) => !touched.has(id)));
}

/** Bays across a joint from any of these. */
export function baysBeside(ids: ReadonlySet<string>, { joints }: Analysis): ReadonlySet<string> {
  const pairs = joints.map((joint) => joint.bays);
  return new Set(pairs.flatMap(([a, b]) => (ids.has(a) === ids.has(b) ? [] : [ids.has(a) ? b : a])));
}

export function roomOf(plan: Plan, id: string): Room {
  const room = plan.rooms.find((each) => each.id === id);
  if (room === undefined) throw new Error(`the plan has no room ${id}`);
  return room;
}

/** Sides of the box round a ring, mm, the shorter first. */
export function sidesOf(ring: Ring): readonly [number, number] {
  const { minX, minY, maxX, maxY } = boxOf(ring);
  return [Math.min(maxX - minX, maxY - minY), Math.max(maxX - minX, maxY - minY)];
}

/** Whether all points of one lie in the box round the other: enough for rooms with square walls. */
export function inBox(points: readonly Point[], ring: Ring): boolean {
  const { minX, minY, maxX, maxY } = boxOf(ring);
  return points.every(([x, y]) => x >= minX && x <= maxX && y >= minY && y <= maxY);
}
