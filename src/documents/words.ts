import type { Analysis, Bay, Finding, Joint, JointKind, Severity } from '../plan/analysis.ts';
import type { PaperStatus, Papers } from '../plan/papers.ts';
import type { Plan } from '../plan/plan.ts';

/** Figures and names as all documents print them. */

export type DecimalMark = '.' | ',';

export const jointKindNames: Readonly<Record<JointKind, string>> = {
  doorway: 'Doorway joint',
  neck: 'Joint across a neck',
  field: 'Intermediate movement joint',
  structural: 'Structural joint carried through',
  zone: 'Joint between heating zones',
  drawn: 'Joint drawn by hand',
};

export const severityNames: Readonly<Record<Severity, readonly [one: string, several: string]>> = {
  fault: ['fault', 'faults'],
  caution: ['caution', 'cautions'],
  note: ['note', 'notes'],
};

const whoComesFirst =
  'Local codes, the maker\u2019s data sheet, the structural engineer and licensed trades come first.';
const fromPlan = 'Worked out from the plan as drawn.';
export const notChecked = 'Not checked for construction';

/** What every paper says: it goes first and nothing in the figures replaces it. */
export const cautionLines: readonly string[] = [whoComesFirst, `${fromPlan} ${notChecked}.`];

/** The same on papers that somebody answers for and that are there to build from. */
export function cautionsOf(
  papers: Pick<Papers, 'designer' | 'status'>,
  analysis: Pick<Analysis, 'findings'>,
): readonly string[] {
  const { designer, status } = papers;
  if (designer === '' || status !== 'for-construction') return cautionLines;
  const faults = faultsOpen(papers, analysis);
  return [whoComesFirst, faults === null ? fromPlan : `${fromPlan} ${faults}.`];
}

/** What papers say that are there to build from while the floor has faults; null where they are not, or it has none.
 *  Example: "3 faults open: not for construction" */
export function faultsOpen(
  { status }: Pick<Papers, 'status'>,
  { findings }: Pick<Analysis, 'findings'>,
): string | null {
  const count = findings.filter(({ severity }) => severity === 'fault').length;
  return status === 'for-construction' && count > 0 ? `${countText('fault', count)} open: not for construction` : null;
}

export const statusNames: Readonly<Record<PaperStatus, string>> = {
  'for-information': 'For information',
  'for-comment': 'For comment',
  'for-construction': 'For construction',
};

/** A space at which no line breaks. */
export const heldSpace = '\u00a0';
const thousands = /\B(?=(?:\d{3})+$)/g;

/** Fixed decimals, and never a minus before nothing. From ten thousand on the digits stand in groups of three, parted by
 *  a space, which no reader takes for a decimal mark. */
export function figureText(value: number, decimals: number, mark: DecimalMark = '.'): string {
  const text = value.toFixed(decimals);
  const [whole = '', ...rest] = (Number(text) === 0 ? (0).toFixed(decimals) : text).split('.');
  return [Math.abs(value) < 1e4 ? whole : whole.replace(thousands, heldSpace), ...rest].join(mark);
}

/** Movement to 0.1 mm. */
export function movementText(mm: number, mark: DecimalMark = '.'): string {
  return `${figureText(mm, 1, mark)} mm`;
}

/** Area to 0.1 m2. */
export function areaText(m2: number, mark: DecimalMark = '.'): string {
  return `${figureText(m2, 1, mark)} m\u00b2`;
}

const heldWords =
  /\d (?=(?:mm|m|m\u00b2|m\u00b3|kg|K|kN|kPa|N\/mm\u00b2|\u00b0C|%)(?![\p{L}\d]))|\d : (?=\d)|\b(?:EN|ISO|BS) (?=\d)/gu;

/** Words on one line, set so that no break comes between a figure and its unit, in a ratio or in the name of a standard. */
export function textHeld(text: string): string {
  return oneLine(text).replace(heldWords, (found) => found.replaceAll(' ', heldSpace));
}

/** What a finding says. */
export function findingText({ message }: Pick<Finding, 'message'>): string {
  return textHeld(message);
}

export function countText(severity: Severity, count: number): string {
  return `${count} ${severityNames[severity][count === 1 ? 0 : 1]}`;
}

/** Names of the plan's rooms and the analysis' bays, looked up by id. */
export interface Names {
  /** How many rooms there are: the name of an only one tells nothing apart. */
  readonly rooms: number;
  /** Its name, with the id behind it where several rooms have that name. */
  room(id: string): string;
  bay(bay: Bay): string;
  /** By room and room, such as "Hall - Kitchen"; by the one room where both bays lie in it. */
  joint(joint: Joint): string;
  /** Whether it lies between rooms of different names, which the drawing then says beside it. */
  jointAcross(joint: Joint): boolean;
  /** What a finding is about: a room or a unit by its name, with the id behind it where several have that name; a bay or a joint by its
   *  number and its rooms, such as "J3 Hall \u2013 Kitchen"; anything else by its id. */
  ref(id: string): string;
}

export function namesOf(plan: Plan, analysis: Analysis): Names {
  const rooms = new Map(plan.rooms.map((room) => [room.id, oneLine(room.name)]));
  const bays = new Map(analysis.bays.map((bay) => [bay.id, bay]));
  const joints = new Map(analysis.joints.map((joint) => [joint.id, joint]));
  const things = new Map([...rooms, ...plan.joinery.map(({ id, name }) => [id, oneLine(name)] as const)]);
  const uses = countsOf([...things.values()]);
  const roomUses = countsOf([...rooms.values()]);
  const room = (id: string) => {
    const name = rooms.get(id);
    return name === undefined || roomUses.get(name) === 1 ? (name ?? id) : `${textBefore(name)} (${oneLine(id)})`;
  };
  const bay = ({ rooms: ids }: Bay) =>
    ids.length > 2 ? `${room(ids[0] ?? '')} + ${ids.length - 1} more` : ids.map(room).join(' + ');
  const sidesOf = ({ bays: ids }: Joint) =>
    ids.map((id) => bays.get(id)).map((side, i) => (side === undefined ? (ids[i] as string) : bay(side)));
  const jointName = (of: Joint) => {
    const sides = sidesOf(of);
    return sides[0] === sides[1] ? (sides[0] as string) : sides.join(' \u2013 ');
  };
  return {
    rooms: plan.rooms.length,
    room,
    bay,
    joint: jointName,
    jointAcross(joint) {
      const [one, other] = sidesOf(joint);
      return one !== other;
    },
    ref(id) {
      const thing = things.get(id);
      if (thing !== undefined) return uses.get(thing) === 1 ? thing : `${thing} (${id})`;
      const [one, joint] = [bays.get(id), joints.get(id)];
      if (plan.rooms.length === 1) return id;
      return [id, one && bay(one), joint && jointName(joint)].filter((part) => part !== undefined).join(' ');
    },
  };
}

/** How often each text comes. */
export function countsOf(texts: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  return counts;
}

/** Line ends, tabs and other control characters would break a line of a table or a label in two; signs that force a direction of
 *  writing would turn what follows them round. */
export function oneLine(text: string): string {
  return text
    .replace(/[\u202a-\u202e\u2066-\u2069]/gu, '')
    .replace(/[\p{Cc}\u2028\u2029]+/gu, ' ')
    .trim();
}

/** What stands in place of a sealant where a joint takes none: sealant is counted where it comes up through stone or ceramic. */
export const notSealed = 'none: no stone or ceramic beside it';

/** A letter that is written to the left. */
export const rightToLeft = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/u;

/** Text that figures follow: behind letters written from right to left they would be read as a part of it and stand before it. */
export function textBefore(text: string): string {
  return rightToLeft.test(text) ? `${text}\u200e` : text;
}
