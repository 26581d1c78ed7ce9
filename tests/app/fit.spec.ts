import { expect, type Page, test } from '@playwright/test';
import { flatOpen, settled } from './board.ts';

/** The smallest upright box round what is drawn, and the board as far as no tray lies over it, px of the window. */
async function inkBox(page: Page) {
  return page.evaluate(() => {
    const canvas = document.querySelector('canvas');
    if (canvas === null) throw new Error('there is no drawing');
    const { width, height } = canvas;
    const data = canvas.getContext('2d')?.getImageData(0, 0, width, height).data ?? new Uint8ClampedArray();
    const ink = { left: width, top: height, right: 0, bottom: 0 };
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        if ((data[4 * (y * width + x) + 3] ?? 0) === 0) continue;
        ink.left = Math.min(ink.left, x);
        ink.right = Math.max(ink.right, x);
        ink.top = Math.min(ink.top, y);
        ink.bottom = Math.max(ink.bottom, y);
      }
    }
    const at = canvas.getBoundingClientRect();
    // On a narrow window the tray slides over the board.
    const tray = document.querySelector('.tray')?.getBoundingClientRect().left ?? at.right;
    const share = at.width / width;
    return {
      left: at.left + ink.left * share,
      right: at.left + ink.right * share,
      top: at.top + ink.top * share,
      bottom: at.top + ink.bottom * share,
      board: { left: at.left, top: at.top, right: Math.min(at.right, tray), bottom: at.bottom },
    };
  });
}

/** The drawing lies whole on the board and reaches nearly from side to side, or from head to foot. */
async function expectFitted(page: Page): Promise<void> {
  await expect
    .poll(async () => {
      const { board, ...ink } = await inkBox(page);
      const spare = [ink.left - board.left, board.right - ink.right, ink.top - board.top, board.bottom - ink.bottom];
      const across = spare[0] !== undefined && spare[0] < 60 && (spare[1] ?? 0) < 60;
      const down = (spare[2] ?? 0) < 80 && (spare[3] ?? 0) < 80;
      return Math.min(...spare) > 4 && (across || down);
    })
    .toBe(true);
}

const sizes = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 820, height: 1180 },
  { width: 1180, height: 820 },
];

for (const from of sizes) {
  test.describe(`${from.width} x ${from.height}`, () => {
    test.use({ viewport: from });

    test('a fitted drawing is fitted anew to a window of another size', async ({ page }) => {
      await flatOpen(page);
      await expectFitted(page);
      for (const size of sizes) {
        await page.setViewportSize(size);
        await expectFitted(page);
      }
    });

    test('nothing that stays on the board lies over a fitted drawing, and the app is named', async ({ page }) => {
      await flatOpen(page);
      await page.getByRole('button', { name: 'Key', exact: true }).click();
      await expectFitted(page);
      // The key takes room of the board: the drawing is fitted anew.
      const over = async () => {
        const { board: _, ...ink } = await inkBox(page);
        return page.locator('.foot > :visible, .key, .tray').evaluateAll(
          (elements, box) =>
            elements
              .filter((element) => {
                const { left, top, right, bottom } = element.getBoundingClientRect();
                return left < box.right && right > box.left && top < box.bottom && bottom > box.top;
              })
              .map(({ className }) => className),
          ink,
        );
      };
      await expect.poll(over).toEqual([]);
      await expect(page.getByRole('banner').getByText('Screed bays', { exact: true })).toBeVisible();
    });
  });
}

test('folding the tray away gives its room to the drawing', async ({ page }) => {
  await flatOpen(page);
  await expectFitted(page);
  await page.getByRole('button', { name: 'Fold away' }).click();
  await expectFitted(page);
});

test("a view of the user's own keeps its middle when the window takes another size", async ({ page }) => {
  await flatOpen(page);
  await page.getByRole('application').focus();
  for (const key of ['ArrowRight', 'ArrowRight', 'ArrowDown', '-', '-']) await page.keyboard.press(key);
  const offMiddle = async () => {
    const { board, ...ink } = await inkBox(page);
    return [
      Math.round((ink.left + ink.right - board.left - board.right) / 2),
      Math.round((ink.top + ink.bottom - board.top - board.bottom) / 2),
    ];
  };
  const before = await settled(offMiddle);
  await page.setViewportSize({ width: 1100, height: 700 });
  await expect
    .poll(async () => {
      const after = await offMiddle();
      return Math.max(...after.map((px, i) => Math.abs(px - (before[i] ?? 0))));
    })
    // Text at the rim of the drawing may be seated anew.
    .toBeLessThanOrEqual(8);
});
