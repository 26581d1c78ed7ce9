import type { Edge, EdgeAlong } from '../plan/analysis.ts';
import { roundedText } from '../plan/figure-words.ts';
import type { Room } from '../plan/plan.ts';
import type { TakeOffPart } from '../plan/take-off.ts';
import { byRoomFigure, edgeRefs, type OrderFloor } from './order-floor.ts';
import { figureWords, type OrderDraft, orderOfCount, shareWords } from './order-line.ts';
import { stripCut } from './strip-cut.ts';
import { type StripRun, stripRuns } from './strip-runs.ts';

const alongNames: readonly (readonly [EdgeAlong, string])[] = [
  ['wall', 'walls'],
  ['column', 'columns'],
  ['pipe', 'pipes'],
  ['joinery', 'joinery'],
];

/** Edge strip, a line for each height. */
export function stripDrafts(of: OrderFloor): readonly OrderDraft[] {
  const { plan, analysis, ordering, rooms } = of;
  const heightOf = ({ buildUp }: Room) =>
    buildUp &&
    buildUp.insulationMm + plan.screed.thicknessMm + buildUp.adhesiveMm + buildUp.coveringMm + ordering.stripTrimMm;
  return byRoomFigure(analysis.edges, rooms, heightOf).map(({ figure, things }) => stripDraft(of, figure, things));
}

function stripDraft(
  { plan, analysis, ordering }: OrderFloor,
  heightMm: number | null,
  edges: readonly Edge[],
): OrderDraft {
  const { stripRollM, stripOverlapMm, stripTrimMm, stripAllowance } = ordering;
  const byRoom = new Map<string, Edge[]>();
  for (const edge of edges) byRoom.set(edge.room, [...(byRoom.get(edge.room) ?? []), edge]);
  const buildingJoints = analysis.joints.filter(({ kind }) => kind === 'structural');
  const rooms = [...byRoom].map(([room, own]) => ({ room, runs: stripRuns(own, buildingJoints, stripOverlapMm) }));
  const cutting = stripOrder(rooms, ordering);
  const net = edges.reduce((sum, { lengthM }) => sum + lengthM, 0);
  return {
    key: `edge-strip:${heightMm === null ? 'unknown' : roundedText(heightMm, 1)}`,
    group: 'edge-strip',
    item: 'Edge strip',
    spec: `${heightMm === null ? 'height not known: build-up not entered' : `${roundedText(heightMm, 1)} mm high`}, ${roundedText(plan.edgeStrip.thicknessMm, 1)} mm thick`,
    unit: 'm',
    net,
    parts: edgeParts(edges),
    allowance: `overlap of ${figureWords(stripOverlapMm, 'mm')} at every splice and where a run closes, none in a corner; ${shareWords(stripAllowance, 'cut to waste')}`,
    gross: (net + cutting.overlapM) * (1 + stripAllowance),
    order: orderOfCount(cutting.rolls, 'rolls', figureWords(stripRollM, 'm'), cutting.rooms),
    paid: { key: 'stripRoll', per: 'roll', amount: cutting.rolls },
    cells: edges.map(({ bay, room, lengthM }) => ({ bay, room, amount: lengthM })),
    refs: edgeRefs(edges),
    notes: [
      ...(heightMm === null
        ? []
        : [
            `Height: insulation, screed, adhesive, covering and ${figureWords(stripTrimMm, 'mm')} that is trimmed off after the covering is grouted.`,
          ]),
      ...cutting.notes,
    ],
    sources: ['strip-overlap', 'order-practice'],
  };
}

/** What of some edges runs along walls, columns and so on, m. */
export function edgeParts(edges: readonly Edge[]): readonly TakeOffPart[] {
  return alongNames.map(([along, name]) => ({
    name,
    amount: edges.filter((edge) => edge.along === along).reduce((sum, { lengthM }) => sum + lengthM, 0),
  }));
}

interface RoomRuns {
  readonly room: string;
  readonly runs: readonly StripRun[];
}

/** Rolls for each room by itself, off-cuts used on within it. What is cut to waste makes every roll so much shorter. */
function stripOrder(rooms: readonly RoomRuns[], ordering: OrderFloor['ordering']) {
  const { stripRollM, stripOverlapMm: overlapMm, stripAllowance } = ordering;
  const rollMm = (stripRollM * 1000) / (1 + stripAllowance);
  const runs = rooms.flatMap((each) => each.runs);
  const together = stripCut(runs, { rollMm, overlapMm });
  const cuttings = rooms.map(({ room, runs: own }) => ({ room, cutting: stripCut(own, { rollMm, overlapMm }) }));
  const known = cuttings.flatMap(({ room, cutting }) => (cutting === null ? [] : [{ room, cutting }]));
  if (together === null || known.length < cuttings.length) {
    return { rolls: null, rooms: [], overlapM: 0, notes: ['Rolls of this length cannot be laid with this overlap.'] };
  }
  const rolls = known.reduce((sum, { cutting }) => sum + cutting.rolls, 0);
  const nearCorners = known.reduce((sum, { cutting }) => sum + cutting.nearCorners, 0);
  const laidMm = known
    .flatMap(({ cutting }) => cutting.pieces)
    .reduce((sum, { fromMm, toMm }) => sum + toMm - fromMm, 0);
  const runMm = runs.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  return {
    rolls,
    rooms: known.map(({ room, cutting }) => ({ room, count: cutting.rolls })),
    overlapM: Math.max(0, laidMm - runMm) / 1000,
    notes: [
      ...(together.rolls < rolls
        ? [`Whole rolls for each room; ${together.rolls} in all where off-cuts go on to the next room.`]
        : []),
      ...(nearCorners === 0
        ? []
        : [
            `${nearCorners} of the overlaps ${nearCorners === 1 ? 'lies' : 'lie'} nearer to a corner than ${figureWords(overlapMm, 'mm')}: the sides there are too short.`,
          ]),
    ],
  };
}
