import AxeBuilder from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';
import { flatOpen, rows, stepOpen } from './board.ts';

const sizes = [
  { width: 1440, height: 900, touch: false },
  { width: 1024, height: 768, touch: false },
  { width: 820, height: 1180, touch: true },
];
/** All steps on the largest board; the smaller ones rearrange the same parts. */
const stepsAt = (width: number) => (width === 1440 ? steps : ['Floor']);
const steps = ['Floor', 'Openings', 'Obstacles', 'Joints', 'Coverings', 'Papers'];

async function axeFinds(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`);
}

for (const { width, height, touch } of sizes) {
  for (const colorScheme of ['light', 'dark'] as const) {
    test.describe(`${width} x ${height}, ${colorScheme}`, () => {
      test.use({ viewport: { width, height }, colorScheme, hasTouch: touch });

      for (const step of stepsAt(width)) {
        test(`axe finds nothing at ${step}`, async ({ page }) => {
          await flatOpen(page);
          await stepOpen(page, step);
          expect(await axeFinds(page)).toEqual([]);
        });
      }

      test('axe finds nothing with a joint chosen', async ({ page }) => {
        await flatOpen(page);
        await stepOpen(page, 'Joints');
        await rows(page, 'Joints').first().click();
        await page.getByText('How the movement is found').click();
        await expect(page.getByText('Physics textbooks')).toBeVisible();
        expect(await axeFinds(page)).toEqual([]);
      });

      test('axe finds nothing with the key open', async ({ page }) => {
        await flatOpen(page);
        await page.getByRole('button', { name: 'Key', exact: true }).click();
        await expect(page.getByRole('region', { name: 'Key to the drawing' })).toBeVisible();
        expect(await axeFinds(page)).toEqual([]);
      });

      test('axe finds nothing on an empty sheet', async ({ page }) => {
        await flatOpen(page);
        await page.getByRole('button', { name: 'Empty sheet' }).click();
        await expect(page.getByRole('heading', { name: 'An empty sheet' })).toBeVisible();
        expect(await axeFinds(page)).toEqual([]);
      });

      test('nothing stands outside the window or is too small to be met', async ({ page }) => {
        await flatOpen(page);
        await stepOpen(page, 'Joints');
        await expect(rows(page, 'Joints').first()).toBeVisible();
        const least = touch ? 44 : 24;
        const small = await page.locator('button:visible, select:visible, input:visible').evaluateAll(
          (elements, [side, wide]) =>
            elements
              .map((element) => ({
                name: element.textContent || element.getAttribute('aria-label'),
                box: element.getBoundingClientRect(),
              }))
              .filter(({ box }) => box.height < side - 2 || box.width < side - 2 || box.left < 0 || box.right > wide)
              .map(({ name, box }) => `${name} ${box.width} x ${box.height} at ${box.left}`),
          [least, width] as const,
        );
        expect(small).toEqual([]);
      });
    });
  }
}

test('the Tab key reaches every control and every list, and the focus is always seen', async ({ page }) => {
  await flatOpen(page);
  await expect(rows(page, 'Joints').first()).toBeVisible();
  const wanted = await page
    .locator('button:visible:not([disabled]), select:visible, input:visible, [tabindex="0"]:visible')
    .evaluateAll((elements) => elements.map((element, i) => element.setAttribute('data-stop', String(i))).length);
  const reached = new Set<string>();
  for (let presses = 0; presses < wanted + 5; presses++) {
    await page.keyboard.press('Tab');
    const stop = await page.evaluate(() => {
      const element = document.activeElement;
      const style = element === null ? null : getComputedStyle(element);
      const ring = element?.closest('.entry') ?? element;
      const seen = style?.outlineStyle !== 'none' || (ring !== null && getComputedStyle(ring).outlineStyle !== 'none');
      return { id: element?.getAttribute('data-stop') ?? null, seen };
    });
    if (stop.id === null) continue;
    expect(stop.seen, `stop ${stop.id}`).toBe(true);
    reached.add(stop.id);
  }
  expect(reached.size).toBe(wanted);
});

test('a list is walked by the arrow keys, the board moved, zoomed and fitted by its own', async ({ page }) => {
  await flatOpen(page);
  await expect(rows(page, 'Bays').first()).toBeVisible();
  await page.getByRole('listbox', { name: 'Bays' }).focus();
  await page.keyboard.press('ArrowDown');
  await expect(rows(page, 'Bays').nth(0)).toHaveAttribute('aria-selected', 'true');
  await page.keyboard.press('ArrowDown');
  await expect(rows(page, 'Bays').nth(1)).toHaveAttribute('aria-selected', 'true');
  await page.keyboard.press('End');
  await expect(rows(page, 'Bays').last()).toHaveAttribute('aria-selected', 'true');

  const drawing = () => page.evaluate(() => document.querySelectorAll('canvas')[0]?.toDataURL());
  await page.getByRole('application').focus();
  // what the last key has lit may still be on its way to the canvas
  let fitted = await drawing();
  await expect
    .poll(async () => {
      const before = fitted;
      await page.waitForTimeout(100);
      fitted = await drawing();
      return fitted === before;
    })
    .toBe(true);
  await page.keyboard.press('ArrowLeft');
  await expect.poll(drawing).not.toBe(fitted);
  await page.keyboard.press('+');
  await page.keyboard.press('Home');
  await expect.poll(drawing).toBe(fitted);
});
