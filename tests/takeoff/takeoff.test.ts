import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { movementOf } from '../../src/movement/movement.ts';
import { jointKinds, type Quantities, type RoomQuantities, type Split } from '../../src/plan/analysis.ts';
import { takeoffOf } from '../../src/takeoff/takeoff.ts';
import { bayOf, gridSplit, jointOf, type PlanFields, planOf, rectangle } from '../movement/grid-split.ts';

/** A hall of 8 x 5 m and a study of 4 x 5 m beside it, a joint of 5 m between them. */
const split: Split = gridSplit([0, 8000, 12_000], [0, 5000], (column) => (column === 0 ? 'hall' : 'study'));

function quantities(fields: PlanFields = {}, given: Split = split): Quantities {
  const plan = planOf({
    screed: { class: 'CT-C25-F4', thicknessMm: 65 },
    sealant: { widthMm: 8, capability: 0.25 },
    rooms: [
      { id: 'hall', name: 'Hall', outline: rectangle(0, 0, 8000, 5000) },
      { id: 'study', name: 'Study', outline: rectangle(8000, 0, 4000, 5000) },
    ],
    ...fields,
  });
  return takeoffOf(plan, given, movementOf(plan, given).held);
}

const room = (all: Quantities, id: string): RoomQuantities => {
  const found = all.rooms.find((one) => one.room === id);
  if (found === undefined) throw new Error(`no room ${id}`);
  return found;
};

describe('two rooms, 60 m2 together, with a joint between them', () => {
  const all = quantities();

  it('take the floor of both: 60 m2, 3.9 m3 and 7.8 t of screed at 65 mm', () => {
    expect(all.floorM2).toBeCloseTo(60, 9);
    expect(all.screedM3).toBeCloseTo(3.9, 9);
    expect(all.screedKg).toBeCloseTo(7800, 6);
    expect(all.insulationM2).toBeCloseTo(60, 9);
    expect(all.slabContactM2).toBe(0);
  });

  it('take edge strip along every wall and not along the joint', () => {
    expect(all.edgeStripM).toBeCloseTo(8 + 5 + 8 + 4 + 5 + 4, 9);
    expect(room(all, 'hall').edgeStripM).toBeCloseTo(21, 9);
  });

  it('share the joint between them half and half', () => {
    expect(all.jointM.field).toBeCloseTo(5, 9);
    expect(room(all, 'hall').jointM.field).toBeCloseTo(2.5, 9);
    expect(room(all, 'study').jointM.field).toBeCloseTo(2.5, 9);
  });

  it('take 0.24 litres of sealant: 5 m, 8 mm wide and 6 mm deep', () => {
    expect(all.sealantLitres).toBeCloseTo(0.24, 9);
  });
});

describe('sealant', () => {
  const rooms = (hall: 'timber' | 'stone-or-ceramic', study: 'timber' | 'textile') => [
    { id: 'hall', name: 'Hall', outline: rectangle(0, 0, 8000, 5000), covering: hall },
    { id: 'study', name: 'Study', outline: rectangle(8000, 0, 4000, 5000), covering: study },
  ];

  it('is taken where stone or ceramic ends at the joint', () => {
    expect(quantities({ rooms: rooms('stone-or-ceramic', 'timber') }).sealantLitres).toBeCloseTo(0.24, 9);
  });

  it('is not taken where other coverings run over the joint', () => {
    expect(quantities({ rooms: rooms('timber', 'textile') }).sealantLitres).toBe(0);
  });

  it('is not taken in a structural joint, which has a profile', () => {
    const joints = split.joints.map((j) => jointOf(j.id, j.bays, j.line, 'structural', ['s1']));
    const all = quantities({}, { ...split, joints });
    expect(all.sealantLitres).toBe(0);
    expect(all.jointM).toEqual({ doorway: 0, neck: 0, field: 0, structural: 5, zone: 0, drawn: 0 });
  });
});

describe('floor without insulation', () => {
  it('of 2 m2 in a floor of 20 m2 leaves 18 m2 of insulation under 1.3 m3 and 2600 kg of screed', () => {
    const one = gridSplit([0, 5000], [0, 4000], () => 'hall');
    const all = quantities({ slabContacts: [{ id: 'k1', outline: rectangle(1000, 1000, 2000, 1000) }] }, one);
    expect([all.screedM3, all.screedKg, all.insulationM2].map((figure) => Math.round(figure * 1e6) / 1e6)).toEqual([
      1.3, 2600, 18,
    ]);
  });

  it('is taken off the insulation and counted as slab contact, in the room where it lies', () => {
    const island = {
      id: 'j1',
      name: 'Island',
      outline: rectangle(9000, 1000, 2000, 1000),
      under: 'no-insulation' as const,
    };
    const all = quantities({ joinery: [island] });
    expect(all.slabContactM2).toBeCloseTo(2, 9);
    expect(all.insulationM2).toBeCloseTo(58, 9);
    expect(room(all, 'study').slabContactM2).toBeCloseTo(2, 9);
    expect(room(all, 'hall').slabContactM2).toBe(0);
    expect(all.screedM3).toBeCloseTo(3.9, 9);
  });

  it('is all of a room that has none: 20 of 60 m2, in its name', () => {
    const rooms = [
      { id: 'hall', name: 'Hall', outline: rectangle(0, 0, 8000, 5000) },
      { id: 'study', name: 'Study', outline: rectangle(8000, 0, 4000, 5000), buildUp: { insulationMm: 0 } },
    ];
    const all = quantities({ rooms });
    expect(all.slabContactM2).toBeCloseTo(20, 9);
    expect(all.insulationM2).toBeCloseTo(40, 9);
    expect(room(all, 'study')).toMatchObject({ slabContactM2: 20, insulationM2: 0, floorM2: 20 });
    expect(room(all, 'hall').slabContactM2).toBe(0);
  });

  it('is not what is bolted through: that stands on its insulation', () => {
    const unit = { id: 'j1', name: 'Unit', outline: rectangle(9000, 1000, 2000, 1000), fixedThrough: true };
    expect(quantities({ joinery: [unit] }).insulationM2).toBeCloseTo(60, 9);
  });
});

describe('a bay that lies in two rooms', () => {
  it('passes its joints and floor on by the area in each', () => {
    // one open floor of both rooms, 40 and 20 m2, with a joint of 6 m to a third bay of the study alone
    const open: Split = {
      bays: [
        bayOf('B1', ['hall', 'study'], rectangle(0, 0, 12_000, 5000)),
        bayOf('B2', ['study'], rectangle(6000, 5000, 6000, 1000)),
      ],
      joints: [
        jointOf(
          'J1',
          ['B1', 'B2'],
          [
            [6000, 5000],
            [12_000, 5000],
          ],
        ),
      ],
      edges: [],
      pieces: [
        { bay: 'B1', room: 'hall', areaM2: 40, regions: [] },
        { bay: 'B1', room: 'study', areaM2: 20, regions: [] },
        { bay: 'B2', room: 'study', areaM2: 6, regions: [] },
      ],
    };
    const all = quantities({}, open);
    // half of 6 m is the first bay's, two thirds of that the hall's
    expect(room(all, 'hall').jointM.field).toBeCloseTo(2, 9);
    expect(room(all, 'study').jointM.field).toBeCloseTo(4, 9);
    expect(room(all, 'study').floorM2).toBeCloseTo(26, 9);
  });
});

describe('any floor', () => {
  const floors = fc.record({
    widths: fc.array(fc.integer({ min: 10, max: 90 }), { minLength: 1, maxLength: 5 }),
    heights: fc.array(fc.integer({ min: 10, max: 90 }), { minLength: 1, maxLength: 4 }),
    rooms: fc.integer({ min: 1, max: 3 }),
    bare: fc.boolean(),
  });
  const lines = (sides: readonly number[]) =>
    [0, ...sides].map((_, n) => sides.slice(0, n).reduce((x, side) => x + side * 100, 0));
  const figures = (q: RoomQuantities) => [
    q.edgeStripM,
    ...jointKinds.map((kind) => q.jointM[kind]),
    q.sealantLitres,
    q.screedM3,
    q.screedKg,
    q.insulationM2,
    q.slabContactM2,
    q.floorM2,
  ];

  it('takes in its rooms together what it takes in all', () => {
    fc.assert(
      fc.property(floors, ({ widths, heights, rooms, bare }) => {
        const [xs, ys] = [lines(widths), lines(heights)];
        const [width, height] = [xs.at(-1) ?? 0, ys.at(-1) ?? 0];
        const ids = Array.from({ length: rooms }, (_, i) => `r${i}`);
        const all = quantities(
          {
            // each room a third of the columns; outlines matter only to where a held place is booked
            rooms: ids.map((id, i) => ({
              id,
              name: id,
              outline: rectangle((i * width) / rooms, 0, width / rooms, height),
            })),
            slabContacts: bare ? [{ id: 'k1', outline: rectangle(100, 100, 700, 700) }] : [],
          },
          gridSplit(xs, ys, (column) => ids[column % rooms] ?? 'r0'),
        );
        const together = all.rooms.map(figures).reduce((sum, one) => sum.map((figure, i) => figure + (one[i] ?? 0)));
        for (const [i, figure] of figures(all).entries()) expect(together[i]).toBeCloseTo(figure, 6);
        expect(all.floorM2).toBeCloseTo((width * height) / 1e6, 6);
        expect(all.edgeStripM).toBeCloseTo((2 * (width + height)) / 1000, 6);
        expect(all.slabContactM2).toBeCloseTo(bare ? 0.49 : 0, 6);
      }),
    );
  });
});
