import { describe, expect, it } from 'vitest';
import { movementOf } from '../../src/movement/movement.ts';
import { defaults, type RuleSetKey, type ScreedClassKey } from '../../src/plan/reference.ts';
import { gridSplit, planOf, rectangle } from '../movement/grid-split.ts';

/** Common practice, no source: what people of the trade expect to see. Bounds that a gross error would break, never figures to aim at. */

describe('common practice, no source: a dwelling', () => {
  // rooms of 2 to 6 m in a row, everything else as the plan starts with
  const widths = [2000, 3200, 4000, 5500, 6000];
  const xs = [0, ...widths].map((_, n) => widths.slice(0, n).reduce((x, width) => x + width, 0));
  const plan = planOf({ rooms: [{ id: 'r1', name: 'Rooms', outline: rectangle(0, 0, xs.at(-1) ?? 0, 4000) }] });
  const { joints, findings } = movementOf(
    plan,
    gridSplit(xs, [0, 4000], () => 'r1'),
  );

  it('has joints that move by fractions of a millimetre up to a couple of millimetres', () => {
    for (const joint of joints.values()) {
      expect(joint.closingMm).toBeGreaterThan(0.1);
      expect(joint.closingMm).toBeLessThan(2.5);
    }
  });

  it('is served by a joint foam of about 10 mm', () => {
    expect(defaults.profileWidthMm.value).toBeGreaterThanOrEqual(8);
    expect(defaults.profileWidthMm.value).toBeLessThanOrEqual(12);
    expect(findings.filter((finding) => finding.code === 'profile-overrun')).toEqual([]);
  });
});

describe('common practice, no source: a strong flowing screed', () => {
  const limits = (ruleSet: RuleSetKey, screedClass: ScreedClassKey) =>
    planOf({
      ruleSet,
      screed: { class: screedClass },
      rooms: [{ id: 'r1', name: 'Hall', outline: rectangle(0, 0, 9000, 6000) }],
    }).rooms[0]?.limits;

  it('may cover more than 40 m2 where cement screed needs smaller bays', () => {
    expect(limits('ca-france', 'CAF-C30-F7')?.areaM2).toBeGreaterThan(40);
    expect(limits('en-strict', 'CT-C25-F4')?.areaM2).toBeLessThanOrEqual(40);
  });
});
