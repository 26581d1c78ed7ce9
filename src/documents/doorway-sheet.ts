import { type JointEntry, noJointEntry } from '../plan/papers.ts';
import { jointIsSealed } from '../takeoff/sealant.ts';
import { type DoorwayJoint, type DoorwayPlace, doorwayPlaces } from './doorway-places.ts';
import { doorwaySketch } from './doorway-sketch.ts';
import type { Form } from './form.ts';
import { groutText } from './grout-words.ts';
import type { Page } from './page.ts';
import type { PaperSource } from './paper-source.ts';
import { registerEntries } from './register-entries.ts';
import { sketchPages } from './sketch-page.ts';
import { type ColumnOf, columnFigure, columnText, plain, type Table, tableOf } from './table.ts';
import { wholeMmText } from './tile-words.ts';
import { heldSpace, jointKindNames, movementText, notSealed, oneLine } from './words.ts';

/** The doorway sheet: where the joint of each doorway runs and what it is made of, as lists and as sketches to scale. */

/** A row is a joint; a doorway without one has a row of its own that says why. */
interface DoorwayRow {
  readonly place: DoorwayPlace;
  readonly at: DoorwayJoint | null;
  readonly entry: JointEntry;
  /** Null: the joint is not closed with sealant. */
  readonly sealantMm: number | null;
}

const title = 'Doorways and their joints';
const orderNote = 'The first face is that of the room that is named first.';
const faceNote =
  'Distances from the faces of the wall as drawn, to the middle of the joint; clear width from jamb to jamb.';

export function doorwaysTable(source: PaperSource): Table {
  return tableOfRows({ name: 'doorways', title, notes: [orderNote, faceNote] }, source, [
    nameColumn,
    columnText('Id', ({ place }) => oneLine(place.doorway.id)),
    ...placeColumns,
    ...madeColumns,
    ...siteColumns,
  ]);
}

/** The same in two lists, so that each has room on paper. */
export function doorwayForm(source: PaperSource): Form {
  const places = { name: 'doorway-places', title: 'Where the joint runs', notes: [orderNote, faceNote] };
  const made = { name: 'doorway-joints', title: 'What the joint is made of', notes: [] };
  return {
    title,
    subject: oneLine(source.plan.name),
    blocks: [
      { kind: 'head', text: places.title },
      { kind: 'table', table: tableOfRows(places, source, [nameColumn, ...placeColumns, ...siteColumns]) },
      { kind: 'head', text: made.title },
      { kind: 'table', table: tableOfRows(made, source, [nameColumn, jointColumn, ...madeColumns]) },
      { kind: 'signatures', parties: ['Screed', 'Tiling', 'Doors'] },
    ],
  };
}

/** Sketches of all doorways, as many to a page as have room, those of a larger scale first. */
export function doorwayPages(source: PaperSource): readonly Page[] {
  const sketches = doorwayPlaces(source).map((place) => {
    const [first = '', ...others] = rowsOf(source, place).map(sketchWords);
    const leaf = place.leaf === 'none' ? 'No leaf' : `Leaf ${leafText(place)}`;
    return doorwaySketch(place, [`${leaf}. ${first}`, ...others]);
  });
  return sketchPages(
    source,
    title,
    [...sketches].sort((a, b) => a.scale - b.scale),
  );
}

function tableOfRows(
  about: Parameters<typeof tableOf>[0],
  source: PaperSource,
  columns: readonly ColumnOf<DoorwayRow>[],
): Table {
  const rows = doorwayPlaces(source).flatMap((place) => rowsOf(source, place));
  return tableOf(about, columns, rows, ({ at, place: { doorway } }) => [
    { kind: 'object', id: doorway.id },
    ...(at === null ? [] : [{ kind: 'joint', id: at.joint.id } as const]),
  ]);
}

function rowsOf(source: PaperSource, place: DoorwayPlace): readonly DoorwayRow[] {
  const { plan, analysis } = source;
  const { joints } = registerEntries(source);
  const bays = new Map(analysis.bays.map((bay) => [bay.id, bay]));
  const rooms = new Map(plan.rooms.map((room) => [room.id, room]));
  const row = (at: DoorwayJoint | null): DoorwayRow => ({
    place,
    at,
    entry: (at && joints.get(at.joint.key)) ?? noJointEntry,
    sealantMm: at !== null && jointIsSealed(at.joint, bays, rooms) ? plan.sealant.widthMm : null,
  });
  return place.joints.length === 0 ? [row(null)] : place.joints.map(row);
}

const nameColumn: ColumnOf<DoorwayRow> = columnText('Doorway', ({ place }) => place.name);

const jointColumn: ColumnOf<DoorwayRow> = columnText('Joint', ({ at }) => at?.joint.id ?? 'none');

const placeColumns: readonly ColumnOf<DoorwayRow>[] = [
  columnText('Leaf', ({ place }) => leafText(place)),
  columnFigure('Clear width', 'mm', 0, ({ place }) => place.clearMm),
  columnFigure('Wall depth', 'mm', 0, ({ place }) => place.depthMm),
  jointColumn,
  columnFigure('To the first face', 'mm', 0, ({ at }) => at?.fromMm[0] ?? null),
  columnFigure('To the second face', 'mm', 0, ({ at }) => at?.fromMm[1] ?? null),
  columnText('Under the leaf', ({ place, at }) => at && underLeafText(place, at)),
];

const madeColumns: readonly ColumnOf<DoorwayRow>[] = [
  columnFigure('Width of the joint', 'mm', 0, ({ at }) => at?.joint.profileMm ?? null),
  columnText('Profile', ({ entry }) => entered(entry.profile)),
  columnText('Sealant', (row) => row.at && sealantText(row)),
  columnText('Grout', ({ at }) => at && (groutText(at.joint) ?? 'no tiles here')),
  columnFigure('Closes', 'mm', 1, ({ at }) => at?.joint.closingMm ?? null),
  columnFigure('Opens', 'mm', 1, ({ at }) => at?.joint.openingMm ?? null),
  columnFigure('Slides', 'mm', 1, ({ at }) => at?.joint.slidingMm ?? null),
  columnText('Remarks', (row) => remarkText(row)),
];

const siteColumns: readonly ColumnOf<DoorwayRow>[] = [
  { ...columnText<DoorwayRow>('Measured on site', () => null), toFill: true },
  { ...columnText<DoorwayRow>('Checked', () => null), toFill: true },
];

function leafText({ leaf, sides: [one, other] }: DoorwayPlace): string {
  switch (leaf) {
    case 'none':
      return 'none';
    case 'middle':
      return 'in the middle of the wall';
    case 'unknown':
      return 'side not known';
    case 'first':
      return `nearer to ${one.name}`;
    case 'second':
      return `nearer to ${other.name}`;
  }
}

function underLeafText({ doorway }: DoorwayPlace, { isUnderLeaf, offLeafMm }: DoorwayJoint): string {
  if (!doorway.leaf) return 'no leaf';
  return isUnderLeaf ? 'yes' : `no, ${plain(wholeMmText(Math.abs(offLeafMm)))} off it`;
}

function sealantText({ at, entry, sealantMm }: DoorwayRow): string {
  if (at?.joint.kind === 'structural') return entered(entry.sealant);
  if (sealantMm === null) return entry.sealant.trim() === '' ? notSealed : oneLine(entry.sealant);
  return [`${sealantMm} mm`, ...(entry.sealant.trim() === '' ? [] : [oneLine(entry.sealant)])].join(', ');
}

function entered(text: string): string {
  return text.trim() === '' ? 'not entered' : oneLine(text);
}

function remarkText({ place: { reason, depthMm, doorway, clearMm, sides }, at }: DoorwayRow): string | null {
  if (at === null) return reason;
  const { joint, isSecond } = at;
  const lengthMm = joint.lengthM * 1000;
  const remarks = [
    ...(isSecond ? ['second joint, at the face of the room: the opening is deep'] : []),
    ...(joint.kind === 'doorway' ? [] : [`${jointKindNames[joint.kind]}: it stands for the doorway`]),
    ...(Math.abs(lengthMm - clearMm) < 1 ? [] : [`joint ${plain(wholeMmText(lengthMm))} long`]),
    ...(Math.abs(depthMm - doorway.wallMm) < 1 ? [] : [`entered depth ${plain(wholeMmText(doorway.wallMm))}`]),
    ...sides.flatMap(({ room, name, leafMm }) =>
      room !== null && leafMm === null ? [`no face found on the side of ${name}: measured on site`] : [],
    ),
  ];
  return remarks.length === 0 ? null : remarks.join('; ');
}

/** What stands under a sketch. */
function sketchWords(row: DoorwayRow): string {
  const { at, place } = row;
  if (at === null) return place.reason ?? '';
  const { joint } = at;
  const grout = groutText(joint);
  const under = underLeafText(place, at);
  const parts = [
    place.doorway.leaf
      ? at.isUnderLeaf
        ? 'under the leaf'
        : under.replace(/^no, /u, '').replace('off it', 'off the leaf')
      : null,
    `${joint.profileMm} mm wide`,
    `sealant ${sealantText(row)}`,
    grout === null ? null : `grout: ${grout}`,
    `closes ${movementText(joint.closingMm)}, slides ${movementText(joint.slidingMm)}`,
    remarkText(row),
  ];
  const text = `${joint.id}: ${parts.filter((part) => part !== null).join('; ')}.`;
  return text.replaceAll(' mm', `${heldSpace}mm`);
}
