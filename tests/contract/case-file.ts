import { readdirSync, readFileSync } from 'node:fs';
import type { JointKind, Severity } from '../../src/plan/analysis.ts';
import type { PlanJson } from '../floors/plan-json.ts';

/** One floor with what must come out of it, worked out by hand: `why` says how. */
export interface CaseFile {
  readonly name: string;
  readonly why: string;
  readonly plan: PlanJson;
  readonly expect: CaseExpectation;
}

/** Lengths in m, movement in mm, for the first joint unless said. */
export interface CaseExpectation {
  readonly bays?: number;
  readonly allWithin?: boolean;
  readonly jointM?: Partial<Record<JointKind, number>>;
  readonly fieldAndNeckM?: number;
  readonly closingMm?: number;
  readonly worstClosingMm?: number;
  readonly sealantNeedsMm?: number;
  readonly profileMm?: number;
  /** Largest movement at any edge. */
  readonly mostEdgeMm?: number;
  /** Doorways that a joint names in its reasons. */
  readonly named?: readonly string[];
  readonly findings?: readonly { readonly code?: string; readonly severity?: Severity; readonly ref?: string }[];
  /** Codes of findings that must not be there. */
  readonly without?: readonly string[];
}

const folder = new URL('../cases/', import.meta.url);

export function caseFiles(): CaseFile[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .sort()
    .map((file) => {
      const body = JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as Omit<CaseFile, 'name'>;
      return { name: file.replace('.json', ''), ...body };
    });
}
