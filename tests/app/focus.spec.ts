import { expect, test } from '@playwright/test';
import { flatOpen, rows, stepOpen } from './board.ts';

test('Enter on a chosen row goes into its card, and the row has the focus again when the card goes', async ({
  page,
}) => {
  await flatOpen(page);
  const list = page.getByRole('listbox', { name: 'Joints' });
  await list.focus();
  await page.keyboard.press('ArrowDown');
  await expect(list).toBeFocused();
  await page.keyboard.press('Enter');
  const card = page.getByRole('region', { name: /^J\d+ / });
  await expect(card).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(card).toHaveCount(0);
  await expect(list).toBeFocused();
});

test('a card of what was chosen on the drawing gives the focus back to the drawing', async ({ page }) => {
  await flatOpen(page);
  const board = page.getByRole('application');
  const box = await board.boundingBox();
  if (box === null) throw new Error('the board has no size');
  await board.click({ position: { x: box.width * 0.8, y: box.height * 0.5 } });
  await page.getByRole('button', { name: 'Let go of it' }).click();
  await expect(board).toBeFocused();
});

test('a mend that takes its finding away leaves the focus in the list of findings', async ({ page }) => {
  await flatOpen(page);
  await rows(page, 'Findings').filter({ hasText: 'The edge strip takes 4 mm' }).click();
  const mend = page.getByRole('button', { name: 'Use a strip of 10 mm' });
  await mend.focus();
  await page.keyboard.press('Enter');
  await expect(mend).toHaveCount(0);
  await expect(page.getByRole('listbox', { name: 'Findings' })).toBeFocused();
});

test('folding the tray gives the focus to the step that opens it again', async ({ page }) => {
  await flatOpen(page);
  await stepOpen(page, 'Obstacles');
  await page.getByRole('button', { name: 'Fold away' }).click();
  await expect(page.getByRole('navigation').getByRole('button', { name: 'Obstacles' })).toBeFocused();
});

test('the ring of a field goes round its unit too', async ({ page }) => {
  await flatOpen(page);
  const field = page.getByLabel('Width', { exact: true }).first();
  await field.focus();
  const rings = await field.evaluate((input) =>
    [input, input.closest('.entry')].map((element) => element && getComputedStyle(element).outlineStyle),
  );
  expect(rings).toEqual(['none', 'solid']);
});

test.describe('at 200 % zoom', () => {
  test.use({ viewport: { width: 720, height: 450 } });

  test('the verdict brings the findings into view, and the card has room to be read', async ({ page }) => {
    await flatOpen(page);
    await expect(page.getByText('Screed bays', { exact: true })).toBeVisible();
    await page.getByTitle('Show the findings').click();
    await expect(rows(page, 'Findings').first()).toBeInViewport();
    await rows(page, 'Findings').first().click();
    const card = page.getByRole('region', { name: 'Finding 1' });
    await expect.poll(async () => (await card.boundingBox())?.height).toBeGreaterThanOrEqual(150);
  });
});

for (const step of ['Floor', 'Obstacles', 'Coverings', 'Papers'])
  test(`where undo brings another floor onto the board the focus within the step ${step} stays in the page`, async ({
    page,
  }) => {
    await flatOpen(page);
    await stepOpen(page, step);
    await page
      .locator('.tray .part')
      .getByRole('combobox')
      .or(page.locator('.tray .part .entry input'))
      .first()
      .focus();
    await page.keyboard.press('Control+z');
    await expect(page.getByLabel('Name of the plan')).not.toHaveValue('Flat over the workshop');
    await expect(page.getByRole('navigation').getByRole('button', { name: step })).toBeFocused();
  });
