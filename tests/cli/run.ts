import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Writable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { baysRun } from '../../src/cli/bays-run.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Ran {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** What the command line does in a folder of the user's, in this process: a process of its own loads the whole program anew. */
export async function bays(args: readonly string[], folder = root): Promise<Ran> {
  const [out, err] = [textStream(), textStream()];
  const status = await baysRun(args, { folder, out: out.stream, err: err.stream });
  return { status, out: out.text(), err: err.text() };
}

/** A stream that keeps what is written to it, part by part. */
export function textStream() {
  const parts: string[] = [];
  const stream = new Writable({
    decodeStrings: false,
    write(part: string, _, done) {
      parts.push(part);
      done();
    },
  });
  return { stream, parts, text: () => parts.join('') };
}

/** The command line as the script of package.json starts it, in a process of its own. */
export function baysStarted(
  args: readonly string[],
  cwd = root,
  stopAfterBytes = Number.POSITIVE_INFINITY,
): Promise<Ran> {
  const { npm_lifecycle_event: _script, INIT_CWD: _caller, ...env } = process.env;
  const loader = fileURLToPath(import.meta.resolve('tsx'));
  const child = spawn(process.execPath, ['--import', loader, join(root, 'src/cli/bays.ts'), ...args], { cwd, env });
  let out = '';
  let err = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    out += text;
    if (out.length > stopAfterBytes) child.stdout.destroy();
  });
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    err += text;
  });
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (status) => resolve({ status, out, err }));
  });
}

/** A folder that is gone after the work. */
export async function inFolder(work: (folder: string) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'bays-'));
  try {
    await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A plan of one room, 4 x 3 m, with an island that has no insulation under it where `held`. */
export function planText(name: string, held = false): string {
  const rooms = [
    {
      id: 'r1',
      name: 'Hall',
      outline: [
        [0, 0],
        [4000, 0],
        [4000, 3000],
        [0, 3000],
      ],
    },
  ];
  const joinery = held
    ? [
        {
          id: 'j1',
          name: 'Island',
          outline: [
            [1000, 1000],
            [2000, 1000],
            [2000, 2000],
            [1000, 2000],
          ],
          under: 'no-insulation',
          fixedThrough: false,
        },
      ]
    : [];
  return JSON.stringify({ format: 'screed-bays/plan', version: 1, name, rooms, joinery });
}

export function write(folder: string, name: string, text: string | Uint8Array): string {
  writeFileSync(join(folder, name), text);
  return name;
}
