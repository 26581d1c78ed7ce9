import { describe, expect, it } from 'vitest';
import { agreementsOf } from '../../src/analysis/agreement.ts';
import type { Point } from '../../src/geometry/point.ts';
import type { TileFieldReport } from '../../src/plan/analysis.ts';
import { planResolve } from '../../src/plan/resolve.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { analysed } from '../contract/analysed.ts';
import { box, type PlanJson, planJson, type TilesJson } from '../floors/plan-json.ts';
import { planOf } from '../floors/read.ts';

/** Setting out of tiles as others have it in print, each with where it was found. */

const inch = 25.4;

/** Four tiles of 24 in, without grout, and 1.5 in. */
const sliver = (origin: Point): PlanJson =>
  planJson('Sliver', [{ id: 'r1', name: 'Room', outline: box(0, 0, (4 * 24 + 1.5) * inch, 3 * 24 * inch) }], {
    tiles: { lengthMm: 24 * inch, widthMm: 24 * inch, groutMm: 0, origin },
  });

function fieldOf(json: PlanJson): TileFieldReport {
  const field = analysed(json).analysis.tiles?.fields[0];
  if (field === undefined) throw new Error('no tiles');
  return field;
}

const cutsIn = ({ cuts }: TileFieldReport) =>
  cuts.filter(({ tiles }) => tiles > 0).flatMap(({ sizesMm }) => sizesMm.map((size) => size / inch));

describe('14: tile of 24 in, a sliver of 1.5 in at one wall (tile education foundation)', () => {
  it('is a sliver of 1.5 in where tiles begin at the other wall', () => {
    const field = fieldOf(sliver([0, 0]));
    expect(cutsIn(field)).toHaveLength(1);
    expect(cutsIn(field)[0]).toBeCloseTo(1.5, 2);
    expect(field.slivers).toBe(3);
  });

  it('is two cuts of 12.75 in, centred: tile and sliver halved', () => {
    const field = fieldOf(sliver([12.75 * inch, 0]));
    expect(cutsIn(field)).toHaveLength(2);
    for (const size of cutsIn(field)) expect(size).toBeCloseTo(12.75, 2);
    expect([field.underHalf, field.slivers]).toEqual([0, 0]);
  });

  it('is brought to that by moving the set-out point', () => {
    const way = agreementsOf(planOf(sliver([0, 0])))?.find((each) => each.way === 'set-out');
    const origin = way?.setOuts[0]?.origin;
    if (origin === undefined) throw new Error('the set-out point was left where it is');
    const sizes = cutsIn(fieldOf(sliver(origin)));
    expect(sizes).toHaveLength(2);
    for (const size of sizes) expect(size).toBeCloseTo(12.75, 2);
  });
});

/** Codes of what is told of tiles in a room that they fill. */
function told(tiles: TilesJson, rest: Partial<PlanJson> = {}): string[] {
  const room = { id: 'r1', name: 'Room', outline: box(0, 0, 3012, 1806) };
  return analysed(planJson('Room', [room], { tiles: { groutMm: 3, origin: [0, 0], ...tiles }, ...rest }))
    .analysis.findings.map(({ code }) => code)
    .filter((code) => code.startsWith('tile-'));
}

describe('tiles with a side over 15 in, laid in an offset bond (ANSI A108.02)', () => {
  const offset = (lengthIn: number, share: number) =>
    told({
      lengthMm: lengthIn * inch,
      widthMm: 6 * inch,
      groutMm: 3,
      bond: 'offset',
      offsetMm: share * (lengthIn * inch + 3),
    });

  it('are shifted by at most 33 %', () => {
    expect(offset(24, 0.33)).not.toContain('tile-offset-large');
    expect(offset(24, 0.35)).toContain('tile-offset-large');
    expect(offset(24, 0.5)).toContain('tile-offset-large');
  });

  it('are as free as others with no side over 15 in', () => {
    expect(offset(15, 0.5)).not.toContain('tile-offset-large');
    expect(offset(15.1, 0.5)).toContain('tile-offset-large');
  });
});

it('grout on a floor is at least 3 mm wide (UK practice, as published)', () => {
  const square = { lengthMm: 600, widthMm: 600 };
  expect(told({ ...square, groutMm: 3 })).not.toContain('tile-grout-narrow');
  expect(told({ ...square, groutMm: 2 })).toContain('tile-grout-narrow');
});

describe('joints run straight, never saw-toothed (tile council of North America)', () => {
  const across = {
    drawnJoints: [
      {
        id: 'x1',
        line: [
          [602.5, 0],
          [602.5, 1806],
        ] as const,
      },
    ],
  };

  it('so that tiles of a half bond are cut across the courses, and told', () => {
    const half = { lengthMm: 602, widthMm: 299, groutMm: 2, bond: 'half' };
    expect(told(half, across)).toContain('tile-joint-across-courses');
    expect(told({ ...half, bond: 'straight' }, across)).not.toContain('tile-joint-across-courses');
  });
});

/** Usual with tilers, without a source: 10 % beyond what is laid, 15 % askew, 20 % in a herringbone. */
it.each([
  [{}, 0.1],
  [{ angleDeg: 90 }, 0.1],
  [{ bond: 'third' }, 0.1],
  [{ angleDeg: 45 }, 0.15],
  [{ bond: 'herringbone' }, 0.2],
  [{ bond: 'herringbone', angleDeg: 45 }, 0.2],
  [{ angleDeg: 45, allowance: 0.07 }, 0.07],
] as const)('an order of tiles laid as %o has an allowance of %d', (tiles, allowance) => {
  const file: PlanFile = {
    ...{ format: 'screed-bays/plan', version: 1, name: '', rooms: [] },
    tiles: { lengthMm: 600, widthMm: 300, ...tiles },
  };
  expect(planResolve(file).tiles?.allowance).toBe(allowance);
});
