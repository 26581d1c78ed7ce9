import { regionDeepestPoint } from '../geometry/deepest-point.ts';
import type { Point } from '../geometry/point.ts';
import { type Box, boxOf, type Ring } from '../geometry/ring.ts';
import type { Analysis, Severity } from '../plan/analysis.ts';
import { type Joinery, type Plan, roomIsBare } from '../plan/plan.ts';
import { circle } from './circle.ts';
import type { Drawing, DrawingItem, DrawingLayer, FillItem, LineItem, MarkItem } from './drawing.ts';
import { drawingLayers } from './drawing.ts';
import { bayLabels, jointLabels, objectLabel } from './drawing-labels.ts';
import { runEnds } from './run-ends.ts';
import { type FillStyleName, tintCount } from './styles.ts';
import { setOutMarks, tileItems } from './tile-items.ts';
import { bayTints } from './tint.ts';
import { type DecimalMark, namesOf } from './words.ts';

export interface DrawingOptions {
  readonly decimalMark?: DecimalMark;
}

/** The drawing of a plan with its bays, joints and findings.
 *
 *  Rooms that no bay covers are drawn by their outline alone, so that no floor goes missing from the sheet without a
 *  trace; what was drawn by hand shows even where no joint came of it. */
export function drawingOf(plan: Plan, analysis: Analysis, { decimalMark = '.' }: DrawingOptions = {}): Drawing {
  const names = namesOf(plan, analysis);
  const items: DrawingItem[] = [
    ...bayItems(analysis),
    ...roomItems(plan, analysis),
    ...areaItems(plan, decimalMark),
    ...tileItems(plan, analysis),
    ...bareItems(plan, analysis),
    ...objectItems(plan),
    ...handItems(plan),
    ...analysis.edges.map((edge) =>
      line('edges', edge.along === 'wall' ? 'edge-wall' : 'edge-object', edge.line, { kind: 'edge', id: edge.id }),
    ),
    ...jointItems(analysis),
    ...analysis.bays.map(({ id, stillPoint, widthM }) => ({
      ...mark('marks', 'still-point', stillPoint, { kind: 'bay', id }),
      clearMm: widthM * 1000,
    })),
    ...bayLabels(analysis, names, decimalMark),
    ...jointLabels(analysis, names, decimalMark),
    ...findingItems(analysis),
  ].filter(isWhole);
  const box = itemsBox(items);
  items.push(...setOutMarks(analysis, box));
  return { items: itemsInOrder(items), box };
}

/** Items in painting order, those of a layer as they came. */
export function itemsInOrder(items: readonly DrawingItem[]): DrawingItem[] {
  const rank = new Map(drawingLayers.map((layer, i) => [layer, i]));
  return [...items].sort((a, b) => (rank.get(a.layer) ?? 0) - (rank.get(b.layer) ?? 0));
}

function bayItems(analysis: Analysis): DrawingItem[] {
  const tints = bayTints(analysis, tintCount);
  return analysis.bays.map(({ id, outline, holes }) =>
    fill('bays', `bay-${tints.get(id) ?? 0}` as FillStyleName, outline, { kind: 'bay', id }, holes),
  );
}

/** The joints of a run are one line: only its ends get the mark of the kind. */
function jointItems(analysis: Analysis): DrawingItem[] {
  const ends = runEnds(analysis.joints);
  return analysis.joints.map(({ id, kind, line: points }) => {
    const [first, last] = [ends.has(points[0]), ends.has(points[points.length - 1])];
    const bareEnds = first ? (last ? undefined : 'last') : last ? 'first' : 'both';
    return { ...line('joints', `joint-${kind}`, points, { kind: 'joint', id }), ...(bareEnds && { bareEnds }) };
  });
}

function roomItems(plan: Plan, analysis: Analysis): DrawingItem[] {
  const covered = new Set(analysis.bays.flatMap((bay) => bay.rooms));
  return plan.rooms
    .filter((room) => !covered.has(room.id))
    .flatMap((room) =>
      [room.outline, ...room.holes].map((ring) =>
        line('areas', 'room-outline', closed(ring), { kind: 'room', id: room.id }),
      ),
    );
}

function areaItems(plan: Plan, decimalMark: DecimalMark): DrawingItem[] {
  return [
    ...plan.sunZones.flatMap(({ id, outline, highestC }) => [
      fill('areas', 'sun', outline, { kind: 'object', id }),
      objectLabel(id, outline, [`Sun, up to ${String(highestC).replace('.', decimalMark)} \u00b0C`, 'Sun']),
    ]),
    ...plan.keepClear.flatMap(({ id, outline }) => [
      fill('areas', 'keep-clear', outline, { kind: 'object', id }),
      objectLabel(id, outline, ['Keep clear of joints', 'Keep clear']),
    ]),
  ];
}

/** Floor of rooms without insulation: bay by bay, so that the bays can still be chosen there; by room where a bay lies partly on insulation. */
function bareItems(plan: Plan, analysis: Analysis): DrawingItem[] {
  const bare = plan.rooms.filter(roomIsBare);
  if (bare.length === 0) return [];
  const ids = new Set(bare.map(({ id }) => id));
  const insulated = analysis.bays.filter(({ rooms }) => rooms.some((id) => !ids.has(id)));
  const partly = new Set(insulated.flatMap(({ rooms }) => rooms));
  const wholly = analysis.bays.filter(({ rooms }) => rooms.every((id) => ids.has(id) && !partly.has(id)));
  return [
    ...wholly.map(({ id, outline, holes }) => fill('areas', 'held', outline, { kind: 'bay', id }, holes)),
    ...bare
      .filter(({ id }) => partly.has(id))
      .map(({ id, outline, holes }) => fill('areas', 'held', outline, { kind: 'room', id }, holes)),
  ];
}

function objectItems(plan: Plan): DrawingItem[] {
  return [
    ...plan.joinery.flatMap(joineryItems),
    ...plan.slabContacts.flatMap(({ id, outline }) => [
      fill('objects', 'held', outline, { kind: 'object', id }),
      objectLabel(id, outline, ['Held to the slab', 'Held']),
    ]),
    ...plan.columns.map(({ id, outline }) => fill('objects', 'column', outline, { kind: 'object', id })),
    ...plan.pipes.map(({ id, centre, diameterMm }) =>
      fill('objects', 'pipe', circle(centre, diameterMm / 2), { kind: 'object', id }),
    ),
    ...plan.doorways
      .filter(({ leaf }) => leaf)
      .map((doorway) => line('objects', 'leaf', doorway.line, { kind: 'object', id: doorway.id })),
  ];
}

function joineryItems({ id, name, outline, under, fixedThrough }: Joinery): DrawingItem[] {
  const ref = { kind: 'object', id } as const;
  const style = under === 'built-off-slab' ? 'joinery-built-off' : 'joinery-insulated';
  const items: DrawingItem[] = [fill('objects', style, outline, ref)];
  if (under === 'no-insulation') items.push(fill('objects', 'held', outline, ref));
  if (fixedThrough) items.push(mark('objects', 'fixed-through', regionDeepestPoint({ outline, holes: [] }).point, ref));
  if (name.trim() !== '') items.push(objectLabel(id, outline, [name]));
  return items;
}

/** Lines that a hand has drawn, beneath the joints that came of them. */
function handItems(plan: Plan): DrawingItem[] {
  return [
    ...plan.structuralJoints.map((joint) =>
      line('areas', 'structural-course', joint.line, { kind: 'object', id: joint.id }),
    ),
    ...plan.drawnJoints.map((joint) => line('areas', 'drawn-course', joint.line, { kind: 'object', id: joint.id })),
    ...plan.noJoint.map((place) => line('areas', 'no-joint', place.line, { kind: 'object', id: place.id })),
  ];
}

const severityRank: Readonly<Record<Severity, number>> = { note: 0, caution: 1, fault: 2 };

/** Pins carry the number of the finding in the list; the worst are drawn last and so lie on top. */
function findingItems(analysis: Analysis): DrawingItem[] {
  return analysis.findings
    .map((finding, i) => ({ finding, i }))
    .sort((a, b) => severityRank[a.finding.severity] - severityRank[b.finding.severity] || a.i - b.i)
    .flatMap(({ finding: { at, severity }, i }) =>
      at === null
        ? []
        : [{ ...mark('findings', `pin-${severity}`, at, { kind: 'finding', id: String(i) }), text: String(i + 1) }],
    );
}

function fill(
  layer: DrawingLayer,
  style: FillStyleName,
  outline: Ring,
  ref: FillItem['ref'],
  holes: readonly Ring[] = [],
): FillItem {
  return { shape: 'fill', layer, style, outline, holes, ref };
}

function line(layer: DrawingLayer, style: LineItem['style'], points: readonly Point[], ref: LineItem['ref']): LineItem {
  return { shape: 'line', layer, style, points, ref };
}

function mark(layer: DrawingLayer, style: MarkItem['style'], at: Point, ref: MarkItem['ref']): MarkItem {
  return { shape: 'mark', layer, style, at, text: null, ref };
}

function closed(ring: Ring): readonly Point[] {
  return [...ring, ...ring.slice(0, 1)];
}

/** A line needs two points and a region three to be drawn at all. */
function isWhole(item: DrawingItem): boolean {
  if (item.shape === 'line') return item.points.length >= 2;
  return item.shape !== 'fill' || item.outline.length >= 3;
}

function itemsBox(items: readonly DrawingItem[]): Box | null {
  const box = boxOf(
    items.flatMap((item) => {
      if (item.shape === 'fill') return item.outline;
      if (item.shape === 'line') return item.points;
      return item.shape === 'mark' ? [item.at] : [];
    }),
  );
  return box.minX <= box.maxX ? box : null;
}
