import { oneLine } from './words.ts';

/** What is entered or drawn otherwise, as a comparison tells it. */

/** A setting of the plan, a room or a thing that is another now, or a thing that came or went. */
export interface SettingChange {
  /** Name of the room, the doorway or the thing; null: of the whole plan. */
  readonly of: string | null;
  readonly words: string;
  readonly unit: string | null;
  /** Null: `unset` says what that is. */
  readonly before: SettingValue;
  readonly now: SettingValue;
  readonly unset: Unset;
}

/** What it means that there is no value: an entry that is open, a thing that is not there, or a room that takes what the plan has. */
type Unset = 'not entered' | 'none' | 'as the plan';

export type SettingValue = string | number | null;

/** One row of a comparison.
 *  @param entry of the plan file that it tells, without the numbers of lists, such as rooms.buildUp.insulationMm: what no row tells is told by its path
 *  @param unset not entered, where it is left out */
export type Setting<T> = readonly [
  entry: string,
  words: string,
  unit: string | null,
  value: (of: T) => SettingValue | undefined,
  unset?: Unset,
];

export function entriesOf(settings: readonly Setting<never>[]): readonly string[] {
  return settings.map(([entry]) => entry);
}

/** What is in one version alone has no settings that changed: that it came or went is told elsewhere. */
export function changesOf<T>(
  of: string | null,
  settings: readonly Setting<T>[],
  { before, now }: { readonly before: T | null | undefined; readonly now: T | null | undefined },
): readonly SettingChange[] {
  if (before === undefined || before === null || now === undefined || now === null) return [];
  return settings.flatMap(([, words, unit, value, unset = 'not entered']): SettingChange[] => {
    const [earlier, later] = [shown(value(before)), shown(value(now))];
    return earlier === later ? [] : [{ of: of && oneLine(of), words, unit, before: earlier, now: later, unset }];
  });
}

function shown(value: SettingValue | undefined): SettingValue {
  return typeof value === 'string' ? oneLine(value) || null : (value ?? null);
}

/** A share as it is entered. Example: 0.05 -> 5 */
export function percentOf(share: number): number {
  return Number((100 * share).toFixed(6));
}
