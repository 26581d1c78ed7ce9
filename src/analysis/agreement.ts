import type { Solved } from '../bays/solve.ts';
import { floorSplit } from '../bays/split.ts';
import { type FloorPlan, floorPlanOf } from '../floor/floor.ts';
import type { Point } from '../geometry/point.ts';
import { ringArea } from '../geometry/ring.ts';
import { onGrid } from '../geometry/tolerance.ts';
import type { Split } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import { gridFrame, type TiledField, tiledFields, tileModule } from '../plan/tile-grid.ts';
import { cutsBalanced } from '../tiling/balance.ts';
import { fieldFloor } from '../tiling/field-floor.ts';
import { onGroutShare, type TilingPrice, tilingPrice } from '../tiling/price.ts';
import { setOutCandidates } from '../tiling/set-out.ts';
import { stretchesByBay } from '../tiling/stretches.ts';
import { tilingOf } from '../tiling/tiling.ts';

/** How joints and tiles are brought together: not at all, by moving the joints to grout lines within the limits, by moving the set-out points, or both. */
export type AgreementWay = 'as-is' | 'joints' | 'set-out' | 'both';
export type AgreementPrice = TilingPrice;

export interface Agreement {
  readonly way: AgreementWay;
  /** Set-out points to move, each of a tile field, or of the tiles of the whole floor (null). */
  readonly setOuts: readonly SetOut[];
  /** The aim of the layout that it needs; null: the plan's own. */
  readonly aim: 'grout-lines' | null;
  readonly price: AgreementPrice;
  /** Share of the length of the joints within rooms that lies in grout; null where none lies under tiles. */
  readonly onGroutShare: number | null;
}

export interface SetOut {
  readonly field: string | null;
  readonly origin: Point;
}

export interface AgreementOptions {
  /** Called with the share of the work done, 0 to 1. */
  readonly onProgress?: (share: number) => void;
  readonly cancelled?: () => boolean;
}

/** Set-out points that are counted in full for each field, and tried with joints that follow. */
const COUNTED = 16;
const TRIED = 5;

/** The ways to make joints and tiles agree, each with its price: as it is, and the three ways. Empty where there are no tiles.
 *  @returns null where it was cancelled */
export function agreementsOf(plan: Plan, options: AgreementOptions = {}): readonly Agreement[] | null {
  const { onProgress = () => {}, cancelled = () => false } = options;
  const fields = tiledFields(plan);
  if (fields.length === 0) return [];
  const trial = new Trials(plan, fields, onProgress, cancelled);
  const present = trial.lay(plan);
  if (present === null) return null;
  const following: Plan = { ...plan, layout: { ...plan.layout, aim: 'grout-lines' } };
  const followed = trial.lay(following);
  if (followed === null) return null;
  const moved = trial.setOut(present);
  if (moved === null) return null;
  // With the joints following it, what served without may serve best of all.
  const movedFollowed = trial.lay({ ...moved.plan, layout: following.layout });
  const both = movedFollowed && trial.both(isCheaper(movedFollowed, followed) ? movedFollowed : followed);
  if (both === null) return null;
  onProgress(1);
  const aim = 'grout-lines' as const;
  return [
    agreement('as-is', plan, present, null),
    agreement('joints', plan, followed, aim),
    agreement('set-out', plan, moved, null),
    isCheaper(moved, both) ? agreement('both', plan, moved, null) : agreement('both', plan, both, aim),
  ];
}

function isCheaper(trial: Trial, than: Trial): boolean {
  return trial.price.totalM < than.price.totalM - PRICE_SLACK_M;
}

/** A plan with its floor split and its tiles laid. */
interface Trial {
  readonly plan: Plan;
  readonly split: Split;
  readonly price: TilingPrice;
  readonly share: number | null;
}

function agreement(way: AgreementWay, before: Plan, { plan, price, share }: Trial, aim: Agreement['aim']): Agreement {
  const fields = new Map(tiledFields(before).map(({ id, grid }) => [id, grid.origin]));
  const setOuts = tiledFields(plan).flatMap(({ id, grid: { origin } }): SetOut[] => {
    const old = fields.get(id);
    return old !== undefined && (old[0] !== origin[0] || old[1] !== origin[1]) ? [{ field: id, origin }] : [];
  });
  return { way, setOuts, aim, price, onGroutShare: share };
}

/** Tries plans that differ in aim and set-out points only: the floor is the same for all. */
class Trials {
  private readonly floorPlan: FloorPlan;
  private readonly known = new Map<string, Solved>();
  private done = 0;
  private readonly all: number;

  constructor(
    plan: Plan,
    fields: readonly TiledField[],
    private readonly onProgress: (share: number) => void,
    private readonly cancelled: () => boolean,
  ) {
    this.floorPlan = floorPlanOf(plan);
    this.all = 3 + fields.length * (COUNTED + TRIED + 2 + 2 * (SPREAD - 1));
  }

  /** Splits the floor and lays the tiles; null where it was cancelled. */
  lay(plan: Plan): Trial | null {
    const report = floorSplit(plan, this.floorPlan, {
      known: this.known,
      onProgress: () => {},
      cancelled: this.cancelled,
    });
    return report && this.tile(plan, report.split);
  }

  /** The set-out points moved one after the other, joints as they lie. */
  setOut(from: Trial): Trial | null {
    return this.eachField(from, (best, field) => {
      const counted = (trial: Trial, origins: readonly Point[]) =>
        this.least(trial, origins, (origin) => this.tile(planSetOut(trial.plan, field.id, origin), trial.split));
      const found = counted(best, [...candidates(best, field, 'as-they-are', COUNTED), ...balanced(field)]);
      const own = found && fieldOf(found.plan, field.id);
      return found && own ? counted(found, spread(own)) : found;
    });
  }

  /** The set-out points moved one after the other, joints following each. */
  both(from: Trial): Trial | null {
    return this.eachField(from, (best, field) => {
      const origins = [
        ...candidates(best, field, 'to-follow', TRIED - 1),
        ...candidates(best, field, 'as-they-are', 1),
        ...balanced(field),
      ];
      return this.least(best, origins, (origin) => this.lay(planSetOut(best.plan, field.id, origin)));
    });
  }

  private eachField(from: Trial, better: (best: Trial, field: TiledField) => Trial | null): Trial | null {
    let best: Trial | null = from;
    for (const { id } of tiledFields(from.plan)) {
      const field = fieldOf(best.plan, id);
      if (field !== undefined) best = better(best, field);
      if (best === null) return null;
    }
    return best;
  }

  private least(from: Trial, origins: readonly Point[], trial: (origin: Point) => Trial | null): Trial | null {
    let best = from;
    for (const origin of origins) {
      const found = trial(origin);
      if (found === null) return null;
      if (isCheaper(found, best)) best = found;
    }
    return best;
  }

  private tile(plan: Plan, split: Split): Trial | null {
    if (this.cancelled()) return null;
    const { joints, tiles } = tilingOf(plan, split);
    this.onProgress(Math.min(1, ++this.done / this.all));
    const price = tilingPrice(split, joints, tiles?.sawn ?? { cut: 0, slivers: 0 });
    return { plan, split, price, share: onGroutShare(split, joints) };
  }
}

/** A way that saves less than this is none: rounding of sums, m. */
const PRICE_SLACK_M = 0.001;

function candidates({ plan, split }: Trial, field: TiledField, joints: 'as-they-are' | 'to-follow', most: number) {
  return setOutCandidates(fieldFloor(field, split), stretchesByBay(split, plan.doorways), { joints }, most);
}

/** Points spread over a module each way: what jambs and nooks ask for is known only once it is counted. None for a floor of so many tiles that it takes
 *  long. */
function spread({ grid, rooms }: TiledField): readonly Point[] {
  const module = tileModule(grid);
  const areaMm2 = rooms.reduce((sum, { outline }) => sum + ringArea(outline), 0);
  if (areaMm2 / (module[0] * module[1]) > MOST_SPREAD_TILES) return [];
  const { toSheet } = gridFrame(grid);
  return ([0, 1] as const).flatMap((axis) =>
    Array.from({ length: SPREAD - 1 }, (_, k): Point => {
      const share = (k + 1) / SPREAD;
      const offMm = (share > 0.5 ? share - 1 : share) * module[axis];
      const [x, y] = toSheet(axis === 0 ? [offMm, 0] : [0, offMm]);
      return [onGrid(x), onGrid(y)];
    }),
  );
}

/** Parts of a module. */
const SPREAD = 8;
/** Counting a floor of more tiles takes a good part of a second each time. */
const MOST_SPREAD_TILES = 10_000;

function fieldOf(plan: Plan, id: string | null): TiledField | undefined {
  return tiledFields(plan).find((field) => field.id === id);
}

/** The point that balances the cuts is one press away: nothing is offered that costs more. */
function balanced(field: TiledField): readonly Point[] {
  return [cutsBalanced(field)].filter((point) => point !== null);
}

/** A plan whose tile field (null: the tiles of the whole floor) is set out from another point. */
function planSetOut(plan: Plan, field: string | null, origin: Point): Plan {
  if (field === null) return plan.tiles === null ? plan : { ...plan, tiles: { ...plan.tiles, origin } };
  return { ...plan, tileFields: plan.tileFields.map((each) => (each.id === field ? { ...each, origin } : each)) };
}
