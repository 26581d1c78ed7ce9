import { describe, expect, it } from 'vitest';
import { ringArea } from '../../src/geometry/ring.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { analysisFaults } from '../oracle/check-analysis.ts';
import { baysBeside, baysClean, baysOf, demoOpen, findingsToActOn, inBox, roomOf, sidesOf } from './demo.ts';

/** What each plan was drawn to show. The hall's counter and rail hold one bay, so that they come with a third finding. */
const shown = {
  '1-dwelling.json': [
    'column-one-direction',
    'sealant-narrow',
    'slab-contact',
    'strip-travel',
    'tile-joint-off-grout',
    'tile-slivers',
  ],
  '2-public-library.json': [
    'bay-length',
    'column-one-direction',
    'column-one-direction',
    'column-one-direction',
    'screed-thin',
    'slab-contact',
    'tile-slivers',
  ],
  '3-market-hall.json': [
    'held-twice',
    'joint-through-joinery',
    'slab-contact',
    'slab-contact',
    'tile-joint-off-grout',
    'tile-slivers',
  ],
} as const;

/** Findings that the plan is meant to leave as notes. */
const notes: readonly string[] = ['bay-aspect-allowance', 'limits-carried-over', 'tile-standing-cut'];

describe.each(Object.entries(shown))('the demo %s', (file, codes) => {
  const { plan, analysis } = demoOpen(file);

  it('opens on the findings that it was drawn to show and no others', () => {
    expect(
      findingsToActOn(analysis)
        .map((finding) => finding.code)
        .sort(),
    ).toEqual(codes);
  });

  it('has few notes, and nothing that could not be checked', () => {
    const others = analysis.findings.filter((finding) => finding.severity === 'note');
    expect(others.length).toBeLessThanOrEqual(4);
    expect(others.map((finding) => finding.code).filter((code) => !notes.includes(code))).toEqual([]);
  });

  it('has a clean bay beside each faulty one', () => {
    const clean = baysClean(analysis);
    for (const finding of findingsToActOn(analysis)) {
      if (finding.code.startsWith('tile-')) continue; // about the tiles of the whole floor
      const about = baysOf(finding, analysis);
      if (about.size === 0) continue; // about the plan as a whole
      const beside = [...baysBeside(about, analysis)].filter((bay) => clean.has(bay));
      expect(beside, finding.message).not.toEqual([]);
    }
    expect(clean.size).toBeGreaterThan(analysis.bays.length / 2);
  });

  it('keeps the contract', () => {
    expect(analysisFaults(plan, analysis)).toEqual([]);
  });
});

describe('the dwelling', () => {
  const { plan, analysis } = demoOpen('1-dwelling.json');
  const living = roomOf(plan, 'living');

  it('has about 12 rooms', () => {
    expect(plan.rooms.length).toBeGreaterThanOrEqual(11);
    expect(plan.rooms.length).toBeLessThanOrEqual(13);
  });

  it('has an open L-shaped living space with two columns, an island on insulation and one on bare slab', () => {
    const [width, length] = sidesOf(living.outline);
    expect(living.outline).toHaveLength(6);
    expect(ringArea(living.outline)).toBeLessThan(0.8 * width * length);
    expect(plan.columns.filter((column) => inBox(column.outline, living.outline))).toHaveLength(2);
    const islands = plan.joinery.filter((unit) => unit.name.endsWith('island'));
    expect(islands.every((island) => inBox(island.outline, living.outline))).toBe(true);
    expect(islands.map((island) => island.under).sort()).toEqual(['insulated', 'no-insulation']);
  });

  it('lays each island in a bay of its own, so that the held one stands beside the free one', () => {
    const held = analysis.findings.find((finding) => finding.code === 'slab-contact');
    expect(held?.refs).toContain('cooking');
    const centre = centreOf(plan, 'serving');
    const free = analysis.bays.find((bay) => inBox([centre], bay.outline));
    expect(free?.rooms).toEqual(['living']);
    expect(held?.refs).not.toContain(free?.id);
  });

  it('has a glazed strip in the sun, a corridor of 1.1 m, an arch without a leaf and an edge strip of 8 mm', () => {
    expect(plan.sunZones).toHaveLength(1);
    for (const { outline, highestC } of plan.sunZones) {
      expect(inBox(outline, living.outline)).toBe(true);
      expect(highestC).toBeGreaterThan(living.temperatures.highestC);
    }
    expect(sidesOf(roomOf(plan, 'corridor').outline)[0]).toBe(1100);
    expect(plan.doorways.find((doorway) => doorway.id === 'd-arch')?.leaf).toBe(false);
    expect(plan.edgeStrip.thicknessMm).toBe(8);
  });
});

describe('the public building', () => {
  const { plan, analysis } = demoOpen('2-public-library.json');
  const main = roomOf(plan, 'reading');

  it('has about 900 m2 of floor', () => {
    expect(analysis.quantities.floorM2).toBeGreaterThan(860);
    expect(analysis.quantities.floorM2).toBeLessThan(940);
  });

  it('carries the structural joint across the main room from wall to wall', () => {
    const largest = [...plan.rooms].sort((a, b) => ringArea(b.outline) - ringArea(a.outline))[0];
    expect(largest?.id).toBe('reading');
    const lengthM = analysis.quantities.jointM.structural;
    // 15 m between the walls, less two pilasters of 180 mm.
    expect(lengthM).toBeCloseTo(14.64, 2);
  });

  it('has pilasters and window niches along the main room', () => {
    const atNorthWall = main.outline.filter(([, y]) => y < 1000).map(([, y]) => y);
    expect(atNorthWall.filter((y) => y > 0)).toHaveLength(2 * 3);
    expect(atNorthWall.filter((y) => y < 0)).toHaveLength(2 * 4);
  });

  it('has an unheated store, and an area heated apart with a joint between the zones', () => {
    expect(roomOf(plan, 'store').heated).toBe(false);
    expect(plan.rooms.filter((room) => room.heated)).toHaveLength(plan.rooms.length - 1);
    expect(roomOf(plan, 'children').zone).not.toBe(main.zone);
    expect(analysis.quantities.jointM.zone).toBeCloseTo(5.2, 3);
  });

  it('has a partition bolted through to the slab, and bookcases that are not', () => {
    const bolted = plan.joinery.filter((unit) => unit.fixedThrough);
    expect(bolted.map((unit) => unit.id)).toEqual(['screen']);
    expect(plan.joinery.length).toBeGreaterThan(bolted.length);
    expect(bolted.every((unit) => unit.under === 'insulated' && inBox(unit.outline, main.outline))).toBe(true);
  });
});

describe('the hall', () => {
  const { plan, analysis } = demoOpen('3-market-hall.json');

  it('has 10,000 m2 of floor', () => {
    // 144 x 70 m, less 17 x 13 columns of 0.36 m2.
    expect(analysis.quantities.floorM2).toBeCloseTo(10_000.44, 2);
  });

  it('has columns of 600 mm at 8 x 5 m', () => {
    const places = plan.columns.map((column) => {
      expect(sidesOf(column.outline)).toEqual([600, 600]);
      return String(centreOf(plan, column.id));
    });
    const grid = Array.from(
      { length: 17 * 13 },
      (_, i) => `${8000 * (1 + (i % 17))},${5000 * (1 + Math.floor(i / 17))}`,
    );
    expect(places.sort()).toEqual(grid.sort());
  });

  it('carries two structural joints through the hall', () => {
    expect(plan.structuralJoints).toHaveLength(2);
    expect(analysis.quantities.jointM.structural).toBeCloseTo(2 * 70, 3);
  });

  it('needs no more joint than straight joints on the axes of the columns', () => {
    // 17 axes of 70 m less 13 columns, 13 axes of 144 m less 17 columns, columns of 0.6 m.
    expect(analysis.proof.fieldJointM).toBeLessThanOrEqual(17 * (70 - 13 * 0.6) + 13 * (144 - 17 * 0.6));
  });
});

function centreOf(plan: Plan, id: string): readonly [number, number] {
  const found = [...plan.columns, ...plan.joinery].find((each) => each.id === id);
  if (found === undefined) throw new Error(`the plan has no column or joinery ${id}`);
  const [a, , c] = found.outline;
  if (a === undefined || c === undefined) throw new Error(`${id} has no four corners`);
  return [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2];
}
