import { spawn, spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { installMissing } from './install.mjs';
import { serveFolder } from './server.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Builds every time: it takes about two seconds, and a test for "is the build current" would have to know every file
 *  that goes into it. */
function build() {
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  const { status } = spawnSync(process.execPath, [vite, 'build', '--logLevel', 'error'], {
    cwd: root,
    stdio: 'inherit',
  });
  return status === 0;
}

/** Opens the system's browser where somebody sits before a screen; the printed address serves everybody else.
 *  @param {string} address */
function openBrowser(address) {
  const screen = process.platform !== 'linux' || process.env.DISPLAY || process.env.WAYLAND_DISPLAY;
  if (!process.stdout.isTTY || !screen || process.env.CI) return;
  /** @type {Readonly<Record<string, [string, string[]]>>} */
  const openers = { darwin: ['open', [address]], win32: ['cmd', ['/c', 'start', '', address]] };
  const [command, args] = openers[process.platform] ?? ['xdg-open', [address]];
  // A missing opener is no fault: the address is on the screen.
  spawn(command, args, { stdio: 'ignore', detached: true })
    .on('error', () => undefined)
    .unref();
}

/** @param {string[]} args */
function readOptions(args) {
  const { values } = parseArgs({
    args,
    options: { port: { type: 'string', default: '4173' }, 'no-open': { type: 'boolean', default: false } },
  });
  const port = Number(values.port);
  if (!Number.isInteger(port) || port < 0 || port > 65_000) throw new Error(`--port ${values.port} is no port`);
  return { port, open: !values['no-open'] };
}

/** Installs what is missing, builds, serves, prints the address; ends at Ctrl-C.
 *  @param {string[]} args `--port N`, `--no-open` */
export async function serve(args) {
  try {
    const { port, open } = readOptions(args);
    if (!installMissing(root) || !build()) {
      process.exitCode = 1;
      return;
    }
    const { address, close } = await serveFolder(join(root, 'dist'), port);
    console.log(`\nScreed bays is at ${address}\nCtrl-C ends it.`);
    for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => void close());
    if (open) openBrowser(address);
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}
