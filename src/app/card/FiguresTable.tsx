import type { ReactNode } from 'react';

export interface FigureRow {
  readonly name: string;
  readonly value: ReactNode;
  readonly limit?: string | null;
  readonly strong?: boolean;
}

/** Figures one under the other, each with its limit where it has one. */
export function FiguresTable({ rows }: { readonly rows: readonly FigureRow[] }) {
  return (
    <table className="figures">
      <tbody>
        {rows.map(({ name, value, limit = null, strong = false }) => (
          <tr key={name} className={strong ? 'strong' : undefined}>
            <th scope="row">
              {name}
              {limit !== null && <span className="small quiet"> {limit}</span>}
            </th>
            <td>{value}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
