import { expect, it } from 'vitest';
import { analysed, freeJointM } from '../contract/analysed.ts';
import { box, planJson } from '../floors/plan-json.ts';

/** Design section 2: rings run in either direction. A column takes its floor from a bay whichever way round it is drawn. */
it('a column counts the same whichever way round it is drawn', () => {
  const hall = [{ id: 'r1', name: 'Hall', outline: box(0, 0, 21_350, 5640), holes: [box(13_710, 2800, 1500, 200)] }];
  const outlines = [box(14_040, 3390, 480, 490), box(2900, 3390, 400, 400), box(19_670, 630, 400, 400)];
  const joint = (drawn: typeof outlines) => {
    const columns = drawn.map((outline, i) => ({ id: `c${i}`, outline }));
    return freeJointM(analysed({ ...planJson('Hall', hall), columns }).analysis);
  };
  expect(joint(outlines)).toBeGreaterThan(10);
  expect(joint(outlines.map((outline) => outline.toReversed()))).toBeCloseTo(joint(outlines), 6);
});
