import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Point, pointDistance } from '../../../src/geometry/point.ts';
import { type Joint, type JointKind, jointIsFound, untiledJoint } from '../../../src/plan/analysis.ts';
import { jointsKept, jointsRestedOn } from '../../../src/plan/edits/joints.ts';
import { drawnTakenAway, jointsLetGo, jointTakenAway } from '../../../src/plan/edits/joints-gone.ts';
import { planEmpty } from '../../../src/plan/empty.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';
import { analysed, freeJointM, jointM } from '../../contract/analysed.ts';
import { house } from './house.ts';

function joint(
  id: string,
  run: string,
  line: readonly Point[],
  kind: JointKind = 'field',
  sources: string[] = [],
): Joint {
  return {
    ...{ id, run, line, kind, sources, key: id, lengthM: 1, bays: ['B1', 'B2'], reasons: [] },
    ...{
      closingMm: 1,
      openingMm: 0,
      slidingMm: 0,
      worstClosingMm: 1,
      profileMm: 10,
      profileTakesMm: 5,
      sealantNeedsMm: 4,
    },
    ...untiledJoint,
  };
}

/** A level line from wall to wall in two stretches, and an upright one that stands on it. */
const bar = [
  joint('J1', 'R1', [
    [0, 3000],
    [4000, 3000],
  ]),
  joint('J2', 'R1', [
    [4000, 3000],
    [8000, 3000],
  ]),
];
const stem = joint('J3', 'R2', [
  [4000, 3000],
  [4000, 6000],
]);
const tee = [...bar, stem];
const empty = planEmpty('Test');

describe('a joint that is kept', () => {
  it('becomes a drawn joint with the rest of its straight line, as one', () => {
    const kept = jointsKept(empty, tee, ['J2']);
    expect(kept.file).toEqual({
      ...empty,
      drawnJoints: [
        {
          id: 'x1',
          line: [
            [0, 3000],
            [8000, 3000],
          ],
        },
      ],
    });
    expect(kept).toMatchObject({ ids: ['x1'], also: ['J1'] });
  });

  it('has the line that it ends on kept with it, and the line that this one ends on', () => {
    const kept = jointsKept(empty, tee, ['J3']);
    expect(kept.file.drawnJoints?.map(({ line }) => line)).toEqual([
      [
        [4000, 3000],
        [4000, 6000],
      ],
      [
        [0, 3000],
        [8000, 3000],
      ],
    ]);
    expect(kept).toMatchObject({ ids: ['x1', 'x2'], also: ['J1', 'J2'] });
    const twig = joint('J4', 'R3', [
      [4000, 4500],
      [6000, 4500],
    ]);
    expect(jointsKept(empty, [...tee, twig], ['J4']).also).toEqual(['J3', 'J1', 'J2']);
  });

  it('needs no other where it ends on one that stands anyway', () => {
    for (const kind of ['doorway', 'structural', 'zone', 'drawn'] as const) {
      const standing = bar.map((each) => ({ ...each, kind }));
      expect(jointsKept(empty, [...standing, stem], ['J3'])).toMatchObject({ ids: ['x1'], also: [] });
    }
  });

  it('is several lines where a column stands in the middle of its line', () => {
    const kept = jointsKept(
      empty,
      [
        joint('J1', 'R1', [
          [0, 0],
          [1000, 0],
        ]),
        joint('J2', 'R1', [
          [1300, 0],
          [4000, 0],
        ]),
      ],
      ['J1'],
    );
    expect(kept).toMatchObject({ ids: ['x1', 'x2'], also: ['J2'] });
  });

  it('crossed by another line leaves that line alone', () => {
    const across = [
      joint('J4', 'R2', [
        [4000, 0],
        [4000, 3000],
      ]),
      joint('J5', 'R2', [
        [4000, 3000],
        [4000, 6000],
      ]),
    ];
    expect(jointsKept(empty, [...bar, ...across], ['J1']).also).toEqual(['J2']);
  });

  it('keeps what is entered of each of its stretches for the register, by the line that it is now', () => {
    const keyed = tee.map((each, i) => ({ ...each, key: `field:hall@${2 + 2 * i},3` }));
    const entered = [...keyed.map(({ key }) => key), 'doorway:d1'].map((key, i) => ({ key, profile: `P${i}` }));
    const kept = jointsKept({ ...empty, papers: { joints: entered } }, keyed, ['J3']).file;
    expect(kept.papers?.joints).toEqual([
      { key: 'drawn:x2@2,3', profile: 'P0' },
      { key: 'drawn:x2@4,3', profile: 'P1' },
      { key: 'drawn:x1@6,3', profile: 'P2' },
      { key: 'doorway:d1', profile: 'P3' },
    ]);
  });

  it('that stands anyway is not drawn once more', () => {
    const doorway = joint(
      'J1',
      'R1',
      [
        [0, 0],
        [900, 0],
      ],
      'doorway',
      ['d1'],
    );
    expect(jointsKept(house, [doorway], ['J1'])).toEqual({ file: house, ids: [], also: [] });
  });
});

it('a line rests on found joints that its ends meet, not on those beside them or on those that stand anyway', () => {
  const line: readonly Point[] = [
    [2000, 3001],
    [2000, 6000],
  ];
  expect(jointsRestedOn(line, tee)).toEqual([bar[0]]);
  expect(
    jointsRestedOn(
      line.map(([x, y]): Point => [x, y + 1]),
      tee,
    ),
  ).toEqual([]);
  expect(jointsRestedOn(line, [joint('J1', 'R1', bar[0]?.line ?? [], 'drawn', ['x1'])])).toEqual([]);
});

describe('a joint that is taken away', () => {
  it('is noted where it was found, once', () => {
    const once = jointTakenAway(empty, stem);
    expect(once).toEqual({
      ...empty,
      noJoint: [
        {
          id: 'n1',
          line: [
            [4000, 3000],
            [4000, 6000],
          ],
        },
      ],
    });
    expect(jointTakenAway(once, stem)).toBe(once);
  });

  it('leaves the plan where it was drawn, and its whole line is noted', () => {
    const { drawnJoints, ...withoutDrawn } = house;
    const part: readonly Point[] = [
      [3000, 3200],
      [3000, 4500],
    ];
    const after = jointTakenAway(house, joint('J1', 'R1', part, 'drawn', ['x1']));
    const noted = after.noJoint?.at(-1);
    expect(noted?.line).toEqual(drawnJoints?.[0]?.line);
    expect(after).toEqual({ ...withoutDrawn, noJoint: [...(house.noJoint ?? []), noted] });
    expect(drawnTakenAway(house, ['x1'])).toEqual(after);
    // Another stretch of the same line finds nothing left to take.
    expect(jointTakenAway(after, joint('J2', 'R1', part, 'drawn', ['x1']))).toBe(after);
  });

  it('stays where it stands anyway', () => {
    expect(
      jointTakenAway(
        house,
        joint(
          'J1',
          'R1',
          [
            [5000, 3200],
            [5000, 6000],
          ],
          'structural',
          ['s1'],
        ),
      ),
    ).toBe(house);
    expect(
      jointTakenAway(
        house,
        joint(
          'J1',
          'R1',
          [
            [4060, 1000],
            [4060, 1900],
          ],
          'doorway',
          ['d1'],
        ),
      ),
    ).toBe(house);
  });
});

it('joints that were drawn or taken away are let go of, either or both', () => {
  const { drawnJoints: _drawn, ...withoutDrawn } = house;
  const { noJoint: _taken, ...withoutTaken } = house;
  expect(jointsLetGo(house, { drawn: true, taken: false })).toEqual(withoutDrawn);
  expect(jointsLetGo(house, { drawn: false, taken: true })).toEqual(withoutTaken);
  expect(jointsLetGo(house, { drawn: false, taken: false })).toBe(house);
  expect(jointsLetGo(empty, { drawn: true, taken: true })).toBe(empty);
});

function demo(name: string): PlanFile {
  return JSON.parse(readFileSync(new URL(`../../../demo-plans/${name}`, import.meta.url), 'utf8'));
}

function caseOf(name: string): PlanFile {
  return JSON.parse(readFileSync(new URL(`../../cases/${name}.json`, import.meta.url), 'utf8')).plan;
}

describe('on a floor', () => {
  it.each([
    ['the dwelling', demo('1-dwelling.json')],
    ['a T', caseOf('t-shape')],
    ['a core with lines round it', caseOf('core-pinwheel')],
    ['a neck', caseOf('neck-passage')],
  ])('all joints of %s that are kept stand as they stood, none of them loose', (_name, file) => {
    const { analysis } = analysed(file);
    const kept = jointsKept(
      file,
      analysis.joints,
      analysis.joints.map(({ id }) => id),
    );
    const after = analysed(kept.file).analysis;
    expect(kept.ids.length).toBeGreaterThan(0);
    expect(freeJointM(after)).toBe(0);
    expect(jointM(after)).toBeCloseTo(jointM(analysis), 6);
    expect(after.findings.filter(({ code }) => code === 'drawn-joint-loose')).toEqual([]);
  });

  it('any one joint that is kept is not loose', () => {
    const file = caseOf('core-pinwheel');
    const { analysis } = analysed(file);
    for (const { id } of analysis.joints) {
      const kept = jointsKept(file, analysis.joints, [id]);
      expect(analysed(kept.file).analysis.findings.filter(({ code }) => code === 'drawn-joint-loose')).toEqual([]);
    }
  });

  it.each([
    ['an intermediate joint', caseOf('t-shape')],
    ['the joint across a neck', caseOf('neck-passage')],
  ])('%s that is taken away is not found there again', (_name, file) => {
    const { analysis } = analysed(file);
    const [taken] = analysis.joints.filter(jointIsFound);
    if (!taken) throw new Error('no joint to take away');
    const after = analysed(jointTakenAway(file, taken)).analysis;
    const [a, b] = [taken.line[0] as Point, taken.line[taken.line.length - 1] as Point];
    const again = after.joints.filter(({ line }) => {
      const [c, d] = [line[0] as Point, line[line.length - 1] as Point];
      return pointDistance(a, c) + pointDistance(b, d) < 500 || pointDistance(a, d) + pointDistance(b, c) < 500;
    });
    expect(again).toEqual([]);
  });
});
