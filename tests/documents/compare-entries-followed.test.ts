import { describe, expect, it } from 'vitest';
import { comparisonOf } from '../../src/documents/compare.ts';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { jointAt } from './compare-fixture.ts';
import { hallAndStore } from './paper-fixture.ts';

/** A hall parted by a joint, with an entry for that joint and a day for the bay at its left, under the keys of the floor or under others. */
function entered(xMm: number, over: { readonly keysOf?: PaperSource; readonly profile?: string } = {}): PaperSource {
  const floor = hallAndStore(jointAt(xMm));
  const { keysOf = floor, profile = 'angle' } = over;
  const joint = keysOf.analysis.joints.find(({ kind }) => kind === 'drawn');
  const bay = keysOf.analysis.bays.find(({ id }) => joint?.bays[0] === id);
  if (joint === undefined || bay === undefined) throw new Error('a joint and its bay');
  const fields: Partial<PlanFile> = {
    papers: { joints: [{ key: joint.key, profile }] },
    pour: { days: [{ date: '2027-03-01', bays: [bay.key] }] },
  };
  return hallAndStore({ ...jointAt(xMm), ...fields });
}

const told = (before: PaperSource, now: PaperSource) =>
  comparisonOf(before, now).settings.filter(({ words }) => words === 'Profile' || words === 'Days of the pour');

describe('what is entered for a joint that was moved by a metre', () => {
  it('is no other entry, whether it stands under the key of before or of now', () => {
    const before = entered(6000);
    expect(told(before, entered(7000, { keysOf: before }))).toEqual([]);
    expect(told(before, entered(7000))).toEqual([]);
  });

  it('is told by the name of the joint where it is another', () => {
    const now = entered(7000, { profile: 'tee' });
    const joint = now.analysis.joints.find(({ kind }) => kind === 'drawn');
    expect(told(entered(6000), now)).toMatchObject([
      { of: `Joint ${joint?.id}`, words: 'Profile', before: 'angle', now: 'tee' },
    ]);
  });
});

it('entries that change hands are told of both joints, whatever the joints are called', () => {
  const lines = [4000, 8000];
  const floor = (order: readonly number[], profiles: readonly string[]) => {
    const drawnJoints = order.map((k, i) => {
      const x = lines[k] ?? 0;
      return {
        id: `x${i + 1}`,
        line: [
          [x, 0],
          [x, 5000],
        ] as const,
      };
    });
    const { analysis } = hallAndStore({ drawnJoints });
    const keys = drawnJoints.map(({ id }) => analysis.joints.find(({ sources }) => sources.includes(id))?.key ?? '');
    const joints = keys.map((key, i) => ({ key, profile: profiles[i] ?? '' }));
    return hallAndStore({ drawnJoints, papers: { joints } });
  };
  const before = floor([0, 1], ['angle', 'tee']);
  // the two lines have changed places in the file, each with its entry: the floor is the same but for what is entered
  expect(told(before, floor([1, 0], ['angle', 'tee'])).map(({ before: was, now }) => [was, now])).toEqual([
    ['angle', 'tee'],
    ['tee', 'angle'],
  ]);
  expect(told(before, floor([1, 0], ['tee', 'angle']))).toEqual([]);
});

it('what is entered for a joint that is gone is told by its place, and never by its key', () => {
  const before = entered(6000);
  const floor = hallAndStore();
  const gone = hallAndStore({ papers: { joints: [{ key: 'field:hall@2.5,1', profile: 'tee' }] } });
  const text = JSON.stringify(told(before, gone));
  expect(floor.analysis.joints.some(({ kind }) => kind === 'drawn')).toBe(false);
  expect(text).toContain('No joint any more: a joint');
  expect(text).not.toMatch(/field:|drawn:/u);
});
