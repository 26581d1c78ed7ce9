import { type Point, pointDirection } from '../geometry/point.ts';
import type { Box } from '../geometry/ring.ts';
import type { DrawingItem, LabelForm, LabelItem, LabelLed, PlacedLabel, PlacedLeader } from './drawing.ts';
import { boxHolds } from './ink-clip.ts';
import { type BlockRank, type Blocks, blockRanks, blocksOf, type TurnedBox } from './label-blocks.ts';
import {
  besideText,
  type LeaderBegin,
  type LedPlace,
  leaderLengths,
  leaderRun,
  ledPlaceFirst,
  waysRound,
} from './label-led-places.ts';
import { boxAt, type PlaceOptions, type Standing } from './label-place.ts';
import { readingAngle } from './label-seats.ts';
import { penShare } from './pen.ts';
import { haloMm, lineStyles } from './styles.ts';
import { type FormSize, formSize } from './text-width.ts';

/** Labels that have found no room beside what they belong to, at the end of a leader: a thin line from there to the nearest free place. Figures come first,
 *  then the names of joints and of bays that nothing on the sheet has named, so that each thing in the lists is found on the drawing. */

/** Text keeps off the edge of its part of the sheet, mm on paper. */
const edgeMm = 1;
const [fewWays, manyWays, allWays] = [waysRound(12), waysRound(40), waysRound(120)];

interface Reach {
  /** The least that leaders of some lengths keep clear of. */
  readonly least: BlockRank;
  /** mm on paper */
  readonly lengths: readonly number[];
  readonly ways: readonly Point[];
  /** How texts lie to their joint; level where it is left out. */
  readonly turned?: 'along' | 'square';
}

/** A longer leader is lost among the others before it is followed to its end, mm on paper: what has no place so near stands in the lists alone. */
const longestMm = 45;
/** A number may stand further off: without it a row of the lists is not found on the drawing. */
const longestOfNamesMm = 80;

/** Leaders run clear of all there is. Where no short one does they run over walls and lines of dimensions, then over other joints and at last over symbols,
 *  under pins and over each other; never over text. All short ones stand before the first longer one. What has no place where it is level lies along its
 *  joint or square to it. */
const reaches: readonly Reach[] = [
  { least: blockRanks.line, lengths: leaderLengths([0, 20]), ways: fewWays },
  { least: blockRanks.joint, lengths: leaderLengths([0, longestMm]), ways: fewWays },
  { least: blockRanks.mark, lengths: leaderLengths([0, longestMm]), ways: manyWays },
  { least: blockRanks.text, lengths: leaderLengths([0, longestMm]), ways: manyWays },
  { least: blockRanks.text, lengths: leaderLengths([0, longestMm]), ways: allWays },
  { least: blockRanks.text, lengths: leaderLengths([0, longestMm]), ways: allWays, turned: 'along' },
  { least: blockRanks.text, lengths: leaderLengths([0, longestMm]), ways: allWays, turned: 'square' },
];
/** Most names that have no room are of what is smaller than they are: a leader runs over its walls in any case. */
const reachesOfNames: readonly Reach[] = [
  ...reaches.slice(1),
  { least: blockRanks.text, lengths: leaderLengths([longestMm, longestOfNamesMm]), ways: manyWays },
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
    const seat = seater(placed, { ...standing, walls: wallsOf(items, paper) }, paper);
    const figures = seat(
      open.filter(({ label }) => !labelIsName(label) && label.saidAgain === undefined),
      reaches,
    );
    const named = formsNamed([...placed, ...figures]);
    const names = open.filter(({ label }) => labelIsName(label) && !named.has(label.ref.id));
    const isJoint = ({ label }: Open) => label.ref.kind === 'joint';
    const joints = seat(names.filter(isJoint), reachesOfNames);
    return [
      ...figures,
      ...joints,
      ...seat(
        names.filter((each) => !isJoint(each)),
        reachesOfNames,
      ),
    ];
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

/** Whether a label is the name of its thing, and not a figure beside it: in its shortest form the name stands alone. */
export function labelIsName({ forms, ref }: Pick<LabelItem, 'forms' | 'ref'>): boolean {
  return forms.at(-1)?.[0]?.text === ref.id;
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

interface StandingWalls extends Standing {
  /** Edges of floor, with the room that the ground behind a text would take from them. */
  readonly walls: Blocks;
}

/** A text at a leader may stand anywhere, between the faces of a wall too: what stands at its own line keeps off walls by that. */
function wallsOf(items: readonly DrawingItem[], { paperPerPlan }: Paper): Blocks {
  const walls = blocksOf();
  for (const item of items) {
    if (item.shape !== 'line' || item.layer !== 'edges') continue;
    const widestMm = Math.max(...lineStyles[item.style].strokes.map(({ widthMm }) => widthMm));
    const halfMm = (widestMm * penShare(paperPerPlan)) / 2 + haloMm;
    walls.addLine(
      item.points.map(([x, y]): Point => [x * paperPerPlan, y * paperPerPlan]),
      halfMm,
      blockRanks.line,
    );
  }
  return walls;
}

type Seater = (open: readonly Open[], within: readonly Reach[]) => readonly PlacedLabel[];

function seater(placed: readonly PlacedLabel[], standing: StandingWalls, paper: Paper): Seater {
  const { blocks, grounds, walls } = standing;
  const { paperPerPlan } = paper;
  const names = new Map(
    placed.flatMap((label) => (label.label.ref.kind === 'joint' ? [[label.label.ref.id, label] as const] : [])),
  );
  const onPlan = ([x, y]: Point): Point => [x / paperPerPlan, y / paperPerPlan];
  const onPaper = ([x, y]: Point): Point => [x * paperPerPlan, y * paperPerPlan];
  const beginsOf = ({ label, led }: Open): readonly LeaderBegin[] => {
    const name = led.fromName ? names.get(label.ref.id) : undefined;
    // on a sheet of a part of the plan nothing begins beyond its edge
    const from = led.from.filter(([x, y]) => boxHolds(paper.window, { minX: x, minY: y, maxX: x, maxY: y }));
    return [
      ...from.map((at): LeaderBegin => ({ at: onPaper(at), out: null, along: led.along ?? [] })),
      ...(name === undefined ? [] : besideText(onPaper(name.at), name)),
    ];
  };
  const freeOf = freeIn(blocks, walls, paper);
  return (open, within) => {
    const found = new Map<LabelItem, PlacedLabel>();
    const placeOf = (each: Open, form: LabelForm, { least, lengths, ways, turned }: Reach): LedPlace | null => {
      const angleDeg = angleOf(each.label, turned);
      // level is what all are looked for first
      if (turned !== undefined && angleDeg === 0) return null;
      const size = formSize(form);
      const isFree = freeOf(size, angleDeg);
      return ledPlaceFirst(
        beginsOf(each),
        { ...size, angleDeg, lengths, ways },
        (from, to, halfMm) => (blocks.rankMet(from, to, halfMm) ?? -1) < least,
        (x, y) => isFree(x, y) && !grounds.onObject(onPlan([x, y]), each.label.ref),
      );
    };
    for (const reach of within) {
      for (const each of open) {
        if (found.has(each.label)) continue;
        for (const form of each.led.forms) {
          const place = placeOf(each, form, reach);
          if (place === null) continue;
          const at = onPlan(place.at);
          const seat = { at, angleDeg: place.angleDeg, ...formSize(form) };
          blocks.addBox(boxAt(seat, paperPerPlan), blockRanks.text);
          const run = leaderRun(place);
          blocks.addLine(run.points, run.halfMm, blockRanks.leader);
          const leader: PlacedLeader = {
            from: onPlan(place.begin.at),
            to: onPlan(place.tip),
            begins: place.begin.out === null ? 'line' : 'name',
          };
          found.set(each.label, { label: each.label, form, ...seat, leader, ground: grounds.at(at) });
          break;
        }
      }
    }
    return [...found.values()];
  };
}

/** Never upside down; names of bays are level. */
function angleOf({ seat }: LabelItem, turned: Reach['turned']): number {
  if (seat.kind !== 'beside' || turned === undefined) return 0;
  const [from, to] = [seat.line[0], seat.line.at(-1)];
  if (from === undefined || to === undefined) return 0;
  const [ux, uy] = pointDirection(from, to);
  return readingAngle(turned === 'along' ? [ux, uy] : [-uy, ux]);
}

/** Whether a text of a size may stand with its middle at a place, mm on paper: within the window and clear of all there is. */
function freeIn(blocks: Blocks, walls: Blocks, { paperPerPlan, window }: Paper) {
  const [left, right] = [window.minX * paperPerPlan + edgeMm, window.maxX * paperPerPlan - edgeMm];
  const [top, bottom] = [window.minY * paperPerPlan + edgeMm, window.maxY * paperPerPlan - edgeMm];
  const isMet = (box: TurnedBox) => blocks.meets(box) || walls.meets(box);
  return ({ widthMm, heightMm }: FormSize, angleDeg: number) => {
    const [halfX, halfY] = [widthMm / 2 + haloMm, heightMm / 2];
    const turn = (angleDeg * Math.PI) / 180;
    const [cos, sin] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))];
    const [reachX, reachY] = [cos * halfX + sin * halfY, sin * halfX + cos * halfY];
    return (x: number, y: number): boolean =>
      x - reachX >= left &&
      x + reachX <= right &&
      y - reachY >= top &&
      y + reachY <= bottom &&
      (angleDeg === 0
        ? !blocks.meetsLevel(x, y, halfX, halfY) && !walls.meetsLevel(x, y, halfX, halfY)
        : !isMet({ centre: [x, y], halfWidth: halfX, halfHeight: halfY, angleDeg }));
  };
}
