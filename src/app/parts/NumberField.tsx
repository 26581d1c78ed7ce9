import { type FigureEntry, useFigureEntry } from './figure-entry.ts';
import { SourceButton, SourceText, useSource } from './SourceNote.tsx';

interface NumberFieldProps extends FigureEntry {
  readonly label: string;
  /** The label with what it is about, for where it stands alone. */
  readonly name?: string;
  /** Key of the reference sources, or the document that the user named. */
  readonly source: string;
  readonly range: string | null;
}

/** A figure of the plan, changed in place. */
export function NumberField({ label, name = label, source, range, ...figure }: NumberFieldProps) {
  const { id, text, typing, wrong, onChangeText, ...handlers } = useFigureEntry(figure);
  const note = useSource();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className={wrong === null ? 'entry' : 'entry wrong'}>
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          data-typing={typing}
          value={text}
          placeholder={figure.value === null ? 'not set' : undefined}
          aria-invalid={wrong !== null}
          aria-describedby={wrong === null ? undefined : `${id}-wrong`}
          onChange={(event) => onChangeText(event.target.value)}
          {...handlers}
        />
        {figure.unit !== '' && <span className="unit">{figure.unit}</span>}
      </span>
      <SourceButton of={name} toggle={note} />
      {wrong !== null && (
        <span className="wrong-word" id={`${id}-wrong`} role="alert">
          {wrong}
        </span>
      )}
      <div className="source-place" id={note.id} hidden={!note.open}>
        {note.open && <SourceText source={source} range={range} />}
      </div>
    </div>
  );
}
