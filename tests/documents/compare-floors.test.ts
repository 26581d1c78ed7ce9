import { describe, expect, it } from 'vitest';
import { comparisonText } from '../../src/cli/compare-text.ts';
import { comparisonOf } from '../../src/documents/compare.ts';
import { comparisonPages } from '../../src/documents/compare-drawing.ts';
import { floorsInCommon } from '../../src/documents/compare-floors.ts';
import { comparisonForm } from '../../src/documents/compare-form.ts';
import { jointPairs } from '../../src/documents/compare-match.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { jointAt, rectangle } from './compare-fixture.ts';
import { textOffPage, textOverText } from './page-check.ts';
import { demoNames, demoText, hallAndStore, paperSourceOf } from './paper-fixture.ts';

describe('two plans that are not of one floor', () => {
  it.each([
    ['1-dwelling', '2-public-library'],
    ['2-public-library', '3-market-hall'],
    ['3-market-hall', '1-dwelling'],
  ] as const)('are called two different floors before anything else: %s and %s', (one, other) => {
    const comparison = comparisonOf(paperSourceOf(demoText(one)), paperSourceOf(demoText(other)));
    expect(comparison.caution).toMatch(/^These seem to be two different floors: /u);
    expect(comparisonForm(comparison).blocks.slice(0, 2)).toEqual([
      { kind: 'head', text: 'Caution' },
      { kind: 'text', lines: [comparison.caution] },
    ]);
    const [said] = comparisonText(comparison, { before: 'a.json', now: 'b.json' }).split('\n');
    expect(said).toBe(comparison.caution);
  });

  // by hand: hall 34 m round, store 13.8 m. A hall of 15 x 9 m with a store behind it at 9.1 m, both drawn from the same corner, has of the first hall the
  // wall of 12 m at the top and 5 m at the left, and of the store that on the left from 5.1 to 8 m: 19.9 of 47.8 m, 42 %. Of what was the one joint
  // across the hall and the one in the doorway one is where it was, moved by 1 m: a half. Together 46 %, as one floor that was drawn larger.
  it('are not found in a floor that was drawn larger, whose joint is near where it was', () => {
    const larger: PlanFile['rooms'] = [
      rectangle('hall', [0, 0], [15000, 9000]),
      rectangle('store', [0, 9100], [4000, 12000]),
    ];
    const wide = { screed: { limits: { areaM2: 200, lengthM: 30, aspect: 9 } } };
    const before = hallAndStore({ ...wide, ...jointAt(6000) });
    const now = hallAndStore({ ...wide, ...jointAt(7000), rooms: larger, doorways: [] });
    expect(
      floorsInCommon(
        before.plan,
        now.plan,
        jointPairs(before.analysis, now.analysis, (id) => id),
      )?.wallShare,
    ).toBeCloseTo(19.9 / 47.8, 3);
    expect(comparisonOf(before, now).caution).toBeNull();
  });

  it('are drawn inside the frame, and what lay too far off is told', () => {
    const [library, dwelling] = [paperSourceOf(demoText('2-public-library')), paperSourceOf(demoText('1-dwelling'))];
    for (const page of comparisonPages(library, dwelling)) {
      expect(textOffPage(page)).toEqual([]);
      expect(textOverText(page)).toEqual([]);
      for (const { ref, inks } of page.groups) {
        if (ref?.kind !== 'joint') continue;
        const { x, y, width, height } = page.layout.drawing;
        for (const [px, py] of inks.flatMap((ink) => (ink.ink === 'path' ? ink.lines.flat() : []))) {
          expect(px).toBeGreaterThanOrEqual(x);
          expect(px).toBeLessThanOrEqual(x + width);
          expect(py).toBeGreaterThanOrEqual(y);
          expect(py).toBeLessThanOrEqual(y + height);
        }
      }
    }
  });

  it('are not found where all joints are others and the walls stay', () => {
    const now = paperSourceOf(demoText('2-public-library'), { ruleSet: 'tile-us-exposed' });
    expect(comparisonOf(paperSourceOf(demoText('2-public-library')), now).caution).toBeNull();
  });

  // a floor moved by 20 m has no wall and no joint where it was: the caution says that this may be it
  it('are found where a floor was moved on the sheet as a whole, and the words say so', () => {
    const rooms = [rectangle('hall', [20000, 20000], [32000, 25000])];
    const { caution } = comparisonOf(
      hallAndStore({ rooms: [rectangle('hall', [0, 0], [12000, 5000])], doorways: [] }),
      hallAndStore({ rooms, doorways: [] }),
    );
    expect(caution).toContain('only 0 % of the walls');
    expect(caution).toContain('moved on the sheet as a whole');
  });

  it.each([...demoNames])('are the same floor as itself: %s', (name) => {
    const source = paperSourceOf(demoText(name));
    expect(comparisonOf(source, source).caution).toBeNull();
  });
});
