import { expect, type Page, test } from '@playwright/test';
import { boardPlaces, dwellingOpen, stepOpen } from './board.ts';

/** Two base points in the rooms of the dwelling, and a line of the grid along its left wall. */
const more = {
  papers: {
    basePoints: [
      { name: '1', at: [3000, 5000] },
      { name: '2', at: [9000, 7000] },
    ],
    gridLines: [{ name: 'A', from: [500, -600], to: [500, 12_000] }],
  },
};

const undo = (page: Page) => page.getByRole('button', { name: 'Undo', exact: true });
/** The fold of a point or a line in the panel, open or not. */
const fold = (page: Page, name: string) =>
  page.locator('.tray details').filter({ has: page.locator('summary', { hasText: name }) });
/** What is entered for where it is, mm. */
const placeOf = async (page: Page, name: string, nth = 0) => [
  await fold(page, name).getByLabel('Across', { exact: false }).nth(nth).inputValue(),
  await fold(page, name).getByLabel('Down', { exact: false }).nth(nth).inputValue(),
];

async function mouseDrag(page: Page, from: readonly [number, number], to: readonly [number, number]) {
  await page.mouse.move(...from);
  await page.mouse.down();
  await page.mouse.move((from[0] + to[0]) / 2, (from[1] + to[1]) / 2);
  await page.mouse.move(...to);
  await page.mouse.up();
}

test('a press on a base point opens its figures in the panel, a drag moves it in one step, and undo puts it back', async ({
  page,
}) => {
  await dwellingOpen(page, more);
  const place = await boardPlaces(page);
  await page.mouse.click(...place(3000, 5000));
  await expect(fold(page, 'Base point 1')).toHaveAttribute('open');
  await expect(fold(page, 'Base point 1').getByLabel('Across')).toBeInViewport();
  // no card of the bay on which it stands
  await expect(page.locator('.card')).toHaveCount(0);

  // caught in line with the cooking island, which ends at 3900
  await mouseDrag(page, place(3000, 5000), place(3950, 4000));
  await expect(undo(page)).toHaveAttribute('title', /Base point 1 moved/);
  await expect.poll(() => placeOf(page, 'Base point 1')).toEqual(['3900', '4000']);
  await undo(page).click();
  await expect.poll(() => placeOf(page, 'Base point 1')).toEqual(['3000', '5000']);

  // nothing is left of a drag that is given up
  const [x, y] = place(9000, 7000);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 60, y + 30);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(undo(page)).not.toHaveAttribute('title', /Base point 2/);
});

test('keys move the chosen point, Enter goes into its figures, and Delete takes it away', async ({ page }) => {
  await dwellingOpen(page, more);
  const place = await boardPlaces(page);
  await page.mouse.click(...place(9000, 7000));
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowDown');
  await expect.poll(() => placeOf(page, 'Base point 2')).toEqual(['9010', '7100']);
  await expect(page.getByRole('status', { name: 'Place of the hand' })).toHaveText('x 9010, y 7100 mm');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  await expect(fold(page, 'Base point 2').locator('summary')).toBeFocused();

  await page.getByRole('application').focus();
  await page.keyboard.press('Delete');
  await expect(page.getByText('Taken away: base point 2.')).toBeVisible();
  await expect(fold(page, 'Base point 2')).toHaveCount(0);
  await undo(page).click();
  await expect(fold(page, 'Base point 2')).toHaveCount(1);
});

test('with the tool for points a drag from a mark moves that point and places no other', async ({ page }) => {
  await dwellingOpen(page, more);
  const place = await boardPlaces(page);
  await page.getByRole('button', { name: 'Point', exact: true }).click();
  await mouseDrag(page, place(9000, 7000), place(10_000, 8000));
  await expect(undo(page)).toHaveAttribute('title', /Base point 2 moved/);
  await expect(fold(page, 'Base point')).toHaveCount(2);
  await mouseDrag(page, place(12_000, 9000), place(12_500, 9000));
  await expect(fold(page, 'Base point')).toHaveCount(3);
  // a press on a mark chooses the point in place of setting another over it
  await page.mouse.click(...place(10_000, 8000));
  await expect(fold(page, 'Base point 2')).toHaveAttribute('open');
  await expect(fold(page, 'Base point')).toHaveCount(3);
  await page.keyboard.press('Delete');
  await expect(page.getByText('Taken away: base point 2.')).toBeVisible();
  await expect(fold(page, 'Base point')).toHaveCount(2);
});

test('a grid line is chosen by a press, moved by its middle and led by its end', async ({ page }) => {
  await dwellingOpen(page, more);
  const place = await boardPlaces(page);
  await page.mouse.click(...place(500, 9000));
  await expect(fold(page, 'Grid line A')).toHaveAttribute('open');
  await mouseDrag(page, place(500, 9000), place(1500, 9400));
  await expect(undo(page)).toHaveAttribute('title', /Grid line A moved/);
  await expect.poll(() => placeOf(page, 'Grid line A')).toEqual(['1500', '-600']);
  await mouseDrag(page, place(1500, -600), place(1500, -400));
  await expect.poll(() => placeOf(page, 'Grid line A')).toEqual(['1500', '-400']);
  await expect.poll(() => placeOf(page, 'Grid line A', 1)).toEqual(['1500', '12000']);
});

test('in another step points are neither chosen nor moved', async ({ page }) => {
  await dwellingOpen(page, more);
  const place = await boardPlaces(page);
  await page.mouse.click(...place(3000, 5000));
  await stepOpen(page, 'Joints');
  await page.getByRole('application').focus();
  await page.keyboard.press('Delete');
  await page.mouse.click(...place(3000, 5000));
  await expect(page.locator('.card')).toBeVisible();
  await stepOpen(page, 'Papers');
  await expect(fold(page, 'Base point')).toHaveCount(2);
});

test.describe('with a finger', () => {
  test.use({ viewport: { width: 820, height: 1180 }, hasTouch: true });

  test('a finger moves a point', async ({ page }) => {
    await dwellingOpen(page, more);
    await page.getByRole('button', { name: 'Fold away' }).click();
    await expect(page.locator('.tray')).toHaveCount(0);
    const place = await boardPlaces(page);
    const session = await page.context().newCDPSession(page);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...points: (readonly [number, number])[]) =>
      session.send('Input.dispatchTouchEvent', { type, touchPoints: points.map(([x, y], id) => ({ x, y, id })) });
    const [from, to] = [place(3000, 5000), place(6000, 9000)];
    await send('touchStart', from);
    await send('touchMove', [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]);
    await send('touchMove', to);
    await send('touchEnd');
    await expect(undo(page)).toHaveAttribute('title', /Base point 1 moved/);
    // a tap on the other chooses that: its figures are open where the panel is opened
    await send('touchStart', place(9000, 7000));
    await send('touchEnd');
    await stepOpen(page, 'Papers');
    await expect(fold(page, 'Base point 2')).toHaveAttribute('open');
    await expect(fold(page, 'Base point 1')).not.toHaveAttribute('open');
  });
});
