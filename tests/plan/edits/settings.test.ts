import { expect, test } from 'vitest';
import type { Point } from '../../../src/geometry/point.ts';
import {
  planCoveringLaid,
  planLimitsChanged,
  planLoadsEntered,
  planRenamed,
  planRoomsChanged,
  planRuleSetChosen,
  planSectionChanged,
} from '../../../src/plan/edits/settings.ts';
import { planEmpty } from '../../../src/plan/empty.ts';
import { planRead } from '../../../src/plan/read.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';
import { planWrite } from '../../../src/plan/write.ts';

const outline: readonly Point[] = [
  [0, 0],
  [4000, 0],
  [0, 4000],
];

const file: PlanFile = {
  ...planEmpty('Test'),
  screed: { class: 'CT-C25-F4', thicknessMm: 65 },
  rooms: [
    { id: 'r1', outline },
    { id: 'r2', outline, covering: 'timber' },
  ],
};

const before = planWrite(file);

test('an edit gives a new plan that can be saved, and leaves the old one as it was', () => {
  const edits: readonly PlanFile[] = [
    planRenamed(file, 'Other'),
    planRuleSetChosen(file, 'en-rectangle'),
    planSectionChanged(file, 'screed', { thicknessMm: 70 }),
    planSectionChanged(file, 'temperatures', { highestC: 50 }),
    planLimitsChanged(file, { areaM2: 30 }),
    planLoadsEntered(file, { imposedKPa: 2 }),
    planRoomsChanged(file, ['r1'], { heated: false }),
    planCoveringLaid(file, ['r1', 'r2'], 'resilient'),
  ];
  for (const edited of edits) {
    expect(planRead(planWrite(edited))).toEqual({ kind: 'plan', file: edited });
    expect(planWrite(edited)).not.toBe(before);
  }
  expect(planWrite(file)).toBe(before);
});

test('only the field that is changed changes', () => {
  expect(planSectionChanged(file, 'screed', { thicknessMm: 70 }).screed).toEqual({
    class: 'CT-C25-F4',
    thicknessMm: 70,
  });
  expect(planLimitsChanged(file, { areaM2: 30 }).screed).toEqual({
    class: 'CT-C25-F4',
    thicknessMm: 65,
    limits: { areaM2: 30 },
  });
});

test('a field that goes back to its default leaves the file, and so does a section that is empty', () => {
  expect(planSectionChanged(file, 'screed', { thicknessMm: undefined }).screed).toEqual({ class: 'CT-C25-F4' });
  const warm = planSectionChanged(file, 'temperatures', { highestC: 50 });
  expect(planSectionChanged(warm, 'temperatures', { highestC: undefined })).toEqual(file);
  expect(planLimitsChanged(planLimitsChanged(file, { areaM2: 30 }), { areaM2: undefined })).toEqual(file);
  expect(planLoadsEntered(planLoadsEntered(file, { imposedKPa: 2 }), undefined)).toEqual(file);
});

test('rooms that are not chosen are the same rooms', () => {
  const edited = planCoveringLaid(file, ['r1'], 'textile');
  expect(edited.rooms.map((room) => room.covering)).toEqual(['textile', 'timber']);
  expect(edited.rooms[1]).toBe(file.rooms[1]);
});
