import { type ReactNode, useState } from 'react';

/** What is looked at now and then: folded until it is asked for, and not made before. */
export function Fold({ summary, children }: { readonly summary: string; readonly children: ReactNode }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="fold" open={open}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the browser gives a summary its keys and its role */}
      <summary
        onClick={(event) => {
          // The browser's own way tells of it a moment later: the next key would pass what is not made yet.
          event.preventDefault();
          setOpen(!open);
        }}
      >
        {summary}
      </summary>
      {open && <div className="folded">{children}</div>}
    </details>
  );
}
