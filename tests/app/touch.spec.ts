import { type CDPSession, expect, type Page, test } from '@playwright/test';
import { flatOpen, stepOpen } from './board.ts';

test.use({ viewport: { width: 820, height: 1180 }, hasTouch: true, isMobile: true });

type At = readonly [x: number, y: number];

/** Fingers on the board, as the screen reports them. */
async function handOf(page: Page) {
  const session: CDPSession = await page.context().newCDPSession(page);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: readonly At[]) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: points.map(([x, y], id) => ({ x, y, id })) });
  return {
    down: (...points: At[]) => send('touchStart', points),
    move: (...points: At[]) => send('touchMove', points),
    up: (...left: At[]) => send(left.length === 0 ? 'touchEnd' : 'touchStart', left),
    async drag(from: At, to: At) {
      await send('touchStart', [from]);
      for (const share of [0.25, 0.5, 0.75, 1]) {
        await send('touchMove', [[from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]]);
      }
      await send('touchEnd', []);
    },
    async tap(at: At) {
      await send('touchStart', [at]);
      await send('touchEnd', []);
    },
  };
}

const thing = (page: Page, name: RegExp) =>
  page.getByRole('list', { name: 'Things of the plan' }).getByRole('button', { name });
const chosen = (page: Page) =>
  page.getByRole('list', { name: 'Things of the plan' }).getByRole('button', { pressed: true });

/** The fixture with the tray folded, and where a place of the plan (mm) is on the screen: by the ring of the kitchen
 *  island, which is 1800 mm wide, 5 px outside it. */
async function boardOf(page: Page, step: string, { open = true } = {}) {
  if (open) await flatOpen(page);
  await stepOpen(page, step);
  await page.getByRole('button', { name: 'Fold away' }).click();
  await expect(page.locator('.tray')).toHaveCount(0);
  const at = async ([x, y]: At): Promise<At> => {
    await thing(page, /^Kitchen island/).focus();
    const ring = await thing(page, /^Kitchen island/).boundingBox();
    await page.getByRole('application').focus();
    if (ring === null) throw new Error('the kitchen island has no place');
    const pxPerMm = (ring.width - 10) / 1800;
    return [ring.x + 5 + (x - 6300) * pxPerMm, ring.y + 5 + (y - 1500) * pxPerMm];
  };
  return { at, hand: await handOf(page) };
}

const scale = (page: Page) => page.locator('.scale-bar').textContent();
const undo = (page: Page) => page.getByRole('button', { name: 'Undo', exact: true });

test('two fingers zoom and move the board', async ({ page }) => {
  const { at, hand } = await boardOf(page, 'Floor');
  const before = await at([0, 0]);
  const [x, y] = await at([6000, 3000]);
  await hand.down([x - 40, y], [x + 40, y]);
  await hand.move([x - 60, y], [x + 60, y]);
  await hand.move([x - 80, y], [x + 80, y]);
  await hand.up();
  // Twice as near, about the middle between the fingers.
  const zoomed = await at([0, 0]);
  expect(zoomed[0]).toBeCloseTo(x - (x - before[0]) * 2, -1);
  const [cx, cy] = [x, y];
  await hand.down([cx - 40, cy], [cx + 40, cy]);
  await hand.move([cx - 40, cy + 60], [cx + 40, cy + 60]);
  await hand.up();
  expect((await at([0, 0]))[1]).toBeCloseTo(zoomed[1] + 60, -1);
});

test('two fingers move the board with a drawing tool in hand and set no corner', async ({ page }) => {
  const { at, hand } = await boardOf(page, 'Floor');
  await page.getByRole('button', { name: 'Room', exact: true }).tap();
  const hint = page.locator('.bar-hint');
  await expect(hint).toContainText('first corner');
  const [x, y] = await at([6000, 2000]);
  const before = await at([0, 0]);
  await hand.down([x, y]);
  await hand.move([x + 12, y]);
  await hand.down([x + 12, y], [x + 100, y]);
  await hand.move([x + 12, y + 40], [x + 100, y + 40]);
  await hand.up();
  await expect(hint).toContainText('first corner');
  expect((await at([0, 0]))[1]).toBeCloseTo(before[1] + 40, -1);
  // One finger sets one.
  await hand.tap([x, y]);
  await expect(hint).toContainText('next corner');
  const moved = await at([0, 0]);
  await hand.down([x, y], [x + 80, y]);
  await hand.move([x, y + 30], [x + 80, y + 30]);
  await hand.up();
  expect((await at([0, 0]))[1]).toBeCloseTo(moved[1] + 30, -1);
  await page.keyboard.press('Escape');
  await expect(hint).toContainText('first corner');
});

test('a tap chooses, a finger that rests adds, and a drag of what is chosen moves it', async ({ page }) => {
  const { at, hand } = await boardOf(page, 'Obstacles');
  const island = await at([6450, 2300]);
  await hand.tap(island);
  await expect(chosen(page)).toHaveText(/^Kitchen island/);
  await hand.down(await at([200, 3000]));
  await expect(chosen(page)).toHaveCount(2);
  await hand.up();
  await expect(chosen(page)).toHaveCount(2);
  await hand.drag(island, [island[0] - 30, island[1] + 20]);
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Move 2 things/);
});

test('a finger that rests on free floor and is dragged on draws a box; one that is lifted leaves nothing', async ({
  page,
}) => {
  const { at, hand } = await boardOf(page, 'Obstacles');
  const free = await at([13800, -700]);
  const hint = page.locator('.bar-hint');
  await hand.down(free);
  await expect(hint).toContainText('Draw the box');
  await hand.up();
  await expect(hint).toContainText('Press a thing');
  await hand.down(free);
  await expect(hint).toContainText('Draw the box');
  await hand.move(await at([10000, 4000]));
  await hand.move(await at([8900, 8200]));
  await hand.up();
  await expect(chosen(page)).toHaveText([/^Bedroom, room/, /^Doorway between Bedroom and Hall/]);
});

test('a corner is dragged by a finger that misses it by 20 px', async ({ page }) => {
  const { at, hand } = await boardOf(page, 'Obstacles');
  await hand.tap(await at([6450, 2300]));
  await expect(chosen(page)).toHaveText(/^Kitchen island/);
  const [x, y] = await at([6300, 1500]);
  await hand.drag([x - 14, y - 14], [x - 44, y - 34]);
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Move a corner of Kitchen island/);
});

test('a small thing that is chosen is moved by a finger on its middle', async ({ page }) => {
  const { at, hand } = await boardOf(page, 'Obstacles');
  const bookcase = await at([200, 2800]);
  await hand.tap(bookcase);
  await expect(chosen(page)).toHaveText(/^Bookcase/);
  await hand.drag(bookcase, [bookcase[0] + 60, bookcase[1] + 40]);
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Move Bookcase/);
});

test('a finger that moves over nothing chosen moves the board', async ({ page }) => {
  const { at, hand } = await boardOf(page, 'Obstacles');
  const from = await at([2000, 6000]);
  const before = await at([0, 0]);
  const zoom = await scale(page);
  await hand.drag(from, [from[0] + 80, from[1] + 40]);
  expect((await at([0, 0]))[0]).toBeCloseTo(before[0] + 80, -1);
  expect(await scale(page)).toBe(zoom);
});

test('a pen draws a room from corner to corner', async ({ page }) => {
  const { at } = await boardOf(page, 'Floor');
  await page.getByRole('button', { name: 'Room', exact: true }).tap();
  await page.getByLabel('Drawn').selectOption('As a rectangle');
  const session = await page.context().newCDPSession(page);
  const pen = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', [x, y]: At) =>
    session.send('Input.dispatchMouseEvent', {
      type,
      x,
      y,
      button: 'left',
      buttons: type === 'mouseReleased' ? 0 : 1,
      clickCount: 1,
      pointerType: 'pen',
    });
  const [from, to] = [await at([400, 8200]), await at([4000, 10500])];
  await pen('mousePressed', from);
  await pen('mouseMoved', [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]);
  await pen('mouseMoved', to);
  await pen('mouseReleased', to);
  await expect(thing(page, /^Room 5, room/)).toHaveCount(1);
});

test('a set-out point is dragged by a finger that misses it by 20 px', async ({ page }) => {
  await flatOpen(page);
  await stepOpen(page, 'Coverings');
  await page.getByRole('button', { name: 'Lay tiles' }).tap();
  const { at, hand } = await boardOf(page, 'Coverings', { open: false });
  const [x, y] = await at([0, 0]);
  const to = await at([5320, 4320]);
  await hand.drag([x + 14, y + 14], [to[0] + 14, to[1] + 14]);
  await expect(undo(page)).toHaveAttribute('title', /^Undo: Move the set-out point/);
  await stepOpen(page, 'Coverings');
  await expect(page.getByLabel('Set-out, across', { exact: true })).toHaveValue('5320');
});
