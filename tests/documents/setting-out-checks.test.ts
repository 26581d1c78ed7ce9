import { describe, expect, it } from 'vitest';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import { jointSettings } from '../../src/documents/setting-out.ts';
import { setOutChecks } from '../../src/documents/setting-out-checks.ts';
import { type Point, pointDistance } from '../../src/geometry/point.ts';
import { segmentDistance } from '../../src/geometry/segment.ts';
import { bay, box } from './fixture.ts';
import { basePapers, floorNames, floorSource, handSource, lowerCorners, withPapers } from './setting-out-fixture.ts';

function told(source: PaperSource): readonly string[] {
  return setOutChecks(source).map(({ words, lengthMm }) => `${words}: ${lengthMm}`);
}

/** Joints at 3 and at 6 m of a hall of 9 x 6 m, from wall to wall. */
const uprights: readonly (readonly Point[])[] = [3000, 6000].map((x) => [
  [x, 0],
  [x, 6000],
]);

/** The lower corners of the hall. */
const corners: readonly Point[] = [
  [0, 6000],
  [9000, 6000],
];

describe('diagonals to check in a hall of 9 x 6 m', () => {
  it('run from both base points to the far ends of joints, and cross', () => {
    const source = handSource(uprights, basePapers(corners));
    // by hand, Pythagoras: 6 and 6 m from either corner along the wall and across the hall, sqrt(72) = 8.485 m
    expect(told(source)).toEqual([
      'base point 1 to 2: 9000',
      'base point 1 to the upper end of J2: 8485',
      'base point 2 to the upper end of J1: 8485',
    ]);
  });

  it('are none between two base points at one place', () => {
    const source = handSource(uprights, basePapers([...corners, [9000, 6000]]));
    expect(setOutChecks(source).every(({ lengthMm }) => lengthMm > 0)).toBe(true);
    expect(told(source)[0]).toBe('base point 1 to 2: 9000');
  });

  it('stop at a wall where joints on this side of it can be measured to', () => {
    const source = handSource(uprights, basePapers(corners));
    // a wall half a metre thick from 4 to 4.5 m
    const bays = [bay('B1', ['r1'], box(0, 0, 4000, 6000), 6, 4), bay('B2', ['r1'], box(4500, 0, 4500, 6000), 6, 4.5)];
    // by hand: 3 m to the joint on the same side and 6 m across the hall, sqrt(45) = 6.708 m
    expect(told({ ...source, analysis: { ...source.analysis, bays } }).slice(1)).toEqual([
      'base point 1 to the upper end of J1: 6708',
      'base point 2 to the upper end of J2: 6708',
    ]);
  });

  it('say so where nothing can be reached but through a wall', () => {
    const source = handSource(
      uprights.slice(1),
      basePapers([
        [0, 6000],
        [9000, 6000],
      ]),
    );
    const bays = [bay('B1', ['r1'], box(0, 0, 4000, 6000), 6, 4), bay('B2', ['r1'], box(4500, 0, 4500, 6000), 6, 4.5)];
    const [, one, two] = told({ ...source, analysis: { ...source.analysis, bays } });
    expect(one).toContain('(a wall, a column or open ground lies between)');
    expect(two).not.toContain('lies between');
  });

  it('are as long as the sheet has them where base points lie askew to the joints', () => {
    const source = handSource(
      uprights.slice(0, 1),
      basePapers([
        [0, 0],
        [3000, 4000],
      ]),
    );
    // by hand: 5 m lie between the points. [3000, 6000] is 3 and 6 m from point 1, sqrt(45) = 6.708 m. Of point 2, 0.6 along and 0.8 down, it is 2 m down and
    // so 1.6 m along and 1.2 m aside: towards point 1 and beside the line lies [3000, 0], 4 m up
    expect(told(source)).toEqual([
      'base point 1 to 2: 5000',
      'base point 1 to the lower end of J1: 6708',
      'base point 2 to the upper end of J1: 4000',
    ]);
  });

  it('run between the ends of joints where grid lines lie beside the floor', () => {
    const source = handSource(uprights, {
      gridLines: [
        { name: 'A', from: [-1000, -2000], to: [-1000, 8000] },
        { name: '1', from: [-2000, 7000], to: [11_000, 7000] },
      ],
    });
    // by hand: 3 m lie between the joints, which are 6 m long: sqrt(9 + 36) = 6.708 m
    expect(told(source)).toEqual([
      'the lower end of J1 to the upper end of J2: 6708',
      'the upper end of J1 to the lower end of J2: 6708',
    ]);
  });

  it('are none where all that is marked lies on one line', () => {
    const along: readonly Point[] = [
      [2000, 6000],
      [4000, 6000],
    ];
    const base = basePapers([
      [0, 6000],
      [9000, 6000],
    ]);
    expect(told(handSource([along], base))).toEqual(['base point 1 to 2: 9000']);
  });
});

it.each(floorNames)(
  'on the floor %s each length that is checked lies between ends of joints, base points or the origin that is marked',
  (name) => {
    const plain = floorSource(name);
    const [one, two] = lowerCorners(plain);
    const skew = basePapers([one, [two[0] - 700, two[1] - 1300]]);
    for (const source of [plain, withPapers(plain, basePapers([one, two])), withPapers(plain, skew)]) {
      const settings = jointSettings(source);
      const ends = settings.flatMap(({ joint: { line } }) => [line[0] as Point, line.at(-1) as Point]);
      const origins = settings.flatMap(({ frame }) => (frame === null ? [] : [frame.origin]));
      const bases = (source.file.papers?.basePoints ?? []).map(({ at }) => at as Point);
      const marked = [...ends, ...origins, ...bases];
      const edges = source.analysis.bays.flatMap(({ outline }) =>
        outline.map((a, i) => [a, outline[(i + 1) % outline.length] as Point] as const),
      );
      for (const { words, lengthMm, between } of setOutChecks(source)) {
        for (const at of between)
          expect(Math.min(...marked.map((place) => pointDistance(place, at))), words).toBeLessThan(1);
        // an end of a joint stands on the floor or at its edge
        for (const at of between.filter((place) => ends.some((end) => pointDistance(end, place) < 1)))
          expect(Math.min(...edges.map(([a, b]) => segmentDistance(a, b, at))), words).toBeLessThan(1);
        expect(Math.abs(pointDistance(...between) - lengthMm)).toBeLessThanOrEqual(0.5);
      }
    }
  },
);
