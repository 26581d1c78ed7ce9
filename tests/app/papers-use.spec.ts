import AxeBuilder from '@axe-core/playwright';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { flatFile, flatOpen, planOpen, stepOpen } from './board.ts';
import { expectUndo, flat, type PlanLike, planSaved } from './cards.ts';

/** The step of the papers in use: by keys alone, with what is typed wrong, and with what is said of it. */
async function papersOpen(page: Page): Promise<void> {
  await flatOpen(page);
  await stepOpen(page, 'Papers');
  await expect(page.getByRole('button', { name: 'All papers, ZIP' })).toBeVisible();
}

/** What is said beside a field, as a screen reader says it with the field. */
async function expectRefused(field: Locator, words: string | RegExp): Promise<void> {
  await expect(field).toHaveAttribute('aria-invalid', 'true');
  await expect(field).toHaveAccessibleDescription(words);
}

async function expectTaken(field: Locator): Promise<void> {
  await expect(field).toHaveAttribute('aria-invalid', 'false');
}

async function comparedWith(page: Page, file: string | { name: string; mimeType: string; buffer: Buffer }) {
  const asked = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: /^Open an(other| earlier version)$/ }).click();
  await (await asked).setFiles(file);
}

const planBytes = (plan: PlanLike) => ({
  name: 'before.json',
  mimeType: 'application/json',
  buffer: Buffer.from(JSON.stringify(plan)),
});

test('points are placed by keys alone, and Escape leads back to the button that began it', async ({ page }) => {
  await papersOpen(page);
  const place = page.getByRole('button', { name: /^Place base point \d on the board$/ });
  await place.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('application')).toBeFocused();
  // The first key brings the hand onto the board, the second places the point.
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await expectUndo(page, /Base point 1 placed/);
  await page.keyboard.press('Escape');
  await expect(place).toBeFocused();
  await expect(place).toHaveText('Place base point 2 on the board');
});

test('points are typed one after the other, and Escape leads back to the button that began it', async ({ page }) => {
  await papersOpen(page);
  const place = page.getByRole('button', { name: /^Place test point \d on the board$/ });
  await place.focus();
  await page.keyboard.press('Enter');
  const at = page.getByLabel('At: point, across and down');
  await at.focus();
  for (const typed of ['1000 ; 1000', '2000 ; 1000']) {
    await page.keyboard.type(typed);
    await page.keyboard.press('Enter');
    await expect(at).toBeFocused();
    await expect(at).toHaveValue('');
  }
  await expectUndo(page, /Test point 2 placed/);
  await page.keyboard.type('here');
  await page.keyboard.press('Enter');
  await expectRefused(at, 'Enter two lengths, such as 1500 ; 2000 mm.');
  await expect(at).toHaveValue('here');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  await expect(place).toBeFocused();
});

test('where the papers of another floor are worked out the focus stays in the page', async ({ page }) => {
  await papersOpen(page);
  await page.getByLabel('Designer', { exact: true }).focus();
  await page.keyboard.press('Control+z');
  await expect(page.getByLabel('Name of the plan')).not.toHaveValue('Flat over the workshop');
  await expect(page.getByRole('navigation').getByRole('button', { name: 'Papers' })).toBeFocused();
});

test('layers of insulation that do not make up its thickness say so beside the field', async ({ page }) => {
  await papersOpen(page);
  await page.getByText('Packs and allowances').click();
  const field = page.getByLabel('Insulation layers', { exact: true });
  await expect(field).toHaveAccessibleDescription('In mm from the slab up, with + between.');
  // The insulation of the fixture is 30 mm.
  await field.fill('20 + 20');
  await field.press('Enter');
  await expect(field).toHaveAccessibleDescription(
    '20 + 20 is 40 mm; the insulation is 30 mm. Until the layers add up to 30 mm, the take-off counts one layer.',
  );
  const insulation = page.locator('#take-off').getByRole('button', { name: 'Insulation', exact: true });
  await expect(insulation).toHaveCount(1);
  await field.fill('20 10');
  await field.press('Enter');
  await expect(field).toHaveValue('20 + 10');
  await expect(field).toHaveAccessibleDescription('In mm from the slab up, with + between.');
  await expect(insulation).toHaveCount(2);
});

test('layers that can be read two ways are asked back, and what was typed stays', async ({ page }) => {
  await papersOpen(page);
  await page.getByText('Packs and allowances').click();
  const field = page.getByLabel('Insulation layers', { exact: true });
  await field.fill('15,15');
  await field.press('Tab');
  await expectRefused(field, /^Write layers with \+ between, as 15 \+ 15\./);
  await expect(field).toHaveValue('15,15');
  await field.press('Escape');
  await expectTaken(field);
  await expect(field).toHaveValue('');
  expect((await planSaved(page)).order).toBeUndefined();
});

test('a currency that is too long is refused beside its field and stays to be mended', async ({ page }) => {
  await papersOpen(page);
  await page.getByText('Prices', { exact: true }).click();
  const field = page.getByLabel('Currency', { exact: true });
  await field.fill('Euro a piece');
  await field.press('Enter');
  await expectRefused(field, 'Enter at most 8 characters, such as EUR.');
  await expect(field).toHaveValue('Euro a piece');
  await field.fill('EUR');
  await field.press('Enter');
  await expectTaken(field);
  await expectUndo(page, /Currency/);
});

test('what was refused stays while another field is changed, and axe finds nothing meanwhile', async ({ page }) => {
  await papersOpen(page);
  await comparedWith(page, flatFile);
  const day = page.getByLabel('Day of the sheets', { exact: true });
  await day.focus();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Enter');
  await page.getByText('Packs and allowances').click();
  const layers = page.getByLabel('Insulation layers', { exact: true });
  await layers.fill('15,15');
  await layers.press('Enter');
  await page.getByRole('button', { name: 'Add a revision' }).click();
  await page.getByLabel('Status', { exact: true }).selectOption('For construction');
  await expect(page.getByLabel('Status', { exact: true })).toHaveAccessibleDescription(/faults open/);
  await expectRefused(day, /^There is no such day/);
  expect(await isNoDay(day)).toBe(true);
  await expectRefused(layers, /^Write layers/);
  await expect(layers).toHaveValue('15,15');
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(', ')}`)).toEqual([]);
});

test('the bounds of a figure are told in groups of three digits', async ({ page }) => {
  await papersOpen(page);
  await page.getByText('Prices', { exact: true }).click();
  const field = page.getByLabel('A tile', { exact: true });
  await field.fill('2000000000');
  await field.press('Enter');
  await expectRefused(field, 'Enter a number from 0 to 1\u00a0000\u00a0000\u00a0000.');
});

/** Whether the browser shows parts of a day that make none. */
const isNoDay = (field: Locator) => field.evaluate((input: HTMLInputElement) => input.validity.badInput);

/** Takes the month on by one, be it the first or the second part of a day where the browser runs. */
async function monthUp(page: Page, field: Locator): Promise<void> {
  await field.focus();
  await page.keyboard.press('ArrowUp');
  if (await isNoDay(field)) return;
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowUp');
}

test('a day that there is not is refused beside its field and nothing of it is lost', async ({ page }) => {
  await papersOpen(page);
  const field = page.getByLabel('Day of the sheets', { exact: true });
  await field.fill('2027-01-31');
  await page.keyboard.press('Enter');
  await monthUp(page, field);
  expect(await isNoDay(field)).toBe(true);
  await page.keyboard.press('Enter');
  await expectRefused(field, 'There is no such day, or a part of it is missing: enter day, month and year.');
  expect(await isNoDay(field)).toBe(true);
  expect((await planSaved(page)).papers).toEqual({ date: '2027-01-31' });
  await field.focus();
  await page.keyboard.press('Escape');
  await expectTaken(field);
  await expect(field).toHaveValue('2027-01-31');
});

test('a day that is half typed is refused when the field is left, and Escape gives it up', async ({ page }) => {
  await papersOpen(page);
  const field = page.getByLabel('Last bay laid on', { exact: true });
  await field.focus();
  await page.keyboard.press('ArrowUp');
  await page.getByLabel('Designer', { exact: true }).focus();
  await expectRefused(field, /^There is no such day, or a part of it is missing/);
  await field.focus();
  await field.press('Escape');
  await expectTaken(field);
  expect(await isNoDay(field)).toBe(false);
  expect((await planSaved(page)).records).toBeUndefined();
});

test('a day far from any building site is refused, and the day before it stays in the plan', async ({ page }) => {
  await papersOpen(page);
  const field = page.getByLabel('Day of the sheets', { exact: true });
  await field.fill('2027-03-01');
  await field.press('Enter');
  await field.fill('0026-03-01');
  await field.press('Enter');
  await expectRefused(field, 'Enter a day of the years 1900 to 9000.');
  await expect(field).toHaveValue('0026-03-01');
  expect((await planSaved(page)).papers).toEqual({ date: '2027-03-01' });
  await page.getByRole('button', { name: 'Undo' }).click();
  await expectTaken(field);
  await expect(field).toHaveValue('');
});

test('no two headings, buttons or folds of the papers are heard alike', async ({ page }) => {
  const plan = flat();
  plan.papers = {
    basePoints: [{ at: [0, 0] }, { at: [4000, 0] }],
    revisions: [{ mark: 'A' }, { mark: 'B', text: 'Doorway moved' }],
  };
  plan.records = { testPoints: [{ at: [1000, 1000] }] };
  plan.pour = { access: [0, 1000] };
  await papersOpen(page);
  await planOpen(page, planBytes(plan));
  await expect(page.getByText('Revision B: Doorway moved')).toBeVisible();
  const folded = page.locator('.tray .part details:not([open]) > summary');
  while ((await folded.count()) > 0) await folded.first().click();
  const heard = await page.locator('.tray .part').ariaSnapshot();
  for (const role of ['heading', 'button', 'group']) {
    const names = [...heard.matchAll(new RegExp(`- ${role} "([^"]*)"`, 'gu'))].map(([, name]) => name);
    expect(names.length, role).toBeGreaterThan(5);
    expect(names, role).toEqual([...new Set(names)]);
  }
  expect(heard).not.toMatch(/- (?:button|group)(?: \[[^\]]*\])*:?$/mu);
});

test('a revision that is added comes open with the next mark, ready to be typed in', async ({ page }) => {
  await papersOpen(page);
  const add = page.getByRole('button', { name: 'Add a revision' });
  await add.focus();
  await page.keyboard.press('Enter');
  const marks = page.getByLabel('Mark', { exact: true });
  await expect(marks).toBeFocused();
  await expect(marks).toHaveValue('A');
  await marks.fill('P04');
  await marks.press('Enter');
  await add.focus();
  await page.keyboard.press('Enter');
  await expect(marks.nth(1)).toBeFocused();
  await expect(marks.nth(1)).toHaveValue('P05');
  await marks.nth(1).fill(' ');
  await marks.nth(1).press('Enter');
  await expectRefused(marks.nth(1), 'A revision has a mark: enter one, such as A.');
  await page.getByRole('button', { name: 'Take it out: Revision P05' }).click();
  await expect(marks).toHaveCount(1);
  await expect(marks).toHaveValue('P04');
});

test('a picture or a text is not compared, which is said in plain words until a plan is', async ({ page }) => {
  await papersOpen(page);
  const notice = page.getByRole('status').filter({ hasText: 'compared' });
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  for (const [name, buffer] of [
    ['photo.png', signature],
    ['letter.txt', Buffer.from('Dear all,')],
    ['other.json', Buffer.from('{"name": "package"}')],
  ] as const) {
    await comparedWith(page, { name, mimeType: 'application/octet-stream', buffer });
    await expect(notice).toContainText(`${name} was not compared.`);
    await expect(notice).toContainText(
      'This file holds no floor plan. Choose a plan file, or a PDF, SVG or ZIP made by this planner.',
    );
    expect(await notice.textContent()).not.toMatch(/JSON|line \d|column|format/);
  }
  await comparedWith(page, flatFile);
  await expect(page.getByText('The plan is compared with flat.json.')).toBeVisible();
  await expect(page.getByText('was not compared.')).toHaveCount(0);
});

test('a refusal goes when the next paper is made', async ({ page }) => {
  await papersOpen(page);
  await comparedWith(page, { name: 'letter.txt', mimeType: 'text/plain', buffer: Buffer.from('Dear all,') });
  await expect(page.getByText('letter.txt was not compared.')).toBeVisible();
  const made = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Joint plan, SVG' }).click();
  await made;
  await expect(page.getByText('letter.txt was not compared.')).toHaveCount(0);
});

test('for construction may be chosen while faults are open, and how many is said beside it', async ({ page }) => {
  await papersOpen(page);
  const field = page.getByLabel('Status', { exact: true });
  await expect(field).not.toHaveAccessibleDescription(/fault/);
  await field.selectOption('For construction');
  const faults = page.getByRole('listbox', { name: 'Findings' }).getByRole('option').filter({ hasText: 'fault' });
  await expect(field).toHaveAccessibleDescription(/^\d+ faults open: not for construction\./);
  const [, count] =
    /^(\d+) faults/.exec((await page.locator('.field:has(select) .field-note').first().textContent()) ?? '') ?? [];
  expect(Number(count)).toBe(await faults.count());
});

test('the comparison tells settings, quantities and orders that changed, and when it is another floor', async ({
  page,
}) => {
  await papersOpen(page);
  const before = flat();
  before.screed = { ...(before.screed as object), thicknessMm: 80 };
  await comparedWith(page, planBytes(before));
  const compare = page.locator('#compare');
  await expect(compare.locator('.changed > div').filter({ hasText: 'Settings' })).toContainText('1 changed');
  await expect(compare.getByRole('list', { name: 'Settings that changed' })).toContainText(
    'Thickness of the screed 65 mm, was 80 mm',
  );
  // Screed by volume and by weight; floor, joints and strip are as they were.
  await expect(compare.getByRole('list', { name: 'Quantities that changed' }).getByRole('listitem')).toHaveCount(2);
  await expect(compare.getByRole('list', { name: 'Order that changed' }).getByRole('listitem')).toContainText([
    /mm high/,
    /65 mm, was .*80 mm/,
  ]);
  await expect(compare.getByRole('alert')).toHaveCount(0);
  const bare = (place: (x: number, y: number) => [number, number]) => {
    const plan = flat();
    plan.rooms = plan.rooms.map((room) => ({ ...room, outline: room.outline.map(([x, y]) => place(x, y)) }));
    for (const list of ['doorways', 'columns', 'pipes', 'joinery', 'sunZones']) plan[list] = [];
    return planBytes(plan);
  };
  await comparedWith(
    page,
    bare((x, y) => [x + 50_000, y + 30_000]),
  );
  await expect(compare.getByRole('note')).toContainText(
    '50\u00a0000 mm to the left and 30\u00a0000 mm up on its sheet',
  );
  await expect(compare.getByRole('alert')).toHaveCount(0);
  // turned, so that no room keeps its shape and no wall its place
  await comparedWith(
    page,
    bare((x, y) => [y + 50_000, x + 30_000]),
  );
  await expect(compare.getByRole('alert')).toContainText('These seem to be two different floors');
});
