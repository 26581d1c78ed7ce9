import { expect, test } from 'vitest';
import { boxesMeetPx, dimensionsPlace } from '../../src/app/canvas/dimensionPlace.ts';
import type { Dimension } from '../../src/app/tools/dimensions/dimension.ts';
import { dimensionsOf } from '../../src/app/tools/dimensions/dimensions.ts';
import type { Point } from '../../src/geometry/point.ts';
import { planEmpty } from '../../src/plan/empty.ts';
import { box } from '../plan/edits/house.ts';

/** A board of 800 x 600 px at 0.1 px to the mm, its corner at the plan's origin: 1 m is 100 px. */
const size = { widthPx: 800, heightPx: 600 };
const view = { pxPerMm: 0.1, offsetPx: [0, 0] as const, leastPxPerMm: 0.001 };
const fine = { unit: 'mm', targetPx: 24 } as const;

function sides(outline: readonly Point[]): readonly Dimension[] {
  const file = { ...planEmpty('Place'), rooms: [{ id: 'r1', outline }] };
  return dimensionsOf({ file, result: null, joint: null, chosen: [{ kind: 'room', key: 'r1' }] });
}

const placed = (outline: readonly Point[], setting: Parameters<typeof dimensionsPlace>[3] = fine) =>
  dimensionsPlace(sides(outline), view, size, setting);
const keys = (outline: readonly Point[]) => placed(outline).map(({ dimension }) => dimension.key);

test('a figure stands on the floor beside the middle of its side, as far off whatever the zoom', () => {
  const room = box(1000, 1000, 5000, 4000);
  const middleOf = (pxPerMm: number) => {
    const [first] = dimensionsPlace(sides(room), { ...view, pxPerMm }, size, fine);
    const { leftPx = 0, rightPx = 0, topPx = 0, bottomPx = 0 } = first?.box ?? {};
    return [(leftPx + rightPx) / 2, (topPx + bottomPx) / 2];
  };
  // Half of 24 px and a gap of 8 px below the side.
  expect(middleOf(0.1)).toEqual([350, 120]);
  expect(middleOf(0.12)).toEqual([420, 140]);
});

test('a figure that is longer than its line waits for a nearer view', () => {
  // 600 mm are 60 px: "600 mm" with its margins and end marks needs 64.
  expect(keys(box(1000, 1000, 600, 4000))).toEqual([]);
  expect(keys(box(1000, 1000, 800, 4000))).toEqual(['side 0 0', 'side 0 1', 'side 0 2']);
});

test('no two figures lie over each other, and what can be pressed is as large as a finger needs', () => {
  const boxes = placed(box(1000, 1000, 5000, 1000), { unit: 'mm', targetPx: 44 }).map((each) => each.box);
  expect(boxes.length).toBeGreaterThan(1);
  for (const [i, a] of boxes.entries()) {
    expect(a.bottomPx - a.topPx).toBe(44);
    expect(boxes.slice(i + 1).some((b) => boxesMeetPx(a, b))).toBe(false);
  }
});

test('of many the twelve longest are shown, in the order in which they came', () => {
  // Twenty lines below each other, each 10 px longer than the one before.
  const many = Array.from({ length: 20 }, (_, i): Dimension => {
    const [from, to]: readonly Point[] = [
      [1000, 200 + i * 280],
      [2000 + i * 100, 200 + i * 280],
    ];
    const edit = () => ({ kind: 'refused', words: '' }) as const;
    const own = { key: `${i}`, name: `Line ${i}`, lengthMm: 1000 + i * 100, edit };
    return { ...own, from: from as Point, to: to as Point, aside: null, stems: [false, false], depthMm: Infinity };
  });
  const shown = dimensionsPlace(many, view, size, fine).map(({ dimension }) => dimension.key);
  expect(shown).toEqual(['8', '9', '10', '11', '12', '13', '14', '15', '16', '17', '18', '19']);
});

test('of a side that goes beyond the board the figure stands in the middle of what is seen', () => {
  const [first] = placed(box(-4000, 1000, 8000, 4000));
  // In view from 0 to 400 px.
  expect(((first?.box.leftPx ?? 0) + (first?.box.rightPx ?? 0)) / 2).toBe(200);
});

test('nothing is shown of what lies beyond the board, or on a strip of floor too narrow for a figure', () => {
  expect(keys(box(20_000, 1000, 5000, 4000))).toEqual([]);
  // 150 mm are 15 px.
  expect(keys(box(1000, 1000, 5000, 150))).toEqual([]);
});
