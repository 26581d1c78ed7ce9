import { describe, expect, it } from 'vitest';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import { jointSettings } from '../../src/documents/setting-out.ts';
import { setOutTable } from '../../src/documents/setting-out-table.ts';
import type { Cell } from '../../src/documents/table.ts';
import { type Point, pointDistance } from '../../src/geometry/point.ts';
import { segmentDistance } from '../../src/geometry/segment.ts';
import { STRAIGHT_MM } from '../../src/geometry/tolerance.ts';
import { basePapers, floorNames, floorSource, lowerCorners, rowOf, turned, withPapers } from './setting-out-fixture.ts';

/** Places from the figures of a row, by a frame reckoned here: from the base points alone and the side that the list tells. */
function places(
  row: Readonly<Record<string, Cell>>,
  [one, two]: readonly [Point, Point],
  isLeft: boolean,
): readonly Point[] {
  const length = pointDistance(one, two);
  const [ux, uy] = [(two[0] - one[0]) / length, (two[1] - one[1]) / length];
  const [vx, vy] = isLeft ? [uy, -ux] : [-uy, ux];
  const at = (x: number, y: number): Point => [one[0] + x * ux + y * vx, one[1] + x * uy + y * vy];
  const running = (key: 'Running x' | 'Running y', or: Cell | undefined) => Number(row[key] ?? or);
  const end = (which: 'Near' | 'Far') =>
    at(running('Running x', row[`${which} end x`]), running('Running y', row[`${which} end y`]));
  const bends = [...String(row.Bends).matchAll(/x (-?[\d ]+) y (-?[\d ]+)/gu)];
  const number = (text: string | undefined) => Number((text ?? '').replaceAll(' ', ''));
  return [end('Near'), ...bends.map(([, x, y]) => at(number(x), number(y))), end('Far')];
}

describe.each(floorNames)('on the floor %s', (name) => {
  it('snapping lines by the figures of the list gives every joint back within half a millimetre each way', () => {
    const plain = floorSource(name);
    const corners = lowerCorners(plain);
    // a base line that runs off the walls as well
    for (const base of [corners, [corners[0], [corners[1][0] - 700, corners[1][1] - 1300]] as const]) {
      const source = withPapers(plain, basePapers(base));
      const table = setOutTable(source);
      expect(table.rows).toHaveLength(plain.analysis.joints.length);
      const isLeft = table.notes.some((note) => note.includes('to the left, seen from'));
      // half a millimetre each way is 0.71 straight across; what rounding of the plan has bent a joint by comes on top
      const most = Math.hypot(0.5, 0.5) + 2 * STRAIGHT_MM;
      plain.analysis.joints.forEach(({ line }, i) => {
        const found = places(rowOf(table, i), base, isLeft);
        for (const point of line) {
          const off = Math.min(...found.slice(1).map((b, k) => segmentDistance(found[k] as Point, b, point)));
          expect(off, `${table.rows[i]?.[0]}`).toBeLessThanOrEqual(most);
        }
      });
    }
  });

  it('has a figure for every joint from the walls alone, unless no wall of it is straight', () => {
    const source = withPapers(floorSource(name), {});
    const settings = jointSettings(source);
    expect(settings.map(({ joint: { id } }) => id)).toEqual(source.analysis.joints.map(({ id }) => id));
    for (const { frame, points, lies, runningMm } of settings) {
      expect(frame).not.toBeNull();
      expect(points.length).toBeGreaterThanOrEqual(2);
      expect(runningMm === null).toBe(lies === 'askew' || lies === 'bent');
    }
  });
});

it('the figures stay when the plan is turned and moved with its base points', () => {
  const plain = floorSource('2-public-library');
  const source = withPapers(plain, basePapers(lowerCorners(plain)));
  const figures = (of: PaperSource) =>
    jointSettings(of).map(({ lies, points, checkMm }) => ({ lies, points, checkMm }));
  for (const [angleDeg, by] of [
    [90, [0, 0]],
    [180, [12_345, -678]],
    [37, [-4000, 2500]],
    [271.5, [1, 1]],
  ] as const)
    expect(figures(turned(source, angleDeg, by))).toEqual(figures(source));
});
