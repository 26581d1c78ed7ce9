import { defineConfig } from '@playwright/test';
import { chromiumArgs, findChromium } from './tests/tools/chromium.mjs';

// A port of its own for each run, so that two checkouts can be tested at once; the workers inherit it.
process.env.BROWSER_TEST_PORT ??= String(20_000 + (process.pid % 20_000));
const port = process.env.BROWSER_TEST_PORT;
const executablePath = findChromium();

export default defineConfig({
  testDir: 'tests/browser',
  workers: 1,
  forbidOnly: true,
  use: {
    baseURL: `http://127.0.0.1:${port}/`,
    trace: 'retain-on-failure',
    launchOptions: { args: chromiumArgs, ...(executablePath === undefined ? {} : { executablePath }) },
  },
  // The tests see the page as `npm start` builds and serves it.
  webServer: {
    command: `node src/cli/start.mjs --no-open --port ${port}`,
    url: `http://127.0.0.1:${port}/`,
    timeout: 120_000,
    gracefulShutdown: { signal: 'SIGTERM', timeout: 2000 },
  },
});
