import { FigureInput, FigureWrong } from './FigureInput.tsx';
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
  const entry = useFigureEntry(figure);
  const note = useSource();
  return (
    <div className="field">
      <label htmlFor={entry.id}>{label}</label>
      <FigureInput entry={entry} unit={figure.unit} placeholder={figure.value === null ? 'not set' : undefined} />
      <SourceButton of={name} toggle={note} />
      <FigureWrong entry={entry} />
      <div className="source-place" id={note.id} hidden={!note.open}>
        {note.open && <SourceText source={source} range={range} />}
      </div>
    </div>
  );
}
