import { readdirSync, readFileSync } from 'node:fs';
import { createAnalyser } from '../../src/analysis/analyser.ts';
import { documentsOf } from '../../src/documents/documents.ts';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import { planRead } from '../../src/plan/read.ts';
import { planResolve } from '../../src/plan/resolve.ts';
import { shippedFonts } from '../documents/paper-fixture.ts';
import { manyRoomsPlan } from '../floors/many-rooms.ts';

/** How long all papers of a floor take, beside its analysis in the same run. */
export interface PapersRow {
  readonly name: string;
  readonly analysisMs: number;
  readonly papersMs: number;
  readonly files: number;
  readonly megabytes: number;
  readonly slowest: string;
}

const folder = new URL('../../demo-plans/', import.meta.url);

export async function papersRows(): Promise<readonly PapersRow[]> {
  const demos = readdirSync(folder).map((name) => [name, readFileSync(new URL(name, folder), 'utf8')] as const);
  const rows: PapersRow[] = [];
  for (const [name, text] of [...demos, ['1,000 rooms', JSON.stringify(manyRoomsPlan(1000))] as const])
    rows.push(await papersRow(name.replace('.json', ''), text));
  return rows;
}

async function papersRow(name: string, text: string): Promise<PapersRow> {
  const fonts = await shippedFonts();
  let at = performance.now();
  const source = sourceOf(text);
  const analysisMs = performance.now() - at;
  const made: { readonly name: string; readonly ms: number; readonly bytes: number; readonly files: number }[] = [];
  for (const { name: document, make } of documentsOf(source, async () => fonts)) {
    at = performance.now();
    const files = await make();
    const bytes = files.reduce((sum, { content }) => sum + content.length, 0);
    made.push({ name: document, ms: performance.now() - at, bytes, files: files.length });
  }
  const sum = (of: (each: (typeof made)[number]) => number) => made.reduce((total, each) => total + of(each), 0);
  const [slowest] = [...made].sort((a, b) => b.ms - a.ms);
  return {
    name,
    analysisMs,
    papersMs: sum(({ ms }) => ms),
    files: sum(({ files }) => files),
    megabytes: sum(({ bytes }) => bytes) / 1e6,
    slowest: slowest === undefined ? '-' : `${slowest.name}, ${(slowest.ms / 1000).toFixed(2)} s`,
  };
}

function sourceOf(text: string): PaperSource {
  const reading = planRead(text);
  if (reading.kind !== 'plan') throw new Error('no plan');
  const plan = planResolve(reading.file);
  const analysis = createAnalyser().analyse(plan);
  if (analysis === null) throw new Error('called off');
  return { file: reading.file, plan, analysis, date: '2027-03-01' };
}
