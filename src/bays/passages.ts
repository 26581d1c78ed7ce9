import { type Point, pointDistance, vectorLength } from '../geometry/point.ts';
import { type Region, ringContains } from '../geometry/ring.ts';
import { segmentsMeet } from '../geometry/segment.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import type { Budget } from './budget.ts';
import { cutOffMm, cutRate } from './grout.ts';
import { neckInGrout } from './neck-in-grout.ts';
import { type Chord, type Neck, neckBarred, regionChords, regionNecks } from './necks.ts';
import type { Part, PartCut } from './part.ts';
import { regionSplit } from './pieces.ts';

/** Joints across necks. A neck asks for a joint as long as a bay narrows there: where the layout puts one across the passage, or ends the
 *  bay before it widens, the neck has its due. The narrowest is cut before the layout is sought. Where it lies beside a core it parts nothing
 *  by itself: it is left to the layout, whose joints from the core mostly cross it, and cut together with another chord where they do not.
 *  Why: docs/decisions/0012-necks-round-cores.md. */

/** A region cut at its necks. */
interface NecksCut {
  readonly cuts: readonly PartCut[];
  readonly pieces: readonly Region[];
  /** Necks of the pieces that part nothing, or that may carry no joint. */
  readonly left: readonly Neck[];
}

/** Cuts a region at its necks, the narrowest first; one that parts nothing is passed over for the next. */
function necksCut(part: Part, budget: Budget): NecksCut {
  const cuts: PartCut[] = [];
  const pieces: Region[] = [];
  const left: Neck[] = [];
  const queue: Region[] = [part.region];
  for (let region = queue.pop(); region; region = queue.pop()) {
    const own: Part = { ...part, region };
    const necks = regionNecks(region, part.layout, budget);
    const found = firstParting(own, freeNecks(own, necks));
    if (found) {
      cuts.push(...found.cuts);
      queue.push(...found.pieces);
    } else {
      pieces.push(region);
      left.push(...necks);
    }
  }
  return { cuts, pieces, left };
}

/** A region parted at a neck. */
interface NeckStart {
  readonly cuts: readonly PartCut[];
  readonly pieces: readonly Region[];
}

/** The ways to part a region at its narrowest neck: one, or more where others are as narrow, such as both ends of one passage. None where they part
 *  nothing by themselves. */
export function neckStarts(part: Part, budget: Budget): NeckStart[] {
  const free = freeNecks(part, regionNecks(part.region, part.layout, budget));
  const leastMm = Math.round(free[0]?.widthMm ?? 0);
  const tied = free.filter((neck) => Math.round(neck.widthMm) === leastMm);
  // From one corner the chord square to the passage is the shortest; those a hair askew to it are no other ways.
  const askew = (neck: Neck) => tied.some((other) => other.widthMm < neck.widthMm && sharesEnd(neck, other));
  const ways = tied.filter((neck) => !askew(neck)).slice(0, MOST_TIED);
  return ways.flatMap((neck) => firstParting(part, [neck]) ?? []);
}

function sharesEnd(a: Chord, b: Chord): boolean {
  return [a.from, a.to].some((p) => [b.from, b.to].some((q) => pointDistance(p, q) <= WELD_MM));
}

const MOST_TIED = 4;

/** The narrowest neck that parts a region by itself; no cuts where none does. */
export function neckParting(part: Part, budget: Budget): readonly PartCut[] {
  return firstParting(part, freeNecks(part, regionNecks(part.region, part.layout, budget)))?.cuts ?? [];
}

/** Necks that may carry a joint, the narrowest first; of those as narrow to the millimetre, such as both ends of one passage, one whose joint goes into
 *  grout, or the one nearest to it. */
function freeNecks(part: Part, necks: readonly Neck[]): Neck[] {
  const { grout } = part;
  const free = necks.filter((neck) => !neckBarred(part, neck));
  if (grout === null) return free;
  const ranked = free.map((neck) => {
    const isMoved = cutRate(grout, neckInGrout(part, { kind: 'neck', from: neck.from, to: neck.to })) === 1;
    return { neck, widthMm: Math.round(neck.widthMm), isMoved, offMm: cutOffMm(grout, neck) };
  });
  const order = ranked.sort(
    (a, b) => a.widthMm - b.widthMm || Number(b.isMoved) - Number(a.isMoved) || a.offMm - b.offMm,
  );
  return order.map(({ neck }) => neck);
}

function firstParting(part: Part, necks: readonly Neck[]): NeckStart | null {
  for (const { from, to, rings } of necks) {
    if (rings[0] !== rings[1]) continue;
    const cuts: PartCut[] = [neckInGrout(part, { kind: 'neck', from, to })];
    const pieces = regionSplit(part.region, cuts);
    if (pieces.length > 1) return { cuts, pieces };
  }
  return null;
}

/** What a layout leaves of the necks: more cuts, inside the bays that it makes, and the necks that no joint crosses. */
export function necksAfter(part: Part, cuts: readonly PartCut[], budget: Budget): Pick<NecksCut, 'cuts' | 'left'> {
  const bays = cuts.length > 0 ? regionSplit(part.region, cuts) : [part.region];
  const after = bays.map((region) => necksCut({ ...part, region }, budget));
  return { cuts: after.flatMap((bay) => bay.cuts), left: after.flatMap((bay) => bay.left) };
}

/** Shortest chords between two rings, and sets of chords, that are tried. */
const MOST_CHORDS = 16;
const MOST_TRIES = 24;

/** Chords that part a region together where none does by itself: two between the same two rings, such as two necks of a ring round a core,
 *  or one from each of two rings to a third and one between them. Those after which no bay narrows any more, and of these the ones that ask
 *  for least joint, with the necks that then still have to be cut. None where no chords part it. */
export function ringCuts(part: Part, budget: Budget): PartCut[] {
  const isNeck = new Set(regionNecks(part.region, part.layout, budget).map(chordKey));
  const chords = regionChords(part.region, part.layout, budget).filter((chord) => !chordBarred(part, chord));
  const sets = chordSets(chords).sort((a, b) => chordsLength(a) - chordsLength(b));
  let best: { cuts: PartCut[]; left: number; costMm: number } = { cuts: [], left: Infinity, costMm: Infinity };
  for (const set of sets.slice(0, MOST_TRIES)) {
    const ownMm = chordsLength(set);
    if (best.left === 0 && ownMm >= best.costMm) break;
    const cuts = set.map((chord): PartCut => {
      return { kind: isNeck.has(chordKey(chord)) ? 'neck' : 'field', from: chord.from, to: chord.to };
    });
    const pieces = regionSplit(part.region, cuts);
    if (pieces.length < 2) continue;
    const after = pieces.map((region) => necksCut({ ...part, region }, budget));
    const left = after.reduce((sum, piece) => sum + piece.left.length, 0);
    const costMm = ownMm + after.reduce((sum, piece) => sum + cutsLength(piece.cuts), 0);
    if (left < best.left || (left === best.left && costMm < best.costMm)) best = { cuts, left, costMm };
  }
  return best.cuts;
}

function chordKey({ from, to }: Chord): string {
  return `${from} ${to}`;
}

function chordsLength(chords: readonly Chord[]): number {
  return chords.reduce((sum, { widthMm }) => sum + widthMm, 0);
}

function cutsLength(cuts: readonly PartCut[]): number {
  return cuts.reduce((sum, { from, to }) => sum + vectorLength(to[0] - from[0], to[1] - from[1]), 0);
}

/** Sets of chords that close a way round: pairs between the same two rings, and threes between three. */
function chordSets(chords: readonly Chord[]): Chord[][] {
  const between = new Map<string, Chord[]>();
  for (const chord of chords) {
    const [a, b] = chord.rings;
    if (a === b) continue;
    const key = `${Math.min(a, b)} ${Math.max(a, b)}`;
    const known = between.get(key) ?? [];
    if (known.length < MOST_CHORDS) between.set(key, [...known, chord]);
  }
  const pairs = [...between.values()].flatMap((own) =>
    own.flatMap((one, i) => own.slice(i + 1).map((two) => [one, two])),
  );
  const shortest = [...between.values()].map((own) => own[0] as Chord);
  const threes = shortest.flatMap((one, i) =>
    shortest.slice(i + 1).flatMap((two, j) => shortest.slice(i + j + 2).map((three) => [one, two, three])),
  );
  return [...pairs, ...threes.filter(isRound)].filter(isClear);
}

function isRound(set: readonly Chord[]): boolean {
  return new Set(set.flatMap(({ rings }) => rings)).size === set.length;
}

function isClear(set: readonly Chord[]): boolean {
  return set.every((one, i) => set.slice(i + 1).every((two) => !segmentsMeet(one.from, one.to, two.from, two.to)));
}

/** Whether no joint may run along a chord, or through where it lies. */
function chordBarred(part: Part, chord: Chord): boolean {
  const middle: Point = [(chord.from[0] + chord.to[0]) / 2, (chord.from[1] + chord.to[1]) / 2];
  const through = part.keepClear.some(
    (ring) =>
      ringContains(ring, middle) ||
      ring.some((p, i) => segmentsMeet(p, ring[(i + 1) % ring.length] as Point, chord.from, chord.to)),
  );
  return through || neckBarred(part, chord);
}
