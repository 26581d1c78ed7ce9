import type { Point } from '../geometry/point.ts';
import type { Severity } from '../plan/analysis.ts';
import type { MarkItem } from './drawing.ts';
import type { ColourName, EndMarkName, MarkStyleName } from './styles.ts';

/** A symbol as plain figures, mm on paper round its origin, x to the right and y down, drawn in the order given.
 *  A renderer knows polylines and discs and nothing of what they mean. */
export type SymbolFigure = SymbolPolyline | SymbolDisc;

interface SymbolInk {
  readonly fill: ColourName | 'line' | null;
  readonly stroke: ColourName | 'line' | null;
  readonly widthMm: number;
}

export interface SymbolPolyline extends SymbolInk {
  readonly figure: 'polyline';
  readonly points: readonly Point[];
  readonly closed: boolean;
}

export interface SymbolDisc extends SymbolInk {
  readonly figure: 'disc';
  readonly centre: Point;
  readonly radiusMm: number;
}

/** The end of a joint: origin at the end of the line, x pointing out of it. `'line'` stands for the colour of the line. */
export const endMarks: Readonly<Record<EndMarkName, readonly SymbolFigure[]>> = {
  bar: [
    open(
      [
        [0, -1.5],
        [0, 1.5],
      ],
      0.6,
    ),
  ],
  fork: [
    open(
      [
        [0.2, -1.3],
        [-1.3, 0],
        [0.2, 1.3],
      ],
      0.5,
    ),
  ],
  ring: [disc([0, 0], 0.85, 'paper', 'line', 0.45)],
  block: [
    closed(
      [
        [-1.1, -1.1],
        [1.1, -1.1],
        [1.1, 1.1],
        [-1.1, 1.1],
      ],
      'line',
      null,
      0,
    ),
  ],
  lozenge: [
    closed(
      [
        [-1.4, 0],
        [0, -1.1],
        [1.4, 0],
        [0, 1.1],
      ],
      'line',
      'paper',
      0.2,
    ),
  ],
  slash: [
    open(
      [
        [-0.7, 1],
        [0.7, -1],
      ],
      0.35,
    ),
  ],
  saltire: [
    open(
      [
        [-1, -1],
        [1, 1],
      ],
      0.45,
    ),
    open(
      [
        [-1, 1],
        [1, -1],
      ],
      0.45,
    ),
  ],
};

/** Side of the tiles in the symbol of a set-out point. */
const setOutTileMm = 2.4;
/** Radius of the lettered end of a grid line. */
export const gridEndMm = 3.4;

export const marks: Readonly<Record<MarkStyleName, MarkSymbol>> = {
  'pin-fault': {
    figures: [
      stem('fault'),
      closed(
        [
          [0, -10.4],
          [3.7, -6.7],
          [0, -3],
          [-3.7, -6.7],
        ],
        'fault',
        'paper',
        0.3,
      ),
    ],
    textAt: [0, -6.7],
    textStyle: 'pin-fault',
    reachMm: { left: 3.9, right: 3.9, up: 10.6, down: 0.6 },
  },
  'pin-caution': {
    figures: [
      stem('caution'),
      closed(
        [
          [0, -10],
          [4, -3.4],
          [-4, -3.4],
        ],
        'paper',
        'caution',
        0.5,
      ),
    ],
    textAt: [0, -5.3],
    textStyle: 'pin-caution',
    reachMm: { left: 4.3, right: 4.3, up: 10.4, down: 0.6 },
  },
  'pin-note': {
    figures: [stem('faint'), disc([0, -4.7], 2.7, 'paper', 'faint', 0.35)],
    textAt: [0, -4.7],
    textStyle: 'pin-note',
    reachMm: { left: 2.9, right: 2.9, up: 7.6, down: 0.6 },
  },
  'still-point': {
    figures: [
      disc([0, 0], 1, null, 'faint', 0.25),
      {
        ...open(
          [
            [-1.9, 0],
            [1.9, 0],
          ],
          0.25,
        ),
        stroke: 'faint',
      },
      {
        ...open(
          [
            [0, -1.9],
            [0, 1.9],
          ],
          0.25,
        ),
        stroke: 'faint',
      },
    ],
    textAt: null,
    textStyle: null,
    reachMm: { left: 2.1, right: 2.1, up: 2.1, down: 2.1 },
  },
  'fixed-through': {
    figures: [disc([0, 0], 1.5, 'paper', 'held', 0.35), disc([0, 0], 0.7, 'held', null, 0)],
    textAt: null,
    textStyle: null,
    reachMm: { left: 1.7, right: 1.7, up: 1.7, down: 1.7 },
  },
  'set-out': {
    figures: [
      ...[1, 2].map((k) => closed(square(k * setOutTileMm, setOutTileMm), 'paper', 'ink', 0.3)),
      closed(square(0, setOutTileMm), 'ink', 'ink', 0.3),
      {
        ...open(
          [
            [-1.5, 0],
            [0, 0],
            [0, -1.5],
          ],
          0.3,
        ),
        stroke: 'ink',
      },
    ],
    textAt: null,
    textStyle: null,
    reachMm: { left: 1.7, right: 3 * setOutTileMm + 0.2, up: 1.7, down: setOutTileMm + 0.2 },
  },
  'running-tick': {
    figures: [
      {
        ...open(
          [
            [-0.7, 1],
            [0.7, -1],
          ],
          0.35,
        ),
        stroke: 'ink',
      },
    ],
    textAt: null,
    textStyle: null,
    reachMm: { left: 0.9, right: 0.9, up: 1.2, down: 1.2 },
  },
  'running-origin': {
    figures: [disc([0, 0], 1, 'paper', 'ink', 0.3)],
    textAt: null,
    textStyle: null,
    reachMm: { left: 1.2, right: 1.2, up: 1.2, down: 1.2 },
  },
  'base-point': {
    figures: [
      closed(
        [
          [-1.8, -1.8],
          [1.8, -1.8],
          [1.8, 1.8],
          [-1.8, 1.8],
        ],
        'paper',
        'ink',
        0.3,
      ),
      ...[-1, 1].map((side) =>
        closed(
          [
            [0, 0],
            [1.8 * side, 0],
            [1.8 * side, -1.8 * side],
            [0, -1.8 * side],
          ],
          'ink',
          null,
          0,
        ),
      ),
    ],
    textAt: null,
    textStyle: null,
    reachMm: { left: 2, right: 2, up: 2, down: 2 },
  },
  'grid-end': {
    figures: [disc([0, 0], gridEndMm, 'paper', 'ink', 0.25)],
    textAt: [0, 0],
    textStyle: 'grid-name',
    reachMm: { left: 3.6, right: 3.6, up: 3.6, down: 3.6 },
  },
  'test-point': {
    figures: [
      closed(
        [
          [0, 0],
          [1.1, -1.9],
          [1.4, -3],
          [1, -4],
          [0, -4.4],
          [-1, -4],
          [-1.4, -3],
          [-1.1, -1.9],
        ],
        'paper',
        'ink',
        0.35,
      ),
      disc([0, -3], 0.45, 'ink', null, 0),
    ],
    textAt: null,
    textStyle: null,
    reachMm: { left: 1.6, right: 1.6, up: 4.7, down: 0.5 },
  },
  access: {
    figures: [disc([0, 0], 2.2, 'ink', null, 0), disc([0, 0], 1.1, 'paper', null, 0)],
    textAt: null,
    textStyle: null,
    reachMm: { left: 2.2, right: 2.2, up: 2.2, down: 2.2 },
  },
};

/** A symbol in something narrower than so many times itself would crowd out the name. */
const clearOverSymbol = 3.5;

/** Whether a symbol is drawn at a scale: pins always, others where they have room. */
export function markShown({ style, clearMm }: Pick<MarkItem, 'style' | 'clearMm'>, paperPerPlan: number): boolean {
  if (clearMm === undefined) return true;
  const { left, right } = marks[style].reachMm;
  return clearMm * paperPerPlan >= clearOverSymbol * (left + right);
}

export interface MarkSymbol {
  readonly figures: readonly SymbolFigure[];
  /** Middle of the text written into it; null where none is. */
  readonly textAt: Point | null;
  readonly textStyle: `pin-${Severity}` | 'grid-name' | null;
  /** How far it reaches from its origin. */
  readonly reachMm: { readonly left: number; readonly right: number; readonly up: number; readonly down: number };
}

function open(points: readonly Point[], widthMm: number): SymbolPolyline {
  return { figure: 'polyline', points, closed: false, fill: null, stroke: 'line', widthMm };
}

function closed(
  points: readonly Point[],
  fill: SymbolInk['fill'],
  stroke: SymbolInk['stroke'],
  widthMm: number,
): SymbolPolyline {
  return { figure: 'polyline', points, closed: true, fill, stroke, widthMm };
}

function disc(
  centre: Point,
  radiusMm: number,
  fill: SymbolInk['fill'],
  stroke: SymbolInk['stroke'],
  widthMm: number,
): SymbolDisc {
  return { figure: 'disc', centre, radiusMm, fill, stroke, widthMm };
}

function square(x: number, side: number): Point[] {
  return [
    [x, 0],
    [x + side, 0],
    [x + side, side],
    [x, side],
  ];
}

/** From the place of a finding up to the body of its pin, so that the place itself stays in view. */
function stem(colour: ColourName): SymbolPolyline {
  return {
    figure: 'polyline',
    points: [
      [0, 0],
      [0, -3.6],
    ],
    closed: false,
    fill: null,
    stroke: colour,
    widthMm: 0.5,
  };
}
