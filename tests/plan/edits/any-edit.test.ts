import fc from 'fast-check';
import { expect, test } from 'vitest';
import { objectLists } from '../../../src/plan/edits/objects.ts';
import { planRead } from '../../../src/plan/read.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';
import { planWrite } from '../../../src/plan/write.ts';
import { anyPlan } from '../any-plan.ts';
import { anyEdit, anyEditNames } from './any-edit.ts';
import { frozen, house } from './house.ts';

test('after a thousand edits, one upon the other, the plan is saved and opened as it was at every step', () => {
  const seen = new Set<string>();
  // Told by the step that failed, not by all thousand.
  const thousand = fc
    .array(anyEdit, { minLength: 1000, maxLength: 1000, size: 'max' })
    .map((edits) => ({ edits, toString: () => 'a thousand edits' }));
  fc.assert(
    fc.property(thousand, ({ edits }) => {
      edits.reduce((file: PlanFile, edit, i) => {
        const edited = edit.apply(file);
        seen.add(edit.name);
        if (edited === file) return file;
        expect(planRead(planWrite(edited)), `step ${i}: ${edit}`).toEqual({ kind: 'plan', file: edited });
        return edited;
      }, house);
    }),
    { numRuns: 2, endOnFailure: true },
  );
  expect([...seen].sort()).toEqual([...anyEditNames].sort());
});

test('each kind of edit changes a house in some way', () => {
  const changing = fc.sample(anyEdit, 2000).flatMap(({ name, apply }) => (apply(house) === house ? [] : [name]));
  expect([...new Set(changing)].sort()).toEqual([...anyEditNames].sort());
});

test('an edit changes nothing in the plan that it is given, and shares the lists and objects that it leaves alone', () => {
  fc.assert(
    fc.property(fc.oneof(anyPlan, fc.constant(house)), fc.array(anyEdit, { maxLength: 20 }), (start, edits) => {
      edits.reduce((file: PlanFile, { apply }) => {
        const before = planWrite(frozen(file));
        const edited = apply(file);
        expect(planWrite(file)).toBe(before);
        for (const list of objectLists) {
          const known = new Map((file[list] ?? []).map((object) => [JSON.stringify(object), object]));
          for (const object of edited[list] ?? []) {
            const same = known.get(JSON.stringify(object));
            if (same) expect(object === same).toBe(true);
          }
          if (JSON.stringify(edited[list]) === JSON.stringify(file[list]))
            expect(edited[list] === file[list]).toBe(true);
        }
        if (planWrite(edited) === before) expect(edited === file).toBe(true);
        return edited;
      }, start);
    }),
  );
});
