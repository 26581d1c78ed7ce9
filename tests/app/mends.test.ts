import { describe, expect, test } from 'vitest';
import { createAnalyser } from '../../src/analysis/analyser.ts';
import { mendsOf } from '../../src/app/card/mends.ts';
import { planEmpty } from '../../src/plan/empty.ts';
import { planResolve } from '../../src/plan/resolve.ts';
import type { PlanFile } from '../../src/plan/schema.ts';

/** A hall of 16 x 5 m: its joint and its edges move much where a strip or a sealant takes next to nothing. */
function mendsOfHall(change: Partial<PlanFile>, code: string) {
  const outline = [
    [0, 0],
    [16_000, 0],
    [16_000, 5000],
    [0, 5000],
  ] as const;
  const file: PlanFile = { ...planEmpty('Hall'), rooms: [{ id: 'r', name: 'Hall', outline }], ...change };
  const plan = planResolve(file);
  const analysis = createAnalyser().analyse(plan, { onProgress: () => undefined });
  if (analysis === null) throw new Error('no analysis');
  const finding = analysis.findings.find((each) => each.code === code);
  if (finding === undefined) throw new Error(`no ${code}`);
  return mendsOf(finding, { plan, analysis });
}

test('a mend asks for no width that its field refuses, and says that none within reach does', () => {
  // 5 mm at 5 % of the thickness would be 100 mm; fields take up to 50.
  const strip = mendsOfHall({ edgeStrip: { thicknessMm: 10, usableTravel: 0.05 } }, 'strip-travel');
  expect(strip).toEqual([{ words: 'No strip of up to 50 mm takes so much', edit: null }]);
  const profile = mendsOfHall({ jointProfile: { widthMm: 5, usableTravel: 0.01 } }, 'profile-overrun');
  expect(profile).toEqual([{ words: 'No profile of up to 100 mm takes so much', edit: null }]);
});

test('where no width of sealant does, a better class is offered if that does', () => {
  const mends = mendsOfHall({ sealant: { widthMm: 8, capability: 0.03 } }, 'sealant-narrow');
  expect(mends.map(({ words }) => words)).toEqual(['Use sealant class 25']);
});

test('a width within reach is offered as a whole number', () => {
  const [mend] = mendsOfHall({ edgeStrip: { thicknessMm: 5, usableTravel: 0.5 } }, 'strip-travel');
  expect(mend?.words).toBe('Use a strip of 10 mm');
});

describe('tiles', () => {
  const tiles = { lengthMm: 600, widthMm: 600 } as const;

  test('of too narrow a grout, too large an offset or an unknown bond are mended by one figure', () => {
    const mend = (change: object, code: string) =>
      mendsOfHall({ tiles: { ...tiles, ...change } }, code).map(({ words, tiles: done }) => [words, done]);
    expect(mend({ groutMm: 1 }, 'tile-grout-narrow')).toEqual([
      ['Widen the grout lines to 3 mm', { of: null, change: { groutMm: 3 } }],
    ]);
    expect(mend({ bond: 'half' }, 'tile-offset-large')).toEqual([
      ['Use an offset of a third', { of: null, change: { bond: 'third' } }],
    ]);
    expect(mend({ groutMm: 650 }, 'tile-grout-wide')).toEqual([
      ['Narrow the grout lines to 3 mm', { of: null, change: { groutMm: 3 } }],
    ]);
    expect(mend({ bond: 'herringbone' }, 'tile-herringbone-square')).toEqual([
      ['Use the straight bond', { of: null, change: { bond: 'straight' } }],
    ]);
    expect(mend({ bond: 'basket' }, 'tile-bond-unknown')).toEqual([
      ['Use the straight bond', { of: null, change: { bond: 'straight' } }],
    ]);
  });

  test('of a field are mended in that field', () => {
    const tileFields = [{ id: 't1', rooms: ['r'], ...tiles, groutMm: 1 }];
    const [mend] = mendsOfHall({ tiles, tileFields }, 'tile-grout-narrow');
    expect(mend?.tiles).toEqual({ of: 't1', change: { groutMm: 3 } });
  });

  test('of a field that names no room are taken away with it', () => {
    const [mend] = mendsOfHall({ tiles, tileFields: [{ id: 't1', rooms: [], ...tiles }] }, 'tile-field-empty');
    expect([mend?.words, mend?.tiles]).toEqual(['Take the field away', { away: 't1' }]);
  });

  test('over a joint that was found off the grout bring it there by the aim of the layout, unless that is the aim', () => {
    const [mend] = mendsOfHall({ tiles }, 'tile-joint-off-grout');
    expect(mend?.words).toBe('Move the joints to grout lines');
    expect(mend?.edit?.(planEmpty('Hall')).layout).toEqual({ aim: 'grout-lines' });
  });
});
