import { readFileSync } from 'node:fs';
import { fontsRead } from '../../src/cli/fonts.ts';
import { documentsOf } from '../../src/documents/documents.ts';
import type { PaperFonts, PaperSource } from '../../src/documents/paper-source.ts';
import type { PaperFile } from '../../src/documents/plan-document.ts';
import type { Analysis } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { planRead } from '../../src/plan/read.ts';
import { planResolve } from '../../src/plan/resolve.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { analysedAnew, analysedOnce } from '../floors/analysed-once.ts';

/** Papers of a plan and analysis made by hand, which have no file of their own. */
export function paperSource(plan: Plan, analysis: Analysis, file: Partial<PlanFile> = {}): PaperSource {
  const made: PlanFile = { format: 'screed-bays/plan', version: 1, name: plan.name, rooms: [], ...file };
  return { file: made, plan, analysis, date: '2027-03-01' };
}

/** Papers of a plan file, analysed once in a run. @param text JSON of a plan file that is read without problems */
export function paperSourceOf(text: string, over: Partial<PlanFile> = {}): PaperSource {
  const file = fileOf(text, over);
  return { file, ...analysedOnce(planResolve(file)), date: '2027-03-01' };
}

/** The same, analysed for this call: for tests that papers come out alike each time. */
export function paperSourceAnew(text: string, over: Partial<PlanFile> = {}): PaperSource {
  const file = fileOf(text, over);
  return { file, ...analysedAnew(planResolve(file)), date: '2027-03-01' };
}

function fileOf(text: string, over: Partial<PlanFile>): PlanFile {
  const read = planRead(text);
  if (read.kind === 'refused') throw new Error(JSON.stringify(read.problems));
  return { ...read.file, ...over };
}

export const demoNames = ['1-dwelling', '2-public-library', '3-market-hall'] as const;

export function demoText(name: (typeof demoNames)[number]): string {
  return readFileSync(new URL(`../../demo-plans/${name}.json`, import.meta.url), 'utf8');
}

/** The files of the documents whose names are such. */
export async function paperFiles(source: PaperSource, names: RegExp): Promise<readonly PaperFile[]> {
  const wanted = documentsOf(source, shippedFonts).filter(({ name }) => names.test(name));
  return (await Promise.all(wanted.map(({ make }) => make()))).flat();
}

/** The fonts that the program ships. */
export const shippedFonts = fontsRead;

export function noFonts(): Promise<PaperFonts> {
  throw new Error('asked for fonts');
}

/** A hall of 12 x 5 m beside a store, with a doorway between and a joint drawn across the hall. */
export function hallAndStore(over: Partial<PlanFile> = {}): PaperSource {
  const plan: PlanFile = {
    format: 'screed-bays/plan',
    version: 1,
    name: 'Hall and store',
    rooms: [
      {
        id: 'hall',
        name: 'Hall',
        outline: [
          [0, 0],
          [12000, 0],
          [12000, 5000],
          [0, 5000],
        ],
      },
      {
        id: 'store',
        name: 'Store',
        outline: [
          [0, 5100],
          [4000, 5100],
          [4000, 8000],
          [0, 8000],
        ],
      },
    ],
    doorways: [
      {
        id: 'd1',
        line: [
          [1000, 5050],
          [1900, 5050],
        ],
        wallMm: 100,
      },
    ],
    ...over,
  };
  return paperSourceOf(JSON.stringify(plan));
}
