import type { Point } from '../geometry/point.ts';
import { regionArea } from '../geometry/region.ts';
import { boxOf } from '../geometry/ring.ts';
import { type Interval, lineInside } from '../geometry/scanline.ts';
import { EQUAL_LENGTH_MM, onGrid } from '../geometry/tolerance.ts';
import { type Budget, baysLeast, budgetOf } from './budget.ts';
import { cutsCarry } from './carry.ts';
import { crumbsCounted } from './crumbs.ts';
import { equalGrids } from './equal-grid.ts';
import { type Frame, frameOf } from './frame.ts';
import { groutAlong, groutNear } from './grout.ts';
import { layoutImprove, layoutPrice } from './improve.ts';
import { cutsInGrout } from './in-grout.ts';
import { cutBarred } from './lattice.ts';
import { layoutEven, regionLayout } from './layout.ts';
import { BREACH_PRICE, pieceExcess } from './leaf.ts';
import { type Neck, neckBarred } from './necks.ts';
import type { Part, PartCut } from './part.ts';
import { columnsInside, cutsTurn, partDirections, partFrame, partTurn } from './part-frame.ts';
import { neckParting, neckStarts, necksAfter, ringCuts } from './passages.ts';
import { regionSplit } from './pieces.ts';
import { isPlain } from './plain.ts';
import { regionsStraighten } from './straighten.ts';
import type { Layout } from './table.ts';

/** How hard to search. A rectangle of a plain region is judged at a glance; any other has to be clipped and measured, some hundred times
 *  the work, so that the search keeps to fewer lines and fewer groups. */
interface Effort {
  /** Candidate lines an axis for the whole region and for a group of bays. */
  readonly lines: number;
  readonly groupLines: number;
  /** Whether the whole is sought again on other lines. */
  readonly again: boolean;
  /** Starts that straight cuts cannot make, at most. */
  readonly starts: number;
  /** Groups to try for every bay of the first layout, and at most. */
  readonly stepsPerBay: number;
  readonly mostSteps: number;
}

type EffortKey = 'usual' | 'patient';

const plainEffort: Effort = { lines: 40, groupLines: 16, again: true, starts: 16, stepsPerBay: 6, mostSteps: 160 };

/** For regions that are not plain: as usual, and for what that leaves over a limit. */
const carefulEfforts: Readonly<Record<EffortKey, Effort>> = {
  usual: { lines: 12, groupLines: 8, again: false, starts: 0, stepsPerBay: 2, mostSteps: 40 },
  patient: { lines: 22, groupLines: 10, again: true, starts: 4, stepsPerBay: 2, mostSteps: 40 },
};

export interface Solved extends Found {
  /** Why the part was not laid out to the end: it takes more steps than are spent on one part, or more bays than are laid out, and then it is
   *  left whole. */
  readonly givenUp: 'too-intricate' | { readonly bays: number; readonly most: number } | null;
}

interface Found {
  readonly cuts: readonly PartCut[];
  /** Passages that no joint crosses: the user took it away, none may run there, or it would part nothing. */
  readonly openNecks: readonly Neck[];
}

/** Where the intermediate joints of a part run. Same part, same cuts.
 *  Steps: a joint across every neck, the narrowest first, as long as it parts the floor; then each piece split by itself along its main wall
 *  directions, the best of them kept; then what that leaves of the necks. */
export function partSolve(part: Part, budget: Budget = budgetOf(part)): Solved {
  const bays = baysLeast(part);
  if (bays > MOST_BAYS_IN_ALL) return { cuts: [], openNecks: [], givenUp: { bays, most: MOST_BAYS_IN_ALL } };
  return part.grout === null ? searched(part, budget) : inGrout(part, budget);
}

function searched(part: Part, budget: Budget): Solved {
  const found = necksSolve(part, [], budget);
  return { ...found, givenUp: budget.isSpent ? 'too-intricate' : null };
}

/** The layout with joints in grout lines. Beside it, but for large parts in which it breaks nothing, the layout without a thought for the grout, with its
 *  joints moved into grout lines as far as they can be and as it is: whichever breaks fewest rules, has fewest crumbs of bays that no one would lay,
 *  and costs least. What the floor's own nooks leave is in all of them. */
function inGrout(part: Part, budget: Budget): Solved {
  const counting = crumbsCounted(part);
  const price = ({ cuts, openNecks, givenUp }: Solved) =>
    (openNecks.length + (givenUp ? 1 : 0)) * BREACH_PRICE + layoutPrice(part.region, counting, cuts, 0).cost;
  const free: Part = { ...part, grout: null };
  const moved = (own: Solved): Solved => ({ ...own, cuts: cutsInGrout(part, own.cuts, budgetOf(free)) });
  let best = moved(searched(part, budget));
  // In a large part that breaks nothing the others have never been the better ones, and they take long.
  if (price(best) >= BREACH_PRICE || baysLeast(part) <= MOST_BAYS_BESIDE) {
    const least = searched(free, budgetOf(free));
    for (const other of [moved(least), least]) {
      if (price(other) < price(best) - EQUAL_LENGTH_MM) best = other;
    }
  }
  const { cuts } = best;
  const after = necksAfter(part, cuts, budgetOf(part));
  return { ...best, cuts: [...cuts, ...after.cuts], openNecks: after.left };
}

/** A part of more bays than this is laid out in grout alone. */
const MOST_BAYS_BESIDE = 20;

/** A part that takes more bays than this is no floor, or its limits are none: 40 m2 each for a hall of 120,000 m2. */
const MOST_BAYS_IN_ALL = 3000;

/** A region is parted at its narrowest neck. How a small one is best begun is tried: at which of several necks as narrow, or with its layout, whose
 *  joints may cross them.
 *  @param tries how often, for a region within a region */
function necksSolve(part: Part, cutsRound: readonly PartCut[], budget: Budget, tries = MOST_TRIES): Found {
  const starts = neckStarts(part, budget);
  const isTried = tries > 0 && baysLeast(part) <= MOST_BAYS_AGAIN;
  const found = (isTried ? starts : starts.slice(0, 1)).map(({ cuts, pieces }) => {
    const round = [...cutsRound, ...cuts];
    const own = pieces.map((region) => necksSolve({ ...part, region }, round, budget, tries - 1));
    return solvedTogether(cuts, own);
  });
  if (found.length === 0 || isTried) found.push(pieceSolve(part, cutsRound, budget));
  const price = priceOf(part, cutsRound);
  return found.reduce((best, own) => (price(own) < price(best) - EQUAL_LENGTH_MM ? own : best));
}

const MOST_TRIES = 2;

/** What a solution costs, by the prices of the search, crumbs counted. */
function priceOf(part: Part, cutsRound: readonly PartCut[]): (found: Found) => number {
  const own = crumbsCounted({ ...part, columns: columnsInside(part, cutsRound) });
  return ({ openNecks, cuts }) => openNecks.length * BREACH_PRICE + layoutPrice(part.region, own, cuts, 0).cost;
}

/** A region with cores of more bays than this is not sought again from its necks. */
const MOST_BAYS_AGAIN = 20;

/** A region without necks, or whose narrowest parts nothing by itself. Where others do, or the layout leaves a neck that parts nothing, it is
 *  sought again from those, and the better kept. */
function pieceSolve(part: Part, cutsRound: readonly PartCut[], budget: Budget): Found {
  const { cuts } = regionSolve(part, cutsRound, budget);
  const after = necksAfter(part, cuts, budget);
  let best: Found = { cuts: [...cuts, ...after.cuts], openNecks: after.left };
  const isOpen = after.cuts.length > 0 || after.left.some((neck) => !neckBarred(part, neck));
  const isLarge = baysLeast(part) > MOST_BAYS_AGAIN;
  const forLess = part.layout.aim !== 'even-bays' && !isLarge;
  if (part.region.holes.length === 0 || !(isOpen || forLess)) return best;
  const price = priceOf(part, cutsRound);
  for (const start of [neckParting(part, budget), isOpen ? ringCuts(part, budget) : []]) {
    if (start.length === 0) continue;
    const pieces = regionSplit(part.region, start);
    const other = solvedTogether(
      start,
      pieces.map((region) => necksSolve({ ...part, region }, [...cutsRound, ...start], budget)),
    );
    if (price(other) < price(best) - EQUAL_LENGTH_MM) best = other;
  }
  return best;
}

function solvedTogether(cuts: readonly PartCut[], pieces: readonly Found[]): Found {
  return {
    cuts: [...cuts, ...pieces.flatMap((piece) => piece.cuts)],
    openNecks: pieces.flatMap((piece) => piece.openNecks),
  };
}

/** A region split along its main wall directions, the best of them kept. A very large one is halved first, until a search can see it
 *  whole. Pieces that still break a rule, such as wings at another angle, are split once more by themselves, along their own walls. */
function regionSolve(part: Part, cutsRound: readonly PartCut[], budget: Budget, effort: EffortKey = 'usual'): Layout {
  const own: Part = { ...part, columns: columnsInside(part, cutsRound) };
  const whole = priceOfWhole(own);
  let best: Layout = { cuts: [], cost: whole, uneven: 0 };
  if (whole === 0 || budget.isSpent) return best;
  const directions = partDirections(own);
  const halving = halvingCut(own, directions[0] ?? 0);
  if (halving.length > 0) {
    const halves = regionSplit(part.region, halving);
    const inner = halves.flatMap(
      (region) => regionSolve({ ...part, region }, [...cutsRound, ...halving], budget, effort).cuts,
    );
    if (halves.length > 1) return { ...best, cuts: [...halving, ...inner] };
  }
  for (const angle of directions) {
    const layout = frameSolve(own, partFrame(own, angle), budget, effort);
    if (layout.cost < best.cost - EQUAL_LENGTH_MM) best = layout;
  }
  if (best.cost < BREACH_PRICE) return best;
  if (effort === 'patient') return own.grout === null ? best : offGroutSolve(own, cutsRound, best, budget);
  const pieces = best.cuts.length > 0 ? regionSplit(part.region, best.cuts) : [part.region];
  const mended = pieces.flatMap(
    (region) => regionSolve({ ...part, region }, [...cutsRound, ...best.cuts], budget, 'patient').cuts,
  );
  return { ...best, cuts: [...best.cuts, ...mended] };
}

/** Where joints along grout break a rule: the layout found without a thought for the grout, if it breaks fewer. */
function offGroutSolve(part: Part, cutsRound: readonly PartCut[], along: Layout, budget: Budget): Layout {
  const { cuts } = regionSolve({ ...part, grout: null }, cutsRound, budget, 'patient');
  const other = layoutPrice(part.region, part, cuts, 0);
  return other.cost < along.cost - EQUAL_LENGTH_MM ? other : along;
}

/** A region of more bays than this is halved across its length. */
const MOST_BAYS = 150;

/** A joint across the middle of a region too large to be seen whole, along a row of columns where one stands near; none where it is not, or where
 *  no joint may run there. */
function halvingCut(part: Part, angle: number): PartCut[] {
  if (baysLeast(part) < MOST_BAYS) return [];
  const frame = frameOf(angle);
  const turned = partTurn(part, frame);
  const box = boxOf(turned.region.outline);
  const axis = box.maxX - box.minX >= box.maxY - box.minY ? 0 : 1;
  const [from, to] = axis === 0 ? [box.minX, box.maxX] : [box.minY, box.maxY];
  const rows = turned.columns.map((c) =>
    axis === 0 ? [c.box.minX, c.box.maxX] : [c.box.minY, c.box.maxY],
  ) as Interval[];
  const middle = gridMiddle(from, to, axis === 0 ? box.maxY - box.minY : box.maxX - box.minX, part);
  const off = ([low, high]: Interval) => Math.abs((low + high) / 2 - middle);
  const row = rows.reduce((near: Interval, own) => (off(own) < off(near) ? own : near), [Infinity, Infinity]);
  const at = onGrid(halvingLine(turned, axis, off(row) < (to - from) / 8 ? row : [middle, middle]));
  const rings = [turned.region.outline, ...turned.region.holes];
  const cuts = lineInside(rings, axis, at).map(([a, b]): PartCut => {
    const ends: [Point, Point] =
      axis === 0
        ? [
            [at, a],
            [at, b],
          ]
        : [
            [a, at],
            [b, at],
          ];
    return { kind: 'field', from: ends[0], to: ends[1] };
  });
  if (cuts.some((cut) => cutBarred(cut, turned))) return [];
  return cutsTurn(cuts, frame.toSheet);
}

/** The middle of a row of columns, or of the floor; where joints lie in grout the line nearest to it that still passes through the row. */
function halvingLine({ grout }: Part, axis: 0 | 1, [low, high]: Interval): number {
  const middle = (low + high) / 2;
  const rows = groutAlong(grout, axis);
  if (rows === null) return middle;
  const line = groutNear(rows, middle);
  return low === high || (line >= low && line <= high) ? line : middle;
}

/** The middle of a stretch as the best grid of equal bays has it, so that its halves can be laid in the same bays. */
function gridMiddle(from: number, to: number, acrossMm: number, { limits }: Part): number {
  const along = equalGrids(to - from, acrossMm, limits)[0]?.along ?? 2;
  return from + ((to - from) * Math.round(along / 2)) / along;
}

function priceOfWhole(part: Part): number {
  if (part.columns.some((column) => column.needsJoint)) return BREACH_PRICE;
  const columns = part.columns.reduce((sum, column) => sum + column.areaMm2, 0);
  return pieceExcess(part.region, regionArea(part.region) - columns, part, 0) * BREACH_PRICE;
}

/** Piers and niches this shallow, as a share of what makes a re-entrant corner, are laid flat while a layout is sought. */
const FLAT_SHARE = 0.95;

/** The part split along the axes of a frame. Where the straightened corners promise what the real ones do not keep, again with a margin. */
function frameSolve(part: Part, frame: Frame, budget: Budget, patience: EffortKey): Layout {
  const turned = partTurn(part, frame);
  const [straight] = regionsStraighten([turned.region], FLAT_SHARE * part.layout.reentrantMm);
  if (!straight) return { cuts: [], cost: Infinity, uneven: Infinity };
  const effort = isPlain(straight.region, part.layout) ? plainEffort : carefulEfforts[patience];
  let best: Layout = { cuts: [], cost: Infinity, uneven: Infinity };
  for (const marginMm of straight.movedMm > 0 ? [0, straight.movedMm, 2 * straight.movedMm] : [0]) {
    const own: Part = { ...turned, region: straight.region };
    const rough = regionLayout(straight.region, own, {
      lines: effort.lines,
      marginMm,
      again: effort.again,
      starts: effort.starts,
      budget,
    });
    const steps = Math.min(effort.mostSteps, effort.stepsPerBay * (rough.cuts.length + 1));
    const search = { steps, lines: effort.groupLines, marginMm, again: false, starts: effort.starts, budget };
    const least = rough.cuts.length > 1 ? layoutImprove(straight.region, own, rough, search) : rough;
    const layout =
      part.layout.aim === 'even-bays'
        ? layoutEven(straight.region, own, least, { ...search, lines: effort.lines })
        : least;
    const real = cutsCarry(straight, layout.cuts);
    const price = straight.movedMm > 0 ? layoutPrice(turned.region, turned, real, 0) : layout;
    if (price.cost < best.cost) {
      best = {
        cuts: cutsTurn(real, frame.toSheet),
        cost: price.cost,
        uneven: price.uneven,
      };
    }
    if (price.cost < BREACH_PRICE || layout.cost >= BREACH_PRICE) break;
  }
  return best;
}
