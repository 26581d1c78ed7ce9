import type { PaperSource } from '../../src/documents/paper-source.ts';
import type { PourPlan } from '../../src/documents/pour-plan.ts';
import type { Joint } from '../../src/plan/analysis.ts';
import { orderingOf, pourOf } from '../../src/plan/papers.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { analysisOf, bay, box, joint, planOf, room } from './fixture.ts';
import { paperSource } from './paper-fixture.ts';

/** Bays of 4 m by 4 m in a grid, each joined to those beside it: 16 m2, at 62.5 mm just 1 m3. Numbered row by row. */
export function gridSource(across: number, down: number, file: Partial<PlanFile> = {}): PaperSource {
  const side = 4000;
  const id = (x: number, y: number) => `B${y * across + x + 1}`;
  const places = Array.from({ length: across * down }, (_, i) => [i % across, Math.floor(i / across)] as const);
  const joints: Joint[] = [];
  for (const [x, y] of places) {
    const number = () => `J${joints.length + 1}`;
    const [left, top, right, foot] = [x * side, y * side, (x + 1) * side, (y + 1) * side];
    if (x + 1 < across)
      joints.push(
        joint(
          number(),
          'field',
          [
            [right, top],
            [right, foot],
          ],
          [id(x, y), id(x + 1, y)],
        ),
      );
    if (y + 1 < down)
      joints.push(
        joint(
          number(),
          'field',
          [
            [left, foot],
            [right, foot],
          ],
          [id(x, y), id(x, y + 1)],
        ),
      );
  }
  const bays = places.map(([x, y]) => bay(id(x, y), ['r1'], box(x * side, y * side, side, side), 4, 4));
  const plan = planOf({ rooms: [room('r1', 'Hall', box(0, 0, across * side, down * side))] });
  return paperSource(
    { ...plan, screed: { ...plan.screed, thicknessMm: 62.5 } },
    {
      ...analysisOf(),
      bays,
      joints,
      edges: [],
      findings: [],
      quantities: { ...analysisOf().quantities, screedM3: bays.length },
    },
    { order: { screedAllowance: 0 }, ...file },
  );
}

/** Bays by day, in the order in which they are laid. */
export function daysOf({ lots }: PourPlan): readonly (readonly string[])[] {
  return lots.map(({ bays }) => bays.map(({ id }) => id));
}

/** Every law of a pour plan that a source breaks, in words. Reckoned from the analysis alone.
 *  @param entered whether days are entered: then a lot may be too large, or sealed off, as long as the plan says so */
export function pourFaults(source: PaperSource, pour: PourPlan, entered: 'days' | 'none'): readonly string[] {
  const { lots } = pour;
  const { analysis, plan, file } = source;
  const { mostM3PerDay } = pourOf(file);
  const share = 1 + orderingOf(file).screedAllowance;
  const dayOf = new Map<string, number>();
  const faults: string[] = [];
  for (const { day, bays } of lots)
    for (const { id } of bays) {
      if (dayOf.has(id)) faults.push(`${id} is laid twice`);
      dayOf.set(id, day);
    }
  for (const { id } of analysis.bays) if (!dayOf.has(id)) faults.push(`${id} is never laid`);
  const netM3 = lots.reduce((sum, lot) => sum + lot.netM3, 0);
  if (Math.abs(netM3 - analysis.quantities.screedM3) > 1e-6)
    faults.push(`${netM3} of ${analysis.quantities.screedM3} m3`);
  for (const lot of lots) {
    const volume = (lot.areaM2 * plan.screed.thicknessMm * share) / 1000;
    if (volume > mostM3PerDay + 1e-6 && lot.bays.length > 1 && (entered === 'none' || lot.cautions.length === 0))
      faults.push(`day ${lot.day} takes ${volume} m3`);
    if (volume > mostM3PerDay + 1e-6 && lot.cautions.length === 0)
      faults.push(`day ${lot.day} does not say that it is too large`);
    if (entered === 'none' && lot.sealed.length > 0) faults.push(`day ${lot.day} is sealed off`);
  }
  return [...faults, ...damFaults(source, lots, dayOf), ...walkFaults(source, pour)];
}

function damFaults(
  { analysis }: PaperSource,
  lots: PourPlan['lots'],
  dayOf: ReadonlyMap<string, number>,
): readonly string[] {
  const wanted = analysis.joints.flatMap(({ id, bays: [one, other] }) => {
    const [a = 0, b = 0] = [dayOf.get(one), dayOf.get(other)];
    return a === b ? [] : [`${id} on day ${Math.min(a, b)}`];
  });
  const given = lots.flatMap(({ day, dams }) => dams.map(({ joint: id }) => `${id} on day ${day}`));
  return [
    ...wanted.filter((each) => !given.includes(each)).map((each) => `no stop at ${each}`),
    ...given.filter((each) => !wanted.includes(each)).map((each) => `a stop that is none at ${each}`),
  ];
}

/** From every bay as it is laid one walks out to the bay of the access over bays not laid yet. Parts of the floor that hang together with the access by no
 *  joint, and bays of which the plan says that they are sealed off, are left aside. */
function walkFaults({ analysis }: PaperSource, { exit, lots }: PourPlan): readonly string[] {
  if (exit === null) return [];
  const all = new Set(analysis.bays.map(({ id }) => id));
  const whole = flood(exit.bay, all, analysis);
  const left = new Set(all);
  const faults: string[] = [];
  for (const { bays, sealed, day } of lots) {
    for (const { id } of bays) {
      const open = flood(exit.bay, left, analysis).has(id);
      const isSaid = sealed.includes(id);
      if (whole.has(id) && open === isSaid)
        faults.push(`${id} on day ${day} is ${open ? 'open but said to be sealed' : 'sealed'}`);
      left.delete(id);
    }
  }
  return faults;
}

function flood(from: string, over: ReadonlySet<string>, { joints }: PaperSource['analysis']): ReadonlySet<string> {
  const reached = new Set(over.has(from) ? [from] : []);
  let before = -1;
  while (reached.size !== before) {
    before = reached.size;
    for (const {
      bays: [one, other],
    } of joints) {
      if (reached.has(one) && over.has(other)) reached.add(other);
      if (reached.has(other) && over.has(one)) reached.add(one);
    }
  }
  return reached;
}
