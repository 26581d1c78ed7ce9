import { describe, expect, it } from 'vitest';
import type { LabelItem } from '../../src/documents/drawing.ts';
import { setOutPages } from '../../src/documents/set-out.ts';
import { unletteredText } from '../../src/documents/set-out-left.ts';
import { block } from '../../src/documents/set-out-text.ts';
import { stripMm } from '../../src/documents/sheet.ts';
import { pageSvg } from '../../src/documents/svg.ts';
import { textCut, textWidthMm } from '../../src/documents/text-width.ts';
import type { Analysis } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { box, joint, room } from './fixture.ts';
import { paperSource } from './paper-fixture.ts';
import { oneRoom, sheetWords } from './set-out-fixture.ts';
import { fieldReport, tiledAnalysis, tiledPlan } from './tile-fixture.ts';

const long = 'NameWithoutAnySpaceInIt'.repeat(14).slice(0, 300);
const names = {
  'of 300 letters without a space': long,
  'of right-to-left letters': 'غرفة المعيشة والطعام والمطبخ '.repeat(11),
  'of markup': '<b>"x"&amp;</b>'.repeat(20),
  'of the widest letters': 'W'.repeat(300),
  'of signs as wide as a phrase': '\ufdfd'.repeat(300),
};

function sheetOf(plan: Plan, analysis: Analysis) {
  return setOutPages(paperSource(plan, analysis))[0];
}

function named(name: string): Plan {
  const plan = tiledPlan({ name });
  return { ...plan, rooms: plan.rooms.map((each) => ({ ...each, name })) };
}

describe('a long name', () => {
  it.each(Object.entries(names))('%s stays within its column of the strip', (_of, name) => {
    const { layout, groups } = sheetOf(named(name), tiledAnalysis());
    const texts = groups
      .filter(({ ref }) => ref === null)
      .flatMap(({ inks }) => inks.flatMap((ink) => (ink.ink === 'text' && ink.anchor === 'start' ? [ink] : [])));
    expect(texts.length).toBeGreaterThan(30);
    for (const { at, text, style } of texts) {
      const column = Math.floor((at[0] - layout.strip.x) / stripMm);
      expect(at[0] + textWidthMm(text, style), text).toBeLessThanOrEqual(layout.strip.x + (column + 1) * stripMm);
    }
    // and a room takes one line of it
    expect(texts.filter(({ text, style }) => style === 'sheet-head' && text.includes('\u2026')).length).toBeGreaterThan(
      0,
    );
  });

  it('is cut short with an ellipsis where it is wider than its room', () => {
    expect(textCut('Hall', 'sheet-head', 64)).toBe('Hall');
    const cut = textCut(long, 'sheet-head', 64);
    expect(long.startsWith(cut.slice(0, -1))).toBe(true);
    expect(cut.endsWith('\u2026')).toBe(true);
    expect(textWidthMm(cut, 'sheet-head')).toBeLessThanOrEqual(64);
  });

  it('written from right to left does not take the figure behind it along', () => {
    const text = sheetWords(named('غرفة'), tiledAnalysis());
    expect(text).toContain('\u0641\u0629\u200e');
    expect(text).not.toMatch(/[\u0590-\u08ff] \d/u);
  });
});

describe('distances and checks', () => {
  const hall = box(0, 0, 6000, 4000);
  const tile = box(2400, 1500, 600, 600);
  const column = (x: number, y: number) => ({ columns: [{ id: 'c', outline: box(x, y, 300, 300) }] });

  it('are drawn clear of a column that stands in the way', () => {
    // at 8 % of 6 m: 480 mm; the column from 400 to 700 mm is passed at the second of 20 steps of 126 mm to the middle: 480 + 2 * 126 = 732
    const at = (over: Partial<Plan>) => oneRoom(hall, tile, 0, over).lines?.lines[0].fromWall[0]?.onWall;
    expect(at({})?.[0]).toBeCloseTo(480, 6);
    expect(at(column(400, 600))?.[0]).toBeCloseTo(732, 6);
  });

  it('keep their place where nothing is clear', () => {
    const wide = { columns: [{ id: 'c', outline: box(10, 600, 5980, 300) }] };
    expect(oneRoom(hall, tile, 0, wide).lines?.lines[0].fromWall[0]?.onWall[0]).toBeCloseTo(480, 6);
  });

  it('run the check of the square past a column', () => {
    // from (2400, 1500): 3200 to the right and 2400 down are the longest; their middle is (4000, 2700)
    const free = oneRoom(hall, tile).lines?.check;
    expect(free).toMatchObject({ onFirst: [5600, 1500], onSecond: [2400, 3900], acrossMm: 4000 });
    const past = oneRoom(hall, tile, 0, column(3850, 2550)).lines?.check;
    // the next: 2400 to the right and 1800 down; from (4800, 1500) to (2400, 3300) the line is at y = 2212 where the column begins, at x = 3850
    expect(past).toMatchObject({ onFirst: [4800, 1500], onSecond: [2400, 3300], acrossMm: 3000 });
  });
});

describe('joints in grout', () => {
  it('tell what comes off the tiles by the grout of their own field', () => {
    const tiled = tiledAnalysis();
    const inGrout = (id: string, bays: [string, string], x: number) => ({
      ...joint(
        id,
        'field',
        [
          [x, 4200],
          [x, 6900],
        ],
        bays,
      ),
      ...{ onGroutLine: true, offGroutMm: 0, tilesAt: 'on-line' as const, bondLets: true, run: id },
    });
    const analysis = tiledAnalysis(
      [fieldReport({ id: 't1', rooms: ['r1'], groutMm: 3 }), fieldReport({ rooms: ['r2'], groutMm: 2 })],
      { joints: [...tiled.joints, inGrout('J8', ['B1', 'B1'], 2000), inGrout('J9', ['B3', 'B3'], 6000)] },
    );
    const field = { ...(tiledPlan().tiles as NonNullable<Plan['tiles']>), id: 't1', rooms: ['r1'] };
    const text = sheetWords(tiledPlan({ tileFields: [field] }), analysis);
    // sealant of 8 mm: (8 - 3) / 2 and (8 - 2) / 2
    expect(text).toMatch(/J8 Hall [^J]*on a grout line; 2\.5 mm come off the tiles on both sides/u);
    expect(text).toMatch(/J9 Kitchen [^J]*on a grout line; 3\.0 mm come off the tiles on both sides/u);
    expect(text).not.toContain('no tile is cut ');
  });
});

describe('what has found no room', () => {
  const label = (kind: LabelItem['ref']['kind'], seat: LabelItem['seat']['kind']): LabelItem => ({
    shape: 'label',
    layer: 'labels',
    ref: { kind, id: 'x' },
    seat:
      seat === 'beside'
        ? { kind: 'beside', line: [], inOpening: false }
        : { kind: 'inside', at: [0, 0], region: { outline: [], holes: [] } },
    forms: [],
    priority: 0,
  });
  const labels = [label('room', 'beside'), label('edge', 'beside'), label('edge', 'beside'), label('object', 'beside')];

  it('is told only where it does not stand in the strip', () => {
    expect(unletteredText([label('room', 'beside'), label('object', 'beside')], [])).toBeNull();
    expect(unletteredText(labels, [])).toBe(
      'Without room on the drawing: 2 cut sizes (at short walls and things, cuts.csv).',
    );
    expect(unletteredText([label('joint', 'beside'), label('bay', 'inside')], [])).toBe(
      'Without room on the drawing: 1 bay name (bays.csv), 1 joint name (under Joints).',
    );
  });

  it('counts the cuts of rooms that the strip leaves out', () => {
    expect(unletteredText(labels, [block('Hall', [], { what: 'room', count: 1 })])).toBe(
      'Without room on the drawing: 3 cut sizes (at walls and things, cuts.csv).',
    );
  });
});

describe('a long strip', () => {
  it('takes a larger paper, not a smaller scale, and leaves nothing out', () => {
    const joints = Array.from({ length: 150 }, (_, i) => ({
      ...joint(
        `J${i}`,
        'field',
        [
          [i * 20, 0],
          [i * 20, 4000],
        ],
        ['B1', 'B2'],
      ),
      run: `R${i}`,
    }));
    const few = sheetOf(tiledPlan(), tiledAnalysis()).layout;
    const analysis = tiledAnalysis(undefined, { joints });
    const many = sheetOf(tiledPlan(), analysis).layout;
    expect(many.scale).toBe(few.scale);
    expect(many.widthMm * many.heightMm).toBeGreaterThan(few.widthMm * few.heightMm);
    expect(sheetWords(tiledPlan(), analysis)).not.toMatch(/\d+ more /u);
  });

  it('has the same bytes every time', () => {
    const plan = tiledPlan({ rooms: [room('r1', 'Hall', box(0, 0, 9000, 7000))] });
    expect(pageSvg(sheetOf(plan, tiledAnalysis()))).toBe(pageSvg(sheetOf(plan, tiledAnalysis())));
  });
});
