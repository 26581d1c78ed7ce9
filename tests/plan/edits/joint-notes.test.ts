import { expect, it } from 'vitest';
import { planJointNoteFollowed } from '../../../src/plan/edits/joint-notes.ts';
import { planEmpty } from '../../../src/plan/empty.ts';

const papers = (...keys: readonly string[]) => ({ joints: keys.map((key, i) => ({ key, profile: `P${i}` })) });

it('an entry goes to the key that its joint has now, and never to one that has an entry of its own', () => {
  const file = { ...planEmpty('Hall'), papers: papers('field:hall@1,6', 'doorway:d1') };
  expect(planJointNoteFollowed(file, 'field:hall@1,6', 'drawn:j1@2,6').papers?.joints).toEqual([
    { key: 'drawn:j1@2,6', profile: 'P0' },
    { key: 'doorway:d1', profile: 'P1' },
  ]);
  expect(planJointNoteFollowed(file, 'field:hall@1,6', 'doorway:d1')).toBe(file);
  expect(planJointNoteFollowed(file, 'gone', 'drawn:j1@2,6')).toBe(file);
});
