import { describe, expect, it } from 'vitest';
import { comparisonOf } from '../../src/documents/compare.ts';
import { setOutNote } from '../../src/documents/compare-set-out.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { jointAt } from './compare-fixture.ts';
import { hallAndStore } from './paper-fixture.ts';

/** A hall of 12 x 5 m with a joint across it at 6 m, and a store; base points at the upper wall of the hall. */
const marked = (...at: readonly (readonly [number, number])[]): Partial<PlanFile> => ({
  ...jointAt(6000),
  papers: { basePoints: at.map(([x, y], i) => ({ name: String(i + 1), at: [x, y] })) },
});
const notesOf = (before: Partial<PlanFile>, now: Partial<PlanFile>) =>
  comparisonOf(hallAndStore(before), hallAndStore(now)).notes;
const corners = marked([0, 0], [12_000, 0]);

describe('a revision that moves what joints are set out from', () => {
  it('says that the figures of the earlier sheets do not hold, though no joint moved', () => {
    const comparison = comparisonOf(hallAndStore(corners), hallAndStore(marked([100, 0], [12_000, 0])));
    expect(comparison.counts.joints.moved).toBe(0);
    expect(comparison.notes.join(' ')).toMatch(
      /^What joints are set out from has moved or is another: \d+ joints? that stays? where (it was|they were) (has|have) other dimensions than on the earlier sheets, which are not to be set out from\.$/u,
    );
  });

  it('says so where the two points were exchanged, or base points are new', () => {
    // 4 m from the one and 8 m from the other
    const off = (plan: Partial<PlanFile>) => ({ ...plan, ...jointAt(4000) });
    expect(notesOf(off(corners), off(marked([12_000, 0], [0, 0]))).join(' ')).toContain('other dimensions');
    expect(notesOf(jointAt(6000), marked([100, 0], [12_000, 0])).join(' ')).toContain('other dimensions');
  });

  it('says nothing of a joint that slid along its own line, since what it is set out from did not move', () => {
    const before = hallAndStore(corners);
    const joints = before.analysis.joints.map((joint) => ({
      ...joint,
      line: joint.line.map(([x, y]) => [x, y + 500] as const),
    }));
    const slid = { ...before, analysis: { ...before.analysis, joints } };
    const stayed = joints.map(({ id }) => [id, id] as const);
    expect(setOutNote(before, slid, stayed)).toBeNull();
    expect(setOutNote(before, hallAndStore(marked([100, 0], [12_000, 0])), stayed)).not.toBeNull();
  });

  it('says nothing where the points stay, whatever else changes, or a further point only checks', () => {
    expect(notesOf(corners, { ...corners, screed: { thicknessMm: 70 } })).toEqual([]);
    expect(notesOf(corners, marked([0, 0], [12_000, 0], [0, 5000])).join(' ')).not.toContain('other dimensions');
  });
});
