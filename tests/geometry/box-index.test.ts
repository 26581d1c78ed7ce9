import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxIndexOf } from '../../src/geometry/box-index.ts';
import { type Box, boxOf } from '../../src/geometry/ring.ts';

const place = fc.integer({ min: -50, max: 50 });
/** From points to boxes a thousand times as large as others. */
const size = fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 9 }), fc.integer({ min: 1000, max: 9000 }));
const box = fc
  .tuple(place, place, size, size)
  .map(([x, y, w, h]): Box => ({ minX: x, minY: y, maxX: x + w, maxY: y + h }));
const meets = (a: Box, b: Box) => a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;

describe('boxes near a place', () => {
  it('are those that looking at every box finds, in order', () => {
    fc.assert(
      fc.property(fc.array(box, { maxLength: 30 }), box, (boxes, near) => {
        const right = boxes.flatMap((other, i) => (meets(other, near) ? [i] : []));
        expect(boxIndexOf(boxes).near(near)).toEqual(right);
      }),
      { numRuns: 300 },
    );
  });

  it('count where they only touch', () => {
    const boxes: Box[] = [{ minX: 0, minY: 0, maxX: 10, maxY: 10 }];
    expect(boxIndexOf(boxes).near({ minX: 10, minY: 10, maxX: 20, maxY: 20 })).toEqual([0]);
    expect(boxIndexOf(boxes).near({ minX: 10.1, minY: 10, maxX: 20, maxY: 20 })).toEqual([]);
  });

  it('are none where nothing is, and what has no points is near nothing', () => {
    const all: Box = { minX: -1e9, minY: -1e9, maxX: 1e9, maxY: 1e9 };
    expect(boxIndexOf([]).near(all)).toEqual([]);
    expect(boxIndexOf([boxOf([])]).near(all)).toEqual([]);
  });
});
