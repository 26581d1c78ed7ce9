import type { Edited } from '../../../plan/edits/corners.ts';

type Why = Extract<Edited, { readonly kind: 'refused' }>['why'];

const words: Readonly<Record<Why, string>> = {
  crosses: 'The outline would cross itself',
  'too-few-corners': 'An outline needs three corners',
  'corners-meet': 'Two corners would be one',
  'not-a-rectangle': 'Only a rectangle has two sides to set',
  'no-such-corner': 'This corner is no longer there',
};

/** Why an edit of an outline is not done. */
export function refusalWords(why: Why): string {
  return words[why];
}
