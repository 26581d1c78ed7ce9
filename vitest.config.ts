import { defineConfig } from 'vitest/config';

// Apart from vite.config.ts: the tests read the sources as they are and need nothing of the page's build.
export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    exclude: ['tests/browser/**'],
    environment: 'node',
    testTimeout: 20_000,
    passWithNoTests: false,
  },
});
