import { type DoorwayWall, wallsOf } from '../../plan/edits/doorways.ts';
import type { PlanFile } from '../../plan/schema.ts';

/** The walls of the plan last asked about: a doorway that slides leaves the rooms, and so their walls, as they are. */
let known: { readonly rooms: PlanFile['rooms']; readonly walls: readonly DoorwayWall[] } | null = null;

export function wallsKnown(file: PlanFile): readonly DoorwayWall[] {
  if (known?.rooms !== file.rooms) known = { rooms: file.rooms, walls: wallsOf(file) };
  return known.walls;
}
