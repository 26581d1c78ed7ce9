import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import { planEmpty } from '../../src/plan/empty.ts';
import { planRead } from '../../src/plan/read.ts';
import { planWrite } from '../../src/plan/write.ts';
import { anyPlan } from './any-plan.ts';

test('a plan that is saved and opened is the same plan', () => {
  fc.assert(
    fc.property(anyPlan, (file) => {
      expect(planRead(planWrite(file))).toEqual({ kind: 'plan', file });
    }),
  );
});

test('a plan that is opened and saved again is the same file', () => {
  fc.assert(
    fc.property(anyPlan, (file) => {
      const text = planWrite(file);
      const read = planRead(text);
      expect(read.kind === 'plan' && planWrite(read.file)).toBe(text);
    }),
  );
});

test('the order in which fields stand in a file changes nothing in the file that is saved', () => {
  fc.assert(
    fc.property(anyPlan, (file) => {
      const turned = planRead(JSON.stringify(Object.fromEntries(Object.entries(file).reverse())));
      expect(turned.kind === 'plan' && planWrite(turned.file)).toBe(planWrite(file));
    }),
  );
});

test('coordinates between the steps of the grid settle the first time they are read', () => {
  const loose = fc.double({ min: -1e7, max: 1e7, noNaN: true });
  fc.assert(
    fc.property(fc.tuple(loose, loose), (centre) => {
      const text = planWrite({ ...planEmpty('Pipe'), pipes: [{ id: 'p1', centre, diameterMm: 110 }] });
      const once = planRead(text);
      const twice = planRead(once.kind === 'plan' ? planWrite(once.file) : '');
      expect(twice).toEqual(once);
      const [x, y]: Point = (once.kind === 'plan' && once.file.pipes?.[0]?.centre) || [Number.NaN, Number.NaN];
      // half a step, and what the number itself cannot hold at 10 km
      expect(Math.max(Math.abs(x - centre[0]), Math.abs(y - centre[1]))).toBeLessThanOrEqual(0.05 + 1e-8);
    }),
  );
});

test('each thing of the plan has a line of its own', () => {
  const outline: readonly Point[] = [
    [0, 0],
    [4000, 0],
    [0, 4000],
  ];
  const file = {
    ...planEmpty('Two rooms'),
    rooms: [
      { id: 'r1', outline },
      { id: 'r2', outline },
    ],
  };
  expect(planWrite(file)).toBe(`{
  "format": "screed-bays/plan",
  "version": 1,
  "name": "Two rooms",
  "rooms": [
    {"id":"r1","outline":[[0,0],[4000,0],[0,4000]]},
    {"id":"r2","outline":[[0,0],[4000,0],[0,4000]]}
  ]
}
`);
});
