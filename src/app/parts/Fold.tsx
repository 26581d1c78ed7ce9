import { type ReactNode, useId, useState } from 'react';

interface FoldProps {
  readonly summary: string;
  readonly children: ReactNode;
  /** Open as it comes. */
  readonly unfolded?: boolean;
}

/** What is looked at now and then: folded until it is asked for, and not made before. Folded again it stays as it is: what was typed and refused is
 *  there when it is opened the next time. */
export function Fold({ summary, children, unfolded = false }: FoldProps) {
  const id = useId();
  const [fold, setFold] = useState({ open: unfolded, made: unfolded });
  const put = (open: boolean) => setFold({ open, made: open || fold.made });
  return (
    // A search in the page opens a fold without a press.
    <details
      className="fold"
      open={fold.open}
      aria-labelledby={id}
      onToggle={({ currentTarget: { open } }) => open !== fold.open && put(open)}
    >
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the browser gives a summary its keys and its role */}
      <summary
        id={id}
        onClick={(event) => {
          // The browser's own way tells of it a moment later: the next key would pass what is not made yet.
          event.preventDefault();
          put(!fold.open);
        }}
      >
        {summary}
      </summary>
      {fold.made && <div className="folded">{children}</div>}
    </details>
  );
}
