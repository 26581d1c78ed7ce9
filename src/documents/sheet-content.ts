import type { Finding } from '../plan/analysis.ts';
import { ruleSets } from '../plan/reference.ts';
import { doorwayNames, findingNamed } from './doorway-places.ts';
import type { LabelItem } from './drawing.ts';
import { dimensionsLeft } from './joint-dimensions.ts';
import { gridLinesShort } from './joint-dimensions-grid.ts';
import type { PaperSource } from './paper-source.ts';
import { jointSettings } from './setting-out.ts';
import { settingOutFacts } from './setting-out-words.ts';
import { bondNames, tileSizeText } from './tile-words.ts';
import { type TitleBlock, titleBlockOf } from './title-block.ts';
import { figureText, heldSpace } from './words.ts';

/** What the strip beside the joint plan says. */
export interface SheetContent {
  readonly block: TitleBlock;
  readonly facts: readonly (readonly [head: string, text: string])[];
  readonly findings: readonly NumberedFinding[];
  /** What is said of what the drawing leaves out, sentence by sentence.
   *  @param left labels without a seat   @param scale of the drawing */
  readonly leftOut: (left: readonly LabelItem[], scale: number) => readonly string[];
}

export interface NumberedFinding {
  /** As on its pin. */
  readonly number: number;
  readonly finding: Finding;
}

export function sheetContent(source: PaperSource): SheetContent {
  const { plan, analysis } = source;
  const doorways = doorwayNames(source);
  const joints = analysis.joints.reduce((sum, joint) => sum + joint.lengthM, 0);
  const { layingC, highestC, lowestC } = plan.temperatures;
  return {
    block: titleBlockOf(source, 'Bays and movement joints'),
    facts: [
      ['Rule set', ruleSetName(plan.ruleSet)],
      ['Screed', `${plan.screed.class}, ${plan.screed.thicknessMm} mm, floating`],
      ['Temperatures', `laid at ${layingC} \u00b0C, ${lowestC} to ${highestC} \u00b0C`],
      [
        'Split',
        `${several(analysis.bays.length, 'bay')}, ${several(analysis.joints.length, 'joint')}, ${metres(joints)} in all`,
      ],
      ['Proof', proofText(source)],
      ...tileFacts(source),
      ...settingOutFacts(source),
    ],
    findings: analysis.findings.map((finding, i) => ({
      number: i + 1,
      finding: { ...finding, message: findingNamed(finding, doorways) },
    })),
    leftOut: (left, scale) =>
      [dimensionsLeft(jointSettings(source), left), gridLinesShort(source, scale)].flatMap((text) => text ?? []),
  };
}

/** How good the split is known to be: never more than for these lines and these rules. */
function proofText({ analysis: { proof } }: PaperSource): string {
  const { fieldJointM, atLeastM } = proof;
  const bound = atLeastM === null ? 'no bound known' : `at least ${metres(atLeastM)} needed`;
  return `intermediate joints ${metres(fieldJointM)}; ${bound}, on these lines, with these rules`;
}

function several(count: number, what: string): string {
  return `${count}${heldSpace}${what}${count === 1 ? '' : 's'}`;
}

function metres(m: number): string {
  return `${figureText(m, 1)}${heldSpace}m`;
}

function tileFacts({ analysis: { tiles } }: PaperSource): SheetContent['facts'] {
  if (tiles === null) return [];
  const [field, ...others] = tiles.fields;
  if (field === undefined || others.length > 0) return [['Tiles', `${tiles.fields.length} fields`]];
  return [['Tiles', `${tileSizeText(field)}, ${bondNames[field.bond]}`]];
}

export function ruleSetName(key: string): string {
  return Object.entries(ruleSets).find(([each]) => each === key)?.[1].name ?? key;
}
