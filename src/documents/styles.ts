import type { JointKind, Severity } from '../plan/analysis.ts';

/** Every colour, line, fill, symbol size and text size of the drawing, once. `docs/drawing-language.md` gives the reason
 *  for each. All sizes in mm on paper. */

/** A colour as drawn on a light ground (and on paper) and on a dark one: each chosen, neither derived from the other. */
export interface Colour {
  readonly light: string;
  readonly dark: string;
}
export type Theme = keyof Colour;

export const tintCount = 6;

export const colours = {
  paper: { light: '#ffffff', dark: '#14181b' },
  ink: { light: '#1f262b', dark: '#e8edf0' },
  faint: { light: '#5c6870', dark: '#9aa7b0' },
  tint0: { light: '#f4ecdc', dark: '#302b1f' },
  tint1: { light: '#dfebee', dark: '#1c3038' },
  tint2: { light: '#edf0d8', dark: '#2b311b' },
  tint3: { light: '#f3e1de', dark: '#3a2628' },
  tint4: { light: '#e5e4f2', dark: '#29283d' },
  tint5: { light: '#dcf0e2', dark: '#183326' },
  solid: { light: '#4a545b', dark: '#a7b2ba' },
  unit: { light: '#ffffff', dark: '#20262a' },
  sun: { light: '#c08a1e', dark: '#b98a33' },
  held: { light: '#7d2418', dark: '#ff9d8a' },
  doorway: { light: '#0b5a5e', dark: '#6fd3d6' },
  neck: { light: '#5b3a8c', dark: '#c3a8f2' },
  field: { light: '#8a2467', dark: '#f29bd0' },
  zone: { light: '#1d4f91', dark: '#92bdf5' },
  drawn: { light: '#455c14', dark: '#bcd680' },
  fault: { light: '#b0200f', dark: '#ff8f7d' },
  caution: { light: '#835200', dark: '#f0bf62' },
  grout: { light: '#8b959b', dark: '#66747d' },
  across: { light: '#d0d4d4', dark: '#3b444a' },
} as const satisfies Record<string, Colour>;
export type ColourName = keyof typeof colours;

/** One pass of the pen. A style with several is drawn widest first, so that a wide dark pass under a narrower light one reads as a double line. */
export interface Stroke {
  readonly widthMm: number;
  readonly colour: ColourName;
  /** Lengths of dash and gap in turn; empty for an unbroken line. */
  readonly dashMm: readonly number[];
  readonly cap: 'butt' | 'round';
}

export interface LineStyle {
  readonly strokes: readonly Stroke[];
  /** Drawn at both ends, its x axis pointing out of the line. */
  readonly endMark: EndMarkName | null;
  /** Text of this line's label. */
  readonly colour: ColourName;
  /** How far it stands to the right of the course that it is given, mm on paper. */
  readonly insetMm?: number;
}

export type EndMarkName = 'bar' | 'fork' | 'ring' | 'block' | 'lozenge' | 'saltire' | 'slash';

function stroke(
  widthMm: number,
  colour: ColourName,
  dashMm: readonly number[] = [],
  cap: Stroke['cap'] = 'butt',
): Stroke {
  return { widthMm, colour, dashMm, cap };
}

const jointStyles = {
  'joint-doorway': { strokes: [stroke(0.75, 'doorway')], endMark: 'bar', colour: 'doorway' },
  'joint-neck': { strokes: [stroke(0.6, 'neck', [2.2, 1.1])], endMark: 'fork', colour: 'neck' },
  'joint-field': { strokes: [stroke(0.6, 'field', [6, 1.4])], endMark: 'ring', colour: 'field' },
  'joint-structural': { strokes: [stroke(1.5, 'ink'), stroke(0.7, 'paper')], endMark: 'block', colour: 'ink' },
  'joint-zone': { strokes: [stroke(0.6, 'zone', [5, 1.1, 0.9, 1.1])], endMark: 'lozenge', colour: 'zone' },
  'joint-drawn': {
    strokes: [stroke(0.6, 'drawn', [3.4, 0.9, 0.9, 0.9, 0.9, 0.9])],
    endMark: 'saltire',
    colour: 'drawn',
  },
} as const satisfies Record<`joint-${JointKind}`, LineStyle>;

/** Strokes across a course, as wide as a band is deep: a row of narrow bars inside a wall. */
function band(colour: ColourName, barMm: number, gapMm: number) {
  return { strokes: [stroke(1.3, colour, [barMm, gapMm])], endMark: null, colour, insetMm: 1.3 } as const;
}

/** What shows tiles: the faintest lines of all, and what marks their cuts. */
const ruledStyles = {
  grout: { strokes: [stroke(0.13, 'grout')], endMark: null, colour: 'faint' },
  'first-tile': { strokes: [stroke(0.45, 'ink')], endMark: null, colour: 'ink' },
  'cut-under-half': band('faint', 0.25, 2),
  'cut-sliver': band('faint', 0.3, 0.6),
} as const satisfies Record<string, LineStyle>;
export type RuledStyleName = keyof typeof ruledStyles;

export const lineStyles = {
  ...ruledStyles,
  'edge-wall': { strokes: [stroke(0.9, 'ink', [], 'round')], endMark: null, colour: 'ink' },
  'edge-object': { strokes: [stroke(0.5, 'ink', [], 'round')], endMark: null, colour: 'ink' },
  match: { strokes: [stroke(0.35, 'ink', [9, 1.2, 1.2, 1.2, 1.2, 1.2])], endMark: null, colour: 'ink' },
  'room-outline': { strokes: [stroke(0.25, 'faint')], endMark: null, colour: 'faint' },
  reference: { strokes: [stroke(0.3, 'ink')], endMark: null, colour: 'ink' },
  check: { strokes: [stroke(0.2, 'ink', [1.6, 1])], endMark: 'slash', colour: 'ink' },
  running: { strokes: [stroke(0.18, 'ink')], endMark: null, colour: 'ink' },
  extension: { strokes: [stroke(0.18, 'faint')], endMark: null, colour: 'faint' },
  'grid-line': { strokes: [stroke(0.18, 'faint', [8, 1.2, 1.2, 1.2])], endMark: null, colour: 'faint' },
  membrane: { strokes: [stroke(0.5, 'ink', [3, 0.8])], endMark: null, colour: 'ink' },
  dimension: { strokes: [stroke(0.18, 'ink')], endMark: 'slash', colour: 'ink' },
  dam: { strokes: [stroke(2.8, 'ink', [0.5, 1.1])], endMark: null, colour: 'ink' },
  leaf: { strokes: [stroke(2.2, 'faint'), stroke(1.8, 'unit')], endMark: null, colour: 'ink' },
  'structural-course': { strokes: [stroke(0.9, 'faint'), stroke(0.6, 'paper')], endMark: null, colour: 'faint' },
  'drawn-course': { strokes: [stroke(0.25, 'drawn', [1.2, 0.8])], endMark: null, colour: 'drawn' },
  // ticks across the joint, far apart where it moved, close where it is new
  'revision-gone': { strokes: [stroke(0.3, 'ink', [2.6, 1.4])], endMark: 'saltire', colour: 'ink' },
  'revision-left': { strokes: [stroke(0.9, 'faint', [0.9, 0.9])], endMark: null, colour: 'faint' },
  'revision-moved': { strokes: [stroke(2.4, 'ink', [0.3, 4.2])], endMark: null, colour: 'ink' },
  'revision-new': { strokes: [stroke(2.4, 'ink', [0.3, 1.5])], endMark: null, colour: 'ink' },
  'no-joint': { strokes: [stroke(0.35, 'faint', [0.4, 1.2])], endMark: 'saltire', colour: 'faint' },
  ...jointStyles,
} as const satisfies Record<string, LineStyle>;
export type LineStyleName = keyof typeof lineStyles;

/** Parallel lines over a fill, mm on paper. */
export interface Hatch {
  readonly angleDeg: number;
  readonly spacingMm: number;
  readonly stroke: Stroke;
}

export interface FillStyle {
  readonly fill: ColourName | null;
  readonly outline: Stroke | null;
  readonly hatches: readonly Hatch[];
}

function tint(colour: ColourName): FillStyle {
  return { fill: colour, outline: null, hatches: [] };
}

const heldHatches = [45, 135].map((angleDeg) => ({ angleDeg, spacingMm: 1.6, stroke: stroke(0.25, 'held') }));

export const fillStyles = {
  'bay-0': tint('tint0'),
  'bay-1': tint('tint1'),
  'bay-2': tint('tint2'),
  'bay-3': tint('tint3'),
  'bay-4': tint('tint4'),
  'bay-5': tint('tint5'),
  column: { fill: 'solid', outline: null, hatches: [] },
  pipe: { fill: 'paper', outline: stroke(0.35, 'ink'), hatches: [] },
  'joinery-insulated': { fill: 'unit', outline: stroke(0.35, 'faint'), hatches: [] },
  'joinery-built-off': {
    fill: 'paper',
    outline: stroke(0.5, 'ink'),
    hatches: [{ angleDeg: 45, spacingMm: 2.4, stroke: stroke(0.2, 'faint') }],
  },
  'wall-cut': {
    fill: 'paper',
    outline: stroke(0.5, 'ink'),
    hatches: [{ angleDeg: 45, spacingMm: 1.8, stroke: stroke(0.18, 'faint') }],
  },
  'section-slab': {
    fill: 'paper',
    outline: stroke(0.5, 'ink'),
    hatches: [
      { angleDeg: 45, spacingMm: 2.8, stroke: stroke(0.2, 'faint') },
      { angleDeg: 135, spacingMm: 4.2, stroke: stroke(0.35, 'faint', [0.4, 3.8], 'round') },
    ],
  },
  'section-insulation': {
    fill: 'paper',
    outline: stroke(0.25, 'ink'),
    hatches: [60, 120].map((angleDeg) => ({ angleDeg, spacingMm: 2.6, stroke: stroke(0.15, 'faint') })),
  },
  'section-screed': {
    fill: 'tint0',
    outline: stroke(0.35, 'ink'),
    hatches: [{ angleDeg: 20, spacingMm: 2, stroke: stroke(0.35, 'faint', [0.4, 2.8], 'round') }],
  },
  'section-adhesive': { fill: 'tint1', outline: stroke(0.25, 'ink'), hatches: [] },
  'section-covering': {
    fill: 'paper',
    outline: stroke(0.35, 'ink'),
    hatches: [{ angleDeg: 135, spacingMm: 1.4, stroke: stroke(0.18, 'faint') }],
  },
  'section-foam': {
    fill: 'paper',
    outline: stroke(0.35, 'ink'),
    hatches: [{ angleDeg: 0, spacingMm: 1.1, stroke: stroke(0.2, 'ink') }],
  },
  'section-solid': { fill: 'solid', outline: null, hatches: [] },
  'section-plain': { fill: 'paper', outline: stroke(0.35, 'ink'), hatches: [] },
  held: { fill: null, outline: stroke(0.35, 'held'), hatches: heldHatches },
  sun: {
    fill: null,
    outline: stroke(0.25, 'sun'),
    hatches: [{ angleDeg: 115, spacingMm: 3, stroke: stroke(0.2, 'sun') }],
  },
  'keep-clear': {
    fill: null,
    outline: stroke(0.35, 'faint', [0.4, 1.1], 'round'),
    hatches: [{ angleDeg: 0, spacingMm: 3.4, stroke: stroke(0.2, 'faint', [0.4, 3], 'round') }],
  },
} as const satisfies Record<string, FillStyle>;
export type FillStyleName = keyof typeof fillStyles;

export type MarkStyleName =
  | `pin-${Severity}`
  | 'still-point'
  | 'fixed-through'
  | 'set-out'
  | 'running-tick'
  | 'running-origin'
  | 'base-point'
  | 'grid-end'
  | 'test-point'
  | 'access';

/** Sizes of lettering by the height of the capitals, as on hand-lettered drawings: 3.5 mm to find a bay from a step
 *  away, 2.5 mm to read a figure with the sheet in hand. */
export interface TextStyle {
  readonly capMm: number;
  readonly weight: 'regular' | 'bold';
  readonly colour: ColourName;
}

export const textStyles = {
  'bay-name': { capMm: 3.5, weight: 'bold', colour: 'ink' },
  'bay-figure': { capMm: 2.5, weight: 'regular', colour: 'ink' },
  'object-name': { capMm: 2.5, weight: 'regular', colour: 'faint' },
  'sheet-title': { capMm: 3.5, weight: 'bold', colour: 'ink' },
  'sheet-head': { capMm: 2.5, weight: 'bold', colour: 'ink' },
  'sheet-text': { capMm: 2.5, weight: 'regular', colour: 'ink' },
  'sheet-fault': { capMm: 2.5, weight: 'bold', colour: 'fault' },
  'sheet-small': { capMm: 1.8, weight: 'regular', colour: 'faint' },
  'across-6': { capMm: 6, weight: 'bold', colour: 'across' },
  'across-9': { capMm: 9, weight: 'bold', colour: 'across' },
  'across-13': { capMm: 13, weight: 'bold', colour: 'across' },
  'across-18': { capMm: 18, weight: 'bold', colour: 'across' },
  'across-26': { capMm: 26, weight: 'bold', colour: 'across' },
  'across-37': { capMm: 37, weight: 'bold', colour: 'across' },
  'figure-small': { capMm: 1.8, weight: 'regular', colour: 'ink' },
  'grid-name': { capMm: 2.5, weight: 'bold', colour: 'ink' },
  'grid-name-long': { capMm: 1.8, weight: 'regular', colour: 'ink' },
  'pin-fault': { capMm: 2.5, weight: 'bold', colour: 'paper' },
  'pin-caution': { capMm: 2.5, weight: 'bold', colour: 'caution' },
  'pin-note': { capMm: 2.5, weight: 'regular', colour: 'faint' },
  'pin-fault-long': { capMm: 1.8, weight: 'bold', colour: 'paper' },
  'pin-caution-long': { capMm: 1.8, weight: 'bold', colour: 'caution' },
  'pin-note-long': { capMm: 1.8, weight: 'regular', colour: 'faint' },
  'joint-doorway': { capMm: 2.5, weight: 'regular', colour: 'doorway' },
  'joint-neck': { capMm: 2.5, weight: 'regular', colour: 'neck' },
  'joint-field': { capMm: 2.5, weight: 'regular', colour: 'field' },
  'joint-structural': { capMm: 2.5, weight: 'regular', colour: 'ink' },
  'joint-zone': { capMm: 2.5, weight: 'regular', colour: 'zone' },
  'joint-drawn': { capMm: 2.5, weight: 'regular', colour: 'drawn' },
} as const satisfies Record<string, TextStyle>;
export type TextStyleName = keyof typeof textStyles;

/** Height of the capitals of a usual sans serif over its font size. */
const capShare = 0.72;

/** @returns font size in mm on paper */
export function textFontMm(style: TextStyleName): number {
  return textStyles[style].capMm / capShare;
}

/** Width of the ground that is laid behind text, on each side. */
export const haloMm = 0.6;
/** Distance of lines of text, as a share of the font size. */
export const leading = 1.15;
