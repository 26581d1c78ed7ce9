import { describe, expect, it } from 'vitest';
import type { Split } from '../../src/plan/analysis.ts';
import { fieldReport } from '../documents/tile-fixture.ts';
import { edgeOf, gridSplit, jointOf, rectangle } from '../movement/grid-split.ts';
import { lineOf, lineText, takeOffOfTwoRooms, twoRooms, twoRoomsFields } from './order-fixture.ts';

/** A hall of 8 x 5 m and a study of 4 x 5 m, 60 m2 together, with a joint of 5 m between them. The arithmetic stands beside each figure; packs and
 *  allowances are those of shared/order-starts.json (common practice, no source) where none are entered. */

const rooms = twoRoomsFields.rooms ?? [];

describe('edge strip', () => {
  it('is as high as the build-up and what stands above it: 60 + 65 + 5 + 10 + 20 = 160 mm', () => {
    expect(lineOf(takeOffOfTwoRooms(), 'edge-strip:160').spec).toMatch(/^160 mm high/u);
  });

  it('takes a roll of 25 m for each room: walls of 8 + 5 + 8 = 21 m and 4 + 5 + 4 = 13 m', () => {
    // 34 x 1.05 = 35.7; a roll serves for 25 / 1.05 = 23.8 m
    const line = lineOf(takeOffOfTwoRooms(), 'edge-strip:160');
    expect(lineText(line)).toBe('34.00 + 1.70 = 35.70 m: 2 rolls of 25 m');
    expect(line.order?.rooms).toEqual([
      { room: 'hall', count: 1 },
      { room: 'study', count: 1 },
    ]);
    expect(line.allowance.words).toContain('overlap of 100 mm');
    expect(line.allowance.words).toContain('5 % cut to waste');
  });

  it('counts the overlaps: the 21 m of the hall from rolls of 10 m have two splices, the 13 m of the study one', () => {
    // corners of the hall at 8 and 13 m: 10, 9.9 to 19.9, 19.8 to 21; of the study at 4 and 9 m: 10, 9.9 to 13.
    // 34 + 3 x 0.1 = 34.3; the 8.8 and the 6.9 m that are left serve no other room
    const all = takeOffOfTwoRooms({ order: { stripRollM: 10, stripAllowance: 0 } });
    expect(lineText(lineOf(all, 'edge-strip:160'))).toBe('34.00 + 0.30 = 34.30 m: 5 rolls of 10 m');
  });

  it('says how many rolls serve where off-cuts go on to the next room: 4 instead of 5', () => {
    // hall 10 + 10 + 1.2 m; the 8.8 m left are used in the study, which takes 4.3 m more of a fourth: 8.8 + 4.3 - 0.1 = 13.
    // 8.8 m end 200 mm short of the corner at 9 m, clear of it
    const all = takeOffOfTwoRooms({ order: { stripRollM: 10, stripAllowance: 0 } });
    expect(lineOf(all, 'edge-strip:160').notes.join(' ')).toContain('4 in all where off-cuts go on to the next room');
  });

  it('has a line for each height: a room on the bare slab is 60 mm lower', () => {
    const bare = rooms.map((room) => (room.id === 'study' ? { ...room, buildUp: { insulationMm: 0 } } : room));
    const all = takeOffOfTwoRooms({ fields: { rooms: bare } });
    expect(lineOf(all, 'edge-strip:160').net).toBeCloseTo(21, 9);
    expect(lineOf(all, 'edge-strip:100').net).toBeCloseTo(13, 9);
  });

  it('is counted where the build-up is not entered, its height not known', () => {
    const { lines } = takeOffOfTwoRooms({ fields: { buildUp: undefined } });
    const line = lineOf({ lines, currency: '', cost: null }, 'edge-strip:unknown');
    expect(line.spec).toMatch(/^height not known: build-up not entered/u);
    expect(line.net).toBeCloseTo(34, 9);
  });

  it('closes round a room past its movement joints, and is cut at joints of the building', () => {
    // one room of 12 x 5 m: 34 m and 0.1 m where it closes; at a joint of the building two runs with ends of their own
    const of = (kind: 'field' | 'structural') => {
      const one = gridSplit([0, 8000, 12_000], [0, 5000], () => 'hall');
      const split = { ...one, joints: one.joints.map((joint) => ({ ...joint, kind })) };
      return lineText(
        lineOf(takeOffOfTwoRooms({ split, order: { stripRollM: 50, stripAllowance: 0 } }), 'edge-strip:160'),
      );
    };
    expect(of('field')).toBe('34.00 + 0.10 = 34.10 m: 1 roll of 50 m');
    expect(of('structural')).toBe('34.00 + 0.00 = 34.00 m: 1 roll of 50 m');
  });

  it('tells walls and columns apart: a column of 0.4 x 0.4 m takes 1.6 m, and 0.1 m more where it closes', () => {
    const ring = rectangle(1000, 1000, 400, 400);
    const column = edgeOf('E9', 'B1', 'hall', [...ring, ring[0] ?? [0, 0]]);
    const split: Split = { ...twoRooms, edges: [...twoRooms.edges, { ...column, along: 'column', object: 'c1' }] };
    const line = lineOf(takeOffOfTwoRooms({ split, order: { stripAllowance: 0 } }), 'edge-strip:160');
    expect(line.parts).toEqual([
      { name: 'walls', amount: 34 },
      { name: 'columns', amount: 1.6 },
    ]);
    expect(lineText(line)).toBe('35.60 + 0.10 = 35.70 m: 2 rolls of 25 m');
  });
});

describe('joint profile', () => {
  it('takes whole bars joint by joint and one to spare: 5 m are 3 bars of 2 m, 4 with the spare, 8 m', () => {
    expect(lineText(lineOf(takeOffOfTwoRooms(), 'profile:field:10'))).toBe('5.00 + 3.00 = 8.00 m: 4 bars of 2 m');
  });

  it('does not use the rest of a bar for another joint: joints of 2.5, 2.5 and 5 m are 2 + 2 + 3 bars', () => {
    // four bays: joints across of 8 and 4 m, along of 2.5 and 2.5 m; 4 + 2 + 2 + 2 = 10 bars and none to spare
    const split = gridSplit([0, 8000, 12_000], [0, 2500, 5000], (column) => (column === 0 ? 'hall' : 'study'));
    const all = takeOffOfTwoRooms({ split, order: { profileSpares: 0 } });
    expect(lineText(lineOf(all, 'profile:field:10'))).toBe('17.00 + 3.00 = 20.00 m: 10 bars of 2 m');
  });

  it('takes two bars for a joint of two bars that is drawn 0.1 mm too long', () => {
    const joints = [
      jointOf(
        'J1',
        ['B1', 'B2'],
        [
          [8000, 0],
          [8000, 4000.1],
        ],
      ),
    ];
    const all = takeOffOfTwoRooms({ split: { ...twoRooms, joints }, order: { profileSpares: 0 } });
    expect(lineOf(all, 'profile:field:10').order?.count).toBe(2);
  });

  it('has a line for each kind and width: a joint of the building has its own', () => {
    const line = [
      [8000, 0],
      [8000, 5000],
    ] as const;
    const joints = [jointOf('J1', ['B1', 'B2'], line, 'structural', ['s1'])];
    const all = takeOffOfTwoRooms({
      split: { ...twoRooms, joints },
      fields: { structuralJoints: [{ id: 's1', line: [...line], widthMm: 30 }] },
    });
    expect(lineOf(all, 'profile:structural:30')).toMatchObject({
      net: 5,
      item: 'Joint profile, joints of the building',
    });
    expect(all.lines.some(({ group }) => group === 'sealant')).toBe(false);
  });
});

describe('sealant and backer', () => {
  it('takes one cartridge for 5 m, 8 mm wide and 6 mm deep: 0.24 l and 15 % are 0.276 l', () => {
    // depth: half the width, at least 6 mm (sources.json#sealant-depth)
    const line = lineOf(takeOffOfTwoRooms(), 'sealant:8');
    expect(line.spec).toBe('8 mm wide, 6 mm deep');
    expect(lineText(line)).toBe('0.24 + 0.04 = 0.28 l: 1 cartridge of 310 ml');
    // 5 m x 8 mm x 8 mm; some texts take depth equal to width under 12 mm (US detailing text, restated in trade literature)
    expect(line.notes.join(' ')).toContain('as deep as wide, it takes 0.32 l net');
  });

  it('says nothing of other depths where half the width is deep enough: 20 mm wide, 10 mm deep', () => {
    const wide = lineOf(takeOffOfTwoRooms({ fields: { sealant: { widthMm: 20, capability: 0.25 } } }), 'sealant:20');
    expect(wide.spec).toBe('20 mm wide, 10 mm deep');
    expect(wide.notes.join(' ')).not.toContain('as deep as wide');
  });

  it('takes three cartridges of 100 ml for 276 ml', () => {
    expect(lineOf(takeOffOfTwoRooms({ order: { cartridgeMl: 100 } }), 'sealant:8').order?.count).toBe(3);
  });

  it('takes no cartridge more than is full: 240 ml and no allowance are two of 120 ml', () => {
    const order = { cartridgeMl: 120, sealantAllowance: 0 };
    expect(lineOf(takeOffOfTwoRooms({ order }), 'sealant:8').order?.count).toBe(2);
  });

  it('takes 6 m of backer for 5 m and 10 %, by whole metres', () => {
    expect(lineText(lineOf(takeOffOfTwoRooms(), 'backer:8'))).toBe('5.00 + 0.50 = 5.50 m: 6 m');
  });
});

describe('sleeves', () => {
  it('are assumed, two a joint and two to spare, where none are entered, and said to be', () => {
    const line = lineOf(takeOffOfTwoRooms(), 'sleeves');
    expect(lineText(line)).toBe('2 + 2 = 4 pieces: 4 sleeves');
    expect(line.parts).toEqual([{ name: 'assumed', amount: 2 }]);
    expect(line.notes.join(' ')).toContain('count them on the heating plan');
    // EN 1264-4: at least 300 mm
    expect(line.spec).toContain('300 mm');
  });

  it('are those that are entered: 5 pipes across the joint', () => {
    const line = lineOf(takeOffOfTwoRooms({ joints: [{ key: 'J1', pipes: 5 }] }), 'sleeves');
    expect(lineText(line)).toBe('5 + 2 = 7 pieces: 7 sleeves');
    expect(line.parts).toEqual([{ name: 'entered', amount: 5 }]);
  });

  it('are none where it is entered that no pipe crosses', () => {
    const all = takeOffOfTwoRooms({ joints: [{ key: 'J1', pipes: 0 }] });
    expect(all.lines.some(({ key }) => key === 'sleeves')).toBe(false);
  });

  it('leave no word of pipes in the screed of a floor without heating', () => {
    const notesOf = (fields: object) =>
      takeOffOfTwoRooms({ fields })
        .lines.filter(({ group }) => group === 'screed')
        .flatMap(({ notes }) => notes)
        .join(' ');
    expect(notesOf({})).toContain('heating pipes displace');
    expect(notesOf({ rooms: rooms.map((room) => ({ ...room, heated: false })) })).not.toContain('pipes');
  });

  it('are not assumed where heated floor ends, nor at a joint of the building', () => {
    const cold = rooms.map((room) => (room.id === 'study' ? { ...room, heated: false } : room));
    const joints = [
      jointOf(
        'J1',
        ['B1', 'B2'],
        [
          [8000, 0],
          [8000, 5000],
        ],
        'structural',
      ),
    ];
    for (const all of [
      takeOffOfTwoRooms({ fields: { rooms: cold } }),
      takeOffOfTwoRooms({ split: { ...twoRooms, joints } }),
    ]) {
      expect(all.lines.some(({ key }) => key === 'sleeves')).toBe(false);
    }
  });
});

describe('screed', () => {
  it('of 60 m2 at 65 mm is 3.9 m3, 4.1 m3 with 5 %: one load of 6 m3', () => {
    // 3.9 x 1.05 = 4.095, which two decimals tell as 4.09 or 4.10 by the last bit
    const line = lineOf(takeOffOfTwoRooms(), 'screed:volume');
    expect(line.gross).toBeCloseTo(4.095, 9);
    expect(lineText(line)).toMatch(/: 1 load of 6 m\u00b3$/u);
    expect(line.notes.join(' ')).toContain('heating pipes displace is ignored');
  });

  it('takes nine loads of a mixer of 0.5 m3: 4.095 / 0.5 = 8.19', () => {
    expect(lineOf(takeOffOfTwoRooms({ order: { loadM3: 0.5 } }), 'screed:volume').order?.count).toBe(9);
  });

  it('weighs 7800 kg at 2000 kg/m3, 8190 kg with 5 %', () => {
    expect(lineText(lineOf(takeOffOfTwoRooms(), 'screed:weight'))).toBe('7800 + 390 = 8190 kg');
  });
});

describe('insulation', () => {
  it('of 60 m2 and 5 % for off-cuts is 63 m2: 13 packs of 5 m2', () => {
    const line = lineOf(takeOffOfTwoRooms({ order: { insulationPackM2: 5 } }), 'insulation:60');
    expect(lineText(line)).toBe('60.00 + 3.00 = 63.00 m\u00b2: 13 packs of 5 m\u00b2');
  });

  it('is ordered and paid by the whole square metre where no pack is entered', () => {
    const line = lineOf(
      takeOffOfTwoRooms({ order: { insulationAllowance: 0.004, prices: { insulationM2: 10 } } }),
      'insulation:60',
    );
    // 60 m2 and 0.4 % are 60.24 m2
    expect(lineText(line)).toBe('60.00 + 0.24 = 60.24 m\u00b2: 61 m\u00b2');
    expect(line.cost).toBe(610);
  });

  it('is told by its layers where they make up the insulation, else as one', () => {
    const layers = (insulationLayersMm: number[]) =>
      takeOffOfTwoRooms({ order: { insulationLayersMm } }).lines.filter(({ group }) => group === 'insulation');
    expect(layers([20, 40]).map(({ spec, net }) => [spec, net])).toEqual([
      ['20 mm, layer 1 of 2 from the slab up', 60],
      ['40 mm, layer 2 of 2 from the slab up', 60],
    ]);
    const [one, ...others] = layers([20, 30]);
    expect([one?.spec, others.length]).toEqual(['60 mm', 0]);
    expect(one?.notes).toContain('The layers entered, 20 + 30 mm, are not 60 mm: counted as one.');
    expect([...layers([20, 40]), ...layers([60]), ...layers([])].flatMap(({ notes }) => notes)).toEqual([]);
    expect(layers([60, 40])[0]?.notes).toContain('The layers entered, 60 + 40 mm, are not 60 mm: counted as one.');
  });

  it('is none in a room on the bare slab: 40 m2 of 60 are left', () => {
    const bare = rooms.map((room) => (room.id === 'study' ? { ...room, buildUp: { insulationMm: 0 } } : room));
    const all = takeOffOfTwoRooms({ fields: { rooms: bare } });
    const lines = all.lines.filter(({ group }) => group === 'insulation');
    expect(lines.map(({ key, net }) => [key, net])).toEqual([['insulation:60', 40]]);
    // the upturn goes with it: 40 x 2 / 1.92 = 41.67 and 21 m x 0.1 = 2.1
    expect(lineText(lineOf(all, 'membrane'))).toBe('40.00 + 3.77 = 43.77 m\u00b2: 1 roll of 100 m\u00b2');
  });

  it('is not under an island that stands on the slab', () => {
    const island = {
      id: 'j1',
      name: 'Island',
      outline: rectangle(9000, 1000, 2000, 1000),
      under: 'no-insulation' as const,
    };
    const line = lineOf(takeOffOfTwoRooms({ fields: { joinery: [island] } }), 'insulation:60');
    expect(line.net).toBeCloseTo(58, 9);
    expect(line.cells).toEqual([
      { bay: 'B1', room: 'hall', amount: 40 },
      { bay: 'B2', room: 'study', amount: 18 },
    ]);
  });
});

describe('a line that cannot be ordered', () => {
  it('costs nothing that could be told, and is named among those without a price', () => {
    const { lines, cost } = takeOffOfTwoRooms({
      order: { stripRollM: 0.5, stripOverlapMm: 1000, prices: { stripRoll: 12 } },
    });
    const strip = lines.find(({ group }) => group === 'edge-strip');
    expect([strip?.order, strip?.cost]).toEqual([null, null]);
    expect(cost?.unpriced).toContain(strip?.key);
  });
});

describe('membrane', () => {
  it('laps by 80 of 2000 mm and turns up by 100 mm: 60 x 2 / 1.92 = 62.5, and 34 x 0.1 = 3.4 m2', () => {
    const line = lineOf(takeOffOfTwoRooms(), 'membrane');
    expect(lineText(line)).toBe('60.00 + 5.90 = 65.90 m\u00b2: 1 roll of 100 m\u00b2');
    // 65.9 / 20 = 3.3
    expect(lineOf(takeOffOfTwoRooms({ order: { membraneRollM2: 20 } }), 'membrane').order?.count).toBe(4);
  });

  it('cannot be ordered with laps as wide as the roll, and says so', () => {
    const line = lineOf(takeOffOfTwoRooms({ order: { membraneLapMm: 1000, membraneWidthM: 1 } }), 'membrane');
    expect(line.order).toBeNull();
    expect(line.notes.join(' ')).toContain('cannot be laid');
  });
});

describe('tiles', () => {
  const { full, cut, underHalf, slivers, smallestCutMm, inJoint, sawn, origin, angleDeg } = fieldReport();
  const counts = { full, cut, underHalf, slivers, smallestCutMm, inJoint, sawn, origin, angleDeg };
  const tiles = { ...counts, fields: [fieldReport({ rooms: ['hall', 'study'] })] };

  it('are those of the tiling: 130 to lay, 143 with 10 %, in 36 boxes of 4', () => {
    const grid = { lengthMm: 600, widthMm: 600, groutMm: 3, tilesPerBox: 4 };
    const line = lineOf(takeOffOfTwoRooms({ tiles, fields: { tiles: grid } }), 'tiles:');
    expect(lineText(line)).toBe('130 + 13 = 143 pieces: 36 boxes of 4 tiles');
    expect(line.allowance.words).toBe('10 % for cutting and breakage');
    // by floor: 40 of 60 m2 are 86.7, 20 of 60 m2 are 43.3
    expect(line.cells.map(({ room, amount }) => [room, amount])).toEqual([
      ['hall', 87],
      ['study', 43],
    ]);
  });
});

describe('prices', () => {
  it('make costs of what is ordered, and a total that says what is not priced', () => {
    const prices = { stripRoll: 30, profileBar: 7.25, screedM3: 150, membraneM2: 0.5 };
    const all = takeOffOfTwoRooms({ order: { currency: 'EUR', loadM3: 6, screedAllowance: 0, prices } });
    // 2 rolls, 4 bars, 3.9 m3, a roll of 100 m2
    const costs = ['edge-strip:160', 'profile:field:10', 'screed:volume', 'membrane'].map(
      (key) => lineOf(all, key).cost,
    );
    expect(costs).toEqual([60, 29, 585, 50]);
    expect(all.cost?.total).toBe(60 + 29 + 585 + 50);
    expect(all.cost?.unpriced).toEqual(['sealant:8', 'backer:8', 'perimeter-sealant:10', 'sleeves', 'insulation:60']);
    expect(all.currency).toBe('EUR');
  });

  it('are no part of a take-off where none is given', () => {
    const { cost, lines } = takeOffOfTwoRooms();
    expect(cost).toBeNull();
    expect(lines.every((line) => line.price === null && line.cost === null)).toBe(true);
  });
});

describe('any line', () => {
  it('names what it was measured from on the drawing', () => {
    const all = takeOffOfTwoRooms();
    const refs = (key: string) => lineOf(all, key).refs.map(({ kind, id }) => `${kind} ${id}`);
    expect(refs('profile:field:10')).toEqual(['joint J1']);
    expect(refs('sealant:8')).toEqual(['joint J1']);
    expect(refs('screed:volume')).toEqual(['bay B1', 'bay B2']);
    expect(refs('edge-strip:160')).toEqual(twoRooms.edges.map(({ id }) => `edge ${id}`));
  });

  it('gives half of a joint to each of its bays', () => {
    expect(lineOf(takeOffOfTwoRooms(), 'profile:field:10').cells).toEqual([
      { bay: 'B1', room: 'hall', amount: 2.5 },
      { bay: 'B2', room: 'study', amount: 2.5 },
    ]);
  });

  it('is ordered in no packs that are too small to be counted', () => {
    const all = takeOffOfTwoRooms({
      order: { cartridgeMl: 5e-324, loadM3: 5e-324, stripRollM: 5e-324, profileBarM: 5e-324 },
    });
    for (const key of ['sealant:8', 'screed:volume', 'edge-strip:160', 'profile:field:10']) {
      expect(lineOf(all, key).order).toBeNull();
    }
  });
});
