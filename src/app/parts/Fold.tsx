import { type ReactNode, useState } from 'react';

/** What is looked at now and then: folded until it is asked for, and not made before. */
export function Fold({ summary, children }: { readonly summary: string; readonly children: ReactNode }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="fold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{summary}</summary>
      {open && <div className="folded">{children}</div>}
    </details>
  );
}
