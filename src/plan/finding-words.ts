import type { Finding } from './analysis.ts';
import { namesText, naturalOrder, overText, roundedText } from './figure-words.ts';
import type { FindingFact, FindingValues, JointKeeper, LimitsTaken, NarrowCut } from './finding.ts';
import { findingKinds } from './finding-kinds.ts';

/** Puts a finding into words. A fact that names a source of its own (the user's document, the rule set's) keeps it. */
export function findingDescribe(fact: FindingFact): Finding {
  const { severity, source } = findingKinds[fact.code];
  return {
    code: fact.code,
    severity,
    message: findingMessage(fact),
    at: fact.at,
    refs: fact.refs,
    source: fact.source ?? source,
  };
}

const mm = (value: number) => `${roundedText(value, 1)} mm`;
const m2 = (value: number) => `${roundedText(value, value < 0.1 ? 3 : 1)} m\u00b2`;

/** The one place where a finding gets its words: plain trade English with the figure and the limit. */
function findingMessage(f: FindingValues): string {
  switch (f.code) {
    case 'outline-crossing':
      return `The outline of ${f.name} crosses itself.`;
    case 'hole-off-room':
      return f.isWhole
        ? `A hole of ${f.name} lies outside the room; it takes no floor.`
        : `A hole of ${f.name} lies outside the room over ${m2(f.areaM2)}.`;
    case 'rooms-overlap':
      return `${namesText(f.names)} overlap by ${m2(f.areaM2)}.`;
    case 'room-too-thin':
      return `${f.name} has no floor to lay: it is too thin, or another room or what stands in it takes all of it.`;
    case 'room-unreached':
      return `No doorway or open side joins ${f.name} to another room.`;
    case 'doorway-joins-nothing':
      return `Doorway ${f.doorway} meets no room.`;
    case 'doorway-one-room':
      return `Doorway ${f.doorway} meets one room only, ${f.name}.`;
    case 'object-off-floor':
      return `${f.what === 'joinery' ? f.id : `The ${f.what} ${f.id}`} touches no floor: it lies outside the rooms or on ${f.what === 'column' ? 'another column' : 'something that takes their floor'}.`;
    case 'no-joint-stands':
      return `The joint taken away at ${f.id} stands all the same: ${namesText(f.keepers.map(keeperWords))} ${f.keepers.length === 1 ? 'keeps' : 'keep'} it.`;
    case 'drawn-joint-loose':
      return `Drawn joint ${f.id} ends more than ${mm(f.reachMm)} from any edge or joint; it cuts nothing.`;
    case 'joint-idle':
      return `${f.what === 'drawn' ? 'Drawn' : 'Structural'} joint ${f.id} parts no floor: it lies off the floor or along a wall, or the same bay lies on both its sides.`;
    case 'doorway-blocked':
      return f.isOpen
        ? `Doorway ${f.doorway} has no joint: the floor on its two sides is one bay, open beside it, and a joint across the doorway alone would part nothing.`
        : `Doorway ${f.doorway} has no joint: no floor passes through it.`;
    case 'structural-joint-loose':
      return `Structural joint ${f.id} ends inside the floor; it has to be carried through.`;
    case 'layout-too-many-bays':
      return `${namesText(f.names)} would take at least ${roundedText(f.bays, 0)} bays within the limits; up to ${f.most} are laid out. The floor is left whole: look at its size and at the limits.`;
    case 'layout-unfinished':
      return `The layout of ${namesText(f.names)} is not finished, and its necks are not all checked: an outline of ${f.corners} corners takes more search than is spent on one floor. Draw it with fewer corners.`;
    case 'bay-area':
      return `Bay ${f.bay} is ${overText(f.value, f.limit, 1)} m\u00b2; the limit is ${roundedText(f.limit, 2)} m\u00b2.`;
    case 'bay-length':
      return `Bay ${f.bay} is ${overText(f.value, f.limit, 1)} m long; the limit is ${roundedText(f.limit, 2)} m.`;
    case 'bay-aspect':
      return `Bay ${f.bay} is ${overText(f.value, f.limit, 2)} : 1 long to wide; the limit is ${roundedText(f.limit, 2)} : 1.`;
    case 'bay-aspect-allowance':
      return `Bay ${f.bay} is ${overText(f.value, f.limit, 2)} : 1 long to wide, over ${roundedText(f.limit, 2)} : 1; it passes as it is no longer than ${roundedText(f.fromM, 2)} m. EN 1264-4 knows no such allowance.`;
    case 'bay-reentrant':
      return `Bay ${f.bay} has a re-entrant corner ${overText(f.value, f.limit, 0)} mm deep; the limit is ${mm(f.limit)}.`;
    case 'bay-narrow':
      return `Bay ${f.bay} is only ${overText(f.widthMm, f.leastMm, 0)} mm wide: under ${mm(f.leastMm)} a bay is hard to lay and breaks easily. Look at the joints beside it.`;
    case 'bay-core':
      return `Bay ${f.bay} runs round a core of ${overText(f.sideMm, f.limitMm, 0)} mm; over ${mm(f.limitMm)} it needs a joint.`;
    case 'neck-unjointed':
      return `Bay ${f.bay} narrows to ${roundedText(f.widthMm, 0)} mm, ${roundedText(f.widthMm / f.besideMm, 2)} of the ${roundedText(f.besideMm, 0)} mm beside it, with no joint across; a neck needs one at ${roundedText(f.limit, 2)} or less.`;
    case 'column-off-joint':
      return `Column ${f.column} in bay ${f.bay} has a side of ${overText(f.sideMm, f.limitMm, 0)} mm and meets no joint; over ${mm(f.limitMm)} it needs one.`;
    case 'column-one-direction':
      return `Column ${f.column} is met by a joint from one direction only.`;
    case 'column-in-bay':
      return `Column ${f.column} stands inside bay ${f.bay}, where cracks start at its corners; edge strip all round it.`;
    case 'joint-through-joinery':
      return `Joint ${f.joint} runs through ${f.name}.`;
    case 'joint-through-keep-clear':
      return `Joint ${f.joint} runs through the area ${f.area}, which is to be kept clear.`;
    case 'slab-contact':
      return `Bay ${f.bay} is held to the slab ${heldWords(f)} over ${m2(f.areaM2)}; it cannot move with the rest there.`;
    case 'held-twice':
      return `Bay ${f.bay} is held in ${f.names.length === 2 ? 'two' : f.names.length} places, ${namesText(f.names)}: ${overText(f.stressNPerMm2, f.strengthNPerMm2, 1)} N/mm\u00b2 of ${f.stress} against a strength of ${roundedText(f.strengthNPerMm2, 1)} N/mm\u00b2, creep ignored.`;
    case 'profile-overrun':
      return `Joint ${f.joint} closes by ${overText(f.needsMm, f.takesMm, 1)} mm; its profile takes ${mm(f.takesMm)}.`;
    case 'profile-worst-case':
      return `Joint ${f.joint} closes by ${overText(f.needsMm, f.takesMm, 1)} mm where its bays are stopped at their far sides; its profile takes ${mm(f.takesMm)}.`;
    case 'strip-overrun':
      return `The floor moves ${overText(f.needsMm, f.takesMm, 1)} mm at edge ${f.edge}; the edge strip takes ${mm(f.takesMm)}.`;
    case 'strip-travel':
      return `The edge strip takes ${mm(f.takesMm)} of movement; it has to take at least ${mm(f.leastMm)}.`;
    case 'sealant-narrow':
      return `The sealant of joint ${f.joint} is ${mm(f.widthMm)} wide; it needs ${overText(f.needsMm, f.widthMm, 1)} mm.`;
    case 'sealant-least-width':
      return `The sealant is ${mm(f.widthMm)} wide; the least width of a joint in tiling is ${mm(f.leastMm)}.`;
    case 'screed-thin':
      return `The screed is ${mm(f.thicknessMm)} thick; for its class, the load and any pipes in it the least is ${mm(f.leastMm)}.`;
    case 'cover-thin':
      return `${coverWords(f.coverMm)}; the least cover is ${mm(f.leastMm)}.`;
    case 'screed-thick':
      return `The screed weighs ${overText(f.deadKPa, f.allowanceKPa, 2)} kN/m\u00b2 at ${mm(f.thicknessMm)}; the floor was designed for ${roundedText(f.allowanceKPa, 2)} kN/m\u00b2. Ask the structural engineer.`;
    case 'no-rooms':
      return 'The plan has no rooms, so there is no floor to split into bays.';
    case 'temperatures-reversed':
      return `The temperatures of ${namesText(f.names)} are out of order: the highest has to be above that of laying and the lowest below it, or no movement is counted.`;
    case 'unheated-as-plan':
      return unheatedWords(f);
    case 'screed-hot':
      return `The screed is planned for ${roundedText(f.highestC, 1)} \u00b0C; next to the pipes it takes ${roundedText(f.limitC, 1)} \u00b0C at most.`;
    case 'rule-set-other-screed':
      return `The rule set "${f.ruleSet}" is not written for ${f.screed}; ${takenWords(f)}`;
    case 'rule-set-other-floor':
      return `The rule set "${f.ruleSet}" does not speak of ${f.floor}; ${takenWords(f)}`;
    case 'limits-not-entered':
      return `The rule set "${f.ruleSet}" asks for limits of your own and the plan gives none; the limits of "${f.instead}" are taken.`;
    case 'limits-from-memory':
      return `Limits of the rule set "${f.ruleSet}" are given from memory: check them against the document.`;
    case 'limits-carried-over':
      return `The limits for ${namesText(f.names)} are carried over from heated floor under stone or ceramic, as good practice.`;
    case 'tile-field-unknown-room':
      return `Tile field ${f.field} names the room ${f.room}, which the plan does not have.`;
    case 'tile-room-twice':
      return `Tile field ${f.field} names ${f.name}, which tile field ${f.first} has already: it is laid as ${f.first} says.`;
    case 'tile-field-covering':
      return `Tile field ${f.field} names ${f.name}, whose covering is not stone or ceramic: no tiles are laid there.`;
    case 'tile-field-empty':
      return `Tile field ${f.field} names no room: none of its tiles are laid.`;
    case 'tile-field-edge':
      return `The tiles of ${namesText(f.names)} meet inside bay ${f.bay}, where the screed has no joint.`;
    case 'tile-bond-unknown':
      return `${fieldWords(f.field)} the bond "${f.bond}", which is none that is known here; they are taken as straight.`;
    case 'tile-grout-narrow':
      return `${fieldWords(f.field)} grout lines of ${mm(f.groutMm)}; on a floor they are at least ${mm(f.leastMm)} wide.`;
    case 'tile-grout-wide':
      return `${fieldWords(f.field)} grout lines of ${mm(f.groutMm)}, wider than the tiles, ${mm(f.sideMm)}.`;
    case 'tile-herringbone-square':
      return `${fieldWords(f.field)} sides of ${mm(f.sideMm)} both ways: a herringbone of squares is the straight bond, and joints are brought to its grout lines only where that is entered.`;
    case 'tile-offset-large':
      return `${fieldWords(f.field)} courses shifted by ${overText(f.offsetMm, f.mostMm, 0)} mm; with a side of ${mm(f.sideMm)} a shift of up to ${roundedText(f.mostMm, 0)} mm, a third, is usual, since long tiles are bowed.`;
    case 'tile-perimeter-narrow':
      return `The joint round the tiling is as wide as the edge strip, ${mm(f.stripMm)}; the least width of a joint in tiling is ${mm(f.leastMm)}.`;
    case 'tile-too-fine':
      return `Tiles of ${roundedText(f.lengthMm, 1)} by ${mm(f.widthMm)} are too fine for ${namesText(f.names)} to be counted one by one. Enter the sheets that they come on.`;
    case 'tile-slivers':
      return `Cuts of under a third of a tile at walls and things: ${cutsWords(f)}. Move the set-out point to balance the cuts.`;
    case 'tile-cuts-small':
      return `Cuts of under half a tile at walls and things: ${cutsWords(f)}.`;
    case 'tile-joint-off-grout': {
      const [cut, over] = f.joints.length === 1 ? ['cuts', 'it'] : ['cut', 'them'];
      return `Off the grout lines by up to ${roundedText(f.mostMm, 0)} mm, ${jointNames(f.joints)} ${cut} ${countOf(f.tiles, 'tile')}: tiled over, the floor cracks there. Bring joints and grid together, or cut the tiles in a straight line over ${over}.`;
    }
    case 'tile-joint-across-courses':
      return `No grout line runs straight along ${jointNames(f.joints)}: ${countOf(f.tiles, 'tile')} to be cut in a straight line over ${f.joints.length === 1 ? 'it' : 'them'}, never saw-toothed.`;
    case 'tile-standing-cut':
      return `Doorways, the building or the heating put ${jointNames(f.joints)} where ${f.joints.length === 1 ? 'it is' : 'they are'}: ${countOf(f.tiles, 'tile')} to be cut there in a straight line, unless the field restarts.`;
    case 'not-checked':
      return `Not checked: ${f.what}. The check needs ${f.missing}.`;
  }
}

function fieldWords(field: string | null): string {
  return field === null ? 'The tiles have' : `The tiles of field ${field} have`;
}

function countOf(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

function cutsWords({ names, count, smallestMm, smallestIn }: NarrowCut): string {
  const where = names.length > MOST_NAMED ? `${names.length} rooms` : namesText(names);
  return `${count} in ${where}, down to ${roundedText(smallestMm, 0)} mm${names.length > 1 ? ` in ${smallestIn}` : ''}`;
}

/** More joints or rooms than this are counted, not named. */
const MOST_NAMED = 6;

function jointNames(joints: readonly string[]): string {
  if (joints.length > MOST_NAMED) return `${joints.length} joints`;
  return `${joints.length === 1 ? 'joint' : 'joints'} ${namesText(joints)}`;
}

/** The top of the pipe against the top of the screed: a pipe thicker than the screed stands out of it. */
function coverWords(coverMm: number): string {
  if (coverMm > 0) return `The screed covers the pipe by ${mm(coverMm)}`;
  return coverMm === 0 ? 'The screed does not cover the pipe' : `The pipe stands ${mm(-coverMm)} above the screed`;
}

function keeperWords(keeper: JointKeeper): string {
  switch (keeper.kind) {
    case 'doorway':
      return `doorway ${keeper.id}`;
    case 'structural':
      return `structural joint ${keeper.id}`;
    case 'drawn':
      return `drawn joint ${keeper.id}`;
    case 'zone':
      return `the change of heating between ${namesText(keeper.names)}`;
  }
}

function heldWords(f: Extract<FindingValues, { code: 'slab-contact' }>): string {
  switch (f.cause) {
    case 'no-insulation':
      return `(no insulation) ${f.isRoom ? 'in' : 'under'} ${f.name}`;
    case 'fixed-through':
      return `by ${f.name}, bolted through the screed,`;
    case 'slab-contact':
      return `(no insulation) at ${f.name}`;
  }
}

function unheatedWords({ names, highestC }: Extract<FindingValues, { code: 'unheated-as-plan' }>): string {
  const [are, give, their, they] =
    names.length === 1 ? ['is', 'gives', 'its', 'it is'] : ['are', 'give', 'their', 'they are'];
  return `${namesText(names)} ${are} unheated and ${give} no highest temperature of ${their} own; ${they} taken to warm to the plan\u2019s ${roundedText(highestC, 1)} \u00b0C.`;
}

function takenWords({ names, instead, areaM2, lengthM, aspect }: LimitsTaken): string {
  const limits = [
    areaM2 === null ? [] : [`${roundedText(areaM2, 2)} m\u00b2`],
    lengthM === null ? [] : [`${roundedText(lengthM, 2)} m long`],
    aspect === null ? [] : [`${roundedText(aspect, 2)} : 1 long to wide`],
  ].flat();
  if (limits.length === 0) return `"${instead}", taken in its place, sets no limit for ${namesText(names)}.`;
  return `${namesText(names)} ${names.length === 1 ? 'takes' : 'take'} the limits of "${instead}": ${limits.join(', ')}.`;
}

const severityOrder = { fault: 0, caution: 1, note: 2 } as const;

/** Faults first, then by code and by what they are about, so that every run lists them alike. */
export function findingsSort(findings: readonly Finding[]): readonly Finding[] {
  return findings.toSorted(
    (a, b) =>
      severityOrder[a.severity] - severityOrder[b.severity] ||
      naturalOrder(a.code, b.code) ||
      naturalOrder(a.refs.join(' '), b.refs.join(' ')) ||
      naturalOrder(a.message, b.message) ||
      naturalOrder(String(a.at), String(b.at)),
  );
}
