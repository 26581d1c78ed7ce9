import { expose } from 'comlink';
import { type Zippable, zipSync } from 'fflate';
import { createAnalyser } from '../analysis/analyser.ts';
import { type Comparison, comparisonOf } from '../documents/compare.ts';
import { comparisonDocuments } from '../documents/compare-documents.ts';
import { documentsOf } from '../documents/documents.ts';
import type { PaperSource } from '../documents/paper-source.ts';
import { documentsMade, type PaperFile, type PlanDocument } from '../documents/plan-document.ts';
import { pourPlanOf } from '../documents/pour-plan.ts';
import { sourceHeating } from '../documents/records-start.ts';
import { squeezeLevel } from '../documents/squeeze.ts';
import { takeOffOf } from '../documents/takeoff-tables.ts';
import { faultsOpen } from '../documents/words.ts';
import { type PourDay, papersOf } from '../plan/papers.ts';
import { planResolve } from '../plan/resolve.ts';
import type { PlanFile } from '../plan/schema.ts';
import type { TakeOff } from '../plan/take-off.ts';
import { fontsFetch } from './files/fonts.ts';
import { allPapers } from './files/paper-names.ts';

/** The papers, made off the screen's own thread: a PDF of a large floor takes its time. Fetched when papers are first looked at. */

export interface PapersLaid {
  readonly list: readonly PaperAbout[];
  readonly takeOff: TakeOff;
  /** What the papers say of faults that are open; null where they say nothing. */
  readonly faults: string | null;
  /** Where what is entered for the first heating does not agree. */
  readonly heating: readonly string[];
  /** With the earlier version; null where there is none. */
  readonly comparison: Comparison | null;
}

/** A paper that can be made. */
export type PaperAbout = Pick<PlanDocument, 'name' | 'words' | 'group'>;

let source: PaperSource | null = null;
/** The earlier version that the plan is compared with; null: none. */
let earlier: PaperSource | null = null;

function documents(): readonly PlanDocument[] {
  if (source === null) return [];
  const own = documentsOf(source, fontsFetch);
  return earlier === null ? own : [...own, ...comparisonDocuments(earlier, source, fontsFetch)];
}

/** Made anew when another plan is laid: what papers share is made once. */
let made: readonly PlanDocument[] = [];

function bytesOf({ content }: PaperFile): Uint8Array {
  return typeof content === 'string' ? new TextEncoder().encode(content) : content;
}

/** Kinds of files that are squeezed already. */
const squeezes = /\.(?:pdf|xlsx)$/u;

function zipOf(files: readonly PaperFile[]): Uint8Array {
  const entries = files.map(
    (file) => [file.name, [bytesOf(file), { level: squeezes.test(file.name) ? 0 : squeezeLevel }]] as const,
  );
  // one day for all of them: the same papers are the same bytes
  return zipSync(Object.fromEntries(entries) as Zippable, { mtime: '1980-01-01T00:00:00' });
}

const service = {
  /** Fetches all that papers are made with, so that they can be made once the server is gone. */
  async prepare(): Promise<void> {
    await Promise.all([
      import('../documents/pdf.ts'),
      import('../documents/svg-fonts.ts'),
      import('../documents/xlsx.ts'),
      fontsFetch(),
    ]);
  },
  /** What papers are made of from now on. */
  lay(next: PaperSource): PapersLaid {
    source = next;
    made = documents();
    return {
      list: made.map(({ name, words, group }) => ({ name, words, group })),
      takeOff: takeOffOf(next),
      heating: sourceHeating(next).cautions,
      faults: faultsOpen(papersOf(next.file), next.analysis),
      comparison: earlier === null ? null : comparisonOf(earlier, next),
    };
  },
  /** What is laid from now on is compared with an earlier version; null: no longer. */
  compare(file: PlanFile | null, date: string): void {
    earlier = null;
    if (file === null) return;
    const plan = planResolve(file);
    const analysis = createAnalyser().analyse(plan);
    if (analysis !== null) earlier = { file, plan, analysis, date };
  },
  /** The days of the pour as the pour plan has them, with the keys of their bays. */
  pour(): readonly PourDay[] {
    if (source === null) return [];
    return pourPlanOf(source).lots.map(({ date, bays }) => ({ date, bays: bays.map(({ key }) => key) }));
  },
  /** @returns one paper, or all of them in one file; several sheets of one paper come in one file too */
  async make(
    name: string,
    onProgress: (share: number) => void,
  ): Promise<{ readonly name: string; readonly bytes: Uint8Array }> {
    const named = name === allPapers ? made : made.filter((each) => each.name === name);
    // so that each step of the way is a short one
    const wanted = [...named.filter(({ gathers }) => !gathers), ...named.filter(({ gathers }) => gathers)];
    if (wanted.length === 0) throw new Error('The plan as it stands has no such paper.');
    const files: PaperFile[] = [];
    for await (const each of documentsMade(wanted, onProgress)) files.push(...each);
    const [only, ...others] = files;
    if (only !== undefined && others.length === 0) return { name: only.name, bytes: bytesOf(only) };
    return { name: name === allPapers ? name : `${name.replaceAll('.', '-')}.zip`, bytes: zipOf(files) };
  },
};
export type PaperService = typeof service;

expose(service);
