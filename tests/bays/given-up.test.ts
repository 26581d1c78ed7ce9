import { describe, expect, it } from 'vitest';
import { Budget } from '../../src/bays/budget.ts';
import { partsOf } from '../../src/bays/parts.ts';
import { partSolve } from '../../src/bays/solve.ts';
import { floorPlanOf } from '../../src/floor/floor.ts';
import { analysed } from '../contract/analysed.ts';
import { box, planJson } from '../floors/plan-json.ts';
import { planOf } from '../floors/read.ts';

/** What no floor needs ends in a finding, not in a search without end. */

const hall = (outline: readonly (readonly [number, number])[], limits?: object) =>
  analysed({ ...planJson('Hall', [{ id: 'r1', name: 'Hall', outline }]), ...(limits ? { screed: { limits } } : {}) })
    .analysis;

describe('a floor that would take thousands of bays', () => {
  it.each([
    ['by limits of next to nothing', box(0, 0, 9000, 6000), { areaM2: 1e-9 }],
    ['by a side of next to nothing', box(0, 0, 9000, 6000), { lengthM: 0.01 }],
    ['by its size of 20 by 20 km', box(-1e7, -1e7, 2e7, 2e7), undefined],
  ])('is left whole and told: %s', (_, outline, limits) => {
    const { bays, findings } = hall(outline, limits);
    expect(bays.map(({ within }) => within)).toEqual([false]);
    expect(findings).toContainEqual(
      expect.objectContaining({ code: 'layout-too-many-bays', severity: 'fault', refs: ['r1'] }),
    );
  });
});

describe('a search that comes to the end of its steps', () => {
  const plan = planOf(
    planJson('L', [
      {
        id: 'r1',
        name: 'Hall',
        outline: [
          [0, 0],
          [12_000, 0],
          [12_000, 3000],
          [5000, 3000],
          [5000, 7000],
          [0, 7000],
        ],
      },
    ]),
  );
  const [placed] = partsOf(plan, floorPlanOf(plan).floor);

  it('says so, and is not taken for one that found nothing to do', () => {
    if (!placed) throw new Error('the plan has no part');
    expect(partSolve(placed.part, new Budget(1)).givenUp).toBe('too-intricate');
    expect(partSolve(placed.part, new Budget(1e6))).toMatchObject({ givenUp: null, openNecks: [] });
  });
});
