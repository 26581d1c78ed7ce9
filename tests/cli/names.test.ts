import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { documentStems } from '../../src/cli/document-names.ts';
import { commandOf } from '../../src/cli/options.ts';

describe('names of documents', () => {
  it.each([
    ['plans/ground floor.json', 'ground-floor'],
    ['../../etc/passwd', 'passwd'],
    ['.hidden.json', 'hidden'],
    ['a:b*c?.JSON', 'a-b-c'],
    ['Küche.json', 'Küche'],
    ['con.json', 'plan-con'],
    ['....json', 'plan'],
    ['<>.json', 'plan'],
  ])('%s becomes %s', (file, stem) => {
    expect(documentStems([file])).toEqual([stem]);
  });

  it('are never the same for two plans, also where the disk does not tell capitals apart', () => {
    const names = fc.array(
      fc.constantFrom('a.json', 'A.json', 'x/a.json', 'a-2.json', 'a-2-2.json', 'a-3.json', '?.json'),
      { maxLength: 12 },
    );
    fc.assert(
      fc.property(names, (files) => {
        const stems = documentStems(files).map((stem) => stem.toLowerCase());
        expect(new Set(stems).size).toBe(files.length);
      }),
      { seed: 2 },
    );
  });

  it('are safe whatever the plan is called', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', minLength: 1 }), (file) => {
        const stem = documentStems([file])[0] ?? '';
        expect(stem).toMatch(/^[\p{L}\p{N}\p{M}_][\p{L}\p{N}\p{M}._-]*$/u);
        expect(stem.length).toBeLessThanOrEqual(80);
      }),
      { seed: 6 },
    );
  });
});

describe('options', () => {
  it('may stand anywhere', () => {
    const options = {
      files: ['a', 'b'],
      json: true,
      out: 'd',
      date: null,
      compare: null,
      quick: true,
      stress: false,
      agree: true,
    };
    expect(commandOf(['a', '--out', 'd', '--quick', 'b', '--agree', '--json'])).toEqual({ kind: 'run', options });
    expect(commandOf(['--out=d', '--json', '--agree', '--quick', 'a', 'b'])).toEqual({ kind: 'run', options });
  });

  it('take a day of the calendar that all papers can reckon from, and name the years of it where a day lies outside', () => {
    for (const date of ['1900-01-01', '2027-03-01', '9000-12-31'])
      expect(commandOf(['a', '--date', date])).toMatchObject({ kind: 'run', options: { date } });
    for (const date of ['1899-12-31', '9001-01-01', '9999-12-31', '2027-02-29', 'today', ''])
      expect(commandOf([`--date=${date}`, 'a'])).toEqual({
        kind: 'misused',
        message: '--date needs a day of the years 1900 to 9000, such as 2027-03-01',
      });
  });

  it('compare one plan with one that came before it, and nothing else', () => {
    expect(commandOf(['--compare', 'old.json', 'new.json'])).toMatchObject({
      options: { files: ['new.json'], compare: 'old.json' },
    });
    expect(commandOf(['new.json', '--compare=old.json', '--out', 'd'])).toMatchObject({
      options: { compare: 'old.json' },
    });
    for (const args of [
      ['new.json', '--compare'],
      ['a', 'b', '--compare', 'c'],
      ['a', '--compare', 'c', '--json'],
    ])
      expect(commandOf(args).kind).toBe('misused');
  });
});
