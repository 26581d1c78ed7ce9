import { expect, type Page, test } from '@playwright/test';
import { planOpen, rows, stepOpen } from './board.ts';

const rooms = 1000;
const across = 40;

/** Rooms of 3 x 4 m side by side in rows, none with a door. */
async function manyRoomsOpen(page: Page): Promise<void> {
  const file = {
    format: 'screed-bays/plan',
    version: 1,
    name: 'Many rooms',
    rooms: Array.from({ length: rooms }, (_, i) => {
      const [x, y] = [(i % across) * 3200, Math.floor(i / across) * 4200];
      const outline = [
        [x, y],
        [x + 3000, y],
        [x + 3000, y + 4000],
        [x, y + 4000],
      ];
      return { id: `r${i}`, name: `Cell ${i + 1}`, outline };
    }),
  };
  await page.goto('./');
  const buffer = Buffer.from(JSON.stringify(file));
  await planOpen(page, { name: 'many.json', mimeType: 'application/json', buffer });
  await expect(page.getByText(/^1000 rooms, .* 1000 bays/)).toBeVisible({ timeout: 20_000 });
}

test('a list of a thousand rows makes only those near the view, and End reaches the last', async ({ page }) => {
  await manyRoomsOpen(page);
  await stepOpen(page, 'Floor');
  const list = page.getByRole('listbox', { name: 'Rooms' });
  await expect(rows(page, 'Rooms').first()).toHaveAttribute('aria-setsize', String(rooms));
  expect(await rows(page, 'Rooms').count()).toBeLessThan(200);
  await list.focus();
  await page.keyboard.press('End');
  const last = rows(page, 'Rooms').filter({ hasText: /^Cell 1000/ });
  await expect(last).toHaveAttribute('aria-selected', 'true');
  await expect(last).toHaveAttribute('aria-posinset', String(rooms));
  await expect(last).toBeInViewport();
});

test('a pin that stands for several findings lists them, and each can be chosen there', async ({ page }) => {
  await manyRoomsOpen(page);
  // From far off the pins of the rooms without a door lie on each other, in the middle of the board.
  const board = page.getByRole('application');
  const box = await board.boundingBox();
  if (box === null) throw new Error('the board has no size');
  const here = page.getByRole('region', { name: /^\d+ findings here$/ });
  await board.focus();
  for (let step = 0; step < 10; step++) await page.keyboard.press('-');
  await board.click({ position: { x: box.width / 2, y: box.height / 2 } });
  await expect(here).toBeVisible();
  const first = here.getByRole('option').first();
  const words = await first.locator('.name').textContent();
  await first.click();
  await expect(here).toHaveCount(0);
  await expect(page.getByRole('region', { name: /^Finding \d+$/ })).toContainText(words ?? 'no words');
});

test('what is chosen is in view when its step is opened again', async ({ page }) => {
  await manyRoomsOpen(page);
  const bays = page.getByRole('listbox', { name: 'Bays' });
  await bays.focus();
  await page.keyboard.press('End');
  for (let i = 0; i < 60; i++) await page.keyboard.press('ArrowUp');
  await stepOpen(page, 'Papers');
  await expect(bays).toHaveCount(0);
  await stepOpen(page, 'Joints');
  const chosen = bays.locator('[aria-selected="true"]');
  await expect(chosen).toHaveAttribute('aria-posinset', String(rooms - 60));
  await expect(chosen).toBeInViewport();
});
