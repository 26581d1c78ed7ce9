import type { Point } from '../geometry/point.ts';
import type { Box, Region, Ring } from '../geometry/ring.ts';
import type {
  ColourName,
  FillStyleName,
  LineStyleName,
  MarkStyleName,
  RuledStyleName,
  TextStyleName,
} from './styles.ts';
import type { Strokes } from './tile-lines.ts';

/** The drawing of a plan as one flat list: canvas, SVG and PDF draw this list and nothing else, so that a symbol
 *  appears in all of them or in none.
 *
 *  Geometry is in mm on the plan. Line widths, dashes, symbols and text sizes are in mm on paper, so that they keep
 *  their size whatever the scale; they stand in `styles.ts` and `symbols.ts` under the style names used here.
 *  Items come in painting order: draw them as they come. */
export interface Drawing {
  readonly items: readonly DrawingItem[];
  /** Round the geometry of all items, mm on the plan; symbols and text may reach beyond it. Null where there is none. */
  readonly box: Box | null;
}

/** From the bottom up: the order in which the items stand in the list. */
export const drawingLayers = [
  'bays',
  'areas',
  'tiles',
  'objects',
  'edges',
  'joints',
  'marks',
  'labels',
  'findings',
] as const;
export type DrawingLayer = (typeof drawingLayers)[number];

/** What an item stands for; the target of choosing and hovering. A finding's id is its index in the analysis. */
export interface DrawingRef {
  readonly kind: DrawingRefKind;
  readonly id: string;
}

export type DrawingRefKind = 'bay' | 'joint' | 'edge' | 'finding' | 'room' | 'object';

export type DrawingItem = FillItem | LineItem | RuledItem | MarkItem | LabelItem;

interface DrawingItemBase {
  readonly layer: DrawingLayer;
  readonly ref: DrawingRef;
}

/** A filled region; its style may add an outline and a hatch (`regionHatch` gives the hatch lines). */
export interface FillItem extends DrawingItemBase {
  readonly shape: 'fill';
  readonly style: FillStyleName;
  readonly outline: Ring;
  readonly holes: readonly Ring[];
}

/** An open polyline. A ring repeats its first point at the end. */
export interface LineItem extends DrawingItemBase {
  readonly shape: 'line';
  readonly style: LineStyleName;
  readonly points: readonly Point[];
  /** Ends that get no end mark, since the line goes on there as another item. */
  readonly bareEnds?: BareEnds;
}

export type BareEnds = 'first' | 'last' | 'both';

/** Straight strokes that show the tiles: many at once and none of them ever chosen. What is pressed there is the floor below. */
export interface RuledItem extends DrawingItemBase {
  readonly shape: 'ruled';
  readonly style: RuledStyleName;
  readonly strokes: Strokes;
  /** Round all strokes, mm on the plan. */
  readonly box: Box;
  /** Of the tiles whose grout this is: on paper too small to be told apart they are left out, and grout is drawn as wide as it is where that is more
   *  than the pen. */
  readonly grout?: { readonly leastMm: number; readonly groutMm: number };
}

/** A symbol of constant size on paper, set upright with its origin at `at`. */
export interface MarkItem extends DrawingItemBase {
  readonly shape: 'mark';
  readonly style: MarkStyleName;
  readonly at: Point;
  /** Written into the symbol, such as the number of a finding in the list; null for none. */
  readonly text: string | null;
  /** Turn clockwise on the sheet; none where it stands upright. */
  readonly angleDeg?: number;
  /** Clear width of what it stands in, mm on the plan: the symbol is left out where that is too narrow on paper. */
  readonly clearMm?: number;
}

/** Words with the room to step aside, to be shortened and to be left out: `labelsPlace` decides for a scale. */
export interface LabelItem extends DrawingItemBase {
  readonly shape: 'label';
  readonly seat: LabelSeat;
  /** Longest first. At least one. */
  readonly forms: readonly LabelForm[];
  /** The greater is seated first. */
  readonly priority: number;
  /** What it says stands elsewhere on the sheet too: nobody misses it where it finds no room. */
  readonly saidAgain?: true;
  /** Where it finds no seat and the sheet has leaders: how it stands further off, at the end of one. */
  readonly led?: LabelLed;
}

export interface LabelLed {
  /** Places that a leader may begin at, the best first, mm on the plan. */
  readonly from: readonly Point[];
  /** The best first: narrower ones where there is little room. */
  readonly forms: readonly LabelForm[];
  /** The leader may begin at the name of the same thing as well, where that stands. */
  readonly fromName?: true;
  /** Unit vectors that the line of the thing leaves such a place along: a leader beside them would be lost in it. */
  readonly along?: readonly Point[];
}

/** Lines of text, set centred under each other. */
export type LabelForm = readonly LabelLine[];

export interface LabelLine {
  readonly text: string;
  readonly style: TextStyleName;
  /** Takes the room of this text, so that of like things either all are lettered so or none. */
  readonly asWideAs?: string;
  /** Ids of the rooms that it names. */
  readonly rooms?: readonly string[];
}

/** Where a label may sit: round a point in a region, upright; or along a line and beside it. A line in an opening is short
 *  and stands between reveals: its text may be longer than the line and step into the room. */
export type LabelSeat =
  | { readonly kind: 'inside'; readonly at: Point; readonly region: Region }
  | {
      readonly kind: 'beside';
      readonly line: readonly Point[];
      readonly inOpening: boolean;
      /** Only to the right of the line as it runs: on the other side the text would be another room's. */
      readonly onRight?: boolean;
      /** How far what belongs to the line reaches beside it, mm on paper. */
      readonly ownMm?: number;
      /** Instead of looking beside the line: the only places where it may stand, the best first. A figure of a dimension belongs to its tick and
       *  would be read as that of another one elsewhere. */
      readonly places?: readonly LabelPlace[];
    };

export interface LabelPlace {
  /** Middle of the text. */
  readonly at: Point;
  /** Along the text, either way. */
  readonly direction: Point;
}

/** A label as it stands at one scale: text centred on `at`, turned clockwise on the sheet by `angleDeg`, never upside down. */
export interface PlacedLabel {
  readonly label: LabelItem;
  readonly form: LabelForm;
  /** Middle of the block of text, mm on the plan. */
  readonly at: Point;
  readonly angleDeg: number;
  readonly ground: LabelGround;
  /** Size of the block, mm on paper. */
  readonly widthMm: number;
  readonly heightMm: number;
  readonly leader?: PlacedLeader;
}

/** The thin line that joins a text to what it belongs to, or to the name of that; mm on the plan. */
export interface PlacedLeader {
  readonly from: Point;
  readonly to: Point;
  readonly begins: 'line' | 'name';
}

/** What lies behind a text. */
export interface LabelGround {
  readonly colour: ColourName;
  /** A hatch runs there: it is left out behind the whole block of text, not only round its letters. */
  readonly hatched: boolean;
}
