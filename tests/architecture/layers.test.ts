import { describe, expect, it } from 'vitest';
import { countImports, folderOf, layers, layerViolations } from './layers.ts';
import { readSources } from './source.ts';

const sources = readSources();

function problems(path: string, text: string): string[] {
  return layerViolations([{ path, text }]).map((found) => found.problem);
}

describe('levels of the source', () => {
  it('holds to the table of levels everywhere', () => {
    expect(layerViolations(sources)).toEqual([]);
  });

  it('has every folder of src in the table', () => {
    const folders = new Set(sources.map((source) => folderOf(source.path)));
    expect([...folders].filter((folder) => layers[folder] === undefined)).toEqual([]);
  });

  it('reads imports at all', () => {
    const lines = sources.flatMap((source) => source.text.match(/^(import|export) .*from '/gm) ?? []);
    const read = sources.reduce((total, source) => total + countImports(source), 0);
    expect(lines.length).toBeGreaterThan(20);
    expect(read).toBeGreaterThanOrEqual(lines.length);
  });
});

describe('what the table refuses', () => {
  it.each([
    ['an import from above', 'src/floor/a.ts', "import { x } from '../bays/x.ts';"],
    ['a type from above', 'src/plan/a.ts', "import type { X } from '../analysis/x.ts';"],
    ['a type named inline', 'src/plan/a.ts', "export type Y = import('../analysis/x.ts').X;"],
    ['something handed on', 'src/geometry/a.ts', "export * from '../plan/x.ts';"],
    ['a type handed on', 'src/geometry/a.ts', "export type { X } from '../plan/x.ts';"],
    ['an import at run time', 'src/floor/a.ts', "export const x = () => import('../documents/x.ts');"],
    ['a path that is put together', 'src/floor/a.ts', "export const x = (n: string) => import('../geometry/' + n);"],
    ['a neighbour on the third level', 'src/bays/a.ts', "import { x } from '../movement/x.ts';"],
    ['the editor in the command line', 'src/cli/a.ts', "import { x } from '../app/x.ts';"],
    ['the command line in the editor', 'src/app/a.tsx', "import { x } from '../../src/cli/x.ts';"],
    ['a worker from below', 'src/analysis/a.ts', "export const u = new URL('../app/w.ts', import.meta.url);"],
    ['files of a pattern from above', 'src/plan/a.ts', "export const x = import.meta.glob('../app/*.ts');"],
    ['files of a pattern that is put together', 'src/app/a.ts', "export const x = import.meta.glob(['./*.ts']);"],
    ['a screen library below the editor', 'src/documents/a.ts', "import { Layer } from 'konva';"],
    ['a part of a screen library', 'src/documents/a.ts', "import { createRoot } from 'react-dom/client';"],
    ['a store below the editor', 'src/analysis/a.ts', "import { createStore } from 'zustand/vanilla';"],
    ['files below the command line', 'src/documents/a.ts', "import { readFileSync } from 'node:fs';"],
    ['a package of a look-alike name', 'src/plan/a.ts', "import { z } from 'zod-other';"],
    ['the reference data past the plan', 'src/bays/a.ts', "import rules from '../../shared/rule-sets.json';"],
    ['the tests', 'src/plan/a.ts', "import { x } from '../../tests/x.ts';"],
    ['a folder that the table does not know', 'src/helpers/a.ts', "import { x } from '../geometry/x.ts';"],
  ])('refuses %s', (_what, path, text) => {
    expect(problems(path, text)).toHaveLength(1);
  });

  it.each([
    ['a lower level', 'src/floor/a.ts', "import { x } from '../geometry/x.ts';"],
    ['its own folder', 'src/bays/a.ts', "import { x } from './x.ts';"],
    ['its own folder from a folder inside', 'src/app/panels/a.tsx', "import { x } from '../state/x.ts';"],
    ['the reference data in the plan', 'src/plan/a.ts', "import rules from '../../shared/rule-sets.json';"],
    [
      'an import that is only spoken of',
      'src/geometry/a.ts',
      "// import { x } from '../plan/x.ts';\nexport const x = 1;",
    ],
    ['an import inside a text', 'src/geometry/a.ts', `export const x = "import { x } from '../plan/x.ts'";`],
  ])('lets through %s', (_what, path, text) => {
    expect(problems(path, text)).toEqual([]);
  });
});
