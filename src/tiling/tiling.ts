import { regionPerimeter } from '../geometry/region.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { JointGrout, Split, Tiles } from '../plan/analysis.ts';
import type { FindingFact } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import { type TiledField, tiledFields, tileModule } from '../plan/tile-grid.ts';
import { type FieldFloor, fieldFloor } from './field-floor.ts';
import { countsSum, fieldReport } from './field-report.ts';
import { jointGrouts } from './joint-grout.ts';
import { stretchesByBay } from './stretches.ts';
import { fieldFindings, fieldsFindings, jointFindings } from './tile-findings.ts';

export interface Tiling {
  /** Null where no room has tiles. */
  readonly tiles: Tiles | null;
  /** By joint id. */
  readonly joints: ReadonlyMap<string, JointGrout>;
  readonly findings: readonly FindingFact[];
}

/** The tiles of a plan on its floor as split. */
export function tilingOf(plan: Plan, split: Split): Tiling {
  const floors = tiledFields(plan).map((field) => fieldFloor(field, split));
  const [fine, laid] = [floors.filter(isTooFine), floors.filter((floor) => !isTooFine(floor))];
  const joints = jointGrouts(
    plan,
    laid.map(({ field }) => field),
    split,
  );
  const stretches = laid.length > 0 ? stretchesByBay(split, plan.doorways) : new Map();
  const fields = laid.map((floor) => fieldReport(floor, stretches, plan.edgeStrip.thicknessMm));
  const reports = fields.map(({ report }) => report);
  // The tiles of the whole floor stand last; their set-out point is the floor's.
  const main = reports.at(-1);
  const findings: FindingFact[] = [
    ...fieldsFindings(plan, split),
    ...fine.map(({ field }): FindingFact => tooFine(field)),
    ...fields.flatMap(({ report, narrow }) => fieldFindings(plan, report, narrow)),
    ...jointFindings(split, joints),
  ];
  if (main === undefined) return { tiles: null, joints, findings };
  const { origin, angleDeg } = main.id === null ? main : (reports[0] ?? main);
  return {
    tiles: { origin, angleDeg, ...countsSum(reports), fields: reports },
    joints,
    findings,
  };
}

/** Tiles at the edges of a field are clipped one by one. More than this of them is mosaic, which comes on sheets, or a slip of the pen. */
const MOST_EDGE_TILES = 100_000;

/** Thinner than this the sides of a tile lie within what rounding moves, mm. */
const THINNEST_MM = 2 * WELD_MM;

function isTooFine({ field, pieces }: FieldFloor): boolean {
  if (Math.min(field.grid.lengthMm, field.grid.widthMm) < THINNEST_MM) return true;
  const least = Math.min(...tileModule(field.grid));
  const edgeMm = pieces.reduce((sum, { region }) => sum + regionPerimeter(region), 0);
  return edgeMm / least > MOST_EDGE_TILES;
}

function tooFine({ id, grid, rooms }: TiledField): FindingFact {
  const names = rooms.map(({ name }) => name);
  const refs = [...(id === null ? [] : [id]), ...rooms.map((room) => room.id)];
  const { lengthMm, widthMm } = grid;
  return { code: 'tile-too-fine', field: id, names, lengthMm, widthMm, at: rooms[0]?.outline[0] ?? null, refs };
}
