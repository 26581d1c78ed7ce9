import type { PlanFile } from '../plan/schema.ts';
import type { SettingChange } from './compare-changes.ts';
import { oneLine } from './words.ts';

/** What of a plan file no row of the comparison tells, such as an entry of a later version of it: told by its path, so that nothing passes unseen.
 *  @param told entries that have rows of their own, without the numbers of lists */
export function untoldChanges(before: PlanFile, now: PlanFile, told: ReadonlySet<string>): readonly SettingChange[] {
  const [earlier, later] = [new Map(leavesOf(before, told)), new Map(leavesOf(now, told))];
  return [...new Set([...later.keys(), ...earlier.keys()])].flatMap((path): SettingChange[] => {
    const [was, is] = [earlier.get(path) ?? null, later.get(path) ?? null];
    const words = `Other entry: ${oneLine(path)}`;
    return was === is ? [] : [{ of: null, words, unit: null, before: was, now: is, unset: 'not entered' }];
  });
}

interface At {
  readonly entry: string;
  /** With the ids, keys or numbers of what stands in lists. */
  readonly path: string;
}

function leavesOf(
  value: unknown,
  told: ReadonlySet<string>,
  at: At = { entry: '', path: '' },
): readonly (readonly [path: string, text: string])[] {
  if (value === undefined || told.has(at.entry)) return [];
  if (Array.isArray(value) && value.some(isRecord)) {
    return value.flatMap((each: unknown, i) =>
      leavesOf(each, told, { entry: at.entry, path: `${at.path} ${nameIn(each) ?? i + 1}` }),
    );
  }
  if (!isRecord(value)) {
    const text = oneLine(leafText(value));
    // an empty list says what none says
    return text === '' ? [] : [[at.path, text]];
  }
  return Object.entries(value).flatMap(([field, each]) =>
    leavesOf(each, told, {
      entry: at.entry === '' ? field : `${at.entry}.${field}`,
      path: at.path === '' ? field : `${at.path} ${field}`,
    }),
  );
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** What stands in a list is known by its id or key, whatever its number is. */
function nameIn(value: unknown): string | null {
  if (!isRecord(value)) return null;
  const name = value.id ?? value.key;
  return typeof name === 'string' ? name : null;
}

/** Example: [[0, 0], [4000, 0]] -> "0, 0; 4000, 0" */
function leafText(value: unknown): string {
  if (!Array.isArray(value)) return String(value);
  return value.map(leafText).join(Array.isArray(value[0]) ? '; ' : ', ');
}
