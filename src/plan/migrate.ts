/** A step rewrites the raw JSON of one version into the next. Steps are numbered by their place: the first one takes version 1 to 2.
 *  Each is pure, never edited after release, and has a test of its own. */
export type Migration = (file: Readonly<Record<string, unknown>>) => Record<string, unknown>;

/** Version 1 is the only one so far. */
export const migrations: readonly Migration[] = [];

/** Takes a file from its version to the newest. @param version of the file, 1 to `steps.length + 1` */
export function planMigrated(
  file: Readonly<Record<string, unknown>>,
  version: number,
  steps: readonly Migration[] = migrations,
): Readonly<Record<string, unknown>> {
  return steps
    .slice(version - 1)
    .reduce<Readonly<Record<string, unknown>>>((at, step, i) => ({ ...step(at), version: version + i + 1 }), file);
}
