/** What stands beside a field: how it is filled in, or what its value leads to. */
export interface Note {
  readonly tone: 'quiet' | 'caution';
  readonly words: string;
}

/** Read out where it changes, and with its field. */
export function FieldNote({ id, note }: { readonly id: string; readonly note: Note | null }) {
  return (
    <span id={id} className={note === null ? 'field-note' : `field-note ${note.tone}`} role="status">
      {note?.words}
    </span>
  );
}
