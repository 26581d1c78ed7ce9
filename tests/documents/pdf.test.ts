import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawingOf } from '../../src/documents/drawing-list.ts';
import {
  type Ink,
  itemInks,
  labelInks,
  lineInks,
  type PaperPlace,
  paperPoint,
  type TextInk,
} from '../../src/documents/ink.ts';
import { labelsPlace } from '../../src/documents/label-place.ts';
import type { Page } from '../../src/documents/page.ts';
import { pagesPdf } from '../../src/documents/pdf.ts';
import { textFontMm } from '../../src/documents/styles.ts';
import { textWidthMm } from '../../src/documents/text-width.ts';
import { planWrite } from '../../src/plan/write.ts';
import { demoText, paperSourceOf, shippedFonts } from './paper-fixture.ts';
import { pdfRead, type ReadPath } from './pdf-reader.ts';

/** A PDF measures in points of 1/72 inch; an inch is 25.4 mm (ISO 32000-1, 8.3.2.3). */
const mmOf = (points: number) => (points / 72) * 25.4;

const fonts = await shippedFonts();

function pageOf(inks: readonly Ink[], over: Partial<Page> = {}): Page {
  const about = {
    paper: 'A3',
    widthMm: 420,
    heightMm: 297,
    scale: 50,
    title: 'Ruler',
    subject: 'A test',
    part: 'A test',
  };
  return { ...about, groups: [{ ref: null, inks }], ...over };
}

function pdfOf(pages: readonly Page[], planText = '{}'): Promise<Uint8Array> {
  return pagesPdf(pages, { title: 'Ruler', date: '2027-03-01', planText, fonts });
}

const readPage = async (page: Page) => {
  const [read] = (await pdfRead(await pdfOf([page]))).pages;
  if (read === undefined) throw new Error('no page');
  return read;
};

function textInk(text: string, over: Partial<TextInk> = {}): TextInk {
  const place = { at: [100, 100], anchor: 'start', angleDeg: 0 } as const;
  return { ink: 'text', text, style: 'sheet-text', colour: 'ink', halo: null, ...place, ...over };
}

const writtenIn = async (text: string) => (await readPage(pageOf([textInk(text)]))).texts.map((each) => each.text);

/** The floor of a demo at 1 : 50, without strip and frame. */
function demoPage(name: '1-dwelling' | '2-public-library'): Page {
  const { plan, analysis } = paperSourceOf(demoText(name));
  const drawing = drawingOf(plan, analysis);
  const place: PaperPlace = { paperPerPlan: 1 / 50, offsetMm: [30, 30] };
  const placed = labelsPlace(drawing, place);
  const inks = [
    ...drawing.items.flatMap((item) => itemInks(item, place)),
    ...placed.flatMap((label) => labelInks(label, paperPoint(place, label.at))),
  ];
  // room for a public building
  return pageOf(inks, { widthMm: 1200, heightMm: 841 });
}

/** Lengths of the straight runs of paths, mm on paper. */
function runsMm(paths: readonly ReadPath[]): readonly number[] {
  return paths.flatMap(({ lines }) =>
    lines.flatMap((line) =>
      line.slice(1).map(([x, y], i) => {
        const [fromX, fromY] = line[i] ?? [0, 0];
        return mmOf(Math.hypot(x - fromX, y - fromY));
      }),
    ),
  );
}

describe('a ruler laid on a PDF', () => {
  it('measures 200 mm for a line of 10 m at 1 : 50, at every angle', async () => {
    const place = { paperPerPlan: 1 / 50, offsetMm: [200, 210] } as const;
    const ends = [0, 30, 90, 217].map((deg) => {
      const radians = (deg * Math.PI) / 180;
      return [10_000 * Math.cos(radians), 10_000 * Math.sin(radians)] as const;
    });
    const inks = ends.flatMap((end) =>
      lineInks(
        'room-outline',
        [[0, 0] as const, end].map((point) => paperPoint(place, point)),
      ),
    );
    const runs = runsMm((await readPage(pageOf(inks))).paths);
    expect(runs).toHaveLength(4);
    // to 0.005 mm on paper, a quarter of a millimetre on the floor
    for (const run of runs) expect(run).toBeCloseTo(200, 2);
  });

  it('measures pages in their own sizes: A4 standing after A0 lying (ISO 216)', async () => {
    const a4 = pageOf([], { paper: 'A4 standing', widthMm: 210, heightMm: 297 });
    const a0 = pageOf([], { paper: 'A0', widthMm: 1189, heightMm: 841 });
    const { pages } = await pdfRead(await pdfOf([a0, a4]));
    expect(pages.map(({ widthPt, heightPt }) => [mmOf(widthPt), mmOf(heightPt)].map((mm) => mm.toFixed(2)))).toEqual([
      ['1189.00', '841.00'],
      ['210.00', '297.00'],
    ]);
  });

  it('measures the walls of a dwelling of 18 x 11.4 m at 1 : 50', async () => {
    const { paths } = await readPage(demoPage('1-dwelling'));
    // walls are drawn 0.9 mm wide
    const walls = paths.filter(({ widthPt, paint }) => paint === 'stroke' && Math.abs(mmOf(widthPt) - 0.9) < 0.001);
    const corners = walls.flatMap(({ lines }) => lines.flat());
    const [xs, ys] = [corners.map(([x]) => mmOf(x)), corners.map(([, y]) => mmOf(y))];
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(360, 2);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(228, 2);
    // the wall of bedroom 2 in the plan file that has no doorway: 5180 mm
    expect(runsMm(walls).some((run) => Math.abs(run - 103.6) < 0.005)).toBe(true);
  });
});

describe('what is drawn in a PDF', () => {
  it('has the widths, dashes and colours that the drawing asks for', async () => {
    const stroke = { widthMm: 0.6, colour: 'field', dashMm: [6, 1.4], cap: 'butt' } as const;
    const line: Ink = { ink: 'path', lines: [[[10, 10], [90, 10]]], closed: false, fill: null, stroke }; // biome-ignore format: a line a line
    const ring: Ink = { ...line, lines: [[[10, 20], [90, 20], [90, 40]]], closed: true, fill: 'tint0' }; // biome-ignore format: a line a line
    const { paths } = await readPage(pageOf([line, ring, { ...ring, stroke: null }]));
    expect(paths.map(({ paint }) => paint)).toEqual(['stroke', 'fill and stroke', 'fill']);
    expect(mmOf(paths[0]?.widthPt ?? 0)).toBeCloseTo(0.6, 4);
    expect(paths[0]?.dashPt.map((pt) => mmOf(pt).toFixed(3))).toEqual(['6.000', '1.400']);
    // colours of `styles.ts` for light ground
    expect(paths[0]?.stroke).toBe('#8a2467');
    expect(paths[1]?.fill).toBe('#f4ecdc');
  });

  it('has a pin as round as a circle is: no point of it is off by 0.01 mm', async () => {
    const disc: Ink = { ink: 'disc', centre: [50, 60], radiusMm: 3, fill: 'paper', stroke: null };
    const { paths, heightPt } = await readPage(pageOf([disc]));
    const points = paths[0]?.lines.flat() ?? [];
    expect(points).toHaveLength(6);
    for (const [x, y] of points) expect(Math.hypot(mmOf(x) - 50, mmOf(heightPt - y) - 60)).toBeCloseTo(3, 2);
  });

  it('rules each grout line where it lies on the plan', async () => {
    const place = { paperPerPlan: 1 / 50, offsetMm: [20, 30] } as const;
    const stroke = { widthMm: 0.13, colour: 'grout', dashMm: [], cap: 'butt' } as const;
    const ruled: Ink = { ink: 'ruled', strokes: Float64Array.of(0, 0, 600, 0, 0, 300, 0, 900), place, stroke };
    const { paths, heightPt } = await readPage(pageOf([ruled]));
    const ends = paths[0]?.lines.flat().map(([x, y]) => [mmOf(x), mmOf(heightPt - y)].map((mm) => mm.toFixed(3)));
    const plan = [[0, 0], [600, 0], [0, 300], [0, 900]] as const; // biome-ignore format: a line a line
    expect(ends).toEqual(plan.map((point) => paperPoint(place, point).map((mm) => mm.toFixed(3))));
  });

  it('draws an empty page and an empty line without a word that is not a number', async () => {
    const stroke = { widthMm: 0.6, colour: 'ink', dashMm: [], cap: 'round' } as const;
    const empty: Ink = { ink: 'path', lines: [[]], closed: true, fill: 'ink', stroke };
    expect((await readPage(pageOf([empty, { ...empty, lines: [] }, textInk('')]))).paths).toEqual([]);
  });
});

describe('words in a PDF', () => {
  it.each([
    ['Latin', 'Küche, Größe 3,5 m² – Œuvre, Łódź, Šiška, Ğ'],
    ['Greek', 'Κουζίνα και Διάδρομος ΆΈΉ'],
    ['Cyrillic', 'Кухня и Коридор Їжак Ђ'],
    ['letters that are often drawn together', 'official coffee floor'],
  ])('are found again as they were written: %s', async (_what, text) => {
    expect((await writtenIn(text)).join('')).toBe(text);
  });

  it('are found once, though they stand on a ground of their own', async () => {
    const { texts } = await readPage(pageOf([textInk('Hall', { halo: 'paper' })]));
    expect(texts.map(({ text }) => text)).toEqual(['Hall']);
  });

  it('of any script and any nonsense go on paper without a fault', async () => {
    const texts = fc.sample(fc.string({ unit: 'binary', maxLength: 30 }), { seed: 5, numRuns: 200 });
    const inks = texts.map((text) => textInk(text, { halo: 'paper' }));
    expect((await readPage(pageOf(inks))).texts.length).toBeGreaterThan(150);
  });

  it.each([
    ['a script that the font has not', 'Room \u6f22', 'Room \ufffd'],
    ['a picture', 'Bath \u{1f6c1}', 'Bath \ufffd'],
    ['half a letter', 'Hall \ud800', 'Hall \ufffd'],
  ])('show a sign in place of %s', async (_what, text, shown) => {
    expect((await writtenIn(text)).join('')).toBe(shown);
  });

  it.each([
    ['control characters', 'a\u0000b\u001b[31mc', 'a b [31mc'],
    ['ends of lines', 'a\r\nb\u2028c', 'a b c'],
    ['signs that turn the direction round', 'Hall\u202eway', 'Hallway'],
    ['operators of a page', ') Tj ET (', ') Tj ET ('],
    ['markup and formulas', '=1+1 <script>', '=1+1 <script>'],
  ])('are harmless: %s', async (_what, text, shown) => {
    expect((await writtenIn(text)).join('')).toBe(shown);
  });

  it('wider than the room that was kept for them are drawn narrower', async () => {
    // a letter that the table of widths takes for a common one
    const text = '\u04dc'.repeat(12);
    const { texts } = await readPage(pageOf([textInk(text), textInk('Hall', { at: [100, 150] })]));
    const widthMm = texts.filter((each) => each.text !== 'Hall').reduce((sum, { widthPt }) => sum + mmOf(widthPt), 0);
    expect(widthMm).toBeCloseTo(textWidthMm(text, 'sheet-text'), 2);
    // and what follows has its own width again
    const [alone] = (await readPage(pageOf([textInk('Hall')]))).texts;
    expect(texts.find((each) => each.text === 'Hall')?.widthPt).toBeCloseTo(alone?.widthPt ?? 0, 3);
  });

  it('start, stand in the middle or end where they are placed', async () => {
    const anchors = ['start', 'middle', 'end'] as const;
    const { texts, heightPt } = await readPage(pageOf(anchors.map((anchor) => textInk('Hall', { anchor }))));
    for (const [i, share] of [0, 0.5, 1].entries()) {
      const { at, widthPt, sizePt } = texts[i] ?? { at: [0, 0], widthPt: 0, sizePt: 0 };
      expect(mmOf((at[0] ?? 0) + share * widthPt)).toBeCloseTo(100, 2);
      // capitals of 2.5 mm have their middle at 100 mm
      expect(mmOf(heightPt - (at[1] ?? 0))).toBeCloseTo(101.25, 2);
      expect(mmOf(sizePt)).toBeCloseTo(textFontMm('sheet-text'), 3);
    }
  });

  it('are turned about their middle: words that read upwards stand half above and half below it', async () => {
    const { texts, heightPt } = await readPage(pageOf([textInk('J12', { anchor: 'middle', angleDeg: -90 })]));
    const { at, widthPt, turnDeg } = texts[0] ?? { at: [0, 0], widthPt: 0, turnDeg: 0 };
    expect(turnDeg).toBeCloseTo(90, 3);
    expect(mmOf(heightPt - (at[1] ?? 0) - widthPt / 2)).toBeCloseTo(100, 2);
    expect(mmOf(at[0] ?? 0)).toBeCloseTo(101.25, 2);
  });

  it.each(['1-dwelling', '2-public-library'] as const)(
    'keep within the room that was kept for them: %s',
    async (name) => {
      const page = demoPage(name);
      const written = page.groups.flatMap(({ inks }) => inks).filter((ink) => ink.ink === 'text');
      const roomMm = new Map<string, number>();
      for (const { text, style } of written) {
        const room = Math.max(roomMm.get(text) ?? 0, textWidthMm(text, style));
        roomMm.set(text.replaceAll('\u00a0', ' '), room);
      }
      const { texts } = await readPage(page);
      const whole = texts.filter(({ text }) => roomMm.has(text));
      expect(whole.length).toBeGreaterThan(0.9 * written.length);
      for (const { text, widthPt } of whole) expect(mmOf(widthPt)).toBeLessThanOrEqual((roomMm.get(text) ?? 0) + 0.01);
    },
  );
});

describe('a PDF', () => {
  it('carries its fonts, and of them only the letters in use', async () => {
    const bytes = await pdfOf([pageOf([textInk('Hall'), textInk('Кухня', { style: 'sheet-head' })])]);
    const text = new TextDecoder('latin1').decode(bytes);
    // a subset has six letters and a plus before its name (ISO 32000-1, 9.6.4)
    expect(text).toMatch(/\/FontName \/[A-Z]{6}\+DejaVuSansCondensed\n/u);
    expect(text).toMatch(/\/FontName \/[A-Z]{6}\+DejaVuSansCondensed-Bold\n/u);
    expect(text.match(/\/FontFile2 /gu)).toHaveLength(2);
    expect(bytes.length).toBeLessThan(0.05 * (fonts.regular.length + fonts.bold.length));
  });

  it('has no picture in it', async () => {
    const bytes = await pdfOf([demoPage('1-dwelling')]);
    expect(new TextDecoder('latin1').decode(bytes)).not.toMatch(/\/Image\b/u);
  });

  it('says its title, the day that it was given and what each page is', async () => {
    const { title, madeOn, marks } = await pdfRead(await pdfOf([pageOf([]), pageOf([], { subject: 'Bays' })]));
    expect([title, madeOn]).toEqual(['Ruler', 'D:20270301000000Z']);
    expect(marks).toEqual(['Ruler: A test', 'Ruler: Bays']);
  });

  it('is the same, byte for byte, for the same pages', async () => {
    const inks = [textInk('Hall \u05d7 ñ', { halo: 'paper' }), textInk('J1', { style: 'sheet-head' })];
    const [one, two] = [await pdfOf([pageOf(inks)]), await pdfOf([pageOf(inks)])];
    expect(one).toEqual(two);
    expect(await pdfOf([pageOf(inks.slice(1))])).not.toEqual(one);
  });

  it('carries the plan as a file of its own', async () => {
    const planText = planWrite(paperSourceOf(demoText('1-dwelling')).file);
    const { attached } = await pdfRead(await pdfOf([pageOf([])], planText));
    expect([...attached.keys()]).toEqual(['plan.json']);
    expect(new TextDecoder().decode(attached.get('plan.json'))).toBe(planText);
  });
});
