import { expect, test } from 'vitest';
import { itemsHit, itemsPlace } from '../../src/app/canvas/hit.ts';
import { pinMembers, pinsCluster } from '../../src/app/canvas/pins.ts';
import type { DrawingItem } from '../../src/documents/drawing.ts';

const view = { pxPerMm: 0.1, offsetPx: [0, 0], leastPxPerMm: 0.0005 } as const;
const square = (x: number, side: number) =>
  [
    [x, 0],
    [x + side, 0],
    [x + side, side],
    [x, side],
  ] as const;

const drawing: readonly DrawingItem[] = [
  { shape: 'fill', layer: 'bays', style: 'bay-0', outline: square(0, 4000), holes: [], ref: { kind: 'bay', id: 'B1' } },
  {
    shape: 'fill',
    layer: 'bays',
    style: 'bay-1',
    outline: square(4000, 4000),
    holes: [],
    ref: { kind: 'bay', id: 'B2' },
  },
  {
    shape: 'fill',
    layer: 'objects',
    style: 'column',
    outline: square(1000, 300),
    holes: [],
    ref: { kind: 'object', id: 'c1' },
  },
  {
    shape: 'line',
    layer: 'joints',
    style: 'joint-field',
    points: [
      [4000, 0],
      [4000, 4000],
    ],
    ref: { kind: 'joint', id: 'J1' },
  },
  {
    shape: 'mark',
    layer: 'findings',
    style: 'pin-fault',
    at: [6000, 3000],
    text: '1',
    ref: { kind: 'finding', id: '0' },
  },
];
const items = itemsPlace(drawing);

test('the floor of a bay is the bay', () => {
  expect(itemsHit(items, view, [200, 200], 6)).toEqual({ kind: 'bay', id: 'B1' });
  expect(itemsHit(items, view, [700, 100], 6)).toEqual({ kind: 'bay', id: 'B2' });
});

test('a joint is met by its reach, in px and not in mm', () => {
  expect(itemsHit(items, view, [405, 200], 6)).toEqual({ kind: 'joint', id: 'J1' });
  expect(itemsHit(items, view, [407, 200], 6)).toEqual({ kind: 'bay', id: 'B2' });
  expect(itemsHit(items, view, [407, 200], 20)).toEqual({ kind: 'joint', id: 'J1' });
});

test('what stands on a bay is met before the bay', () => {
  expect(itemsHit(items, view, [115, 15], 6)).toEqual({ kind: 'object', id: 'c1' });
});

test('a pin is met on its head, which stands above its place', () => {
  expect(itemsHit(items, view, [600, 275], 6)).toEqual({ kind: 'finding', id: '0' });
  expect(itemsHit(items, view, [600, 330], 6)).toEqual({ kind: 'bay', id: 'B2' });
});

test('beside the floor there is nothing', () => {
  expect(itemsHit(items, view, [-50, 200], 6)).toBeNull();
});

test('pins that would hide each other are one pin with their count, until the board is nearer', () => {
  const pin = (id: string, x: number): DrawingItem => ({
    shape: 'mark',
    layer: 'findings',
    style: 'pin-fault',
    at: [x, 0],
    text: id,
    ref: { kind: 'finding', id },
  });
  const pins = itemsPlace([pin('0', 0), pin('1', 100), pin('2', 5000)]);
  const texts = (pxPerMm: number) =>
    pinsCluster(pins, { pxPerMm }).map(({ item }) => item.shape === 'mark' && item.text);
  expect(texts(0.1)).toEqual(['×2', '2']);
  const members = (pxPerMm: number, id: string) =>
    pinMembers(pins, { pxPerMm }, { kind: 'finding', id }).map((ref) => ref.id);
  expect(members(0.1, '1')).toEqual(['1', '0']);
  expect(members(0.1, '2')).toEqual(['2']);
  expect(members(1, '1')).toEqual(['1']);
  expect(texts(1)).toEqual(['0', '1', '2']);
});

test('where pins would hide the floor of a drawing more of them stand together, and fewer the nearer it is', () => {
  const pins = itemsPlace(
    Array.from(
      { length: 400 },
      (_, i): DrawingItem => ({
        shape: 'mark',
        layer: 'findings',
        style: 'pin-caution',
        at: [(i % 20) * 3000, Math.floor(i / 20) * 3000],
        text: String(i),
        ref: { kind: 'finding', id: String(i) },
      }),
    ),
  );
  // Paper is 3.78 px to the mm: at 0.01 px to the mm rooms of 3 m are 8 mm apart, at 0.1 they are 79 mm apart.
  const far = pinsCluster(pins, { pxPerMm: 0.01 }).length;
  expect(far).toBeLessThan(80);
  expect(far).toBeGreaterThan(10);
  expect(pinsCluster(pins, { pxPerMm: 0.1 }).length).toBe(400);
});
