import type { PlanFile } from '../../plan/schema.ts';
import type { LengthUnit } from '../parts/lengths.ts';
import { analysisStore, type Result } from '../state/analysisStore.ts';
import { boardFree, boardStore } from '../state/boardStore.ts';
import { planShown, planStore } from '../state/planStore.ts';
import type { Thing } from '../state/thing.ts';
import { unitStore } from '../state/unit.ts';
import type { Dimension } from '../tools/dimensions/dimension.ts';
import { dimensionsOf } from '../tools/dimensions/dimensions.ts';
import type { SketchMark } from '../tools/sketch.ts';
import { toolStore } from '../tools/toolStore.ts';
import { dimensionsPlace, type PlacedDimension } from './dimensionPlace.ts';
import type { SizePx, Viewport } from './viewport.ts';

/** The dimensions on the board at this moment. Their lines are painted and their figures are part of the page: both ask here, and they are
 *  reckoned once for a plan and a choice, and placed once for a view. */

interface Reckoned {
  readonly file: PlanFile;
  readonly result: Result | null;
  readonly chosen: readonly Thing[];
  readonly joint: string | null;
  readonly dimensions: readonly Dimension[];
}
let reckoned: Reckoned | null = null;

function dimensionsReckoned(): readonly Dimension[] {
  const file = planShown(planStore.getState());
  const { result } = analysisStore.getState();
  const { chosen } = boardStore.getState();
  const joint = toolStore.getState().stance.live?.id ?? null;
  const isSame = reckoned?.file === file && reckoned.result === result;
  if (!isSame || reckoned?.chosen !== chosen || reckoned.joint !== joint) {
    const scene = { file, result, chosen, joint };
    reckoned = { ...scene, dimensions: dimensionsOf(scene) };
  }
  return reckoned?.dimensions ?? [];
}

interface Placed {
  readonly dimensions: readonly Dimension[];
  readonly view: Viewport;
  readonly size: SizePx;
  readonly trayOpen: boolean;
  readonly unit: LengthUnit;
  readonly placed: readonly PlacedDimension[];
}
let placed: Placed | null = null;

/** Height of what can be pressed: as the styles have it. */
const targetPx = { fine: 24, coarse: 44 } as const;

/** None while a tool that draws is in hand. */
export function dimensionsShown(): readonly PlacedDimension[] {
  const { view, size, trayOpen } = boardStore.getState();
  const free = boardFree({ size, trayOpen });
  if (toolStore.getState().stance.tool !== 'choose' || view === null || size === null || free === null) return [];
  const dimensions = dimensionsReckoned();
  const { unit } = unitStore.getState();
  const isSame = placed?.dimensions === dimensions && placed.view === view && placed.size === size;
  if (!isSame || placed?.trayOpen !== trayOpen || placed.unit !== unit) {
    const isCoarse = window.matchMedia('(pointer: coarse)').matches;
    const setting = { unit, targetPx: isCoarse ? targetPx.coarse : targetPx.fine };
    placed = { dimensions, view, size, trayOpen, unit, placed: dimensionsPlace(dimensions, view, free, setting) };
  }
  return placed?.placed ?? [];
}

/** Their lines, to be painted over the drawing. */
export function dimensionMarks(): readonly SketchMark[] {
  return dimensionsShown().map(({ dimension: { from, to, stems }, asidePx }) => ({
    mark: 'dimension',
    ends: [from, to],
    asidePx,
    stems,
    tone: 'hand',
  }));
}
