import { expect, type Locator, type Page, test } from '@playwright/test';
import { boardPlaces, figurePut, rows, stepOpen, tiledOpen } from './board.ts';

test.use({ viewport: { width: 1440, height: 900 } });

const button = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name, exact: true });
const told = (page: Page): Locator => page.locator('.notice');

test('a long list of joints off the grout is cut short below the ways to agree, and a comparison is cancelled from anywhere', async ({
  page,
}) => {
  test.setTimeout(60_000);
  await page.goto('./');
  await button(page, 'Plans').click();
  await page.getByRole('list', { name: 'Demo floors' }).getByRole('button', { name: 'Market hall' }).click();
  await stepOpen(page, 'Coverings');
  const misses = page.getByRole('listbox', { name: 'Joints off the grout lines' });
  await expect(misses.getByRole('option')).toHaveCount(12, { timeout: 25_000 });
  const compare = button(page, 'Compare the ways');
  await compare.click();
  await stepOpen(page, 'Joints');
  await stepOpen(page, 'Coverings');
  const cancel = page.getByRole('complementary').getByRole('button', { name: 'Cancel' });
  await expect(cancel).toBeInViewport({ ratio: 1, timeout: 15_000 });
  await cancel.click();
  await expect(compare).toBeFocused();
  const all = page.getByRole('button', { name: /^All \d+$/ });
  await all.click();
  await expect(misses).toBeFocused();
  expect(await misses.getByRole('option').count()).toBeGreaterThan(12);
});

test('what goes with its own press hands the focus to a neighbour', async ({ page }) => {
  await tiledOpen(page);
  await expect(page.getByLabel('Show the tiles on the drawing')).toBeFocused();
  await page.getByLabel('Own tiles for').selectOption({ label: 'Bath' });
  await button(page, 'Give it own tiles').click();
  await button(page, 'Take the field away').click();
  await expect(page.getByLabel('Own tiles for')).toBeFocused();
  await button(page, 'Compare the ways').click();
  const use = page.getByRole('button', { name: /^Use this/ });
  await expect(use.first()).toBeFocused();
  await use.first().press('Enter');
  await expect(button(page, 'Compare the ways again')).toBeFocused();
  await button(page, 'Take the tiles away').click();
  await expect(button(page, 'Lay tiles')).toBeFocused();
});

test('a step takes the words of the step before away', async ({ page }) => {
  await tiledOpen(page);
  await figurePut(page, 'Set-out, across', '100');
  await button(page, 'Undo').click();
  await expect(told(page)).toContainText('Undone: Set-out, across');
  await figurePut(page, 'Set-out, across', '250');
  await expect(told(page).filter({ hasText: 'Undone' })).toHaveCount(0);
  await button(page, 'Balance the cuts').first().click();
  await button(page, 'Balance the cuts').first().click();
  await expect(told(page)).toContainText('balanced as the tiles lie');
  await figurePut(page, 'Set-out, across', '120');
  await expect(told(page).filter({ hasText: 'balanced' })).toHaveCount(0);
});

test('the card of a joint that was moved on to the grout says how it lies there', async ({ page }) => {
  await tiledOpen(page);
  await rows(page, 'Joints off the grout lines').filter({ hasText: 'off by' }).first().click();
  await button(page, 'Move to the grout line').click();
  await expect(page.locator('#card').getByRole('row', { name: /^Grout line of J\d/ })).toContainText('on a grout line');
  await expect(page.locator('#card')).toBeFocused();
});

test('the fields of the set-out point follow it while it is dragged', async ({ page }) => {
  await tiledOpen(page);
  const at = await boardPlaces(page);
  await page.mouse.move(...at(0, 0));
  await page.mouse.down();
  await page.mouse.move(...at(3000, 3000), { steps: 4 });
  const across = page.getByLabel('Set-out, across', { exact: true });
  await expect.poll(async () => Number(await across.inputValue())).toBeGreaterThan(2500);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(across).toHaveValue('0');
});

test('a set-out point that lies nowhere is refused in few words, and both its fields stay in line', async ({
  page,
}) => {
  await tiledOpen(page);
  await figurePut(page, 'Set-out, across', '99999999');
  await expect(page.getByRole('alert')).toHaveText('Enter a number from −10\u00a0000 to 10\u00a0000 m.');
  const tops = await Promise.all(
    ['across', 'down'].map(async (way) => (await page.getByLabel(`Set-out, ${way}`, { exact: true }).boundingBox())?.y),
  );
  expect(tops[0]).toBe(tops[1]);
});

test.describe('by touch', () => {
  test.use({ viewport: { width: 820, height: 1180 }, hasTouch: true, isMobile: true });

  test('a hint says nothing of keys', async ({ page }) => {
    await tiledOpen(page);
    await button(page, 'Set-out point').click();
    await expect(page.getByText('Press where a whole tile is to begin')).toBeVisible();
    await expect(page.getByText('Arrow keys move it.')).toBeHidden();
  });
});
