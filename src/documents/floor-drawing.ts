import type { Drawing } from './drawing.ts';
import { drawingOf } from './drawing-list.ts';
import { type PaperSource, perSource } from './paper-source.ts';

/** The drawing that sheets are drawn over: several sheets of one source share it. */
export const floorDrawing = perSource(({ plan, analysis }: PaperSource): Drawing => drawingOf(plan, analysis));
