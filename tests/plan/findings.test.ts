import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/plan/analysis.ts';
import { naturalOrder } from '../../src/plan/figure-words.ts';
import type { FindingCode, FindingFact, FindingValues, OffFloor } from '../../src/plan/finding.ts';
import { findingDescribe, findingsSort } from '../../src/plan/finding-words.ts';
import { sourceOf } from '../../src/plan/sources.ts';

type Sample<C extends FindingCode> = readonly [
  values: Omit<Extract<FindingValues, { code: C }>, 'code'>,
  severity: Finding['severity'],
  /** What the words have to hold: the figure, the limit, and what it is about. */
  words: readonly string[],
];

/** A finding of every code; the compiler misses any that is left out. */
const samples: { readonly [C in FindingCode]: Sample<C> } = {
  'outline-crossing': [{ name: 'Hall' }, 'fault', ['Hall', 'crosses']],
  'hole-off-room': [
    { name: 'Hall', areaM2: 0.36, isWhole: false },
    'caution',
    ['A hole of Hall', 'outside the room over 0.4 m\u00b2'],
  ],
  'rooms-overlap': [{ names: ['Hall', 'Bath'], areaM2: 1.24 }, 'fault', ['Hall and Bath', '1.2 m\u00b2']],
  'room-too-thin': [{ name: 'Shaft' }, 'caution', ['Shaft has no floor', 'too thin', 'another room']],
  'room-unreached': [{ name: 'Store' }, 'caution', ['Store', 'doorway or open side']],
  'doorway-joins-nothing': [{ doorway: 'd3' }, 'caution', ['d3', 'no room']],
  'doorway-one-room': [{ doorway: 'd3', name: 'Hall' }, 'note', ['d3', 'Hall']],
  'object-off-floor': [
    { what: 'column', id: 'c2' },
    'caution',
    ['column c2', 'outside the rooms or on another column'],
  ],
  'no-joint-stands': [
    {
      id: 'n1',
      keepers: [
        { kind: 'doorway', id: 'd1' },
        { kind: 'structural', id: 's1' },
        { kind: 'drawn', id: 'x1' },
        { kind: 'zone', names: ['Hall', 'Bath'] },
      ],
    },
    'note',
    ['taken away at n1', 'doorway d1, structural joint s1, drawn joint x1', 'change of heating between Hall and Bath'],
  ],
  'drawn-joint-loose': [{ id: 'x1', reachMm: 100 }, 'fault', ['x1', '100 mm']],
  'joint-idle': [{ what: 'structural', id: 's2' }, 'caution', ['Structural joint s2 parts no floor']],
  'doorway-blocked': [{ isOpen: true, doorway: 'd4' }, 'caution', ['d4']],
  'no-rooms': [{}, 'note', ['no rooms']],
  'temperatures-reversed': [{ names: ['Hall', 'Store'] }, 'caution', ['Hall', 'Store']],
  'structural-joint-loose': [{ id: 's1' }, 'fault', ['s1', 'carried through']],
  'layout-too-many-bays': [
    { names: ['Hall'], bays: 10_000_000, most: 3000 },
    'fault',
    [
      'Hall would take at least 10000000 bays within the limits; up to 3000 are laid out. The floor is left whole: look at its size and at the limits.',
    ],
  ],
  'layout-unfinished': [
    { names: ['Hall', 'Store'], corners: 3002 },
    'fault',
    [
      'The layout of Hall and Store is not finished, and its necks are not all checked: an outline of 3002 corners takes more search than is spent on one floor. Draw it with fewer corners.',
    ],
  ],
  'bay-area': [{ bay: 'B3', value: 44.2, limit: 40 }, 'fault', ['Bay B3 is 44.2 m\u00b2; the limit is 40 m\u00b2.']],
  'bay-length': [{ bay: 'B3', value: 11.25, limit: 8 }, 'fault', ['B3', '11.3 m', '8 m']],
  'bay-aspect': [{ bay: 'B3', value: 2.31, limit: 2 }, 'fault', ['B3', '2.31 : 1', '2 : 1']],
  'bay-aspect-allowance': [{ bay: 'B3', value: 3.1, limit: 2, fromM: 5 }, 'note', ['B3', '3.1 : 1', '2 : 1', '5 m']],
  'bay-reentrant': [{ bay: 'B3', value: 420, limit: 150 }, 'fault', ['B3', 're-entrant', '420 mm', '150 mm']],
  'bay-narrow': [{ bay: 'B3', widthMm: 225, leastMm: 300 }, 'caution', ['B3', '225 mm', '300 mm']],
  'bay-core': [{ bay: 'B3', sideMm: 900, limitMm: 400 }, 'fault', ['B3', '900 mm', '400 mm']],
  'neck-unjointed': [
    { bay: 'B3', widthMm: 850, besideMm: 2500, limit: 0.6 },
    'fault',
    ['B3', '850 mm', '0.34', '2500 mm', 'neck', '0.6 or less'],
  ],
  'column-off-joint': [
    { column: 'c1', bay: 'B3', sideMm: 600, limitMm: 400 },
    'fault',
    ['c1', 'B3', '600 mm', '400 mm'],
  ],
  'column-one-direction': [{ column: 'c1' }, 'caution', ['c1', 'one direction']],
  'column-in-bay': [{ column: 'c1', bay: 'B3' }, 'note', ['c1', 'B3']],
  'joint-through-joinery': [{ joint: 'J4', name: 'Serving counter' }, 'fault', ['J4', 'Serving counter']],
  'joint-through-keep-clear': [{ joint: 'J4', area: 'q1' }, 'fault', ['J4', 'q1']],
  'slab-contact': [
    { name: 'Kitchen island', isRoom: false, bay: 'B3', areaM2: 1.8, cause: 'no-insulation' },
    'fault',
    ['B3', 'held to the slab (no insulation)', 'Kitchen island', '1.8 m\u00b2'],
  ],
  'held-twice': [
    { bay: 'B3', names: ['k1', 'k2'], stress: 'tension', stressNPerMm2: 5.1, strengthNPerMm2: 2 },
    'fault',
    ['B3', 'held in two places', 'k1 and k2', '5.1 N/mm\u00b2 of tension', '2 N/mm\u00b2', 'creep ignored'],
  ],
  'profile-overrun': [{ joint: 'J2', needsMm: 6.24, takesMm: 5 }, 'fault', ['J2', '6.2 mm', '5 mm']],
  'profile-worst-case': [{ joint: 'J2', needsMm: 5.5, takesMm: 5 }, 'caution', ['J2', '5.5 mm', '5 mm']],
  'strip-overrun': [{ edge: 'E7', needsMm: 5.62, takesMm: 5 }, 'fault', ['E7', '5.6 mm', '5 mm']],
  'strip-travel': [{ takesMm: 4, leastMm: 5 }, 'fault', ['4 mm', '5 mm']],
  'sealant-narrow': [{ joint: 'J2', needsMm: 12.44, widthMm: 8 }, 'fault', ['J2', '12.4 mm', '8 mm']],
  'sealant-least-width': [{ widthMm: 5, leastMm: 6 }, 'caution', ['5 mm', '6 mm']],
  'screed-thin': [{ thicknessMm: 55, leastMm: 61 }, 'fault', ['55 mm', '61 mm']],
  'cover-thin': [{ coverMm: 35, leastMm: 45 }, 'fault', ['covers the pipe by 35 mm', '45 mm']],
  'screed-thick': [
    { thicknessMm: 120, deadKPa: 2.35, allowanceKPa: 2 },
    'fault',
    ['120 mm', '2.35 kN/m\u00b2', '2 kN/m\u00b2'],
  ],
  'unheated-as-plan': [
    { names: ['Store', 'Porch'], highestC: 45 },
    'note',
    ['Store and Porch are unheated', 'no highest temperature of their own', '45 \u00b0C'],
  ],
  'screed-hot': [{ highestC: 60, limitC: 55 }, 'caution', ['60 °C', '55 °C']],
  'rule-set-other-screed': [
    { ruleSet: 'French', screed: 'CT-C25-F4', names: ['Hall'], instead: 'EN', areaM2: 40, lengthM: 8, aspect: 2 },
    'caution',
    ['"French"', 'not written for CT-C25-F4', 'Hall takes', '"EN": 40 m\u00b2, 8 m long, 2 : 1 long to wide'],
  ],
  'rule-set-other-floor': [
    {
      ruleSet: 'UK, unheated',
      floor: 'heated floor under stone or ceramic',
      names: ['Hall', 'Bath'],
      instead: 'EN',
      areaM2: null,
      lengthM: 7.62,
      aspect: null,
    },
    'caution',
    ['"UK, unheated"', 'not speak of heated floor under stone or ceramic', 'Hall and Bath take', '"EN": 7.62 m long.'],
  ],
  'limits-not-entered': [{ ruleSet: 'Data sheet', instead: 'EN' }, 'caution', ['Data sheet', 'EN']],
  'limits-from-memory': [{ ruleSet: 'German' }, 'note', ['German', 'from memory']],
  'limits-carried-over': [{ names: ['Hall', 'Bath', 'Store'] }, 'note', ['Hall, Bath and Store']],
  'tile-field-unknown-room': [{ field: 't1', room: 'r9' }, 'caution', ['t1', 'r9']],
  'tile-room-twice': [
    { field: 't2', first: 't1', name: 'Hall' },
    'caution',
    ['field t2 names Hall', 'field t1 has already', 'as t1 says'],
  ],
  'tile-field-covering': [
    { field: 't1', name: 'Study', covering: 'timber' },
    'caution',
    ['t1', 'Study', 'not stone or ceramic'],
  ],
  'tile-field-empty': [{ field: 't1' }, 'caution', ['field t1', 'no room', 'none of its tiles']],
  'tile-field-edge': [{ bay: 'B2', names: ['Hall', 'Bath'] }, 'caution', ['Hall and Bath', 'B2', 'no joint']],
  'tile-bond-unknown': [{ field: null, bond: 'basket' }, 'caution', ['The tiles', '"basket"', 'straight']],
  'tile-grout-narrow': [{ field: 't1', groutMm: 2, leastMm: 3 }, 'caution', ['field t1', '2 mm', '3 mm']],
  'tile-grout-wide': [{ field: null, groutMm: 25, sideMm: 20 }, 'caution', ['The tiles', '25 mm', '20 mm']],
  'tile-herringbone-square': [
    { field: 't1', sideMm: 300 },
    'caution',
    ['field t1', '300 mm both ways', 'the straight bond'],
  ],
  'tile-offset-large': [
    { field: null, offsetMm: 301.5, mostMm: 198.99, sideMm: 600 },
    'caution',
    ['302 mm', '600 mm', '199 mm'],
  ],
  'tile-perimeter-narrow': [{ stripMm: 5, leastMm: 6 }, 'caution', ['edge strip, 5 mm', '6 mm']],
  'tile-too-fine': [
    { field: null, names: ['Hall'], lengthMm: 2, widthMm: 2 },
    'caution',
    ['2 by 2 mm', 'Hall', 'too fine'],
  ],
  'tile-slivers': [
    { names: ['Hall', 'Bath'], count: 14, smallestMm: 42, smallestIn: 'Bath' },
    'caution',
    ['Hall and Bath', '14 in', '42 mm in Bath', 'under a third'],
  ],
  'tile-cuts-small': [
    { names: ['Hall'], count: 1, smallestMm: 242, smallestIn: 'Hall' },
    'note',
    ['1 in Hall', '242 mm', 'under half a tile'],
  ],
  'tile-joint-off-grout': [
    { joints: ['J4'], tiles: 13, mostMm: 212.4 },
    'caution',
    ['joint J4 cuts', '212 mm', '13 tiles'],
  ],
  'tile-joint-across-courses': [
    { joints: ['J4', 'J5'], tiles: 1, mostMm: 212.4 },
    'caution',
    ['joints J4 and J5', '1 tile ', 'never saw-toothed'],
  ],
  'tile-standing-cut': [
    { joints: ['J1', 'J2', 'J3', 'J4', 'J5', 'J6', 'J7'], tiles: 9, mostMm: 100 },
    'note',
    ['7 joints where they are', '9 tiles to be cut', 'restarts'],
  ],
  'not-checked': [
    { what: 'cover over the pipe', missing: 'the pipe' },
    'caution',
    ['Not checked: cover over the pipe.', 'needs the pipe'],
  ],
};

const facts = Object.entries(samples).map(([code, [values, severity, words]]) => {
  const fact = { code, at: [1000, 2000], refs: ['B3'], ...values } as unknown as FindingFact;
  return [code, fact, severity, words] as const;
});

describe('every finding is put into words with its figure and its limit', () => {
  test.each(facts)('%s', (code, fact, severity, words) => {
    const finding = findingDescribe(fact);
    expect(finding).toMatchObject({ code, severity, at: [1000, 2000], refs: ['B3'] });
    for (const word of words) expect(finding.message).toContain(word);
    expect(finding.message).toMatch(/^[A-Z].*\.$/);
    expect(finding.message).not.toMatch(/undefined|NaN|Infinity|field joint|zero point|slip/);
    expect(sourceOf(finding.source)).not.toBeNull();
  });
});

test('a figure just over its limit never reads as the limit', () => {
  fc.assert(
    fc.property(fc.double({ min: 1.001, max: 1.1, noNaN: true }), fc.integer({ min: 1, max: 1000 }), (over, limit) => {
      const { message } = findingDescribe({
        code: 'bay-area',
        at: null,
        refs: [],
        bay: 'B1',
        value: limit * over,
        limit,
      });
      const [value, least] = message.match(/[\d.]+(?= m\u00b2)/g) ?? [];
      expect(Number(value)).toBeGreaterThan(Number(least));
    }),
  );
});

test('what lies off the floor is called by its kind and id, joinery by its name', () => {
  const words = (what: OffFloor, id: string) =>
    findingDescribe({ code: 'object-off-floor', at: null, refs: [], what, id }).message;
  expect(words('pipe', 'p1')).toBe(
    'The pipe p1 touches no floor: it lies outside the rooms or on something that takes their floor.',
  );
  expect(words('joinery', 'Serving counter')).toBe(
    'Serving counter touches no floor: it lies outside the rooms or on something that takes their floor.',
  );
});

test('an area that is not nought never reads as nought, however small', () => {
  const overlap = (areaM2: number) =>
    findingDescribe({ code: 'rooms-overlap', at: null, refs: [], names: ['Hall', 'Bath'], areaM2 }).message;
  expect(overlap(0.0002)).toBe('Hall and Bath overlap by 0.0002 m\u00b2.');
  expect(overlap(0.00096)).toBe('Hall and Bath overlap by 0.001 m\u00b2.');
  expect(overlap(0.000000043)).toBe('Hall and Bath overlap by 0.00000004 m\u00b2.');
  const [values] = samples['slab-contact'];
  const held = findingDescribe({ ...values, code: 'slab-contact', at: null, refs: [], areaM2: 0.0004 });
  expect(held.message).toContain('over 0.0004 m\u00b2');
});

test('a length of a few hundredths of a millimetre never reads as nought', () => {
  const [values] = samples['sealant-least-width'];
  const fact: FindingFact = { ...values, code: 'sealant-least-width', at: null, refs: [], widthMm: 0.04 };
  expect(findingDescribe(fact).message).toContain('is 0.04 mm wide');
});

test('a pipe thicker than the screed stands above it, and no length is below nought', () => {
  const words = (coverMm: number) =>
    findingDescribe({ code: 'cover-thin', at: null, refs: [], coverMm, leastMm: 30 }).message;
  expect(words(-5)).toBe('The pipe stands 5 mm above the screed; the least cover is 30 mm.');
  expect(words(0)).toBe('The screed does not cover the pipe; the least cover is 30 mm.');
});

test('one unheated room is spoken of as one', () => {
  const fact: FindingFact = { code: 'unheated-as-plan', at: null, refs: [], names: ['Store'], highestC: 45 };
  expect(findingDescribe(fact).message).toBe(
    'Store is unheated and gives no highest temperature of its own; it is taken to warm to the plan\u2019s 45 \u00b0C.',
  );
});

test('a floor that the rule set in its place leaves free is said to have no limit', () => {
  const [values] = samples['rule-set-other-floor'];
  const fact: FindingFact = { ...values, code: 'rule-set-other-floor', at: null, refs: [], lengthM: null };
  expect(findingDescribe(fact).message).toContain('"EN", taken in its place, sets no limit for Hall and Bath.');
});

test('a bay held in more than two places says in how many', () => {
  const [values] = samples['held-twice'];
  const fact: FindingFact = { ...values, code: 'held-twice', at: null, refs: [], names: ['k1', 'k2', 'k3'] };
  expect(findingDescribe(fact).message).toContain('held in 3 places, k1, k2 and k3');
});

test('a bay on the slab for want of insulation is held in the room, not under it', () => {
  const [values] = samples['slab-contact'];
  const fact: FindingFact = { ...values, code: 'slab-contact', at: null, refs: [], name: 'Store', isRoom: true };
  expect(findingDescribe(fact).message).toContain('held to the slab (no insulation) in Store over 1.8 m\u00b2');
});

test('each way of holding a bay has words of its own', () => {
  const causes = ['no-insulation', 'fixed-through', 'slab-contact'] as const;
  const messages = causes.map((cause) => {
    const fact: FindingFact = {
      code: 'slab-contact',
      at: null,
      refs: [],
      name: 'Bar',
      isRoom: false,
      bay: 'B1',
      areaM2: 0.04,
      cause,
    };
    return findingDescribe(fact).message;
  });
  expect(new Set(messages).size).toBe(3);
  for (const message of messages) expect(message).toContain('0.04 m\u00b2');
  expect(messages[1]).toContain('bolted through');
});

test("a limit of the user's keeps the document that he named", () => {
  const fact: FindingFact = {
    code: 'bay-area',
    at: null,
    refs: [],
    bay: 'B1',
    value: 61,
    limit: 60,
    source: 'Data sheet 12',
  };
  expect(findingDescribe(fact).source).toBe('Data sheet 12');
});

test('findings come in the same order whatever order they were found in: faults, cautions, notes, then as people count', () => {
  const all = facts.flatMap(([, fact]) => ['B10', 'B2', 'B1'].map((bay) => findingDescribe({ ...fact, refs: [bay] })));
  const sorted = findingsSort(all);
  fc.assert(
    fc.property(fc.shuffledSubarray(all, { minLength: all.length }), (shuffled) => {
      expect(findingsSort(shuffled)).toEqual(sorted);
    }),
    { numRuns: 20 },
  );
  const severities = sorted.map(({ severity }) => severity);
  expect(severities).toEqual([...severities].sort((a, b) => rank(a) - rank(b)));
  expect(sorted.slice(0, 3).map(({ refs }) => refs[0])).toEqual(['B1', 'B2', 'B10']);
});

const rank = (severity: Finding['severity']) => ['fault', 'caution', 'note'].indexOf(severity);

test('ids are ordered as people count', () => {
  expect(['J10', 'J2', 'B1', 'J1', 'J1a', 'r', 'J02'].sort(naturalOrder)).toEqual([
    'B1',
    'J1',
    'J1a',
    'J02',
    'J2',
    'J10',
    'r',
  ]);
});

test('the natural order is an order', () => {
  const id = fc.stringMatching(/^[a-c0-2 -]{0,6}$/);
  fc.assert(
    fc.property(id, id, id, (a, b, c) => {
      expect(Math.sign(naturalOrder(a, b)) + Math.sign(naturalOrder(b, a))).toBe(0);
      expect(naturalOrder(a, b) === 0).toBe(a === b);
      const [x, y, z] = [a, b, c].sort(naturalOrder) as [string, string, string];
      expect(naturalOrder(x, z)).toBeLessThanOrEqual(0);
      expect(naturalOrder(x, y)).toBeLessThanOrEqual(0);
      expect(naturalOrder(y, z)).toBeLessThanOrEqual(0);
    }),
    { numRuns: 2000 },
  );
});
