import { describe, expect, it } from 'vitest';
import { analysed } from '../contract/analysed.ts';
import { box, planJson } from '../floors/plan-json.ts';

/** 300 mm: common practice, no source. */
describe('a bay too narrow to be laid well', () => {
  const told = (widthMm: number) =>
    analysed(
      planJson('Strip', [{ id: 'r1', name: 'Recess', outline: box(0, 0, 4000, widthMm) }]),
    ).analysis.findings.filter(({ code }) => code === 'bay-narrow');

  it('of 250 mm is a caution that names it', () => {
    expect(told(250)).toEqual([expect.objectContaining({ severity: 'caution', refs: ['B1'] })]);
  });

  it('of 300 mm is none', () => {
    expect(told(300)).toEqual([]);
  });

  it('is not the floor between the two joints of a deep doorway', () => {
    const rooms = [
      { id: 'r1', name: 'Hall', outline: box(0, 0, 4000, 4000) },
      { id: 'r2', name: 'Bath', outline: box(4360, 0, 4000, 4000) },
    ];
    const doorways = [
      {
        id: 'd1',
        line: [
          [4010, 1500],
          [4010, 1700],
        ],
        wallMm: 360,
        leaf: true,
      },
    ];
    const { bays, findings } = analysed({ ...planJson('Hatch', rooms), doorways }).analysis;
    expect(bays.map(({ widthM }) => Math.round(widthM * 1000))).toContain(200);
    expect(findings.filter(({ code }) => code === 'bay-narrow')).toEqual([]);
  });
});
