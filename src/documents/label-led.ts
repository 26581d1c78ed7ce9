import type { Point } from '../geometry/point.ts';
import type { Box } from '../geometry/ring.ts';
import type { DrawingItem, LabelForm, LabelItem, LabelLed, PlacedLabel } from './drawing.ts';
import { boxHolds } from './ink-clip.ts';
import { type Blocks, blocksOf, type TurnedBox } from './label-blocks.ts';
import { boxAt, itemBlock, type PlaceOptions, type Standing } from './label-place.ts';
import type { Seat } from './label-seats.ts';
import { isPin, pinBody } from './sheet-pins.ts';
import { formSize } from './text-width.ts';

/** Labels that have found no room beside what they belong to, at the end of a leader: a thin line from there to the nearest free place. Figures come first,
 *  then the names of what nothing on the sheet has named, so that each thing in the lists is found on the drawing. */

/** A leader keeps so far off the line that it begins at before it must be clear, mm on paper. */
const ownMm = 1.4;
/** Free space between a leader and its text, mm on paper: beyond its halo. */
const textGapMm = 0.8;
/** Half the width of a leader with the space beside it, mm on paper. */
const halfMm = 0.3;
/** Text keeps off the edge of its part of the sheet, mm on paper. */
const edgeMm = 1;

/** Leaders are tried so many ways round, at lengths that grow by steps, mm on paper: by wider ones where they are long. */
const wayCount = 24;
const ways: readonly Point[] = Array.from({ length: wayCount }, (_, i) => {
  const turn = ((i + 0.5) * 2 * Math.PI) / wayCount;
  return [Math.cos(turn), Math.sin(turn)];
});
const stepsMm = { shortest: 3, short: 2.5, shortUpTo: 20, long: 6, longest: 110 } as const;
/** A leader as steep as this, as the sine of its angle, may also end under or over the middle of its text. */
const steep = 0.8;

/** What leaders up to a length keep clear of. */
interface Reach {
  readonly clearOf: Blocks;
  readonly longestMm: number;
}

type Leader = readonly [Point, Point];

interface Place {
  readonly seat: Seat;
  readonly leader: Leader;
  readonly lengthMm: number;
}

interface Open {
  readonly label: LabelItem;
  readonly led: LabelLed;
}

interface Paper {
  readonly paperPerPlan: number;
  /** That text and leaders keep to, mm on the plan. */
  readonly window: Box;
}

/** @param window of the sheet, mm on the plan */
export function labelsLed(
  items: readonly DrawingItem[],
  paperPerPlan: number,
  window: Box,
): NonNullable<PlaceOptions['last']> {
  return (placed, standing) => {
    const seated = new Set(placed.map(({ label }) => label));
    const open = items
      .flatMap((item): Open[] =>
        item.shape === 'label' && item.led !== undefined && !seated.has(item) ? [{ label: item, led: item.led }] : [],
      )
      .sort((a, b) => b.label.priority - a.label.priority);
    if (open.length === 0) return [];
    const seat = seater(items, placed, standing, { paperPerPlan, window });
    const isName = ({ label, led }: Open) => led.form[0]?.text === label.ref.id;
    const figures = seat(open.filter((each) => !isName(each) && each.label.saidAgain === undefined));
    const named = formsNamed([...placed, ...figures]);
    return [...figures, ...seat(open.filter((each) => isName(each) && !named.has(each.label.ref.id)))];
  };
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

/** Leaders run clear of all there is. Where no short one does they run over walls and lines of dimensions, then over other joints, then over symbols, and at
 *  last over each other and under pins; never over text. All short ones stand before the first longer one. */
function seater(
  items: readonly DrawingItem[],
  placed: readonly PlacedLabel[],
  { blocks, grounds }: Standing,
  { paperPerPlan, window }: Paper,
): (open: readonly Open[]) => readonly PlacedLabel[] {
  const [overWalls, overJoints, overMarks, overLeaders] = [blocksOf(), blocksOf(), blocksOf(), blocksOf()];
  for (const item of items) {
    if (item.shape === 'mark') {
      for (const each of [overWalls, overJoints]) itemBlock(each, item, paperPerPlan);
      if (isPin(item)) overMarks.addBox(pinBody(item, paperPerPlan));
    } else if (item.layer === 'joints') itemBlock(overWalls, item, paperPerPlan);
  }
  const textsOn = [overWalls, overJoints, overMarks, overLeaders];
  for (const label of placed) for (const each of textsOn) each.addBox(boxAt(label, paperPerPlan));
  const reaches: readonly Reach[] = [
    { clearOf: blocks, longestMm: 20 },
    { clearOf: overWalls, longestMm: 45 },
    { clearOf: overJoints, longestMm: 60 },
    { clearOf: overMarks, longestMm: 80 },
    { clearOf: overLeaders, longestMm: stepsMm.longest },
  ];
  const isFree = (box: TurnedBox, { at }: Seat, { ref }: LabelItem) =>
    boxHolds(window, boxRound(box, paperPerPlan)) && !blocks.meets(box) && !grounds.onObject(at, ref);
  const stand = (place: Place) => {
    const [text, leader] = [boxAt(place.seat, paperPerPlan), leaderBox(place, paperPerPlan)];
    for (const each of [blocks, ...textsOn]) each.addBox(text);
    for (const each of [blocks, overWalls, overJoints, overMarks]) each.addBox(leader);
  };
  const names = new Map(
    placed.flatMap((label) => (label.label.ref.kind === 'joint' ? [[label.label.ref.id, label] as const] : [])),
  );
  return (open) => {
    const found = new Map<LabelItem, PlacedLabel>();
    const free = new Map<LabelItem, Place[]>();
    let triedMm = 0;
    for (const { clearOf, longestMm } of reaches) {
      for (const { label, led } of open) {
        if (found.has(label)) continue;
        const places = free.get(label) ?? [];
        free.set(label, places);
        const name = led.fromName && names.get(label.ref.id);
        const begins = [...led.from, ...besideText(name, paperPerPlan)];
        for (const place of placesLed(begins, led.form, paperPerPlan, [triedMm, longestMm]))
          if (isFree(boxAt(place.seat, paperPerPlan), place.seat, label)) places.push(place);
        const place = places.find(
          (each) => !clearOf.meets(leaderBox(each, paperPerPlan)) && !blocks.meets(boxAt(each.seat, paperPerPlan)),
        );
        if (place === undefined) continue;
        stand(place);
        const { seat, leader } = place;
        found.set(label, { label, form: led.form, ...seat, leader, ground: grounds.at(seat.at) });
      }
      triedMm = longestMm;
    }
    return [...found.values()];
  };
}

/** Places on all sides of a text, where a leader from it may begin: the text itself may stand in the way of those from its thing. */
function besideText(text: PlacedLabel | undefined, paperPerPlan: number): readonly Point[] {
  if (text === undefined) return [];
  const { at, angleDeg, widthMm, heightMm } = text;
  const turn = (angleDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn) / paperPerPlan, Math.sin(turn) / paperPerPlan];
  const [w, h] = [widthMm / 2 + textGapMm, heightMm / 2];
  return [
    [w, 0],
    [-w, 0],
    [0, h],
    [0, -h],
  ].map(([x = 0, y = 0]): Point => [at[0] + x * cos - y * sin, at[1] + x * sin + y * cos]);
}

/** Lengths of leaders that are tried, mm on paper. */
const lengthsMm: readonly number[] = (() => {
  const { shortest, short, shortUpTo, long, longest } = stepsMm;
  const found: number[] = [];
  for (let mm: number = shortest; mm <= longest; mm += mm < shortUpTo ? short : long) found.push(mm);
  return found;
})();

/** Places round those that a leader may begin at, the nearest first.
 *  @param lengths more than the first and up to the second, mm on paper */
function placesLed(
  begins: readonly Point[],
  form: LabelForm,
  paperPerPlan: number,
  [moreMm, upToMm]: readonly [number, number],
): readonly Place[] {
  const size = formSize(form);
  const places: Place[] = [];
  for (const lengthMm of lengthsMm.filter((mm) => mm > moreMm && mm <= upToMm)) {
    for (const begin of begins) {
      for (const [dx, dy] of ways) {
        const tip: Point = [begin[0] + (dx * lengthMm) / paperPerPlan, begin[1] + (dy * lengthMm) / paperPerPlan];
        const ends: Point[] = [[Math.sign(dx) * (size.widthMm / 2 + textGapMm), 0]];
        if (Math.abs(dy) > steep) ends.push([0, Math.sign(dy) * (size.heightMm / 2)]);
        for (const [x, y] of ends) {
          const at: Point = [tip[0] + x / paperPerPlan, tip[1] + y / paperPerPlan];
          places.push({ seat: { at, angleDeg: 0, ...size }, leader: [begin, tip], lengthMm });
        }
      }
    }
  }
  return places;
}

function leaderBox({ leader: [begin, tip], lengthMm }: Omit<Place, 'seat'>, paperPerPlan: number): TurnedBox {
  const share = (ownMm + lengthMm) / 2 / lengthMm;
  return {
    centre: [
      (begin[0] + (tip[0] - begin[0]) * share) * paperPerPlan,
      (begin[1] + (tip[1] - begin[1]) * share) * paperPerPlan,
    ],
    halfWidth: (lengthMm - ownMm) / 2,
    halfHeight: halfMm,
    angleDeg: (Math.atan2(tip[1] - begin[1], tip[0] - begin[0]) * 180) / Math.PI,
  };
}

/** Round an upright box on paper with its space to the edge, mm on the plan. */
function boxRound({ centre: [x, y], halfWidth, halfHeight }: TurnedBox, paperPerPlan: number): Box {
  const [w, h] = [halfWidth + edgeMm, halfHeight + edgeMm];
  return {
    minX: (x - w) / paperPerPlan,
    minY: (y - h) / paperPerPlan,
    maxX: (x + w) / paperPerPlan,
    maxY: (y + h) / paperPerPlan,
  };
}
