import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { flatOpen, rows } from './board.ts';
import { card, choose, expectUndo, flat, planSaved, put } from './cards.ts';

test('a room is renamed, heated apart, covered and sized in its card', async ({ page }) => {
  await flatOpen(page);
  await choose(page, 'Floor', 'Rooms', 'Bath');
  await put(page, 'Name', 'Shower');
  await expectUndo(page, /^Undo: Rename Bath/);
  await expect(page.getByRole('region', { name: 'Shower', exact: true })).toBeVisible();
  await put(page, 'Heating zone', 'Z1');
  await expectUndo(page, /^Undo: Heating zone Z1 for Shower/);
  await card(page).getByLabel('Covering', { exact: true }).selectOption('textile');
  await put(page, 'Width, down', '2000');
  await expectUndo(page, /^Undo: Width, down of Shower 2000 mm/);
  await card(page).getByLabel('Heated').uncheck();
  await card(page).getByText('Its own temperature and insulation').click();
  await card(page)
    .getByLabel(/Highest as the plan/)
    .check();
  await put(page, 'Highest', '38');
  const room = (await planSaved(page)).rooms.find(({ id }) => id === 'r3');
  expect(room).toEqual({
    id: 'r3',
    name: 'Shower',
    // its top left corner stays at [5320, 5720]
    outline: [
      [5320, 5720],
      [9000, 5720],
      [9000, 7720],
      [5320, 7720],
    ],
    zone: 'Z1',
    covering: 'textile',
    heated: false,
    temperatures: { highestC: 38 },
  });
});

test('a room that came a moment ago has its card before the floor is worked out', async ({ page }) => {
  // Nothing more reaches the worker once it is held: as if the analysis took long.
  await page.addInitScript(() => {
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function (this: Worker, ...all: unknown[]) {
      if (!('held' in window)) Reflect.apply(post, this, all);
    };
  });
  await flatOpen(page);
  await choose(page, 'Floor', 'Rooms', 'Bedroom');
  await page.evaluate(() => Reflect.set(window, 'held', true));
  await card(page).getByRole('button', { name: 'Duplicate' }).click();
  await expectUndo(page, /^Undo: Duplicate Bedroom/);
  await put(page, 'Name', 'Guests');
  await expect(page.getByRole('region', { name: 'Guests', exact: true })).toBeVisible();
  await put(page, 'Length, across', '5 m');
  await expect(card(page).getByLabel('Length, across', { exact: true })).toHaveValue('5000');
  await expect(card(page).getByRole('row', { name: /^Floor/ })).toHaveCount(0);
});

test('a doorway is widened and slid by typing, and says which rooms it joins', async ({ page }) => {
  await flatOpen(page);
  await choose(page, 'Openings', 'Doorways', 'Bath');
  await expect(card(page)).toContainText(/Joins (Hall and Bath|Bath and Hall)/);
  await put(page, 'Width', '1000');
  await expectUndo(page, /^Undo: Width of doorway d2 1000 mm/);
  // The wall of hall and bath runs from x 5320 to 9000.
  await put(page, 'Wall on its left', '300');
  await expect(card(page).getByLabel('Wall on its right', { exact: true })).toHaveValue('2380');
  await card(page).getByLabel('Door leaf').uncheck();
  const field = card(page).getByLabel('Width', { exact: true });
  await field.fill('4000');
  await field.press('Enter');
  await expect(page.getByRole('alert')).toHaveText('The wall is too short for this width.');
  await expect(field).toHaveValue('4000');
  await field.press('Escape');
  await expect(field).toHaveValue('1000');
  await card(page).getByLabel('Usual width').selectOption({ label: '875 mm' });
  expect((await planSaved(page)).doorways?.[1]).toEqual({
    id: 'd2',
    line: [
      [5682.5, 5660],
      [6557.5, 5660],
    ],
    wallMm: 120,
    leaf: false,
  });
});

test('digits on the way to a figure leave nothing behind in the doorways of the room', async ({ page }) => {
  await flatOpen(page);
  await choose(page, 'Floor', 'Rooms', 'Bath');
  const field = card(page).getByLabel('Length, across', { exact: true });
  await field.fill('4');
  const undo = page.getByRole('button', { name: 'Undo', exact: true });
  await expect(undo).toHaveAttribute('title', /Bath/);
  await field.fill('3680');
  await field.press('Enter');
  expect((await planSaved(page)).doorways).toEqual(flat().doorways);
});

test('columns, pipes, joinery and sun are changed in their cards', async ({ page }) => {
  await flatOpen(page);
  await choose(page, 'Obstacles', 'In the floor', 'Column c1');
  await put(page, 'Width', '400');
  // it grows about its middle, x 2650
  await expect(card(page).getByLabel('Middle, across', { exact: true })).toHaveValue('2650');
  await put(page, 'Middle, down', '3000');
  await choose(page, 'Obstacles', 'In the floor', 'Pipe p1');
  await put(page, 'Diameter', '160');
  await choose(page, 'Obstacles', 'In the floor', 'Kitchen island');
  await card(page).getByLabel('Below it').selectOption('built-off-slab');
  await card(page).getByLabel('Bolted through to the slab').check();
  await put(page, 'Left side at', '6000');
  await choose(page, 'Obstacles', 'In the floor', 'Sun u1');
  await put(page, 'Highest temperature', '60');
  await put(page, 'Width, down', '1000');
  const plan = await planSaved(page);
  expect(plan.columns).toEqual([
    {
      id: 'c1',
      outline: [
        [2450, 2850],
        [2850, 2850],
        [2850, 3150],
        [2450, 3150],
      ],
    },
  ]);
  expect(plan.pipes).toEqual([{ id: 'p1', centre: [8700, 7300], diameterMm: 160 }]);
  expect((plan.joinery as unknown[])[0]).toMatchObject({
    under: 'built-off-slab',
    fixedThrough: true,
    outline: [
      [6000, 1500],
      [7800, 1500],
      [7800, 2400],
      [6000, 2400],
    ],
  });
  expect((plan.sunZones as unknown[])[0]).toMatchObject({ highestC: 60 });
});

test('a column is repeated in rows by count and spacing, as one step', async ({ page }) => {
  await flatOpen(page);
  await choose(page, 'Obstacles', 'In the floor', 'Column c1');
  await card(page).getByText('Repeat', { exact: true }).click();
  await put(page, 'In a row', '3');
  await put(page, 'Rows', '2');
  await put(page, 'Spacing in a row', '500');
  await put(page, 'Spacing of rows', '600');
  await card(page).getByRole('button', { name: 'Repeat it' }).click();
  await expect(page.getByRole('region', { name: '6 things' })).toContainText('6 columns');
  await expectUndo(page, /^Undo: Repeat column c1/);
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.getByRole('region', { name: 'Column c1' })).toBeVisible();
});

test('a found joint is kept, taken away and found again, each as one step', async ({ page }) => {
  await flatOpen(page);
  const found = rows(page, 'Joints').filter({ hasText: 'Intermediate movement joint' });
  const before = await found.count();
  expect(before).toBeGreaterThan(0);
  await found.first().click();
  await card(page).getByRole('button', { name: 'Keep this joint' }).click();
  await expectUndo(page, /^Undo: Keep joint J\d+/);
  await expect(rows(page, 'Kept and taken away')).toHaveCount(1);
  await expect(rows(page, 'Joints').filter({ hasText: 'Joint drawn by hand' })).toHaveCount(1);
  await expect(page.getByRole('region', { name: 'Drawn joint x1' })).toBeVisible();
  // Taken away, the tool does not put it back; undo brings the drawn one back.
  await card(page).getByRole('button', { name: 'Take it away' }).click();
  await expect(rows(page, 'Kept and taken away')).toHaveText(/^Joint taken away n1/);
  await page.keyboard.press('ControlOrMeta+z');
  await rows(page, 'Kept and taken away').filter({ hasText: 'Drawn joint x1' }).click();
  await card(page).getByRole('button', { name: 'Let the tool find it again' }).click();
  await expect(rows(page, 'Kept and taken away')).toHaveCount(0);
  await expect(found).toHaveCount(before);

  const joint = found.first();
  const name = (await joint.locator('.name').textContent()) ?? '';
  await joint.click();
  await expect(card(page).getByRole('button', { name: 'Take it away' })).toBeVisible();
  await page.keyboard.press('Delete');
  await expectUndo(page, new RegExp(`^Undo: Take joint ${/J\d+/.exec(name)?.[0]} away`));
  await expect(rows(page, 'Kept and taken away')).toHaveCount(1);
  await page.getByRole('button', { name: 'Find all joints again' }).click();
  await expectUndo(page, /^Undo: Find all joints again/);
  await expect(rows(page, 'Kept and taken away')).toHaveCount(0);
  await expect(found).toHaveCount(before);
});

test('a doorway joint says what dictates it and leads there', async ({ page }) => {
  await flatOpen(page);
  await rows(page, 'Joints').filter({ hasText: 'Doorway joint' }).first().click();
  await expect(card(page)).toContainText('A doorway dictates this joint');
  await expect(card(page).getByRole('button', { name: 'Keep this joint' })).toHaveCount(0);
  await card(page)
    .getByRole('button', { name: /^Go to doorway d\d/ })
    .click();
  await expect(page.getByRole('region', { name: /^Doorway d\d/ })).toBeVisible();
});

for (const [width, height, touch] of [
  [1440, 900, false],
  [820, 1180, true],
] as const) {
  for (const colorScheme of ['light', 'dark'] as const) {
    test.describe(`cards at ${width} x ${height}, ${colorScheme}`, () => {
      test.use({ viewport: { width, height }, colorScheme, hasTouch: touch });

      test('axe finds nothing, and everything can be met', async ({ page }) => {
        await flatOpen(page);
        const folds = async () => {
          for (const summary of await card(page).locator('summary').all()) await summary.click();
        };
        const check = async () => {
          await folds();
          expect((await new AxeBuilder({ page }).include('#card').analyze()).violations).toEqual([]);
          const least = touch ? 44 : 24;
          const small = await card(page)
            .locator('button, select, input:not([type=checkbox]), label:has([type=checkbox]), summary')
            .evaluateAll(
              (all, side) =>
                all
                  .map((each) => ({ words: each.textContent, box: each.getBoundingClientRect() }))
                  .filter(({ box }) => box.height < side - 0.5 || box.width < side - 0.5)
                  .map(({ words, box }) => `${words} ${box.width} x ${box.height}`),
              least,
            );
          expect(small).toEqual([]);
        };
        await choose(page, 'Floor', 'Rooms', 'Bath');
        await check();
        await choose(page, 'Openings', 'Doorways', 'Bath');
        await check();
        await choose(page, 'Obstacles', 'In the floor', 'Column c1');
        await check();
        await page.getByRole('heading', { name: 'Obstacles', exact: true }).click();
        await page.keyboard.press('ControlOrMeta+a');
        await expect(page.getByRole('region', { name: '5 things' })).toBeVisible();
        await check();
      });
    });
  }
}
