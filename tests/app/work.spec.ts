import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import {
  bathClosingMm,
  figurePut,
  flatFile,
  flatOpen,
  litPixels,
  paperButton,
  planOpen,
  rows,
  stepOpen,
} from './board.ts';

test('opens on a finished demo with its bays and findings listed, and fetches nothing from elsewhere', async ({
  page,
}) => {
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => {
    if (!/^(http:\/\/127\.0\.0\.1:|data:|blob:)/.test(request.url())) complaints.push(request.url());
  });
  await page.goto('./');
  await expect(page.getByText(/^Demo floor: \d+ rooms, .* \d+ bays, \d+ joints\.$/)).toBeVisible();
  await expect(rows(page, 'Bays').first()).toContainText('m²');
  await expect(rows(page, 'Findings').first()).toBeVisible();
  await expect(page.getByRole('button', { name: 'Empty sheet' })).toBeVisible();
  expect(complaints).toEqual([]);
});

test('every demo can be laid on the board', async ({ page }) => {
  test.setTimeout(90_000);
  await page.goto('./');
  const names = await page.getByRole('button', { name: 'Plans', exact: true }).evaluate((button) => {
    const list = document.getElementById(button.getAttribute('popovertarget') ?? '');
    return [...(list?.querySelectorAll('button') ?? [])].map((each) => each.textContent);
  });
  expect(names.length).toBeGreaterThan(0);
  for (const name of names) {
    await page.getByRole('button', { name: 'Plans', exact: true }).click();
    await page.getByRole('list', { name: 'Demo floors' }).getByRole('button', { name }).click();
    // The largest floor may take a while on a busy machine.
    await expect(page.getByText(/^Demo floor: .* [1-9]\d* bays?, /)).toBeVisible({ timeout: 25_000 });
  }
});

test('choosing a joint in the list lights it on the drawing and shows its figures beside it', async ({ page }) => {
  await flatOpen(page);
  const joint = rows(page, 'Joints').filter({ hasText: 'Intermediate movement joint' }).first();
  await expect(joint).toBeVisible();
  expect(await litPixels(page)).toBe(0);
  await joint.click();
  await expect(joint).toHaveAttribute('aria-selected', 'true');
  const card = page.getByRole('region', { name: /^J\d+ Living room/ });
  await expect(card.getByRole('row', { name: /^Closes .* mm/ }).first()).toBeVisible();
  await card.getByText('How the movement is found').click();
  await expect(card.getByText('Physics textbooks')).toBeVisible();
  expect(await litPixels(page)).toBeGreaterThan(0);
});

test('what is chosen on the drawing is chosen in the list, and lets go by Escape', async ({ page }) => {
  await flatOpen(page);
  const board = page.getByRole('application');
  const box = await board.boundingBox();
  if (box === null) throw new Error('the board has no size');
  await expect(rows(page, 'Bays').first()).toBeVisible();
  // The middle of the bedroom, at the right of the drawing, which fills the board's width.
  await board.click({ position: { x: box.width * 0.8, y: box.height * 0.5 } });
  const bedroom = rows(page, 'Bays').filter({ hasText: 'Bedroom' }).and(page.locator('[aria-selected="true"]'));
  await expect(bedroom).toHaveCount(1);
  await page.keyboard.press('Escape');
  await expect(bedroom).toHaveCount(0);
});

test('twice the warming is twice the movement', async ({ page }) => {
  await flatOpen(page);
  await expect(rows(page, 'Joints').first()).toBeVisible();
  const before = await bathClosingMm(page);
  expect(before).toBeGreaterThan(0);
  await stepOpen(page, 'Floor');
  // Laid at 15 C: from 45 to 75 C the warming goes from 30 to 60 K.
  await figurePut(page, 'Highest', '75');
  await expect.poll(async () => Math.abs((await bathClosingMm(page)) - 2 * before)).toBeLessThanOrEqual(0.11);
});

test('another screed class moves differently: 8 against 12 per million and K', async ({ page }) => {
  await flatOpen(page);
  await stepOpen(page, 'Floor');
  await figurePut(page, 'Highest', '95');
  await expect.poll(() => bathClosingMm(page)).toBeGreaterThan(1);
  const before = await bathClosingMm(page);
  await stepOpen(page, 'Floor');
  await page.getByLabel('Class', { exact: true }).selectOption('CA-C25-F4');
  await expect.poll(async () => Math.abs((await bathClosingMm(page)) - (before * 8) / 12)).toBeLessThanOrEqual(0.11);
});

test('a finding offers its mend, and the mend takes the finding away', async ({ page }) => {
  await flatOpen(page);
  const finding = rows(page, 'Findings').filter({ hasText: 'The edge strip takes 4 mm' });
  await finding.click();
  await page.getByRole('button', { name: 'Use a strip of 10 mm' }).click();
  await expect(finding).toHaveCount(0);
  await page.keyboard.press('ControlOrMeta+z');
  await expect(finding).toHaveCount(1);
});

test('a plan that was opened is saved as the same plan', async ({ page }) => {
  await flatOpen(page);
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save' }).click();
  const download = await saved;
  expect(download.suggestedFilename()).toBe('flat-over-the-workshop.json');
  expect(JSON.parse(readFileSync(await download.path(), 'utf8'))).toEqual(JSON.parse(readFileSync(flatFile, 'utf8')));
});

test('a bad file says what is wrong and where, and the sheet on the board stays', async ({ page }) => {
  await flatOpen(page);
  const plan = JSON.parse(readFileSync(flatFile, 'utf8'));
  plan.rooms[2].outline[1] = [1, 'x'];
  const buffer = Buffer.from(JSON.stringify(plan));
  await planOpen(page, { name: 'bad.json', mimeType: 'application/json', buffer });
  const note = page.getByRole('status').filter({ hasText: 'bad.json was not opened' });
  await expect(note).toContainText('rooms[2].outline[1]');
  await expect(page.getByLabel('Name of the plan')).toHaveValue('Flat over the workshop');
  await planOpen(page, { name: 'cut.json', mimeType: 'application/json', buffer: buffer.subarray(0, 300) });
  await expect(page.getByRole('status').filter({ hasText: 'cut.json was not opened' })).toContainText('not JSON');
});

test('undo and redo go through every change, sheets included, and say what they did', async ({ page }) => {
  await flatOpen(page);
  await stepOpen(page, 'Floor');
  const thickness = page.getByLabel('Thickness', { exact: true });
  await thickness.press('ArrowUp');
  await thickness.press('ArrowUp');
  await expect(thickness).toHaveValue('75');
  await expect(page.getByText('Kept in this browser.')).toBeVisible();
  await page.getByRole('button', { name: 'Empty sheet' }).click();
  await expect(page.getByRole('heading', { name: 'An empty sheet' })).toBeVisible();
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.getByText('Undone: Empty sheet.')).toBeVisible();
  await expect(thickness).toHaveValue('75');
  // Two presses of the arrow key without leaving the field are one step.
  await page.keyboard.press('ControlOrMeta+z');
  await expect(thickness).toHaveValue('65');
  await expect(page.getByText('Saved as a file.')).toBeVisible();
  await page.keyboard.press('ControlOrMeta+Shift+z');
  await expect(thickness).toHaveValue('75');
});

test('a figure that is typed changes the floor as soon as typing rests, and Escape brings the old one back', async ({
  page,
}) => {
  await flatOpen(page);
  await stepOpen(page, 'Floor');
  const highest = page.getByLabel('Highest', { exact: true });
  const bays = () => page.getByText(/Kept in this browser\..*\d bays,/);
  await highest.fill('75');
  await expect(bays()).toBeVisible();
  await expect(highest).toBeFocused();
  await highest.press('Escape');
  await expect(bays()).toHaveCount(0);
  await expect(highest).toHaveValue('45');
  await highest.fill('48');
  await expect(bays()).toBeVisible();
  await highest.fill('75');
  await highest.press('Enter');
  await expect(page.getByRole('button', { name: 'Undo' })).toHaveAttribute('title', /^Undo: Highest temperature 75 °C/);
  await page.keyboard.press('ControlOrMeta+z');
  await expect(highest).toHaveValue('45');
  await page.keyboard.press('ControlOrMeta+Shift+z');
  await expect(highest).toHaveValue('75');
});

test('a figure out of range is refused where it stands', async ({ page }) => {
  await flatOpen(page);
  await stepOpen(page, 'Floor');
  await figurePut(page, 'Thickness', '0');
  await expect(page.getByRole('alert')).toContainText('Enter a number from 20 to 300 mm.');
  await figurePut(page, 'Thickness', '70,5');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(page.getByLabel('Thickness', { exact: true })).toHaveValue('70.5');
});

test('a wrong figure that was left in a field gives way to that of the plan once the plan goes on', async ({
  page,
}) => {
  await flatOpen(page);
  await stepOpen(page, 'Floor');
  await figurePut(page, 'Highest', '50');
  const thickness = page.getByLabel('Thickness', { exact: true });
  await thickness.fill('0');
  await thickness.press('Tab');
  await expect(page.getByRole('alert')).toContainText('Enter a number');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByLabel('Highest', { exact: true })).toHaveValue('45');
  await expect(thickness).toHaveValue('65');
  await expect(page.getByRole('alert')).toHaveCount(0);
});

test('an empty sheet is begun by drawing a room', async ({ page }) => {
  await page.goto('./');
  await page.getByRole('button', { name: 'Empty sheet' }).click();
  await page.getByRole('button', { name: 'Lengths in millimetres' }).click();
  await page.getByRole('button', { name: 'Draw the first room' }).click();
  await page.keyboard.type('6 x 4,5');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/1 room, 27\.0 m², 1 bay, 0 joints\./)).toBeVisible();
  await expect(page.getByRole('heading', { name: 'An empty sheet' })).toHaveCount(0);
});

test('the papers are the plan that is on the board', async ({ page }) => {
  await flatOpen(page);
  await stepOpen(page, 'Papers');
  const made = page.waitForEvent('download');
  await (await paperButton(page, 'Sheets to scale', 'Joint plan, SVG')).click();
  const download = await made;
  expect(download.suggestedFilename()).toBe('flat-over-the-workshop-plan.svg');
  expect(readFileSync(await download.path(), 'utf8')).toContain('Flat over the workshop');
});

test('an analysis that takes long shows its progress, can be cancelled and asked for again', async ({ page }) => {
  // A worker that never answers stands for an analysis that takes long.
  await page.route('**/worker-*.js', (route) => route.fulfill({ contentType: 'text/javascript', body: '' }));
  await page.goto('./');
  await expect(page.getByRole('progressbar', { name: 'Working out the bays' })).toBeVisible();
  await page.getByRole('button', { name: 'Cancel' }).click();
  await expect(page.getByText('No result. Cancelled.')).toBeVisible();
  await page.unroute('**/worker-*.js');
  await page.getByRole('button', { name: 'Work it out again' }).click();
  await expect(rows(page, 'Bays').first()).toBeVisible();
});
