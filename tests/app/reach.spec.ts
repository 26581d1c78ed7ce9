import { expect, type Page, test } from '@playwright/test';
import { flatOpen, planOpen, stepOpen } from './board.ts';

const things = (page: Page) => page.getByRole('list', { name: 'Things of the plan' });
const thing = (page: Page, name: RegExp | string) => things(page).getByRole('button', { name });
const chosen = (page: Page) => things(page).getByRole('button', { pressed: true });
const skip = (page: Page) => page.getByRole('link', { name: 'Past the things of the plan' });

/** From the drawing on by the Tab key to a thing; fails where it is no stop. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  await page.getByRole('application').focus();
  for (let presses = 0; presses < 40; presses++) {
    await page.keyboard.press('Tab');
    const text = await page.evaluate(() => document.activeElement?.textContent ?? '');
    if (name.test(text)) return;
  }
  throw new Error(`no stop of the Tab key is called ${name}`);
}

/** Takes a tool up by keys alone: the drawing has the focus then. */
async function toolTake(page: Page, step: string, tool: string): Promise<void> {
  const tab = page.getByRole('navigation').getByRole('button', { name: step });
  if ((await tab.getAttribute('aria-expanded')) !== 'true') {
    await tab.focus();
    await page.keyboard.press('Enter');
  }
  await page.locator('section.bar').getByRole('button', { name: tool, exact: true }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('application')).toBeFocused();
}

/** Types in place of pressing on the board. */
async function pointType(page: Page, point: string): Promise<void> {
  await page.getByLabel('Point, across and down').focus();
  await page.keyboard.type(point);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('application')).toBeFocused();
}

test('the Tab key goes from room to room in reading order, and after each to what stands in it', async ({ page }) => {
  await flatOpen(page);
  await page.getByRole('application').focus();
  await page.keyboard.press('Tab');
  await expect(skip(page)).toBeFocused();
  const told: string[] = [];
  for (let presses = 0; presses < 12; presses++) {
    await page.keyboard.press('Tab');
    told.push(await page.evaluate(() => document.activeElement?.textContent ?? ''));
  }
  expect(told).toEqual([
    'Living room, room, 9.0 by 7.6 m',
    'Sunlit floor u1 in Living room, up to 55 °C, 5.0 by 0.9 m',
    'Kitchen island, joinery in Living room, 1800 by 900 mm',
    'Bookcase, joinery in Living room, 400 by 2400 mm',
    'Column c1 in Living room, 300 by 300 mm',
    'Doorway between Living room and Hall, 900 mm',
    'Bedroom, room, 4.1 by 7.6 m',
    'Doorway between Bedroom and Hall, 900 mm',
    'Hall, room, 3.7 by 1.3 m',
    'Doorway between Hall and Bath, 800 mm',
    'Bath, room, 3.7 by 1.9 m',
    'Pipe p1 in Bath, 110 mm across',
  ]);
});

test('the first stop leads past the things to the foot of the board, and is seen', async ({ page }) => {
  await flatOpen(page);
  await page.getByRole('application').focus();
  await page.keyboard.press('Tab');
  await expect(skip(page)).toHaveCSS('opacity', '1');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Key', exact: true })).toBeFocused();
});

test('a thing with the focus has a ring round it on the board, where it is brought into view', async ({ page }) => {
  await flatOpen(page);
  await page.getByRole('application').focus();
  for (let presses = 0; presses < 20; presses++) await page.keyboard.press('Shift+ArrowLeft');
  await tabTo(page, /^Bath, room/);
  const board = await page.getByRole('application').boundingBox();
  const ring = await thing(page, /^Bath, room/).boundingBox();
  if (board === null || ring === null) throw new Error('neither board nor ring has a place');
  expect(ring.width).toBeGreaterThan(60);
  expect(ring.x).toBeGreaterThanOrEqual(board.x);
  expect(ring.x + ring.width).toBeLessThanOrEqual(board.x + board.width);
  expect(await thing(page, /^Bath, room/).evaluate((element) => getComputedStyle(element).outlineStyle)).toBe('solid');
});

test('Enter chooses, Enter again goes into the card, Escape lets go and keeps the place', async ({ page }) => {
  await flatOpen(page);
  await tabTo(page, /^Hall, room/);
  await page.keyboard.press('Enter');
  await expect(thing(page, /^Hall, room/)).toHaveAttribute('aria-pressed', 'true');
  const card = page.getByRole('region', { name: 'Hall', exact: true });
  await expect(card).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(card).toBeFocused();
  await page.getByRole('button', { name: 'Let go of it' }).focus();
  await page.keyboard.press('Enter');
  await expect(thing(page, /^Hall, room/)).toBeFocused();
  await page.keyboard.press('Space');
  await expect(chosen(page)).toHaveCount(1);
  await page.keyboard.press('Escape');
  await expect(chosen(page)).toHaveCount(0);
  await expect(thing(page, /^Hall, room/)).toBeFocused();
});

test('several things are chosen by Shift and Enter and moved by the arrow keys in one step', async ({ page }) => {
  await flatOpen(page);
  await stepOpen(page, 'Obstacles');
  await tabTo(page, /^Bookcase/);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Shift+Enter');
  await expect(chosen(page)).toHaveCount(2);
  const before = await thing(page, /^Column c1/).boundingBox();
  await page.keyboard.down('ArrowRight');
  await page.keyboard.down('ArrowRight');
  await page.keyboard.up('ArrowRight');
  await page.keyboard.press('Shift+ArrowRight');
  await expect(thing(page, /^Column c1/)).toBeFocused();
  await expect.poll(async () => (await thing(page, /^Column c1/).boundingBox())?.x).toBeGreaterThan(before?.x ?? 0);
  await expect(page.getByRole('status', { name: 'Place of the hand' })).toHaveText('x 120, y 2000 mm');
  await expect(page.getByTitle('Undo: Move 2 things (Ctrl Z)')).toBeEnabled();
});

test('a doorway that is moved by keys stays in its wall', async ({ page }) => {
  await flatOpen(page);
  await tabTo(page, /^Doorway between Living room and Hall/);
  await page.keyboard.press('Enter');
  const undo = page.getByRole('button', { name: 'Undo', exact: true });
  const before = (await undo.getAttribute('title')) ?? '';
  await page.keyboard.press('Shift+ArrowDown');
  await expect(page.getByRole('status', { name: 'Place of the hand' })).toHaveText('x 6000, y 4260 mm');
  await expect(undo).toHaveAttribute('title', before);
  await page.keyboard.press('Shift+ArrowRight');
  await expect(page.getByTitle('Undo: Move doorway d1 (Ctrl Z)')).toBeEnabled();
  await expect(thing(page, 'Doorway between Living room and Hall, 900 mm')).toBeFocused();
});

test('a floor of two rooms, a doorway, a column and a joint is drawn by the keyboard alone', async ({ page }) => {
  await page.goto('./');
  await page.getByRole('button', { name: 'Empty sheet' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'An empty sheet' })).toBeVisible();

  await toolTake(page, 'Floor', 'Room');
  // Corner by corner, the hand led by arrow keys: 4 m to the right, 3 m down, 4 m to the left.
  await page.keyboard.press('Enter');
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.type('4000');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.type('3 m');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Shift+ArrowLeft');
  await page.keyboard.type('4000');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await expect(thing(page, 'Room 1, room, 4.0 by 3.0 m')).toHaveCount(1);
  // The next by its two sides, from a typed point.
  await pointType(page, '4120 ; 0');
  await page.keyboard.type('3500 x 3000');
  await page.keyboard.press('Enter');
  await expect(thing(page, 'Room 2, room, 3.5 by 3.0 m')).toHaveCount(1);

  await toolTake(page, 'Openings', 'Doorway');
  await pointType(page, '4060 ; 1500');
  await expect(thing(page, /^Doorway between Room 1 and Room 2/)).toHaveCount(1);

  await toolTake(page, 'Obstacles', 'Column');
  await page.keyboard.press('ArrowRight');
  await expect(page.getByRole('status', { name: 'Place of the hand' })).toHaveText(/^x \d+, y \d+ mm$/);
  await page.keyboard.press('Shift+ArrowLeft');
  await page.keyboard.press('Control+ArrowLeft');
  await page.keyboard.press('Enter');
  await expect(thing(page, /^Column c1/)).toHaveCount(1);

  await toolTake(page, 'Joints', 'Joint');
  await pointType(page, '2000 ; 0');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.type('3000');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await expect(thing(page, 'Drawn joint x1 in Room 1, 3.00 m long')).toHaveCount(1);
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: 'Choose', exact: true })).toHaveAttribute('aria-pressed', 'true');
});

test('the board follows the hand that keys lead, and what they move', async ({ page }) => {
  await flatOpen(page);
  await toolTake(page, 'Obstacles', 'Pipe');
  await pointType(page, '500000 ; 1000');
  await page.keyboard.press('ArrowRight');
  const bar = page.locator('.reading-place');
  await expect(bar).toHaveText(/x 500.010/);
  await page.keyboard.press('Escape');
  await tabTo(page, /^Pipe p2/);
  const [board, ring] = [
    await page.getByRole('application').boundingBox(),
    await thing(page, /^Pipe p2/).boundingBox(),
  ];
  expect(ring?.x).toBeGreaterThan(board?.x ?? 0);
  expect(ring?.x).toBeLessThan((board?.x ?? 0) + (board?.width ?? 0));
});

test('a plan of 1,000 rooms has all things as stops and only a few in the page, and Tab stays quick', async ({
  page,
}) => {
  test.setTimeout(90_000);
  const rooms = Array.from({ length: 1000 }, (_, i) => {
    const [x, y] = [(i % 40) * 3200, Math.floor(i / 40) * 3200];
    return {
      id: `r${i + 1}`,
      name: `Cell ${i + 1}`,
      outline: [
        [x, y],
        [x + 3000, y],
        [x + 3000, y + 3000],
        [x, y + 3000],
      ],
    };
  });
  const pipes = Array.from({ length: 3000 }, (_, i) => {
    const [x, y] = [(Math.floor(i / 3) % 40) * 3200, Math.floor(i / 120) * 3200];
    return { id: `p${i + 1}`, centre: [x + 600 + (i % 3) * 600, y + 1500], diameterMm: 110 };
  });
  const plan = { format: 'screed-bays/plan', version: 1, name: 'Cells', rooms, pipes };
  await page.goto('./');
  await planOpen(page, { name: 'c.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(plan)) });
  await expect(page.getByText(/^1000 rooms, /)).toBeVisible({ timeout: 60_000 });
  await expect(thing(page, /^Cell 1, room/)).toHaveCount(1);
  await page.getByRole('application').focus();
  await page.keyboard.press('Tab');
  for (let presses = 0; presses < 60; presses++) await page.keyboard.press('Tab');
  await expect(thing(page, 'Pipe p45 in Cell 15, 110 mm across')).toBeFocused();
  expect(await things(page).getByRole('button').count()).toBeLessThan(60);
  await expect(things(page).getByRole('listitem').last()).toHaveAttribute('aria-posinset', '4000');
});

test('the help sheet opens over the work, keeps what is chosen, and gives the focus back', async ({ page }) => {
  await flatOpen(page);
  await tabTo(page, /^Hall, room/);
  await page.keyboard.press('Enter');
  const help = page.getByRole('button', { name: 'Help', exact: true });
  await help.focus();
  await page.keyboard.press('Enter');
  const sheet = page.getByRole('dialog', { name: 'Help' });
  await expect(sheet.getByRole('heading', { name: 'Choose and move' })).toBeVisible();
  await expect(sheet.getByText('Not checked for construction')).toBeVisible();
  await expect(sheet.getByRole('row', { name: /^Ctrl Z / })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(sheet).toHaveCount(0);
  await expect(help).toBeFocused();
  await expect(chosen(page)).toHaveCount(1);
});

test.describe('on the maker of the other keyboard', () => {
  test.use({
    userAgent: 'Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/537.36 Chrome/140.0 Safari/537.36',
  });

  test('the help sheet says Cmd', async ({ page }) => {
    await page.goto('./');
    await page.getByRole('button', { name: 'Help', exact: true }).click();
    await expect(page.getByRole('row', { name: /^Cmd Z / })).toBeVisible();
  });
});
