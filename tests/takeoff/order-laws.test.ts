import { describe, expect, it } from 'vitest';
import { type Analysis, jointKinds } from '../../src/plan/analysis.ts';
import { type Ordering, orderingOf, papersOf } from '../../src/plan/papers.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { sourceOf } from '../../src/plan/sources.ts';
import type { TakeOff, TakeOffGroup } from '../../src/plan/take-off.ts';
import { orderOf } from '../../src/takeoff/order.ts';
import { analysed } from '../contract/analysed.ts';
import { demoOpen } from '../demo/demo.ts';
import { type Chance, createChance } from '../floors/chance.ts';
import type { PlanJson } from '../floors/plan-json.ts';
import { storeyPlan } from '../floors/several-rooms.ts';

/** What holds for the take-off of any floor: its nets are the quantities of the analysis, and all that is shown adds up. */

const seeds = Array.from({ length: 16 }, (_, i) => i + 1);
const demos = ['1-dwelling.json', '2-public-library.json', '3-market-hall.json'];

interface Taken {
  readonly plan: Plan;
  readonly analysis: Analysis;
  readonly takeOff: TakeOff;
}

/** Rooms with build-ups of their own, some on the bare slab, some not entered. */
function storey(seed: number): PlanJson {
  const chance = createChance(seed);
  const plan = storeyPlan({ seed, rooms: 3 + (seed % 5), objects: true });
  const rooms = plan.rooms.map((room) =>
    chance.yes(0.3) ? room : { ...room, buildUp: { insulationMm: chance.pick([0, 30, 60, 62.5]) } },
  );
  return { ...plan, rooms, tiles: { lengthMm: 600, widthMm: 300, groutMm: 3, origin: [0, 0] } };
}

function orderAny(chance: Chance): Ordering {
  const order: PlanFile['order'] = {
    stripRollM: chance.whole(500, 5000) / 100,
    stripAllowance: chance.number(0, 0.2),
    profileBarM: chance.whole(100, 300) / 100,
    cartridgeMl: chance.whole(200, 600),
    sealantAllowance: chance.number(0, 0.3),
    loadM3: chance.whole(10, 900) / 100,
    insulationLayersMm: chance.pick([[], [20, 40], [30]]),
    ...(chance.yes(0.5) ? { insulationPackM2: chance.whole(100, 1000) / 100 } : {}),
    membraneLapMm: chance.whole(0, 300),
    membraneUpturnMm: chance.whole(0, 200),
    prices: { stripRoll: 31.5, profileBar: 7.25, screedM3: 145.4, insulationM2: 9.99, tile: 2.35 },
  };
  return orderingOf({ format: 'screed-bays/plan', version: 1, name: '', rooms: [], order });
}

const papers = papersOf({ format: 'screed-bays/plan', version: 1, name: '', rooms: [] });

function taken({ plan, analysis }: Omit<Taken, 'takeOff'>, seed: number): Taken {
  return { plan, analysis, takeOff: orderOf(plan, analysis, orderAny(createChance(seed)), papers) };
}

const floors: readonly (readonly [string, () => Taken])[] = [
  ...demos.map((file, i) => [file, () => taken(demoOpen(file), i)] as const),
  ...seeds.map((seed) => [`storey ${seed}`, () => taken(analysed(storey(seed)), seed)] as const),
];

describe.each(floors)('the take-off of %s', (_, make) => {
  const { plan, analysis, takeOff } = make();
  const { lines, cost } = takeOff;
  const net = (group: TakeOffGroup, of: (key: string) => boolean = () => true) =>
    lines.filter((line) => line.group === group && of(line.key)).reduce((sum, line) => sum + line.net, 0);

  it('has the nets of the quantities', () => {
    const { quantities } = analysis;
    expect(net('edge-strip')).toBeCloseTo(quantities.edgeStripM, 9);
    for (const kind of jointKinds) {
      expect(net('profile', (key) => key.startsWith(`profile:${kind}:`))).toBeCloseTo(quantities.jointM[kind], 9);
    }
    expect(net('sealant')).toBeCloseTo(quantities.sealantLitres, 9);
    expect(net('screed', (key) => key === 'screed:volume')).toBeCloseTo(quantities.screedM3, 9);
    expect(net('screed', (key) => key === 'screed:weight')).toBeCloseTo(quantities.screedKg, 9);
    // the first layer of each thickness; all layers lie under the same floor
    const first = net('insulation', (key) => !/:[2-9]$/u.test(key));
    expect(first).toBeCloseTo(quantities.insulationM2, 9);
    expect(net('membrane')).toBeCloseTo(quantities.insulationM2, 9);
    expect(net('tiles')).toBe(analysis.tiles?.fields.reduce((sum, { laid }) => sum + laid, 0) ?? 0);
  });

  it('adds up as it is shown: bays and rooms to each line, parts to the net, net and allowance to the whole', () => {
    for (const { cells, parts, net: measured, allowance, gross, decimals } of lines) {
      const digits = 10 ** decimals;
      // figures are added as a reader adds them: in last digits
      const shown = (figure: number) => Math.round(Number(figure.toFixed(decimals)) * digits);
      const sum = (amounts: readonly { readonly amount: number }[]) =>
        amounts.reduce((all, { amount }) => all + shown(amount), 0);
      expect(sum(cells)).toBe(shown(measured));
      for (const of of ['room', 'bay'] as const) {
        const ids = [...new Set(cells.map((cell) => cell[of]))];
        const each = ids.map((id) => sum(cells.filter((cell) => cell[of] === id)));
        expect(each.reduce((all, one) => all + one, 0)).toBe(shown(measured));
      }
      if (parts.length > 0) expect(sum(parts)).toBe(shown(measured));
      expect(shown(measured) + shown(allowance.amount)).toBe(shown(gross));
      for (const { amount } of cells) expect(Number(amount.toFixed(decimals))).toBe(amount);
    }
  });

  it('gives to each room what the quantities give to it, but for the last digit of each bay', () => {
    for (const room of analysis.quantities.rooms) {
      const bays = analysis.bays.filter(({ rooms }) => rooms.includes(room.room)).length;
      const of = (group: TakeOffGroup, key = '') =>
        lines
          .filter((line) => line.group === group && line.key.includes(key))
          .flatMap(({ cells }) => cells)
          .filter((cell) => cell.room === room.room)
          .reduce((sum, { amount }) => sum + amount, 0);
      const lineCount = (group: TakeOffGroup) => Math.max(1, lines.filter((line) => line.group === group).length);
      const slack = (group: TakeOffGroup) => 0.01 * (bays + 1) * lineCount(group);
      expect(Math.abs(of('edge-strip') - room.edgeStripM)).toBeLessThan(slack('edge-strip'));
      const jointM = jointKinds.reduce((sum, kind) => sum + room.jointM[kind], 0);
      expect(Math.abs(of('profile') - jointM)).toBeLessThan(slack('profile'));
      expect(Math.abs(of('sealant') - room.sealantLitres)).toBeLessThan(slack('sealant'));
      expect(Math.abs(of('screed', 'volume') - room.screedM3)).toBeLessThan(slack('screed'));
      expect(Math.abs(of('membrane') - room.insulationM2)).toBeLessThan(slack('membrane'));
    }
  });

  it('leaves out in each room the floor that lies on the bare slab there', () => {
    for (const { room, floorM2, slabContactM2 } of analysis.quantities.rooms) {
      const own = analysis.bays.flatMap(({ floors }) => floors.filter((floor) => floor.room === room));
      expect(own.reduce((sum, { areaM2 }) => sum + areaM2, 0)).toBeCloseTo(floorM2, 9);
      expect(own.reduce((sum, { bareM2 }) => sum + bareM2, 0)).toBeCloseTo(slabContactM2, 9);
    }
  });

  it('orders enough: packs hold net and allowance, and no pack is ordered in vain', () => {
    for (const { net: measured, gross, order, group, unit, refs } of lines) {
      if (order === null || group === 'sleeves' || group === 'tiles') continue;
      // by the metre or square metre where there is no pack
      const content = order.content === '' ? 1 : Number.parseFloat(order.content) / (unit === 'l' ? 1000 : 1);
      expect(order.count * content).toBeGreaterThanOrEqual(gross - 1e-6);
      if (group === 'profile') {
        // less than a bar is left of each joint, and one bar is to spare
        expect(order.count).toBeLessThan(measured / content + refs.length + 1);
      } else if (group === 'edge-strip') {
        expect(order.rooms.reduce((sum, { count }) => sum + count, 0)).toBe(order.count);
        expect(order.rooms.every(({ count }) => count > 0)).toBe(true);
      } else {
        expect((order.count - 1) * content).toBeLessThan(gross + 1e-6);
      }
    }
  });

  it('says in words what is allowed for, where it comes from, and names things of the drawing', () => {
    const ids = {
      bay: analysis.bays,
      joint: analysis.joints,
      edge: analysis.edges,
      room: plan.rooms,
      object: [],
    } as const;
    for (const { allowance, refs, sources } of lines) {
      expect(allowance.words).not.toBe('');
      expect(sources.length).toBeGreaterThan(0);
      expect(sources.every((key) => sourceOf(key) !== null)).toBe(true);
      expect(refs.length).toBeGreaterThan(0);
      for (const { kind, id } of refs) expect(ids[kind].some((thing) => thing.id === id)).toBe(true);
    }
  });

  it('costs what its lines cost', () => {
    const cents = lines.reduce((sum, line) => sum + Math.round((line.cost ?? 0) * 100), 0);
    expect(Math.round((cost?.total ?? 0) * 100)).toBe(cents);
  });

  it('has every line once', () => {
    expect(new Set(lines.map(({ key }) => key)).size).toBe(lines.length);
  });
});
