import * as z from 'zod/mini';
import { moreText } from './figure-words.ts';

/** So many problems of one list are kept; the rest are counted. */
const MOST_BAD_ENTRIES = 20;

/** A list that counts its problems beyond the first few: the library passes them on as arguments of one call, and a hundred thousand
 *  overflow the stack. */
export function listOf<T extends z.core.$ZodType>(item: T) {
  const cut = z.check<unknown>(
    ({ issues, value }) => {
      const more = issues.length - MOST_BAD_ENTRIES;
      if (more <= 0) return;
      issues.length = MOST_BAD_ENTRIES;
      issues.push({ code: 'custom', input: value, message: moreText(more, 'problem'), params: { count: more } });
    },
    { when: () => true },
  );
  return z.array(item).check(cut);
}
