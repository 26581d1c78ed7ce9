import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { unzipSync } from 'fflate';
import {
  boardPlaces,
  figurePut,
  flatFile,
  flatOpen,
  litPixels,
  paperButton,
  planOpen,
  rows,
  settled,
  stepOpen,
} from './board.ts';

/** The step of the papers, with the papers of the fixture worked out. */
async function papersOpen(page: Page): Promise<void> {
  await flatOpen(page);
  await stepOpen(page, 'Papers');
  await expect(page.getByRole('button', { name: 'All papers, ZIP' })).toBeVisible();
}

/** The fixture in the step of the papers, compared with itself. */
async function flatCompared(page: Page): Promise<void> {
  await papersOpen(page);
  const asked = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open an earlier version' }).click();
  await (await asked).setFiles(flatFile);
  await expect(page.getByText('Since flat.json:')).toBeVisible();
}

async function paperBytes(page: Page, group: string, words: string): Promise<Buffer> {
  const made = page.waitForEvent('download');
  await (await paperButton(page, group, words)).click();
  return readFileSync(await (await made).path());
}

test('the joint plan as PDF carries the plan, and opens as that plan again', async ({ page }) => {
  await papersOpen(page);
  const buffer = await paperBytes(page, 'Sheets to scale', 'Joint plan, PDF');
  expect(buffer.subarray(0, 5).toString('latin1')).toBe('%PDF-');
  await page.getByRole('button', { name: 'Empty sheet' }).click();
  await expect(page.getByLabel('Name of the plan')).toHaveValue('New floor');
  await planOpen(page, { name: 'plan.pdf', mimeType: 'application/pdf', buffer });
  await expect(page.getByLabel('Name of the plan')).toHaveValue('Flat over the workshop');
  await expect(page.getByText('plan.pdf is on the board.')).toBeVisible();
});

test('a PDF of another program is refused with the reason, and the board stays as it is', async ({ page }) => {
  await flatOpen(page);
  await planOpen(page, { name: 'other.pdf', mimeType: 'application/pdf', buffer: Buffer.from('%PDF-1.7\n%%EOF\n') });
  await expect(page.getByRole('status').filter({ hasText: 'other.pdf was not opened.' })).toContainText(
    'holds no floor plan',
  );
  await expect(page.getByLabel('Name of the plan')).toHaveValue('Flat over the workshop');
});

test('a figure that was typed a moment before the press stands on the paper', async ({ page }) => {
  await papersOpen(page);
  const field = page.getByLabel('Designer', { exact: true });
  await field.fill('Office for floors');
  const button = await paperButton(page, 'Sheets to scale', 'Joint plan, SVG');
  const made = page.waitForEvent('download');
  // Down and up in one moment: the field is left by the press itself.
  await button.dispatchEvent('pointerdown');
  await button.click({ delay: 0 });
  const svg = readFileSync(await (await made).path(), 'utf8');
  expect(svg).toContain('Office for floors');
  expect(svg).not.toContain('Not checked for construction');
});

test('while another floor is worked out no papers of the one before are offered', async ({ page }) => {
  await papersOpen(page);
  // A worker that never answers stands for an analysis that takes long.
  await page.evaluate(() => {
    Worker.prototype.postMessage = () => undefined;
  });
  await page.getByRole('button', { name: 'Plans', exact: true }).click();
  await page.getByRole('list', { name: 'Demo floors' }).getByRole('button', { name: 'Public library' }).click();
  await expect(page.getByLabel('Name of the plan')).toHaveValue('Public library, ground floor');
  await expect(page.getByText('Working out the papers.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'All papers, ZIP' })).toHaveCount(0);
});

test('all papers come in one file, each once', async ({ page }) => {
  await papersOpen(page);
  const made = page.waitForEvent('download');
  await page.getByRole('button', { name: 'All papers, ZIP' }).click();
  const names = Object.keys(unzipSync(readFileSync(await (await made).path())));
  for (const name of ['plan.pdf', 'plan.svg', 'tables.xlsx', 'joints.csv', 'take-off.csv', 'analysis.json'])
    expect(names).toContain(name);
  expect(new Set(names).size).toBe(names.length);
});

test('a line of the take-off lights on the drawing what it was measured from', async ({ page }) => {
  await papersOpen(page);
  const line = page.locator('#take-off').getByRole('button', { name: 'Joint profile, doorways' });
  const drawing = () => page.evaluate(() => document.querySelectorAll('canvas')[0]?.toDataURL());
  const dark = await settled(drawing);
  await line.click();
  await expect(line).toHaveAttribute('aria-pressed', 'true');
  await expect.poll(drawing).not.toBe(dark);
  await line.click();
  await expect.poll(drawing).toBe(dark);
  expect(await litPixels(page)).toBe(0);
});

test('a pack of another size is ordered in another number, and undone again', async ({ page }) => {
  await papersOpen(page);
  const strip = page.locator('#take-off tbody').filter({ hasText: 'Edge strip' }).first().locator('.strong');
  const before = (await strip.textContent()) ?? '';
  await page.getByText('Packs and allowances').click();
  await figurePut(page, 'Roll of edge strip', '5');
  await expect(strip).not.toHaveText(before);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(strip).toHaveText(before);
});

test('base points are placed on the board, named, and taken away', async ({ page }) => {
  await papersOpen(page);
  await page.getByRole('button', { name: 'Place base point 1 on the board' }).click();
  const place = await boardPlaces(page);
  for (const x of [0, 4000]) {
    const [acrossPx, downPx] = place(x, 0);
    await page.mouse.click(acrossPx, downPx);
  }
  await page.keyboard.press('Escape');
  // the one that was placed last is chosen, and its figures are open
  const name = page.getByRole('group', { name: /^Chosen: Base point/ }).getByLabel('Name', { exact: true });
  await name.fill('Nail');
  await name.press('Enter');
  await expect(page.getByText('Base point Nail', { exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'Take it away' }).click();
  await expect(page.getByText('Base point Nail', { exact: true })).toHaveCount(0);
  await expect(page.getByText('Base point 1', { exact: true })).toBeVisible();
});

test('what is entered of a joint for the register stands in the register', async ({ page }) => {
  await flatOpen(page);
  await rows(page, 'Joints').first().click();
  await page.getByText('In the joint register').click();
  await page.getByLabel('Colour', { exact: true }).fill('=sand');
  await page.getByLabel('Colour', { exact: true }).press('Enter');
  await stepOpen(page, 'Papers');
  const csv = (await paperBytes(page, 'Lists', 'Joint register, CSV')).toString('utf8');
  expect(csv).toContain("'=sand");
});

test('a plan is compared with an earlier version of it', async ({ page }) => {
  await flatCompared(page);
  await expect(page.locator('#compare .changed')).toContainText('no joint changed');
  await stepOpen(page, 'Floor');
  await figurePut(page, 'Thickness', '70');
  await stepOpen(page, 'Papers');
  await paperButton(page, 'Lists', 'Revision: settings: what changed, CSV');
  await page.getByRole('button', { name: 'Stop comparing' }).click();
  await expect(page.getByText('Since flat.json:')).toHaveCount(0);
});

test('a comparison ends when another plan is laid on the board', async ({ page }) => {
  await flatCompared(page);
  await planOpen(page, 'demo-plans/2-public-library.json');
  await expect(page.getByLabel('Name of the plan')).toHaveValue('Public library, ground floor');
  await expect(page.getByText('Since flat.json:')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Stop comparing' })).toHaveCount(0);
});

test('papers that were begun before the plan was changed say so', async ({ page }) => {
  await papersOpen(page);
  const made = page.waitForEvent('download');
  await page.getByRole('button', { name: 'All papers, ZIP' }).click();
  const project = page.getByLabel('Project', { exact: true });
  await project.fill('Changed meanwhile');
  await project.press('Enter');
  const planIn = async (zip: typeof made) =>
    Buffer.from(unzipSync(readFileSync(await (await zip).path()))['plan.json'] ?? []).toString('utf8');
  expect(await planIn(made)).not.toContain('Changed meanwhile');
  await expect(page.getByText('The plan was changed meanwhile: the paper has it as it was before.')).toBeVisible();
  const again = page.waitForEvent('download');
  await page.getByRole('button', { name: 'All papers, ZIP' }).click();
  expect(await planIn(again)).toContain('Changed meanwhile');
});

test('an empty sheet says when there are papers', async ({ page }) => {
  await flatOpen(page);
  await page.getByRole('button', { name: 'Empty sheet' }).click();
  await stepOpen(page, 'Papers');
  await expect(page.getByText('Papers are made once a room is drawn.')).toBeVisible();
});
