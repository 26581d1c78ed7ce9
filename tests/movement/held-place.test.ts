import { describe, expect, it } from 'vitest';
import type { Ring } from '../../src/geometry/ring.ts';
import { bayBody } from '../../src/movement/bay-body.ts';
import { bayFloorOf } from '../../src/movement/bay-rooms.ts';
import { heldPlaceCount, regionsCentre } from '../../src/movement/held-place.ts';
import { type Movement, movementOf } from '../../src/movement/movement.ts';
import type { FindingFact } from '../../src/plan/finding.ts';
import type { Room } from '../../src/plan/plan.ts';
import { bayOf, gridSplit, type PlanFields, planOf, rectangle } from './grid-split.ts';

const split = gridSplit([0, 8000, 16000], [0, 5000], () => 'r1');

function moved(fields: PlanFields): Movement {
  const plan = planOf({
    screed: { class: 'CT-C25-F4', expansionPerK: 12e-6 },
    temperatures: { layingC: 15, highestC: 40, lowestC: 15 },
    rooms: [{ id: 'r1', name: 'Hall', outline: rectangle(0, 0, 16000, 5000) }],
    ...fields,
  });
  return movementOf(plan, split);
}

const codes = (movement: Movement, code: FindingFact['code']) => movement.findings.filter((f) => f.code === code);
const island = { id: 'j1', name: 'Island', outline: rectangle(1000, 1000, 2000, 1000) };

describe('an island without insulation below', () => {
  const movement = moved({ joinery: [{ ...island, under: 'no-insulation' }] });

  it('holds its bay: the point of no movement lies under it', () => {
    expect(movement.stillPoints.get('B1')).toEqual([2000, 1500]);
    expect(movement.stillPoints.get('B2')).toEqual([12000, 2500]);
  });

  it('is a finding with its name, its bay and its area', () => {
    expect(codes(movement, 'slab-contact')).toEqual([
      {
        code: 'slab-contact',
        at: [2000, 1500],
        refs: ['j1', 'B1'],
        name: 'Island',
        isRoom: false,
        bay: 'B1',
        areaM2: 2,
        cause: 'no-insulation',
      },
    ]);
  });

  it('is no second place: one island does not hold a bay twice', () => {
    expect(codes(movement, 'held-twice')).toEqual([]);
  });
});

describe('a room without insulation', () => {
  const rooms = (buildUp: object | undefined) => [
    { id: 'r1', name: 'Hall', outline: rectangle(0, 0, 8000, 5000) },
    { id: 'r2', name: 'Store', outline: rectangle(8000, 0, 8000, 5000), ...(buildUp && { buildUp }) },
  ];
  const parted = gridSplit([0, 8000, 16000], [0, 5000], (column) => (column === 0 ? 'r1' : 'r2'));
  const held = (fields: PlanFields, given = parted) => movementOf(planOf(fields), given);

  it('holds the whole of its bays, by its name', () => {
    const movement = held({ rooms: rooms({ insulationMm: 0 }) });
    expect(codes(movement, 'slab-contact')).toEqual([
      {
        code: 'slab-contact',
        at: [12000, 2500],
        refs: ['r2', 'B2'],
        name: 'Store',
        isRoom: true,
        bay: 'B2',
        areaM2: 40,
        cause: 'no-insulation',
      },
    ]);
    expect(codes(movement, 'held-twice')).toEqual([]);
  });

  it('is every room where the plan says so, but for one with insulation of its own', () => {
    const buildUp = { insulationMm: 0 };
    expect(held({ buildUp, rooms: rooms(undefined) }).held.map(({ object }) => object)).toEqual(['r1', 'r2']);
    expect(held({ buildUp, rooms: rooms({ insulationMm: 30 }) }).held.map(({ object }) => object)).toEqual(['r1']);
  });

  it('is none whose insulation is not given', () => {
    expect(held({ rooms: rooms(undefined) }).held).toEqual([]);
    expect(held({ rooms: rooms({ coveringMm: 10 }) }).held).toEqual([]);
  });

  it('holds its part of a bay over two rooms: the still point lies in its middle, at 12 m', () => {
    const open = { ...parted, bays: [bayOf('B1', ['r1', 'r2'], rectangle(0, 0, 16000, 5000))], joints: [], edges: [] };
    const movement = held({ rooms: rooms({ insulationMm: 0 }) }, open);
    expect(movement.held).toMatchObject([{ bay: 'B1', object: 'r2', areaM2: 40 }]);
    expect(movement.stillPoints.get('B1')).toEqual([12000, 2500]);
    const twice = held(
      {
        rooms: rooms({ insulationMm: 0 }),
        slabContacts: [{ id: 'k1', outline: rectangle(1000, 1000, 1000, 1000) }],
      },
      open,
    );
    expect(codes(twice, 'held-twice')).toMatchObject([{ bay: 'B1', names: ['k1', 'Store'] }]);
  });

  it('leaves what stands on bare slab in it its own name, and counts the floor once', () => {
    const movement = held({
      rooms: rooms({ insulationMm: 0 }),
      slabContacts: [{ id: 'k1', outline: rectangle(9000, 1000, 1000, 1000) }],
      joinery: [{ id: 'j1', name: 'Safe', outline: rectangle(12000, 1000, 1000, 1000), fixedThrough: true }],
    });
    expect(movement.held.map(({ object, areaM2 }) => [object, areaM2])).toEqual([
      ['k1', 1],
      ['r2', 39],
    ]);
    expect(codes(movement, 'held-twice')).toEqual([]);
  });
});

describe('the floor of a doorway in a bay over two rooms', () => {
  // a doorway 1 m wide leads 60 mm into the wall above the second room
  const plan = planOf({
    rooms: [
      { id: 'r1', name: 'Hall', outline: rectangle(0, 0, 4000, 3000) },
      { id: 'r2', name: 'Store', outline: rectangle(4000, 0, 4000, 3000) },
    ],
  });
  const outline: Ring = [
    [0, 0],
    [5000, 0],
    [5000, -60],
    [6000, -60],
    [6000, 0],
    [8000, 0],
    [8000, 3000],
    [0, 3000],
  ];
  const rooms = new Map(plan.rooms.map((room) => [room.id, room]));
  const areaM2 = (id: string) => {
    const floor = bayFloorOf(bayBody(bayOf('B1', ['r1', 'r2'], outline)), rooms.get(id) as Room, rooms);
    return regionsCentre(floor).areaMm2 / 1e6;
  };

  it('is counted to the room that it opens to: 12.06 m2 for that, 12 m2 for the other', () => {
    expect(areaM2('r1')).toBeCloseTo(12, 9);
    expect(areaM2('r2')).toBeCloseTo(12.06, 9);
  });
});

describe('joinery', () => {
  it('on insulation holds nothing', () => {
    expect(moved({ joinery: [{ ...island, under: 'insulated' }] }).held).toEqual([]);
  });

  it('that is bolted through the screed holds it, though it stands on insulation', () => {
    const { held } = moved({ joinery: [{ ...island, under: 'insulated', fixedThrough: true }] });
    expect(held.map((place) => place.cause)).toEqual(['fixed-through']);
  });

  it('that is built off the slab is a hole and holds nothing, bolted down or not', () => {
    expect(moved({ joinery: [{ ...island, under: 'built-off-slab', fixedThrough: true }] }).held).toEqual([]);
  });

  it('that stands across a joint holds both bays, each with its own part', () => {
    const counter = {
      id: 'j2',
      name: 'Counter',
      outline: rectangle(7000, 2000, 3000, 600),
      under: 'no-insulation' as const,
    };
    const { held, stillPoints } = moved({ joinery: [counter] });
    expect(held.map(({ bay, areaM2 }) => [bay, areaM2])).toEqual([
      ['B1', 0.6],
      ['B2', 1.2],
    ]);
    expect(stillPoints.get('B1')).toEqual([7500, 2300]);
    expect(stillPoints.get('B2')).toEqual([9000, 2300]);
  });

  it('that only touches a bay does not hold it', () => {
    const { held } = moved({ slabContacts: [{ id: 'k1', outline: rectangle(8000, 1000, 1000, 1000) }] });
    expect(held.map((place) => place.bay)).toEqual(['B2']);
  });
});

describe('a bay that is held in two places', () => {
  const places = {
    slabContacts: [
      { id: 'k1', outline: rectangle(0, 0, 1000, 1000) },
      { id: 'k2', outline: rectangle(5000, 2000, 1000, 3000) },
    ],
  };

  it('moves about their mean, weighted by area', () => {
    // 1 m2 at (0.5, 0.5) and 3 m2 at (5.5, 3.5): (0.5 + 16.5) / 4, (0.5 + 10.5) / 4
    const [x, y] = moved(places).stillPoints.get('B1') ?? [];
    expect(x).toBeCloseTo(4250, 6);
    expect(y).toBeCloseTo(2750, 6);
  });

  it('is a finding with the compression that warming brings', () => {
    // 12e-6 * 25 K * 25,000 N/mm2 = 7.5 N/mm2 of the 25 of class C25
    const [finding, ...more] = codes(moved(places), 'held-twice');
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ bay: 'B1', refs: ['B1', 'k1', 'k2'], names: ['k1', 'k2'], stress: 'compression' });
    expect(finding).toHaveProperty('stressNPerMm2', expect.closeTo(7.5, 9));
    expect(finding).toHaveProperty('strengthNPerMm2', 25);
  });

  it('is a finding with the tension of its shrinkage where that is nearer to what the screed bears', () => {
    // 0.5 mm/m * 25,000 N/mm2 = 12.5 N/mm2 against half of class F4, 2 N/mm2
    const drying = { ...places, screed: { class: 'CT-C25-F4' as const, expansionPerK: 12e-6, shrinkageMmPerM: 0.5 } };
    const [finding] = codes(moved(drying), 'held-twice');
    expect(finding).toMatchObject({ stress: 'tension', strengthNPerMm2: 2 });
    expect(finding).toHaveProperty('stressNPerMm2', expect.closeTo(12.5, 9));
  });
});

describe('two units side by side on bare slab', () => {
  const units = (gap: number) => ({
    slabContacts: [
      { id: 'k1', outline: rectangle(1000, 1000, 1000, 600) },
      { id: 'k2', outline: rectangle(2000 + gap, 1000, 1000, 600) },
    ],
  });

  it('hold the bay in one place', () => {
    expect(codes(moved(units(0)), 'held-twice')).toEqual([]);
    expect(codes(moved(units(0)), 'slab-contact')).toHaveLength(2);
  });

  it('hold it in two where there is floor between them', () => {
    expect(codes(moved(units(300)), 'held-twice')).toHaveLength(1);
  });

  it('are counted once where they lie over each other', () => {
    const { held } = moved(units(-400));
    expect(held.reduce((sum, place) => sum + place.areaM2, 0)).toBeCloseTo(0.96, 9);
  });
});

it('no ground holds a bay in no place', () => {
  expect(heldPlaceCount([])).toBe(0);
});

it('a bay with a core in it is still about the middle of the floor that is there', () => {
  const cored = {
    ...split,
    bays: [bayOf('B1', ['r1'], rectangle(0, 0, 8000, 5000), [rectangle(0, 0, 4000, 5000)])],
    joints: [],
    edges: [],
  };
  expect(movementOf(planOf({}), cored).stillPoints.get('B1')).toEqual([6000, 2500]);
});
