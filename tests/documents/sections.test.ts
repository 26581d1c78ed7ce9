import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Page } from '../../src/documents/page.ts';
import { sectionPages } from '../../src/documents/sections.ts';
import { pageSvg } from '../../src/documents/svg.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { pagePaths, pageTexts, textsOffPage, textsOverText } from './page-text-check.ts';
import { demoNames, demoText, hallAndStore, paperSourceOf } from './paper-fixture.ts';

/** A hall that needs a joint, with a store beside it, its build-up entered. */
function floor(over: Partial<PlanFile> = {}) {
  return hallAndStore({
    screed: { class: 'CT-C25-F5', thicknessMm: 62 },
    heating: { pipeOutsideMm: 17, pipeSpacingMm: 125 },
    buildUp: { insulationMm: 60, adhesiveMm: 5, coveringMm: 11 },
    ...over,
  });
}

const textsOf = (pages: readonly Page[]) => pages.flatMap(pageTexts).map(({ text }) => text.replaceAll('\u00a0', ' '));
/** Words that may be broken into lines. */
const wordsOf = (pages: readonly Page[]) => textsOf(pages).join(' ');

describe('sections', () => {
  // by hand: 11 + 5 + 62 + 60 mm = 138 mm
  it('show each layer of a floor as thick as it is entered, to scale', () => {
    const pages = sectionPages(floor());
    expect(wordsOf(pages)).toContain('138 mm from slab to finished floor');
    for (const words of [
      '11 mm stone or ceramic',
      '5 mm adhesive or bedding',
      '62 mm screed CT-C25-F5',
      '60 mm insulation',
    ])
      expect(textsOf(pages)).toContain(words);
    for (const page of pages) {
      const scale = page.scale ?? 0;
      const heights = (fill: string) =>
        pagePaths(page)
          .filter((path) => path.fill === fill)
          .map(({ height }) => height * scale);
      // screed and adhesive each have a fill of their own
      expect(heights('tint0').length).toBeGreaterThan(0);
      for (const mm of heights('tint0')) expect(mm).toBeCloseTo(62, 6);
      for (const mm of heights('tint1')) expect(mm).toBeCloseTo(5, 6);
    }
  });

  // by hand: of sealant under 12 mm wide the depth is 6 mm at the least (US detailing text, practice)
  it('show the joints that there are, with widths and depths from the plan', () => {
    const words = wordsOf(sectionPages(floor()));
    for (const part of [
      'Doorway joint, under the leaf',
      'Intermediate movement joint',
      'joint profile 10 mm wide, 62 mm deep, down to the insulation',
      'sealant 8 mm wide, 6 mm deep, bonded on two sides only',
      'backer 8 mm wide',
      'Edge at a wall',
      'edge strip 10 mm',
    ])
      expect(words).toContain(part);
    for (const part of ['Structural joint', 'Pipe through']) expect(words).not.toContain(part);
  });

  it('show pipes, joints of the building and coverings without sealant where the plan has them', () => {
    const words = wordsOf(
      sectionPages(
        floor({
          pipes: [{ id: 'p1', centre: [3000, 2000], diameterMm: 110 }],
          structuralJoints: [
            {
              id: 's1',
              line: [
                [6000, 0],
                [6000, 5000],
              ],
              widthMm: 25,
            },
          ],
          rooms: floor().file.rooms.map((room) => ({ ...room, covering: 'timber' as const })),
        }),
      ),
    );
    for (const part of [
      'Structural joint carried through',
      '25 mm',
      'Pipe through the screed',
      '1 in the plan, 110 mm across',
    ])
      expect(words).toContain(part);
    expect(words).toContain('covering without sealant');
    expect(words).not.toContain('sealant 8 mm wide');
  });

  // EN 1264-4, as restated: a sleeve of 300 mm at the least, in the middle of the joint: 150 mm on each side
  it('show the sleeve of 300 mm with 150 mm on each side of the joint, to scale', () => {
    const pages = sectionPages(floor());
    const page = pages.find((each) => wordsOf([each]).includes('sleeve 300 mm'));
    expect(page).toBeDefined();
    if (page === undefined) return;
    const dimensions = pageTexts(page).filter(({ text }) => text === '150\u00a0mm');
    expect(dimensions).toHaveLength(2);
    const lengths = pagePaths(page).filter(({ closed, height }) => !closed && height === 0);
    expect(
      lengths.filter(({ width }) => Math.abs(width * (page.scale ?? 0) - 150) < 1e-6).length,
    ).toBeGreaterThanOrEqual(2);
  });

  it('show no sleeve where no room is heated, whatever is entered of the heating, and show it where one is', () => {
    const heated = (...ids: readonly string[]) =>
      floor({ rooms: floor().file.rooms.map((room) => ({ ...room, heated: ids.includes(room.id) })) });
    expect(wordsOf(sectionPages(heated()))).not.toMatch(/sleeve|heating pipe/iu);
    expect(wordsOf(sectionPages(heated('store')))).toContain('Sleeve on a heating pipe that crosses a joint');
  });

  it('say "not entered" of what is not, and draw no pipe that is not known', () => {
    const { heating: _, buildUp: __, ...file } = floor().file;
    const pages = sectionPages(paperSourceOf(JSON.stringify(file)));
    const texts = textsOf(pages);
    for (const words of [
      'stone or ceramic, thickness not entered',
      'insulation, thickness not entered',
      'heating pipes: not entered',
    ])
      expect(texts).toContain(words);
    expect(wordsOf(pages)).toContain('height in all not known');
    expect(wordsOf(pages)).not.toContain('sleeve');
  });

  it.each(demoNames)('leave no short word of what is told beside them on a line of its own: %s', (name) => {
    const hanging = textsOf(sectionPages(paperSourceOf(demoText(name)))).filter((text) => /^[a-z]{1,7}$/u.test(text));
    expect(hanging).toEqual([]);
  });

  it('say where the screed is held to the slab for want of insulation', () => {
    const pages = sectionPages(floor({ buildUp: { insulationMm: 0, adhesiveMm: 5, coveringMm: 11 } }));
    expect(wordsOf(pages)).toContain('no insulation: the screed is held to the slab');
    expect(wordsOf(pages)).not.toContain('membrane');
  });

  // by hand: 11 + 5 mm of stone against 14 + 2 mm of timber; on the same slab both floors lie level
  it('show at a joint between two rooms the covering of each on its own side, as thick as it is entered', () => {
    const [hall, store] = floor().file.rooms;
    if (hall === undefined || store === undefined) throw new Error('two rooms');
    const timber = { ...store, covering: 'timber' as const, buildUp: { coveringMm: 14, adhesiveMm: 2 } };
    const pages = sectionPages(floor({ rooms: [hall, timber] }));
    expect(wordsOf(pages)).toContain('Left 11 mm stone or ceramic: Hall. Right 14 mm timber covering: Store.');
    expect(wordsOf(pages)).not.toContain('As entered,');
    for (const words of ['11 mm stone or ceramic', '14 mm timber covering', '2 mm adhesive or bedding'])
      expect(textsOf(pages)).toContain(words);
    const page = pages.find((each) => wordsOf([each]).includes('Left 11 mm'));
    const adhesive = pagePaths(page as Page).filter(({ fill }) => fill === 'tint1');
    const halves = adhesive.flatMap((one) =>
      adhesive
        .filter((other) => Math.abs(one.left + one.width - other.left) < 1e-9)
        .map((other) => [one, other] as const),
    );
    expect(halves.map((pair) => pair.map(({ height }) => Math.round(height * (page?.scale ?? 0) * 10) / 10))).toEqual([
      [5, 2],
    ]);
    // all of the joints of the hall alone lie in stone
    expect(wordsOf(pages)).toContain('In 11 mm stone or ceramic.');
  });

  // by hand: 11 + 5 + 62 + 60 = 138 mm against 20 + 5 + 62 + 40 = 127 mm
  it('show floors of different heights on one slab, and tell of the step', () => {
    const [hall, store] = floor().file.rooms;
    if (hall === undefined || store === undefined) throw new Error('two rooms');
    const thin = { ...store, buildUp: { coveringMm: 20, insulationMm: 40 } };
    const pages = sectionPages(floor({ rooms: [hall, thin] }));
    expect(wordsOf(pages)).toContain('As entered, 11 mm lower on the right.');
    expect(textsOf(pages)).toContain('40 mm insulation');
    for (const page of pages) expect([...textsOverText(page), ...textsOffPage(page)]).toEqual([]);
  });

  it.each([
    ...demoNames.map((name) => [name, demoText(name)] as const),
    ['two rooms', JSON.stringify(floor().file)] as const,
  ])('never stand alone on a page where others share theirs: %s', (_, text) => {
    const pages = sectionPages(paperSourceOf(text));
    // each has its scale beside its title; that of the page stands at its head
    const counts = pages.map((page) => textsOf([page]).filter((words) => /^1 : [\d.]+$/u.test(words)).length);
    if (counts.some((count) => count > 1)) for (const count of counts) expect(count).toBeGreaterThan(1);
  });

  it('show insulation layer by layer where the layers make up what is entered', () => {
    const texts = textsOf(sectionPages(floor({ order: { insulationLayersMm: [40, 20] } })));
    expect(texts).toContain('40 mm insulation, layer 1 from the slab');
    expect(textsOf(sectionPages(floor({ order: { insulationLayersMm: [40, 30] } })))).toContain('60 mm insulation');
  });

  it('are each marked as a principle that the maker\u2019s detail goes before, with their scale', () => {
    const pages = sectionPages(floor());
    for (const page of pages) {
      const texts = textsOf([page]);
      expect(texts).toContain('Principle. The maker\u2019s detail goes before it.');
      expect(texts).toContain(`Scale 1 : ${page.scale}`);
    }
  });

  const cases = readdirSync(new URL('../cases/', import.meta.url)).filter((name) => name.endsWith('.json'));
  const casePlan = (name: string): string =>
    JSON.stringify(
      (JSON.parse(readFileSync(new URL(`../cases/${name}`, import.meta.url), 'utf8')) as { plan: unknown }).plan,
    );

  it.each([
    ...demoNames.map((name) => [name, () => [demoText(name)]] as const),
    ['every fourth case', () => cases.filter((_, i) => i % 4 === 0).map(casePlan)] as const,
  ])('have no text over text and none off the page: %s', (_, texts) => {
    for (const text of texts()) {
      for (const page of sectionPages(paperSourceOf(text))) {
        expect(textsOverText(page)).toEqual([]);
        expect(textsOffPage(page)).toEqual([]);
      }
    }
  });

  it('stay in their room with thick layers and names that are hostile, and are the same bytes each time', () => {
    const { file } = floor();
    const rooms = file.rooms.map((room, i) => ({ ...room, name: i === 0 ? '<b>\u202e=1\u0007' : 'W'.repeat(10_000) }));
    const buildUp = { insulationMm: 1500, adhesiveMm: 0.5, coveringMm: 80 };
    const source = paperSourceOf(JSON.stringify({ ...file, rooms, buildUp }));
    const pages = sectionPages(source);
    for (const page of pages) {
      expect(textsOverText(page)).toEqual([]);
      expect(textsOffPage(page)).toEqual([]);
      expect(pageSvg(page)).not.toContain('<b>');
    }
    expect(sectionPages(source).map((page) => pageSvg(page))).toEqual(pages.map((page) => pageSvg(page)));
  });
});
