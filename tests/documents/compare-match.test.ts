import { describe, expect, it } from 'vitest';
import { type Comparison, comparisonOf } from '../../src/documents/compare.ts';
import { compareBaysTable, compareJointsTable } from '../../src/documents/compare-tables.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { rectangle } from './compare-fixture.ts';
import { hallAndStore } from './paper-fixture.ts';

/** Made by hand: a hall of 12 x 5 m whose bays have no limit to speak of, with joints drawn across it. */

type Drawn = NonNullable<PlanFile['drawnJoints']>[number];

const limits = { screed: { limits: { areaM2: 200, lengthM: 30, aspect: 20 } } };
const joint = (id: string, ...line: [Point, Point]): Drawn => ({ id, line });
const across = (xMm: number, id = 'x1') => joint(id, [xMm, 0], [xMm, 5000]);

function hall(drawnJoints: readonly Drawn[], over: Partial<PlanFile> = {}) {
  return hallAndStore({
    ...limits,
    rooms: [rectangle('hall', [0, 0], [12_000, 5000])],
    doorways: [],
    drawnJoints: [...drawnJoints],
    ...over,
  });
}

/** Of joints or bays: what became of each, its number before and now, and where it was part of. */
function told(changes: Comparison['joints'] | Comparison['bays']): readonly string[] {
  return changes.map(({ what, before, now, kin }) =>
    [what, before?.id ?? '-', now?.id ?? '-', ...(kin.length > 0 ? [`(${kin.join(' ')})`] : [])].join(' '),
  );
}

describe('a joint between two versions', () => {
  it.each([5, 50, 600])('that was moved by %s mm is told as moved by that', (mm) => {
    for (const id of ['x1', 'x9']) {
      const { joints } = comparisonOf(hall([across(6000)]), hall([across(6000 + mm, id)]));
      expect(told(joints)).toEqual(['moved J1 J1']);
      expect(joints[0]?.movedMm).toBeCloseTo(mm, 6);
    }
  });

  it('that is a new one, farther off than a joint is moved, comes as the other goes', () => {
    const { joints } = comparisonOf(hall([across(3000)]), hall([across(9000, 'x9')]));
    expect(told(joints)).toEqual(['appeared - J1', 'went J1 -']);
  });

  // by hand: the hall grows from 5 to 7 m
  it('that was lengthened has changed in its length and has not moved', () => {
    const longer = hall([joint('x1', [6000, 0], [6000, 7000])], { rooms: [rectangle('hall', [0, 0], [12_000, 7000])] });
    const { joints } = comparisonOf(hall([across(6000)]), longer);
    expect(told(joints)).toEqual(['changed J1 J1']);
    expect([joints[0]?.before?.lengthM, joints[0]?.now?.lengthM, joints[0]?.movedMm]).toEqual([5, 7, 0]);
  });

  // by hand: a wall of 100 mm at 2.4 m leaves 2.4 m of the joint above it and 2.5 m below
  it('that a new wall parts goes on as one of its parts, and the other says where it comes from', () => {
    const rooms = [rectangle('hall', [0, 0], [12_000, 2400]), rectangle('h2', [0, 2500], [12_000, 5000])];
    const comparison = comparisonOf(hall([across(6000)]), hall([across(6000)], { rooms }));
    expect(told(comparison.joints)).toEqual(['changed J1 J1', 'appeared - J2 (J1)']);
    expect(comparison.joints.map(({ now }) => now?.lengthM)).toEqual([2.4, 2.5]);
    expect(compareJointsTable(comparison).rows.map((row) => row.at(-1))).toContain('where J1 was');
    const back = comparisonOf(hall([across(6000)], { rooms }), hall([across(6000)]));
    expect(told(back.joints)).toEqual(['changed J1 J1', 'went J2 - (J1)']);
    expect(compareJointsTable(back).rows.map((row) => row.at(-1))).toContain('where J1 is now');
  });

  it('whose width alone is another has changed, and says so', () => {
    const comparison = comparisonOf(hall([across(6000)]), hall([across(6000)], { jointProfile: { widthMm: 12 } }));
    expect(told(comparison.joints)).toEqual(['changed J1 J1']);
    expect(compareJointsTable(comparison).rows[0]?.at(-1)).toBe('profile 12.0 mm, was 10.0 mm');
  });

  it('that is one of the building now has changed its kind in its place', () => {
    const structuralJoints = [{ ...across(6000, 's1'), widthMm: 10 }];
    const comparison = comparisonOf(hall([across(6000)]), hall([], { structuralJoints }));
    expect(told(comparison.joints)).toEqual(['changed J1 J1']);
    expect(compareJointsTable(comparison).rows[0]?.at(-1)).toContain('kind was: Joint drawn by hand');
  });

  it.each([
    ['that is listed elsewhere in the file', [across(9000, 'b'), across(3000, 'a')]],
    ['whose id is that of another now', [across(3000, 'b'), across(9000, 'a')]],
    ['that was drawn from the other end', [joint('a', [3000, 5000], [3000, 0]), across(9000, 'b')]],
  ])('%s is as it was, and so is all else', (_, drawn) => {
    const { joints, bays, settings, orders } = comparisonOf(hall([across(3000, 'a'), across(9000, 'b')]), hall(drawn));
    expect(told(joints)).toEqual(['same J1 J1', 'same J2 J2']);
    expect(new Set(bays.map(({ what }) => what))).toEqual(new Set(['same']));
    expect([settings, orders]).toEqual([[], []]);
  });

  it('whose id was given up and given anew in another room is another joint', () => {
    const rooms = [rectangle('hall', [0, 0], [12_000, 5000]), rectangle('h2', [0, 5100], [12_000, 10_000])];
    const below = joint('x1', [6000, 5100], [6000, 10_000]);
    const { joints } = comparisonOf(hall([across(6000)], { rooms }), hall([below], { rooms }));
    expect(told(joints)).toEqual(['appeared - J1', 'went J1 -']);
  });
});

describe('a bay between two versions', () => {
  // by hand: 12 x 5 = 60 m2. Half of it is not more than half: neither half goes on as the bay
  it('that is split in halves is gone, and two are new on its floor', () => {
    const comparison = comparisonOf(hall([]), hall([across(6000)]));
    expect(told(comparison.bays)).toEqual(['appeared - B1 (B1)', 'appeared - B2 (B1)', 'went B1 - (B1 B2)']);
    expect(compareBaysTable(comparison).rows.map((row) => row.at(-1))).toEqual([
      'floor of B1 before',
      'floor of B1 before',
      'floor of B1, B2 now',
    ]);
  });

  // by hand: 8 x 5 = 40 of 60 m2 is more than half, 4 x 5 = 20 is not
  it('that is split in unequal parts goes on as the larger, and the smaller is new', () => {
    const { bays } = comparisonOf(hall([]), hall([across(8000)]));
    expect(told(bays)).toEqual(['changed B1 B1', 'appeared - B2 (B1)']);
    expect(bays.map(({ before, now }) => [before?.areaM2, now?.areaM2])).toEqual([
      [60, 40],
      [undefined, 20],
    ]);
  });

  it('that two were merged in goes on from the larger; from halves it is new', () => {
    expect(told(comparisonOf(hall([across(8000)]), hall([])).bays)).toEqual(['changed B1 B1', 'went B2 - (B1)']);
    expect(told(comparisonOf(hall([across(6000)]), hall([])).bays)).toEqual([
      'appeared - B1 (B1 B2)',
      'went B1 - (B1)',
      'went B2 - (B1)',
    ]);
  });

  it('that lies a little elsewhere has changed', () => {
    const { bays } = comparisonOf(hall([across(6000)]), hall([across(6200)]));
    expect(told(bays)).toEqual(['changed B1 B1', 'changed B2 B2']);
  });

  // by hand: of 2 and 10 m the joint makes 10 and 2 m. The large bays have 8 of 10 m in common; the small ones lie in the large ones of the other version
  it('of very different size in its place is another one, whichever number it has', () => {
    const comparison = comparisonOf(hall([across(2000)]), hall([across(10_000)]));
    const { bays } = comparison;
    expect(told(bays)).toEqual(['changed B2 B1', 'appeared - B2 (B2)', 'went B1 - (B1)']);
    // as large as it was, with 2 x 5 m of it where it was not
    expect([bays[0]?.before?.areaM2, bays[0]?.now?.areaM2]).toEqual([50, 50]);
    expect(compareBaysTable(comparison).rows[0]?.at(-1)).toBe('10.0 m\u00b2 of it elsewhere');
  });

  // by hand: four bays of 3 x 5 m against two of 12 x 2.5 m share 3 x 2.5 m each: half of the smaller, no more
  it('that others run across is replaced by them', () => {
    const upright = [across(3000, 'a'), across(6000, 'b'), across(9000, 'c')];
    const { bays } = comparisonOf(hall(upright), hall([joint('y', [0, 2500], [12_000, 2500])]));
    expect(told(bays)).toEqual(['appeared - B1', 'appeared - B2', 'went B1 -', 'went B2 -', 'went B3 -', 'went B4 -']);
  });
});
