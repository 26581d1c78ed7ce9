import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { planRead } from '../../src/plan/read.ts';
import { readSource, root } from '../architecture/source.ts';

const readme = readSource('README.md').text;

describe('the README', () => {
  it('shows a plan file that can be read', () => {
    const [, example = ''] = readme.match(/```json\n([\s\S]*?)```/) ?? [];
    expect(planRead(example)).toMatchObject({ kind: 'plan', file: { name: 'Two rooms' } });
  });

  it('and the notes for contributors name only commands that there are', () => {
    const { scripts }: { scripts: Record<string, string> } = JSON.parse(readSource('package.json').text);
    const texts = readme + readSource('DEVELOPERS.md').text;
    const named = [...texts.matchAll(/npm run (?:--silent )?(\w+)/g)].map(([, name = '']) => name);
    expect(named).toContain('bays');
    expect(named.filter((name) => scripts[name] === undefined)).toEqual([]);
  });

  it('links only to files that there are', () => {
    const links = [...readme.matchAll(/\]\((?!https?:)([^)]+)\)/g)].map(([, link = '']) => link);
    expect(links).toContain('LICENSE');
    expect(links.filter((link) => !existsSync(join(root, link)))).toEqual([]);
  });
});
