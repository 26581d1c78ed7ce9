import type { Point } from '../../geometry/point.ts';
import type { PlanFile } from '../schema.ts';
import { FARTHEST_MM, pointSnapped } from '../snap.ts';
import { changedIfNew } from './fields.ts';
import { numberNext } from './free-names.ts';
import { planSectionChanged } from './settings.ts';

/** Places on the floor that papers are made with. */

/** `base`: marked on site, joints are set out from the first two; `test`: dryness is tested there; `access`: screed is brought in there. */
export type PaperPointKind = 'base' | 'test' | 'access';

export interface PaperPoint {
  readonly kind: PaperPointKind;
  /** Place in its list. */
  readonly index: number;
  /** Its own name, or its number. */
  readonly name: string;
  readonly at: Point;
}

type Named = { readonly name?: string | undefined; readonly at: Point };

function listOf(file: PlanFile, kind: PaperPointKind): readonly Named[] {
  if (kind === 'base') return file.papers?.basePoints ?? [];
  if (kind === 'test') return file.records?.testPoints ?? [];
  return file.pour?.access === undefined ? [] : [{ name: '', at: file.pour.access }];
}

function listSet(file: PlanFile, kind: PaperPointKind, list: readonly Named[]): PlanFile {
  const kept = list.length === 0 ? undefined : list;
  if (kind === 'base') return planSectionChanged(file, 'papers', { basePoints: kept });
  if (kind === 'test') return planSectionChanged(file, 'records', { testPoints: kept });
  return planSectionChanged(file, 'pour', { access: list.at(-1)?.at });
}

export function paperPoints(file: PlanFile, kind: PaperPointKind): readonly PaperPoint[] {
  return listOf(file, kind).map(({ name = '', at }, index) => ({
    kind,
    index,
    name: name.trim() === '' ? String(index + 1) : name,
    at,
  }));
}

/** The name of the next point that is placed. */
export function paperPointNameNext(file: PlanFile, kind: PaperPointKind): string {
  return numberNext(paperPoints(file, kind).map(({ name }) => name));
}

/** Adds a point under a number of its own, which stays when others go; an access is moved, as there is one. Beyond the sheet: the file itself. */
export function paperPointAdded(file: PlanFile, kind: PaperPointKind, at: Point): PlanFile {
  const [known] = kind === 'access' ? paperPoints(file, kind) : [];
  if (known !== undefined) return paperPointChanged(file, known, { at });
  if (isOff(at)) return file;
  const point = { name: paperPointNameNext(file, kind), at: pointSnapped(at) };
  return listSet(file, kind, [...listOf(file, kind), point]);
}

/** Moves or renames a point. */
export function paperPointChanged(
  file: PlanFile,
  { kind, index }: Pick<PaperPoint, 'kind' | 'index'>,
  change: Partial<Named>,
): PlanFile {
  if (change.at !== undefined && isOff(change.at)) return file;
  const known = listOf(file, kind);
  const list = known.map((each, i) => {
    if (i !== index) return each;
    const at = pointSnapped(change.at ?? each.at);
    // an access has no name
    return changedIfNew<Named>(each, kind === 'access' ? { at } : { ...change, at });
  });
  return list.every((each, i) => each === known[i]) ? file : listSet(file, kind, list);
}

function isOff([x, y]: Point): boolean {
  return Math.max(Math.abs(x), Math.abs(y)) > FARTHEST_MM;
}

export function paperPointRemoved(file: PlanFile, { kind, index }: Pick<PaperPoint, 'kind' | 'index'>): PlanFile {
  return listSet(
    file,
    kind,
    listOf(file, kind).filter((_, i) => i !== index),
  );
}
