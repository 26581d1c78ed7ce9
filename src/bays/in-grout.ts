import { regionContains } from '../geometry/region.ts';
import { SAME_LINE_MM } from '../geometry/tolerance.ts';
import type { Budget } from './budget.ts';
import { crumbsMended } from './crumbs.ts';
import { groutAngle } from './grout.ts';
import { layoutImprove } from './improve.ts';
import type { Part, PartCut } from './part.ts';
import { columnsInside, cutsTurn, partDirections, partFrame, partTurn } from './part-frame.ts';
import { regionSplit } from './pieces.ts';
import { isPlain } from './plain.ts';
import { cutsSettle, layoutSlide } from './slide.ts';
import { regionsStraighten } from './straighten.ts';

/** Candidate lines an axis for a group of bays, and groups for every joint, at most. */
const GROUP_LINES = 8;
const STEPS_PER_CUT = 6;

/** The cuts of a part with its joints moved into grout lines as far as the limits let them: each by itself, then groups of bays round those that are
 *  left, which are split anew. Joints at necks stay. */
export function cutsInGrout(part: Part, cuts: readonly PartCut[], budget: Budget): readonly PartCut[] {
  const necks = cuts.filter((cut) => cut.kind === 'neck');
  const fields = cuts.filter((cut) => cut.kind === 'field');
  if (part.grout === null || fields.length === 0) return cuts;
  const regions = necks.length > 0 ? regionSplit(part.region, necks) : [part.region];
  const moved = regions.flatMap((region) => {
    const inside = fields.filter(({ from, to }) =>
      regionContains(region, [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]),
    );
    return regionInGrout({ ...part, region, columns: columnsInside({ ...part, region }, necks) }, inside, budget);
  });
  return [...necks, ...moved];
}

function regionInGrout(part: Part, cuts: readonly PartCut[], budget: Budget): readonly PartCut[] {
  const angle = part.grout && groutAngle(part.grout);
  // Askew to the walls, a joint in grout would leave bays with sharp corners.
  if (angle === null || cuts.length === 0 || !partDirections(part).includes(angle)) return cuts;
  const frame = partFrame(part, angle);
  const turned = partTurn(part, frame);
  // What only rounding has turned off the axes is laid on them again: so a turned floor is laid out as it was.
  const [straight] = regionsStraighten([turned.region], 0);
  const region = straight && straight.movedMm <= SAME_LINE_MM ? straight.region : turned.region;
  const slide = (own: readonly PartCut[]) => cutsSettle(region, layoutSlide(region, turned, own, 0));
  let moved = slide(cutsSettle(region, cutsTurn(cuts, frame.toFrame)));
  if (moved.length > 1 && !isPlain(region, part.layout)) {
    const options = { lines: GROUP_LINES, marginMm: 0, again: false, starts: 0, budget, only: 'off-grout' } as const;
    const layout = { cuts: moved, cost: 0, uneven: 0 };
    moved = slide(layoutImprove(region, turned, layout, { ...options, steps: STEPS_PER_CUT * moved.length }).cuts);
  }
  const mended = crumbsMended(region, turned, moved, budget);
  return cutsTurn(cutsSettle(turned.region, mended), frame.toSheet);
}
