import { EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import type { Analysis, Bay, Finding, Joint, JointKind, Severity } from '../plan/analysis.ts';
import { papersOf } from '../plan/papers.ts';
import { type BayMatch, bayMatch } from './compare-bays.ts';
import type { SettingChange } from './compare-changes.ts';
import { floorsCaution, floorsNotes } from './compare-floors.ts';
import { jointMatch, jointMovedMm, type Kin, nearestPairs, type Pair, roomPairs } from './compare-match.ts';
import { type OrderChange, orderChanges } from './compare-order.ts';
import { type QuantityPair, quantityIsChanged, quantityPairs } from './compare-quantities.ts';
import { setOutNote } from './compare-set-out.ts';
import { settingChanges } from './compare-settings.ts';
import { sourceOver } from './compare-shift.ts';
import { doorwayNames, findingNamed } from './doorway-places.ts';
import type { PaperSource } from './paper-source.ts';
import { namesOf, oneLine } from './words.ts';

/** Two versions of one plan side by side, as plain data. */
export interface Comparison {
  readonly before: ComparedVersion;
  readonly now: ComparedVersion;
  /** That these seem to be two different floors; null: they are two versions of one. */
  readonly caution: string | null;
  /** What else is to be known of the two, such as that the floor was moved on its sheet as a whole. */
  readonly notes: readonly string[];
  readonly counts: ComparisonCounts;
  /** All of both: those of now in their order, then those that went. */
  readonly joints: readonly Change<JointVersion>[];
  readonly bays: readonly Change<BayVersion>[];
  /** In all, then room by room. */
  readonly quantities: readonly QuantityPair[];
  /** Lines of the take-off that changed. */
  readonly orders: readonly OrderChange[];
  /** Only those that changed. */
  readonly settings: readonly SettingChange[];
  readonly findings: { readonly came: readonly FindingVersion[]; readonly went: readonly FindingVersion[] };
}

export interface ComparedVersion {
  readonly plan: string;
  readonly date: string;
  /** Mark of the last revision; empty where there is none. */
  readonly revision: string;
}

/** How much of each kind there is. */
export interface ComparisonCounts {
  readonly joints: Readonly<Record<WhatBecame, number>>;
  readonly bays: Readonly<Record<WhatBecame, number>>;
  /** Settings that changed. */
  readonly settings: number;
  /** Quantities of the whole floor that changed. */
  readonly quantities: number;
  /** Lines of the take-off that are ordered otherwise. */
  readonly orders: number;
  readonly findingsCame: number;
  readonly findingsWent: number;
}

/** What became of a joint or a bay. One that moved may have changed as well. */
export type WhatBecame = 'same' | 'moved' | 'changed' | 'appeared' | 'went';

export interface Change<T> {
  readonly what: WhatBecame;
  readonly before: T | null;
  readonly now: T | null;
  /** 0 where it stands where it stood; bays do not move, they change. */
  readonly movedMm: number;
  /** Floor that a bay had and has not now, for as much that it has and had not: what its area does not tell. 0 of joints. */
  readonly elsewhereM2: number;
  /** Of one that appeared or went: ids of those in the other version that it was part of, or that became of it. */
  readonly kin: readonly string[];
}

export interface JointVersion {
  readonly id: string;
  readonly name: string;
  readonly kind: JointKind;
  readonly lengthM: number;
  readonly profileMm: number;
  readonly closingMm: number;
  readonly openingMm: number;
  readonly slidingMm: number;
}

export interface BayVersion {
  readonly id: string;
  readonly name: string;
  readonly areaM2: number;
  readonly lengthM: number;
  readonly widthM: number;
  readonly within: boolean;
}

export interface FindingVersion {
  readonly severity: Severity;
  readonly text: string;
}

/** What changed from one version of a plan to the next. With itself nothing; the other way round what appeared is what went. A floor that was moved as a
 *  whole is compared as if it lay where it was. */
export function comparisonOf(earlier: PaperSource, now: PaperSource): Comparison {
  const before = sourceOver(earlier, now);
  const rooms = roomPairs(before.plan, now.plan);
  const newIds = new Map(rooms.flatMap((pair) => (pair.before && pair.now ? [[pair.before.id, pair.now.id]] : [])));
  const joints = jointMatch(before.analysis, now.analysis, (id) => newIds.get(id) ?? `${id}\n`);
  const bays = bayMatch(before.analysis.bays, now.analysis.bays);
  const known = { joints: joints.pairs, bays: bays.pairs, nowRoom: (id: string) => newIds.get(id) ?? id };
  const jointAt = versionsOf(before, now, jointVersion);
  const bayAt = versionsOf(before, now, bayVersion);
  const changes = {
    joints: inOrder(joints.pairs, now.analysis.joints).map((pair) => jointChange(pair, jointAt(pair), joints.kin)),
    bays: inOrder(bays.pairs, now.analysis.bays).map((pair) => bayChange(pair, bayAt(pair), bays)),
    quantities: quantityPairs(earlier, now, rooms),
    orders: orderChanges(earlier, now, rooms),
    settings: settingChanges(before, now, { rooms, joints: joints.pairs }),
    findings: findingChanges(before, now, known),
  };
  const counts = countsOf(changes);
  const stayed = changes.joints.flatMap((joint) =>
    joint.what === 'same' && joint.before && joint.now ? [[joint.before.id, joint.now.id] as const] : [],
  );
  const setOut = setOutNote(earlier, now, stayed);
  const notes = [...floorsNotes(earlier, now), ...(setOut === null ? [] : [setOut])];
  return {
    before: versionOf(before),
    now: versionOf(now),
    caution: floorsCaution(before.plan, now.plan, joints.pairs),
    notes: comparisonIsEmpty(counts) ? [...notes, sameText(notes)] : notes,
    counts,
    ...changes,
  };
}

function countsOf({
  joints,
  bays,
  settings,
  quantities,
  findings,
  orders,
}: Omit<Comparison, 'before' | 'now' | 'caution' | 'notes' | 'counts'>): ComparisonCounts {
  return {
    joints: becameCounts(joints),
    bays: becameCounts(bays),
    settings: settings.length,
    quantities: quantities.filter((pair) => pair.room === null && quantityIsChanged(pair)).length,
    orders: orders.length,
    findingsCame: findings.came.length,
    findingsWent: findings.went.length,
  };
}

/** Whether nothing at all differs. */
export function comparisonIsEmpty({ joints, bays, ...others }: ComparisonCounts): boolean {
  const isSame = ({ moved, changed, appeared, went }: ComparisonCounts['joints']) =>
    moved + changed + appeared + went === 0;
  return isSame(joints) && isSame(bays) && Object.values(others).every((count) => count === 0);
}

function sameText(notes: readonly string[]): string {
  return notes.length === 0 ? 'No difference: the two plans are the same.' : 'There is no other difference.';
}

function becameCounts(changes: readonly { readonly what: WhatBecame }[]): Readonly<Record<WhatBecame, number>> {
  const count = (became: WhatBecame) => changes.filter(({ what }) => what === became).length;
  return {
    same: count('same'),
    moved: count('moved'),
    changed: count('changed'),
    appeared: count('appeared'),
    went: count('went'),
  };
}

function versionOf({ file, plan, date }: PaperSource): ComparedVersion {
  const papers = papersOf(file);
  return {
    plan: oneLine(plan.name),
    date: papers.date ?? date,
    revision: oneLine(papers.revisions.at(-1)?.mark ?? ''),
  };
}

/** Those of now in their order, then those that went in theirs. */
function inOrder<T>(pairs: readonly Pair<T>[], now: readonly T[]): readonly Pair<T>[] {
  const byNow = new Map(pairs.map((pair) => [pair.now, pair]));
  return [...now.flatMap((each) => byNow.get(each) ?? []), ...pairs.filter((pair) => pair.now === null)];
}

type Naming = ReturnType<typeof namesOf>;

function versionsOf<T, V>(
  before: PaperSource,
  now: PaperSource,
  version: (each: T, names: Naming) => V,
): (pair: Pair<T>) => Pair<V> {
  const names = [namesOf(before.plan, before.analysis), namesOf(now.plan, now.analysis)] as const;
  return (pair) => ({
    before: pair.before && version(pair.before, names[0]),
    now: pair.now && version(pair.now, names[1]),
  });
}

function jointVersion(joint: Joint, names: Naming): JointVersion {
  const { id, kind, lengthM, profileMm, closingMm, openingMm, slidingMm } = joint;
  return { id, name: names.joint(joint), kind, lengthM, profileMm, closingMm, openingMm, slidingMm };
}

function bayVersion(bay: Bay, names: Naming): BayVersion {
  const { id, areaM2, lengthM, widthM, within } = bay;
  return { id, name: names.bay(bay), areaM2, lengthM, widthM, within };
}

function jointChange(pair: Pair<Joint>, { before, now }: Pair<JointVersion>, kin: Kin<Joint>): Change<JointVersion> {
  const movedMm = pair.before && pair.now ? jointMovedMm(pair.before, pair.now) : 0;
  const isChanged = before !== null && now !== null && jointDiffers(before, now);
  const what =
    before === null ? 'appeared' : now === null ? 'went' : movedMm > 0 ? 'moved' : isChanged ? 'changed' : 'same';
  return { what, before, now, movedMm, elsewhereM2: 0, kin: kinIds(pair, kin) };
}

function bayChange(
  pair: Pair<Bay>,
  { before, now }: Pair<BayVersion>,
  { sharedM2, kin }: BayMatch,
): Change<BayVersion> {
  const shared = pair.now && sharedM2.get(pair.now);
  const elsewhereM2 = before && now && shared ? Math.max(0, Math.min(before.areaM2, now.areaM2) - shared) : 0;
  const isChanged = before !== null && now !== null && (elsewhereM2 >= halfAreaM2 || bayDiffers(before, now));
  const what = before === null ? 'appeared' : now === null ? 'went' : isChanged ? 'changed' : 'same';
  return { what, before, now, movedMm: 0, elsewhereM2, kin: kinIds(pair, kin) };
}

function kinIds<T extends { readonly id: string }>({ before, now }: Pair<T>, kin: Kin<T>): readonly string[] {
  const one = now ?? before;
  return one === null ? [] : (kin.get(one) ?? []).map(({ id }) => id);
}

/** Figures that differ by less than half of their last digit on paper are the same. */
const halfMovementMm = 0.05;
const halfAreaM2 = 0.05;

function jointDiffers(a: JointVersion, b: JointVersion): boolean {
  const isMoved = (['profileMm', 'closingMm', 'openingMm', 'slidingMm'] as const).some(
    (field) => Math.abs(a[field] - b[field]) >= halfMovementMm,
  );
  return isMoved || a.kind !== b.kind || lengthDiffers(a.lengthM, b.lengthM);
}

function bayDiffers(a: BayVersion, b: BayVersion): boolean {
  return (
    Math.abs(a.areaM2 - b.areaM2) >= halfAreaM2 ||
    a.within !== b.within ||
    lengthDiffers(a.lengthM, b.lengthM) ||
    lengthDiffers(a.widthM, b.widthM)
  );
}

function lengthDiffers(aM: number, bM: number): boolean {
  return Math.abs(aM - bM) * 1000 >= EQUAL_LENGTH_MM;
}

interface Known {
  readonly joints: readonly Pair<Joint>[];
  readonly bays: readonly Pair<Bay>[];
  readonly nowRoom: (id: string) => string;
}

/** A finding is the same where it says the same of the same things, whatever their numbers and figures are now; else where its words are the same, or
 *  where it is about some of the same things. */
function findingChanges(before: PaperSource, now: PaperSource, known: Known): Comparison['findings'] {
  const all = [...known.joints, ...known.bays];
  const newIds = new Map(all.flatMap((pair) => (pair.before && pair.now ? [[pair.before.id, pair.now.id]] : [])));
  const gone = new Set(all.flatMap((pair) => (pair.before && !pair.now ? [pair.before.id] : [])));
  const nowId = (id: string) => newIds.get(id) ?? (gone.has(id) ? `${id}\n` : known.nowRoom(id));
  const aboutBefore = findingsAbout(before.analysis, nowId);
  const aboutNow = findingsAbout(now.analysis, (id) => id);
  const pairs = nearestPairs(before.analysis.findings, now.analysis.findings, (a, b) => {
    if (a.code !== b.code) return null;
    const [refs, others] = [aboutBefore.get(a) ?? [], aboutNow.get(b) ?? []];
    const shared = refs.filter((id) => others.includes(id)).length;
    const isSame = shared === refs.length && refs.length === others.length;
    const rank = isSame ? 0 : a.message === b.message ? 1 : shared > 0 ? 2 : null;
    return rank === null ? null : { rank, awayMm: -shared, at: [a.at ?? [0, 0], b.at ?? [0, 0]] };
  });
  const names = [doorwayNames(before), doorwayNames(now)] as const;
  const version = (finding: Finding, doorways: ReadonlyMap<string, string>) => ({
    severity: finding.severity,
    text: findingNamed(finding, doorways),
  });
  return {
    came: pairs.flatMap((pair) => (pair.before === null && pair.now ? [version(pair.now, names[1])] : [])),
    went: pairs.flatMap((pair) => (pair.now === null && pair.before ? [version(pair.before, names[0])] : [])),
  };
}

/** What each finding is about; an edge stands for what it runs round, since edges are known by numbers alone. */
function findingsAbout(
  { edges, findings }: Analysis,
  rename: (id: string) => string,
): ReadonlyMap<Finding, readonly string[]> {
  const runsRound = new Map(edges.map(({ id, bay, object }) => [id, object ?? bay]));
  return new Map(
    findings.map((finding) => [finding, [...new Set(finding.refs.map((id) => rename(runsRound.get(id) ?? id)))]]),
  );
}
