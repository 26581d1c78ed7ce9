import type { LegendRow } from '../../documents/legend.ts';
import { Icon } from '../parts/Icon.tsx';
import { Sample } from '../parts/Sample.tsx';
import { boardStore } from '../state/boardStore.ts';
import { useBoard } from '../state/hooks.ts';

/** What the lines and symbols of the drawing mean: only those that it shows. */
export function BoardKey({ legend }: { readonly legend: readonly LegendRow[] }) {
  const open = useBoard((state) => state.keyOpen);
  if (legend.length === 0) return null;
  return (
    <section className="key glass" aria-label="Key to the drawing">
      <button
        type="button"
        className="button"
        aria-expanded={open}
        onClick={() => boardStore.setState({ keyOpen: !open })}
      >
        <Icon name="key" />
        Key
      </button>
      {open && (
        <ul className="key-body">
          {legend.map((row) => (
            <li key={`${row.shape} ${row.style}`}>
              <Sample of={row} />
              {row.words}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
