import { readFileSync } from 'node:fs';
import AxeBuilder from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';
import { flatFile, flatOpen, planOpen, rows, stepOpen } from './board.ts';

type Point = [number, number];
interface PlanLike {
  name: string;
  rooms: { id: string; name?: string; outline: Point[] }[];
  doorways?: unknown[];
  [list: string]: unknown;
}

const flat = () => JSON.parse(readFileSync(flatFile, 'utf8')) as PlanLike;

/** Lays a plan on the board. */
async function planLay(page: Page, plan: PlanLike): Promise<void> {
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  await page.goto('./');
  await planOpen(page, { name: 'p.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(plan)) });
  await expect(page.getByLabel('Name of the plan')).toHaveValue(plan.name);
  await expect(page.getByText(/^\d+ rooms?, .* bays?, \d+ joints?\./)).toBeVisible();
}

/** The plan on the board, as it would be saved. */
async function planSaved(page: Page): Promise<PlanLike> {
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save' }).click();
  return JSON.parse(readFileSync(await (await saved).path(), 'utf8')) as PlanLike;
}

async function choose(page: Page, step: string, list: string, name: string): Promise<void> {
  await stepOpen(page, step);
  await rows(page, list).filter({ hasText: name }).first().click();
}

const card = (page: Page) => page.locator('#card');

async function put(page: Page, label: string, value: string): Promise<void> {
  const field = card(page).getByLabel(label, { exact: true });
  await field.fill(value);
  await field.press('Enter');
}

const expectUndo = (page: Page, name: string | RegExp) =>
  expect(page.getByRole('button', { name: 'Undo' })).toHaveAttribute('title', name);

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
