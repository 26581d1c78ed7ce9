import { cautionLines, jointKindNames } from '../../documents/words.ts';
import { jointKinds, type Quantities } from '../../plan/analysis.ts';
import { paperDownload } from '../files/files.ts';
import { area, figure, length } from '../parts/format.ts';
import { Icon } from '../parts/Icon.tsx';
import type { PanelProps } from './panel.ts';

/** Quantities, and the papers to hand over. */
export function PapersPanel({ result }: PanelProps) {
  return (
    <>
      {result !== null && <QuantitiesGroup quantities={result.analysis.quantities} />}
      {result !== null && (
        <section className="group">
          <h3>Papers</h3>
          <div className="downloads">
            {papers
              .filter(({ tiled }) => !tiled || result.analysis.tiles !== null)
              .map(({ words, name }) => (
                <button
                  key={name}
                  type="button"
                  className="button framed"
                  onClick={() => void paperDownload(result, name)}
                >
                  <Icon name="save" />
                  {words}
                </button>
              ))}
          </div>
        </section>
      )}
      <section className="group">
        <h3>Before anything is built</h3>
        {cautionLines.map((line) => (
          <p key={line} className="quiet">
            {line}
          </p>
        ))}
      </section>
    </>
  );
}

/** `tiled`: made only where there are tiles. */
const papers = [
  { words: 'Drawing to scale, SVG', name: 'plan.svg', tiled: false },
  { words: 'Set-out sheet of the tiles, SVG', name: 'set-out.svg', tiled: true },
  { words: 'Joint list, CSV', name: 'joints.csv', tiled: false },
  { words: 'Bay list, CSV', name: 'bays.csv', tiled: false },
  { words: 'Tiles, CSV', name: 'tiles.csv', tiled: true },
  { words: 'Cuts at walls, CSV', name: 'cuts.csv', tiled: true },
  { words: 'Quantities, CSV', name: 'quantities.csv', tiled: false },
  { words: 'Analysis, JSON', name: 'analysis.json', tiled: false },
] as const;

function QuantitiesGroup({ quantities }: { readonly quantities: Quantities }) {
  const rows: readonly (readonly [string, string])[] = [
    ['Floor', area(quantities.floorM2)],
    ['Screed, volume', `${figure(quantities.screedM3, 2)} m³`],
    ['Screed, mass', `${figure(quantities.screedKg, 0)} kg`],
    ['Insulation', area(quantities.insulationM2)],
    ['Held to the slab', area(quantities.slabContactM2)],
    ['Edge strip', length(quantities.edgeStripM)],
    ...jointKinds
      .filter((kind) => quantities.jointM[kind] > 0)
      .map((kind) => [jointKindNames[kind], length(quantities.jointM[kind])] as const),
    ['Sealant', `${figure(quantities.sealantLitres, 2)} l`],
  ];
  return (
    <section className="group">
      <h3>
        Quantities <span className="quiet">net, no allowance</span>
      </h3>
      <table className="figures">
        <tbody>
          {rows.map(([name, value]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{value}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
