import { describe, expect, it } from 'vitest';
import { nastyPlans } from '../floors/nasty.ts';
import { planPlaced, turned } from '../floors/placed.ts';
import { analysisFaults } from '../oracle/check-analysis.ts';
import { analysed } from './analysed.ts';

describe('what no one would draw on purpose is analysed or reported', () => {
  it.each(nastyPlans().map((plan) => [plan.name, plan] as const))('%s', (_, json) => {
    const { plan, analysis } = analysed(json);
    expect(analysisFaults(plan, analysis)).toEqual([]);
    expect(analysis.bays.length + analysis.findings.length).toBeGreaterThan(0);
  });

  it.each(
    nastyPlans()
      .filter((p) => p.name !== 'a thousand edges')
      .map((plan) => [plan.name, plan] as const),
  )('%s, at an angle', (_, json) => {
    const { plan, analysis } = analysed(planPlaced(json, turned(31.7)));
    expect(analysisFaults(plan, analysis)).toEqual([]);
  });
});
