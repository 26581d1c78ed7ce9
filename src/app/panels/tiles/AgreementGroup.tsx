import { useStore } from 'zustand';
import type { Agreement, AgreementWay } from '../../../analysis/agreement.ts';
import { agreementUsed } from '../../../plan/edits/tiles.ts';
import { rules } from '../../../plan/reference.ts';
import { focusHeir } from '../../parts/focus.ts';
import { differenceText, figure, figureShort } from '../../parts/format.ts';
import { SourceButton, SourceText, useSource } from '../../parts/SourceNote.tsx';
import { agreementAsk, agreementStore } from '../../state/agreementRun.ts';
import { usePlan } from '../../state/hooks.ts';
import { commit } from '../../state/planStore.ts';

const compareHeir = focusHeir('#agree .button');

/** The ways to bring joints and grout lines together, each with its price against the present, to be taken as one step. */
export function AgreementGroup() {
  const { file, number } = usePlan((state) => state.history.present);
  const last = useStore(agreementStore, (state) => state.found);
  const found = last?.sheet === number ? last : null;
  const isBusy = useStore(agreementStore, ({ run }) => run !== null);
  const halted = useStore(agreementStore, (state) => state.halted);
  const isOld = found !== null && found.file !== file;
  return (
    <section className="group" id="agree">
      <h3>Make them agree</h3>
      {found !== null && found.ways.length > 0 && <Ways ways={found.ways} isOld={isOld} />}
      {isOld && <p className="small tone-caution">The plan has changed since: these are the prices before.</p>}
      {(found === null || isOld) && (
        <div className="deeds">
          <button
            ref={compareHeir}
            type="button"
            className="button framed"
            aria-disabled={isBusy}
            onClick={() => !isBusy && void agreementAsk()}
          >
            {isOld ? 'Compare the ways again' : 'Compare the ways'}
          </button>
        </div>
      )}
      {halted !== null && (
        <p className="small" role="status">
          {halted}
        </p>
      )}
      <Weights />
    </section>
  );
}

/** In two lines. */
const wayWords: Readonly<Record<AgreementWay, readonly [string, string]>> = {
  'as-is': ['As', 'it is'],
  joints: ['Move', 'joints'],
  'set-out': ['Move', 'set-out'],
  both: ['Move', 'both'],
};

/** What is done with a way, as undo tells it. */
const stepWords: Readonly<Record<AgreementWay, string>> = {
  'as-is': 'Leave joints and tiles as they are',
  joints: 'Move the joints to grout lines',
  'set-out': 'Move the set-out to the joints',
  both: 'Move joints and set-out together',
};

interface Row {
  readonly name: string;
  readonly decimals: number;
  readonly of: (way: Agreement) => number | null;
  readonly strong?: true;
}

const rows: readonly Row[] = [
  { name: 'Joints within rooms, m', decimals: 1, of: ({ price }) => price.jointM },
  {
    name: 'Of these in grout, %',
    decimals: 0,
    of: ({ onGroutShare }) => (onGroutShare === null ? null : onGroutShare * 100),
  },
  { name: 'All joints off grout, m', decimals: 1, of: ({ price }) => price.offGroutM },
  { name: 'Cut tiles', decimals: 0, of: ({ price }) => price.cutTiles },
  { name: 'Slivers', decimals: 0, of: ({ price }) => price.slivers },
  { name: 'Price, m', decimals: 1, of: ({ price }) => price.totalM, strong: true },
];

interface WaysProps {
  readonly ways: readonly Agreement[];
  readonly isOld: boolean;
}

/** A way a column: figures that are compared stand beside each other. */
function Ways({ ways, isOld }: WaysProps) {
  const present = ways[0];
  const aim = usePlan((state) => state.history.present.file.layout?.aim);
  if (present === undefined) return null;
  const least = Math.min(...ways.map(({ price }) => price.totalM));
  const changes = ({ setOuts, aim: next, price }: Agreement) =>
    setOuts.length > 0 || (next !== null && next !== aim && price.totalM !== present.price.totalM);
  return (
    <table className={isOld ? 'ways old' : 'ways'} aria-label="Ways to agree">
      <thead>
        <tr>
          <td />
          {ways.map(({ way }) => (
            <th key={way} scope="col">
              {wayWords[way][0]} <span>{wayWords[way][1]}</span>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.name} className={row.strong ? 'strong' : undefined}>
            <th scope="row">{row.name}</th>
            {ways.map((way) => (
              <td key={way.way} className={row.strong && way.price.totalM === least ? 'least' : undefined}>
                <Compared row={row} way={way} present={present} />
              </td>
            ))}
          </tr>
        ))}
        {!isOld && (
          <tr>
            <td />
            {ways.map((way) => (
              <td key={way.way}>
                {changes(way) ? <Use way={way} /> : <span className="quiet">{way === present ? '' : 'no gain'}</span>}
              </td>
            ))}
          </tr>
        )}
      </tbody>
    </table>
  );
}

/** A figure, and by how much it differs from the present. */
function Compared({ row, way, present }: { readonly row: Row; readonly way: Agreement; readonly present: Agreement }) {
  const [value, before] = [row.of(way), row.of(present)];
  if (value === null) return '–';
  // A thousand metres are told to the metre.
  const decimals = Math.max(value, before ?? 0) < 1000 ? row.decimals : 0;
  const change = before === null ? null : differenceText(before, value, decimals);
  return (
    <>
      {figure(value, decimals)}
      {change !== null && <span className="change">{change}</span>}
    </>
  );
}

const useHeir = focusHeir('#agree .button');

function Use({ way }: { readonly way: Agreement }) {
  const words = stepWords[way.way];
  return (
    <button
      ref={useHeir}
      type="button"
      className="button framed"
      aria-label={`Use this: ${words.toLowerCase()}`}
      title={words}
      onClick={() => commit(words, (file) => agreementUsed(file, way))}
    >
      Use
    </button>
  );
}

/** What the price is made of: the weights are for the user to judge. */
function Weights() {
  const note = useSource();
  const { offGroutPrice, cutTilePriceM, sliverPriceM } = rules;
  const m = (value: number) => `${figureShort(value, 3)} m`;
  return (
    <div className="weights">
      <p className="small quiet">
        The price is metres of joint. Joints within rooms: intermediate, across necks and drawn. Those of the building
        and between zones count among all joints off grout only; those in doorways stay under the leaf and do not count.
        A metre off a grout line counts as {m(offGroutPrice.value)} more, a cut tile as {m(cutTilePriceM.value)}, a
        sliver as {m(sliverPriceM.value)}.
      </p>
      <SourceButton of="the price" toggle={note} />
      <div className="source-place" id={note.id} hidden={!note.open}>
        {note.open && <SourceText source={offGroutPrice.source} />}
      </div>
    </div>
  );
}
