import type { Choice } from '../../parts/ChoiceField.tsx';

/** The words of each value, as a field offers them. */
export function choicesOf<Value extends string>(words: Readonly<Record<Value, string>>): readonly Choice<Value>[] {
  return (Object.keys(words) as Value[]).map((value) => ({ value, words: words[value] }));
}
