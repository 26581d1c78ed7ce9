import { type Point, pointDirection } from '../geometry/point.ts';
import type { Box } from '../geometry/ring.ts';
import type { DrawingItem, LabelForm, LabelItem, LabelLed, PlacedLabel, PlacedLeader } from './drawing.ts';
import { type BlockRank, blockRanks, type TurnedBox } from './label-blocks.ts';
import {
  besideText,
  type LeaderBegin,
  type LedPlace,
  leaderBox,
  leaderLengths,
  ledPlaceFirst,
  waysRound,
} from './label-led-places.ts';
import { boxAt, type PlaceOptions, type Standing } from './label-place.ts';
import { haloMm } from './styles.ts';
import { formSize } from './text-width.ts';

/** Labels that have found no room beside what they belong to, at the end of a leader: a thin line from there to the nearest free place. Figures come first,
 *  then the names of what nothing on the sheet has named, so that each thing in the lists is found on the drawing. */

/** Text keeps off the edge of its part of the sheet, mm on paper. */
const edgeMm = 1;
const [fewWays, manyWays] = [waysRound(12), waysRound(40)];

interface Reach {
  /** The least that leaders of some lengths keep clear of. */
  readonly least: BlockRank;
  /** mm on paper */
  readonly lengths: readonly number[];
  readonly ways: readonly Point[];
}

/** Leaders run clear of all there is. Where no short one does they run over walls and lines of dimensions, then over other joints, then over symbols and under
 *  pins, and at last over each other; never over text. All short ones stand before the first longer one. */
const reaches: readonly Reach[] = [
  { least: blockRanks.line, lengths: leaderLengths([0, 20]), ways: fewWays },
  { least: blockRanks.joint, lengths: leaderLengths([20, 45]), ways: fewWays },
  { least: blockRanks.mark, lengths: leaderLengths([45, 60]), ways: fewWays },
  { least: blockRanks.leader, lengths: leaderLengths([60, 80]), ways: fewWays },
  { least: blockRanks.text, lengths: leaderLengths([0, 110]), ways: manyWays },
];

interface Open {
  readonly label: LabelItem;
  readonly led: LabelLed;
}

interface Paper {
  readonly paperPerPlan: number;
  /** That text keeps to, mm on the plan. */
  readonly window: Box;
}

/** @param window of the sheet, mm on the plan */
export function labelsLed(items: readonly DrawingItem[], paper: Paper): NonNullable<PlaceOptions['last']> {
  return (placed, standing) => {
    const seated = new Set(placed.map(({ label }) => label));
    const open = items
      .flatMap((item): Open[] =>
        item.shape === 'label' && item.led !== undefined && !seated.has(item) ? [{ label: item, led: item.led }] : [],
      )
      .sort((a, b) => b.label.priority - a.label.priority);
    if (open.length === 0) return [];
    for (const box of endBoxes(items, paper)) standing.blocks.addBox(box, blockRanks.line);
    const seat = seater(placed, standing, paper);
    const isName = ({ label, led }: Open) => led.form[0]?.text === label.ref.id;
    const figures = seat(open.filter((each) => !isName(each) && each.label.saidAgain === undefined));
    const named = formsNamed([...placed, ...figures]);
    return [...figures, ...seat(open.filter((each) => isName(each) && !named.has(each.label.ref.id)))];
  };
}

/** Marks at the ends of joints reach so far, mm on paper: text that is anywhere beside its joint could touch them. */
const endReachMm = { along: 0.9, across: 1.6 } as const;

function endBoxes(items: readonly DrawingItem[], { paperPerPlan }: Paper): readonly TurnedBox[] {
  return items.flatMap((item) => {
    if (item.shape !== 'line' || item.layer !== 'joints') return [];
    const { points } = item;
    const ends = [points.slice(0, 2), points.slice(-2).reverse()];
    return ends.flatMap(([end, before]): TurnedBox[] => {
      if (end === undefined || before === undefined) return [];
      const [dx, dy] = pointDirection(before, end);
      return [
        {
          centre: [end[0] * paperPerPlan, end[1] * paperPerPlan],
          halfWidth: endReachMm.along,
          halfHeight: endReachMm.across,
          angleDeg: (Math.atan2(dy, dx) * 180) / Math.PI,
        },
      ];
    });
  });
}

/** Ids of what is named by the texts of labels. Example: "J12 x 4500" names J12, "4500 J3" names nothing by itself */
export function formsNamed(
  lettered: readonly { readonly label: LabelItem; readonly form: LabelForm }[],
): ReadonlySet<string> {
  return new Set(
    lettered.flatMap(({ label: { ref }, form: [line] }) =>
      line?.text === ref.id || line?.text.startsWith(`${ref.id} `) ? [ref.id] : [],
    ),
  );
}

type Seater = (open: readonly Open[]) => readonly PlacedLabel[];

function seater(
  placed: readonly PlacedLabel[],
  { blocks, grounds }: Standing,
  { paperPerPlan, window }: Paper,
): Seater {
  const names = new Map(
    placed.flatMap((label) => (label.label.ref.kind === 'joint' ? [[label.label.ref.id, label] as const] : [])),
  );
  const onPlan = ([x, y]: Point): Point => [x / paperPerPlan, y / paperPerPlan];
  const onPaper = ([x, y]: Point): Point => [x * paperPerPlan, y * paperPerPlan];
  const [left, right] = [window.minX * paperPerPlan + edgeMm, window.maxX * paperPerPlan - edgeMm];
  const [top, bottom] = [window.minY * paperPerPlan + edgeMm, window.maxY * paperPerPlan - edgeMm];
  return (open) => {
    const found = new Map<LabelItem, PlacedLabel>();
    // with text that is free where only the leader was in the way
    const known = new Map<LabelItem, LedPlace[]>();
    for (const { least, lengths, ways } of reaches) {
      for (const { label, led } of open) {
        if (found.has(label)) continue;
        const size = formSize(led.form);
        const [halfX, halfY] = [size.widthMm / 2 + haloMm, size.heightMm / 2];
        const isFree = (x: number, y: number) =>
          x - halfX >= left &&
          x + halfX <= right &&
          y - halfY >= top &&
          y + halfY <= bottom &&
          !blocks.meetsLevel(x, y, halfX, halfY);
        const tried = known.get(label) ?? [];
        known.set(label, tried);
        const name = led.fromName ? names.get(label.ref.id) : undefined;
        const begins = [
          ...led.from.map((at): LeaderBegin => ({ at: onPaper(at), out: null })),
          ...(name === undefined ? [] : besideText(onPaper(name.at), name)),
        ];
        const place =
          tried.find((each) => !blocks.meets(leaderBox(each), least) && isFree(...each.at)) ??
          ledPlaceFirst(begins, size, { lengths, ways }, isFree, (each) => {
            if (grounds.onObject(onPlan(each.at), label.ref)) return false;
            tried.push(each);
            return !blocks.meets(leaderBox(each), least);
          });
        if (place === null) continue;
        const at = onPlan(place.at);
        const seat = { at, angleDeg: 0, ...size };
        blocks.addBox(boxAt(seat, paperPerPlan), blockRanks.text);
        blocks.addBox(leaderBox(place), blockRanks.leader);
        const leader: PlacedLeader = {
          from: onPlan(place.begin.at),
          to: onPlan(place.tip),
          begins: place.begin.out === null ? 'line' : 'name',
        };
        found.set(label, { label, form: led.form, ...seat, leader, ground: grounds.at(at) });
      }
    }
    return [...found.values()];
  };
}
