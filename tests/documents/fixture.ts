import type { Point } from '../../src/geometry/point.ts';
import { ringArea, ringPerimeter } from '../../src/geometry/ring.ts';
import {
  type Analysis,
  type Bay,
  type Finding,
  type Joint,
  type JointKind,
  untiledJoint,
} from '../../src/plan/analysis.ts';
import type { Plan, Room } from '../../src/plan/plan.ts';

/** An L-shaped living room split into two bays, a kitchen behind a doorway and a store whose floor no bay covers; made by
 *  hand, so that documents are tested without the analyser. */

const limits = { areaM2: 40, lengthM: 8, aspect: 2, aspectFromM: 5 };
const temperatures = { layingC: 15, highestC: 45, lowestC: 15, belowC: 10 };

export function box(x: number, y: number, width: number, height: number): Point[] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}

export function room(id: string, name: string, outline: readonly Point[]): Room {
  return {
    id,
    name,
    outline,
    holes: [],
    heated: true,
    zone: null,
    covering: 'stone-or-ceramic',
    temperatures,
    hasOwnHighest: false,
    buildUp: null,
    limits,
    limitSources: {
      areaM2: 'en-1264-4-bays',
      lengthM: 'en-1264-4-bays',
      aspect: 'en-1264-4-bays',
      aspectFromM: 'en-1264-4-bays',
    },
  };
}

export function bay(
  id: string,
  rooms: readonly string[],
  outline: readonly Point[],
  lengthM: number,
  widthM: number,
): Bay {
  return {
    id,
    key: id,
    rooms,
    outline,
    measured: outline,
    holes: [],
    areaM2: ringArea(outline) / 1e6,
    lengthM,
    widthM,
    aspect: lengthM / widthM,
    perimeterM: ringPerimeter(outline) / 1e3,
    within: true,
    stillPoint: [
      (Math.min(...outline.map((p) => p[0])) + Math.max(...outline.map((p) => p[0]))) / 2,
      (Math.min(...outline.map((p) => p[1])) + Math.max(...outline.map((p) => p[1]))) / 2,
    ],
    floors: rooms.map((room) => ({ room, areaM2: ringArea(outline) / 1e6 / rooms.length, bareM2: 0 })),
    bareM2: 0,
  };
}

export function joint(id: string, kind: JointKind, line: readonly Point[], bays: readonly [string, string]): Joint {
  const [a, b] = [line[0] as Point, line[line.length - 1] as Point];
  return {
    id,
    key: id,
    kind,
    sources: [],
    line,
    run: 'R1',
    lengthM: Math.hypot(b[0] - a[0], b[1] - a[1]) / 1e3,
    bays,
    reasons: ['side of 9.0 m is over 8 m'],
    closingMm: 1.1,
    openingMm: 0,
    slidingMm: 0.2,
    worstClosingMm: 2.1,
    profileMm: 10,
    profileTakesMm: 5,
    sealantNeedsMm: 4.4,
    ...untiledJoint,
  };
}

export const noJoints = { doorway: 0, neck: 0, field: 0, structural: 0, zone: 0, drawn: 0 };

export function finding(
  severity: Finding['severity'],
  at: Point | null,
  message: string,
  refs: readonly string[] = [],
): Finding {
  return { code: 'slab-contact', severity, at, message, refs, source: 'en-1264-4' };
}

export function planOf(over: Partial<Plan> = {}): Plan {
  return {
    name: 'Reading rooms',
    ruleSet: 'en-strict',
    screed: {
      class: 'CT-C25-F4',
      thicknessMm: 65,
      expansionPerK: 12e-6,
      expansionRangePerK: [10e-6, 12e-6],
      elasticModulusNPerMm2: [17000, 25000],
      densityKgPerM3: 2000,
      flexuralNPerMm2: 4,
      compressiveNPerMm2: 25,
      shrinkageMmPerM: 0,
      swellingMmPerM: 0,
      source: null,
    },
    temperatures,
    heating: null,
    loads: null,
    buildUp: null,
    rooms: [
      room('r1', 'Hall', [
        [0, 0],
        [9000, 0],
        [9000, 4000],
        [4000, 4000],
        [4000, 7000],
        [0, 7000],
      ]),
      room('r2', 'Kitchen', box(4120, 4120, 4880, 2880)),
      room('r3', 'Store', box(9120, 0, 1500, 4000)),
    ],
    doorways: [
      {
        id: 'd1',
        line: [
          [6000, 4060],
          [6900, 4060],
        ],
        wallMm: 120,
        leaf: true,
      },
    ],
    columns: [{ id: 'c1', outline: box(3850, 3850, 300, 300) }],
    pipes: [{ id: 'p1', centre: [300, 300], diameterMm: 110 }],
    joinery: [
      {
        id: 'j1',
        name: 'Serving counter',
        outline: box(1200, 5200, 1800, 700),
        under: 'no-insulation',
        fixedThrough: true,
      },
      { id: 'j2', name: 'Units', outline: box(4120, 6400, 4880, 600), under: 'insulated', fixedThrough: false },
    ],
    slabContacts: [],
    structuralJoints: [],
    sunZones: [{ id: 'u1', outline: box(6500, 0, 2500, 1200), highestC: 55 }],
    drawnJoints: [],
    noJoint: [],
    keepClear: [{ id: 'q1', outline: box(500, 1500, 1500, 1000) }],
    jointProfile: { widthMm: 10, usableTravel: 0.5 },
    edgeStrip: { thicknessMm: 10, usableTravel: 0.5 },
    sealant: { widthMm: 8, capability: 0.25 },
    tiles: null,
    tileFields: [],
    layout: { aim: 'least-joint', reentrantMm: 150, columnMm: 400, neckRatio: 0.6 },
    ...over,
  };
}

export function analysisOf(over: Partial<Analysis> = {}): Analysis {
  const b1: Point[] = [
    [0, 0],
    [4000, 0],
    [4000, 7000],
    [0, 7000],
  ];
  const b2: Point[] = [
    [4000, 0],
    [9000, 0],
    [9000, 4000],
    [6900, 4000],
    [6900, 4060],
    [6000, 4060],
    [6000, 4000],
    [4000, 4000],
  ];
  const b3: Point[] = [
    [4120, 4120],
    [6000, 4120],
    [6000, 4060],
    [6900, 4060],
    [6900, 4120],
    [9000, 4120],
    [9000, 7000],
    [4120, 7000],
  ];
  const edge = (id: string, of: string, line: Point[]) => ({
    id,
    along: 'wall' as const,
    bay: of,
    room: 'r1',
    object: null,
    line,
    lengthM: 1,
    movementMm: 1.4,
  });
  const quantities = {
    edgeStripM: 41.2,
    jointM: { ...noJoints, doorway: 0.9, field: 4 },
    sealantLitres: 0.04,
    screedM3: 4.04,
    screedKg: 8080.5,
    insulationM2: 60.9,
    slabContactM2: 1.26,
    floorM2: 62.1,
  };
  return {
    format: 'screed-bays/analysis',
    version: 1,
    plan: 'Reading rooms',
    bays: [bay('B1', ['r1'], b1, 7, 4), bay('B2', ['r1'], b2, 5, 4), bay('B3', ['r2'], b3, 4.88, 2.88)],
    joints: [
      joint(
        'J1',
        'field',
        [
          [4000, 0],
          [4000, 4000],
        ],
        ['B1', 'B2'],
      ),
      joint(
        'J2',
        'doorway',
        [
          [6000, 4060],
          [6900, 4060],
        ],
        ['B2', 'B3'],
      ),
    ],
    edges: [
      edge('E1', 'B1', [
        [4000, 0],
        [0, 0],
        [0, 7000],
        [4000, 7000],
        [4000, 4000],
      ]),
      edge('E2', 'B2', [
        [4000, 4000],
        [6000, 4000],
        [6000, 4060],
      ]),
      edge('E3', 'B2', [
        [6900, 4060],
        [6900, 4000],
        [9000, 4000],
        [9000, 0],
        [4000, 0],
      ]),
      edge('E4', 'B3', [
        [6900, 4060],
        [6900, 4120],
        [9000, 4120],
        [9000, 7000],
        [4120, 7000],
        [4120, 4120],
        [6000, 4120],
        [6000, 4060],
      ]),
    ],
    findings: [
      finding('fault', [2100, 5550], 'Serving counter holds 1.3 m2 of bay B1 to the slab: no insulation under it.', [
        'j1',
        'B1',
      ]),
      finding('caution', [4000, 2000], 'Joint J1 closes 5.2 mm in the worst case; the profile takes 5.0 mm.', ['J1']),
      finding('note', null, 'Not checked: screed thickness against load. The plan gives no loads.'),
      finding('note', [9870, 2000], 'Store is reached by no door.', ['r3']),
    ],
    quantities: {
      ...quantities,
      rooms: [
        { room: 'r1', ...quantities },
        { room: 'r2', ...quantities, edgeStripM: -0 },
      ],
    },
    proof: { fieldJointM: 4, atLeastM: null },
    tiles: null,
    ...over,
  };
}
