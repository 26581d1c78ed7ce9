import { type KeyboardEvent, useState } from 'react';

/** Words that are typed into a field: put in with Enter or when the field is left, given up with Escape.
 *  @param put what is typed, where it differs from what the plan has */
export function useTypedWords(value: string, put: (typed: string) => void) {
  const [typed, setTyped] = useState<string | null>(null);
  const take = () => {
    if (typed !== null && typed !== value) put(typed);
    setTyped(null);
  };
  return {
    typed,
    input: {
      value: typed ?? value,
      onChange: (event: { readonly target: { readonly value: string } }) => setTyped(event.target.value),
      onBlur: take,
      onKeyDown(event: KeyboardEvent) {
        if (event.key === 'Enter') take();
        if (event.key !== 'Escape' || typed === null) return;
        event.stopPropagation();
        setTyped(null);
      },
    },
  };
}
