import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { boardPlaces, rows, stepOpen } from './board.ts';

/** Four rooms with walls of 120 mm between them and three doorways of 875 mm: the plan that each hand draws. mm. */
const rooms = [
  { at: [0, 0], sides: '6000 x 4500' },
  { at: [6120, 0], sides: '3500 x 4500' },
  { at: [0, 4620], sides: '6000 x 1800' },
  { at: [6120, 4620], sides: '3500 x 1800' },
] as const;
const doorways = [
  [3000, 4560],
  [6060, 5520],
  [6060, 2250],
] as const;
const box = (x: number, y: number, width: number, height: number) => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];
/** By hand from the figures above: the line of a doorway lies in the middle of the wall, in the middle of its length. */
const drawn = {
  format: 'screed-bays/plan',
  version: 1,
  name: 'New floor',
  rooms: [
    { id: 'r1', name: 'Room 1', outline: box(0, 0, 6000, 4500) },
    { id: 'r2', name: 'Room 2', outline: box(6120, 0, 3500, 4500) },
    { id: 'r3', name: 'Room 3', outline: box(0, 4620, 6000, 1800) },
    { id: 'r4', name: 'Room 4', outline: box(6120, 4620, 3500, 1800) },
  ],
  doorways: [
    {
      id: 'd1',
      line: [
        [2562.5, 4560],
        [3437.5, 4560],
      ],
      wallMm: 120,
    },
    {
      id: 'd2',
      line: [
        [6060, 5082.5],
        [6060, 5957.5],
      ],
      wallMm: 120,
    },
    {
      id: 'd3',
      line: [
        [6060, 1812.5],
        [6060, 2687.5],
      ],
      wallMm: 120,
    },
  ],
};

/** What a person did: presses, drags, keys and words typed. */
let actions = 0;

async function sheetEmpty(page: Page): Promise<void> {
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  await page.goto('./');
  await page.getByRole('button', { name: 'Empty sheet' }).click();
  await expect(page.getByRole('heading', { name: 'An empty sheet' })).toBeVisible();
  actions = 1;
}

/** The plan as it is saved. Which jamb of a doorway comes first says nothing: the left or upper one here. */
async function saved(page: Page): Promise<unknown> {
  const asked = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  const file = JSON.parse(readFileSync(await (await asked).path(), 'utf8')) as typeof drawn;
  const doorways = file.doorways.map(({ line, ...doorway }) => ({
    ...doorway,
    line: [...line].sort(([ax = 0, ay = 0], [bx = 0, by = 0]) => ax - bx || ay - by),
  }));
  return { ...file, doorways };
}

async function jointsStand(page: Page): Promise<void> {
  // The joints of the plan: one in each doorway, one that halves the hall of 6.0 x 1.8 m, over 2 : 1.
  await expect(page.getByText(/4 rooms, .* 5 bays, 4 joints\./)).toBeVisible();
}

test.use({ viewport: { width: 1440, height: 900 } });

test('the mouse draws a dwelling of four rooms with its joints in fewer than 60 actions', async ({ page }) => {
  await sheetEmpty(page);
  const press = async (name: string) => {
    await page.getByRole('button', { name, exact: true }).click();
    actions += 1;
  };
  await press('Draw the first room');
  const place = await boardPlaces(page);
  const pressAt = async (x: number, y: number) => {
    const [px, py] = place(x, y);
    await page.mouse.move(px, py, { steps: 3 });
    await page.mouse.click(px, py);
    actions += 1;
  };
  for (const { at, sides } of rooms) {
    // A little off: the hand is caught by the neighbour's line and the depth of the wall.
    await pressAt(at[0] + 20, at[1] + 20);
    await page.keyboard.type(sides);
    await page.keyboard.press('Enter');
    actions += 2;
  }
  await stepOpen(page, 'Openings');
  await press('Doorway');
  for (const [x, y] of doorways) await pressAt(x, y);
  actions += 1;
  expect(await saved(page)).toEqual(drawn);
  await jointsStand(page);
  expect(actions).toBeLessThan(60);
});

test('keys alone draw the same dwelling', async ({ page }) => {
  await sheetEmpty(page);
  const take = async (name: string) => {
    const button = page.getByRole('button', { name, exact: true });
    await button.focus();
    await page.keyboard.press('Enter');
  };
  const point = async (x: number, y: number) => {
    await page.getByLabel('Point, across and down').focus();
    await page.keyboard.type(`${x} ; ${y}`);
    await page.keyboard.press('Enter');
  };
  await take('Draw the first room');
  // The first room run by run: arrow keys say which way, figures how far, Enter closes it.
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.type('6000');
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.type('4500');
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.type('6000');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^Kept.*1 room, |^1 room, /)).toBeVisible();
  for (const { at, sides } of rooms.slice(1)) {
    await point(at[0], at[1]);
    await page.keyboard.type(sides);
    await page.keyboard.press('Enter');
  }
  await page.keyboard.press('Escape');
  await page.getByRole('navigation').getByRole('button', { name: 'Openings' }).focus();
  await page.keyboard.press('Enter');
  await take('Doorway');
  for (const [x, y] of doorways) await point(x, y);
  expect(await saved(page)).toEqual(drawn);
  await jointsStand(page);
});

test.describe('by touch', () => {
  test.use({ hasTouch: true, viewport: { width: 820, height: 1180 } });

  test('fingers draw the same dwelling', async ({ page }) => {
    await sheetEmpty(page);
    await page.getByRole('button', { name: 'Draw the first room' }).tap();
    let place = await boardPlaces(page);
    const tapAt = async (x: number, y: number) => {
      const [px, py] = place(x, y);
      await page.touchscreen.tap(px, py);
    };
    for (const { at, sides } of rooms) {
      await tapAt(at[0] + 20, at[1] + 20);
      await page.getByLabel('Length', { exact: true }).tap();
      await page.getByLabel('Length', { exact: true }).fill(sides);
      await page.keyboard.press('Enter');
    }
    await page.getByRole('navigation').getByRole('button', { name: 'Openings' }).tap();
    await page.getByRole('button', { name: 'Fold away' }).tap();
    await page.getByRole('button', { name: 'Doorway', exact: true }).tap();
    // The tray lay over the board: the drawing was fitted beside it.
    place = await boardPlaces(page);
    for (const [x, y] of doorways) await tapAt(x, y);
    expect(await saved(page)).toEqual(drawn);
    await jointsStand(page);
  });
});

test('an outline may not cross itself, and the reason is told while it is drawn', async ({ page }) => {
  await sheetEmpty(page);
  await page.getByRole('button', { name: 'Draw the first room' }).click();
  await page.getByLabel('Right angles').uncheck();
  const place = await boardPlaces(page);
  const press = async (x: number, y: number) => {
    const [px, py] = place(x, y);
    await page.mouse.move(px, py);
    await page.mouse.click(px, py);
  };
  await press(1000, 1000);
  await press(5000, 1000);
  await press(5000, 4000);
  await press(3000, -500);
  await expect(page.getByText('This run would cross what is drawn')).toBeVisible();
  await page.keyboard.press('Escape');
  await press(1000, 4000);
  await page.keyboard.press('Enter');
  await expect(page.getByText(/1 room, /)).toBeVisible();
  await expect(rows(page, 'Rooms')).toHaveCount(1);
});

test('Escape steps back a corner at a time, and then puts the tool down', async ({ page }) => {
  await sheetEmpty(page);
  await page.getByRole('button', { name: 'Draw the first room' }).click();
  const place = await boardPlaces(page);
  for (const [x, y] of [
    [1000, 1000],
    [5000, 1000],
    [5000, 4000],
  ] as const) {
    const [px, py] = place(x, y);
    await page.mouse.move(px, py);
    await page.mouse.click(px, py);
  }
  const room = page.getByRole('button', { name: 'Room', exact: true });
  const hint = page.locator('.bar-hint');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  await expect(hint).toContainText('two sides');
  await page.keyboard.press('Escape');
  await expect(hint).toContainText('first corner');
  await expect(room).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.press('Escape');
  await expect(room).toHaveAttribute('aria-pressed', 'false');
});

test('a length that is being typed is not wiped out by a hand that passes by', async ({ page }) => {
  await sheetEmpty(page);
  await page.getByRole('button', { name: 'Draw the first room' }).click();
  const place = await boardPlaces(page);
  await page.mouse.click(...(place(1000, 1000) as [number, number]));
  await page.mouse.move(...(place(3000, 1000) as [number, number]));
  await page.keyboard.type('45');
  await page.mouse.move(...(place(3500, 2500) as [number, number]));
  await page.keyboard.type('00');
  const field = page.getByLabel('Length', { exact: true });
  await expect(field).toHaveValue('4500');
  await page.keyboard.press('Enter');
  await page.keyboard.type('4500 x 1');
  await page.keyboard.press('Escape');
  // The run is 4500 long, to the right as it was when it was typed.
  await page.mouse.move(...(place(5500, 3000) as [number, number]));
  await page.keyboard.type('3000');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/1 room, 6\.8 m²/)).toBeVisible();
});

test('undo in the middle of an outline takes back its last corner, not the room before it', async ({ page }) => {
  await sheetEmpty(page);
  await page.getByRole('button', { name: 'Draw the first room' }).click();
  await page.keyboard.type('6000 x 4500');
  await page.keyboard.press('Enter');
  const place = await boardPlaces(page);
  await page.mouse.click(...(place(8000, 1000) as [number, number]));
  await page.mouse.click(...(place(10_000, 1000) as [number, number]));
  await page.keyboard.press('Control+z');
  await expect(page.locator('.bar-hint')).toContainText('two sides');
  await page.keyboard.press('Control+z');
  await expect(page.locator('.bar-hint')).toContainText('first corner');
  await expect(rows(page, 'Rooms')).toHaveCount(1);
  await page.keyboard.press('Control+z');
  await expect(rows(page, 'Rooms')).toHaveCount(0);
});
