import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../src/plan/analysis.ts';
import { createChance } from '../floors/chance.ts';
import { mirrored, moved, type Place, planPlaced, turned } from '../floors/placed.ts';
import { analysisFaults } from '../oracle/check-analysis.ts';
import { analysed, freeJointM, jointM } from './analysed.ts';
import { type CaseFile, caseFiles } from './case-file.ts';

const cases = caseFiles();

it('has case files to run', () => {
  expect(cases.length).toBeGreaterThan(20);
});

describe.each(cases)('$name', (file) => {
  const drawn = once(() => analysed(file.plan));

  it('keeps the contract', () => {
    const { plan, analysis } = drawn();
    expect(analysisFaults(plan, analysis)).toEqual([]);
  });

  it('comes out as worked out by hand', () => {
    expect(outcome(file, drawn().analysis)).toEqual(file.expect);
  });

  it.each<readonly [string, Place]>([
    ['turned by a right angle', turned(90)],
    ['turned by an odd angle', turned(createChance(file.name.length).number(1, 89))],
    // The mirror image of a herringbone is no bond of a plan.
    ...(file.plan.tiles?.bond === 'herringbone' ? [] : [['mirrored', mirrored] as const]),
    ['moved', moved(123456.7, -98765.4)],
  ])('comes out the same %s', (_, place) => {
    const here = drawn().analysis;
    const { plan, analysis } = analysed(planPlaced(file.plan, place));
    expect(analysisFaults(plan, analysis)).toEqual([]);
    expect(analysis.bays.map((b) => b.within).sort()).toEqual(here.bays.map((b) => b.within).sort());
    expect(Math.abs(jointM(analysis) - jointM(here))).toBeLessThanOrEqual(0.005 * jointM(here));
  });
});

/** The same answer each time, worked out when it is first asked for. */
function once<T>(work: () => T): () => T {
  const done: T[] = [];
  return () => {
    if (done.length === 0) done.push(work());
    return done[0] as T;
  };
}

/** What came out, written as the expectation is: a figure within 0.5 % of the expected one stands as that. */
function outcome({ expect: wanted }: CaseFile, analysis: Analysis): CaseFile['expect'] {
  const near = (value: number, right: number | undefined) =>
    right !== undefined && Math.abs(value - right) <= 0.005 * right + 0.001 ? right : value;
  const joint = analysis.joints[0];
  const all: Required<CaseFile['expect']> = {
    bays: analysis.bays.length,
    allWithin: analysis.bays.every((b) => b.within),
    jointM: Object.fromEntries(
      Object.entries(wanted.jointM ?? {}).map(([kind, right]) => {
        const own = analysis.joints.filter((j) => j.kind === kind);
        return [
          kind,
          near(
            own.reduce((sum, j) => sum + j.lengthM, 0),
            right,
          ),
        ];
      }),
    ),
    fieldAndNeckM: near(freeJointM(analysis), wanted.fieldAndNeckM),
    closingMm: near(joint?.closingMm ?? 0, wanted.closingMm),
    worstClosingMm: near(joint?.worstClosingMm ?? 0, wanted.worstClosingMm),
    sealantNeedsMm: near(joint?.sealantNeedsMm ?? 0, wanted.sealantNeedsMm),
    profileMm: near(joint?.profileMm ?? 0, wanted.profileMm),
    mostEdgeMm: near(Math.max(0, ...analysis.edges.map((e) => e.movementMm)), wanted.mostEdgeMm),
    named: (wanted.named ?? []).filter((id) =>
      analysis.joints.some((j) => j.reasons.some((r) => r.split(' ').includes(id))),
    ),
    findings: (wanted.findings ?? []).filter((w) =>
      analysis.findings.some(
        (f) =>
          (w.code === undefined || w.code === f.code) &&
          (w.severity === undefined || w.severity === f.severity) &&
          (w.ref === undefined || f.refs.includes(w.ref)),
      ),
    ),
    without: (wanted.without ?? []).filter((code) => !analysis.findings.some((f) => f.code === code)),
  };
  return Object.fromEntries(Object.entries(all).filter(([field]) => field in wanted));
}
