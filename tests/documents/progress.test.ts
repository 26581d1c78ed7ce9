import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { documentsOf } from '../../src/documents/documents.ts';
import { documentsMade } from '../../src/documents/plan-document.ts';
import { paperSourceOf, shippedFonts } from './paper-fixture.ts';

test('how far the papers are rises in small steps to the end, within one paper too', async () => {
  const fonts = await shippedFonts();
  // small paper: the joint plan goes over several sheets
  const plan = {
    ...JSON.parse(readFileSync('demo-plans/1-dwelling.json', 'utf8')),
    papers: { paper: 'A4', scale: 50 },
  };
  const documents = documentsOf(paperSourceOf(JSON.stringify(plan)), async () => fonts);
  const shares: number[] = [];
  const within: number[] = [];
  let made = 0;
  for await (const files of documentsMade(documents, (share) => shares.push(share))) {
    if (made++ === 0) within.push(...shares);
    expect(files.length).toBeGreaterThan(0);
  }
  expect(made).toBe(documents.length);
  expect(shares).toEqual([...new Set(shares)].sort((a, b) => a - b));
  expect(shares.at(-1)).toBe(1);
  expect(shares[0]).toBeLessThanOrEqual(0.02);
  // of the first paper alone, which binds all sheets
  expect(within.length).toBeGreaterThanOrEqual(4);
});
