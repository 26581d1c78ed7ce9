import { marks } from '../../../documents/symbols.ts';
import { type Point, pointDistance } from '../../../geometry/point.ts';
import { segmentDistance } from '../../../geometry/segment.ts';
import { gridLineChanged, gridLineRemoved, gridLinesOf } from '../../../plan/edits/grid-lines.ts';
import {
  type PaperPointKind,
  paperPointChanged,
  paperPointRemoved,
  paperPoints,
} from '../../../plan/edits/paper-points.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { nameText } from '../../parts/format.ts';
import type { Thing } from '../../state/thing.ts';
import type { Hand } from '../stance.ts';
import type { Wishes } from '../wishes.ts';
import { gridLineName, paperPointName } from './names.ts';

/** What papers mark on the floor and the hand can take hold of: points, and lines of the grid. */
export interface PaperPlace {
  readonly kind: Wishes['paperPoint'];
  /** Place in the list of its kind. */
  readonly index: number;
  /** Example: "Base point 1" */
  readonly name: string;
  /** The point, or the two ends of the line, mm. */
  readonly points: readonly Point[];
}

/** Points before lines: of what lies at one place the point is meant. */
export function placesOf(file: PlanFile): readonly PaperPlace[] {
  const lines = gridLinesOf(file).map(
    (line, index): PaperPlace => ({ kind: 'grid', index, name: gridLineName(line), points: [line.from, line.to] }),
  );
  const points = (['base', 'test', 'access'] as const).flatMap((kind) =>
    paperPoints(file, kind).map(
      ({ index, name, at }): PaperPlace => ({
        kind,
        index,
        name: paperPointName({ kind, name: nameText(name) }),
        points: [at],
      }),
    ),
  );
  return [...points, ...lines];
}

/** The place as a thing that is chosen. */
export function placeThing({ kind, index }: Pick<PaperPlace, 'kind' | 'index'>): Thing {
  return { kind: 'object', key: `${kind} on the papers ${index + 1}` };
}

/** The one place that is chosen; null where it is none, or is no more. */
export function placeChosen(file: PlanFile, chosen: readonly Thing[]): PaperPlace | null {
  const [thing, ...more] = chosen;
  if (thing === undefined || more.length > 0) return null;
  return placesOf(file).find((place) => placeThing(place).key === thing.key) ?? null;
}

/** The plan with the point, or both ends of the line, elsewhere. The file itself where nothing changes or it cannot be. */
export function placeMoved(file: PlanFile, { kind, index }: PaperPlace, points: readonly Point[]): PlanFile {
  const [from, to] = points;
  if (from === undefined) return file;
  if (kind !== 'grid') return paperPointChanged(file, { kind, index }, { at: from });
  return to === undefined ? file : gridLineChanged(file, index, { from, to });
}

export function placeRemoved(file: PlanFile, { kind, index }: PaperPlace): PlanFile {
  return kind === 'grid' ? gridLineRemoved(file, index) : paperPointRemoved(file, { kind, index });
}

/** A place with what of it is under the hand. */
export interface PlaceHeld {
  readonly place: PaperPlace;
  /** Which of its points; null: the line between its ends. */
  readonly end: number | null;
}

/** So many mm of the plan are 1 mm on the paper of the board: symbols keep their size there. */
export type PaperMm = () => number;

/** What lies under the hand: points by their symbols, then the nearest end, then the nearest line. */
export function placeUnder(places: readonly PaperPlace[], hand: Hand, paperMm: number): PlaceHeld | null {
  const ends = places.flatMap((place) => place.points.map((at, end) => ({ place, end, at })));
  const met = ends.filter(({ place: { kind }, at }) =>
    kind === 'grid' ? pointDistance(at, hand.at) <= hand.reachMm : symbolMet(kind, at, hand, paperMm),
  );
  const [nearest] = met.sort((a, b) => pointDistance(a.at, hand.at) - pointDistance(b.at, hand.at));
  if (nearest !== undefined) return { place: nearest.place, end: nearest.end };
  const lineAway = ({ points: [from, to] }: PaperPlace) =>
    from === undefined || to === undefined ? Number.POSITIVE_INFINITY : segmentDistance(from, to, hand.at);
  const [line] = places.filter((place) => lineAway(place) <= hand.reachMm).sort((a, b) => lineAway(a) - lineAway(b));
  return line === undefined ? null : { place: line, end: null };
}

const symbols = { base: 'base-point', test: 'test-point', access: 'access' } as const;

/** How far the symbol of a point reaches from it on paper, mm. */
export function symbolReach(kind: PaperPointKind): (typeof marks)['access']['reachMm'] {
  return marks[symbols[kind]].reachMm;
}

function symbolMet(kind: PaperPointKind, [x, y]: Point, { at, reachMm }: Hand, paperMm: number): boolean {
  const reach = symbolReach(kind);
  const [dx, dy] = [at[0] - x, at[1] - y];
  const most = (mm: number) => Math.max(mm * paperMm, reachMm);
  return dx >= -most(reach.left) && dx <= most(reach.right) && dy >= -most(reach.up) && dy <= most(reach.down);
}
