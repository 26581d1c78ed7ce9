import type { Agreement } from '../analysis/agreement.ts';
import { doorwayNames, doorwayWithin, findingNamed } from '../documents/doorway-places.ts';
import type { PaperSource } from '../documents/paper-source.ts';
import { registerGone } from '../documents/register.ts';
import { ruleSetName } from '../documents/sheet-content.ts';
import { plain } from '../documents/table.ts';
import { orderWords, takeOffOf } from '../documents/takeoff-tables.ts';
import {
  cautionsOf,
  countText,
  figureText,
  jointKindNames,
  movementText,
  type Names,
  namesOf,
  oneLine,
} from '../documents/words.ts';
import { type Analysis, type Finding, jointKinds, type Quantities, type Severity } from '../plan/analysis.ts';
import { papersOf } from '../plan/papers.ts';
import { type TakeOff, takeOffUnit } from '../plan/take-off.ts';
import { tableLines } from './table-lines.ts';
import { agreementLines, tileLines } from './tile-summary.ts';

/** What the command line prints for people: bays, joints, findings, quantities, what to order, tiles, cautions.
 *  @param agreements ways to make joints and tiles agree; none where they were not asked for */
export function summaryText(source: PaperSource, file: string, agreements: readonly Agreement[] = []): string {
  const { plan, analysis } = source;
  const names = namesOf(plan, analysis);
  const sections = [
    [
      `${oneLine(plan.name)} (${oneLine(file)})`,
      `${ruleSetName(plan.ruleSet)}; floating screed ${plan.screed.class}, ${plan.screed.thicknessMm} mm`,
    ],
    bayLines(analysis, names),
    jointLines(analysis, names),
    ...goneSection(registerGone(source)),
    findingLines(source, names),
    quantityLines(analysis.quantities),
    ...orderSections(takeOffOf(source)),
    ...(analysis.tiles === null ? [] : [tileLines(analysis, names)]),
    ...(agreements.length === 0 ? [] : [agreementLines(agreements)]),
    cautionsOf(papersOf(source.file), analysis),
  ];
  return `${sections.map((lines) => lines.join('\n')).join('\n\n')}\n\n`;
}

function bayLines(analysis: Analysis, names: Names): readonly string[] {
  const rows = analysis.bays.map((bay) => [
    bay.id,
    names.bay(bay),
    figureText(bay.areaM2, 1),
    figureText(bay.lengthM, 2),
    figureText(bay.widthM, 2),
    figureText(bay.aspect, 2),
    bay.within ? 'yes' : 'no',
  ]);
  const heads = ['Bay', 'Room', 'Area m\u00b2', 'Length m', 'Width m', 'Length : width', 'Within limits'];
  return [`Bays: ${rows.length}`, ...tableLines([heads, ...rows], 'llrrrrl')];
}

function jointLines(analysis: Analysis, names: Names): readonly string[] {
  const heads = ['', 'Between', 'Length m', 'Closes', 'Opens', 'Slides', 'Worst case closes'];
  const kinds = jointKinds.filter((kind) => analysis.joints.some((joint) => joint.kind === kind));
  const joints = kinds.flatMap((kind) => analysis.joints.filter((joint) => joint.kind === kind));
  const rows = joints.map((joint) => [
    joint.id,
    names.joint(joint),
    figureText(joint.lengthM, 2),
    ...[joint.closingMm, joint.openingMm, joint.slidingMm, joint.worstClosingMm].map((mm) => movementText(mm)),
  ]);
  // one table, so that the columns of all kinds stand under each other
  const [head = '', ...lines] = tableLines([heads, ...rows], 'llrrrrr');
  const byKind = joints.flatMap(({ kind }, i) => [
    ...(kind === joints[i - 1]?.kind ? [] : [`  ${jointKindNames[kind]}`]),
    lines[i] ?? '',
  ]);
  return [`Joints: ${joints.length}`, ...(joints.length === 0 ? [] : [head, ...byKind])];
}

/** What was entered of joints that are not there is told, so that a mistyped key does not pass without a word. */
function goneSection(gone: readonly string[]): readonly (readonly string[])[] {
  return gone.length === 0
    ? []
    : [[`Entries of the joint register without a joint: ${gone.length}`, ...gone.map((each) => `  ${each}`)]];
}

const severities: readonly Severity[] = ['fault', 'caution', 'note'];

function findingLines(source: PaperSource, names: Names): readonly string[] {
  const { findings } = source.analysis;
  const doorways = doorwayNames(source);
  const counts = severities.map((severity) =>
    countText(severity, findings.filter((each) => each.severity === severity).length),
  );
  return [
    `Findings: ${counts.join(', ')}`,
    ...severities.flatMap((severity) =>
      findings
        .filter((each) => each.severity === severity)
        .map((each) => {
          const message = plain(findingNamed(each, doorways));
          const about = aboutText({ ...each, message }, (id) => doorways.get(id) ?? names.ref(id));
          return `  ${severity.padEnd(8)} ${message}${about}`;
        }),
    ),
  ];
}

/** What a finding is about and its words do not name, in brackets. */
function aboutText({ message, refs }: Pick<Finding, 'message' | 'refs'>, nameOf: (id: string) => string): string {
  const unsaid = refs
    .map((id) => oneLine(nameOf(id)))
    .filter((text) => ![text, doorwayWithin(text)].some((said) => wordsHold(message, said)));
  return unsaid.length === 0 ? '' : ` [${unsaid.join('; ')}]`;
}

/** Whether a text holds another as words of its own: "Bay B12" does not hold B1. */
function wordsHold(text: string, part: string): boolean {
  const letter = /[\p{L}\p{N}]/u;
  for (let at = text.indexOf(part); at >= 0; at = text.indexOf(part, at + 1)) {
    if (!letter.test(text[at - 1] ?? ' ') && !letter.test(text[at + part.length] ?? ' ')) return true;
  }
  return false;
}

function quantityLines(quantities: Quantities): readonly string[] {
  const rows: readonly (readonly [string, number, number, string])[] = [
    ['Floor', quantities.floorM2, 1, 'm\u00b2'],
    ['Edge strip', quantities.edgeStripM, 1, 'm'],
    ...jointKinds.map((kind) => [jointKindNames[kind], quantities.jointM[kind], 1, 'm'] as const),
    ['Sealant', quantities.sealantLitres, 2, 'l'],
    ['Screed', quantities.screedM3, 2, 'm\u00b3'],
    ['Screed', quantities.screedKg, 0, 'kg'],
    ['Insulation', quantities.insulationM2, 1, 'm\u00b2'],
    ['Held to the slab', quantities.slabContactM2, 1, 'm\u00b2'],
  ];
  const cells = rows
    .filter(([name, value]) => value > 0 || name === 'Floor')
    .map(([name, value, decimals, unit]) => [name, figureText(value, decimals), unit]);
  return ['Quantities, net, no allowance', ...tableLines(cells, 'lrl')];
}

/** What the allowances are stands in the table of the take-off. */
function orderSections({ lines }: TakeOff): readonly (readonly string[])[] {
  const rows = lines.map(({ item, spec, unit, decimals, net, gross, order }) => [
    item,
    spec,
    figureText(net, decimals),
    figureText(gross, decimals),
    takeOffUnit(Number(gross.toFixed(decimals)), unit),
    order === null ? '-' : figureText(order.count, 0),
    orderWords(order, order?.count ?? 0),
  ]);
  if (rows.length === 0) return [];
  const heads = ['', '', 'Net', 'With allowance', '', 'Order', ''];
  return [['To order', ...tableLines([heads, ...rows], 'llrrlrl')]];
}
