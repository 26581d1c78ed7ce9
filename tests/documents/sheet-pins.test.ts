import { describe, expect, it } from 'vitest';
import { jointPlanPages } from '../../src/documents/joint-plan.ts';
import { analysisOf, finding, planOf } from './fixture.ts';
import { pageTexts, pageWords, textOverText } from './page-check.ts';
import { paperSource } from './paper-fixture.ts';

describe('pins in one place', () => {
  const many = Array.from({ length: 9 }, (_, i) =>
    finding(i === 5 ? 'fault' : 'note', [4000 + i, 5000], `Number ${i + 1}.`),
  );

  it('stand on top of each other, the worst lowest, and what has no room is counted', () => {
    const [page] = jointPlanPages(paperSource(planOf(), analysisOf({ findings: many })));
    const pins = pageTexts(page).filter(({ style }) => style.startsWith('pin-'));
    expect(textOverText(page)).toEqual([]);
    expect(pins.length).toBeGreaterThan(1);
    const lowest = pins.reduce((a, b) => (b.at[1] > a.at[1] ? b : a));
    expect(lowest.text).toBe('6');
    expect(pageWords(page)).toContain(`${many.length - pins.length} pins have no room: see the findings.`);
  });
});
