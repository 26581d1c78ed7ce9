import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { boardPlaces, figurePut, flatOpen, paperButton, settled, stepOpen } from './board.ts';

/** Places of the fixture that no line of a list lights by itself, mm: within each room, and in its column. */
const places = {
  living: [4500, 6500],
  hall: [8500, 4900],
  bath: [6500, 6700],
  bedroom: [11_000, 3000],
  column: [2650, 4250],
} as const;
/** Middles of its doorways. */
const doors = { livingDoor: [6450, 4260], bathDoor: [8000, 5660], bedroomDoor: [9060, 4950] } as const;

type Places = Readonly<Record<string, readonly [number, number]>>;

async function papersOpen(page: Page): Promise<void> {
  await flatOpen(page);
  await stepOpen(page, 'Papers');
  await expect(page.getByRole('button', { name: 'All papers, ZIP' })).toBeVisible();
}

const lineOf = (page: Page, name: string): Locator =>
  page.locator('#take-off').getByRole('button', { name, exact: true }).first();
const roomField = (page: Page): Locator => page.getByLabel('Quantities of', { exact: true });
const pressed = (page: Page): Locator => page.locator('#take-off [aria-pressed="true"]');

/** Reads which of some places are lit on the drawing, by their names in order: which have another colour than at the start, while nothing is lit. */
async function litReader(page: Page): Promise<(of: Places) => Promise<readonly string[]>> {
  const place = await boardPlaces(page);
  // the hand lights nothing while it is elsewhere
  await page.locator('#take-off h3').hover();
  const colours = (of: Places) => {
    const points = Object.entries(of).map(([name, [x, y]]) => [name, place(x, y)] as const);
    return page.evaluate((given) => {
      const canvas = document.querySelectorAll('canvas')[0];
      const box = canvas?.getBoundingClientRect();
      const context = canvas?.getContext('2d');
      if (!canvas || !box || !context) return {};
      const scale = canvas.width / box.width;
      const at = ([x, y]: readonly [number, number]) =>
        context.getImageData(Math.round((x - box.x) * scale), Math.round((y - box.y) * scale), 1, 1).data.join(' ');
      return Object.fromEntries(given.map(([name, point]) => [name, at(point)]));
    }, points);
  };
  const dark = await settled(() => colours({ ...places, ...doors }));
  return async (of) => {
    const now = await colours(of);
    return Object.keys(of).filter((name) => now[name] !== dark[name]);
  };
}

test('a line lights the floor of one room only where the quantities of that room are looked at', async ({ page }) => {
  await papersOpen(page);
  const lit = await litReader(page);
  await lineOf(page, 'Screed').click();
  // a column stands on the slab: it is no screed
  await expect.poll(() => lit(places)).toEqual(['living', 'hall', 'bath', 'bedroom']);
  for (const [room, name] of [
    ['Bedroom', 'bedroom'],
    ['Living room', 'living'],
    ['Bath', 'bath'],
  ] as const) {
    await roomField(page).selectOption(room);
    await expect.poll(() => lit(places)).toEqual([name]);
    await expect(lineOf(page, 'Screed')).toHaveAttribute('aria-pressed', 'true');
  }
  await roomField(page).selectOption('The whole floor');
  await expect.poll(() => lit(places)).toEqual(['living', 'hall', 'bath', 'bedroom']);
});

test('a joint in a doorway is lit in both its rooms, and in no other', async ({ page }) => {
  await papersOpen(page);
  const lit = await litReader(page);
  await lineOf(page, 'Joint profile, doorways').click();
  await expect.poll(() => lit(doors)).toEqual(['livingDoor', 'bathDoor', 'bedroomDoor']);
  await roomField(page).selectOption('Bath');
  await expect.poll(() => lit(doors)).toEqual(['bathDoor']);
  await roomField(page).selectOption('Hall');
  await expect.poll(() => lit(doors)).toEqual(expect.arrayContaining(['livingDoor', 'bathDoor']));
  // lines stay lines
  expect(await lit(places)).toEqual([]);
});

test('Escape takes the light away, once no tool and no field has use of it', async ({ page }) => {
  await papersOpen(page);
  const lit = await litReader(page);
  await lineOf(page, 'Screed').click();
  await expect.poll(() => lit(places)).toHaveLength(4);
  // a field that is typed in keeps it
  await page.getByLabel('Designer', { exact: true }).fill('Some');
  await page.keyboard.press('Escape');
  await expect(page.getByLabel('Designer', { exact: true })).toHaveValue('');
  await expect(pressed(page)).toHaveCount(1);
  // and so does a tool in hand
  await page.getByRole('button', { name: 'Point', exact: true }).click();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: 'Choose', exact: true })).toHaveAttribute('aria-pressed', 'true');
  await expect(pressed(page)).toHaveCount(1);
  await page.keyboard.press('Escape');
  await expect(pressed(page)).toHaveCount(0);
  await expect.poll(() => lit(places)).toEqual([]);
});

test('a line goes out in a room that has nothing of it, and with the step', async ({ page }) => {
  await papersOpen(page);
  const lit = await litReader(page);
  await lineOf(page, 'Joint profile, intermediate joints').click();
  await roomField(page).selectOption('Bath');
  await expect(pressed(page)).toHaveCount(0);
  await roomField(page).selectOption('The whole floor');
  await expect(pressed(page)).toHaveCount(0);
  await roomField(page).selectOption('Bedroom');
  await lineOf(page, 'Screed').click();
  await expect.poll(() => lit(places)).toEqual(['bedroom']);
  await stepOpen(page, 'Floor');
  await expect.poll(() => lit(places)).toEqual([]);
  await stepOpen(page, 'Papers');
  await expect(roomField(page).locator('option:checked')).toHaveText('The whole floor');
  await expect(pressed(page)).toHaveCount(0);
});

test('the table says whose quantities it tells', async ({ page }) => {
  await papersOpen(page);
  await expect(page.getByRole('table', { name: 'Take-off, the whole floor' })).toBeVisible();
  await roomField(page).selectOption('Bath');
  await expect(page.getByRole('table', { name: 'Take-off, Bath' })).toBeVisible();
});

test('a price keeps the digits that were typed, on screen and in the list', async ({ page }) => {
  await papersOpen(page);
  await page.getByText('Prices', { exact: true }).click();
  await figurePut(page, 'A metre of backer', '0.125');
  await expect(page.getByLabel('A metre of backer', { exact: true })).toHaveValue('0.125');
  await figurePut(page, 'A metre of backer', '0.12345');
  await expect(page.getByText('Enter at most 4 digits after the decimal mark.')).toBeVisible();
  await figurePut(page, 'A metre of backer', '0.125');
  const made = page.waitForEvent('download');
  await (await paperButton(page, 'Lists', 'Take-off, CSV')).click();
  expect(readFileSync(await (await made).path(), 'utf8')).toContain(',0.125,m,');
});

test('a currency of more than eight letters is not taken, and it is said why', async ({ page }) => {
  await papersOpen(page);
  await page.getByText('Prices', { exact: true }).click();
  const field = page.getByLabel('Currency', { exact: true });
  await field.fill('Thalers8');
  await field.press('Enter');
  await field.fill('Thalers of old');
  await field.press('Enter');
  await expect(page.getByText('Enter at most 8 characters, such as EUR.')).toBeVisible();
  await field.press('Escape');
  await expect(field).toHaveValue('Thalers8');
});

test('insulation is ordered in packs once a pack is entered, and in square metres where none is', async ({ page }) => {
  await papersOpen(page);
  await page.getByText('Packs and allowances', { exact: true }).click();
  const line = page
    .locator('#take-off tbody')
    .filter({ has: page.getByRole('button', { name: 'Insulation', exact: true }) })
    .first();
  await expect(line).toContainText(/m²$/u);
  await figurePut(page, 'Pack of insulation', '10');
  await expect(line).toContainText(/\d packs$/u);
  await figurePut(page, 'Pack of insulation', '');
  await expect(line).toContainText(/m²$/u);
});
