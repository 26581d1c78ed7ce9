import type { Analysis, Finding } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import { ruleSets } from '../plan/reference.ts';
import type { StripTitle } from './strip-parts.ts';
import { bondNames, tileSizeText } from './tile-words.ts';
import { figureText, oneLine } from './words.ts';

/** What the strip beside the drawing says. */
export interface SheetContent extends StripTitle {
  readonly findings: readonly NumberedFinding[];
}

export interface NumberedFinding {
  /** As on its pin. */
  readonly number: number;
  readonly finding: Finding;
}

export function sheetContent(plan: Plan, analysis: Analysis): SheetContent {
  const joints = analysis.joints.reduce((sum, joint) => sum + joint.lengthM, 0);
  const { layingC, highestC, lowestC } = plan.temperatures;
  return {
    title: oneLine(plan.name),
    subject: 'Bays and movement joints',
    facts: [
      ['Rule set', ruleSetName(plan.ruleSet)],
      ['Screed', `${plan.screed.class}, ${plan.screed.thicknessMm} mm, floating`],
      ['Temperatures', `laid at ${layingC} \u00b0C, ${lowestC} to ${highestC} \u00b0C`],
      ['Bays', String(analysis.bays.length)],
      ['Joints', `${analysis.joints.length}, ${figureText(joints, 1)} m in all`],
      ...tileFacts(analysis),
    ],
    findings: analysis.findings.map((finding, i) => ({ number: i + 1, finding })),
  };
}

function tileFacts({ tiles }: Analysis): StripTitle['facts'] {
  if (tiles === null) return [];
  const [field, ...others] = tiles.fields;
  if (field === undefined || others.length > 0) return [['Tiles', `${tiles.fields.length} fields`]];
  return [['Tiles', `${tileSizeText(field)}, ${bondNames[field.bond]}`]];
}

export function ruleSetName(key: string): string {
  return Object.entries(ruleSets).find(([each]) => each === key)?.[1].name ?? key;
}
