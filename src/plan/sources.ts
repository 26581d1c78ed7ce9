import sourcesJson from '../../shared/sources.json' with { type: 'json' };

/** What stands behind each figure of `shared/`. Apart from the figures: the first view of the editor has no need of it. */

export type SourceKey = keyof typeof sourcesJson;

export interface Source {
  readonly title: string;
  readonly where: string;
  /** published: seen in print; memory: recalled, not seen; practice: common in the trade; derived: our own arithmetic; user: entered. */
  readonly standing: string;
  /** Seen in a text that restates the standard, not in the standard itself. */
  readonly restated: boolean;
  readonly note: string;
}

export const sources: Readonly<Record<SourceKey, Source>> = sourcesJson;

/** The source behind a key; null where the key is a document that the user named. */
export function sourceOf(key: string): Source | null {
  return Object.hasOwn(sources, key) ? sources[key as SourceKey] : null;
}
