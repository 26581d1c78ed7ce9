import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import { analysed } from '../contract/analysed.ts';
import { box, planJson } from '../floors/plan-json.ts';

/** Drawn and structural joints on two rooms of 6 x 5 m and 6 x 4 m with a wall of 120 mm between them and a doorway of 900 mm in it. */

const rooms = [
  { id: 'r1', name: 'Hall', outline: box(0, 0, 6000, 5000) },
  { id: 'r2', name: 'Kitchen', outline: box(0, 5120, 6000, 4000) },
];
const doorways = [
  {
    id: 'd1',
    line: [
      [2000, 5060],
      [2900, 5060],
    ],
    wallMm: 120,
  },
];
const base = { ...planJson('Two rooms', rooms), doorways };

const drawn = (line: readonly Point[], plan: object = base) =>
  analysed({ ...plan, drawnJoints: [{ id: 'x1', line }] }).analysis;
const structural = (line: readonly Point[]) =>
  analysed({ ...base, structuralJoints: [{ id: 's1', line, widthMm: 20 }] }).analysis;
const codes = ({ findings }: { findings: readonly { code: string }[] }) => findings.map(({ code }) => code);

describe('a drawn joint over the joint of a doorway', () => {
  it.each([
    [
      'from jamb to jamb',
      [
        [2000, 5060],
        [2900, 5060],
      ] as const,
    ],
    [
      'over a part of it',
      [
        [2050, 5060],
        [2850, 5060],
      ] as const,
    ],
  ])('is one joint with it and named by it: %s', (_, line) => {
    const analysis = drawn(line);
    expect(analysis.joints.map(({ kind, reasons }) => [kind, ...reasons])).toEqual([
      ['doorway', 'doorway d1', 'drawn joint x1'],
    ]);
    expect(codes(analysis)).not.toContain('joint-idle');
  });

  it('beside it stays where it was drawn, and leaves the doorway its own', () => {
    const { joints } = drawn([
      [2010, 5030],
      [2890, 5030],
    ]);
    expect(joints.map(({ kind, line }) => [kind, line[0]?.[1], line[1]?.[1]])).toEqual([
      ['drawn', 5030, 5030],
      ['doorway', 5060, 5060],
    ]);
  });
});

describe('a drawn joint between floors heated apart', () => {
  const open = planJson('Open', [
    { id: 'r1', name: 'Hall', outline: box(0, 0, 6000, 5000), zone: 'A' },
    { id: 'r2', name: 'Bay', outline: box(0, 5000, 6000, 4000), zone: 'B' },
  ]);

  it('says both why it is there', () => {
    const { joints } = drawn(
      [
        [0, 5000],
        [6000, 5000],
      ],
      open,
    );
    expect(joints.map(({ kind, reasons }) => [kind, ...reasons])).toEqual([
      ['drawn', 'drawn joint x1', 'Hall and Bay are heated in different zones'],
    ]);
  });
});

describe('a joint of the building', () => {
  it('off the floor is told', () => {
    expect(
      structural([
        [20_000, 0],
        [20_000, 5000],
      ]).findings,
    ).toContainEqual(expect.objectContaining({ code: 'joint-idle', refs: ['s1'] }));
  });

  it('along a wall parts nothing, and does not end inside the floor', () => {
    expect(
      codes(
        structural([
          [1000, 0],
          [5000, 0],
        ]),
      ),
    ).toContain('joint-idle');
    expect(
      codes(
        structural([
          [1000, 0],
          [5000, 0],
        ]),
      ),
    ).not.toContain('structural-joint-loose');
  });

  it('along the face of a wall is the joint of the doorway in it', () => {
    const analysis = structural([
      [0, 5000],
      [6000, 5000],
    ]);
    expect(analysis.joints.map(({ kind, reasons }) => [kind, ...reasons])).toEqual([
      ['structural', 'doorway d1', 'structural joint s1 of the building'],
    ]);
    expect(codes(analysis)).not.toContain('doorway-blocked');
  });

  it('that stops inside a room has to be carried through', () => {
    expect(
      codes(
        structural([
          [3000, -500],
          [3000, 8820],
        ]),
      ),
    ).toContain('structural-joint-loose');
  });
});

describe('a doorway on a part of an open side', () => {
  it('has no joint, and it is not said that nothing passes', () => {
    const open = planJson('Open', [
      { id: 'r1', name: 'Hall', outline: box(0, 0, 4000, 4000) },
      { id: 'r2', name: 'Bay', outline: box(4000, 0, 4000, 4000) },
    ]);
    const line: readonly Point[] = [
      [4000, 1000],
      [4000, 1900],
    ];
    const { findings } = analysed({ ...open, doorways: [{ id: 'd1', line, wallMm: 100 }] }).analysis;
    const told = findings.filter(({ code }) => code === 'doorway-blocked').map(({ message }) => message);
    expect(told).toEqual([expect.stringContaining('one bay')]);
  });
});

describe('a leaf that hangs 40 mm off one room in a wall of 500 mm', () => {
  const deep = {
    ...planJson('Deep', [
      { id: 'r1', name: 'Hall', outline: box(0, 0, 4000, 4000) },
      { id: 'r2', name: 'Bath', outline: box(4500, 0, 4000, 5000) },
    ]),
    doorways: [
      {
        id: 'd1',
        line: [
          [4040, 1500],
          [4040, 2400],
        ],
        wallMm: 500,
        leaf: true,
      },
    ],
  };

  it('has a second joint at the face of the other room, and it says that the tongue of 460 mm is why', () => {
    expect(analysed(deep).analysis.joints.map(({ line, reasons }) => [line[0]?.[0], ...reasons])).toEqual([
      [4040, 'doorway d1'],
      [4500, 'doorway d1', 'the floor of the opening would be a tongue 460 mm deep, over 300 mm'],
    ]);
  });
});
