import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/** @param {string} file */
function isProgram(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** The system's Chromium: the variable CHROMIUM, or the first of the usual names on the path. Undefined: none here. */
export function findChromium() {
  if (process.env.CHROMIUM) return process.env.CHROMIUM;
  const folders = (process.env.PATH ?? '').split(delimiter).filter(Boolean);
  const names = ['chromium', 'chromium-browser', 'google-chrome'];
  return names.flatMap((name) => folders.map((folder) => join(folder, name))).find(isProgram);
}

export const chromiumMissing =
  'There is no Chromium on this machine. Install it (Debian: apt-get install chromium) or name one: CHROMIUM=/path npm test';

/** No sandbox: it does not start as root, as in most build machines. The rest keeps it off the network. */
export const chromiumArgs = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
