import { expect, test, vi } from 'vitest';
import { type Keeping, keepingFollow, keepingRest, keepingStore, planStanding } from '../../src/app/state/keeping.ts';
import { newestQueue } from '../../src/app/state/newest.ts';
import { commit, type PlanState, planSaved, planStore, planUndo, sheetLay } from '../../src/app/state/planStore.ts';
import { keptOf } from '../../src/app/state/shelf-list.ts';
import { planEmpty } from '../../src/plan/empty.ts';

/** Work that ends when it is told to, and the order in which it was begun. */
function workshop() {
  const begun: string[] = [];
  const ends: (() => void)[] = [];
  const work = (name: string) => () => {
    begun.push(name);
    return new Promise<void>((resolve) => ends.push(resolve));
  };
  const end = async () => {
    ends.shift()?.();
    // The next piece begins a few turns later.
    await new Promise((resolve) => setTimeout(resolve));
  };
  return { begun, work, end };
}

test('one plan is written after the other, of each the newest that waits, and no plan is left out', async () => {
  const { begun, work, end } = workshop();
  const queue = newestQueue();
  queue.ask('a', work('a1'));
  for (const name of ['a2', 'b1', 'b2', 'a3']) queue.ask(name.charAt(0), work(name));
  expect(begun).toEqual(['a1']);
  await end();
  expect(begun).toEqual(['a1', 'b2']);
  await end();
  expect(begun).toEqual(['a1', 'b2', 'a3']);
  let rested = false;
  const rest = queue.rest().then(() => {
    rested = true;
  });
  await Promise.resolve();
  expect(rested).toBe(false);
  await end();
  await rest;
  queue.ask('a', work('a4'));
  expect(begun.at(-1)).toBe('a4');
});

const nothingKept: Keeping = { kept: new Map(), trouble: null };
const keptNow = ({ history: { present } }: PlanState): Keeping => ({
  kept: new Map([[present.id, present.file]]),
  trouble: null,
});
const renamed = (name: string) => commit(`to ${name}`, (file) => ({ ...file, name }));

test('a change is loose until the browser or a file has it, and undo asks for the same again', () => {
  sheetLay('a demo', planEmpty('Demo'), 'demo');
  expect(planStanding(planStore.getState(), nothingKept)).toBe('laid');
  renamed('one');
  const one = keptNow(planStore.getState());
  expect(planStanding(planStore.getState(), nothingKept)).toBe('loose');
  expect(planStanding(planStore.getState(), one)).toBe('kept');
  renamed('two');
  expect(planStanding(planStore.getState(), one)).toBe('loose');
  planSaved(planStore.getState().history.present.file);
  expect(planStanding(planStore.getState(), one)).toBe('saved');
  planUndo();
  expect(planStanding(planStore.getState(), one)).toBe('kept');
});

test('a plan from a file is saved until it is changed', () => {
  sheetLay('a file', planEmpty('File'), 'file');
  expect(planStanding(planStore.getState(), nothingKept)).toBe('saved');
  renamed('other');
  expect(planStanding(planStore.getState(), nothingKept)).toBe('loose');
});

test('each sheet has an id of its own, which its changes and undo leave alone', () => {
  const id = () => planStore.getState().history.present.id;
  sheetLay('first', planEmpty('First'), 'new');
  const first = id();
  renamed('changed');
  expect(id()).toBe(first);
  sheetLay('second', planEmpty('Second'), 'new');
  expect(id()).not.toBe(first);
  planUndo();
  expect(id()).toBe(first);
  sheetLay('kept', planEmpty('Kept'), 'kept', 'k1');
  expect(id()).toBe('k1');
});

test('a list tells as much of a broken entry as there is', () => {
  expect(keptOf('k', { id: 'other', name: 'Flat', rooms: 3, savedAt: 5 })).toEqual({
    id: 'k',
    name: 'Flat',
    rooms: 3,
    savedAt: 5,
  });
  for (const broken of [undefined, null, 7, 'x', [], { name: 1, rooms: 'y', savedAt: Number.NaN }]) {
    expect(keptOf('k', broken)).toEqual({ id: 'k', name: 'Plan that cannot be read', rooms: 0, savedAt: 0 });
  }
});

test('a change that is not kept says whether another tab has the sheet or the browser refuses', async () => {
  vi.stubGlobal('sessionStorage', { setItem() {} });
  const locksGive = (lock: object | null) =>
    vi.stubGlobal('navigator', {
      locks: {
        request: async (_name: string, _how: object, hold: (lock: object | null) => unknown) => void hold(lock),
      },
    });
  const trouble = async () => {
    await keepingRest();
    return keepingStore.getState().trouble;
  };
  sheetLay('a new one', planEmpty('New'), 'new');
  keepingFollow();
  expect(await trouble()).toBeNull();
  locksGive(null);
  renamed('mine');
  expect(await trouble()).toBe('taken');
  // The other tab lets go of it, but this browser has no shelf.
  locksGive({});
  renamed('mine still');
  expect(await trouble()).toBe('refused');
  vi.unstubAllGlobals();
});
