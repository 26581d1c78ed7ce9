import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { agreementsOf } from '../analysis/agreement.ts';
import { type Analyser, createAnalyser } from '../analysis/analyser.ts';
import { analysisText } from '../documents/analysis-text.ts';
import { comparisonOf } from '../documents/compare.ts';
import { comparisonDocuments } from '../documents/compare-documents.ts';
import { documentsOf } from '../documents/documents.ts';
import type { PaperSource } from '../documents/paper-source.ts';
import { documentsMade, type PlanDocument, type ToldShare } from '../documents/plan-document.ts';
import { oneLine } from '../documents/words.ts';
import { planRead } from '../plan/read.ts';
import { planResolve } from '../plan/resolve.ts';
import { comparisonText } from './compare-text.ts';
import { fontsRead } from './fonts.ts';
import { planText, systemMessage } from './plan-text.ts';
import { summaryText } from './summary.ts';

/** One plan of the command line. Plain data: it travels to a worker and the result back. */
export interface PlanJob {
  /** As the user named it. */
  readonly file: string;
  /** What relative names start from. */
  readonly folder: string;
  readonly json: boolean;
  readonly effort: 'quick' | 'full';
  readonly agree: boolean;
  /** The earlier version to compare with, as the user named it; null: none. */
  readonly compare: string | null;
  /** Day that the papers carry. */
  readonly date: string;
  readonly documents: { readonly folder: string; readonly stem: string } | null;
}

export interface PlanOutcome {
  /** For standard output; empty where there is nothing to say. */
  readonly output: string;
  /** Lines for standard error. */
  readonly problems: readonly string[];
  readonly status: 0 | 1 | 2;
}

/** How far a plan is. */
export interface JobStep {
  readonly file: string;
  readonly doing: 'analysis' | 'papers';
  readonly share: number;
}

export type ToldJob = (step: JobStep) => void;

/** Does plans one after the other with one analyser. */
export function planJobRunner(
  analyser: Analyser = createAnalyser(),
): (job: PlanJob, told?: ToldJob) => Promise<PlanOutcome> {
  return async (job, told = () => {}) => {
    try {
      return await outcomeOf(job, analyser, told);
    } catch (error) {
      // a fault of ours: reported with its plan, and the other plans are still done
      return failed(job, [problemLine(job.file, '', `could not be analysed: ${errorText(error)}`)]);
    }
  };
}

async function outcomeOf(job: PlanJob, analyser: Analyser, told: ToldJob): Promise<PlanOutcome> {
  const earlier = job.compare === null ? null : sourceRead(job.compare, job, analyser, told);
  if (earlier?.kind === 'refused') return failed(job, earlier.problems);
  const read = sourceRead(job.file, job, analyser, told);
  if (read.kind === 'refused') return failed(job, read.problems);
  const { source } = read;
  const { plan, analysis } = source;
  const documents = [
    ...documentsOf(source, fontsRead),
    ...(earlier === null ? [] : comparisonDocuments(earlier.source, source, fontsRead)),
  ];
  const unwritten = job.documents === null ? [] : await documentsWrite(job, job.documents, documents, told);
  const status = analysis.findings.some(({ severity }) => severity === 'fault') ? 1 : 0;
  const outputOf = () => {
    if (job.json) return analysisText(analysis);
    if (earlier !== null && job.compare !== null)
      return comparisonText(comparisonOf(earlier.source, source), { before: job.compare, now: job.file });
    return summaryText(source, job.file, (job.agree && agreementsOf(plan)) || []);
  };
  return { output: outputOf(), problems: unwritten, status: unwritten.length > 0 ? 2 : status };
}

type SourceReading =
  | { readonly kind: 'read'; readonly source: PaperSource }
  | { readonly kind: 'refused'; readonly problems: readonly string[] };

/** @param file as the user named it */
function sourceRead(file: string, { folder, effort, date }: PlanJob, analyser: Analyser, told: ToldJob): SourceReading {
  const reading = planText(resolve(folder, file));
  if (reading.kind === 'unread') return { kind: 'refused', problems: [problemLine(file, '', reading.message)] };
  const read = planRead(reading.text);
  if (read.kind === 'refused') {
    return {
      kind: 'refused',
      problems: read.problems.map(({ path, message }) => problemLine(file, path, message)),
    };
  }
  const plan = planResolve(read.file);
  const analysis = analyser.analyse(plan, { effort, onProgress: (share) => told({ file, doing: 'analysis', share }) });
  if (analysis === null) throw new Error('analysis was cancelled, which the command line never asks for');
  return { kind: 'read', source: { file: read.file, plan, analysis, date } };
}

/** @returns what could not be written */
async function documentsWrite(
  job: PlanJob,
  { folder, stem }: NonNullable<PlanJob['documents']>,
  documents: readonly Pick<PlanDocument, 'name' | 'make'>[],
  told: ToldJob,
): Promise<readonly string[]> {
  const unmade = systemRefusal(() => folderMake(resolve(job.folder, folder)));
  if (unmade !== null) return [problemLine(folder, '', unmade)];
  const problems: string[] = [];
  const tell: ToldShare = (share) => told({ file: job.file, doing: 'papers', share });
  for await (const files of documentsMade(documents, tell)) {
    for (const { name, content } of files) {
      const file = join(folder, `${stem}.${name}`);
      const problem = systemRefusal(() => writeFileSync(resolve(job.folder, file), content));
      if (problem !== null) problems.push(problemLine(file, '', problem));
    }
  }
  return problems;
}

/** @returns why the system did not do it; null where it did */
function systemRefusal(act: () => void): string | null {
  try {
    act();
    return null;
  } catch (error) {
    return systemMessage(error);
  }
}

/** Makes a folder and those above it, one by one: where the system refuses, the recursive call of the engine may go round without end. */
function folderMake(path: string): void {
  if (existsSync(path)) return;
  folderMake(dirname(path));
  try {
    mkdirSync(path);
  } catch (error) {
    // another thread may have made it in the meantime
    if (!existsSync(path)) throw error;
  }
}

/** A plan that gave no analysis. */
export function failed(job: PlanJob, problems: readonly string[]): PlanOutcome {
  return { output: job.json ? 'null\n' : '', problems, status: 2 };
}

/** One line, such as `plan.json: rooms[2].outline[5]: must be two numbers`. */
export function problemLine(file: string, path: string, message: string): string {
  return oneLine([file, path, message].filter((part) => part !== '').join(': '));
}

export function errorText(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
