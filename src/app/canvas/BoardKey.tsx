import { useMemo } from 'react';
import type { Drawing } from '../../documents/drawing.ts';
import { legendOf } from '../../documents/legend.ts';
import { Sample } from '../parts/Sample.tsx';

/** What the lines and symbols of the drawing mean: only those that it shows. */
export function BoardKey({ drawing }: { readonly drawing: Drawing }) {
  const legend = useMemo(() => legendOf(drawing), [drawing]);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by the Tab key
    <section className="key" data-scrolls tabIndex={0} aria-label="Key to the drawing">
      <ul>
        {legend.map((row) => (
          <li key={`${row.shape} ${row.style}`}>
            <Sample of={row} />
            {row.words}
          </li>
        ))}
      </ul>
    </section>
  );
}
