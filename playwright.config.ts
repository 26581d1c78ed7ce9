import { defineConfig } from '@playwright/test';
import { chromiumArgs, findChromium } from './tests/tools/chromium.mjs';

const port = 4187;
const executablePath = findChromium();

// Against the built app, as it is served to a person.
export default defineConfig({
  testDir: 'tests/app',
  testMatch: '**/*.spec.ts',
  fullyParallel: true,
  workers: 2,
  timeout: 30_000,
  reporter: 'list',
  use: {
    baseURL: `http://127.0.0.1:${port}/`,
    locale: 'en-GB',
    reducedMotion: 'reduce',
    launchOptions: { args: [...chromiumArgs], ...(executablePath === undefined ? {} : { executablePath }) },
  },
  webServer: {
    command: `node src/cli/start.mjs --no-open --port ${port}`,
    url: `http://127.0.0.1:${port}/`,
    reuseExistingServer: false,
  },
});
