import { expect, it } from 'vitest';
import { planJointNotesRenamed } from '../../../src/plan/edits/joints.ts';
import { planEmpty } from '../../../src/plan/empty.ts';

const papers = (...keys: readonly string[]) => ({ joints: keys.map((key, i) => ({ key, profile: `P${i}` })) });

it('an entry goes to the key that its joint has now, and never to one that has an entry of its own', () => {
  const file = { ...planEmpty('Hall'), papers: papers('field:hall@1,6', 'doorway:d1') };
  const renamed = (...pairs: readonly (readonly [string, string])[]) => planJointNotesRenamed(file, new Map(pairs));
  expect(renamed(['field:hall@1,6', 'drawn:j1@2,6']).papers?.joints).toEqual([
    { key: 'drawn:j1@2,6', profile: 'P0' },
    { key: 'doorway:d1', profile: 'P1' },
  ]);
  expect(renamed(['field:hall@1,6', 'doorway:d1'])).toBe(file);
  expect(renamed(['gone', 'drawn:j1@2,6'])).toBe(file);
});

it('of two entries that would go to one key the second stays where it is', () => {
  const file = { ...planEmpty('Hall'), papers: papers('field:hall@1,6', 'field:bar@1,6') };
  const renamed = new Map([
    ['field:hall@1,6', 'drawn:j1@1,6'],
    ['field:bar@1,6', 'drawn:j1@1,6'],
  ]);
  expect(planJointNotesRenamed(file, renamed).papers?.joints?.map(({ key }) => key)).toEqual([
    'drawn:j1@1,6',
    'field:bar@1,6',
  ]);
});
