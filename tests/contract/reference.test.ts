import { describe, expect, it } from 'vitest';
import { referenceLayout } from '../bench/set-partition.ts';
import { caseFiles } from './case-file.ts';

/** The bench's outside reference meets the case files that are within its reach: rectilinear, on its lattice. */

const limits = { areaM2: 40, lengthM: 8, aspect: 2, aspectFromM: 5 };
const names = ['core', 't-shape', 'u-shape'];

describe('the least joint that the bench measures against', () => {
  it.each(caseFiles().filter((c) => names.includes(c.name)))(
    'is the one worked out by hand: $name',
    async ({ plan, expect: wanted }) => {
      const [room] = plan.rooms;
      const reference = await referenceLayout({ outline: room?.outline ?? [], holes: room?.holes ?? [] }, limits, 20);
      expect(reference.proven).toBe(true);
      expect(reference.jointM).toBeCloseTo(wanted.fieldAndNeckM ?? wanted.jointM?.field ?? -1, 2);
    },
  );

  it('says so where no layout keeps the limits', async () => {
    const strip = [
      [0, 0],
      [9000, 0],
      [9000, 300],
      [0, 300],
    ] as const;
    const reference = await referenceLayout(
      { outline: strip, holes: [] },
      { areaM2: 1, lengthM: 0.4, aspect: 1, aspectFromM: 0 },
      20,
    );
    expect(reference).toMatchObject({ jointM: null, proven: true });
  });
});
