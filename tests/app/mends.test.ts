import { expect, test } from 'vitest';
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
