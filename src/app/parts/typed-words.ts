import { type ChangeEvent, type FocusEvent, type KeyboardEvent, useId, useState } from 'react';

interface WordsEntry {
  readonly value: string;
  /** What is typed, where it differs from what the plan has. */
  readonly put: (typed: string) => void;
  /** Why it cannot be; null where it can. */
  readonly refusal?: ((typed: string, input: HTMLInputElement) => string | null) | undefined;
  /** Ids of what is said beside the field. */
  readonly beside?: string | undefined;
}

/** Words that are typed into a field: put in with Enter or when the field is left, given up with Escape. What is refused stays as it was typed, with
 *  the reason, until it is mended, given up, or past. */
export function useTypedWords({ value, put, refusal, beside }: WordsEntry) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const [seen, setSeen] = useState(value);
  if (seen !== value) {
    setSeen(value);
    // Words are refused for what they are: only where undo has changed these is that past.
    if (wrong !== null) {
      setTyped(null);
      setWrong(null);
    }
  }
  const take = (input: HTMLInputElement) => {
    const words = typed ?? value;
    // A day that is half typed stands in its field, and tells of no change.
    const refused = words !== value || input.validity.badInput ? (refusal?.(words, input) ?? null) : null;
    setWrong(refused);
    if (refused !== null) return;
    if (words !== value) put(words);
    setTyped(null);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    if (event.key === 'Enter') take(input);
    if (event.key !== 'Escape' || (typed === null && wrong === null && !input.validity.badInput)) return;
    event.stopPropagation();
    if (input.validity.badInput) input.value = value;
    setTyped(null);
    setWrong(null);
  };
  const described = [wrong === null ? null : `${id}-wrong`, beside].filter(Boolean).join(' ');
  return {
    id,
    wrong,
    input: {
      id,
      autoComplete: 'off',
      'data-typing': typed !== null,
      'aria-invalid': wrong !== null,
      'aria-describedby': described === '' ? undefined : described,
      value: typed ?? value,
      onChange: (event: ChangeEvent<HTMLInputElement>) => setTyped(event.target.value),
      onBlur: (event: FocusEvent<HTMLInputElement>) => take(event.target),
      onKeyDown,
    },
  };
}
