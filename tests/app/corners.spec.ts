import { expect, test } from '@playwright/test';
import { flatOpen, stepOpen } from './board.ts';
import { card, choose, expectUndo, flat, type PlanLike, type Point, planLay, planSaved } from './cards.ts';

test('corners are typed, added and removed by the keyboard alone, and one that cannot be is refused', async ({
  page,
}) => {
  await flatOpen(page);
  await stepOpen(page, 'Floor');
  await page.getByRole('listbox', { name: 'Rooms' }).focus();
  await page.keyboard.press('Home');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('region', { name: 'Living room' })).toBeFocused();
  const focused = (name: string) => page.evaluate((wanted) => document.activeElement?.textContent === wanted, name);
  for (let presses = 0; presses < 20 && !(await focused('Corners, 6')); presses++) await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  const x = (corner: number) => card(page).getByLabel(`Corner ${corner} across, mm`);
  const y = (corner: number) => card(page).getByLabel(`Corner ${corner} down, mm`);
  await page.keyboard.press('Tab');
  await expect(x(1)).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.press('ArrowUp');
  await expect(y(1)).toHaveValue('10');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  // in the middle of the side from [0, 10] to [9000, 0]
  await expect(x(2)).toBeFocused();
  await expect(x(2)).toHaveValue('4500');
  await expect(card(page).getByText('Corners, 7')).toBeVisible();
  await card(page).getByRole('button', { name: 'Remove corner 2' }).press('Enter');
  await expect(card(page).getByText('Corners, 6')).toBeVisible();
  await expect(card(page).getByRole('button', { name: 'Remove corner 2' })).toBeFocused();
  await expectUndo(page, /^Undo: Remove a corner of Living room/);
  // Corner 3 at [9000, 4200] cannot go to the left of the room: its sides would cross.
  await x(3).fill('-500');
  await x(3).press('Enter');
  await expect(page.getByRole('alert')).toHaveText('The outline would cross itself.');
  await x(3).press('Escape');
  await expect(x(3)).toHaveValue('9000');
});

test('a column keeps its third corner', async ({ page }) => {
  await flatOpen(page);
  await choose(page, 'Obstacles', 'In the floor', 'Column c1');
  await card(page).getByText('Corners, 4').click();
  await card(page).getByRole('button', { name: 'Remove corner 4' }).click();
  await card(page).getByRole('button', { name: 'Remove corner 3' }).click();
  await expect(page.getByRole('alert')).toHaveText('An outline needs three corners.');
});

test('a room of 400 corners opens its table at once and reaches the last of them', async ({ page }) => {
  const turn = (i: number): Point => [
    Math.round(4000 + 3900 * Math.cos((i * Math.PI) / 200)),
    Math.round(4000 + 3900 * Math.sin((i * Math.PI) / 200)),
  ];
  const plan = { ...flat(), name: 'Round', rooms: [{ id: 'r1', name: 'Round', outline: [] as Point[] }] };
  plan.rooms = [{ id: 'r1', name: 'Round', outline: Array.from({ length: 400 }, (_, i) => turn(i)) }];
  for (const list of ['doorways', 'columns', 'pipes', 'joinery', 'sunZones']) delete (plan as PlanLike)[list];
  await planLay(page, plan);
  await choose(page, 'Floor', 'Rooms', 'Round');
  await card(page).getByText('Corners, 400').click();
  await expect(card(page).getByLabel('Corner 1 across, mm')).toHaveValue('7900');
  expect(await card(page).locator('input').count()).toBeLessThan(250);
  const last = card(page).getByLabel('Corner 400 down, mm');
  await expect(async () => {
    await card(page).evaluate((element) => element.scrollTo(0, element.scrollHeight));
    await expect(last).toBeVisible({ timeout: 500 });
  }).toPass();
  await last.press('ArrowDown');
  await expectUndo(page, /^Undo: Corner 400 down of Round/);
});

test('a room with a hole has a table of corners for each', async ({ page }) => {
  const plan = flat();
  plan.name = 'With a shaft';
  Object.assign(plan.rooms[3] as object, {
    holes: [
      [
        [10000, 2000],
        [11000, 2000],
        [11000, 3000],
        [10000, 3000],
      ],
    ],
  });
  await planLay(page, plan);
  await choose(page, 'Floor', 'Rooms', 'Bedroom');
  await card(page).getByText('Corners of hole 1, 4').click();
  await card(page).getByLabel('Hole 1, corner 3 across, mm').fill('11,5 m');
  await card(page).getByLabel('Hole 1, corner 3 across, mm').press('Enter');
  await expectUndo(page, /^Undo: Hole 1, corner 3 across of Bedroom 11500 mm/);
  expect((await planSaved(page)).rooms[3]).toMatchObject({
    holes: [
      [
        [10000, 2000],
        [11000, 2000],
        [11500, 3000],
        [10000, 3000],
      ],
    ],
  });
});
