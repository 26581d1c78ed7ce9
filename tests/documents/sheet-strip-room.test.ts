import { describe, expect, it } from 'vitest';
import { jointPlanPages } from '../../src/documents/joint-plan.ts';
import type { Page } from '../../src/documents/page.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { analysisOf, bay, box, finding, planOf, room } from './fixture.ts';
import { pageTexts, pageWords, textOverText } from './page-check.ts';
import { paperSource } from './paper-fixture.ts';

type Papers = NonNullable<PlanFile['papers']>;

describe('findings in the strip of a small sheet', () => {
  const revisions = Array.from({ length: 9 }, (_, i) => ({
    mark: 'ABCDEFGHI'[i] ?? '',
    date: `2026-0${i + 1}-01`,
    text: `Change number ${i} of the drawing with long words`,
    by: 'me',
  }));
  const first = (others: number, papers: Papers) => {
    const caution = (i: number) => finding('caution', null, `Caution number ${i + 1} takes one line.`);
    const findings = [
      ...Array.from({ length: others }, (_, i) => caution(i)),
      finding('fault', [4000, 5000], 'The worst of all.'),
    ];
    const source = paperSource(planOf(), analysisOf({ findings }), { papers: { ...papers, revisions } });
    return jointPlanPages(source)[0];
  };
  /** Lower edge of the lowest row above the foot, and the rule where the foot begins, both in the last column. */
  const blankMm = (page: Page, last: RegExp) => {
    const row = pageTexts(page).find(({ text }) => last.test(text));
    const foot = pageTexts(page).find(({ text }) => /^(?:\d+ (?:name|figure|pin|room)|Local codes)/u.test(text));
    return (foot?.at[1] ?? 0) - (row?.at[1] ?? 0);
  };

  it('list the fault that has a pin before all else, and use the room that there is', () => {
    for (const scale of [100, 200] as const) {
      const page = first(40, { paper: 'A4', scale });
      const words = pageWords(page);
      expect(textOverText(page)).toEqual([]);
      expect(words).toContain('41 The worst of all.');
      expect(words.indexOf('The worst of all.')).toBeLessThan(
        words.includes('Caution number') ? words.indexOf('Caution number') : Number.POSITIVE_INFINITY,
      );
      const listed = words.match(/takes one line/gu)?.length ?? 0;
      expect(words).toContain(`${40 - listed} more in the list of findings`);
      // a line of text takes 4.6 mm and a finding 5.4: less than that and the distance of the two rows is blank
      expect(blankMm(page, /more in the list of findings/u)).toBeLessThan(4.6 + 5.4 + 4);
    }
  });

  it('go on behind one that is too long for the room that is left, and the sheet says how many stand in the list and how many of them are faults', () => {
    const long = finding('fault', [4000, 5000], 'Long words of a fault. '.repeat(120));
    const short = Array.from({ length: 4 }, (_, i) =>
      finding('caution', null, `Caution number ${i + 1} takes one line.`),
    );
    const page = jointPlanPages(
      paperSource(planOf(), analysisOf({ findings: [finding('fault', null, 'The first fault.'), long, ...short] }), {
        papers: { paper: 'A3', scale: 100 },
      }),
    )[0];
    const words = pageWords(page);
    expect(words).toContain('The first fault.');
    expect(words).not.toContain('Long words');
    for (let i = 1; i <= 4; i++) expect(words).toContain(`Caution number ${i} takes one line.`);
    expect(words).toContain('1 more in the list of findings, 1 fault among them');
  });

  it('are all counted, and none called "more", where none has room', () => {
    const long = 'Words '.repeat(400);
    const source = paperSource(planOf(), analysisOf({ findings: [finding('fault', [4000, 5000], long)] }), {
      papers: { paper: 'A4', revisions },
    });
    const words = pageWords(jointPlanPages(source)[0]);
    expect(words).toContain('1 in the list of findings, none here');
    expect(words).not.toContain('more in the list of findings');
  });
});

describe('the paper and the scale of a sheet', () => {
  it('stand in full in the title block, whichever way the sheet lies and however small the scale', () => {
    for (const papers of [{ paper: 'A2' }, { paper: 'A4', scale: 50 }, { paper: 'A3', scale: 20 }] as const) {
      const tall = room('r1', 'Hall', box(0, 0, 9000, 24000));
      const wide = room('r1', 'Hall', box(0, 0, 200_000, 90_000));
      for (const each of [tall, wide]) {
        const bays = [bay('B1', ['r1'], each.outline, 9, 24)];
        const empty = { doorways: [], columns: [], pipes: [], joinery: [], sunZones: [], keepClear: [] };
        const plan = planOf({ rooms: [each], ...empty });
        const [page] = jointPlanPages(
          paperSource(plan, analysisOf({ bays, joints: [], edges: [], findings: [] }), { papers }),
        );
        const standing = page.heightMm > page.widthMm ? ' standing' : '';
        expect(pageWords(page)).toContain(`Paper ${papers.paper}${standing} Number`);
        expect(pageWords(page)).toContain(`Scale 1 : ${page.scale} Paper`);
      }
    }
  });
});
