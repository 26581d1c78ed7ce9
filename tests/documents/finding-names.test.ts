import { describe, expect, it } from 'vitest';
import { summaryText } from '../../src/cli/summary.ts';
import { analysisText } from '../../src/documents/analysis-text.ts';
import { findingNamed } from '../../src/documents/doorway-places.ts';
import { sheetContent } from '../../src/documents/sheet-content.ts';
import { findingsTable } from '../../src/documents/tables.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { hallAndStore } from './paper-fixture.ts';

const doorway = (id: string, x: number, y: number) => ({
  id,
  line: [
    [x, y],
    [x + 900, y],
  ] as [[number, number], [number, number]],
  wallMm: 100,
});

/** A doorway from hall to store, one out of the hall to where no floor is, and a joint taken away in the first, which stands all the same. */
function floor(over: Partial<PlanFile> = {}) {
  const doorways = [doorway('d1', 1000, 5050), doorway('d12', 6000, 5050)];
  return hallAndStore({
    doorways,
    noJoint: [{ id: 'n1', line: doorways[0]?.line ?? [] }],
    ...over,
  } as Partial<PlanFile>);
}

const named = ['Door out of Hall meets one room only, Hall.', 'door Hall \u2013 Store keeps it.'];

describe('a finding about a doorway', () => {
  it('calls it by the rooms that it joins, in the list, on the sheet and on the command line', () => {
    const source = floor();
    const list = findingsTable(source).rows.flat().join('\n');
    const sheet = sheetContent(source)
      .findings.map(({ finding }) => finding.message)
      .join('\n');
    for (const text of [list, sheet.replaceAll('\u00a0', ' '), summaryText(source, 'plan.json')]) {
      for (const words of named) expect(text).toContain(words);
      expect(text).not.toMatch(/doorway d1/iu);
    }
  });

  it('is said once on the command line, without the same doorway in brackets behind it', () => {
    const lines = summaryText(floor(), 'plan.json').split('\n');
    for (const words of named) expect(lines.find((line) => line.includes(words))).not.toMatch(/\[.*(?:Door|d1)/u);
  });

  it('keeps the id in data, which programs read', () => {
    expect(analysisText(floor().analysis)).toContain('Doorway d12 meets one room only');
  });

  it('is not mistaken where one id begins like another', () => {
    const names = new Map([
      ['d1', 'Door Hall \u2013 Store'],
      ['d12', 'Door out of Hall'],
    ]);
    const refs = ['n1', 'd1', 'd12'];
    const message = 'The joint taken away at n1 stands all the same: doorway d12 and doorway d1 keep it.';
    expect(findingNamed({ message, refs }, names)).toBe(
      'The joint taken away at n1 stands all the same: door out of Hall and door Hall \u2013 Store keep it.',
    );
    expect(findingNamed({ message: 'Doorway d12 meets no room.', refs }, names)).toBe(
      'Door out of Hall meets no room.',
    );
    expect(findingNamed({ message: 'Bay B1 is 50 m\u00b2.', refs: ['B1'] }, names)).toBe('Bay B1 is 50\u00a0m\u00b2.');
  });
});

describe('an entry of the joint register whose key no joint has', () => {
  it('is told on the command line with all that was entered', () => {
    const source = floor({ papers: { joints: [{ key: 'd', profile: 'angle', pipes: 3 }] } });
    const lines = summaryText(source, 'plan.json').split('\n');
    const at = lines.indexOf('Entries of the joint register without a joint: 1');
    expect(lines[at + 1]).toBe('  a joint known as d: profile angle, pipes 3.');
    expect(summaryText(floor(), 'plan.json')).not.toContain('joint register');
  });
});
