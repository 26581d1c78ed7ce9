import { existsSync, readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvOf } from '../../src/documents/csv.ts';
import { pourForm, pourTable } from '../../src/documents/pour-papers.ts';
import { pourPlanOf } from '../../src/documents/pour-plan.ts';
import { storeyPlan } from '../floors/several-rooms.ts';
import { demoNames, demoText, paperSourceOf } from './paper-fixture.ts';
import { daysOf, gridSource, pourFaults } from './pour-fixture.ts';

/** By hand: bays of 16 m2 at 62.5 mm take 1 m3 each. */
describe('a row of three bays with the access at one end', () => {
  const access = [0, 2000] as const;

  it('is laid from the far end in one day where the day allows it', () => {
    expect(daysOf(pourPlanOf(gridSource(3, 1, { pour: { access, mostM3PerDay: 3 } })))).toEqual([['B3', 'B2', 'B1']]);
  });

  it('is laid on two days where a day allows two bays, with the stop of work at the joint between', () => {
    const plan = pourPlanOf(gridSource(3, 1, { pour: { access, mostM3PerDay: 2 } }));
    expect(daysOf(plan)).toEqual([['B3', 'B2'], ['B1']]);
    expect(plan.lots.map(({ dams }) => dams)).toEqual([[{ joint: 'J1', lengthM: 4, laid: 'B2', later: 'B1' }], []]);
    expect(plan.lots.map(({ netM3, netKg, areaM2 }) => [netM3, netKg, areaM2])).toEqual([
      [2, 4000, 32],
      [1, 2000, 16],
    ]);
  });

  it('has the loads of each day rounded up by itself, with the allowance', () => {
    // 2 m3 and 10 % is 2.2 m3: five loads of 0.5 m3; 1.1 m3 is three
    const plan = pourPlanOf(
      gridSource(3, 1, { pour: { access, mostM3PerDay: 2.2 }, order: { screedAllowance: 0.1, loadM3: 0.5 } }),
    );
    expect(plan.lots.map(({ orderM3, loads }) => [orderM3, loads])).toEqual([
      [2.2, 5],
      [1.1, 3],
    ]);
  });

  it('is laid towards the middle from both ends where the access is in the middle', () => {
    const plan = pourPlanOf(gridSource(3, 1, { pour: { access: [6000, 2000], mostM3PerDay: 2 } }));
    expect(plan.lots.map(({ bays }) => bays.map(({ id }) => id).sort())).toEqual([['B1', 'B3'], ['B2']]);
    expect(pourFaults(gridSource(3, 1), plan, 'none')).toEqual([]);
  });

  it('lays a bay that is more than a day allows on a day of its own, whole, and says so', () => {
    const plan = pourPlanOf(gridSource(3, 1, { pour: { access, mostM3PerDay: 0.8 } }));
    expect(daysOf(plan)).toEqual([['B3'], ['B2'], ['B1']]);
    for (const { cautions } of plan.lots) expect(cautions.join(' ')).toContain('The work does not stop inside a bay');
  });
});

describe('days that are entered', () => {
  const access = [0, 2000] as const;
  const days = (...lists: readonly (readonly string[])[]) => ({
    pour: { access, mostM3PerDay: 2, days: lists.map((bays, i) => ({ date: `2027-03-0${i + 1}`, bays })) },
  });

  it('come first and in their order, and the rest follows', () => {
    const plan = pourPlanOf(gridSource(4, 1, days(['B4'], ['B3'])));
    expect(daysOf(plan)).toEqual([['B4'], ['B3'], ['B2', 'B1']]);
    expect(plan.lots.map(({ date }) => date)).toEqual(['2027-03-01', '2027-03-02', null]);
    expect(plan.told.join(' ')).toContain('2 bays that no day names follow');
  });

  it('that seal bays off are kept, and it is said which bays are reached over fresh screed', () => {
    const plan = pourPlanOf(gridSource(4, 1, days(['B2'])));
    expect(daysOf(plan)[0]).toEqual(['B2']);
    expect(plan.lots.flatMap(({ sealed }) => sealed).sort()).toEqual(['B3', 'B4']);
    expect(plan.lots.flatMap(({ cautions }) => cautions).join(' ')).toContain('over fresh screed only');
  });

  it('are laid inside so that nobody is locked in, in whatever order their bays are named', () => {
    expect(daysOf(pourPlanOf(gridSource(4, 1, days(['B1', 'B2', 'B3', 'B4']))))).toEqual([['B4', 'B3', 'B2', 'B1']]);
  });

  it('of more than a day allows are kept and told', () => {
    const plan = pourPlanOf(gridSource(4, 1, days(['B4', 'B3', 'B2'])));
    expect(plan.lots[0]?.cautions.join(' ')).toContain('take 3 m\u00b3, the day allows 2 m\u00b3');
  });

  it('with bays that are gone, named twice, or none at all are told', () => {
    const plan = pourPlanOf(gridSource(3, 1, days(['B3', 'gone'], ['B3'], ['B2', 'B2'])));
    expect(daysOf(plan)).toEqual([['B3'], ['B2'], ['B1']]);
    const told = plan.told.join(' ');
    expect(told).toContain('a bay known as gone, which the floor does not have any more');
    expect(told).toContain('B3 is named more than once');
    expect(told).toContain('Entered day 2 has no bay');
    expect(pourFaults(gridSource(3, 1), plan, 'days')).toEqual([]);
  });

  it('whose dates run backwards are told', () => {
    const pour = {
      days: [
        { date: '2027-03-02', bays: ['B3'] },
        { date: '2027-03-01', bays: ['B2'] },
      ],
    };
    expect(pourPlanOf(gridSource(3, 1, { pour })).told.join(' ')).toContain('do not follow each other');
  });
});

describe('the access', () => {
  it('that is not entered is taken at the outside of the floor, and that is said', () => {
    const plan = pourPlanOf(gridSource(3, 3));
    expect(plan.exit?.bay).not.toBe('B5');
    expect(plan.told[0]).toContain('No access is entered');
  });

  it('off the floor counts for the bay nearest to it', () => {
    expect(pourPlanOf(gridSource(3, 3, { pour: { access: [13_000, 11_000] } })).exit?.bay).toBe('B9');
  });

  it('does not lead to parts of the floor that no joint joins, and that is said', () => {
    const source = gridSource(3, 1, { pour: { access: [0, 0], mostM3PerDay: 9 } });
    const apart = { ...source, analysis: { ...source.analysis, joints: source.analysis.joints.slice(0, 1) } };
    const plan = pourPlanOf(apart);
    expect(plan.told.join(' ')).toContain('from the access to B3');
    expect(pourFaults(apart, plan, 'none')).toEqual([]);
  });
});

describe('on every floor each bay is laid once and whole, within the day, up to a joint, and nobody walks over fresh screed', () => {
  it.each(demoNames)('on %s', (name) => {
    const source = paperSourceOf(demoText(name));
    for (const mostM3PerDay of [2, 12, 40]) {
      const asked = { ...source, file: { ...source.file, pour: { mostM3PerDay } } };
      expect(pourFaults(asked, pourPlanOf(asked), 'none')).toEqual([]);
    }
  });

  it('a plan that breaks a law is found out', () => {
    const source = gridSource(3, 1, { pour: { access: [0, 2000], mostM3PerDay: 2 } });
    const plan = pourPlanOf(source);
    const [first, second] = plan.lots;
    if (first === undefined || second === undefined) throw new Error('two days');
    const broken = (lots: typeof plan.lots) => pourFaults(source, { ...plan, lots }, 'none').join('; ');
    expect(broken([first])).toContain('B1 is never laid');
    expect(broken([first, second, second])).toContain('B1 is laid twice');
    expect(broken([{ ...first, dams: [] }, second])).toContain('no stop at J1');
    expect(
      broken([
        { ...second, day: 1 },
        { ...first, day: 2 },
      ]),
    ).toContain('B3 on day 2 is sealed');
    expect(
      pourFaults({ ...source, file: { ...source.file, pour: { mostM3PerDay: 1 } } }, plan, 'none').join('; '),
    ).toContain('day 1 takes 2 m3');
  });

  it('in grids of every shape, with the access anywhere', () => {
    const shape = fc.record({
      across: fc.integer({ min: 1, max: 7 }),
      down: fc.integer({ min: 1, max: 7 }),
      x: fc.integer({ min: -5000, max: 33_000 }),
      y: fc.integer({ min: -5000, max: 33_000 }),
      mostM3PerDay: fc.double({ min: 0.5, max: 20, noNaN: true }),
    });
    fc.assert(
      fc.property(shape, ({ across, down, x, y, mostM3PerDay }) => {
        const source = gridSource(across, down, { pour: { access: [x, y], mostM3PerDay } });
        expect(pourFaults(source, pourPlanOf(source), 'none')).toEqual([]);
      }),
    );
  });

  it('and with days entered by chance it is said what does not hold', () => {
    const days = fc.array(fc.array(fc.integer({ min: 1, max: 14 }), { maxLength: 5 }), { maxLength: 5 });
    fc.assert(
      fc.property(days, fc.integer({ min: 0, max: 16_000 }), (lists, x) => {
        const pour = {
          access: [x, 0] as const,
          mostM3PerDay: 3,
          days: lists.map((list) => ({ bays: list.map((n) => `B${n}`) })),
        };
        const source = gridSource(4, 3, { pour });
        expect(pourFaults(source, pourPlanOf(source), 'days')).toEqual([]);
      }),
    );
  });

  it.each([1, 2, 3, 4, 5, 6, 7, 8])('in storey %i of many rooms', (seed) => {
    const text = JSON.stringify(storeyPlan({ seed, rooms: 5 + 3 * seed, objects: true }));
    const source = paperSourceOf(text, { pour: { mostM3PerDay: 4 } });
    expect(pourFaults(source, pourPlanOf(source), 'none')).toEqual([]);
  });

  const folder = new URL('../../../shared/real-plans/', import.meta.url);
  const files = existsSync(folder)
    ? readdirSync(folder).filter((name) => /^(?:westport_[56]|duplex_L[01]|resplan_0)\.json$/.test(name))
    : [];
  it.skipIf(files.length === 0)('on real floors', () => {
    for (const name of files) {
      const source = paperSourceOf(readFileSync(new URL(name, folder), 'utf8'), { pour: { mostM3PerDay: 6 } });
      expect(pourFaults(source, pourPlanOf(source), 'none'), name).toEqual([]);
    }
  });
});

describe('on paper', () => {
  const source = paperSourceOf(demoText('2-public-library'));

  it('each day is a row, and the rows add up to the screed of the floor', () => {
    const { columns, rows, refs } = pourTable(source);
    const net = columns.findIndex(({ head, unit }) => head === 'Screed net' && unit === 'm3');
    const sum = rows.reduce((total, row) => total + Number(row[net]), 0);
    expect(sum).toBeCloseTo(source.analysis.quantities.screedM3, 6);
    expect(refs?.flat().filter(({ kind }) => kind === 'bay')).toHaveLength(source.analysis.bays.length);
  });

  it('each row says that its way to the access is assumed where none is entered', () => {
    const ways = (access?: readonly [number, number]) => {
      const { columns, rows } = pourTable(gridSource(3, 1, { pour: { access } }));
      const at = columns.findIndex(({ head }) => head === 'Way to the access');
      return rows.map((row) => row[at]);
    };
    expect(ways()[0]).toMatch(/^open, assumed from B\d$/u);
    expect(ways([0, 2000])[0]).toBe('open');
  });

  it('a file of rows alone tells what of the entered days could not be taken', () => {
    const days = [{ date: '2027-03-09', bays: ['B1'] }, { date: '2027-03-02', bays: ['B2', 'B3'] }, { bays: ['B1'] }];
    const text = csvOf(pourTable(gridSource(3, 1, { pour: { days } })));
    expect(text).toContain('do not follow each other');
    expect(text).toContain('B1 is named more than once');
    expect(text).toContain('Entered day 3 has no bay and is left out');
  });

  it('the form says that no work stops inside a bay', () => {
    expect(JSON.stringify(pourForm(source))).toContain('none lies inside a bay');
  });
});
