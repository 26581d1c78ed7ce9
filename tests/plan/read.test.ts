import { describe, expect, test } from 'vitest';
import { planMigrated } from '../../src/plan/migrate.ts';
import { planRead } from '../../src/plan/read.ts';
import { planText, square } from './plan-text.ts';

function problemsIn(text: string): readonly { path: string; message: string }[] {
  const read = planRead(text);
  return read.kind === 'refused' ? read.problems : [];
}

/** The only problem of a text. */
function problemIn(text: string): string {
  const problems = problemsIn(text);
  expect(problems).toHaveLength(1);
  return problems.map(({ path, message }) => `${path}: ${message}`).join();
}

test('four fields make a plan', () => {
  const file = { format: 'screed-bays/plan', version: 1, name: '', rooms: [] };
  expect(planRead(JSON.stringify(file))).toEqual({ kind: 'plan', file });
});

test('a byte order mark is no part of the plan', () => {
  expect(planRead(`\uFEFF${planText({})}`).kind).toBe('plan');
});

test.each(['format', 'version', 'name', 'rooms'])('a plan without %s is refused at that field', (field) => {
  expect(problemIn(planText({ [field]: undefined }))).toMatch(new RegExp(`^${field}: is missing`));
});

describe('text that is not JSON is refused with its line and column', () => {
  test.each([
    ['nothing', '', 1, 1],
    ['cut off in a list', '{\n  "rooms": [[0, 0], [4000', 2, 26],
    ['cut off in a name', '{"name": "Hal', 1, 14],
    ['cut off after a comma', '{"a": 1,\n', 2, 1],
    ['a comma too many', '[1, 2, ]', 1, 8],
    ['a comment', '{\n// plan\n}', 2, 1],
    ['NaN', '{"a": NaN}', 1, 7],
    ['a number that starts with nought', '{"a":\n 012}', 2, 3],
    ['a key without quotes', '{name: 1}', 1, 2],
    ['a key without a colon', '{"name" 1}', 1, 9],
    ['a bracket of the wrong kind', '{"a": [1}', 1, 9],
    ['something after the end', '{} {}', 1, 4],
    ['a line break in a name', '{"a": "x\ny"}', 1, 9],
    ['an unknown escape', '"\\x"', 1, 2],
    ['two million brackets', '['.repeat(2e6), 1, 2000001],
  ])('%s', (_, text, line, column) => {
    expect(problemIn(text)).toContain(`line ${line}, column ${column}`);
  });
});

describe('a key that one object has twice is refused with the path to it', () => {
  const twice = (text: string, spoilt: string, by: string) => problemIn(text.replace(spoilt, by));
  const hall = planText({
    name: 'A "quoted" {name}, [[\\',
    rooms: [
      { id: 'r0', outline: square },
      { id: 'r1', outline: square },
    ],
  });
  test.each([
    ['of the plan', '"version":1', '"version":1,"version":1', 'version', 'version'],
    ['with two values', '"version":1', '"version":2,"version":1', 'version', 'version'],
    ['far apart', '{"format"', '{"rooms":[],"format"', 'rooms', 'rooms'],
    ['of a room', '"id":"r1"', '"id":"r1","id":"r1"', 'rooms[1].id', 'id'],
    ['once written with an escape', '"id":"r1"', '"id":"r1", "\\u0069d" : "r1"', 'rooms[1].id', 'id'],
    ['that is no word', '"id":"r1"', '"a b":1,"a b":2', 'rooms[1]["a b"]', 'a b'],
    ['of nothing', '"id":"r1"', '"":1,"":2', 'rooms[1][""]', ''],
    ['of the language', '"id":"r1"', '"__proto__":1,"__proto__":1', 'rooms[1].__proto__', '__proto__'],
    ['in an object in an object', '"id":"r1"', '"x":[[],{"y":{"z":[],"z":{}}}]', 'rooms[1].x[1].y.z', 'z'],
  ])('%s', (_, spoilt, by, path, key) => {
    expect(twice(hall, spoilt, by)).toBe(
      `${path}: is given twice: ${JSON.stringify(key)} may stand once between its braces`,
    );
  });

  test('the same key in two objects, and a text that looks like one, are no such thing', () => {
    expect(planRead(hall).kind).toBe('plan');
    expect(planRead(planText({ name: '"id":1,"id":2' })).kind).toBe('plan');
  });
});

describe('fields are refused with the path to them', () => {
  const room = (fields: object) => ({
    rooms: [
      { id: 'r1', outline: square },
      { id: 'r2', outline: square, ...fields },
    ],
  });
  test.each([
    ['a list in place of a plan', '[]', ': is not a plan: it must be an object in braces'],
    ['a plan of another program', planText({ format: 'drawing' }), 'format: is not "screed-bays/plan"'],
    ['a plan of version 99', planText({ version: 99 }), 'version: is 99; version 1 is read'],
    ['a version in quotes', planText({ version: '1' }), 'version: must be a number; version 1 is read'],
    ['a version between two', planText({ version: 1.5 }), 'version: is 1.5; version 1 is read'],
    ['a name that is a number', planText({ name: 7 }), 'name: must be text; it is 7'],
    ['rooms that are no list', planText({ rooms: {} }), 'rooms: must be a list; it is an object'],
    ['a room that is a list', planText({ rooms: [[]] }), 'rooms[0]: must be an object in braces; it is a list'],
    ['an unknown field', planText({ colour: 'red' }), 'colour: is not a field of a plan'],
    ['an unknown field of a room', planText(room({ area: 3 })), 'rooms[1].area: is not a field of a plan'],
    ['an unknown field that is no word', planText({ 'a b': 1 }), '["a b"]: is not a field of a plan'],
    [
      'a field named as part of the language',
      planText(room({ constructor: {} })),
      'rooms[1].constructor: is not a field of a plan',
    ],
    ['an unknown rule set', planText({ ruleSet: 'mine' }), /^ruleSet: must be one of "en-strict", .*; it is "mine"$/],
    [
      'an unknown class',
      planText({ screed: { class: 'CT-C99-F4' } }),
      /^screed\.class: must be one of "CT-C20-F4", .*; it is "CT-C99-F4"$/,
    ],
    [
      'an unknown covering',
      planText(room({ covering: 'tiles' })),
      /^rooms\[1\]\.covering: must be one of .*; it is "tiles"$/,
    ],
    ['heating said in words', planText(room({ heated: 'yes' })), 'rooms[1].heated: must be true or false; it is "yes"'],
    ['an id of nothing', planText(room({ id: '' })), 'rooms[1].id: is empty'],
    [
      'two entries of the joint register for one joint',
      planText({ papers: { joints: [{ key: 'doorway:d1' }, { key: 'other' }, { key: 'doorway:d1', pipes: 1 }] } }),
      'papers.joints[2].key: is "doorway:d1", which papers.joints[0].key has already',
    ],
    ['an id used twice', planText(room({ id: 'r1' })), 'rooms[1].id: is "r1", which rooms[0].id has already'],
    [
      'an id used by a room and a column',
      planText({ columns: [{ id: 'r1', outline: square }] }),
      'columns[0].id: is "r1", which rooms[0].id has already',
    ],
    [
      'a screed of no thickness',
      planText({ screed: { thicknessMm: 0 } }),
      'screed.thicknessMm: must be above 0; it is 0',
    ],
    [
      'a box of one tile and a half',
      planText({ tiles: { lengthMm: 600, widthMm: 600, tilesPerBox: 1.5 } }),
      'tiles.tilesPerBox: must be a whole number; it is 1.5',
    ],
    [
      'a strip of no thickness',
      planText({ edgeStrip: { thicknessMm: -8 } }),
      'edgeStrip.thicknessMm: must be above 0; it is -8',
    ],
    [
      'an area limit of nought',
      planText({ screed: { limits: { areaM2: 0 } } }),
      'screed.limits.areaM2: must be above 0; it is 0',
    ],
    [
      'a length limit below nought',
      planText({ screed: { limits: { lengthM: -1 } } }),
      'screed.limits.lengthM: must be above 0; it is -1',
    ],
    [
      'a length to width under one',
      planText({ screed: { limits: { aspect: 0.9 } } }),
      'screed.limits.aspect: must be at least 1; it is 0.9',
    ],
    [
      'a sealant class as a percentage',
      planText({ sealant: { capability: 25 } }),
      'sealant.capability: must be at most 1; it is 25',
    ],
    [
      'a number beyond all numbers',
      planText({ screed: { thicknessMm: 1 } }).replace('"thicknessMm":1', '"thicknessMm":1e999'),
      'screed.thicknessMm: must be a number; it is Infinity',
    ],
  ])('%s', (_, text, expected) => {
    const problem = problemIn(text);
    if (typeof expected === 'string') expect(problem).toBe(expected);
    else expect(problem).toMatch(expected);
  });

  test('a field that would change the language itself', () => {
    expect(problemIn(planText({}).replace('"name"', '"__proto__":{"heated":false},"name"'))).toBe(
      '__proto__: is not a field of a plan',
    );
  });
});

describe('points are refused with the path to them', () => {
  const outline = (points: string) => planText({ rooms: [{ id: 'r1', outline: 'here' }] }).replace('"here"', points);
  const at = 'rooms[0].outline';
  const few = `${at}: needs at least 3 different points; points closer than 1 mm count as one`;
  test.each([
    ['a word', '[[0,0],[1e3,"x"],[0,9e3]]', `${at}[1]: must be a point of two numbers, [x, y]`],
    ['three numbers', '[[0,0],[1e3,0],[0,9e3,1]]', `${at}[2]: must be a point, [x, y]`],
    ['nothing', '[[0,0],null,[0,9e3]]', `${at}[1]: must be a point, [x, y]`],
    ['just beyond ten kilometres', '[[0,0],[1e3,0],[0,10000000.1]]', `${at}[2]: lies beyond 10,000,000 mm`],
    ['far on the other side', '[[0,-1e8],[1e3,0],[0,9e3]]', `${at}[0]: lies beyond 10,000,000 mm`],
    ['beyond all numbers', '[[0,0],[1e999,0],[0,9e3]]', `${at}[1]: lies beyond 10,000,000 mm`],
    ['no list', '"0,0 1,1"', `${at}: must be a list of points such as [[0, 0], [4000, 0]]`],
    ['an empty ring', '[]', few],
    ['two corners', '[[0,0],[1e3,0]]', few],
    ['two corners, one of them twice', '[[0,0],[1e3,0],[0,0],[1e3,0]]', few],
    ['a third corner less than 1 mm off', '[[0,0],[1e3,0],[1e3,0.9]]', few],
  ])('%s', (_, points, expected) => {
    expect(problemIn(outline(points))).toBe(expected);
  });

  test('a third corner 1 mm off is a corner', () => {
    expect(planRead(outline('[[0,0],[1e3,0],[1e3,1]]')).kind).toBe('plan');
  });

  test('ten kilometres off is still a plan', () => {
    expect(planRead(outline('[[1e7,-1e7],[9e6,-1e7],[1e7,0]]')).kind).toBe('plan');
  });

  test('every kind of place is looked at', () => {
    const far = [2e7, 0];
    const ring = [...square, far];
    const line = [[0, 0], far];
    const fields = {
      rooms: [{ id: 'r1', outline: ring, holes: [square, ring] }],
      doorways: [{ id: 'd', line }],
      columns: [{ id: 'c', outline: ring }],
      pipes: [{ id: 'p', centre: far, diameterMm: 110 }],
      joinery: [{ id: 'j', outline: ring }],
      slabContacts: [{ id: 'k', outline: ring }],
      structuralJoints: [{ id: 's', line }],
      sunZones: [{ id: 'u', outline: ring, highestC: 55 }],
      drawnJoints: [{ id: 'x', line }],
      noJoint: [{ id: 'n', line }],
      keepClear: [{ id: 'q', outline: ring }],
      tiles: { lengthMm: 600, widthMm: 600, origin: far },
      tileFields: [{ id: 't', rooms: ['r1'], lengthMm: 600, widthMm: 600, origin: far }],
    };
    expect(problemsIn(planText(fields)).map(({ path }) => path)).toEqual([
      'rooms[0].outline[4]',
      'rooms[0].holes[1][4]',
      'doorways[0].line[1]',
      'columns[0].outline[4]',
      'pipes[0].centre',
      'joinery[0].outline[4]',
      'slabContacts[0].outline[4]',
      'structuralJoints[0].line[1]',
      'sunZones[0].outline[4]',
      'drawnJoints[0].line[1]',
      'noJoint[0].line[1]',
      'keepClear[0].outline[4]',
      'tiles.origin',
      'tileFields[0].origin',
    ]);
  });

  test('a doorway is two points', () => {
    const line = [
      [0, 0],
      [900, 0],
      [900, 900],
    ];
    expect(problemIn(planText({ doorways: [{ id: 'd1', line }] }))).toBe(
      'doorways[0].line: must be 2 points; there are 3',
    );
    expect(problemIn(planText({ doorways: [{ id: 'd1', line: [[0, 0]] }] }))).toBe(
      'doorways[0].line: needs at least 2 points',
    );
  });
});

describe('a bad floor is for the analysis to say', () => {
  test.each([
    [
      'a doorway of no length',
      {
        doorways: [
          {
            id: 'd1',
            line: [
              [0, 0],
              [0, 0],
            ],
          },
        ],
      },
    ],
    [
      'an outline that crosses itself',
      {
        rooms: [
          {
            id: 'r1',
            outline: [
              [0, 0],
              [9, 9],
              [9, 0],
              [0, 9],
            ],
          },
        ],
      },
    ],
    [
      'rooms in the same place',
      {
        rooms: [
          { id: 'r1', outline: square },
          { id: 'r2', outline: square },
        ],
      },
    ],
    [
      'a room without area',
      {
        rooms: [
          {
            id: 'r1',
            outline: [
              [0, 0],
              [1000, 0],
              [2000, 0],
            ],
          },
        ],
      },
    ],
  ])('%s is read', (_, fields) => {
    expect(planRead(planText(fields)).kind).toBe('plan');
  });
});

test('coordinates are snapped to a tenth of a millimetre, and nought has no sign', () => {
  const read = planRead(
    planText({
      rooms: [
        {
          id: 'r1',
          outline: [
            [-0.04, 0.04],
            [1000.06, 0.25],
            [1000.04, 999.96],
          ],
        },
      ],
    }),
  );
  expect(read.kind === 'plan' && read.file.rooms[0]?.outline).toEqual([
    [0, 0],
    [1000.1, 0.3],
    [1000, 1000],
  ]);
});

test('a file of an older version goes through every step from its own on', () => {
  const steps = [(file: object) => ({ ...file, second: true }), (file: object) => ({ ...file, third: true })];
  expect(planMigrated({ version: 1 }, 1, steps)).toEqual({ version: 3, second: true, third: true });
  expect(planMigrated({ version: 2 }, 2, steps)).toEqual({ version: 3, third: true });
  expect(planMigrated({ version: 3 }, 3, steps)).toEqual({ version: 3 });
});
