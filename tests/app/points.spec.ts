import { expect, type Page, test } from '@playwright/test';
import { boardPlaces, dwellingOpen, settled, stepOpen } from './board.ts';

/** The colours of a square of the drawing, px of the page. */
function squareAt(page: Page, [x, y]: readonly [number, number], sidePx: number): Promise<string> {
  return page.evaluate(
    ([left, top, side]) => {
      const canvas = document.querySelectorAll('canvas')[0];
      const box = canvas?.getBoundingClientRect();
      if (!canvas || !box) return '';
      const scale = canvas.width / box.width;
      const at = [left - box.x, top - box.y, side, side].map((px) => Math.round(px * scale)) as [
        number,
        number,
        number,
        number,
      ];
      return (
        canvas
          .getContext('2d')
          ?.getImageData(...at)
          .data.join(' ') ?? ''
      );
    },
    [x - sidePx / 2, y - sidePx / 2, sidePx] as const,
  );
}

test('a point beside the floor is in view in the step of the papers with its name, and the floor is fitted without it elsewhere', async ({
  page,
}) => {
  const papers = { basePoints: [{ name: 'Gate post', at: [24_000, 3000] }] };
  await dwellingOpen(page, { papers });
  const board = await page.getByRole('application').boundingBox();
  const right = (board?.x ?? 0) + (board?.width ?? 0);
  const place = await boardPlaces(page);
  // the square of the symbol reaches 2 mm on paper, 8 px, beside its place
  expect(place(24_000, 3000)[0] + 8).toBeLessThan(right);
  await stepOpen(page, 'Joints');
  const wide = await boardPlaces(page);
  expect(wide(18_000, 0)[0] - wide(0, 0)[0]).toBeGreaterThan(place(18_000, 0)[0] - place(0, 0)[0]);
});

test("a view of the user's own stays as it is in the step of the papers", async ({ page }) => {
  await dwellingOpen(page, { papers: { basePoints: [{ at: [24_000, 3000] }] } });
  await stepOpen(page, 'Joints');
  await page.getByRole('button', { name: 'Zoom in' }).click();
  const before = await boardPlaces(page);
  await stepOpen(page, 'Papers');
  const after = await boardPlaces(page);
  for (const axis of [0, 1] as const) {
    expect(after(0, 0)[axis]).toBeCloseTo(before(0, 0)[axis], 0);
    expect(after(18_000, 11_400)[axis]).toBeCloseTo(before(18_000, 11_400)[axis], 0);
  }
});

test('the light of a line of the take-off lies on the floor and below the numbers of pins', async ({ page }) => {
  await dwellingOpen(page, {});
  const place = await boardPlaces(page);
  const [x, y] = place(2700, 2800);
  await page.locator('#take-off h3').hover();
  // the head of a pin stands some 6 mm on paper above its place, 24 px
  const head = () => squareAt(page, [x, y - 24], 10);
  const floor = () => squareAt(page, place(700, 10_900), 4);
  const [headBefore, floorBefore] = [await settled(head), await settled(floor)];
  await page.locator('#take-off').getByRole('button', { name: 'Screed', exact: true }).first().click();
  await expect.poll(floor).not.toBe(floorBefore);
  expect(await settled(head)).toBe(headBefore);
});
