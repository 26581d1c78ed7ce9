import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { headerViolations, lengthViolations, lockViolations, machineViolations } from './files.ts';
import { filesUnder, readSource, readSources, root } from './source.ts';

const sources = readSources();
const developers = readSource('DEVELOPERS.md').text;

/** Everything that is kept as text, the lock file apart. */
function projectTexts(): string[] {
  const skipped = [
    'node_modules',
    'dist',
    'coverage',
    'test-results',
    'playwright-report',
    '.git',
    'package-lock.json',
  ];
  const text = /(^|\/)[^/.]+$|\.(ts|tsx|mjs|mts|json|md|css|html|svg|txt|csv|editorconfig|gitignore|npmrc)$/;
  return readdirSync(root, { withFileTypes: true })
    .filter((entry) => !skipped.includes(entry.name))
    .flatMap((entry) => (entry.isDirectory() ? filesUnder(entry.name) : [entry.name]))
    .filter((path) => text.test(path));
}

describe('files of the project', () => {
  it('stay under 400 lines in src, or DEVELOPERS.md says why', () => {
    expect(lengthViolations(sources, developers)).toEqual([]);
    const long = { path: 'src/bays/long.ts', text: 'x\n'.repeat(401) };
    expect(lengthViolations([long], developers)).toHaveLength(1);
    expect(lengthViolations([long], 'Long: `src/bays/long.ts`, a table.')).toEqual([]);
    expect(lengthViolations([{ ...long, text: 'x\n'.repeat(400) }], developers)).toEqual([]);
  });

  it('begin each folder of src with a header that says what it accepts, guarantees and does', () => {
    const folders = [...new Set(sources.map(({ path }) => path.split('/').slice(0, 2).join('/')))];
    const present = new Set(filesUnder('src'));
    const found = folders.flatMap((folder) => {
      const path = `${folder}/README.md`;
      return headerViolations(folder, present.has(path) ? readSource(path).text : null);
    });
    expect(found).toEqual([]);
    expect(headerViolations('src/bays', null)).toHaveLength(1);
    expect(headerViolations('src/bays', 'Accepts: a floor.\nSteps: none.\n')).toHaveLength(1);
    expect(headerViolations('src/bays', 'Accepts a floor, gives bays.\n')).toHaveLength(1);
    expect(headerViolations('src/bays', 'Accepts a floor, gives bays.\n\n1. Cut it.\n')).toEqual([]);
  });

  it('tie the packages to no download address', () => {
    expect(lockViolations(readSource('package-lock.json'))).toEqual([]);
    expect(
      lockViolations({ path: 'package-lock.json', text: '{\n  "resolved": "https://a.example/x.tgz"\n}' }),
    ).toHaveLength(1);
  });

  it("name no path of anybody's machine", () => {
    const texts = projectTexts();
    expect(texts).toContain('tests/architecture/files.ts');
    expect(texts).toContain('.ci/run');
    expect(texts.map(readSource).flatMap(machineViolations)).toEqual([]);
    const path = ['', 'home', 'somebody', 'plan.json'].join('/');
    expect(machineViolations({ path: 'docs/a.md', text: `See ${path}.` })).toHaveLength(1);
    expect(machineViolations({ path: 'docs/a.md', text: 'See src/home/plan.ts and ../work/x.' })).toEqual([]);
  });
});
