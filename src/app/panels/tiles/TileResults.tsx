import { type TileCounts, type TileFieldReport, tilePieces } from '../../../plan/analysis.ts';
import type { TilesOf } from '../../../plan/edits/tiles.ts';
import { type FigureRow, FiguresTable } from '../../card/FiguresTable.tsx';
import { figure, figureShort } from '../../parts/format.ts';
import type { Result } from '../../state/analysisStore.ts';
import { boardStore, type CutsLit } from '../../state/boardStore.ts';
import { useBoard } from '../../state/hooks.ts';

const count = (value: number) => figure(value, 0);

/** What the tiles of a field come to: a sum from whole tiles to those that are ordered, and the narrow ones among the cut pieces. */
export function FieldResults({ report }: { readonly report: TileFieldReport }) {
  const { boxes, allowance } = report;
  return (
    <FiguresTable
      rows={[
        ...sumRows(report, [report]),
        { ...orderRow([report]), limit: `with ${figureShort(allowance * 100, 1)} %` },
        ...(boxes === null ? [] : [{ name: 'Boxes', value: count(boxes), strong: true }]),
        ...cutRows(report, report.id),
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
  return <FiguresTable rows={[...sumRows(counts, reports), orderRow(reports), ...cutRows(counts, undefined)]} />;
}

/** A column that adds up: whole tiles and cut pieces, less those that are left out and those that take no tile of their own, are the tiles to lay. */
function sumRows({ full, cut, inJoint }: TileCounts, reports: readonly TileFieldReport[]): readonly FigureRow[] {
  const fromOffCuts = sumOf(reports, (report) => report.fromOffCuts);
  return [
    { name: 'Whole tiles', value: count(full) },
    { name: 'Cut pieces', value: count(sumOf(reports, tilePieces)), limit: `where ${tilesText(cut)} cut` },
    ...(inJoint === 0
      ? []
      : [{ name: 'Into the perimeter joint', value: lessText(inJoint), limit: 'no wider than it: left out' }]),
    { name: 'From off-cuts', value: lessText(fromOffCuts), limit: 'of these pieces' },
    { name: 'Tiles to lay', value: count(sumOf(reports, ({ laid }) => laid)), strong: true },
  ];
}

function orderRow(reports: readonly TileFieldReport[]): FigureRow {
  return { name: 'To order', value: count(sumOf(reports, ({ order }) => order)), strong: true };
}

function sumOf(reports: readonly TileFieldReport[], of: (report: TileFieldReport) => number): number {
  return reports.reduce((sum, report) => sum + of(report), 0);
}

function lessText(pieces: number): string {
  return pieces === 0 ? count(0) : `−${count(pieces)}`;
}

function tilesText(tiles: number): string {
  return tiles === 1 ? '1 tile is' : `${count(tiles)} tiles are`;
}

/** Of the cut pieces that are laid, those that are narrow. */
function cutRows({ sawn }: TileCounts, of: TilesOf | undefined): readonly FigureRow[] {
  const { underHalf, slivers, smallestCutMm } = sawn;
  return [
    { name: 'Pieces under half a tile', value: <Lights of={of} cuts="half" value={underHalf} /> },
    { name: 'Slivers', value: <Lights of={of} cuts="sliver" value={slivers} />, limit: 'pieces under a third' },
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
