import { figureExceeds } from '../movement/figure.ts';
import type { Bay, Joint } from '../plan/analysis.ts';
import { overText } from '../plan/figure-words.ts';
import { type JointEntry, type JointLock, noJointEntry, orderingOf, setOutTolerance } from '../plan/papers.ts';
import { type Room, roomIsBare } from '../plan/plan.ts';
import { rules } from '../plan/reference.ts';
import { jointIsSealed, sealantDepth } from '../takeoff/sealant.ts';
import { jointSleeves, type Sleeves } from '../takeoff/sleeves.ts';
import { doorwayNames, reasonNamed } from './doorway-places.ts';
import type { PaperSource } from './paper-source.ts';
import { type GoneEntry, registerEntries } from './register-entries.ts';
import { jointPlaces } from './set-out-joint-text.ts';
import { type JointSetting, jointSettings } from './setting-out.ts';
import { floorFrame } from './setting-out-frame.ts';
import { type ColumnOf, columnFigure, columnText, plain, type Table, tableOf } from './table.ts';
import { figureText, jointKindNames, namesOf, notSealed, oneLine } from './words.ts';

/** The joint register: one row a joint, with all that is decided of it, for those who order, set out, build and check it. */

interface Row {
  readonly joint: Joint;
  readonly entry: JointEntry;
  /** Null: it is entered for this joint. */
  readonly followed: string | null;
  readonly bays: readonly Bay[];
  readonly rooms: readonly Room[];
  readonly sleeves: Sleeves;
}

export function registerTable(source: PaperSource): Table {
  const { file, plan, analysis } = source;
  const ordering = orderingOf(file);
  const rooms = new Map(plan.rooms.map((room) => [room.id, room]));
  const bays = new Map(analysis.bays.map((bay) => [bay.id, bay]));
  const entries = registerEntries(source);
  const rows = analysis.joints.map((joint): Row => {
    const beside = joint.bays.flatMap((id) => bays.get(id) ?? []);
    const over = beside.flatMap((bay) => bay.rooms).flatMap((id) => rooms.get(id) ?? []);
    return {
      joint,
      entry: entries.joints.get(joint.key) ?? noJointEntry,
      followed: entries.followed.get(joint.key)?.words ?? null,
      bays: beside,
      rooms: over,
      sleeves: jointSleeves(joint, { bays, rooms, papers: entries, ordering }),
    };
  });
  const columns = [...whatColumns(source), ...placeColumns(source), ...detailColumns, ...handColumns];
  const about = { name: 'joint-register', title: 'Joint register', notes: registerNotes(source, rows) };
  const table = tableOf(about, columns, rows, ({ joint: { id } }) => [{ kind: 'joint', id }]);
  const gone = entries.gone.map((each) => goneRow(table, each));
  return { ...table, rows: [...table.rows, ...gone], refs: [...(table.refs ?? []), ...gone.map(() => [])] };
}

/** What was entered for joints that are not there. Example: "a joint of Hall near 1, 6 m: profile angle, pipes 3." */
export function registerGone(source: PaperSource): readonly string[] {
  return registerEntries(source).gone.map(goneText);
}

function goneText({ words, entry }: GoneEntry): string {
  return `${words}${entryText(entry)}`;
}

/** A file of rows alone has no notes: what was entered for a joint that has gone stands in a row too. */
function goneRow({ columns }: Table, gone: GoneEntry): Table['rows'][number] {
  const cells = new Map([
    ['Joint', 'gone'],
    ['Kind', 'no such joint now'],
    ['Why', `Entered for ${goneText(gone)}`],
  ]);
  return columns.map(({ head }) => cells.get(head) ?? null);
}

/** What the joint is and what it takes. */
function whatColumns(source: PaperSource): readonly ColumnOf<Row>[] {
  const { plan, analysis } = source;
  const names = namesOf(plan, analysis);
  const doorways = doorwayNames(source);
  return [
    columnText('Joint', ({ joint }) => joint.id),
    columnText('Kind', ({ joint }) => jointKindNames[joint.kind]),
    columnText('Between', ({ joint }) => names.joint(joint)),
    columnFigure('Length', 'm', 2, ({ joint }) => joint.lengthM),
    columnFigure('Width', 'mm', 0, ({ joint }) => joint.profileMm),
    columnText('Profile', ({ joint, entry }) => profileText(joint, entry)),
    columnText('Sealant', (row) => sealantText(row, plan.sealant)),
    columnFigure('Closing', 'mm', 1, ({ joint }) => joint.closingMm),
    columnFigure('Opening', 'mm', 1, ({ joint }) => joint.openingMm),
    columnFigure('Sliding along the joint', 'mm', 1, ({ joint }) => joint.slidingMm),
    columnText('Why', ({ joint, followed }) =>
      [
        ...joint.reasons.map((reason) => oneLine(reasonNamed(reason, doorways))),
        ...(followed === null ? [] : [`what stands here was ${followed}`]),
      ].join('; '),
    ),
  ];
}

/** Example: "Base point 1, x along the line from 1 to 2, y square to it to the right, seen from 1" */
function fromText(setting: JointSetting | undefined): string {
  const frame = setting?.frame ?? null;
  return frame === null ? '' : `${frame.fromInFull}, ${frame.ways}`;
}

/** Where it is and how deep it goes. */
function placeColumns(source: PaperSource): readonly ColumnOf<Row>[] {
  const { plan, analysis } = source;
  const places = jointPlaces(plan, analysis);
  const settings = new Map(jointSettings(source).map((setting) => [setting.joint.id, setting]));
  return [
    columnText('Position from walls, square to the joint at its middle', ({ joint }) => positionText(joint, places)),
    // without such a frame each room has its own: the list of setting out tells it
    ...(floorFrame(source) === null
      ? []
      : [
          { ...columnText<Row>('Ends as set out: x, y', ({ joint }) => endsText(settings.get(joint.id))), unit: 'mm' },
          {
            ...columnText<Row>('Set out from', ({ joint }) => fromText(settings.get(joint.id))),
            unprinted: true,
          } as const,
        ]),
    columnFigure('Full depth', 'mm', 0, () => plan.screed.thicknessMm),
    columnText('Down to', downText),
  ];
}

/** What is decided of it on paper. */
const detailColumns: readonly ColumnOf<Row>[] = [
  columnText('Key or dowel against lipping', ({ entry: { lock } }) => (lock === null ? null : lockNames[lock])),
  columnFigure('Openings for sleeves', null, 0, ({ sleeves }) => sleeves.count),
  columnText('Openings are', sleevesText),
  columnText('Fixing', ({ entry }) => oneLine(entry.fixing)),
  columnText('Colour', ({ entry }) => oneLine(entry.colour)),
  columnText('Who decides', ({ entry }) => oneLine(entry.decidedBy)),
  columnText('Who supplies', ({ entry }) => oneLine(entry.suppliedBy)),
  columnText('Photo', ({ entry }) => oneLine(entry.photo)),
];

const handColumns: readonly ColumnOf<Row>[] = ['Installed', 'Checked', 'Date'].map((head) => ({
  ...columnText<Row>(head, () => null),
  toFill: true,
}));

const lockNames: Readonly<Record<JointLock, string>> = { none: 'none', dowels: 'dowels', key: 'key' };

function profileText({ kind }: Joint, { profile }: JointEntry): string {
  const entered = oneLine(profile);
  return kind === 'structural' && entered === '' ? 'for movement in three directions' : entered;
}

/** Example: "8 × 6 mm, class 25; grey" where grey was entered. */
function sealantText(
  { joint, entry, bays, rooms }: Row,
  { widthMm, capability }: PaperSource['plan']['sealant'],
): string {
  const entered = oneLine(entry.sealant);
  if (joint.kind === 'structural') return entered === '' ? 'none' : `none; entered all the same: ${entered}`;
  const isSealed = jointIsSealed(
    joint,
    new Map(bays.map((bay) => [bay.id, bay])),
    new Map(rooms.map((room) => [room.id, room])),
  );
  if (!isSealed) return entered === '' ? notSealed : entered;
  const [width, depth] = [widthMm, sealantDepth(widthMm)].map((mm) => figureText(mm, Number.isInteger(mm) ? 0 : 1));
  const movement = capability * 100;
  const parts = [
    `${width} \u00d7 ${depth} mm, class ${figureText(movement, Number.isInteger(movement) ? 0 : 1)}`,
    figureExceeds(joint.sealantNeedsMm, widthMm)
      ? `too narrow: needs ${overText(joint.sealantNeedsMm, widthMm, 1)} mm`
      : '',
    entered,
  ];
  return plain(parts.filter((part) => part !== '').join('; '));
}

function positionText({ id, kind }: Joint, places: ReadonlyMap<string, string>): string {
  const parts = [
    plain(places.get(id) ?? ''),
    kind === 'structural' ? 'over the joint of the building, never shifted' : '',
  ];
  return parts.filter((part) => part !== '').join('; ');
}

/** Example: "2400, -300 to 2400, 4300" */
function endsText(setting: JointSetting | undefined): string {
  const [first, last] = [setting?.points[0], setting?.points.at(-1)];
  return [first, last].flatMap((end) => (end === undefined ? [] : [end.join(', ')])).join(' to ');
}

function downText({ joint: { kind }, rooms }: Row): string {
  if (kind === 'structural') return 'through all layers, edge strip cut too';
  const bare = rooms.filter(roomIsBare).length;
  if (bare === 0) return 'the insulation';
  return bare === rooms.length ? 'the slab' : 'the insulation, and the slab where it is bare';
}

function sleevesText({ joint, sleeves: { count, assumed } }: Row): string {
  if (joint.kind === 'structural') return 'by the engineer\u2019s detail only';
  if (!assumed) return 'entered';
  return count === 0 ? 'none: not heated on both sides' : 'assumed';
}

function registerNotes(source: PaperSource, rows: readonly Row[]): string[] {
  const frame = floorFrame(source);
  return [
    `Each joint goes the full depth of the screed, straight, and the covering has its own right over it. Set out within ${figureText(setOutTolerance.value, 0)} mm.`,
    'Movement as each bay warms about its point of no movement. Sealant: width \u00d7 depth; its class is the movement that it takes, in % of its width.',
    ...(rows.every(({ sleeves }) => sleeves.count === 0)
      ? []
      : [
          `Each pipe that crosses has a sleeve of at least ${figureText(rules.sleeveMm.value, 0)} mm, centred. Openings that are assumed: count the pipes on the heating plan. Supply and return of a circuit only may cross.`,
        ]),
    'An empty cell is still to be decided. A key or dowels keep both sides level and let them move along.',
    ...(rows.some(({ joint }) => joint.kind === 'structural')
      ? [
          'A structural joint is carried up through all layers in its place, never narrower: no sealant, no shifting to a grout line; pipes cross only by the engineer\u2019s detail.',
        ]
      : []),
    ...(frame === null ? [] : [`Ends as set out: from ${frame.fromInFull}, ${frame.ways}.`]),
    ...registerGone(source).map((text) => `Entered for a joint that is no longer there: ${text}`),
    ...followedNotes(source),
  ];
}

/** Example: "What stands for J15 was entered for a joint about half a metre away." */
function followedNotes(source: PaperSource): readonly string[] {
  const { followed } = registerEntries(source);
  return source.analysis.joints.flatMap(({ id, key }) => {
    const words = followed.get(key)?.words;
    return words === undefined ? [] : [`What stands for ${id} was ${words}.`];
  });
}

/** All that was entered, so that none of it is lost. Example: ": profile angle of 10 mm, pipes 3" */
function entryText({
  profile,
  sealant,
  colour,
  fixing,
  lock,
  pipes,
  decidedBy,
  suppliedBy,
  photo,
}: JointEntry): string {
  const parts = [
    ['profile', profile],
    ['sealant', sealant],
    ['colour', colour],
    ['fixing', fixing],
    ['against lipping', lock === null ? '' : lockNames[lock]],
    ['pipes', pipes === null ? '' : String(pipes)],
    ['decided by', decidedBy],
    ['supplied by', suppliedBy],
    ['photo', photo],
  ] as const;
  const told = parts.filter(([, value]) => value !== '').map(([what, value]) => `${what} ${oneLine(value)}`);
  return told.length === 0 ? '.' : `: ${told.join(', ')}.`;
}
