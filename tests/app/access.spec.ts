import AxeBuilder from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';
import { flatOpen, rows, settled, stepOpen } from './board.ts';

const sizes = [
  { width: 1440, height: 900, touch: false },
  { width: 1024, height: 768, touch: false },
  { width: 820, height: 1180, touch: true },
  { width: 390, height: 844, touch: true },
];
/** All steps on the largest board; the smaller ones rearrange the same parts. */
const stepsAt = (width: number) => (width === 1440 ? steps : ['Floor']);
const steps = ['Floor', 'Openings', 'Obstacles', 'Joints', 'Coverings', 'Papers'];

async function axeFinds(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`);
}

/** Controls below 24 px, or 44 px by touch. A tick box has its label as target, a field its frame. */
function tooSmall(page: Page, within: string, touch: boolean): Promise<readonly string[]> {
  return page.locator(`${within} :is(button, select, input, summary, a):visible`).evaluateAll(
    (elements, least) =>
      elements
        .map((element) => {
          const target = (element.matches('[type=checkbox]') ? element.closest('label') : null) ?? element;
          return {
            name: element.getAttribute('aria-label') ?? element.textContent,
            box: target.getBoundingClientRect(),
          };
        })
        .filter(({ box }) => box.height < least || box.width < least)
        .map(({ name, box }) => `${name} ${box.width} x ${box.height}`),
    touch ? 44 : 24,
  );
}

async function tilesLay(page: Page): Promise<void> {
  await stepOpen(page, 'Coverings');
  await page.getByRole('button', { name: 'Lay tiles' }).click();
  await expect(page.getByLabel('Set-out, across', { exact: true })).toBeVisible();
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
        // On a telephone the tray lies over the card.
        if (width === 390) await page.getByRole('button', { name: 'Fold away' }).click();
        await page.getByText('How the movement is found').click();
        await expect(page.getByText('Physics textbooks')).toBeVisible();
        expect(await axeFinds(page)).toEqual([]);
      });

      test('axe finds nothing with tiles laid, a field open and the ways compared, and every control is large enough', async ({
        page,
      }) => {
        await flatOpen(page);
        await tilesLay(page);
        await page.getByLabel('Own tiles for').selectOption({ label: 'Bath' });
        await page.getByRole('button', { name: 'Give it own tiles' }).click();
        await page.getByRole('button', { name: 'Compare the ways' }).click();
        await expect(page.getByRole('table', { name: 'Ways to agree' })).toBeVisible();
        expect(await axeFinds(page)).toEqual([]);
        expect(await tooSmall(page, '.tray', touch)).toEqual([]);
        const tray = await page
          .locator('.tray .part')
          .evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth);
        expect(tray).toBe(0);
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

      test('axe finds nothing with any tool in hand, and every control of it is large enough', async ({ page }) => {
        test.setTimeout(150_000);
        await flatOpen(page);
        await tilesLay(page);
        for (const step of ['Floor', 'Openings', 'Obstacles', 'Joints', 'Coverings']) {
          await stepOpen(page, step);
          for (const tool of await page.getByRole('group', { name: 'Tools' }).getByRole('button').all()) {
            await tool.click();
            await expect(tool).toHaveAttribute('aria-pressed', 'true');
            expect(await tooSmall(page, 'section.bar', touch)).toEqual([]);
            // All tools have the same parts: on the largest board each is looked at, elsewhere the one with the most.
            const isAll = width === 1440 && colorScheme === 'light';
            if (isAll || (await tool.textContent()) === 'Column') expect(await axeFinds(page)).toEqual([]);
          }
        }
      });

      test('the help sheet is found in order and its controls large enough', async ({ page }) => {
        await flatOpen(page);
        await page.getByRole('button', { name: 'Help', exact: true }).click();
        await expect(page.getByRole('dialog', { name: 'Help' })).toBeVisible();
        expect(await axeFinds(page)).toEqual([]);
        expect(await tooSmall(page, 'dialog', touch)).toEqual([]);
        const box = await page.getByRole('dialog', { name: 'Help' }).boundingBox();
        expect(box?.x).toBeGreaterThanOrEqual(0);
        expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(height);
      });

      test('axe finds nothing with a thing chosen by keys', async ({ page }) => {
        await flatOpen(page);
        await page.getByRole('button', { name: /^Kitchen island, joinery/ }).focus();
        await page.keyboard.press('Enter');
        await expect(page.getByRole('region', { name: 'Kitchen island' })).toBeVisible();
        expect(await axeFinds(page)).toEqual([]);
      });

      test('nothing stands outside the window or is too small to be met', async ({ page }) => {
        await flatOpen(page);
        await stepOpen(page, 'Joints');
        await expect(rows(page, 'Joints').first()).toBeVisible();
        expect(await tooSmall(page, 'body', touch)).toEqual([]);
        const outside = await page.locator('button:visible, select:visible, input:visible').evaluateAll((elements) =>
          elements
            .filter((element) => element.closest('.bar-tools, .bar-options') === null)
            .map((element) => ({ name: element.outerHTML.slice(0, 120), box: element.getBoundingClientRect() }))
            .filter(({ box }) => box.left < 0 || box.right > window.innerWidth)
            .map(({ name }) => name),
        );
        expect(outside).toEqual([]);
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
  const fitted = await settled(drawing);
  await page.keyboard.press('ArrowLeft');
  await expect.poll(drawing).not.toBe(fitted);
  await page.keyboard.press('+');
  await page.keyboard.press('Home');
  await expect.poll(drawing).toBe(fitted);
});

test.describe('where the system asks for no motion', () => {
  test('nothing moves by itself', async ({ page }) => {
    await flatOpen(page);
    await page.getByRole('button', { name: 'Fold away' }).click();
    await stepOpen(page, 'Floor');
    await page.getByRole('button', { name: 'Help', exact: true }).click();
    const moving = await page.evaluate(() =>
      [...document.querySelectorAll('*')]
        .flatMap((element) => {
          const { transitionDuration, animationDuration, animationName } = getComputedStyle(element);
          const times = [...transitionDuration.split(','), ...(animationName === 'none' ? [] : [animationDuration])];
          return times.some((time) => Number.parseFloat(time) > 0) ? [element.className.toString()] : [];
        })
        .slice(0, 5),
    );
    expect(moving).toEqual([]);
    expect(await page.evaluate(() => document.getAnimations().length)).toBe(0);
  });
});
