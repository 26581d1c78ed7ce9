import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../src/plan/analysis.ts';
import { orderingOf, papersOf } from '../../src/plan/papers.ts';
import type { Plan, Room } from '../../src/plan/plan.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { type TakeOffLine, type TakeOffRef, takeOffNet, takeOffRefs, takeOffUnit } from '../../src/plan/take-off.ts';
import { orderOf } from '../../src/takeoff/order.ts';
import { analysed } from '../contract/analysed.ts';
import { demoOpen } from '../demo/demo.ts';
import type { PlanJson } from '../floors/plan-json.ts';
import { storeyPlan } from '../floors/several-rooms.ts';
import { gridSplit } from '../movement/grid-split.ts';
import { lineOf, lineText, takeOffOfTwoRooms, twoRoomsFields } from './order-fixture.ts';

/** What each line of the take-off was measured from, in all and in each room: the drawing shows it. */

/** The ids lit in a room, or on the whole floor. */
function lit(line: TakeOffLine, room: string | null): readonly string[] {
  return takeOffRefs(line, room).map(({ id }) => id);
}

describe('what is lit in one room', () => {
  const floor = takeOffOfTwoRooms();

  it('is its own strip: three walls of the hall and three of the study, six in all', () => {
    // each bay is a rectangle, and one of its four sides is the joint between them
    const line = lineOf(floor, 'edge-strip:160');
    const [hall, study] = [lit(line, 'hall'), lit(line, 'study')];
    expect([hall.length, study.length, lit(line, null).length]).toEqual([3, 3, 6]);
    expect(hall.filter((id) => study.includes(id))).toEqual([]);
  });

  it('is its own bay, and the joint that it shares with the next room in both', () => {
    expect(lit(lineOf(floor, 'screed:volume'), 'hall')).toEqual(['B1']);
    expect(lit(lineOf(floor, 'screed:volume'), 'study')).toEqual(['B2']);
    const joint = lineOf(floor, 'profile:field:10');
    expect(lit(joint, 'hall')).toEqual(lit(joint, null));
    expect(lit(joint, 'study')).toEqual(lit(joint, null));
    // 5 m of joint, half to each side
    expect([takeOffNet(joint, 'hall'), takeOffNet(joint, 'study')]).toEqual([2.5, 2.5]);
  });

  it('is a bay in both its rooms where it goes on from one into the other', () => {
    // no joint between the rooms, and one 2 m from the end of the hall: the second bay is 6 x 5 m of the hall and all of the study
    const parted = gridSplit([0, 2000, 12_000], [0, 5000], () => 'hall');
    const split = {
      ...parted,
      bays: parted.bays.map((bay) => (bay.id === 'B2' ? { ...bay, rooms: ['hall', 'study'] } : bay)),
      pieces: [
        { bay: 'B1', room: 'hall', areaM2: 10, regions: [] },
        { bay: 'B2', room: 'hall', areaM2: 30, regions: [] },
        { bay: 'B2', room: 'study', areaM2: 20, regions: [] },
      ],
    };
    const line = lineOf(takeOffOfTwoRooms({ split }), 'screed:volume');
    expect(lit(line, 'hall')).toEqual(['B1', 'B2']);
    expect(lit(line, 'study')).toEqual(['B2']);
    // 20 m2 at 65 mm
    expect(takeOffNet(line, 'study')).toBe(1.3);
  });

  it('is nothing of a line that the room has nothing of', () => {
    // insulation of 60 mm in the hall only: the study lies on the bare slab
    const rooms = (twoRoomsFields.rooms ?? []).map((room) =>
      room.id === 'study' ? { ...room, buildUp: { insulationMm: 0 } } : room,
    );
    const bare = takeOffOfTwoRooms({ fields: { rooms } });
    expect(lit(lineOf(bare, 'insulation:60'), 'hall')).toEqual(['B1']);
    expect(lit(lineOf(bare, 'insulation:60'), 'study')).toEqual([]);
  });
});

const papers = (file: PlanFile) => [orderingOf(file), papersOf(file)] as const;
const nothing: PlanFile = { format: 'screed-bays/plan', version: 1, name: '', rooms: [] };

/** With tiles all over. */
function storey(seed: number): PlanJson {
  const tiles = { lengthMm: 600, widthMm: 300, groutMm: 3, origin: [0, 0] as const };
  return { ...storeyPlan({ seed, rooms: 3 + (seed % 5), objects: true }), tiles };
}

const floors: readonly (readonly [string, () => { readonly plan: Plan; readonly analysis: Analysis }])[] = [
  ...['1-dwelling.json', '2-public-library.json', '3-market-hall.json'].map(
    (name) => [name, () => demoOpen(name)] as const,
  ),
  ...Array.from({ length: 8 }, (_, i) => [`storey ${i + 1}`, () => analysed(storey(i + 1))] as const),
];

describe.each(floors)('on the drawing of %s', (_, make) => {
  const { plan, analysis } = make();
  const { lines } = orderOf(plan, analysis, ...papers(nothing));

  const bays = new Map(analysis.bays.map((bay) => [bay.id, bay]));
  const joints = new Map(analysis.joints.map((joint) => [joint.id, joint]));
  const edges = new Map(analysis.edges.map((edge) => [edge.id, edge]));

  /** The rooms of a thing as the analysis tells them, whatever the take-off makes of it. */
  function roomsOf({ group }: TakeOffLine, { kind, id }: TakeOffRef): readonly (string | undefined)[] {
    if (kind === 'joint') return joints.get(id)?.bays.flatMap((bay) => bays.get(bay)?.rooms ?? []) ?? [];
    if (kind === 'edge') return [edges.get(id)?.room];
    if (kind === 'room') return [id];
    const onInsulation = group === 'insulation' || group === 'membrane';
    const floors = bays.get(id)?.floors ?? [];
    return floors.filter(({ areaM2, bareM2 }) => !onInsulation || areaM2 - bareM2 > 0).map(({ room }) => room);
  }

  /** The bays that a thing belongs to. */
  function baysOf({ kind, id }: TakeOffRef): readonly (string | undefined)[] {
    if (kind === 'joint') return joints.get(id)?.bays ?? [];
    if (kind === 'edge') return [edges.get(id)?.bay];
    if (kind === 'bay') return [id];
    return analysis.bays.filter(({ rooms }) => rooms.includes(id)).map((bay) => bay.id);
  }

  it('each room of a line lights what belongs to that room, and nothing else', () => {
    for (const line of lines) {
      const known = line.refs.map((ref) => ({ id: ref.id, rooms: roomsOf(line, ref) }));
      for (const room of plan.rooms) {
        const own = known.filter(({ rooms }) => rooms.includes(room.id));
        expect(lit(line, room.id)).toEqual(own.map(({ id }) => id));
      }
    }
  });

  it('the rooms of a line together light all of it', () => {
    for (const line of lines) {
      const each = plan.rooms.flatMap(({ id }: Room) => takeOffRefs(line, id));
      expect(new Set(each)).toEqual(new Set(line.refs));
      expect(takeOffRefs(line, null)).toBe(line.refs);
    }
  });

  it('every amount of a room and bay is lit in that room by something of that bay', () => {
    for (const line of lines)
      for (const { id } of plan.rooms) {
        const shown = new Set(takeOffRefs(line, id).flatMap(baysOf));
        const counted = line.cells.filter(({ room }) => room === id).map(({ bay }) => bay);
        expect(counted.filter((bay) => !shown.has(bay))).toEqual([]);
      }
  });

  it('the rooms of a line add up to it in the figures that are told', () => {
    for (const line of lines) {
      const sum = plan.rooms.reduce((all, { id }) => all + takeOffNet(line, id), 0);
      expect(sum.toFixed(line.decimals)).toBe(line.net.toFixed(line.decimals));
    }
  });
});

describe('units in the number that goes with their figures', () => {
  it('are one piece, one roll, one cartridge, and several of all else, none among them', () => {
    const words = (count: number) =>
      (['pieces', 'rolls', 'bars', 'cartridges', 'boxes', 'm'] as const).map((unit) => takeOffUnit(count, unit));
    expect(words(1)).toEqual(['piece', 'roll', 'bar', 'cartridge', 'box', 'm']);
    expect(words(2)).toEqual(['pieces', 'rolls', 'bars', 'cartridges', 'boxes', 'm']);
    expect(words(0)).toEqual(words(2));
    expect(words(0.5)).toEqual(words(2));
  });

  it('say what is told: a joint of 5 m from bars of 5 m, with none to spare, is 1 bar', () => {
    const floor = takeOffOfTwoRooms({ order: { profileBarM: 5, profileSpares: 0 } });
    expect(lineText(lineOf(floor, 'profile:field:10'))).toBe('5.00 + 0.00 = 5.00 m: 1 bar of 5 m');
  });

  it('speak of the one joint where sleeves are assumed at one', () => {
    const notes = lineOf(takeOffOfTwoRooms(), 'sleeves').notes.join(' ');
    expect(notes).not.toContain('1 joints');
  });
});
