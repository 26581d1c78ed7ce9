import { describe, expect, it } from 'vitest';
import { createChance } from '../floors/chance.ts';
import { nastyPlans } from '../floors/nasty.ts';
import { planPlaced, turned } from '../floors/placed.ts';
import type { PlanJson, TilesJson } from '../floors/plan-json.ts';
import { storeyPlan } from '../floors/several-rooms.ts';
import { tileFaults } from '../oracle/check-tiles.ts';
import { createScene } from '../oracle/scene.ts';
import { analysed } from './analysed.ts';

/** Tiles on whole floors, every one of them laid by the checker too. The floors themselves are checked elsewhere, and tiles on real ones with those. */

const bonds = ['straight', 'half', 'third', 'offset', 'herringbone'] as const;

function tilesOf(seed: number): TilesJson {
  const chance = createChance(seed);
  return {
    lengthMm: chance.pick([600, 300, 450, 1200, 333.3]),
    widthMm: chance.pick([600, 300, 150, 597, 200]),
    groutMm: chance.pick([0, 2, 3, 5, 10]),
    origin: [chance.whole(-500, 5000), chance.whole(-3000, 3000)],
    angleDeg: chance.pick([0, 0, 17, 45, 90, 180, 33.3]),
    bond: chance.pick(bonds),
    offsetMm: chance.pick([0, 100, 250.5]),
  };
}

function faultsOf(json: PlanJson): string[] {
  const { plan, analysis } = analysed(json);
  return tileFaults(createScene(plan, analysis));
}

const seeds = Array.from({ length: 20 }, (_, i) => i + 1);

describe('tiles on random storeys', () => {
  it.each(seeds)('are as the contract says (storey %i)', (seed) => {
    const json = {
      ...storeyPlan({ seed: seed + 400, rooms: 2 + (seed % 4), objects: seed % 2 === 0 }),
      tiles: tilesOf(seed),
    };
    expect(faultsOf(json)).toEqual([]);
  });

  it.each(seeds.slice(0, 8))('are as the contract says in two fields, at an angle (storey %i)', (seed) => {
    const storey = storeyPlan({ seed: seed + 500, rooms: 3 + (seed % 3), objects: true });
    const rooms = storey.rooms.slice(0, 2).map(({ id }) => id);
    const json = planPlaced(storey, turned(createChance(seed).number(0, 360)));
    const tileFields = [{ id: 't1', rooms, ...tilesOf(seed + 1000) }];
    expect(faultsOf({ ...json, tiles: tilesOf(seed), tileFields })).toEqual([]);
  });
});

describe('tiles on floors that no one would draw on purpose', () => {
  it.each(
    nastyPlans()
      .filter(({ name }) => !['a thousand edges', 'a whole kilometre'].includes(name))
      .map((json, i) => [json.name, { ...json, tiles: tilesOf(i + 77) }] as const),
  )('%s', (_, json) => {
    expect(faultsOf(json)).toEqual([]);
  });
});
