import { spawnSync } from 'node:child_process';
import { existsSync, lstatSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** Whether the packages on disk are those of the lock file, told by the copy of it that npm leaves beside them, and all of them are
 *  there: those of development are left out where someone asked npm for that.
 *  @param {string} root the project's folder */
function packagesAreCurrent(root) {
  const installed = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(installed)) return false;
  if (statSync(installed).mtimeMs < statSync(join(root, 'package-lock.json')).mtimeMs) return false;
  const { devDependencies } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  return Object.keys(devDependencies).every((name) => existsSync(join(root, 'node_modules', name)));
}

/** Installs the packages of the lock file where they are missing or older than it. Plain Node: it runs before there is
 *  any package.
 *  @param {string} root the project's folder
 *  @returns {boolean} false where npm failed; it has said why */
export function installMissing(root) {
  if (packagesAreCurrent(root)) return true;
  const packages = join(root, 'node_modules');
  if (existsSync(packages) && lstatSync(packages).isSymbolicLink()) {
    // npm would empty the folder that the link leads to, and another checkout lives off it.
    console.error(
      'node_modules is a link, and older than package-lock.json: bring the folder behind it up to date by hand.',
    );
    return false;
  }
  console.log('Installing the packages of package-lock.json ...');
  const npm = process.env.npm_execpath;
  // Under `npm start` npm names its own script; run by hand it is the command of the path, a batch file on Windows.
  const [command, first] = npm?.endsWith('.js') ? [process.execPath, [npm]] : ['npm', []];
  const { status } = spawnSync(command, [...first, 'ci', '--include=dev', '--no-audit', '--no-fund'], {
    cwd: root,
    stdio: 'inherit',
    shell: command === 'npm' && process.platform === 'win32',
  });
  return status === 0;
}
