import { sourceOf } from '../plan/sources.ts';
import { oneLine } from './words.ts';

/** Where a rule stands; a document that the user named, by its name. */
export function sourceWhere(key: string): string {
  return sourceOf(key)?.where ?? oneLine(key);
}

/** How far a source can be relied on. Example: "published, as restated in trade literature" */
export function sourceStanding(key: string): string {
  const source = sourceOf(key);
  if (source === null) return standingWords.user;
  const words = standingWords[source.standing as keyof typeof standingWords] ?? source.standing;
  return source.restated ? `${words}, as restated in trade literature` : words;
}

const standingWords = {
  published: 'published',
  memory: 'from memory: check against the document',
  practice: 'common practice',
  derived: 'our own arithmetic',
  user: 'entered by the user',
} as const;
