import { describe, expect, it } from 'vitest';
import { benchFloors, benchPlan } from '../bench/bench-floors.ts';
import { type PlanJson, planJson } from '../floors/plan-json.ts';
import { analysed, freeJointM } from './analysed.ts';

/** What an aim may spend: design section 3, "even-bays and grout-lines may spend a stated share more"; the share stands in shared/. */
const share = 0.05;

const withAim = (plan: PlanJson, aim: string) => analysed({ ...plan, layout: { ...plan.layout, aim } }).analysis;
const unevenOf = (bays: readonly { areaM2: number }[]) => bays.reduce((sum, { areaM2 }) => sum + areaM2 ** 2, 0);

describe('the aim even-bays', () => {
  it('takes the joint of 3.1 m that leaves 15 and 9.3 m2, not that of 3 m that leaves 18.6 and 5.7 m2', () => {
    const outline = [
      [0, 0],
      [5000, 0],
      [5000, 3000],
      [3100, 3000],
      [3100, 6000],
      [0, 6000],
    ] as const;
    const plan = planJson('Corner', [{ id: 'r1', name: 'Room', outline: outline.map(([x, y]) => [x, y] as const) }]);
    expect(freeJointM(withAim(plan, 'least-joint'))).toBeCloseTo(3, 6);
    expect(freeJointM(withAim(plan, 'even-bays'))).toBeCloseTo(3.1, 6);
  });

  it('spends no more than its share, breaks no limit and is never less even', () => {
    let evener = 0;
    for (const bench of benchFloors(6).filter(({ set }) => set.every === 1)) {
      const plan = benchPlan(bench, 0);
      const [least, even] = [withAim(plan, 'least-joint'), withAim(plan, 'even-bays')];
      expect(freeJointM(even)).toBeLessThanOrEqual(freeJointM(least) * (1 + share) + 0.001);
      expect(even.bays.every((bay) => bay.within)).toBe(true);
      const [before, after] = [unevenOf(least.bays), unevenOf(even.bays)];
      expect(after).toBeLessThanOrEqual(before * 1.0001);
      if (after < before * 0.99) evener++;
    }
    expect(evener).toBeGreaterThan(3);
  });
});
