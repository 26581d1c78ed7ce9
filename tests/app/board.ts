import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page } from '@playwright/test';

/** The app as a person uses it: what the browser tests do again and again. */
export const flatFile = 'tests/app/fixtures/flat.json';

/** Opens the app with the fixture on the board, saving by download. */
export async function flatOpen(page: Page): Promise<void> {
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  await page.goto('./');
  await planOpen(page, flatFile);
  await expect(page.getByLabel('Name of the plan')).toHaveValue('Flat over the workshop');
  // Until its own result is there, the board and the lists show the floor before it.
  await expect(page.getByText(/^\d+ rooms, .* bays, \d+ joints\./)).toBeVisible();
}

export async function planOpen(page: Page, file: string | { name: string; mimeType: string; buffer: Buffer }) {
  const asked = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await (await asked).setFiles(file);
}

/** Opens the dwelling of the demo floors with more in its file, in the step of the papers: 18 m wide, 11.4 m deep, with a finding at [2700, 2800]. */
export async function dwellingOpen(page: Page, more: Record<string, unknown>): Promise<void> {
  const dwelling = JSON.parse(readFileSync('demo-plans/1-dwelling.json', 'utf8')) as Record<string, unknown>;
  await flatOpen(page);
  const text = JSON.stringify({ ...dwelling, ...more, name: 'Dwelling with points' });
  await planOpen(page, { name: 'dwelling.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await expect(page.getByLabel('Name of the plan')).toHaveValue('Dwelling with points');
  await expect(page.getByText(/^12 rooms, .* bays, \d+ joints\./)).toBeVisible();
  await stepOpen(page, 'Papers');
  await expect(page.getByRole('button', { name: 'All papers, ZIP' })).toBeVisible();
}

/** Opens a step of the work where it is not open yet. */
export async function stepOpen(page: Page, name: string): Promise<void> {
  const tab = page.getByRole('navigation').getByRole('button', { name });
  if ((await tab.getAttribute('aria-expanded')) !== 'true') await tab.click();
  // What a step holds may come after its head, with the later parts of the page.
  await expect(page.locator('.tray .part-head:has(#tray-step) + *')).toBeVisible();
}

/** The button of one paper in the step of the papers, which is open: its group unfolded. */
export async function paperButton(page: Page, group: string, words: string): Promise<Locator> {
  const button = page.getByRole('button', { name: words, exact: true });
  await expect(page.getByRole('button', { name: 'All papers, ZIP' })).toBeVisible();
  if (!(await button.isVisible())) await page.locator('#papers summary').filter({ hasText: group }).click();
  return button;
}

/** The fixture with tiles of 600 x 600 on its floor, set out from the corner of the living room, [0, 0]. */
export async function tiledOpen(page: Page): Promise<void> {
  await flatOpen(page);
  await stepOpen(page, 'Coverings');
  await page.getByRole('button', { name: 'Lay tiles' }).click();
  await expect(page.getByLabel('Set-out, across', { exact: true })).toHaveValue('0');
}

export const rows = (page: Page, list: string): Locator =>
  page.getByRole('listbox', { name: list }).getByRole('option');

/** The doorway joint between hall and bath: what it closes, mm. Its bays meet in no other joint. */
export async function bathClosingMm(page: Page): Promise<number> {
  await stepOpen(page, 'Joints');
  const row = rows(page, 'Joints').filter({ hasText: /Hall . Bath|Bath . Hall/ });
  const [, figure] = /(\d+\.\d) mm/.exec((await row.textContent()) ?? '') ?? [];
  return Number(figure);
}

/** Puts a figure into a field of the open step. */
export async function figurePut(page: Page, label: string, value: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(value);
  await field.press('Enter');
}

/** Reads again and again until two readings in a row are the same: what the last key has lit may still be on its way to the canvas. */
export async function settled<Value>(read: () => Promise<Value>): Promise<Value> {
  const readings: Value[] = [];
  const isStill = async () => {
    readings.push(await read());
    const [before, now] = readings.slice(-2).map((reading) => JSON.stringify(reading));
    return readings.length > 1 && before === now;
  };
  await expect.poll(isStill, { intervals: [150] }).toBe(true);
  return readings.at(-1) as Value;
}

/** Pixels of the layer that lights things which are not empty. */
export function litPixels(page: Page): Promise<number> {
  return page.evaluate(() => {
    const canvas = document.querySelectorAll('canvas')[1];
    const data = canvas?.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
    let count = 0;
    for (let i = 3; i < data.length; i += 4) if ((data[i] ?? 0) > 0) count += 1;
    return count;
  });
}

/** Turns places of the plan (mm) into places on the page (px), for the view as it stands. */
export async function boardPlaces(page: Page): Promise<(x: number, y: number) => readonly [number, number]> {
  const box = await page.getByRole('application').boundingBox();
  if (box === null) throw new Error('the board has no size');
  const told = async () => (await page.locator('.reading-place').textContent()) ?? '';
  const read = async (share: number) => {
    const [px, py] = [box.x + box.width * share, box.y + box.height * share];
    const before = await told();
    await page.mouse.move(px, py);
    // Only with its next frame does the page tell where the pointer is.
    await expect.poll(told).not.toBe(before);
    const text = await told();
    const [x = NaN, y = NaN] = text
      .replace('x', '')
      .split('y')
      .map((part) => Number(part.replace('\u2212', '-').replace(/[^-\d.]/g, '')));
    return { px, py, x, y };
  };
  const [a, b] = [await read(0.02), await read(0.98)];
  const pxPerMm = (b.px - a.px) / (b.x - a.x);
  return (x, y) => [a.px + (x - a.x) * pxPerMm, a.py + (y - a.y) * pxPerMm];
}
