import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createAnalyser } from '../../src/analysis/analyser.ts';
import { labelsPlace } from '../../src/documents/label-place.ts';
import { fieldSetOuts, setOutPages } from '../../src/documents/set-out.ts';
import { setOutDrawing } from '../../src/documents/set-out-drawing.ts';
import { jointPlaces } from '../../src/documents/set-out-joint-text.ts';
import { jointDistances } from '../../src/documents/set-out-joints.ts';
import { setOutLines } from '../../src/documents/set-out-lines.ts';
import { wallFaces } from '../../src/documents/set-out-walls.ts';
import { pageSvg } from '../../src/documents/svg.ts';
import type { Ring } from '../../src/geometry/ring.ts';
import type { Analysis } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { planRead } from '../../src/plan/read.ts';
import { planResolve } from '../../src/plan/resolve.ts';
import { box, joint } from './fixture.ts';
import { lineHits, outlineOf } from './label-check.ts';
import { paperFiles, paperSource } from './paper-fixture.ts';
import { oneRoom, sheetWords, words } from './set-out-fixture.ts';
import { fieldReport, jointedReport, tiledAnalysis, tiledPlan } from './tile-fixture.ts';

/** The floor of `fixture.ts` with the walls of the kitchen given to it and its doorway named. */
function floor(): { readonly plan: Plan; readonly analysis: Analysis } {
  const { edges, joints } = tiledAnalysis();
  return {
    plan: tiledPlan(),
    analysis: tiledAnalysis(undefined, {
      edges: edges.map((edge) => (edge.bay === 'B3' ? { ...edge, room: 'r2' } : edge)),
      joints: joints.map((each) => (each.id === 'J2' ? { ...each, sources: ['d1'] } : each)),
    }),
  };
}

const { plan, analysis } = floor();
const report = fieldReport();
const lines = setOutLines(plan, report, wallFaces(analysis), analysis);

describe('walls', () => {
  it('run on over joints that meet them and over doorways', () => {
    const upper = wallFaces(analysis).filter(({ line }) => line.every(([, y]) => y === 0));
    expect(upper.map(({ room: of, line }) => [of, line.map(([x]) => x).sort((a, b) => a - b)])).toEqual([
      ['r1', [0, 9000]],
    ]);
    const besideDoor = wallFaces(analysis).filter(({ line }) => line.every(([, y]) => y === 4000));
    expect(besideDoor.map(({ line }) => line.map(([x]) => x).sort((a, b) => a - b))).toEqual([[4000, 9000]]);
  });
});

describe('reference lines', () => {
  it('cross at a corner of the first whole tile and run from wall to wall', () => {
    expect(lines?.corner).toEqual([1809, 3015]);
    expect(lines?.lines.map(({ line }) => line)).toEqual([
      [
        [0, 3015],
        [9000, 3015],
      ],
      [
        [1809, 0],
        [1809, 7000],
      ],
    ]);
  });

  it('are measured from the wall that runs with them the longest, at both ends', () => {
    // 3015 mm below the upper wall of 9 m, 1809 mm right of the left wall of 7 m
    expect(lines?.lines.map(({ fromWall }) => fromWall.map(({ distanceMm }) => distanceMm))).toEqual([
      [3015, 3015],
      [1809, 1809],
    ]);
  });

  it('show a wall out of square by two distances, each measured square to that wall', () => {
    // the upper wall falls 30 mm over 6 m; at 480 and 5520 mm the line y = 1500 is off it by |30 x - 6000 * 1500| / 6000.075 mm
    const {
      plan: slanted,
      analysis: of,
      lines: found,
    } = oneRoom(
      [
        [0, 0],
        [6000, 30],
        [6000, 4000],
        [0, 4000],
      ],
      box(2400, 1500, 600, 600),
    );
    const [one = 0, other = 0] = found?.lines[0].fromWall.map(({ distanceMm }) => distanceMm) ?? [];
    expect(one).toBeCloseTo((9_000_000 - 14_400) / 6000.075, 3);
    expect(other).toBeCloseTo((9_000_000 - 165_600) / 6000.075, 3);
    expect(sheetWords(slanted, of)).toContain(
      '1498 mm at its left end and 1472 mm at its right end from the upper wall of Hall',
    );
  });

  it('are measured from named corners where no wall runs their way', () => {
    // 45 degrees through (3000, 1500) in a room of 6 x 4 m: the upper wall is met at 1500 and 4500, the lower at 5500 and 500
    const tile = [
      [3000, 1500],
      [3424, 1924],
      [3000, 2348],
      [2576, 1924],
    ] as const;
    const { plan: square, analysis: of, lines: found } = oneRoom(box(0, 0, 6000, 4000), tile, 45);
    const corners = found?.lines.map(({ fromCorner }) =>
      fromCorner.map(({ side, distanceMm }) => `${Math.round(distanceMm)} ${side}`),
    );
    expect(corners).toEqual([
      ['1500 upper left', '500 lower right'],
      ['1500 upper right', '500 lower left'],
    ]);
    expect(sheetWords(square, of)).toContain(
      '1500 mm from the upper left corner and 500 mm from the lower right corner',
    );
  });

  it('stay clear of a joint that another corner of the tile would leave free', () => {
    const along = {
      ...joint(
        'J9',
        'field',
        [
          [0, 3016],
          [4000, 3016],
        ],
        ['B1', 'B2'],
      ),
    };
    const moved = setOutLines(plan, report, wallFaces(analysis), { ...analysis, joints: [along] });
    expect(moved?.corner).toEqual([2409, 3615]);
  });

  it('are checked by 3, 4 and 5 m where that is the longest triangle that fits', () => {
    // 4.5 and 6 m do not fit the hall, 4.8 and 3.6 m run through the corner of its wall, 3 m up and 4 m to the right are clear
    expect(lines?.check).toEqual({
      onFirst: [5809, 3015],
      onSecond: [1809, 15],
      firstMm: 4000,
      secondMm: 3000,
      acrossMm: 5000,
    });
  });

  it('are none where no tile is whole', () => {
    const none = tiledAnalysis([fieldReport({ firstTile: null })]);
    expect(setOutLines(plan, fieldReport({ firstTile: null }), wallFaces(none), none)).toBeNull();
    expect(sheetWords(plan, none)).toContain('No tile of this field is laid whole.');
  });
});

describe('joints on the sheet', () => {
  it('are set out from the walls on both sides, in a doorway from the faces of its own wall', () => {
    const places = jointPlaces(plan, analysis);
    expect(places.get('J1')?.replaceAll('\u00a0', ' ')).toBe('right wall 5000 mm, left wall 4000 mm');
    expect(places.get('J2')?.replaceAll('\u00a0', ' ')).toBe('faces 60 and 60 mm');
  });

  it('tell both ends where a wall does not run along with them', () => {
    // the right wall leans from 6000 to 6300 over 4 m
    const outline: Ring = [
      [0, 0],
      [6000, 0],
      [6300, 4000],
      [0, 4000],
    ];
    const { plan: leaning, analysis: of } = oneRoom(outline, box(600, 600, 600, 600));
    const across = joint(
      'J1',
      'field',
      [
        [2000, 0],
        [2000, 4000],
      ],
      ['B1', 'B1'],
    );
    const [right] = jointDistances(leaning, { joints: [across] }, wallFaces(of)).get('J1') ?? [];
    expect(right?.distanceMm).toBeCloseTo(4150, 6);
    expect(right?.ends.map(({ side, distanceMm }) => [side, Math.round(distanceMm)])).toEqual([
      ['upper', 4000],
      ['lower', 4300],
    ]);
  });

  it('say how far off the grout line, and what is cut', () => {
    const text = sheetWords(plan, analysis);
    expect(text).toContain('J1 Hall right wall 5000 mm, left wall 4000 mm; off by 220 mm; 7 tiles cut along it');
    expect(text).toContain('off by 160 mm; 2 tiles cut along it; jambs 30 mm');
  });
});

describe('the set-out sheet', () => {
  const svg = pageSvg(setOutPages(paperSource(plan, analysis))[0]);

  it('is to scale: a line 3015 mm below a wall is 60.3 mm below it at 1 : 50', () => {
    expect(words(svg)).toContain('Scale 1 : 50');
    const edge = /data-id="E1"><path d="M([^"]*)"/u.exec(svg)?.[1] ?? '';
    const wallY = Math.min(...edge.split('L').map((point) => Number(point.split(' ')[1])));
    const [, y1, y2] = /data-id="line-1"><path d="M[\d.]+ ([\d.]+)L[\d.]+ ([\d.]+)"/u.exec(svg) ?? [];
    expect(Number(y1) - wallY).toBeCloseTo(60.3, 3);
    expect(y1).toBe(y2);
  });

  it('says what comes off each cut, what to check first, and the cautions', () => {
    const text = sheetWords(plan, analysis);
    for (const part of [
      'Check the size of the tiles delivered before setting out.',
      '10 mm for the perimeter joint come off there, off whole tiles too',
      'for 8.0 mm of sealant: 4.0 mm come off the cuts on each side',
      'Square if 4000 mm along line 1 and 3000 mm along line 2 are 5000 mm across.',
      '600 × 600 mm, grout 3 mm',
      '60, where 60 tiles are cut',
      '130: 90 + 60 \u2212 20 from off-cuts',
      '143 with 10 % allowance, 36 boxes',
      'structural engineer',
    ])
      expect(text).toContain(part);
  });

  it('tells pieces that fall into the perimeter joint apart, and still adds up', () => {
    expect(sheetWords(plan, analysis)).not.toContain('fall into the perimeter joint');
    const text = sheetWords(plan, tiledAnalysis([jointedReport]));
    for (const part of [
      '60, where 60 tiles are cut',
      '6 pieces fall into the perimeter joint',
      '7 under half, 5 of them slivers under a third',
      '124: 90 + 60 \u2212 6 left out \u2212 20 from off-cuts',
    ])
      expect(text).toContain(part);
  });

  it('leaves out what only the screed needs', () => {
    const text = sheetWords(plan, analysis);
    for (const part of [
      'Keep clear of joints',
      'Sun on the floor',
      'Held to the slab',
      'Fault, with its number',
      'closes',
    ])
      expect(text).not.toContain(part);
  });

  it('counts reference lines on through all fields', () => {
    const two = tiledAnalysis([
      fieldReport({ id: 't1', rooms: ['r1'] }),
      fieldReport({ rooms: ['r2'], firstTile: box(4824, 4824, 600, 600) }),
    ]);
    const field = { ...(plan.tiles as NonNullable<Plan['tiles']>), id: 't1', rooms: ['r1'] };
    const text = sheetWords(tiledPlan({ tileFields: [field] }), two);
    for (const head of [
      'Field t1: Hall',
      'Line 1, along',
      'Line 2, across',
      'Tiles of the floor',
      'Line 3, along',
      'Line 4, across',
    ])
      expect(text).toContain(head);
  });

  it('takes hostile names for what they are: text', async () => {
    const hostile = '</text><script>alert(1)</script>=1\u0000\ud800';
    const rooms = plan.rooms.map((each) => ({ ...each, name: hostile }));
    const field = { ...(plan.tiles as NonNullable<Plan['tiles']>), id: '=t1<b>', rooms: ['r1'] };
    const bad = tiledPlan({ name: hostile, rooms, tileFields: [field] });
    const of = tiledAnalysis([fieldReport({ id: '=t1<b>', rooms: ['r1'] }), fieldReport({ rooms: ['r2'] })]);
    for (const { name, content } of await paperFiles(paperSource(bad, of), /\.(?:svg|csv|json)$/u)) {
      const text = String(content);
      if (name.endsWith('.svg')) expect(text, name).not.toContain('<script');
      if (name.endsWith('.csv')) expect(text, name).not.toMatch(/(?:^|,|\n|")[=+@-](?!\d)/u);
      if (!name.endsWith('.json')) expect(text, name).not.toContain('\u0000');
    }
  });

  it('says how much has found no room, and how much of the text', () => {
    const many = Array.from({ length: 400 }, (_, i) => ({
      ...joint(
        `J${i}`,
        'field',
        [
          [i * 20, 0],
          [i * 20, 4000],
        ],
        ['B1', 'B2'],
      ),
      run: `R${i}`,
    }));
    const text = sheetWords(plan, { ...analysis, joints: many });
    const left = Number(/(\d+) more joints in joints\.csv/u.exec(text)?.[1]);
    const shown = text.match(/J\d+ Hall (?:right|left) wall/gu)?.length ?? 0;
    expect(left).toBeGreaterThan(0);
    expect(shown + left).toBe(400);
    expect(text).toMatch(/Without room on the drawing: (?:.*, )?397 joint names \(joints\.csv\)/u);
  });
});

describe('no text of the set-out drawing', () => {
  const dwelling = planResolve(
    (
      planRead(readFileSync(new URL('../../demo-plans/1-dwelling.json', import.meta.url), 'utf8')) as {
        file: Parameters<typeof planResolve>[0];
      }
    ).file,
  );
  const found = createAnalyser().analyse(dwelling, {}) as Analysis;
  const drawing = setOutDrawing(dwelling, found, fieldSetOuts(dwelling, found, wallFaces(found)));

  it.each([25, 50, 100])('stands over a joint, an edge, a reference line or other text at 1 : %i', (scale) => {
    const placed = labelsPlace(drawing, { paperPerPlan: 1 / scale });
    const courses = drawing.items.flatMap((item) => (item.shape === 'line' ? [item.points] : []));
    for (const label of placed) {
      for (const course of courses) expect(lineHits(label, course, scale), label.form[0]?.text).toBe(false);
      for (const other of placed.filter((each) => each !== label))
        expect(lineHits(other, outlineOf(label, scale), scale), label.form[0]?.text).toBe(false);
    }
    const figures = placed.filter(({ label }) => label.ref.id === 'line-1').length;
    expect(figures).toBeGreaterThan(4);
  });
});
