import type { TileTools } from '../stance.ts';
import { askewCatch } from './askew.ts';
import { groutCatch } from './grout.ts';
import { setOutMarks, setOutStart, setOutTaken } from './set-out.ts';

/** All that the hand does with tiles. */
export const tileTools: TileTools = {
  start: setOutStart,
  taken: setOutTaken,
  marks: setOutMarks,
  grout: groutCatch,
  askew: askewCatch,
};
