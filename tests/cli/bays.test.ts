import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bays, baysStarted, inFolder, planText, write } from './run.ts';

const twoCores = 60_000;

describe('the command line', { timeout: twoCores }, () => {
  it('prints a summary with bays, quantities and the cautions', () =>
    inFolder(async (folder) => {
      const { status, out, err } = await baysStarted([write(folder, 'hall.json', planText('Reading rooms'))], folder);
      expect(err).toBe('');
      expect(status === 0 || status === 1).toBe(true);
      for (const part of [
        'Reading rooms (hall.json)',
        'Bays: 1',
        'Findings:',
        'Quantities, net',
        'structural engineer',
      ]) {
        expect(out).toContain(part);
      }
    }));

  it('prints analyses alone with --json, one a line, in the order given, null for what could not be read', () =>
    inFolder(async (folder) => {
      write(folder, 'a.json', planText('Ground floor'));
      write(folder, 'b.json', planText('Upper floor'));
      write(folder, 'cut.json', planText('Cut off').slice(0, 40));
      const { status, out, err } = await bays(['b.json', 'cut.json', '--json', 'a.json'], folder);
      const lines = out.split('\n');
      expect(lines).toHaveLength(4);
      expect(lines.slice(0, 3).map((line) => JSON.parse(line)?.plan)).toEqual([
        'Upper floor',
        undefined,
        'Ground floor',
      ]);
      expect(lines[1]).toBe('null');
      expect(status).toBe(2);
      expect(err).toMatch(/^cut\.json: .+\n$/u);
    }));

  it('says which file and which place in it is wrong, a line each', () =>
    inFolder(async (folder) => {
      const plan = JSON.parse(planText('Wrong')) as { rooms: { outline: unknown[] }[] };
      plan.rooms[0]?.outline.splice(2, 1, ['x', 3000]);
      write(folder, 'plan.json', JSON.stringify({ ...plan, colour: 'red' }));
      const { status, out, err } = await baysStarted(['plan.json'], folder);
      expect(status).toBe(2);
      expect(out).toBe('');
      expect(
        err
          .trimEnd()
          .split('\n')
          .map((line) => line.split(': ').slice(0, 2)),
      ).toEqual([
        ['plan.json', 'rooms[0].outline[2]'],
        ['plan.json', 'colour'],
      ]);
    }));

  it('does the other plans when one is missing, a folder or no text', () =>
    inFolder(async (folder) => {
      mkdirSync(join(folder, 'folder.json'));
      write(folder, 'binary.json', Uint8Array.of(0, 159, 146, 150));
      write(folder, 'good.json', planText('Good'));
      const { status, out, err } = await bays(
        ['--json', 'missing.json', 'folder.json', 'binary.json', 'good.json'],
        folder,
      );
      expect(status).toBe(2);
      expect(err).toBe('missing.json: does not exist\nfolder.json: is a folder\nbinary.json: is not text in UTF-8\n');
      expect(out.split('\n').map((line) => (line === '' ? '' : JSON.parse(line)?.plan))).toEqual([
        undefined,
        undefined,
        undefined,
        'Good',
        '',
      ]);
    }));

  it.each([
    [['--jsno', 'plan.json'], 'unknown option --jsno'],
    [[], 'no plan given'],
    [['--json'], 'no plan given'],
    [['plan.json', '--out'], '--out needs a folder'],
  ])('answers %j with the usage', async (args, message) => {
    const { status, out, err } = await bays(args);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(new RegExp(`^${message}\\n\\nUsage: `, 'u'));
  });

  it('explains itself with --help', async () => {
    const { status, out, err } = await bays(['--help']);
    expect([status, err]).toEqual([0, '']);
    for (const option of ['--json', '--out', '--quick', '--stress', '--agree']) expect(out).toContain(option);
  });

  it('prints tiles that add up: whole ones and pieces, less those from off-cuts, are the tiles to lay', async () => {
    const { out } = await bays(['demo-plans/1-dwelling.json']);
    const [heads, ...fields] = out.slice(out.indexOf('Tiles: ')).split('\n').slice(1, 4);
    expect(heads).toMatch(/Whole {2}\+ pieces {2}- from off-cuts {2}= to lay/u);
    const sums = fields.flatMap(
      (line) => /(\d+) +(\d+) +(\d+) +(\d+) +\d+ +[\d-]+ +(\d+) +\d+ +\d+ +[\d-]+$/u.exec(line) ?? [],
    );
    const [, whole, pieces, fromOffCuts, toLay, cut] = sums.map(Number) as [number, ...number[]];
    expect(Number(whole) + Number(pieces) - Number(fromOffCuts)).toBe(toLay);
    expect(pieces).toBeGreaterThan(Number(cut));
  });

  it('prints each way to bring joints and tiles together with its price, and none among analyses', async () => {
    const { out } = await bays(['--agree', 'demo-plans/1-dwelling.json']);
    for (const way of ['As it is', 'Move the joints', 'Move the set-out point', 'Move both']) {
      expect(out).toMatch(new RegExp(`^ {2}${way} +[\\d.]+ +\\d+ % +[\\d.]+ +\\d+ +\\d+ +[\\d.]+`, 'mu'));
    }
    expect(out).toMatch(/Joints within rooms m {2}Of these on grout {2}All joints off grout m/u);
    expect(out).toContain('a metre off a grout line counts as 2 m more');
    expect((await bays(['--agree', '--json', 'demo-plans/1-dwelling.json'])).out).toMatch(/^\{"format".*\}\n$/u);
  });

  it('takes what stands behind -- for files', () =>
    inFolder(async (folder) => {
      write(folder, '--odd.json', planText('Odd'));
      expect((await bays(['--json', '--quick', '--stress', '--', '--odd.json'], folder)).out).toContain('"plan":"Odd"');
    }));

  it('writes every document, never one plan over another, and none for a plan that could not be read', () =>
    inFolder(async (folder) => {
      mkdirSync(join(folder, 'east'));
      mkdirSync(join(folder, 'west'));
      write(folder, 'east/plan.json', planText('East'));
      write(folder, 'west/Plan.json', planText('West'));
      write(folder, 'bad.json', '{}');
      const { status, out } = await bays(
        ['--json', '--out', 'papers/all', 'east/plan.json', 'bad.json', 'west/Plan.json'],
        folder,
      );
      expect(status).toBe(2);
      const stems = ['plan', 'Plan-2'];
      const written = readdirSync(join(folder, 'papers/all'));
      const endsOf = (stem: string) =>
        written.flatMap((name) => (name.startsWith(`${stem}.`) ? [name.slice(stem.length + 1)] : [])).sort();
      const [ends = [], others = []] = stems.map(endsOf);
      expect(others).toEqual(ends);
      expect(written).toHaveLength(ends.length + others.length);
      for (const end of [
        'analysis.json',
        'papers.pdf',
        'plan.pdf',
        'plan.svg',
        'joints.csv',
        'tables.xlsx',
        'records.pdf',
      ])
        expect(ends).toContain(end);
      const analyses = stems.map((stem) => readFileSync(join(folder, `papers/all/${stem}.analysis.json`), 'utf8'));
      expect(analyses.join('null\n').replace('null\n', '')).toBe(out.replace('null\n', ''));
    }));

  it('says so where documents cannot be written', () =>
    inFolder(async (folder) => {
      write(folder, 'plan.json', planText('Plan'));
      write(folder, 'papers', 'a file');
      // under a file, in it, and where the system makes no folders
      for (const out of ['papers', 'papers/all', ...(existsSync('/proc/self') ? ['/proc/none/papers'] : [])]) {
        const { status, err } = await bays(['plan.json', '--out', out], folder);
        expect(status).toBe(2);
        expect(err).toContain(out);
      }
    }));

  it('does many plans on several threads in the order given, faults and bad ones among them', () =>
    inFolder(async (folder) => {
      const names = Array.from({ length: 40 }, (_, i) => `p${i}.json`);
      for (const [i, name] of names.entries())
        write(folder, name, i === 17 ? 'no plan' : planText(`Plan ${i}`, i === 3));
      const { status, out, err } = await baysStarted(['--json', ...names], folder);
      const plans = out
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line)?.plan);
      expect(plans).toEqual(names.map((_, i) => (i === 17 ? undefined : `Plan ${i}`)));
      expect(status).toBe(2);
      expect(err.trimEnd().split('\n')).toHaveLength(1);
      const alone = await bays(['--json', 'p3.json'], folder);
      expect(out.split('\n')[3]).toBe(alone.out.trimEnd());
    }));

  it('ends quietly when its reader has seen enough', () =>
    inFolder(async (folder) => {
      const names = Array.from({ length: 300 }, () => 'plan.json');
      write(folder, 'plan.json', planText('x'.repeat(20_000)));
      const { err } = await baysStarted(['--json', ...names], folder, 1000);
      expect(err).not.toMatch(/EPIPE|Error|\bat /u);
    }));
});

describe('two versions of a plan', { timeout: twoCores }, () => {
  it('are compared: what changed is printed, and written beside the other documents', () =>
    inFolder(async (folder) => {
      write(folder, 'old.json', planText('Hall'));
      const plan = JSON.parse(planText('Hall')) as object;
      write(folder, 'new.json', JSON.stringify({ ...plan, screed: { thicknessMm: 70 } }));
      const { status, out, err } = await bays(['--compare', 'old.json', 'new.json', '--out', 'docs'], folder);
      expect(err).toBe('');
      expect(status === 0 || status === 1).toBe(true);
      expect(out).toMatch(/Thickness of the screed +mm +65 +70/u);
      expect(out).toContain('Joints: no joint changed');
      expect(readFileSync(join(folder, 'docs', 'new.compare-settings.csv'), 'utf8')).toBe(
        'Of,Setting,Unit,Before,Now\r\nPlan,Thickness of the screed,mm,65,70\r\n',
      );
      expect(readdirSync(join(folder, 'docs'))).toContain('new.compare.svg');
    }));

  it('need an earlier one that can be read', () =>
    inFolder(async (folder) => {
      write(folder, 'new.json', planText('Hall'));
      const { status, out, err } = await bays(['--compare', 'missing.json', 'new.json'], folder);
      expect([status, out, err]).toEqual([2, '', 'missing.json: does not exist\n']);
    }));

  it.each([
    ['empty', '', 'old.json: is not JSON: the end of the file not expected at line 1, column 1\n'],
    [
      'of a version that is not read',
      '{"format":"screed-bays/plan","version":0,"name":"a","rooms":[]}',
      'old.json: version: is 0; version 1 is read\n',
    ],
    [
      'without a corner',
      '{"format":"screed-bays/plan","version":1,"name":"a","rooms":[{"id":"r","name":"r","outline":[[0,0],[1000],[0,900]]}]}',
      'old.json: rooms[0].outline[1]: ',
    ],
  ])('need an earlier one that is a plan: one that is %s is named, with the place in it', (_, text, said) =>
    inFolder(async (folder) => {
      write(folder, 'old.json', text);
      write(folder, 'new.json', planText('Hall'));
      const { status, out, err } = await bays(['--compare', 'old.json', 'new.json'], folder);
      expect([status, out]).toEqual([2, '']);
      expect(err.startsWith(said)).toBe(true);
      expect(err.trim().split('\n')).toHaveLength(1);
    }),
  );
});
