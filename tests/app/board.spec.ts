import { expect, type Page, test } from '@playwright/test';
import { flatOpen, litPixels, rows } from './board.ts';

/** The mm or m that the scale bar names and its length: mm on the plan for a px of the board. */
async function mmPerPx(page: Page): Promise<number> {
  return page.locator('.scale-bar').evaluate((element) => {
    const [, figure, unit] = /([\d.,]+) (mm|m)/.exec(element.textContent) ?? [];
    const bar = element.querySelector('.bar');
    return (Number(figure) * (unit === 'm' ? 1000 : 1)) / (bar?.getBoundingClientRect().width ?? Number.NaN);
  });
}

test('hovering a thing in a list lights it on the drawing, and the other way round', async ({ page }) => {
  await flatOpen(page);
  const bedroom = rows(page, 'Bays').filter({ hasText: 'Bedroom' }).first();
  await bedroom.hover();
  await expect.poll(() => litPixels(page)).toBeGreaterThan(0);
  const board = await page.getByRole('application').boundingBox();
  if (board === null) throw new Error('the board has no size');
  await page.mouse.move(board.x + board.width * 0.8, board.y + board.height * 0.5);
  await expect(bedroom).toHaveClass(/lit/);
  await page.mouse.move(board.x + board.width * 0.5, board.y + 8);
  await expect.poll(() => litPixels(page)).toBe(0);
});

test('a finding about rooms lights them', async ({ page }) => {
  await flatOpen(page);
  const finding = rows(page, 'Findings').filter({ hasText: 'carried over' });
  await finding.scrollIntoViewIfNeeded();
  await page.mouse.move(300, 20);
  await expect.poll(() => litPixels(page)).toBe(0);
  await finding.hover();
  await expect.poll(() => litPixels(page)).toBeGreaterThan(0);
});

test('a wheel with notches zooms about the pointer, a finger on a touchpad pans', async ({ page }) => {
  await flatOpen(page);
  await expect(rows(page, 'Bays').first()).toBeVisible();
  const before = await mmPerPx(page);
  await page.mouse.move(500, 450);
  await page.mouse.wheel(0, -400);
  await expect.poll(() => mmPerPx(page)).toBeLessThan(before * 0.8);
  const nearer = await mmPerPx(page);
  const drawing = () => page.evaluate(() => document.querySelectorAll('canvas')[0]?.toDataURL());
  const still = await drawing();
  // A pause ends the turn of the wheel; what follows starts small, as a touchpad does.
  await page.evaluate(() => {
    const surface = document.querySelector('.surface');
    const turn = (deltaY: number) => new WheelEvent('wheel', { deltaX: 3, deltaY, bubbles: true, cancelable: true });
    return new Promise<void>((done) => {
      setTimeout(() => {
        for (const deltaY of [4, 30, 120]) surface?.dispatchEvent(turn(deltaY));
        done();
      }, 250);
    });
  });
  await expect.poll(drawing).not.toBe(still);
  expect(await mmPerPx(page)).toBeCloseTo(nearer, 6);
});

test('a drag moves the board and chooses nothing', async ({ page }) => {
  await flatOpen(page);
  await expect(rows(page, 'Bays').first()).toBeVisible();
  const drawing = () => page.evaluate(() => document.querySelectorAll('canvas')[0]?.toDataURL());
  const before = await drawing();
  await page.mouse.move(400, 400);
  await page.mouse.down();
  await page.mouse.move(480, 460, { steps: 4 });
  await page.mouse.up();
  await expect.poll(drawing).not.toBe(before);
  await expect(page.locator('[role=option][aria-selected=true]')).toHaveCount(0);
});

test.describe('by touch', () => {
  test.use({ viewport: { width: 820, height: 1180 }, hasTouch: true });

  test('two fingers zoom, a tap chooses, and the card leaves the drawing in view', async ({ page }) => {
    await flatOpen(page);
    await expect(page.getByText(/\d joints\./)).toBeVisible();
    const before = await mmPerPx(page);
    const session = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', apartPx: number) =>
      session.send('Input.dispatchTouchEvent', {
        type,
        touchPoints:
          type === 'touchEnd'
            ? []
            : [
                { x: 400 - apartPx / 2, y: 600, id: 0 },
                { x: 400 + apartPx / 2, y: 600, id: 1 },
              ],
      });
    await touch('touchStart', 100);
    await touch('touchMove', 140);
    await touch('touchMove', 200);
    await touch('touchEnd', 200);
    await expect.poll(() => mmPerPx(page)).toBeLessThan(before * 0.75);
    await page.getByRole('button', { name: 'Fit the whole drawing' }).tap();
    // The next finger may overtake the click that the browser makes of a tap.
    await expect.poll(() => mmPerPx(page)).toBeCloseTo(before, 6);
    await page.touchscreen.tap(620, 500);
    await expect(page.getByRole('region', { name: /^B\d+ Bedroom/ })).toBeInViewport({ ratio: 1 });
  });
});
