import { describe, expect, it } from 'vitest';
import { countBrowserTests, countLine, countListed, countSum, countUnitTests } from './count.mjs';

function unitReport(...files: readonly (readonly string[])[]) {
  return {
    testResults: files.map((statuses) => ({
      status: statuses.includes('failed') ? 'failed' : 'passed',
      assertionResults: statuses.map((status, i) => ({ status, fullName: `test ${i}` })),
    })),
  };
}

describe('the closing line', () => {
  it('adds up the parts and names skipped tests only where there are any', () => {
    const sum = countSum([
      { passed: 2, failed: 0, skipped: 0 },
      { passed: 3, failed: 1, skipped: 0 },
    ]);
    expect(countLine(sum)).toBe('5 passed, 1 failed');
    expect(countLine({ ...sum, skipped: 4 })).toBe('5 passed, 1 failed, 4 skipped');
  });
});

describe('counting unit tests', () => {
  it('counts each test of each file once', () => {
    const report = unitReport(['passed', 'failed'], ['passed', 'pending', 'todo']);
    expect(countUnitTests(report, false)).toEqual({ passed: 2, failed: 1, skipped: 2 });
  });

  it('counts a file that could not be loaded as a failure', () => {
    const report = { testResults: [{ status: 'failed', assertionResults: [] }, ...unitReport(['passed']).testResults] };
    expect(countUnitTests(report, false)).toEqual({ passed: 1, failed: 1, skipped: 0 });
  });

  it('takes a bad end with no failed test for a failure', () => {
    expect(countUnitTests(unitReport(['passed']), false).failed).toBe(1);
  });

  it('takes no report and no test for a failure', () => {
    expect(countUnitTests(null, true).failed).toBe(1);
    expect(countUnitTests(unitReport(), true).failed).toBe(1);
  });
});

describe('counting browser tests', () => {
  it('takes a test that passed only at a second try for a failure', () => {
    const report = { stats: { expected: 4, unexpected: 1, flaky: 1, skipped: 2 } };
    expect(countBrowserTests(report, false)).toEqual({ passed: 4, failed: 2, skipped: 2 });
  });

  it('takes a browser that never started for a failure', () => {
    expect(countBrowserTests(null, false).failed).toBe(1);
    expect(countBrowserTests({ stats: { expected: 0, unexpected: 0, flaky: 0, skipped: 0 } }, false).failed).toBe(1);
  });

  it('counts the tests of a list, however deep they stand', () => {
    const spec = { title: 'a' };
    expect(countListed({ suites: [{ specs: [spec], suites: [{ specs: [spec, spec] }] }] })).toBe(3);
  });
});
