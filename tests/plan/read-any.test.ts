import fc from 'fast-check';
import { expect, test } from 'vitest';
import { jsonFault } from '../../src/plan/json-fault.ts';
import { jsonKeyTwice } from '../../src/plan/json-keys.ts';
import { migrations } from '../../src/plan/migrate.ts';
import { planRead } from '../../src/plan/read.ts';
import { PLAN_VERSION } from '../../src/plan/schema.ts';
import { anyPlan } from './any-plan.ts';

/** The value with one of its parts, chosen by `at`, in another's place. */
function replaced(value: unknown, at: readonly number[], part: unknown): unknown {
  const [here, ...deeper] = at;
  if (here === undefined || typeof value !== 'object' || value === null) return part;
  const keys = Object.keys(value);
  const key = keys[here % Math.max(1, keys.length)];
  if (key === undefined) return part;
  const entries = Object.entries(value).map(([k, v]) => [k, k === key ? replaced(v, deeper, part) : v] as const);
  return Array.isArray(value) ? entries.map(([, v]) => v) : Object.fromEntries(entries);
}

test('whatever stands in place of any part of a plan, the file is read or refused with a path', () => {
  const at = fc.array(fc.nat(), { minLength: 1, maxLength: 5 });
  let refused = 0;
  fc.assert(
    fc.property(anyPlan, at, fc.jsonValue(), (file, place, part) => {
      const read = planRead(JSON.stringify(replaced(file, place, part)));
      if (read.kind === 'plan') return;
      refused++;
      expect(read.problems.length).toBeGreaterThan(0);
      for (const { path, message } of read.problems) {
        expect(path === '').toBe(/^has \d+ more problems?$/.test(message));
        expect(message).toMatch(/^(is|must|needs|has|lies) \S/);
      }
    }),
    { numRuns: 1000 },
  );
  expect(refused).toBeGreaterThan(300);
});

/** Where the engine says that a text stops being JSON; null where it gives no position. */
function enginePosition(text: string): number | null {
  try {
    JSON.parse(text);
    return null;
  } catch (error) {
    const position = /position (\d+)/.exec(error instanceof Error ? error.message : '')?.[1];
    return position === undefined ? null : Number(position);
  }
}

test('a spoilt text is placed where the engine places it, or at the start of the word that is spoilt', () => {
  const whole = '{\n "name": "Hall \\u00e9 \\"A\\"", "list": [1, -2.5e+3, [], {"a": true,\n "b": [null, {}]}]\n}\n';
  const put = fc.constantFrom('', ',', ':', '}', ']', '{', '[', '"', '0', '-', 'x', '\n', '\t', '\\', '\u0001');
  let compared = 0;
  fc.assert(
    fc.property(fc.nat({ max: whole.length }), fc.nat({ max: 3 }), put, (at, cut, character) => {
      const text = whole.slice(0, at) + character + whole.slice(at + cut);
      const position = enginePosition(text);
      if (position === null) return;
      compared++;
      const { line, column } = jsonFault(text);
      const found =
        text
          .split('\n')
          .slice(0, line - 1)
          .join('\n').length + (line > 1 ? column : column - 1);
      expect(text.slice(found, position)).toMatch(/^[-+.\w\\]*$/);
      expect(found).toBeLessThanOrEqual(position);
    }),
    { numRuns: 3000 },
  );
  expect(compared).toBeGreaterThan(500);
});

test('whatever a text holds, only a key that one object has twice is found', () => {
  const indent = fc.constantFrom('', ' ', '\n\t');
  fc.assert(
    fc.property(fc.jsonValue(), fc.jsonValue(), fc.string({ unit: 'binary' }), indent, (before, after, key, space) => {
      const [first, last] = [before, after].map((value) => JSON.stringify(value, null, space));
      const name = JSON.stringify(key);
      expect(jsonKeyTwice(`[${first},{${name}:${first},"x${name.slice(1)}:${last}}]`)).toBeNull();
      expect(jsonKeyTwice(`[${first},{${name}:${first},"x":{}${space},${name}${space}:${last}}]`)).toEqual([1, key]);
    }),
    { numRuns: 500 },
  );
});

test('there is a step from each version to the next', () => {
  expect(migrations).toHaveLength(PLAN_VERSION - 1);
});
