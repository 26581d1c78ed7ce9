import type { TileCounts, TileFieldReport } from '../../../plan/analysis.ts';
import type { TilesOf } from '../../../plan/edits/tiles.ts';
import { FiguresTable } from '../../card/FiguresTable.tsx';
import { figure } from '../../parts/format.ts';
import type { Result } from '../../state/analysisStore.ts';
import { boardStore, type CutsLit } from '../../state/boardStore.ts';
import { useBoard } from '../../state/hooks.ts';

const count = (value: number) => figure(value, 0);

/** What the tiles of a field come to: how many are whole and cut, the smallest cut, and what to order. */
export function FieldResults({ report }: { readonly report: TileFieldReport }) {
  const { order, boxes, laid, fromOffCuts } = report;
  return (
    <FiguresTable
      rows={[
        ...countRows(report, report.id),
        { name: 'Cut from off-cuts', value: count(fromOffCuts) },
        { name: 'To order', value: count(order), limit: `${count(laid)} and the allowance`, strong: true },
        ...(boxes === null ? [] : [{ name: 'Boxes', value: count(boxes), strong: true }]),
      ]}
    />
  );
}

/** Where tiles are entered and none are counted. */
export function NoRooms({ result }: { readonly result: Result | null }) {
  if (result === null) return null;
  return <p className="small quiet">None are laid: no room with a stone or ceramic covering has them.</p>;
}

/** The same for all fields together. */
export function AllResults({
  counts,
  reports,
}: {
  readonly counts: TileCounts;
  readonly reports: readonly TileFieldReport[];
}) {
  return (
    <FiguresTable
      rows={[
        ...countRows(counts, undefined),
        { name: 'To order', value: count(reports.reduce((sum, { order }) => sum + order, 0)), strong: true },
      ]}
    />
  );
}

function countRows({ full, cut, underHalf, slivers, smallestCutMm }: TileCounts, of: TilesOf | undefined) {
  return [
    { name: 'Whole', value: count(full) },
    { name: 'Cut', value: count(cut) },
    { name: 'Under half a tile', value: <Lights of={of} cuts="half" value={underHalf} /> },
    { name: 'Slivers', value: <Lights of={of} cuts="sliver" value={slivers} />, limit: 'under a third' },
    { name: 'Smallest cut', value: smallestCutMm === null ? 'none' : `${figure(smallestCutMm, 0)} mm` },
  ];
}

interface LightsProps {
  readonly of: TilesOf | undefined;
  readonly cuts: CutsLit['cuts'];
  readonly value: number;
}

/** A count that lights the stretches of wall that it is about. */
function Lights({ of, cuts, value }: LightsProps) {
  const lit = useBoard(({ cutsLit }) => cutsLit !== null && cutsLit.of === of && cutsLit.cuts === cuts);
  if (value === 0) return count(value);
  return (
    <button
      type="button"
      className="button bare lights"
      aria-pressed={lit}
      title={lit ? 'Put the light out' : 'Show where'}
      onClick={() => boardStore.setState({ cutsLit: lit ? null : { of, cuts } })}
    >
      <span className="unseen">Show where: </span>
      {count(value)}
    </button>
  );
}
