import fc from 'fast-check';
import { beforeEach, expect, test } from 'vitest';
import {
  commit,
  planPreview,
  planRedo,
  planShown,
  planStore,
  planUndo,
  sheetStart,
} from '../../src/app/state/planStore.ts';
import { planWrite } from '../../src/plan/write.ts';
import { anyEdit } from '../plan/edits/any-edit.ts';
import { house } from '../plan/edits/house.ts';

const written = () => planWrite(planStore.getState().history.present.file);

beforeEach(() => sheetStart(house, 'file'));

test('a thousand edits undone give back the plan to the last letter, and done again the plan after them', () => {
  const edits = fc.sample(anyEdit, 4000);
  const plans = [written()];
  for (const { name, apply } of edits) {
    if (plans.length > 1000) break;
    const before = planStore.getState().history.present.file;
    commit(name, apply);
    // An edit that finds nothing to do is no step.
    if (planStore.getState().history.present.file !== before) plans.push(written());
  }
  expect(plans).toHaveLength(1001);
  const end = plans.length - 1;
  for (let i = end - 1; i >= 0; i -= 1) {
    expect(planUndo()).not.toBeNull();
    expect(written() === plans[i], `undo to step ${i}`).toBe(true);
  }
  expect(planUndo()).toBeNull();
  expect(written()).toBe(planWrite(house));
  for (let i = 1; i <= end; i += 1) {
    planRedo();
    expect(written() === plans[i], `redo of step ${i}`).toBe(true);
  }
  expect(planRedo()).toBeNull();
});

test('what a gesture shows is no step, and taking it back leaves plan and steps as they were', () => {
  commit('Rename', (file) => ({ ...file, name: 'Once' }));
  planUndo();
  const { history } = planStore.getState();
  planPreview({ ...house, name: 'Under the hand' });
  expect(planShown(planStore.getState()).name).toBe('Under the hand');
  expect(planStore.getState().history).toBe(history);
  planPreview(null);
  expect(planStore.getState().history).toBe(history);
  expect(planRedo()).toBe('Rename');
});

test('a gesture that ends where it began is no step', () => {
  planPreview({ ...house, name: 'Under the hand' });
  commit('Move', (file) => file);
  expect(planShown(planStore.getState())).toBe(house);
  expect(planUndo()).toBeNull();
});

test('the plan that a gesture showed last is not worked out again when it becomes a step', () => {
  const after = { ...house, name: 'Moved' };
  planPreview(after);
  const { revision } = planStore.getState();
  commit('Move', () => after);
  expect(planStore.getState().revision).toBe(revision);
  expect(planUndo()).toBe('Move');
});
