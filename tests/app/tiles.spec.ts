import { expect, type Locator, type Page, test } from '@playwright/test';
import { boardPlaces, figurePut, rows, settled, stepOpen, tiledOpen } from './board.ts';

test.use({ viewport: { width: 1440, height: 900 } });

const across = (page: Page): Locator => page.getByLabel('Set-out, across', { exact: true });
const down = (page: Page): Locator => page.getByLabel('Set-out, down', { exact: true });
const undo = (page: Page): Locator => page.getByRole('button', { name: 'Undo', exact: true });
const setOutTool = (page: Page): Locator => page.getByRole('button', { name: 'Set-out point', exact: true });
/** The figure of a count under the tiles of the floor. */
const counted = (page: Page, name: string): Locator =>
  page
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name }) })
    .getByRole('cell')
    .first();

test('tiles are laid at one press, a typed size counts them anew, and undo goes back step by step', async ({
  page,
}) => {
  await tiledOpen(page);
  const whole = async () => Number((await counted(page, 'Whole').textContent()) ?? '');
  await expect.poll(whole).toBeGreaterThan(100);
  const before = await whole();
  await figurePut(page, 'Length', '300');
  // Twice as many to a row, and some more beside the walls.
  await expect.poll(whole).toBeGreaterThan(1.8 * before);
  await undo(page).click();
  await expect.poll(whole).toBe(before);
  await undo(page).click();
  await expect(page.getByRole('button', { name: 'Lay tiles' })).toBeVisible();
  await expect(setOutTool(page)).toHaveCount(0);
});

test('the figures of tiles add up: whole ones and cut pieces, less those from off-cuts, are the tiles to lay', async ({
  page,
}) => {
  await tiledOpen(page);
  const numberOf = async (name: string) => Number((await counted(page, name).textContent())?.replace('−', '-'));
  await expect.poll(() => numberOf('Whole tiles')).toBeGreaterThan(100);
  const [whole, pieces, fromOffCuts, toLay] = await Promise.all(
    ['Whole tiles', 'Cut pieces', 'From off-cuts', 'Tiles to lay'].map(numberOf),
  );
  expect(fromOffCuts).toBeLessThan(0);
  expect(Number(whole) + Number(pieces) + Number(fromOffCuts)).toBe(toLay);
});

test('a size that no tile has is refused in its place', async ({ page }) => {
  await tiledOpen(page);
  await figurePut(page, 'Length', '5000');
  await expect(page.getByRole('alert')).toHaveText('Enter a number from 10 to 3000 mm.');
});

test('a box holds a whole number of tiles, and a cleared field says that it is not known', async ({ page }) => {
  await tiledOpen(page);
  const perBox = page.getByLabel('Tiles in a box', { exact: true });
  await figurePut(page, 'Tiles in a box', '2.5');
  await expect(page.getByRole('alert')).toHaveText('Enter a whole number of tiles.');
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Lay tiles/);
  await figurePut(page, 'Tiles in a box', '4');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(counted(page, 'Boxes')).toBeVisible();
  await figurePut(page, 'Tiles in a box', '');
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Tiles in a box not known/);
  await expect(perBox).toHaveAttribute('placeholder', 'not set');
  await expect(counted(page, 'Boxes')).toHaveCount(0);
  // Empty already: no step, and nothing wrong.
  await perBox.fill('7');
  await perBox.fill('');
  await perBox.press('Tab');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Tiles in a box not known/);
});

test('the set-out point is dragged on to the corner of a room, and one drag is one step', async ({ page }) => {
  await tiledOpen(page);
  const at = await boardPlaces(page);
  await page.mouse.move(...at(0, 0));
  await page.mouse.down();
  await page.mouse.move(...at(3000, 3000), { steps: 4 });
  await page.mouse.move(...at(5350, 4340), { steps: 4 });
  await page.mouse.up();
  // The corner of the hall.
  await expect(across(page)).toHaveValue('5320');
  await expect(down(page)).toHaveValue('4320');
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Move the set-out point/);
  await undo(page).click();
  await expect(across(page)).toHaveValue('0');
});

test('Escape in the drag puts the set-out point back', async ({ page }) => {
  await tiledOpen(page);
  const at = await boardPlaces(page);
  await page.mouse.move(...at(0, 0));
  await page.mouse.down();
  await page.mouse.move(...at(3000, 3000), { steps: 4 });
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(across(page)).toHaveValue('0');
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Lay tiles/);
});

test('the set-out point is led by arrow keys and takes a typed place', async ({ page }) => {
  await tiledOpen(page);
  await setOutTool(page).click();
  await expect(page.getByRole('application')).toBeFocused();
  await page.keyboard.press('ArrowRight');
  await expect(across(page)).toHaveValue('10');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Control+ArrowDown');
  await expect(down(page)).toHaveValue('101');
  await undo(page).click();
  await expect(down(page)).toHaveValue('100');
  await page.getByLabel('At: point, across and down').fill('250 ; 120');
  await page.getByLabel('At: point, across and down').press('Enter');
  await expect(across(page)).toHaveValue('250');
  await expect(down(page)).toHaveValue('120');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: 'Choose', exact: true })).toHaveAttribute('aria-pressed', 'true');
});

test('a room is given tiles of its own, and goes back to those of the floor', async ({ page }) => {
  await tiledOpen(page);
  await page.getByLabel('Own tiles for').selectOption({ label: 'Bath' });
  await page.getByRole('button', { name: 'Give it own tiles' }).click();
  const field = page.getByRole('group', { name: 'Field t1', exact: true });
  await field.getByLabel('Length', { exact: true }).fill('200');
  await field.getByLabel('Length', { exact: true }).press('Enter');
  // Those of the floor stay as they were.
  await expect(page.getByLabel('Length', { exact: true }).first()).toHaveValue('600');
  await expect(page.getByRole('heading', { name: 'All tiles' })).toBeVisible();
  await setOutTool(page).click();
  await page.getByLabel('Of', { exact: true }).selectOption({ label: 'Field t1' });
  await page.getByRole('application').focus();
  await page.keyboard.press('ArrowRight');
  // The first corner of a tile in the bath, which lies from x 5320: 9 x 603, and the step.
  await expect(field.getByLabel('Set-out, across', { exact: true })).toHaveValue('5437');
  await expect(across(page).first()).toHaveValue('0');
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Bath back to the tiles of the floor' }).click();
  await expect(field).toHaveCount(0);
  for (const name of ['Bath back to', 'Move the set-out point', 'Tile length 200 mm', 'Own tiles for Bath']) {
    await expect(undo(page)).toHaveAttribute('title', new RegExp(`^Undo: ${name}`));
    await undo(page).click();
  }
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Lay tiles/);
});

test('a joint is dragged on to a grout line; its card says so', async ({ page }) => {
  await tiledOpen(page);
  await stepOpen(page, 'Joints');
  await rows(page, 'Joints').filter({ hasText: 'Intermediate' }).first().click();
  const card = page.getByRole('region', { name: /^J1/ });
  await expect(card.getByRole('row', { name: /^Grout line/ })).toContainText('off by');
  const at = await boardPlaces(page);
  // The joint runs down from [5200, 4200]'s corner, at x 5200; the nearest grout lines are 4822.5 and 5425.5.
  await page.mouse.move(...at(5200, 1200));
  await page.mouse.down();
  await page.mouse.move(...at(5000, 1200), { steps: 4 });
  await page.mouse.move(...at(4835, 1200), { steps: 4 });
  await page.mouse.up();
  const grout = page.getByRole('row', { name: /^Grout line/ });
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Move joint J1/);
  await rows(page, 'Joints').filter({ hasText: 'drawn by hand' }).first().click();
  await expect(grout).toContainText('on a grout line');
  await undo(page).click();
  await expect(rows(page, 'Joints').filter({ hasText: 'drawn by hand' })).toHaveCount(0);
  await rows(page, 'Joints').filter({ hasText: 'Intermediate' }).first().click();
  // The same at one press.
  await page.getByRole('button', { name: 'Move to the grout line' }).click();
  await rows(page, 'Joints').filter({ hasText: 'drawn by hand' }).first().click();
  await expect(grout).toContainText('on a grout line');
});

test('a joint is drawn along an askew grout line from wall to wall', async ({ page }) => {
  await tiledOpen(page);
  await page.getByRole('group', { name: 'Angle, usual' }).getByRole('button', { name: '45°' }).click();
  await stepOpen(page, 'Joints');
  await page.getByRole('button', { name: 'Joint', exact: true }).click();
  const at = await boardPlaces(page);
  // The line x + y = (603 x 3 - 1.5) root 2 = 2556.2 meets the upper and the left wall there.
  await page.mouse.click(...at(2540, 12));
  await page.mouse.move(...at(1000, 1500), { steps: 4 });
  await page.mouse.click(...at(12, 2530));
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Draw a joint/);
  await page.keyboard.press('Escape');
  await rows(page, 'Joints').filter({ hasText: 'drawn by hand' }).first().click();
  await expect(page.getByRole('row', { name: /^Grout line/ })).toContainText('on a grout line');
});

test('the ways to agree are compared, one is used as one step, and the prices go stale with it', async ({ page }) => {
  await tiledOpen(page);
  await page.getByRole('button', { name: 'Compare the ways' }).click();
  const ways = page.getByRole('table', { name: 'Ways to agree' });
  await expect(ways.getByRole('columnheader')).toHaveText(['As it is', 'Move joints', 'Move set-out', 'Move both']);
  const prices = (
    await ways
      .getByRole('row', { name: /^Price/ })
      .getByRole('cell')
      .allTextContents()
  ).map((text) => Number.parseFloat(text));
  expect(prices).toHaveLength(4);
  expect(Math.min(...prices)).toBeLessThan(prices[0] ?? 0);
  await ways.getByRole('button', { name: /^Use this: move joints and set-out together/ }).click();
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Move joints and set-out together/);
  await expect(page.getByText('The plan has changed since')).toBeVisible();
  await expect(ways.getByRole('button')).toHaveCount(0);
  await stepOpen(page, 'Joints');
  await expect(page.getByLabel('Layout aims at')).toHaveValue('grout-lines');
  await undo(page).click();
  await expect(page.getByLabel('Layout aims at')).toHaveValue('least-joint');
  await stepOpen(page, 'Coverings');
  await expect(ways.getByRole('button', { name: /^Use this/ }).first()).toBeVisible();
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Lay tiles/);
});

test('the cuts are balanced at one press', async ({ page }) => {
  await tiledOpen(page);
  const balance = page.getByRole('button', { name: 'Balance the cuts' }).first();
  await balance.click();
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Balance the cuts/);
  const [x, y] = [await across(page).inputValue(), await down(page).inputValue()];
  // At once: no ways were compared for it.
  await expect(page.getByRole('table', { name: 'Ways to agree' })).toHaveCount(0);
  await balance.click();
  await expect(page.getByText('The cuts are balanced as the tiles lie.')).toBeVisible();
  expect([await across(page).inputValue(), await down(page).inputValue()]).toEqual([x, y]);
  await undo(page).click();
  await expect(across(page)).toHaveValue('0');
  await expect(down(page)).toHaveValue('0');
});

test('a joint that misses the grout is chosen in its list and on the drawing', async ({ page }) => {
  await tiledOpen(page);
  const missed = rows(page, 'Joints off the grout lines').first();
  await expect(missed).toContainText('off by');
  await missed.click();
  await expect(page.getByRole('region', { name: /^J\d/ })).toBeVisible();
});

test('the tiles are taken off the drawing and put back, and nothing of the plan changes', async ({ page }) => {
  await tiledOpen(page);
  const drawing = () => page.evaluate(() => document.querySelectorAll('canvas')[0]?.toDataURL());
  await expect(counted(page, 'Whole')).toBeVisible();
  const tiled = await settled(drawing);
  await page.getByLabel('Show the tiles on the drawing').uncheck();
  await expect.poll(drawing).not.toBe(tiled);
  await page.getByLabel('Show the tiles on the drawing').check();
  await expect.poll(drawing).toBe(tiled);
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Lay tiles/);
});

test('a count of narrow cuts lights where they lie, and puts the light out', async ({ page }) => {
  await tiledOpen(page);
  const drawing = () => page.evaluate(() => document.querySelectorAll('canvas')[0]?.toDataURL());
  const dark = await settled(drawing);
  const show = counted(page, 'Under half a tile').getByRole('button');
  await show.click();
  await expect(show).toHaveAttribute('aria-pressed', 'true');
  await expect.poll(drawing).not.toBe(dark);
  await show.click();
  await expect.poll(drawing).toBe(dark);
});
