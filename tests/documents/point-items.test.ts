import { expect, it } from 'vitest';
import { boardGridItems, boardPointItems } from '../../src/documents/point-items.ts';
import { testPointPages } from '../../src/documents/site-sheets.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { demoText, paperSourceOf } from './paper-fixture.ts';

type TestPoints = NonNullable<NonNullable<PlanFile['records']>['testPoints']>;

function textsOnSheet(testPoints: TestPoints): readonly string[] {
  const source = paperSourceOf(demoText('1-dwelling'), {
    records: { testPoints },
    columns: [
      {
        id: 'shaft',
        outline: [
          [10_000, 9500],
          [11_200, 9500],
          [11_200, 10_700],
          [10_000, 10_700],
        ],
      },
    ],
  });
  return (testPointPages(source) ?? []).flatMap(({ groups }) =>
    groups.flatMap(({ inks }) => inks.flatMap((ink) => (ink.ink === 'text' ? [ink.text] : []))),
  );
}

// The living room of the dwelling ends at y 11 400; its cooking island has its middle at [2600, 2850].
it.each([
  ['in the middle of a column as wide as a shaft', [10_600, 10_100]],
  ['under a cooking island', [2600, 2850]],
  ['in the wall between two rooms', [13_460, 2340]],
  ['to the right of the floor', [19_500, 9000]],
  ['to the left of the floor', [-1500, 9000]],
  ['above the floor', [9000, -2000]],
  ['below the floor', [9000, 13_000]],
  ['in the middle of a room', [9000, 9000]],
] as const)('a test point %s has its name on the sheet', (_, at) => {
  expect(textsOnSheet([{ name: 'North end', at: [...at] }])).toContain('North end');
});

it('test points close together are told apart by their names', () => {
  const texts = textsOnSheet([0, 1, 2, 3].map((i) => ({ name: `Q${i}`, at: [9000 + 150 * i, 9000] })));
  for (const name of ['Q0', 'Q1', 'Q2', 'Q3']) expect(texts).toContain(name);
});

const empty: PlanFile = { format: 'screed-bays/plan', version: 1, name: 'Plot', rooms: [] };

it('a line of the grid has its name at its left or upper end, whichever way it was entered', () => {
  const gridLines = [
    { name: 'A', from: [1000, 9000] as [number, number], to: [1000, 0] as [number, number] },
    { name: '1', from: [9000, 500] as [number, number], to: [0, 500] as [number, number] },
  ];
  const names = boardGridItems({ ...empty, papers: { gridLines } }, 50).filter(({ shape }) => shape === 'label');
  const [upright, level] = names.map((item) => (item.shape === 'label' ? item.seat : null));
  // beyond the end: within 5 mm of paper at 1 : 50, which are 250 mm
  const first = (seat: typeof upright) => (seat?.kind === 'beside' ? seat.places?.[0]?.at : undefined) ?? [NaN, NaN];
  expect(first(upright)[0]).toBe(1000);
  expect(first(upright)[1]).toBeLessThan(0);
  expect(first(upright)[1]).toBeGreaterThan(-250);
  expect(first(level)[1]).toBe(500);
  expect(first(level)[0]).toBeLessThan(0);
  expect(first(level)[0]).toBeGreaterThan(-250);
});

it('of a name on the board no place lies beyond a wall, unless the point is marked on that wall', () => {
  const wall = {
    points: [[1000, -9000] as const, [1000, 9000] as const],
    box: { minX: 1000, maxX: 1000, minY: -9000, maxY: 9000 },
  };
  const xsOf = (x: number) =>
    boardPointItems(
      { ...empty, papers: { basePoints: [{ name: 'P', at: [x, 0] }] } },
      { scale: 100, floor: { minX: 0, maxX: 5000 }, walls: [wall], under: () => null },
    ).flatMap((item) =>
      item.shape === 'label' && item.seat.kind === 'beside' ? (item.seat.places ?? []).map(({ at }) => at[0]) : [],
    );
  expect(xsOf(800).length).toBeGreaterThan(0);
  for (const x of xsOf(800)) expect(x).toBeLessThanOrEqual(1000);
  expect(xsOf(1000).some((x) => x > 1000) && xsOf(1000).some((x) => x < 1000)).toBe(true);
});
