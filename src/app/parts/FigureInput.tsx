import type { InputHTMLAttributes } from 'react';
import type { useFigureEntry } from './figure-entry.ts';

interface FigureInputProps extends InputHTMLAttributes<HTMLInputElement> {
  readonly entry: ReturnType<typeof useFigureEntry>;
  /** Empty: none is shown. */
  readonly unit: string;
  /** For finding it again in its row. */
  readonly 'data-part'?: string | undefined;
}

/** The field of a figure with its unit: every figure of the screen is typed in one of these. */
export function FigureInput({ entry, unit, ...own }: FigureInputProps) {
  const { id, text, typing, wrong, onChangeText, ...handlers } = entry;
  return (
    <span className={wrong === null ? 'entry' : 'entry wrong'}>
      <input
        inputMode="decimal"
        {...own}
        id={id}
        autoComplete="off"
        data-typing={typing}
        value={text}
        aria-invalid={wrong !== null}
        aria-describedby={wrong === null ? undefined : `${id}-wrong`}
        onChange={(event) => onChangeText(event.target.value)}
        {...handlers}
      />
      {unit !== '' && <span className="unit">{unit}</span>}
    </span>
  );
}

interface FigureWrongProps {
  readonly entry: Pick<FigureInputProps['entry'], 'id' | 'wrong'>;
}

/** Why what was typed was not taken. */
export function FigureWrong({ entry: { id, wrong } }: FigureWrongProps) {
  if (wrong === null) return null;
  return (
    <span className="wrong-word" id={`${id}-wrong`} role="alert">
      {wrong}
    </span>
  );
}
