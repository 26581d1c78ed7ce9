// Makes docs/screenshot.png anew: the built app as it opens, at 1440 x 900, light. `npm run screenshot`
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { serveFolder } from '../../src/cli/server.mjs';
import { chromiumArgs, chromiumMissing, findChromium } from './chromium.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const file = join(root, 'docs', 'screenshot.png');

/** The page once it has stopped changing: two pictures half a second apart are the same.
 *  @param {import('@playwright/test').Page} page */
async function settledPicture(page) {
  await page.locator('canvas').first().waitFor();
  let last = await page.screenshot();
  for (let tries = 0; tries < 40; tries += 1) {
    await page.waitForTimeout(500);
    const next = await page.screenshot();
    if (next.equals(last)) return next;
    last = next;
  }
  throw new Error('The page went on changing for 20 seconds');
}

const executablePath = findChromium();
if (executablePath === undefined) throw new Error(chromiumMissing);
const { status } = spawnSync(
  process.execPath,
  [join(root, 'node_modules/vite/bin/vite.js'), 'build', '--logLevel', 'error'],
  {
    cwd: root,
    stdio: 'inherit',
  },
);
if (status !== 0) throw new Error('The build failed');

const server = await serveFolder(join(root, 'dist'), 0);
const browser = await chromium.launch({ executablePath, args: chromiumArgs });
try {
  const viewport = { width: 1440, height: 900 };
  const page = await browser.newPage({ viewport, colorScheme: 'light', locale: 'en-GB', reducedMotion: 'reduce' });
  await page.goto(server.address);
  const picture = await settledPicture(page);
  mkdirSync(join(root, 'docs'), { recursive: true });
  writeFileSync(file, picture);
  console.log(`${file}: ${Math.round(picture.length / 1000)} kB`);
} finally {
  await browser.close();
  await server.close();
}
