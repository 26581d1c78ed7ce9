import { expect, type Locator, type Page, test } from '@playwright/test';
import { flatOpen, rows, stepOpen } from './board.ts';

// Smaller, the card lies over some of the figures, which are left out then.
test.use({ viewport: { width: 1440, height: 900 } });

/** Chooses a thing in the list of its step. */
async function thingChoose(page: Page, step: string, list: string, words: string): Promise<void> {
  await stepOpen(page, step);
  await rows(page, list).filter({ hasText: words }).first().click();
}

const figure = (page: Page, name: string): Locator => page.getByRole('button', { name, exact: true });
const field = (page: Page, name: string): Locator => page.getByRole('textbox', { name, exact: true });

/** Presses the figure of a dimension and types another length. */
async function dimensionPut(page: Page, name: string, shown: string, typed: string): Promise<void> {
  await figure(page, `${name}: ${shown}`).click();
  await field(page, name).fill(typed);
  await field(page, name).press('Enter');
}

test('a side of a room is typed, the room follows at once, and undo puts it back', async ({ page }) => {
  await flatOpen(page);
  await thingChoose(page, 'Floor', 'Rooms', 'Bath');
  await dimensionPut(page, 'Side 1 of Bath', '3680 mm', '3500');
  // Side 3 lies opposite: the room is a rectangle still.
  await expect(figure(page, 'Side 1 of Bath: 3500 mm')).toBeFocused();
  await expect(figure(page, 'Side 3 of Bath: 3500 mm')).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(figure(page, 'Side 1 of Bath: 3680 mm')).toBeVisible();
  await expect(page.getByText('Undone: Set side 1 of Bath.')).toBeVisible();
});

test('a length with a unit of its own is taken, and one that cannot be is refused in its place', async ({ page }) => {
  await flatOpen(page);
  await thingChoose(page, 'Floor', 'Rooms', 'Living room');
  await dimensionPut(page, 'Side 5 of Living room', '5200 mm', '5,3 m');
  await expect(figure(page, 'Side 5 of Living room: 5300 mm')).toBeVisible();
  await figure(page, 'Side 5 of Living room: 5300 mm').click();
  await field(page, 'Side 5 of Living room').fill('wide');
  await field(page, 'Side 5 of Living room').press('Enter');
  await expect(page.getByRole('alert')).toHaveText('Enter a length, such as 4500.');
  await expect(field(page, 'Side 5 of Living room')).toBeFocused();
  await field(page, 'Side 5 of Living room').fill('0');
  await field(page, 'Side 5 of Living room').press('Enter');
  await expect(page.getByRole('alert')).toHaveText('Two corners would be one.');
});

test('Escape in the field puts the figure back and keeps the thing chosen', async ({ page }) => {
  await flatOpen(page);
  await thingChoose(page, 'Floor', 'Rooms', 'Living room');
  await figure(page, 'Side 5 of Living room: 5200 mm').click();
  await field(page, 'Side 5 of Living room').fill('4000');
  await field(page, 'Side 5 of Living room').press('Escape');
  await expect(figure(page, 'Side 5 of Living room: 5200 mm')).toBeFocused();
  await expect(page.getByRole('region', { name: 'Living room' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Undo' })).toHaveAttribute('title', /flat\.json|Open/);
});

test('a column stands where its typed distance from the wall puts it', async ({ page }) => {
  await flatOpen(page);
  await thingChoose(page, 'Obstacles', 'In the floor', 'Column c1');
  await dimensionPut(page, 'From column c1 downwards', '3200 mm', '3000');
  await expect(figure(page, 'From column c1 downwards: 3000 mm')).toBeVisible();
  await expect(figure(page, 'From column c1 upwards: 4300 mm')).toBeVisible();
});

test('a doorway slides to a typed distance from the end of its wall, and not beyond it', async ({ page }) => {
  await flatOpen(page);
  await thingChoose(page, 'Openings', 'Doorways', 'Living room');
  const end = 'From doorway d1 to the right to the end of its wall';
  await dimensionPut(page, end, '2100 mm', '1800');
  await expect(figure(page, `${end}: 1800 mm`)).toBeVisible();
  // Wall of 3680 mm, doorway of 900 mm.
  await dimensionPut(page, end, '1800 mm', '5000');
  await expect(page.getByRole('alert')).toHaveText('The wall ends there: at most 2780 mm.');
});

test('dimensions are gone through and typed by keys alone', async ({ page }) => {
  await flatOpen(page);
  await stepOpen(page, 'Floor');
  await page.getByRole('listbox', { name: 'Rooms' }).focus();
  await page.keyboard.press('ArrowDown');
  await expect(figure(page, 'Side 1 of Living room: 9000 mm')).toBeVisible();
  await page.getByRole('application').focus();
  await page.keyboard.press('Tab');
  await expect(figure(page, 'Side 1 of Living room: 9000 mm')).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(field(page, 'Side 1 of Living room')).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(field(page, 'Side 2 of Living room')).toBeFocused();
  await page.keyboard.type('4300');
  await page.keyboard.press('Shift+Tab');
  await expect(field(page, 'Side 1 of Living room')).toBeFocused();
  await expect(figure(page, 'Side 2 of Living room: 4300 mm')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(figure(page, 'Side 1 of Living room: 9000 mm')).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(page.locator('.dimension')).toHaveCount(0);
  await expect(page.getByRole('application')).toBeFocused();
});

test('a found joint that is given a distance is a drawn one from then on, and chosen still', async ({ page }) => {
  await flatOpen(page);
  await thingChoose(page, 'Joints', 'Joints', 'Intermediate');
  await dimensionPut(page, 'From joint J1 to the left', '5200 mm', '5000');
  await expect(figure(page, 'From drawn joint x1 to the left: 5000 mm')).toBeVisible();
});

test('no figure lies over another, over the card, or beyond the board', async ({ page }) => {
  await flatOpen(page);
  for (const [step, list, words] of [
    ['Floor', 'Rooms', 'Living room'],
    ['Obstacles', 'In the floor', 'Kitchen island'],
    ['Openings', 'Doorways', 'Living room'],
  ] as const) {
    await thingChoose(page, step, list, words);
    await expect(page.locator('.dimension').first()).toBeVisible();
    const boxes = await page.locator('.dimension, .card').evaluateAll((all) =>
      all.map((each) => {
        const { left, top, right, bottom } = each.getBoundingClientRect();
        return { left, top, right, bottom };
      }),
    );
    const meet = boxes.flatMap((a, i) =>
      boxes.slice(i + 1).filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom),
    );
    expect(meet).toEqual([]);
  }
});

test('while a tool that draws is in hand there are none', async ({ page }) => {
  await flatOpen(page);
  await thingChoose(page, 'Floor', 'Rooms', 'Living room');
  await expect(page.locator('.dimension').first()).toBeVisible();
  await page.getByRole('group', { name: 'Tools' }).getByRole('button', { name: 'Room' }).click();
  await expect(page.locator('.dimension')).toHaveCount(0);
});

test('they follow a side that is dragged, and cannot be typed over until it is let go', async ({ page }) => {
  await flatOpen(page);
  await thingChoose(page, 'Floor', 'Rooms', 'Bedroom');
  const side = await figure(page, 'Side 3 of Bedroom: 4080 mm').boundingBox();
  const [width, height] = [side?.width ?? 0, side?.height ?? 0];
  // The handle in the middle of the side stands below its figure.
  const [x, y] = [(side?.x ?? 0) + width / 2, (side?.y ?? 0) + height + 8];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y + 30, { steps: 4 });
  await expect(page.locator('.dimension.read').first()).toBeVisible();
  await expect(page.locator('button.dimension')).toHaveCount(0);
  await expect(page.locator('.dimension.read').filter({ hasText: '7600 mm' })).toHaveCount(0);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect(page.locator('button.dimension').filter({ hasText: '7600 mm' }).first()).toBeVisible();
});
