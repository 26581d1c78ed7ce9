import { lineMiddle } from '../geometry/line.ts';
import { WELD_MM } from '../geometry/tolerance.ts';
import {
  type JointGrout,
  type JointKind,
  type JointLine,
  jointIsFound,
  type Split,
  type TileFieldReport,
} from '../plan/analysis.ts';
import type { FindingFact } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import { ruleSets, rules } from '../plan/reference.ts';
import { tiledFields } from '../plan/tile-grid.ts';
import type { NarrowCuts } from './field-report.ts';

/** What is wrong with tile fields as they were entered, and with how they meet. */
export function fieldsFindings(plan: Plan, split: Split): readonly FindingFact[] {
  const grids = [
    ...plan.tileFields.map((grid) => ({ id: grid.id, grid })),
    ...(plan.tiles ? [{ id: null, grid: plan.tiles }] : []),
  ];
  const facts = grids.flatMap(({ id, grid }): FindingFact[] => {
    const place = { field: id, at: null, refs: id === null ? [] : [id] };
    const { unknownBond: bond, groutMm, lengthMm, widthMm, shiftMm } = grid;
    const offsetMm = Math.min(shiftMm, lengthMm + groutMm - shiftMm);
    const mostMm = rules.offsetMostShare.value * (lengthMm + groutMm);
    const sideMm = Math.min(lengthMm, widthMm);
    const isSquare = Math.abs(lengthMm - widthMm) <= WELD_MM;
    const isLong = Math.max(lengthMm, widthMm) > rules.offsetFromSideMm.value;
    return [
      ...(bond === null ? [] : [{ code: 'tile-bond-unknown' as const, bond, ...place }]),
      ...(groutMm < rules.groutLeastMm.value
        ? [{ code: 'tile-grout-narrow' as const, groutMm, leastMm: rules.groutLeastMm.value, ...place }]
        : []),
      ...(groutMm > sideMm ? [{ code: 'tile-grout-wide' as const, groutMm, sideMm, ...place }] : []),
      ...(grid.bond === 'herringbone' && isSquare
        ? [{ code: 'tile-herringbone-square' as const, sideMm, ...place }]
        : []),
      ...(isLong && offsetMm > mostMm * (1 + OFFSET_SLACK)
        ? [{ code: 'tile-offset-large' as const, offsetMm, mostMm, sideMm: Math.max(lengthMm, widthMm), ...place }]
        : []),
    ];
  });
  return [
    ...facts,
    ...emptyFindings(plan),
    ...perimeterFindings(plan),
    ...coveringFindings(plan),
    ...edgeFindings(plan, split),
  ];
}

/** Fields that name no room lay nothing. */
function emptyFindings({ tileFields }: Plan): readonly FindingFact[] {
  return tileFields.flatMap(({ id, rooms }): FindingFact[] =>
    rooms.length === 0 ? [{ code: 'tile-field-empty', field: id, at: null, refs: [id] }] : [],
  );
}

/** The joint round the tiling is left open over the edge strip, as wide as that. */
function perimeterFindings(plan: Plan): readonly FindingFact[] {
  const { value: leastMm, source } = ruleSets[plan.ruleSet].sealantLeastWidth;
  const stripMm = plan.edgeStrip.thicknessMm;
  if (tiledFields(plan).length === 0 || stripMm >= leastMm) return [];
  return [{ code: 'tile-perimeter-narrow', stripMm, leastMm, source, at: null, refs: [] }];
}

/** A third of a tile is called a third, and 33 % of it is. */
const OFFSET_SLACK = 0.02;

/** Rooms that a field names and whose covering is no tile. */
function coveringFindings({ rooms, tileFields }: Plan): readonly FindingFact[] {
  return tileFields.flatMap((field) =>
    rooms
      .filter(({ id, covering }) => field.rooms.includes(id) && covering !== 'stone-or-ceramic')
      .map(
        ({ id, name, covering, outline }): FindingFact => ({
          code: 'tile-field-covering',
          field: field.id,
          name,
          covering,
          at: outline[0] ?? null,
          refs: [field.id, id],
        }),
      ),
  );
}

/** Fields that meet inside a bay: the tiles end where the screed has no joint. */
function edgeFindings(plan: Plan, { bays }: Split): readonly FindingFact[] {
  const fieldOf = new Map(tiledFields(plan).flatMap(({ id, rooms }) => rooms.map((room) => [room.id, id] as const)));
  const nameOf = new Map(plan.rooms.map(({ id, name }) => [id, name]));
  return bays.flatMap(({ id, rooms, outline }): FindingFact[] => {
    const tiled = rooms.filter((room) => fieldOf.has(room));
    const first = tiled[0];
    const other = tiled.find((room) => first !== undefined && fieldOf.get(room) !== fieldOf.get(first));
    if (first === undefined || other === undefined) return [];
    const names = [nameOf.get(first) ?? first, nameOf.get(other) ?? other] as const;
    return [{ code: 'tile-field-edge', bay: id, names, at: outline[0] ?? null, refs: [id, first, other] }];
  });
}

/** Narrow cuts of a field, told once: slivers as a caution, else cuts under half as a note, at the smallest. */
export function fieldFindings(
  plan: Plan,
  { id }: TileFieldReport,
  narrow: ReadonlyMap<string, NarrowCuts>,
): readonly FindingFact[] {
  const found = plan.rooms.flatMap((room) => {
    const own = narrow.get(room.id);
    return own === undefined ? [] : [{ room, ...own }];
  });
  const slivers = found.filter((each) => each.slivers > 0);
  const told = slivers.length > 0 ? slivers : found;
  const [least] = [...told].sort((a, b) => a.smallestMm - b.smallestMm);
  if (least === undefined) return [];
  const count = told.reduce((sum, each) => sum + (slivers.length > 0 ? each.slivers : each.underHalf), 0);
  const refs = [...(id === null ? [] : [id]), ...told.map(({ room }) => room.id)];
  return [
    {
      code: slivers.length > 0 ? 'tile-slivers' : 'tile-cuts-small',
      names: told.map(({ room }) => room.name),
      count,
      smallestMm: least.smallestMm,
      smallestIn: least.room.name,
      at: least.at,
      refs,
    },
  ];
}

/** What puts these joints where they are has nothing to do with tiles. */
const stands: readonly JointKind[] = ['doorway', 'structural', 'zone'];

/** Joints at which tiles are cut: those that could lie in grout, those that no grout line follows, and those that stand where they are, each told
 *  once. */
export function jointFindings({ joints }: Split, grouts: ReadonlyMap<string, JointGrout>): readonly FindingFact[] {
  const cut = joints.flatMap((joint) => {
    const grout = grouts.get(joint.id);
    return grout !== undefined && grout.tilesAt === 'cut' ? [{ joint, grout }] : [];
  });
  const standing = cut.filter(({ joint }) => stands.includes(joint.kind));
  const others = cut.filter(({ joint }) => !stands.includes(joint.kind));
  const told = (
    code: 'tile-joint-off-grout' | 'tile-joint-across-courses' | 'tile-standing-cut',
    found: readonly { readonly joint: JointLine; readonly grout: JointGrout }[],
  ): FindingFact[] => {
    // The place of one that can be moved, where there is one.
    const lead = found.find(({ joint }) => jointIsFound(joint)) ?? found[0];
    if (lead === undefined) return [];
    const ids = found.map(({ joint }) => joint.id);
    const tiles = found.reduce((sum, { grout }) => sum + grout.cutsTiles, 0);
    const mostMm = Math.max(...found.map(({ grout }) => grout.offGroutMm ?? 0));
    return [{ code, joints: ids, tiles, mostMm, at: lineMiddle(lead.joint.line), refs: ids }];
  };
  return [
    ...told(
      'tile-joint-off-grout',
      others.filter(({ grout }) => grout.bondLets === true),
    ),
    ...told(
      'tile-joint-across-courses',
      others.filter(({ grout }) => grout.bondLets === false),
    ),
    ...told('tile-standing-cut', standing),
  ];
}
