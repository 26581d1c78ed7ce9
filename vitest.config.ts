import { defineConfig } from 'vitest/config';

// Apart from vite.config.ts: the tests read the sources as they are and need nothing of the page's build.
export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    setupFiles: ['tests/seed.ts'],
    environment: 'node',
    // One thread serves many files and keeps what it has loaded: half the time. No test leaves anything behind in a module.
    pool: 'threads',
    isolate: false,
    // Left to itself it keeps one core free, of two.
    maxWorkers: '100%',
    testTimeout: 20_000,
    passWithNoTests: false,
  },
});
