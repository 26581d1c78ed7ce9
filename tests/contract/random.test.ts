import { describe, expect, it } from 'vitest';
import { createChance } from '../floors/chance.ts';
import { mirrored, moved, type Place, planPlaced, turned } from '../floors/placed.ts';
import { type PlanJson, planJson } from '../floors/plan-json.ts';
import { rectilinearFloor } from '../floors/rectilinear.ts';
import { storeyPlan } from '../floors/several-rooms.ts';
import { analysisFaults } from '../oracle/check-analysis.ts';
import { analysed, jointM } from './analysed.ts';

const seeds = Array.from({ length: 24 }, (_, i) => i + 1);

/** A floor of one room: 4 to 16 corners, a core in every other. */
function roomPlan(seed: number): PlanJson {
  const wish = { seed, leastMm: 6000, mostMm: 15000, corners: 4 + 2 * (seed % 7), core: seed % 2 === 0, stepMm: 100 };
  const { outline, holes } = rectilinearFloor(wish);
  return planJson(`floor ${seed}`, [{ id: 'r1', name: 'Floor', outline, holes }]);
}

function faultsOf(json: PlanJson): string[] {
  const { plan, analysis } = analysed(json);
  return analysisFaults(plan, analysis);
}

describe('random floors of one room', () => {
  it.each(seeds)('floor %i keeps the contract', (seed) => {
    expect(faultsOf(roomPlan(seed))).toEqual([]);
  });

  it.each(seeds)('floor %i keeps the contract at an angle', (seed) => {
    expect(faultsOf(planPlaced(roomPlan(seed), turned(createChance(seed).number(0, 360))))).toEqual([]);
  });

  it.each(seeds.slice(0, 8))('floor %i takes the same joint wherever it lies', (seed) => {
    const here = jointM(analysed(roomPlan(seed)).analysis);
    const places: readonly Place[] = [turned(90), turned(seed * 7.3), mirrored, moved(-54321.9, 7777.7)];
    for (const place of places) {
      const there = jointM(analysed(planPlaced(roomPlan(seed), place)).analysis);
      expect(Math.abs(there - here)).toBeLessThanOrEqual(0.005 * here);
    }
  });
});

describe('random storeys', () => {
  it.each(seeds)('storey %i keeps the contract', (seed) => {
    expect(faultsOf(storeyPlan({ seed, rooms: 2 + (seed % 6), objects: false }))).toEqual([]);
  });

  it.each(seeds)('storey %i keeps the contract with columns, joinery, zones and drawn joints', (seed) => {
    expect(faultsOf(storeyPlan({ seed: seed + 100, rooms: 2 + (seed % 5), objects: true }))).toEqual([]);
  });

  it.each(seeds.slice(0, 8))('storey %i keeps the contract at an angle', (seed) => {
    const plan = storeyPlan({ seed: seed + 200, rooms: 3 + (seed % 4), objects: true });
    expect(faultsOf(planPlaced(plan, turned(createChance(seed).number(0, 360))))).toEqual([]);
  });

  it.each(seeds.slice(0, 12))('storey %i keeps the contract with every other room on bare slab', (seed) => {
    const plan = storeyPlan({ seed: seed + 300, rooms: 3 + (seed % 4), objects: true });
    const rooms = plan.rooms.map((room, i) => (i % 2 === 0 ? { ...room, buildUp: { insulationMm: 0 } } : room));
    const place = seed % 3 === 0 ? turned(createChance(seed).number(0, 360)) : moved(0, 0);
    expect(faultsOf(planPlaced({ ...plan, rooms }, place))).toEqual([]);
  });
});
