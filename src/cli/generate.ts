import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import * as z from 'zod/mini';
import { planFileSchema } from '../plan/schema.ts';
import { referencePage } from './reference-page.ts';

/** Writes the files that are made from the code and the reference data. With `--check` it writes nothing and fails where one is stale. */

const root = fileURLToPath(new URL('../../', import.meta.url));

const schema = {
  title: 'Plan file of screed-bays, version 1',
  ...z.toJSONSchema(planFileSchema, { io: 'input', unrepresentable: 'any' }),
};

const files: Readonly<Record<string, string>> = {
  'shared/plan.schema.json': `${JSON.stringify(schema, null, 2)}\n`,
  'docs/reference.md': referencePage(),
};

function textOf(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}

const stale = Object.entries(files).filter(([name, text]) => textOf(root + name) !== text);

if (process.argv.includes('--check')) {
  for (const [name] of stale) console.error(`${name} is stale: run npm run generate`);
  process.exitCode = stale.length > 0 ? 1 : 0;
} else {
  for (const [name, text] of stale) {
    mkdirSync(dirname(root + name), { recursive: true });
    writeFileSync(root + name, text);
    console.log(`wrote ${name}`);
  }
}
