import { expect, test } from '@playwright/test';
import { flatOpen, planOpen, rows, stepOpen } from './board.ts';

test.describe('at 390 px', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test('nothing is wider than the window, and a changed plan says that it is kept', async ({ page }) => {
    await flatOpen(page);
    await stepOpen(page, 'Floor');
    const thickness = page.getByLabel('Thickness', { exact: true });
    await thickness.press('ArrowUp');
    await expect(page.getByText('Kept in this browser.')).toBeInViewport({ ratio: 1 });
    for (const step of ['Floor', 'Joints', 'Papers']) {
      await stepOpen(page, step);
      const wide = await page.evaluate(() =>
        [...document.querySelectorAll('.app, .app button, .app input, .app select, .app p, .app .row')]
          .filter((element) => getComputedStyle(element).clipPath === 'none' && element.closest('.unseen') === null)
          .filter((element) => element.getBoundingClientRect().right > window.innerWidth + 0.5)
          .map((element) => element.outerHTML.slice(0, 80)),
      );
      expect(wide).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    }
  });

  test('fields are 44 px high by touch', async ({ page }) => {
    await flatOpen(page);
    await stepOpen(page, 'Floor');
    const heights = await page
      .locator('.tray input:visible, .tray select:visible')
      .evaluateAll((fields) => fields.map((field) => field.getBoundingClientRect().height));
    expect(heights.length).toBeGreaterThan(5);
    for (const height of heights) expect(height).toBeGreaterThanOrEqual(44);
  });
});

test('light or dark as chosen by hand holds when the page is loaded again', async ({ page }) => {
  await page.goto('./');
  await page.getByRole('button', { name: 'Dark' }).click();
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await page.reload();
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await expect(page.getByRole('button', { name: 'Light' })).toBeVisible();
});

test.describe('in colours of the system', () => {
  test.use({ contextOptions: { forcedColors: 'active' } });

  test('the chosen row and the open step have another ground than the rest', async ({ page }) => {
    await flatOpen(page);
    await rows(page, 'Bays').first().click();
    const ground = (element: Element) => getComputedStyle(element).backgroundColor;
    const chosen = await rows(page, 'Bays').first().evaluate(ground);
    expect(chosen).not.toBe(await rows(page, 'Bays').nth(1).evaluate(ground));
    const step = (name: string) => page.getByRole('navigation').getByRole('button', { name }).evaluate(ground);
    expect(await step('Joints')).not.toBe(await step('Floor'));
  });
});

test('a plan of two rooms that lie 1.8 km apart is shown whole, and the zoom goes off at its end', async ({ page }) => {
  const room = (id: string, x: number) => ({
    id,
    name: id,
    outline: [
      [x, 0],
      [x + 4000, 0],
      [x + 4000, 4000],
      [x, 4000],
    ],
  });
  const plan = { format: 'screed-bays/plan', version: 1, name: 'Apart', rooms: [room('a', 0), room('b', 1_800_000)] };
  await page.goto('./');
  await planOpen(page, { name: 'a.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(plan)) });
  await expect(page.getByText(/^2 rooms, .* 2 bays/)).toBeVisible();
  await page.getByRole('button', { name: 'Fit the whole drawing' }).click();
  await expect(page.getByRole('button', { name: 'Zoom out' })).toBeDisabled();
  const board = await page.getByRole('application').boundingBox();
  const bar = page.locator('.scale-bar .bar');
  const metres = Number(/\d+/.exec((await page.locator('.scale-bar').textContent()) ?? '')?.[0]);
  const pxPerM = ((await bar.boundingBox())?.width ?? 0) / metres;
  expect(1804 * pxPerM).toBeLessThan(board?.width ?? 0);
  await page.getByRole('button', { name: 'Zoom in' }).click();
  await expect(page.getByRole('button', { name: 'Zoom out' })).toBeEnabled();
});
