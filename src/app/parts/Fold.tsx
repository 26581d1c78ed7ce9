import { type ReactNode, useId, useState } from 'react';

interface FoldProps {
  readonly summary: string;
  readonly children: ReactNode;
  /** Open as it comes. */
  readonly unfolded?: boolean;
}

/** What is looked at now and then: folded until it is asked for, and not made before. */
export function Fold({ summary, children, unfolded = false }: FoldProps) {
  const id = useId();
  const [open, setOpen] = useState(unfolded);
  return (
    <details className="fold" open={open} aria-labelledby={id}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the browser gives a summary its keys and its role */}
      <summary
        id={id}
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
