import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { PathInk, TextInk } from '../../src/documents/ink.ts';
import { jointPlanPages } from '../../src/documents/joint-plan.ts';
import type { Page } from '../../src/documents/page.ts';
import { pageSets } from '../../src/documents/page-sets.ts';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import { planTables } from '../../src/documents/plan-tables.ts';
import { setOutPages } from '../../src/documents/set-out.ts';
import { pageSvg } from '../../src/documents/svg.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { analysisOf, bay, box, finding, planOf, room } from './fixture.ts';
import { pageTexts, pageWords, textOffPage, textOverJoints, textOverText } from './page-check.ts';
import { demoNames, demoText, paperSource, paperSourceOf } from './paper-fixture.ts';

type Papers = NonNullable<PlanFile['papers']>;

const realFloors = ['westport_5', 'westport_6', 'resplan_0', 'duplex_L0', 'largebuilding_L0'] as const;
const realFloor = (name: string) => new URL(`../../../shared/real-plans/${name}.json`, import.meta.url);

/** Numbers of pins stand on bodies that cover what lies beneath them. */
function isPin({ style }: TextInk): boolean {
  return style.startsWith('pin-');
}

function expectReadable(pages: readonly Page[]): void {
  expect(pages.flatMap(pageTexts).length).toBeGreaterThan(10 * pages.length);
  for (const page of pages) {
    expect(textOverText(page)).toEqual([]);
    expect(textOffPage(page)).toEqual([]);
    const labels = page.groups.map(({ ref, inks }) => ({
      ref,
      inks: inks.filter((ink) => ink.ink !== 'text' || !isPin(ink)),
    }));
    expect(textOverJoints({ ...page, groups: labels })).toEqual([]);
  }
}

const bands: Papers = { paper: 'A3', scale: 50 };

describe('on the sheets of a floor no text stands over text, over a joint or off the paper', () => {
  it.each(demoNames)(
    '%s, on one sheet and over several',
    (name) => {
      for (const papers of [{}, bands]) {
        const source = paperSourceOf(demoText(name), { papers });
        expectReadable(jointPlanPages(source));
        expectReadable(setOutPages(source));
      }
    },
    120_000,
  );

  it.each(realFloors)(
    '%s',
    (name) => {
      if (!existsSync(realFloor(name))) return;
      for (const papers of [{}, bands])
        expectReadable(jointPlanPages(paperSourceOf(readFileSync(realFloor(name), 'utf8'), { papers })));
    },
    120_000,
  );
});

const hostile = {
  'a formula': '=HYPERLINK("x")+1',
  markup: '</text><script>alert(1)</script>&amp;',
  'letters from right to left': '\u202e\u063a\u0631\u0641\u0629 \u0627\u0644\u0645\u0639\u064a\u0634\u0629 ',
  'ten thousand letters': 'Wide'.repeat(2500),
  'control characters': 'a\u0000b\u0007c\u0085d\u2028e',
};

function namedEverywhere(name: string): PaperSource {
  const plan = planOf({ name, rooms: planOf().rooms.map((each) => ({ ...each, name })) });
  const entry = { mark: name, date: '2027-01-01', text: name, by: name };
  const papers = { project: name, number: name, designer: name, revisions: [entry, entry] };
  return paperSource(plan, analysisOf({ findings: [finding('fault', [2100, 5550], name)] }), { papers });
}

describe('a name', () => {
  it.each(Object.entries(hostile))('that is %s stays in its room on every sheet', (_what, name) => {
    for (const wish of [{}, { paper: 'A4', scale: 20 }, { paper: 'A4' }, { paper: 'A3', scale: 200 }] as const) {
      const source = namedEverywhere(name);
      const pages = jointPlanPages({ ...source, file: { ...source.file, papers: { ...source.file.papers, ...wish } } });
      expectReadable(pages);
      for (const page of pages) {
        const svg = pageSvg(page);
        expect(svg).not.toContain('<script');
        for (const character of ['\u202e', '\u0000', '\u0007']) expect(svg.includes(character)).toBe(false);
      }
    }
  });
});

/** Corners of the walls of a page, mm on paper. */
function wallPoints(page: Page): readonly Point[] {
  return page.groups.flatMap(({ ref, inks }) =>
    ref?.kind === 'edge' ? inks.flatMap((ink) => (ink.ink === 'path' ? ink.lines.flat() : [])) : [],
  );
}

/** A hall of 24 x 9 m by itself, its walls one line. */
function hall(papers: Papers, holes: readonly string[] = []): PaperSource {
  const outline = box(0, 0, 24000, 9000);
  const edge = { ...analysisOf().edges[0], bay: 'B1', line: [...outline, outline[0] as Point] };
  const bay = { ...analysisOf().bays[0], rooms: ['r1'], outline, measured: outline, floors: [] };
  const analysis = analysisOf({
    bays: [bay] as PaperSource['analysis']['bays'],
    joints: [],
    edges: [edge] as PaperSource['analysis']['edges'],
    findings: [],
  });
  const empty = { doorways: [], columns: [], pipes: [], joinery: [], sunZones: [], keepClear: [] };
  return paperSource(planOf({ rooms: [room('r1', holes[0] ?? 'Hall', outline)], ...empty }), analysis, { papers });
}

describe('a floor that is larger than its paper', () => {
  // A3 is 420 x 297 mm by ISO 216; 24 m at 1 : 50 are 480 mm and go on no A3 sheet in one piece
  const pages = jointPlanPages(hall({ paper: 'A3', scale: 50 }));
  const [overview, ...parts] = pages;

  it('goes over several sheets of that paper at that scale, after one that shows all of it in small', () => {
    expect(parts).toHaveLength(2);
    expect(overview.scale).toBeGreaterThan(50);
    for (const part of parts) expect([part.widthMm, part.heightMm, part.scale]).toEqual([420, 297, 50]);
  });

  it('is true to scale: a side of 9 m is 180 mm on each sheet that shows it', () => {
    // 9000 mm / 50 = 180 mm
    for (const part of parts) {
      const ys = wallPoints(part).map(([, y]) => y);
      expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(180, 6);
    }
  });

  it('is on the sheets in full: together they show its 480 mm and what they have in common', () => {
    const shown = parts.map((part) => {
      const xs = wallPoints(part).map(([x]) => x);
      return Math.max(...xs) - Math.min(...xs);
    });
    const [first = 0, second = 0] = shown;
    // 24 000 mm / 50 = 480 mm; 12 mm beyond the match line on each side of it
    expect(first + second).toBeCloseTo(480 + 2 * 12, 6);
  });

  it('names on each sheet the one that goes on beside it, and its number', () => {
    expect(parts.map(pageWords)).toEqual([
      expect.stringContaining('goes on on sheet 3'),
      expect.stringContaining('goes on on sheet 2'),
    ]);
    expect(pages.map((page) => /\bsheet (\d of \d)/iu.exec(pageWords(page))?.[1])).toEqual([
      '1 of 3',
      '2 of 3',
      '3 of 3',
    ]);
    expect(pageWords(overview)).toMatch(/Sheet 2.*Sheet 3/u);
    expect(pageWords(overview)).toContain('sheets after it 1 : 50');
  });

  it('draws nothing beyond the frame of a sheet', () => {
    for (const part of parts) {
      for (const [x, y] of wallPoints(part)) {
        expect(x).toBeGreaterThanOrEqual(10);
        expect(x).toBeLessThanOrEqual(420 - 10 - 48 - 5);
        expect(y).toBeGreaterThanOrEqual(10);
        expect(y).toBeLessThanOrEqual(287);
      }
    }
  });

  it('is named on both sides of a match line that runs through it', () => {
    for (const part of parts) expect(pageWords(part)).toContain('B1');
  });

  it('has the same bytes every time', () => {
    expect(jointPlanPages(hall({ paper: 'A3', scale: 50 })).map((page) => pageSvg(page))).toEqual(
      pages.map((page) => pageSvg(page)),
    );
  });
});

function across(page: Page): readonly TextInk[] {
  return page.groups.flatMap(({ inks }) =>
    inks.flatMap((ink) => (ink.ink === 'text' && ink.style.startsWith('across-') ? [ink] : [])),
  );
}

describe('who answers for a sheet', () => {
  const notChecked = 'Not checked for construction';

  it('is asked for in large letters across every sheet where nobody is named', () => {
    for (const page of [...jointPlanPages(hall({})), ...jointPlanPages(hall({ paper: 'A3', scale: 50 }))]) {
      expect(across(page).map(({ text }) => text)).toEqual([notChecked]);
      expect(across(page)[0]?.angleDeg).toBeLessThan(-10);
    }
    expect(pageWords(jointPlanPages(hall({}))[0])).toContain('Responsible designer: none named');
  });

  it('is asked for behind everything but the tint of the bays', () => {
    const [page] = jointPlanPages(hall({}));
    const order = page.groups.map(({ ref, inks }) => {
      if (inks.some((ink) => ink.ink === 'text' && ink.style.startsWith('across-'))) return 'across';
      return ref?.kind === 'bay' && inks.some((ink) => ink.ink === 'path' && ink.fill !== null) ? 'floor' : 'other';
    });
    expect(order.indexOf('across')).toBe(order.lastIndexOf('floor') + 1);
    expect(order.slice(order.indexOf('across') + 1)).not.toContain('floor');
  });

  it('is named in the title block, and no sheet for construction then says that it is not checked', () => {
    for (const papers of [{}, { paper: 'A3', scale: 50 }] as const) {
      for (const page of jointPlanPages(hall({ ...papers, designer: 'Planning office', status: 'for-construction' }))) {
        expect(across(page)).toEqual([]);
        expect(pageWords(page)).toContain('Planning office');
        expect(pageWords(page)).not.toContain(notChecked);
        expect(pageWords(page)).toContain('structural engineer');
      }
    }
  });

  it('does not make a sheet for information one to build from', () => {
    const words = pageWords(jointPlanPages(hall({ designer: 'Planning office', status: 'for-information' }))[0]);
    expect(words).toContain(`${notChecked}.`);
  });
});

// 24 m at 1 : 50 with room for pins are 492 mm, and beside its strip A2 has 481
describe('the title block', () => {
  const papers: Papers = {
    project: 'House at the mill',
    number: 'E-12',
    status: 'for-comment',
    date: '2027-04-05',
    revisions: Array.from({ length: 7 }, (_, i) => ({
      mark: 'ABCDEFG'[i] ?? '',
      date: `2027-01-0${i + 1}`,
      text: `Change ${i + 1}`,
      by: 'pl',
    })),
  };
  const words = pageWords(jointPlanPages(hall(papers))[0]);

  it('says project, plan, subject, status, day, number and scale', () => {
    for (const part of [
      'House at the mill',
      'Reading rooms',
      'Bays and movement joints',
      'For comment',
      '2027-04-05',
      'E-12, sheet 1 of 1',
      '1 : 100',
    ])
      expect(words).toContain(part);
  });

  it('has the day on which the papers are made where the plan has none of its own', () => {
    expect(pageWords(jointPlanPages(hall({}))[0])).toContain('2027-03-01');
  });

  it('lists the newest revisions, the newest last, and says how many are earlier', () => {
    // seven, five of which have room
    expect(words).toContain('2 earlier revisions in the list of revisions C 2027-01-03 Change 3');
    expect(words).not.toContain('Change 2');
    expect(words.indexOf('Change 7')).toBeGreaterThan(words.indexOf('Change 6'));
  });

  it('shows a change of two lines in full, on the lowest paper too', () => {
    for (const paper of ['A4', 'A2'] as const) {
      const change = { mark: 'B', date: '2027-02-01', text: 'Joint J4 moved to the grout line', by: 'pl' };
      const [page] = jointPlanPages(hall({ paper, revisions: [change, change] }));
      const lines = pageTexts(page).flatMap(({ text }) =>
        change.text.includes(text) && text.length > 5 ? [text] : [],
      );
      // by hand: 32 letters of about 1.5 mm are 48 mm, and the column for changes is 32 mm wide
      expect(lines).toHaveLength(4);
      expect(lines.slice(0, 2).join(' ')).toBe(change.text);
    }
  });

  it('shows a longer change across the whole table, and one that is longer still in full in the list of revisions, as it says', () => {
    const lines = (text: string) => {
      const source = hall({ paper: 'A2', revisions: [{ mark: 'B', date: '2027-02-01', text, by: 'pl' }] });
      const [page] = jointPlanPages(source);
      expectReadable([page]);
      return { source, words: pageWords(page) };
    };
    // by hand: 100 letters of about 1.5 mm are 150 mm, three lines of 69 mm and more than two of 32 mm
    const long = 'Joint J4 moved to the grout line beside the column, joint J5 with it, and both have a wider profile.';
    expect(lines(long).words).toContain(long);
    expect(lines(long).words).not.toContain('list of revisions');
    const longer = Array.from({ length: 60 }, (_, i) => `joint J${i + 1} moved`).join(', ');
    const { source, words: shown } = lines(longer);
    expect(shown).not.toContain(longer);
    expect(shown).toContain('Whole text in the list of revisions.');
    const list = planTables(source)
      .find(({ name }) => name === 'revisions')
      ?.make(source);
    expect(list?.rows).toEqual([['B', '2027-02-01', longer, 'pl']]);
    // and on paper as well
    const printed =
      pageSets(source)
        .find(({ stem }) => stem === 'lists')
        ?.pages() ?? [];
    expect(printed.map(pageWords).join(' ')).toContain('joint J60 moved');
  });

  it('has no list of revisions where there are none', () => {
    expect(planTables(hall({})).map(({ name }) => name)).not.toContain('revisions');
  });

  it('says of the proof that it holds on these lines, with these rules', () => {
    expect(words).toContain('intermediate joints 4.0 m; no bound known, on these lines, with these rules');
    const source = hall({});
    const proven = { ...source, analysis: { ...source.analysis, proof: { fieldJointM: 4, atLeastM: 3.6 } } };
    expect(pageWords(jointPlanPages(proven)[0])).toContain('at least 3.6 m needed, on these lines');
  });

  it.each([
    [0, [0, -1]],
    [90, [1, 0]],
    [-45, [-Math.SQRT1_2, -Math.SQRT1_2]],
  ] as const)('has an arrow to the north at %i degrees clockwise from up the sheet', (northDeg, [dx, dy]) => {
    const [page] = jointPlanPages(hall({ northDeg }));
    expect(pageWords(page)).not.toContain('north lies is not known');
    const inks = page.groups.flatMap((group) => group.inks);
    const letter = inks.find((ink): ink is TextInk => ink.ink === 'text' && ink.text === 'N');
    const needle = inks.find(
      (ink): ink is PathInk => ink.ink === 'path' && ink.fill === 'ink' && ink.lines[0]?.length === 3,
    );
    const [tip, one, other] = (needle?.lines[0] ?? []) as [Point, Point, Point];
    const middle = [(one[0] + other[0]) / 2, (one[1] + other[1]) / 2] as const;
    const length = Math.hypot(tip[0] - middle[0], tip[1] - middle[1]);
    expect((tip[0] - middle[0]) / length).toBeCloseTo(dx, 6);
    expect((tip[1] - middle[1]) / length).toBeCloseTo(dy, 6);
    expect(Math.sign(((letter?.at[0] ?? 0) - middle[0]) * dx + ((letter?.at[1] ?? 0) - middle[1]) * dy)).toBe(1);
  });
});

describe('a scale that cannot be had', () => {
  const words = (scale: 20 | 100, sideMm: number) => {
    const hallRoom = room('r1', 'Hall', box(0, 0, sideMm, sideMm));
    const bays = [bay('B1', ['r1'], hallRoom.outline, sideMm / 1e3, sideMm / 1e3)];
    const plan = planOf({
      rooms: [hallRoom],
      doorways: [],
      columns: [],
      pipes: [],
      joinery: [],
      sunZones: [],
      keepClear: [],
    });
    const analysis = analysisOf({ bays, joints: [], edges: [], findings: [] });
    return pageWords(jointPlanPages(paperSource(plan, analysis, { papers: { paper: 'A4', scale } }))[0]);
  };

  it('is told on the first sheet', () => {
    // 100 x 100 m at 1 : 20 are 5,000 x 5,000 mm; A4 is 297 x 210 mm by ISO 216: 400 sheets even with no margin
    expect(words(20, 100_000)).toContain('Wished 1 : 20, not possible on A4 with at most 150 sheets');
  });

  it('is not spoken of where it can be had', () => {
    // 100 x 100 m at 1 : 100 are 1,000 x 1,000 mm
    expect(words(100, 100_000)).not.toContain('Wished');
  });
});

describe('rooms that no sheet names', () => {
  const rooms = ['North', 'South', 'Hall'].map((name, i) => room(`r${i}`, name, box(i * 900, 0, 900, 900)));
  const bays = rooms.map(({ id, outline }, i) => bay(`B${i + 1}`, [id], outline, 0.9, 0.9));
  const words = (scale: 20 | 200) => {
    const plan = planOf({ rooms, doorways: [], columns: [], pipes: [], joinery: [], sunZones: [], keepClear: [] });
    const analysis = analysisOf({ bays, joints: [], edges: [], findings: [] });
    return pageWords(jointPlanPages(paperSource(plan, analysis, { papers: { scale } }))[0]);
  };

  it('are counted in the strip', () => {
    // 0.9 m are 4.5 mm at 1 : 200, and a line under another takes more than 5 mm with both
    expect(words(200)).toContain('3 rooms are not named here: see the lists.');
  });

  it('are not spoken of where all are named', () => {
    // 45 mm at 1 : 20
    expect(words(20)).toMatch(/North.*South.*Hall/u);
    expect(words(20)).not.toContain('not named');
  });
});
