import { type Point, pointDistance } from '../geometry/point.ts';
import { regionContains } from '../geometry/region.ts';
import { ringContains } from '../geometry/ring.ts';
import { segmentDistance } from '../geometry/segment.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import { leastBase, type NamedPoint, papersOf, pourOf, recordsOf } from '../plan/papers.ts';
import type { Plan } from '../plan/plan.ts';
import type { PaperSource } from './paper-source.ts';
import { basePair, gridLinesUsable, pointName } from './setting-out-frame.ts';
import { placeIsDrawn, placeOffText } from './setting-out-sheet.ts';
import { wholeMmText } from './tile-words.ts';

/** What is to be known of the points that papers are made with: base points that do not serve, test points where there is no screed to test, an access by
 *  which nothing can be brought in. They need no analysis, so that the editor tells them beside the point while it is moved. */

export interface PointCaution {
  readonly kind: 'base' | 'test' | 'access';
  /** Place of the point in its list. */
  readonly index: number;
  readonly at: Point;
  /** One sentence. */
  readonly words: string;
}

type Points = Pick<PaperSource, 'file' | 'plan'>;

/** Base points first, then test points, then the access, each in the order of its list.
 *  Example: test points 1 and 2 both at [3000, 2000] -> "Test point 2 lies at the place of test point 1." */
export function pointCautions({ file, plan }: Points): readonly PointCaution[] {
  const { basePoints, gridLines } = papersOf(file);
  const { access } = pourOf(file);
  const otherwise = gridLinesUsable(gridLines).length === 0 ? 'walls' : 'grid lines';
  return [
    ...baseCautions(basePoints, otherwise),
    ...testCautions(recordsOf(file).testPoints, plan),
    ...(access === null ? [] : accessCautions(access, plan)),
  ];
}

/** The words of one kind; of more than so many the first, and how many more there are. */
export function pointCautionTexts(
  points: Points,
  { kind, most }: { readonly kind: PointCaution['kind']; readonly most: number },
): readonly string[] {
  const own = pointCautions(points).filter((caution) => caution.kind === kind);
  const more = own.length - most;
  const texts = own.slice(0, most).map(({ words }) => words);
  return more > 0 ? [...texts, `${more} more ${more === 1 ? 'caution' : 'cautions'} on such points.`] : texts;
}

/** Base points stand where they can be marked, on the floor or off it: what counts is whether a line can be laid through two of them. */
function baseCautions(points: readonly NamedPoint[], otherwise: string): readonly PointCaution[] {
  const caution = cautionOf('base', points);
  const pair = basePair(points);
  if (pair === null) {
    if (points.length === 0) return [];
    const what = points.length === 1 ? 'There is one base point only' : 'The base points lie at one place';
    return [caution(0, `${what}: set out from the ${otherwise}.`)];
  }
  const [one, two] = pair;
  const [first, second] = pair.map(pointName);
  const twins = twinsOf(points);
  const apartMm = pointDistance(one.at, two.at);
  const words =
    apartMm < leastBase.value
      ? `Base points ${first} and ${second} are ${wholeMmText(apartMm)} apart: with less than ${wholeMmText(leastBase.value)} between them every error in a mark grows over the floor. Take points far apart.`
      : null;
  return points.flatMap((point, i): readonly PointCaution[] => {
    const alike = namedBefore(points, i) ? [caution(i, `Another base point is called ${pointName(point)} too.`)] : [];
    if (point === one) return [];
    if (point === two) return [...(words === null ? [] : [caution(i, words)]), ...alike];
    const twin = twins[i];
    const told =
      twin === undefined
        ? `is for checking only: joints are set out from base points ${first} and ${second}.`
        : `lies at the place of base point ${pointName(twin)} and serves for nothing.`;
    return [caution(i, `Base point ${pointName(point)} ${told}`), ...alike];
  });
}

function testCautions(points: readonly NamedPoint[], plan: Plan): readonly PointCaution[] {
  const caution = cautionOf('test', points);
  const twins = twinsOf(points);
  return points.flatMap((point, i): readonly PointCaution[] => {
    const name = `Test point ${pointName(point)}`;
    const twin = twins[i];
    const off = offFloorWords(point.at, plan) ?? underWords(point.at, plan);
    return [
      ...(twin === undefined ? [] : [caution(i, `${name} lies at the place of test point ${pointName(twin)}.`)]),
      ...(off === null ? [] : [caution(i, `${name} ${off}.`)]),
      ...(namedBefore(points, i) ? [caution(i, `Another test point is called ${pointName(point)} too.`)] : []),
    ];
  });
}

function namedBefore(points: readonly NamedPoint[], at: number): boolean {
  return points.slice(0, at).some(({ name }) => name.trim() === points[at]?.name.trim());
}

/** Screed is brought in over the floor, through a doorway or from outside, so that the access may be anywhere but in what stands there, or so far off that
 *  no sheet has it. Walls between rooms are not told from the outside. */
function accessCautions(at: Point, plan: Plan): readonly PointCaution[] {
  const caution = cautionOf('access', [{ at }]);
  const solid = solidWords(at, plan);
  if (solid !== null) return [caution(0, `The access for the pour stands in ${solid}: nothing is brought in there.`)];
  if (placeIsDrawn(plan, at)) return [];
  return [caution(0, `The access for the pour lies ${placeOffText(plan, at)}, too far off to be drawn.`)];
}

function cautionOf(kind: PointCaution['kind'], points: readonly { readonly at: Point }[]) {
  return (index: number, words: string): PointCaution => ({ kind, index, at: points[index]?.at ?? [0, 0], words });
}

/** Of each point one before it that lies at the same place. Places are looked up in cells as wide as what makes two of them one. */
function twinsOf(points: readonly NamedPoint[]): readonly (NamedPoint | undefined)[] {
  const cells = new Map<string, NamedPoint>();
  return points.map((point) => {
    const [column, row] = point.at.map((mm) => Math.floor(mm / WELD_MM)) as [number, number];
    const near = [-1, 0, 1].flatMap((dx) => [-1, 0, 1].flatMap((dy) => cells.get(`${column + dx} ${row + dy}`) ?? []));
    const twin = near.find(({ at }) => pointDistance(at, point.at) <= WELD_MM);
    const key = `${column} ${row}`;
    if (twin === undefined && !cells.has(key)) cells.set(key, point);
    return twin;
  });
}

/** Why there is no screed of a room to test at a place; null where there is. */
function offFloorWords(at: Point, plan: Plan): string | null {
  const solid = solidWords(at, plan);
  if (solid !== null) return `stands in ${solid}: there is no screed to test`;
  if (plan.rooms.some((room) => regionContains(room, at))) return null;
  return plan.doorways.some(({ line: [a, b], wallMm }) => segmentDistance(a, b, at) <= wallMm / 2)
    ? 'lies in a doorway: move it into the room that it is to release'
    : 'lies off the floor, in no room: there is no screed to test';
}

/** Units on the screed come after the test, and those who come back to the point find it covered. */
function underWords(at: Point, { joinery }: Plan): string | null {
  const unit = joinery.find(({ outline }) => ringContains(outline, at));
  return unit === undefined ? null : `lies under ${nameText(unit.name)}: it cannot be reached once that stands there`;
}

/** What takes the place of screed somewhere; null where nothing does. */
function solidWords(at: Point, { columns, pipes, joinery }: Plan): string | null {
  const column = columns.find(({ outline }) => ringContains(outline, at));
  if (column !== undefined) return `column ${nameText(column.id)}`;
  const pipe = pipes.find(({ centre, diameterMm }) => pointDistance(centre, at) < diameterMm / 2);
  if (pipe !== undefined) return `pipe ${nameText(pipe.id)}`;
  const unit = joinery.find(({ outline, under }) => under === 'built-off-slab' && ringContains(outline, at));
  return unit === undefined ? null : `${nameText(unit.name)}, which is built off the slab`;
}

function nameText(name: string): string {
  return pointName({ name });
}
