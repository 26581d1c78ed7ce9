import AxeBuilder from '@axe-core/playwright';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { boardPlaces, flatOpen, planOpen, stepOpen } from './board.ts';
import { expectUndo, flat, type PlanLike, planSaved } from './cards.ts';

/** Lists of the step of the papers: grid lines, days of the pour, points; what is typed into them and what is taken away. */
async function papersOpen(page: Page): Promise<void> {
  await flatOpen(page);
  await stepOpen(page, 'Papers');
  await expect(page.getByRole('button', { name: 'All papers, ZIP' })).toBeVisible();
}

const planBytes = (plan: PlanLike) => ({
  name: 'plan.json',
  mimeType: 'application/json',
  buffer: Buffer.from(JSON.stringify(plan)),
});

const group = (page: Page, heading: string): Locator =>
  page.locator('.group').filter({ has: page.getByRole('heading', { name: heading, exact: true }) });

const addLine = (page: Page) => page.getByRole('button', { name: 'Add a grid line' });

interface PapersSaved {
  readonly gridLines?: readonly {
    readonly name: string;
    readonly from: readonly number[];
    readonly to: readonly number[];
  }[];
}
const linesSaved = async (page: Page) => ((await planSaved(page)).papers as PapersSaved | undefined)?.gridLines;

interface PourSaved {
  readonly days?: readonly { readonly date?: string; readonly bays: readonly string[] }[];
}
const daysSaved = async (page: Page) => ((await planSaved(page)).pour as PourSaved | undefined)?.days;

test('two presses on the board place a grid line, and Escape gives up the first end and then the tool', async ({
  page,
}) => {
  await papersOpen(page);
  const place = page.getByRole('button', { name: 'Place a grid line on the board' });
  await place.click();
  const [at] = [await boardPlaces(page)];
  const press = async (x: number, y: number) => page.mouse.click(...at(x, y));
  await press(3000, 1000);
  await expect(page.getByText('Press for the other end')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByText('Press for the first end of the grid line.')).toBeVisible();
  await press(3000, 1000);
  await press(3040, 4000);
  await expectUndo(page, /Grid line A placed/);
  await page.keyboard.press('Escape');
  await expect(place).toBeFocused();
  const [line] = (await linesSaved(page)) ?? [];
  // Held to a right angle: the line runs straight up the sheet.
  expect(line?.from[0]).toBe(line?.to[0]);
  await expect(group(page, 'Set out from')).toContainText('At present from grid line A alone.');
});

test('grid lines are added by keys alone, each with the next name, open and ready to be typed in', async ({ page }) => {
  await papersOpen(page);
  const names = page.locator('.item').filter({ hasText: 'Grid line' }).getByLabel('Name', { exact: true });
  for (const [i, name] of ['A', '1', 'B', '2'].entries()) {
    await addLine(page).focus();
    await page.keyboard.press('Enter');
    await expect(names.nth(i)).toBeFocused();
    await expect(names.nth(i)).toHaveValue(name);
    await expectUndo(page, new RegExp(`Add grid line ${name}`));
  }
  await expect(group(page, 'Set out from')).toContainText('At present from grid lines 1 and A.');
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(', ')}`)).toEqual([]);
});

test('a grid line without a name is refused in words, and its ends are typed as long as they lie apart', async ({
  page,
}) => {
  await papersOpen(page);
  await addLine(page).click();
  const name = page.getByLabel('Name', { exact: true });
  await name.fill(' ');
  await name.press('Enter');
  await expect(name).toHaveAttribute('aria-invalid', 'true');
  await expect(name).toHaveAccessibleDescription('A grid line has a name: enter one, such as A or 1.');
  await name.fill('C');
  await name.press('Enter');
  await expectUndo(page, /Name grid line A/);
  const [line] = (await linesSaved(page)) ?? [];
  const down = page.getByLabel('Down, second end', { exact: true });
  await down.fill(String(line?.from[1]));
  await down.press('Enter');
  await expect(down).toHaveAccessibleDescription('The two ends would lie at one place.');
  await down.fill('3000');
  await down.press('Enter');
  expect((await linesSaved(page))?.[0]).toEqual({ ...line, to: [line?.to[0], 3000] });
});

test('what is wrong with a grid line stands beside it, and base points go before grid lines', async ({ page }) => {
  const plan = flat();
  const gridLines = [
    { name: 'A', from: [0, 0], to: [0, 8000] },
    { name: 'X', from: [0, 0], to: [8000, 1000] },
  ];
  plan.papers = { gridLines };
  await papersOpen(page);
  await planOpen(page, planBytes(plan));
  const setOut = group(page, 'Set out from');
  await expect(setOut).toContainText('Grid line X is not square to A: joints are set out from A alone.');
  plan.papers = { gridLines, basePoints: [{ at: [0, 0] }, { at: [4000, 0] }] };
  await planOpen(page, planBytes(plan));
  await expect(setOut).toContainText('At present from base points 1 and 2.');
  await expect(setOut).not.toContainText('not square');
});

test('the proposed days of the pour are taken over, then dated, and dated days are in the calendar', async ({
  page,
}) => {
  await papersOpen(page);
  const pour = group(page, 'Pour');
  await page.locator('#papers summary').filter({ hasText: 'Records' }).click();
  await expect(page.locator('#papers')).toContainText('There is a calendar once days of the pour have dates');
  await pour.getByRole('button', { name: 'Take the proposed days over' }).click();
  // the button has gone: the first day takes the keys
  await expect(pour.getByText(/^Day 1: /u)).toBeVisible();
  await expect(pour.locator('summary').first()).toBeFocused();
  await expectUndo(page, /Take the proposed days of the pour over/);
  await expect(pour.getByRole('button', { name: /proposed/ })).toHaveCount(0);
  const bays = ((await daysSaved(page)) ?? []).flatMap((day) => day.bays);
  // Every bay of the floor, each once.
  const [, count] = /(\d+) bays/.exec((await page.getByText(/^\d+ rooms, .* bays/).textContent()) ?? '') ?? [];
  expect([bays.length, new Set(bays).size]).toEqual([Number(count), Number(count)]);
  await pour
    .locator('summary')
    .filter({ hasText: /^Day 1: \d+ bays?, \d+\.\d m³$/ })
    .click();
  await pour.getByLabel('Date', { exact: true }).fill('2027-03-01');
  await page.keyboard.press('Enter');
  await expect(pour.locator('summary').filter({ hasText: 'Day 1, 2027-03-01: ' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Calendar of the work' })).toBeVisible();
  await expect(page.locator('#papers')).toContainText('The calendar has first heating once the day is entered');
});

test('bays are put into a day by keys alone, and come out of the day that they were in', async ({ page }) => {
  await papersOpen(page);
  const pour = group(page, 'Pour');
  const add = pour.getByRole('button', { name: 'Add a day' });
  for (const day of [1, 2]) {
    await add.focus();
    await page.keyboard.press('Enter');
    await expect(
      pour
        .locator('.item')
        .nth(day - 1)
        .getByLabel('Date', { exact: true }),
    ).toBeFocused();
    await expect(pour.locator('.item').nth(day - 1)).toContainText(`Entered day ${day} has no bay and is left out.`);
  }
  const ticks = (day: number) =>
    pour.getByRole('group', { name: `Bays of day ${day} of the pour` }).getByRole('checkbox');
  await ticks(1).first().focus();
  await page.keyboard.press('Space');
  await page.keyboard.press('ArrowDown');
  await expect(ticks(1).nth(1)).toBeFocused();
  await page.keyboard.press('Space');
  await page.keyboard.press('End');
  await expect(ticks(1).last()).toBeFocused();
  await expect(pour.locator('summary').filter({ hasText: /^Day 1: 2 bays/ })).toBeVisible();
  await ticks(2).first().focus();
  await page.keyboard.press('Space');
  await expectUndo(page, /B1 into day 2 of the pour/);
  await expect(pour.locator('summary').filter({ hasText: /^Day 1: 1 bay,/ })).toBeVisible();
  await expect(ticks(1).first()).not.toBeChecked();
  const earlier = pour.getByRole('button', { name: 'Earlier: day 2 of the pour' });
  await earlier.focus();
  await page.keyboard.press('Enter');
  await expect(pour.getByRole('button', { name: 'Earlier: day 1 of the pour' })).toBeFocused();
  // The day that was moved took its bay along, and stands first now.
  await expect(ticks(1).first()).toBeChecked();
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(', ')}`)).toEqual([]);
});

test('bays that are chosen on the board are put into a day at once', async ({ page }) => {
  await papersOpen(page);
  const pour = group(page, 'Pour');
  await pour.getByRole('button', { name: 'Add a day' }).click();
  await expect(pour).toContainText('Bays that are chosen on the board can be put in at once.');
  await stepOpen(page, 'Joints');
  const rows = page.getByRole('listbox', { name: 'Bays' }).getByRole('option');
  await rows.nth(1).click();
  await stepOpen(page, 'Papers');
  await pour
    .locator('summary')
    .filter({ hasText: /^Day 1/ })
    .click();
  await pour.getByRole('button', { name: 'Put in what is chosen on the board: day 1 of the pour' }).click();
  await expectUndo(page, /1 bay into day 1 of the pour/);
  expect((await daysSaved(page))?.[0]?.bays).toHaveLength(1);
});

test('what does not hold of an entered day stands beside it, and a bay that is gone is taken out', async ({ page }) => {
  const plan = flat();
  await papersOpen(page);
  await group(page, 'Pour').getByRole('button', { name: 'Take the proposed days over' }).click();
  await expectUndo(page, /Take the proposed days/);
  const bays = ((await daysSaved(page)) ?? []).flatMap((day) => day.bays);
  plan.pour = { mostM3PerDay: 0.5, days: [{ bays: [...bays, 'gone'] }, { bays: bays.slice(0, 1) }] };
  await planOpen(page, planBytes(plan));
  const items = group(page, 'Pour').locator('.item');
  await expect(items.first()).toContainText(
    'Entered day 1 names a bay known as gone, which the floor does not have any more.',
  );
  await expect(items.first()).toContainText(
    /The bays entered for this day take \d+(\.\d)? m³, the day allows 0.5 m³\./,
  );
  await expect(items.last()).toContainText('is named more than once: it is laid on the first day that names it.');
  await items.first().locator('summary').click();
  await page.getByRole('button', { name: 'Take out what the floor does not have any more: day 1 of the pour' }).click();
  await expect(items.first()).not.toContainText('any more');
  expect((await daysSaved(page))?.[0]?.bays).toEqual(bays);
});

test('what was typed and refused is there when its fold is opened again', async ({ page }) => {
  await papersOpen(page);
  const fold = page.getByText('Packs and allowances');
  await fold.click();
  const layers = page.getByLabel('Insulation layers', { exact: true });
  await layers.fill('15,15');
  await layers.press('Enter');
  await fold.click();
  await expect(layers).toBeHidden();
  await fold.click();
  await expect(layers).toHaveValue('15,15');
  await expect(layers).toHaveAccessibleDescription(/^Write layers with \+ between, as 15 \+ 15\./);
});

test('from a point that is taken away the focus goes to the next, so that Enter takes no other away', async ({
  page,
}) => {
  const plan = flat();
  plan.records = { testPoints: [1, 2, 3].map((x) => ({ name: String(x), at: [x * 1000, 1000] })) };
  await papersOpen(page);
  await planOpen(page, planBytes(plan));
  const heads = group(page, 'First heating and dryness').locator('summary');
  await heads.first().click();
  await heads.nth(1).click();
  await page.getByRole('button', { name: 'Take it away: test point 1' }).focus();
  await page.keyboard.press('Enter');
  await expect(heads).toHaveText(['Test point 2', 'Test point 3']);
  await expect(heads.first()).toBeFocused();
  // What was open stays open with its point.
  await expect(page.getByRole('button', { name: 'Take it away: test point 2' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Take it away: test point 3' })).toHaveCount(0);
  await page.keyboard.press('Enter');
  await expect(heads).toHaveCount(2);
  await heads.last().click();
  await page.getByRole('button', { name: 'Take it away: test point 3' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /^Place test point \d on the board$/ })).toBeFocused();
});

test('points keep their names when the first of them is taken away, and the next one has a number of its own', async ({
  page,
}) => {
  await papersOpen(page);
  await page.getByRole('button', { name: 'Place test point 1 on the board' }).click();
  const at = page.getByLabel('At: point, across and down');
  await at.focus();
  for (const typed of ['1000 ; 1000', '2000 ; 1000', '3000 ; 1000']) {
    await page.keyboard.type(typed);
    await page.keyboard.press('Enter');
    await expect(at).toHaveValue('');
  }
  await page.keyboard.press('Escape');
  // the one that was placed last is open, and no other
  await expect(page.getByRole('button', { name: /^Take it away: test point/ })).toHaveCount(1);
  const heads = group(page, 'First heating and dryness').locator('summary');
  await heads.first().click();
  await page.getByRole('button', { name: 'Take it away: test point 1' }).click();
  await expect(heads).toHaveText(['Test point 2', 'Test point 3']);
  await expect(page.getByRole('button', { name: 'Place test point 4 on the board' })).toBeVisible();
});
