import { analysed, freeJointM } from '../contract/analysed.ts';
import { analysisFaults } from '../oracle/check-analysis.ts';
import { type BenchFloor, benchFloors, benchPlan, limitSets } from './bench-floors.ts';
import { ReferenceStore } from './reference-store.ts';

/** Our joint over the best known layout, floor by floor. */

export interface LeastJointRow {
  readonly name: string;
  readonly floors: number;
  readonly proven: number;
  readonly mean: number;
  readonly worst: number;
  readonly worstFloor: string;
  /** Floors with a bay over a limit although the reference has a layout within them. */
  readonly over: readonly string[];
  /** Floors whose result the outside checker refuses: their length counts for nothing. */
  readonly wrong: readonly string[];
}

interface Comparison {
  readonly bench: BenchFloor;
  readonly ratio: number;
  readonly proven: boolean;
  readonly over: boolean;
  readonly wrong: boolean;
}

export async function leastJoint(count: number): Promise<LeastJointRow[]> {
  const store = new ReferenceStore();
  const compared: Comparison[] = [];
  for (const bench of benchFloors(count)) {
    const reference = await store.of(bench);
    if (reference.jointM === null) continue;
    const { plan, analysis } = analysed(benchPlan(bench, 0));
    const over = analysis.bays.some((b) => !b.within);
    const wrong = analysisFaults(plan, analysis).length > 0;
    const ours = freeJointM(analysis);
    compared.push({ bench, ratio: ratioOf(ours, reference.jointM), proven: reference.proven, over, wrong });
  }
  const rows = limitSets.flatMap(({ name }) =>
    [false, true].map((core) =>
      rowOf(
        `${name}, ${core ? 'with' : 'without'} core`,
        compared.filter((c) => c.bench.set.name === name && c.bench.core === core),
      ),
    ),
  );
  return [...rows, rowOf('all', compared)];
}

/** Anything better than the reference counts as 1. */
function ratioOf(oursM: number, referenceM: number): number {
  if (referenceM < 0.001) return oursM < 0.001 ? 1 : Number.POSITIVE_INFINITY;
  return Math.max(1, oursM / referenceM);
}

function rowOf(name: string, compared: readonly Comparison[]): LeastJointRow {
  const sound = compared.filter((c) => !c.wrong);
  const worst = sound.reduce((w, c) => (c.ratio > w.ratio ? c : w), { ratio: 1, bench: { key: '-' } });
  return {
    name,
    floors: compared.length,
    proven: compared.filter((c) => c.proven).length,
    mean: sound.reduce((sum, c) => sum + c.ratio, 0) / sound.length,
    worst: worst.ratio,
    worstFloor: worst.bench.key,
    over: compared.filter((c) => c.over).map((c) => c.bench.key),
    wrong: compared.filter((c) => c.wrong).map((c) => c.bench.key),
  };
}
