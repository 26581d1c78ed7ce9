// Everything that must hold, and one closing line: `N passed, N failed`. `--no-browser` leaves the browser out.
// Plain Node: it installs the packages that everything else needs.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { installMissing } from '../src/cli/install.mjs';
import { chromiumMissing, findChromium } from './tools/chromium.mjs';
import {
  countBrowserTests,
  countLine,
  countListed,
  countSum,
  countUnitTests,
  skippedUnitTests,
} from './tools/count.mjs';

/** @typedef {import('./tools/count.mjs').Count} Count */

const root = fileURLToPath(new URL('..', import.meta.url));
const reports = mkdtempSync(join(tmpdir(), 'screed-bays-'));

/** A step that hangs is stopped and has failed. */
const longestStepMs = 20 * 60_000;

/** @type {readonly { readonly name: string, readonly command: readonly string[] }[]} */
const checks = [
  { name: 'types', command: ['typescript/bin/tsc', '-p', '.', '--noEmit'] },
  { name: 'lint and format', command: ['@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '--colors=off'] },
  { name: 'generated files are fresh', command: ['tsx/dist/cli.mjs', 'src/cli/generate.ts', '--check'] },
  { name: 'no dead exports', command: ['knip/bin/knip.js'] },
];

/** Runs a script of an installed package with this Node.
 *  @param {readonly string[]} command path inside node_modules, then arguments @param {NodeJS.ProcessEnv} [environment]
 *  @returns {Promise<{ endedWell: boolean, output: string }>} */
function runPackage([script = '', ...args], environment = {}) {
  return new Promise((done) => {
    const child = spawn(process.execPath, [join(root, 'node_modules', script), ...args], {
      cwd: root,
      env: { ...process.env, FORCE_COLOR: undefined, NO_COLOR: '1', ...environment },
      stdio: ['ignore', 'pipe', 'pipe'],
      timeout: longestStepMs,
    });
    let output = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding('utf8').on('data', (text) => {
        output += text;
      });
    }
    child.on('error', (error) => done({ endedWell: false, output: `${output}${error.message}\n` }));
    child.on('close', (status) => done({ endedWell: status === 0, output }));
  });
}

/** @param {string} file @returns the JSON in it, or null where the run left none */
function readReport(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return null;
  }
}

/** @param {string} name @param {Count} count @param {number} startMs @param {string} output shown where something failed */
function report(name, count, startMs, output) {
  const seconds = ((performance.now() - startMs) / 1000).toFixed(1);
  console.log(`${count.failed > 0 ? 'FAILED' : 'ok    '}  ${name}: ${countLine(count)} (${seconds} s)`);
  if (count.failed > 0) console.log(`${output.trimEnd()}\n`);
}

/** @returns {Promise<Count>} */
async function runChecks() {
  const counts = [];
  for (const { name, command } of checks) {
    const start = performance.now();
    const { endedWell, output } = await runPackage(command);
    const count = { passed: endedWell ? 1 : 0, failed: endedWell ? 0 : 1, skipped: 0 };
    report(name, count, start, output);
    counts.push(count);
  }
  return countSum(counts);
}

/** @returns {Promise<Count>} */
async function runUnitTests() {
  const start = performance.now();
  const file = join(reports, 'unit.json');
  const command = ['vitest/vitest.mjs', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
  const { endedWell, output } = await runPackage(command);
  const found = readReport(file);
  const count = countUnitTests(found, endedWell);
  report('unit, case, property and architecture tests', count, start, output);
  for (const name of skippedUnitTests(found)) console.log(`        skipped: ${name}`);
  return count;
}

/** @returns {Promise<Count>} */
async function runBrowserTests() {
  const start = performance.now();
  const file = join(reports, 'browser.json');
  const environment = { PLAYWRIGHT_JSON_OUTPUT_NAME: file };
  const command = ['@playwright/test/cli.js', 'test', '--reporter=list,json'];
  if (findChromium() === undefined) {
    const { output } = await runPackage([...command, '--list'], environment);
    const listed = readReport(file);
    const count = { passed: 0, failed: listed === null ? 1 : 0, skipped: countListed(listed ?? {}) };
    report('browser tests', count, start, output);
    console.log(`        skipped, all of them. ${chromiumMissing}`);
    return count;
  }
  const { endedWell, output } = await runPackage(command, environment);
  const count = countBrowserTests(readReport(file), endedWell);
  report('browser tests', count, start, output);
  return count;
}

async function run() {
  const counts = await Promise.all([runChecks(), runUnitTests()]);
  if (!process.argv.includes('--no-browser')) counts.push(await runBrowserTests());
  const total = countSum(counts);
  console.log(`\n${countLine(total)}`);
  process.exitCode = total.failed > 0 ? 1 : 0;
}

process.on('exit', () => rmSync(reports, { recursive: true, force: true }));
if (installMissing(root)) await run();
else process.exitCode = 1;
