import type { PaperPointKind } from '../../plan/edits/paper-points.ts';
import { type DrawingStartKey, defaults, drawingStarts } from '../../plan/reference.ts';

const of = (key: DrawingStartKey) => drawingStarts[key].value;

/** What a tool makes until told otherwise; set in the bar above the board. Lengths in mm. */
export interface Wishes {
  /** Rooms and other outlines: corner by corner, or as rectangles by two corners. */
  readonly outline: 'corners' | 'rectangle';
  /** Runs keep to right angles. */
  readonly square: boolean;
  /** Depth of the wall that the hand is caught by beside a neighbour. */
  readonly wallMm: number;
  /** A side that is dragged takes all faces of its wall along. */
  readonly wholeWall: boolean;
  readonly doorway: { readonly widthMm: number; readonly leaf: boolean };
  readonly column: {
    readonly shape: 'rectangular' | 'round';
    readonly widthMm: number;
    readonly depthMm: number;
    readonly countX: number;
    readonly countY: number;
    readonly spacingXMm: number;
    readonly spacingYMm: number;
  };
  readonly pipeMm: number;
  readonly joinery: {
    readonly under: 'insulated' | 'no-insulation' | 'built-off-slab';
    readonly fixedThrough: boolean;
  };
  readonly structuralMm: number;
  readonly sunC: number;
  /** What a place for the papers is: a point, or a line of the grid. */
  readonly paperPoint: PaperPointKind | 'grid';
}

export const firstWishes: Wishes = {
  outline: 'corners',
  square: true,
  wallMm: of('wallMm'),
  wholeWall: true,
  doorway: { widthMm: of('doorwayWidthMm'), leaf: true },
  column: {
    shape: 'rectangular',
    widthMm: of('columnWidthMm'),
    depthMm: of('columnWidthMm'),
    countX: 1,
    countY: 1,
    spacingXMm: of('columnSpacingMm'),
    spacingYMm: of('columnSpacingMm'),
  },
  pipeMm: of('pipeMm'),
  joinery: { under: 'insulated', fixedThrough: false },
  structuralMm: defaults.structuralJointMm.value,
  sunC: of('sunC'),
  paperPoint: 'base',
};
