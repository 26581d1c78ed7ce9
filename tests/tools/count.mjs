/** How many tests ended how. A check of a tool counts as one test.
 *  @typedef {{ readonly passed: number, readonly failed: number, readonly skipped: number }} Count */

/** @param {readonly Count[]} counts @returns {Count} */
export function countSum(counts) {
  /** @param {keyof Count} key */
  const sum = (key) => counts.reduce((total, count) => total + count[key], 0);
  return { passed: sum('passed'), failed: sum('failed'), skipped: sum('skipped') };
}

/** The closing line: `12 passed, 0 failed` and, where there are any, `, 3 skipped`.
 *  @param {Count} count */
export function countLine({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}

/** A run that ended badly without naming a failed test, or that ran none, is itself one failure.
 *  @param {Count} count @param {boolean} endedWell @returns {Count} */
function countWithRun(count, endedWell) {
  const silent = count.failed === 0 && (!endedWell || count.passed + count.skipped === 0);
  return silent ? { ...count, failed: 1 } : count;
}

/** @typedef {{ testResults: { status: string, assertionResults: { status: string, fullName: string }[] }[] }} UnitReport */

/** From the JSON report of the unit tests. A file that could not be loaded holds no tests and is one failure.
 *  @param {UnitReport | null} report @param {boolean} endedWell exit status 0 @returns {Count} */
export function countUnitTests(report, endedWell) {
  const files = report?.testResults ?? [];
  const tests = files.flatMap((file) => file.assertionResults);
  const broken = files.filter((file) => file.status === 'failed' && file.assertionResults.length === 0);
  const passed = tests.filter((test) => test.status === 'passed').length;
  const failed = tests.filter((test) => test.status === 'failed').length;
  const skipped = tests.length - passed - failed;
  return countWithRun({ passed, failed: failed + broken.length, skipped }, endedWell);
}

/** @param {UnitReport | null} report */
export function skippedUnitTests(report) {
  const tests = (report?.testResults ?? []).flatMap((file) => file.assertionResults);
  return tests.filter((test) => test.status !== 'passed' && test.status !== 'failed').map((test) => test.fullName);
}

/** @typedef {{ suites?: BrowserSuite[], specs?: { title: string }[] }} BrowserSuite
 *  @typedef {BrowserSuite & { stats?: { expected: number, unexpected: number, flaky: number, skipped: number } }} BrowserReport */

/** From the JSON report of the browser tests. One that passed only at a second try has failed.
 *  @param {BrowserReport | null} report @param {boolean} endedWell exit status 0 @returns {Count} */
export function countBrowserTests(report, endedWell) {
  const { expected = 0, unexpected = 0, flaky = 0, skipped = 0 } = report?.stats ?? {};
  return countWithRun({ passed: expected, failed: unexpected + flaky, skipped }, endedWell);
}

/** Tests that a report lists, run or not.
 *  @param {BrowserSuite} suite @returns {number} */
export function countListed(suite) {
  return (suite.specs ?? []).length + (suite.suites ?? []).reduce((total, inner) => total + countListed(inner), 0);
}
