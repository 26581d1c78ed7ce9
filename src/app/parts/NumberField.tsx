import { type KeyboardEvent, useId, useRef, useState } from 'react';
import { figureRead, figureShort } from './format.ts';
import { SourceButton, SourceText, useSource } from './SourceNote.tsx';

interface NumberFieldProps {
  readonly label: string;
  readonly unit: string;
  /** Null: not known yet. */
  readonly value: number | null;
  readonly least: number;
  readonly most: number;
  /** What an arrow key adds or takes. */
  readonly step: number;
  readonly decimals: number;
  /** Key of the reference sources, or the document that the user named. */
  readonly source: string;
  readonly range: string | null;
  /** `gesture` is the same for all changes from entering the field to leaving it. */
  readonly onChange: (value: number, gesture: string) => void;
}

/** A figure of the plan, changed in place: Enter, leaving the field or an arrow key puts it in. */
export function NumberField(props: NumberFieldProps) {
  const { label, unit, value, least, most, step, decimals } = props;
  const id = useId();
  const visit = useRef(0);
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const source = useSource();

  const put = (next: number | null) => {
    if (next === null || next < least || next > most) {
      const bounds = `${figureShort(least, decimals)} to ${figureShort(most, decimals)}`;
      setWrong(`Enter a number from ${bounds}${unit === '' ? '' : ` ${unit}`}.`);
      return;
    }
    setTyped(null);
    setWrong(null);
    if (next !== value) props.onChange(next, `${id} ${visit.current}`);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter' && typed !== null) put(figureRead(typed));
    if (event.key === 'Escape' && typed !== null) {
      event.stopPropagation();
      setTyped(null);
      setWrong(null);
    }
    if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
    event.preventDefault();
    const from = (typed === null ? null : figureRead(typed)) ?? value ?? least - step;
    const next = from + (event.key === 'ArrowUp' ? step : -step);
    put(Number(Math.min(most, Math.max(least, next)).toFixed(decimals)));
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className={wrong === null ? 'entry' : 'entry wrong'}>
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          data-typing={typed !== null}
          value={typed ?? (value === null ? '' : figureShort(value, decimals))}
          placeholder={value === null ? 'not set' : undefined}
          aria-invalid={wrong !== null}
          aria-describedby={wrong === null ? undefined : `${id}-wrong`}
          onFocus={() => {
            visit.current += 1;
          }}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={() => typed !== null && put(figureRead(typed))}
          onKeyDown={onKeyDown}
        />
        {unit !== '' && <span className="unit">{unit}</span>}
      </span>
      <SourceButton of={label} toggle={source} />
      {wrong !== null && (
        <span className="wrong-word" id={`${id}-wrong`} role="alert">
          {wrong}
        </span>
      )}
      <div className="source-place" id={source.id} hidden={!source.open}>
        <SourceText source={props.source} range={props.range} />
      </div>
    </div>
  );
}
