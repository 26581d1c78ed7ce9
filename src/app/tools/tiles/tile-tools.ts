import type { TileTools } from '../stance.ts';
import { groutCatches } from './grout-catches.ts';
import { setOutMarks, setOutStart, setOutTaken } from './set-out.ts';

/** All that the hand does with tiles. */
export const tileTools: TileTools = {
  start: setOutStart,
  taken: setOutTaken,
  marks: setOutMarks,
  grout: groutCatches,
};
