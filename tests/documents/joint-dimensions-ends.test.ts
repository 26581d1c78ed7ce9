import { describe, expect, it } from 'vitest';
import type { PlacedLabel } from '../../src/documents/drawing.ts';
import { drawingOf } from '../../src/documents/drawing-list.ts';
import { dimensionedDrawing, dimensionsLeft } from '../../src/documents/joint-dimensions.ts';
import { labelsLed } from '../../src/documents/label-led.ts';
import { labelsPlace } from '../../src/documents/label-place.ts';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import { jointSettings } from '../../src/documents/setting-out.ts';
import { framePoint } from '../../src/documents/setting-out-frame.ts';
import { haloMm } from '../../src/documents/styles.ts';
import { type Point, pointDirection, pointDistance } from '../../src/geometry/point.ts';
import { boxAround, boxOf } from '../../src/geometry/ring.ts';
import { lineHits } from './label-check.ts';
import { basePapers, floorSource, handSource, withPapers } from './setting-out-fixture.ts';

/** Labels of joints as they stand at a scale, with room for leaders all round the floor, and the edges of the floor. */
function sheetOf(source: PaperSource, scale: number) {
  const drawing = dimensionedDrawing(source, drawingOf(source.plan, source.analysis), { scale });
  const window = boxAround(boxOf(source.plan.rooms.flatMap(({ outline }) => outline)), 60 * scale);
  const last = labelsLed(drawing.items, { paperPerPlan: 1 / scale, window });
  const placed = labelsPlace(drawing, { paperPerPlan: 1 / scale, last });
  const seated = new Set(placed.map(({ label }) => label));
  return {
    labels: placed.filter(({ label }) => label.ref.kind === 'joint'),
    left: drawing.items.filter((item) => item.shape === 'label').filter((item) => !seated.has(item)),
    edges: drawing.items.flatMap((item) => (item.shape === 'line' && item.layer === 'edges' ? [item.points] : [])),
  };
}

function words({ form }: Pick<PlacedLabel, 'form'>): string {
  return form
    .map(({ text }) => text)
    .join(' ')
    .replaceAll('\u00a0', ' ');
}

/** Of a text such as "J12 x 10 150 y 9913", or the same without a name; null where it has not both figures. */
function figuresOf(text: string): Point | null {
  const [, x, y] = /x (-?[\d ]+) y (-?[\d ]+)$/u.exec(text) ?? [];
  const number = (digits: string) => Number(digits.replaceAll(' ', ''));
  return x === undefined || y === undefined ? null : [number(x), number(y)];
}

/** Off the place that a text names, mm on paper; the figures are whole mm, so half a millimetre of the floor each way is rounding. */
function expectAtPlaces(source: PaperSource, scale: number): number {
  const frames = new Map(jointSettings(source).map(({ joint, frame }) => [joint.id, frame]));
  const { labels } = sheetOf(source, scale);
  const told = labels.flatMap((label) => {
    const figures = figuresOf(words(label));
    return figures === null ? [] : [{ label, figures }];
  });
  for (const { label, figures } of told) {
    const frame = frames.get(label.label.ref.id);
    if (frame === undefined || frame === null) throw new Error(`${words(label)} has no frame`);
    expect(words(label)).toMatch(new RegExp(`^${label.label.ref.id} x `, 'u'));
    expect(label.leader?.begins, words(label)).toBe('line');
    const off = pointDistance(label.leader?.from ?? [1e9, 1e9], framePoint(frame, figures));
    expect(off / scale, words(label)).toBeLessThanOrEqual(0.1);
  }
  return told.length;
}

/** The scale that each demo has on its sheet, and base points askew to nearly all of its joints. */
const floors = [
  ['1-dwelling', 50, [-1000, 3000], [9000, -4000]],
  ['1-dwelling', 100, [0, 9000], [12_000, 10_500]],
  ['2-public-library', 100, [0, 0], [20_000, 11_547]],
  ['3-market-hall', 200, [0, 0], [10_000, 3000]],
] as const;

describe.each(floors)('on %s at 1 : %i, set out from a line askew to its joints', (name, scale, one, two) => {
  const source = withPapers(floorSource(name), basePapers([one, two]));

  it('each x with its y stands by the name of its joint at a leader whose dot is the very place that they give', () => {
    expect(expectAtPlaces(source, scale)).toBeGreaterThan(10);
  });

  it('what has no such place is in the list, and the sheet says of which joints', () => {
    const { labels, left } = sheetOf(source, scale);
    const settings = jointSettings(source);
    const text = dimensionsLeft(settings, left) ?? '';
    const all = labels.map(words);
    for (const { joint, lies, points } of settings) {
      if (lies !== 'askew') continue;
      const isTold = points.every(([x, y]) =>
        all.some((each) => `${figuresOf(each)}` === `${x},${y}` && each.startsWith(`${joint.id} `)),
      );
      const isNamed = / and \d+ more/u.test(text) || new RegExp(`\\b${joint.id}\\b`, 'u').test(text);
      expect(isTold || isNamed, joint.id).toBe(true);
    }
  });

  it('no leader to an end runs back along its joint', () => {
    const settings = new Map(jointSettings(source).map((setting) => [setting.joint.id, setting]));
    for (const label of sheetOf(source, scale).labels.filter((each) => figuresOf(words(each)) !== null)) {
      const { leader } = label;
      const places = settings.get(label.label.ref.id)?.places ?? [];
      const [first, last] = [places[0], places.at(-1)];
      if (leader === undefined || first === undefined || last === undefined || places.length > 2) continue;
      const other = pointDistance(first, leader.from) < pointDistance(last, leader.from) ? last : first;
      const [ux, uy] = pointDirection(leader.from, leader.to);
      const [vx, vy] = pointDirection(leader.from, other);
      // common practice, no source: lines less than 25 degrees apart run into one, cos 25 = 0.906
      expect(ux * vx + uy * vy, words(label)).toBeLessThanOrEqual(0.906);
    }
  });
});

describe('text at a leader', () => {
  it.each([
    ['1-dwelling', 50, [-1000, 3000], [9000, -4000]],
    ['2-public-library', 100, [0, 0], [20_000, 11_547]],
    ['1-dwelling', 50],
    ['1-dwelling', 100],
    ['3-market-hall', 200],
  ] as const)('takes nothing of the edges of the floor on %s at 1 : %i', (name, scale, ...base) => {
    const plain = floorSource(name);
    const source = base.length === 0 ? withPapers(plain, {}) : withPapers(plain, basePapers(base as readonly Point[]));
    const { labels, edges } = sheetOf(source, scale);
    const led = labels.filter(({ leader }) => leader !== undefined);
    if (base.length > 0) expect(led.length).toBeGreaterThan(20);
    for (const label of led) {
      // with the ground that is laid behind it
      const whole = { ...label, widthMm: label.widthMm + 2 * haloMm, heightMm: label.heightMm + 2 * haloMm };
      for (const line of edges) expect(lineHits(whole, line, scale), words(label)).toBe(false);
    }
  });
});

describe('a joint that bends twice, drawn by hand in a hall of 9 x 6 m', () => {
  const course: readonly Point[] = [
    [3000, 6000],
    [3000, 4000],
    [5000, 2500],
    [5000, 0],
  ];

  it.each([
    [
      [0, 6000],
      [9000, 6000],
    ],
    [
      [0, 0],
      [3000, 4000],
    ],
  ] as const)('has each of its four places by x and y, ends and bends, from base points %j and %j', (one, two) => {
    expect(expectAtPlaces(handSource([course], basePapers([one, two])), 50)).toBe(4);
  });
});
