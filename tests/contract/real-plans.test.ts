import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { PlanJson } from '../floors/plan-json.ts';
import { analysisFaults } from '../oracle/check-analysis.ts';
import { analysed } from './analysed.ts';

const folder = new URL('../../../shared/real-plans/', import.meta.url);
const files = existsSync(folder) ? readdirSync(folder).filter((f) => f.endsWith('.json')) : [];

const tiles = { lengthMm: 600, widthMm: 600, groutMm: 3, origin: [17, -240.5] };

describe('floors of real buildings', () => {
  it.skipIf(files.length === 0)('lie in the folder shared/real-plans beside the project', () => {
    expect(files.length).toBeGreaterThan(0);
  });

  it.each(files)('%s keeps the contract, tiled', { timeout: 120_000 }, (file) => {
    const json = JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as PlanJson;
    const { plan, analysis } = analysed({ ...json, tiles });
    expect(analysisFaults(plan, analysis)).toEqual([]);
  });
});
