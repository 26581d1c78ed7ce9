import { area, shapeLess } from './planar.ts';
import { figure, type Scene } from './scene.ts';

/** Totals against the bays, and rooms against the totals. */
export function quantityFaults(scene: Scene): string[] {
  const { plan, analysis, bays } = scene;
  const q = analysis.quantities;
  const faults: string[] = [];
  const off = (what: string, given: number, right: number, slack: number) => {
    if (Math.abs(given - right) > slack + right * 1e-4)
      faults.push(`quantities.${what} is ${figure(given)}, should be ${figure(right)}`);
  };
  const floorM2 = bays.reduce((sum, b) => sum + area(b.shape), 0) / 1e6;
  off('floorM2', q.floorM2, floorM2, 0.005 + bays.length * 0.001);
  off('screedM3', q.screedM3, (q.floorM2 * plan.screed.thicknessMm) / 1000, 0.005);
  off('screedKg', q.screedKg, q.screedM3 * plan.screed.densityKgPerM3, 10);
  const bare = [...plan.joinery.filter((j) => j.under === 'no-insulation'), ...plan.slabContacts].map(({ outline }) => [
    { outline, holes: [] },
  ]);
  const insulatedM2 = bays.reduce((sum, b) => sum + area(shapeLess(b.shape, bare)), 0) / 1e6;
  off('insulationM2', q.insulationM2, insulatedM2, 0.01 + bays.length * 0.001);
  if (q.rooms.length === 0) return faults;
  for (const field of [
    'edgeStripM',
    'sealantLitres',
    'screedM3',
    'screedKg',
    'insulationM2',
    'slabContactM2',
    'floorM2',
  ] as const) {
    off(
      `${field} of the rooms together`,
      q.rooms.reduce((sum, r) => sum + r[field], 0),
      q[field],
      0.01 + q.rooms.length * 0.002,
    );
  }
  for (const kind of ['doorway', 'neck', 'field', 'structural', 'zone', 'drawn'] as const) {
    off(
      `jointM.${kind} of the rooms together`,
      q.rooms.reduce((sum, r) => sum + r.jointM[kind], 0),
      q.jointM[kind],
      0.01 + q.rooms.length * 0.002,
    );
  }
  return faults;
}
