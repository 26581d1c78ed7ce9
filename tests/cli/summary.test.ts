import { expect, it } from 'vitest';
import { summaryText } from '../../src/cli/summary.ts';
import { tileLines } from '../../src/cli/tile-summary.ts';
import { namesOf } from '../../src/documents/words.ts';
import type { TileFieldReport } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { analysisOf, box, finding, planOf, room } from '../documents/fixture.ts';
import { paperSource } from '../documents/paper-fixture.ts';
import { fieldReport, jointedReport, tiledAnalysis, tiledPlan } from '../documents/tile-fixture.ts';

/** The line of a finding, without its severity. */
function findingLine(message: string, refs: readonly string[], plan: Plan = planOf()): string {
  const analysis = analysisOf({ findings: [finding('fault', null, message, refs)] });
  const lines = summaryText(paperSource(plan, analysis), 'plan.json').split('\n');
  return lines.find((line) => line.startsWith('  fault'))?.slice('  fault    '.length) ?? '';
}

it('says what a finding is about by name, a bay or joint by its number and its rooms', () => {
  const { joints } = analysisOf();
  const across = joints.find(({ bays }) => bays.includes('B3'))?.id ?? '';
  expect(findingLine('Something is wrong.', ['r2', 'j1', 'c1', 'B3', across])).toBe(
    `Something is wrong. [Kitchen; Serving counter; c1; B3 Kitchen; ${across} Hall \u2013 Kitchen]`,
  );
});

it('does not say again what the words of the finding name', () => {
  expect(findingLine('Kitchen is bad at column c1.', ['r2', 'c1'])).toBe('Kitchen is bad at column c1.');
  expect(findingLine('Column c12 is bad in the Kitchenette.', ['c1', 'r2'])).toBe(
    'Column c12 is bad in the Kitchenette. [c1; Kitchen]',
  );
});

it('keeps the id of a room behind a name that several rooms have', () => {
  const rooms = [room('r1', 'Office', box(0, 0, 4000, 4000)), room('r2', 'Office', box(5000, 0, 4000, 4000))];
  expect(findingLine('Office is bad.', ['r2'], planOf({ rooms }))).toBe('Office is bad. [Office (r2)]');
});

it('leaves the name of an only room away', () => {
  const rooms = [room('r1', 'Hall', box(0, 0, 4000, 4000))];
  expect(findingLine('Something is wrong.', ['B1'], planOf({ rooms }))).toBe('Something is wrong. [B1]');
});

it('has a column for pieces in the perimeter joint only where there are any', () => {
  const lines = (report: TileFieldReport) => tileLines(tiledAnalysis([report]), namesOf(tiledPlan(), tiledAnalysis()));
  expect(lines(fieldReport())[1]).toMatch(/Whole {2}\+ pieces {2}- from off-cuts/u);
  const [, heads, row] = lines(jointedReport);
  expect(heads).toMatch(/Whole {2}\+ pieces {2}- into perimeter joint {2}- from off-cuts {2}= to lay/u);
  expect(row).toMatch(/ 90 +60 +6 +20 +124 +137 +35 +54 +7 +5 +96$/u);
});

it('says what to order: net, with what is allowed for, and in packs', () => {
  const lines = summaryText(paperSource(planOf(), analysisOf()), 'plan.json').split('\n');
  const at = lines.indexOf('To order');
  expect(lines[at + 1]).toMatch(/^ +Net +With allowance +Order$/u);
  // one joint of 4.00 m: two bars of 2 m and one to spare, 6 m
  const profile = lines.slice(at).find((line) => line.includes('intermediate joints'));
  expect(profile).toMatch(/^ {2}Joint profile, intermediate joints +10 mm wide, .+ 4\.00 +6\.00 +m +3 +bars of 2 m$/u);
});
