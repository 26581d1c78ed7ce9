import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../src/plan/analysis.ts';
import type { PlanJson } from '../floors/plan-json.ts';
import { storeyPlan } from '../floors/several-rooms.ts';
import { analysed } from './analysed.ts';

const seeds = [1, 2, 3, 4, 5];
const storey = (seed: number) => storeyPlan({ seed, rooms: 5, objects: true });

function warmed(plan: PlanJson, riseK: number): Analysis {
  const rooms = plan.rooms.map((room) => ({ ...room, heated: true }));
  return analysed({ ...plan, rooms, sunZones: [], temperatures: { layingC: 15, highestC: 15 + riseK, lowestC: 15 } })
    .analysis;
}

describe('laws', () => {
  it.each(seeds)('twice the warming is twice the movement (storey %i)', (seed) => {
    const once = warmed(storey(seed), 15);
    const twice = warmed(storey(seed), 30);
    expect(once.joints.length).toBeGreaterThan(0);
    for (const [i, joint] of once.joints.entries()) {
      expect(twice.joints[i]?.closingMm).toBeCloseTo(2 * joint.closingMm, 1);
      expect(twice.joints[i]?.worstClosingMm).toBeCloseTo(2 * joint.worstClosingMm, 1);
      expect(joint.openingMm).toBe(0);
    }
    for (const [i, edge] of once.edges.entries())
      expect(twice.edges[i]?.movementMm).toBeCloseTo(2 * edge.movementMm, 1);
  });

  it.each(seeds)('no warming is no movement (storey %i)', (seed) => {
    const still = warmed(storey(seed), 0);
    expect(still.joints.map((j) => j.closingMm)).toEqual(still.joints.map(() => 0));
  });

  it.each(seeds)('other names change no verdict and no length (storey %i)', (seed) => {
    const plan = storey(seed);
    const renamed = { ...plan, name: 'Other', rooms: plan.rooms.map((room, i) => ({ ...room, name: `Zz ${9 - i}` })) };
    const strip = ({ bays, joints, edges, quantities, proof }: Analysis) => ({
      bays,
      edges,
      quantities,
      proof,
      lines: joints.map((j) => [j.id, j.kind, j.line, j.lengthM]),
    });
    expect(strip(analysed(renamed).analysis)).toEqual(strip(analysed(plan).analysis));
  });

  it.each(seeds)('the same plan gives the same bytes, whatever was analysed before (storey %i)', (seed) => {
    const first = JSON.stringify(analysed(storey(seed)).analysis);
    expect(JSON.stringify(analysed(storey(seed)).analysis)).toBe(first);
  });

  it.each(seeds)('more shrinkage never closes a joint further, more swelling never less (storey %i)', (seed) => {
    const plan = storey(seed);
    const wet = (shrinkageMmPerM: number, swellingMmPerM: number) =>
      analysed({ ...plan, screed: { shrinkageMmPerM, swellingMmPerM } }).analysis;
    const dry = wet(0, 0);
    const shrinking = wet(0.5, 0);
    const swelling = wet(0, 0.5);
    expect(dry.joints.length).toBeGreaterThan(0);
    for (const [i, joint] of dry.joints.entries()) {
      expect(shrinking.joints[i]?.closingMm).toBeCloseTo(joint.closingMm, 3);
      expect(shrinking.joints[i]?.openingMm).toBeGreaterThanOrEqual(joint.openingMm);
      expect(swelling.joints[i]?.closingMm).toBeGreaterThanOrEqual(joint.closingMm);
    }
  });
});
