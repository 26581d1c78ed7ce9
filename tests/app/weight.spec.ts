import { gzipSync } from 'node:zlib';
import { expect, test } from '@playwright/test';
import { rows } from './board.ts';

/** What may come over the line before the first floor is read, kB of 1000 bytes. */
const mostCodeKB = 250;
const mostFontKB = 80;

test('the first view loads at most 250 kB of scripts and styles, worker included, and 80 kB of fonts', async ({
  page,
}) => {
  const sizes: Promise<{ readonly path: string; readonly kB: number }>[] = [];
  page.context().on('response', (response) => {
    const { pathname } = new URL(response.url());
    sizes.push(
      response.body().then((body) => ({
        path: pathname,
        // A font is compressed already.
        kB: (pathname.endsWith('.woff2') ? body.length : gzipSync(body, { level: 9 }).length) / 1000,
      })),
    );
  });
  await page.goto('./');
  await expect(rows(page, 'Bays').first()).toBeVisible();
  await page.evaluate(() => document.fonts.ready);
  const loaded = await Promise.all(sizes);
  const sumKB = (ending: RegExp) => loaded.filter(({ path }) => ending.test(path)).reduce((sum, { kB }) => sum + kB, 0);

  expect(loaded.map(({ path }) => path)).toContainEqual(expect.stringMatching(/worker-.*\.js$/));
  const [codeKB, fontKB] = [sumKB(/\.(js|css)$/), sumKB(/\.woff2$/)];
  test
    .info()
    .annotations.push({ type: 'first view', description: `${codeKB.toFixed(1)} kB, fonts ${fontKB.toFixed(1)} kB` });
  expect(codeKB).toBeGreaterThan(0);
  expect(codeKB).toBeLessThanOrEqual(mostCodeKB);
  expect(fontKB).toBeGreaterThan(0);
  expect(fontKB).toBeLessThanOrEqual(mostFontKB);
});
