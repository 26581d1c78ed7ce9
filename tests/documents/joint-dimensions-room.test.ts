import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { DrawingItem, PlacedLabel } from '../../src/documents/drawing.ts';
import { drawingOf } from '../../src/documents/drawing-list.ts';
import { dimensionedDrawing } from '../../src/documents/joint-dimensions.ts';
import { gridLinesShort } from '../../src/documents/joint-dimensions-grid.ts';
import { besideWords, doorwayWords } from '../../src/documents/joint-dimensions-words.ts';
import { jointPlanPages } from '../../src/documents/joint-plan.ts';
import { labelsLed } from '../../src/documents/label-led.ts';
import { labelsPlace } from '../../src/documents/label-place.ts';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import { type JointSetting, jointSettings } from '../../src/documents/setting-out.ts';
import { setOutChecks } from '../../src/documents/setting-out-checks.ts';
import { setOutTable } from '../../src/documents/setting-out-table.ts';
import { textStyles } from '../../src/documents/styles.ts';
import { figureText } from '../../src/documents/words.ts';
import { type Point, pointDistance } from '../../src/geometry/point.ts';
import { boxAround, boxOf } from '../../src/geometry/ring.ts';
import { lineHits } from './label-check.ts';
import { pageTexts, textOverJoints, textOverText } from './page-check.ts';
import { demoNames } from './paper-fixture.ts';
import { basePapers, floorSource, hallSource, withPapers } from './setting-out-fixture.ts';

const realNames = ['westport_5', 'duplex_L0', 'westport_2']
  .map((name) => `${name}.json`)
  .filter((name) => existsSync(new URL(`../../../shared/real-plans/${name}`, import.meta.url)));

function plainText(text: string): string {
  return text.replaceAll('\u00a0', ' ');
}

/** Texts on the joint plan that stand by themselves, lines of one label as one: "J12", "J12 x 4500", "4500 J3, J7". */
function textsOf(source: PaperSource): readonly string[] {
  return jointPlanPages(source).flatMap(({ groups }) =>
    groups.flatMap(({ ref, inks }) => {
      const texts = inks.flatMap((ink) => (ink.ink === 'text' ? [plainText(ink.text)] : []));
      return ref === null ? texts : [texts.join(' ')];
    }),
  );
}

const figure = '-?\\d[\\d ]*';
/** "x 4500", "y 12 350 / 12 352", "x 1200 y 300", "74 from Kitchen"; a string has its figure alone or before the joints of it. */
const figureOf = new RegExp(`^J\\d+ ([xy] ${figure}|\\d+ from )`, 'u');

describe.each([...demoNames, ...realNames])('on the joint plan of %s at the scale that is chosen for it', (name) => {
  const source = floorSource(name);

  it('each joint of the list stands by its number, so that its row is found without searching', () => {
    const numbers = new Set(textsOf(source).flatMap((text) => text.match(/\bJ\d+\b/gu) ?? []));
    const rows = setOutTable(source).rows.map(([joint]) => String(joint));
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.filter((row) => !numbers.has(row))).toEqual([]);
  });

  // from the request for these sheets: at least 80 of 100
  it('at least four joints in five have what they are set out by on the drawing', () => {
    const texts = new Set(textsOf(source));
    const settings = jointSettings(source).filter(({ frame }) => frame !== null);
    const told = settings.filter((setting) =>
      settings.some((other) => isOneLine(setting, other) && isTold(other, texts)),
    );
    expect(settings.length).toBeGreaterThan(5);
    expect(told.length / settings.length).toBeGreaterThanOrEqual(0.8);
  });

  it('each joint whose figure has found no room is named beside the drawing as one of the list, and no other is', () => {
    const all = textsOf(source).join(' ');
    const named =
      /Only in the list Setting out of joints are the figures of ([^.]*)\./u.exec(all)?.[1]?.split(', ') ?? [];
    const texts = new Set(textsOf(source));
    const settings = jointSettings(source).filter(({ frame }) => frame !== null);
    const missed = settings.filter((setting) => !isTold(setting, texts)).map(({ joint }) => joint.id);
    const parts = settings.filter((setting) =>
      settings.some((other) => isPart(setting, other) && isTold(other, texts)),
    );
    const open = new Set(missed.filter((id) => !parts.some(({ joint }) => joint.id === id)));
    expect(new Set(named)).toEqual(open);
  });

  it('no text stands over text or a joint, and none is smaller than 1.8 mm', () => {
    for (const page of jointPlanPages(source)) {
      expect(textOverText(page)).toEqual([]);
      // numbers of findings stand in pins, which have a ground of their own
      expect(textOverJoints(page).filter((text) => !/^\d+$/u.test(text))).toEqual([]);
      for (const { style } of pageTexts(page)) expect(textStyles[style].capMm).toBeGreaterThanOrEqual(1.8);
    }
  });

  it('no leader runs over a text, and each begins at its joint or at the name of it', () => {
    // mm on paper, common practice, no source: what is half a hand away is seen at a glance; the bare number of a joint, by which its row is found, may
    // stand a hand away
    const longestMm = { figure: 45, name: 80 };
    const scale = 100;
    const drawing = dimensionedDrawing(source, drawingOf(source.plan, source.analysis), { scale });
    const window = boxAround(boxOf(source.plan.rooms.flatMap(({ outline }) => outline)), 60 * scale);
    const last = labelsLed(drawing.items, { paperPerPlan: 1 / scale, window });
    const placed = labelsPlace(drawing, { paperPerPlan: 1 / scale, last });
    const names = new Map(placed.filter(isSeated).map((label) => [label.label.ref.id, label]));
    for (const label of placed) {
      const { leader } = label;
      if (leader === undefined) continue;
      expect(pointDistance(leader.from, leader.to) / scale).toBeLessThan(
        longestMm[/ /u.test(words(label)) ? 'figure' : 'name'] + 0.001,
      );
      const near = placed.filter((other) => pointDistance(other.at, label.at) < 150 * scale);
      for (const other of near) {
        if (lineHits(other, [leader.from, leader.to], scale))
          throw new Error(`${words(label)} runs over ${words(other)}`);
      }
      const from = leader.begins === 'line' ? label.label.led?.from : [names.get(label.label.ref.id)?.at];
      const mm = Math.min(...(from ?? []).map((at) => pointDistance(at ?? [1e9, 1e9], leader.from)));
      // from the middle of a name to its edge and a gap: names are no wider than 60 mm
      expect(mm).toBeLessThan(leader.begins === 'line' ? 0.001 : 31 * scale);
    }
  });
});

function isSeated({ leader, label: { ref } }: PlacedLabel): boolean {
  return leader === undefined && ref.kind === 'joint';
}

function words({ form }: PlacedLabel): string {
  return form.map(({ text }) => text).join(' ');
}

/** Whether two joints are parts of one line, which has one figure at its longest part. */
function isPart(one: JointSetting, other: JointSetting): boolean {
  return (
    one !== other && one.joint.run === other.joint.run && isOneLine(one, other) && !/doorway/u.test(one.joint.kind)
  );
}

/** Whether what sets out one joint sets out the other: the same figure from the same origin. */
function isOneLine(one: JointSetting, other: JointSetting): boolean {
  if (one === other) return true;
  return (
    one.runningMm !== null && one.frame === other.frame && one.lies === other.lies && one.runningMm === other.runningMm
  );
}

/** Whether a text tells where a joint lies: "J12 x 4500" or "J12 74 from Hall" beside it or at a leader, "4500" or "4500 J12, J13" on a string, x and y of
 *  each of its ends. */
function isTold({ joint, runningMm, points }: JointSetting, texts: ReadonlySet<string>): boolean {
  const all = [...texts];
  const own = all.filter((text) => text.startsWith(`${joint.id} `));
  if (own.some((text) => /^J\d+ ([xy] -?[\d ]+( \/ -?[\d ]+)?$|\d+ from )/u.test(text))) return true;
  const figures = (mm: number) => plainText(figureText(mm, 0));
  if (runningMm !== null)
    return texts.has(figures(runningMm)) || all.some((text) => text.startsWith(`${figures(runningMm)} J`));
  return points.every(([x, y]) => {
    const end = `x ${figures(x)} y ${figures(y)}`;
    return texts.has(end) || own.some((text) => text.endsWith(` ${end}`));
  });
}

describe('the figure of a joint in a doorway', () => {
  it('is from a face of the wall that it stands in, and is on the drawing for every doorway of a dwelling', () => {
    const source = floorSource('1-dwelling');
    const doorways = source.analysis.joints.filter(({ kind }) => kind === 'doorway').map(({ id }) => id);
    const told = textsOf(source).flatMap((text) => /^(J\d+) \d+ from /u.exec(text)?.[1] ?? []);
    expect(doorways.length).toBeGreaterThan(5);
    expect(new Set(told)).toEqual(new Set(doorways));
    for (const text of textsOf(source).filter((each) => / from /u.test(each) && /^J\d/u.test(each)))
      expect(text).toMatch(figureOf);
  });

  it('is told from the nearer face, from each where both are as near, and not where rooms of one name would be mixed up', () => {
    const [joint] = floorSource('1-dwelling').analysis.joints;
    if (joint === undefined) throw new Error('no joint');
    const doorway = {
      id: 'd1',
      line: [
        [0, 0],
        [800, 0],
      ],
      wallMm: 150,
      leaf: true,
    } as never;
    const place = (fromMm: readonly [number | null, number | null], names: readonly [string, string]) =>
      doorwayWords([
        {
          doorway,
          name: 'd1',
          clearMm: 800,
          depthMm: 150,
          sides: [
            { room: 'a', name: names[0], leafMm: null },
            { room: 'b', name: names[1], leafMm: null },
          ],
          leaf: 'none',
          joints: [{ joint, fromMm, offLeafMm: 0, isUnderLeaf: false, isSecond: false }],
          reason: null,
        },
      ]).get(joint.id);
    // by hand: 90 + 60 are a wall of 150
    expect(place([90, 60], ['Hall', 'Bath'])).toBe('60 from Bath');
    expect(place([75, 75], ['Hall', 'Bath'])).toBe('75 from each face');
    expect(place([90, 60], ['Room', 'Room'])).toBeUndefined();
    expect(place([null, null], ['Hall', 'Bath'])).toBeUndefined();
  });
});

describe('a joint that is out of square by less than it is set out to', () => {
  it('has each figure on the side of its own end as it is read, whichever end is nearer to the origin', () => {
    const [joint] = floorSource('1-dwelling').analysis.joints;
    if (joint === undefined) throw new Error('no joint');
    const setting = (points: readonly Point[], places: readonly Point[]): JointSetting => ({
      joint,
      frame: null,
      lies: 'askew',
      runningMm: null,
      points,
      places,
      checkMm: null,
    });
    const ends: readonly Point[] = [
      [5329, 0],
      [5325, 4000],
    ];
    // a level line is read from left to right
    const level: readonly Point[] = [
      [0, 0],
      [4000, 0],
    ];
    expect(besideWords(setting(ends, level))).toBe('x 5329 / 5325');
    expect(besideWords(setting(ends, [...level].reverse()))).toBe('x 5325 / 5329');
    // an upright one from the foot of the sheet to its head
    const upright: readonly Point[] = [
      [0, 0],
      [0, -4000],
    ];
    expect(besideWords(setting(ends, upright))).toBe('x 5329 / 5325');
    expect(besideWords(setting(ends, [...upright].reverse()))).toBe('x 5325 / 5329');
  });
});

it('diagonals that are checked lie on the floor, however far off the base points are', () => {
  for (const name of ['1-dwelling', '2-public-library']) {
    const plain = floorSource(name);
    const { minX, maxX, minY, maxY } = boxOf(plain.plan.rooms.flatMap(({ outline }) => outline));
    const source = withPapers(
      plain,
      basePapers([
        [minX - 200_000, maxY + 150_000],
        [minX - 150_000, maxY + 150_000],
      ]),
    );
    const checks = setOutChecks(source);
    expect(checks.length).toBeGreaterThan(0);
    for (const { lengthMm } of checks) expect(lengthMm).toBeLessThanOrEqual(Math.hypot(maxX - minX, maxY - minY) + 1);
  }
});

/** Stretches of the grid lines that stand upright on the sheet and run over the floor of the hall. */
function uprightsOverFloor(items: readonly DrawingItem[]): readonly string[] {
  return items.flatMap((item) => {
    if (item.shape !== 'line' || item.style !== 'grid-line') return [];
    const [minY, maxY] = [Math.min(...item.points.map(([, y]) => y)), Math.max(...item.points.map(([, y]) => y))];
    const isUpright = item.points.every(([x]) => Math.abs(x - (item.points[0]?.[0] ?? 0)) < 1);
    return isUpright && maxY > 0 && minY < 6000 ? [item.ref.id] : [];
  });
}

describe('grid lines 100 mm apart across a hall of 9 x 6 m', () => {
  const uprights = Array.from({ length: 91 }, (_, i) => ({
    name: String(i + 1),
    from: [100 * i, -1000] as [number, number],
    to: [100 * i, 7000] as [number, number],
  }));
  const base = { name: 'A', from: [-1000, 6000] as [number, number], to: [10_000, 6000] as [number, number] };

  it.each([50, 100])(
    'have names as far as these have room at 1 : %i, the first, the last and the origin always',
    (scale) => {
      const source = hallSource({ gridLines: [...uprights, base] });
      const { items } = dimensionedDrawing(source, drawingOf(source.plan, source.analysis), { scale });
      const ends = items.flatMap((item) => (item.shape === 'mark' && item.style === 'grid-end' ? [item] : []));
      const names = [...new Set(ends.map(({ text }) => text))];
      expect(names).toEqual(expect.arrayContaining(['1', '91', 'A']));
      // by hand: 9 m are 180 mm at 1 : 50 and 90 mm at 1 : 100, and an end takes more than 5 mm of it
      expect(names.length).toBeLessThanOrEqual(9000 / scale / 5 + 2);
      expect(names.length).toBeGreaterThan(5);
      // only the first, which joints are set out from, and the last run over the floor: nothing is crowded out by the others
      expect(new Set(uprightsOverFloor(items))).toEqual(new Set(['grid-line-1', 'grid-line-91']));
      const short = `${uprights.length - 2} grid lines are too close together to run across the floor: they are ticks at its edge`;
      const unnamed = uprights.length + 1 - names.length;
      expect(gridLinesShort(source, scale)).toBe(`${short}, ${unnamed} of them without a name.`);
      // in one row above and one below, none stacked on another
      expect(new Set(ends.filter(({ text }) => text !== 'A').map(({ at }) => Math.round(at[1]))).size).toBe(2);
      expect(textsOf(source).join(' ')).toMatch(/89 grid lines are too close together to run across the floor/u);
    },
  );

  it('are left out between names where even ticks would run into each other, and the sheet says how many', () => {
    const source = hallSource({ gridLines: [...uprights, base] });
    const { items } = dimensionedDrawing(source, drawingOf(source.plan, source.analysis), { scale: 200 });
    // by hand: 100 mm are half a millimetre of paper at 1 : 200
    const drawn = new Set(
      items.flatMap((item) => (item.shape === 'line' && item.style === 'grid-line' ? [item.ref.id] : [])),
    );
    const left = uprights.length + 1 - drawn.size;
    expect(left).toBeGreaterThan(50);
    expect(gridLinesShort(source, 200)).toContain(`, ${left} are left out.`);
  });

  it('are all named where they have room', () => {
    const gridLines = [...uprights.filter((_, i) => i % 30 === 0), base];
    const source = hallSource({ gridLines });
    const { items } = dimensionedDrawing(source, drawingOf(source.plan, source.analysis), { scale: 50 });
    expect(gridLinesShort(source, 50)).toBeNull();
    expect(items.filter((item) => item.shape === 'mark' && item.style === 'grid-end')).toHaveLength(
      2 * gridLines.length,
    );
  });
});
