import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import type { BenchFloor } from './bench-floors.ts';
import { type Reference, referenceLayout } from './set-partition.ts';

/** Solved references, kept beside the bench: an entry stands as long as its floor is the one it was solved for. */

interface Stored extends Reference {
  readonly outline: string;
}

const file = new URL('reference.json', import.meta.url);
const solveS = 120;

export class ReferenceStore {
  private readonly known: Record<string, Stored>;

  constructor() {
    this.known = existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Record<string, Stored>) : {};
  }

  async of(bench: BenchFloor): Promise<Reference> {
    const outline = [bench.floor.outline, ...bench.floor.holes].flat(2).join(' ');
    const old = this.known[bench.key];
    if (old !== undefined && old.outline === outline) return old;
    const fresh = await referenceLayout(bench.floor, bench.set.limits, solveS);
    this.known[bench.key] = { ...fresh, outline };
    this.save();
    return fresh;
  }

  private save(): void {
    const keys = Object.keys(this.known).sort();
    const lines = keys.map((key) => `  ${JSON.stringify(key)}: ${JSON.stringify(this.known[key])}`);
    writeFileSync(file, `{\n${lines.join(',\n')}\n}\n`);
  }
}
