import { createAnalyser } from '../../src/analysis/analyser.ts';
import { planRead } from '../../src/plan/read.ts';
import { planResolve } from '../../src/plan/resolve.ts';
import { createChance } from '../floors/chance.ts';
import { box, planJson } from '../floors/plan-json.ts';

/** How long input takes that no floor needs: it is refused, or analysed as far as the steps of a search go, in the time that a person waits. */

export interface HostileRow {
  readonly name: string;
  readonly seconds: number;
  readonly outcome: string;
}

type Pair = readonly [number, number];

export function hostileRows(): HostileRow[] {
  return hostilePlans().map(({ name, plan }) => {
    const text = JSON.stringify(plan());
    const start = performance.now();
    const outcome = outcomeOf(text);
    return { name, seconds: (performance.now() - start) / 1000, outcome };
  });
}

function outcomeOf(text: string): string {
  const reading = planRead(text);
  if (reading.kind === 'refused') return `refused: ${reading.problems[0]?.path ?? ''}`;
  const analysis = createAnalyser().analyse(planResolve(reading.file));
  const told = analysis?.findings.filter(({ code }) => code.startsWith('layout-')).map(({ code }) => code) ?? [];
  return `${analysis?.bays.length ?? 0} bays${told.length > 0 ? `, ${told.join(', ')}` : ''}`;
}

function hostilePlans(): { readonly name: string; readonly plan: () => object }[] {
  const chance = createChance(7);
  const room = (outline: readonly Pair[], limits?: object): object => ({
    ...planJson('Hostile', [{ id: 'r1', name: 'Hall', outline }]),
    ...(limits ? { screed: { limits } } : {}),
  });
  const hall = box(0, 0, 9000, 6000);
  return [
    { name: 'an outline of 1,000,000 points', plan: () => room(ringOf(1_000_000, () => 4e6)) },
    { name: 'an outline of 20,000 points, round', plan: () => room(ringOf(20_000, () => 20_000)) },
    { name: 'a scribble of 20,000 points', plan: () => room(ringOf(20_000, () => 4e6).map(scribbled)) },
    { name: '40,000 joints drawn across each other', plan: () => ({ ...room(hall), drawnJoints: thicket(40_000) }) },
    {
      name: '200,000 rooms with nothing in them',
      plan: () => ({ ...room(hall), rooms: Array.from({ length: 200_000 }, () => ({})) }),
    },
    { name: 'a zigzag of 3,002 corners', plan: () => room(zigzag(1500)) },
    { name: 'a wall of 400 rough corners', plan: () => room(ringOf(400, () => 10_000 + chance.number(0, 600))) },
    { name: 'a wall of 3,000 rough corners', plan: () => room(ringOf(3000, () => 10_000 + chance.number(0, 600))) },
    { name: 'bays of at most 0.1 m2', plan: () => room(hall, { areaM2: 0.1 }) },
    { name: 'bays of at most 0.02 m2', plan: () => room(hall, { areaM2: 0.02 }) },
    { name: 'bays of at most 1e-9 m2', plan: () => room(hall, { areaM2: 1e-9 }) },
    { name: 'sides of at most 0.2 m', plan: () => room(hall, { lengthM: 0.2 }) },
    { name: 'a room of 20 by 20 km', plan: () => room(box(-1e7, -1e7, 2e7, 2e7)) },
  ];
}

function ringOf(count: number, radiusMm: (i: number) => number): Pair[] {
  return Array.from({ length: count }, (_, i) => {
    const turn = (i / count) * 2 * Math.PI;
    const radius = radiusMm(i);
    return [radius * Math.cos(turn), radius * Math.sin(turn)];
  });
}

/** Every point a third of the way round from the one before. */
function scribbled(_: Pair, i: number, ring: readonly Pair[]): Pair {
  return ring[(i * 6667) % ring.length] as Pair;
}

function thicket(count: number): object[] {
  return Array.from({ length: count }, (_, i) => ({
    id: `x${i}`,
    line:
      i % 2
        ? [
            [0, i],
            [count, i],
          ]
        : [
            [i, 0],
            [i, count],
          ],
  }));
}

function zigzag(teeth: number): Pair[] {
  const edge = Array.from({ length: teeth * 2 }, (_, i): Pair => [i * 50, i % 2 ? 3000 : 0]);
  return [...edge, [teeth * 100, 10_000], [0, 10_000]];
}
