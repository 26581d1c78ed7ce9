import { expect, test } from '@playwright/test';
import { flatOpen, rows, stepOpen } from './board.ts';
import { card, choose, expectUndo, flat, planLay, planSaved, put } from './cards.ts';

test('several things are aligned, spaced, turned and removed together', async ({ page }) => {
  const plan = flat();
  plan.name = 'Columns';
  const column = (id: string, x: number, y: number) => ({
    id,
    outline: [
      [x, y],
      [x + 300, y],
      [x + 300, y + 300],
      [x, y + 300],
    ],
  });
  plan.columns = [column('c1', 1000, 5000), column('c2', 1500, 5400), column('c3', 4000, 6000)];
  for (const list of ['pipes', 'joinery', 'sunZones']) delete plan[list];
  await planLay(page, plan);
  await stepOpen(page, 'Obstacles');
  await page.getByRole('heading', { name: 'Obstacles', exact: true }).click();
  await page.keyboard.press('ControlOrMeta+a');
  await expect(page.getByRole('region', { name: '3 things' })).toContainText('3 columns');
  await card(page).getByRole('button', { name: 'Align top sides' }).click();
  await card(page).getByRole('button', { name: 'Distribute across' }).click();
  // from 1000 to 4300, 900 taken: gaps of 1200, so the one between starts at 2500
  expect((await planSaved(page)).columns).toEqual([
    column('c1', 1000, 5000),
    column('c2', 2500, 5000),
    column('c3', 4000, 5000),
  ]);
  await expectUndo(page, /^Undo: Distribute 3 things/);
  await card(page).getByRole('button', { name: 'Remove', exact: true }).click();
  await expectUndo(page, /^Undo: Remove 3 things/);
  await expect(card(page)).toHaveCount(0);
});

test('rooms that are chosen together are heated and covered together', async ({ page }) => {
  await flatOpen(page);
  await stepOpen(page, 'Floor');
  await page.getByRole('heading', { name: 'Floor', exact: true }).click();
  await page.keyboard.press('ControlOrMeta+a');
  await card(page).getByLabel('Heated').selectOption('no');
  await card(page).getByLabel('Covering').selectOption('textile');
  const { rooms } = await planSaved(page);
  for (const room of rooms) expect(room).toMatchObject({ heated: false, covering: 'textile' });
});

test('a thing is copied, cut, pasted, duplicated and removed by the keys of the platform', async ({ page }) => {
  await flatOpen(page);
  await choose(page, 'Obstacles', 'In the floor', 'Column c1');
  const columns = rows(page, 'In the floor').filter({ hasText: 'Column' });
  await page.keyboard.press('ControlOrMeta+c');
  await expect(card(page).getByRole('button', { name: 'Paste' })).toBeVisible();
  await page.keyboard.press('ControlOrMeta+v');
  await expect(columns).toHaveCount(2);
  await expectUndo(page, /^Undo: Paste column c2/);
  await page.keyboard.press('Delete');
  await expect(columns).toHaveCount(1);
  await columns.first().click();
  await page.keyboard.press('ControlOrMeta+x');
  await expect(columns).toHaveCount(0);
  await page.keyboard.press('ControlOrMeta+v');
  await expect(columns).toHaveCount(1);
  await card(page).getByRole('button', { name: 'Duplicate' }).click();
  await expect(columns).toHaveCount(2);
  await card(page).getByText('Turn and mirror').click();
  await put(page, 'Turn clockwise by', '45');
  await card(page).getByRole('button', { name: 'Turn', exact: true }).click();
  await expectUndo(page, /^Undo: Turn column c2 by 45 degrees/);
  await expect(card(page)).toContainText('Extent');
});

test('a key that removes or copies leaves alone what is typed in a field', async ({ page }) => {
  await flatOpen(page);
  await choose(page, 'Floor', 'Rooms', 'Bath');
  const name = card(page).getByLabel('Name', { exact: true });
  await name.press('End');
  await name.press('Backspace');
  await expect(name).toHaveValue('Bat');
  await name.press('ControlOrMeta+a');
  await expect(page.getByRole('region', { name: 'Bath' })).toBeVisible();
  await name.press('Escape');
  await expect(name).toHaveValue('Bath');
  await expect(page.getByRole('region', { name: 'Bath' })).toBeVisible();
});
