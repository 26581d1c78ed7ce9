import { regionsUnion } from '../geometry/clip.ts';
import type { Region, Ring } from '../geometry/ring.ts';
import type { Split } from '../plan/analysis.ts';
import { type GridFrame, gridFrame, type TiledField } from '../plan/tile-grid.ts';

/** The floor of one tile field, bay by bay, in the grid's own axes. */
export interface FieldFloor {
  readonly field: TiledField;
  readonly frame: GridFrame;
  readonly pieces: readonly FieldPiece[];
  readonly areaMm2: number;
}

export interface FieldPiece {
  readonly bay: string;
  readonly region: Region;
}

/** The floor of a field. A bay wholly in it is one piece, open sides between its rooms and reveals included; of a bay that it shares with another
 *  field, its own rooms' floor. */
export function fieldFloor(field: TiledField, split: Split): FieldFloor {
  const frame = gridFrame(field.grid);
  const own = new Set(field.rooms.map(({ id }) => id));
  const pieces = split.bays.flatMap((bay) => {
    if (!bay.rooms.some((room) => own.has(room))) return [];
    const regions = bay.rooms.every((room) => own.has(room))
      ? [{ outline: bay.outline, holes: bay.holes }]
      : regionsUnion(
          split.pieces.flatMap((piece) => (piece.bay === bay.id && own.has(piece.room) ? piece.regions : [])),
        );
    return regions.map((region): FieldPiece => ({ bay: bay.id, region: regionInFrame(region, frame) }));
  });
  const areas = split.pieces.map(({ room, areaM2 }) => (own.has(room) ? areaM2 : 0));
  return { field, frame, pieces, areaMm2: areas.reduce((sum, area) => sum + area, 0) * 1e6 };
}

function regionInFrame({ outline, holes }: Region, { toGrid }: GridFrame): Region {
  const turn = (ring: Ring): Ring => ring.map(toGrid);
  return { outline: turn(outline), holes: holes.map(turn) };
}
