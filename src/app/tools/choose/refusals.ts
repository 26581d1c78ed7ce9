import type { EditRefusal } from '../../../plan/edits/rings.ts';

const words: Readonly<Record<EditRefusal, string>> = {
  crosses: 'The outline would cross itself',
  'too-few-corners': 'An outline needs three corners',
  'corners-meet': 'Two corners would be one',
  'not-a-rectangle': 'Only a rectangle has two sides to set',
  'no-such-corner': 'This corner is no longer there',
  'off-sheet': 'This lies beyond the sheet',
};

/** Why an edit of an outline is not done. */
export function refusalWords(why: EditRefusal): string {
  return words[why];
}
