import { area, shapeLess } from './planar.ts';
import { bareRooms, figure, isInDoorway, roomFloorIn, type Scene, type SceneBay } from './scene.ts';

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
  const bareIn = (b: SceneBay) => [...bare, ...bareRooms(scene).map((room) => roomFloorIn(scene, b, room))];
  const insulatedM2 = bays.reduce((sum, b) => sum + area(shapeLess(b.shape, bareIn(b))), 0) / 1e6;
  if (bareRooms(scene).length === 0 || scene.floor.muddled.size === 0)
    off('insulationM2', q.insulationM2, insulatedM2, 0.01 + bays.length * 0.001);
  off('slabContactM2', q.slabContactM2, q.floorM2 - q.insulationM2, 0.001);
  faults.push(...sealantFaults(scene));
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

/** Width x depth x length. Depth is half the width, 6 to 13 mm; under 12 mm of width also the width itself. Sealant closes what comes up
 *  through stone or ceramic on either side; a structural joint takes a profile of its own (docs/decisions/0006). Floor between two joints of a
 *  doorway is covered as the room that it names. */
function sealantFaults({ plan, analysis, floor, bayOf }: Scene): string[] {
  if (floor.muddled.size > 0) return [];
  const { widthMm } = plan.sealant;
  const depths = [Math.min(13, Math.max(6, widthMm / 2)), Math.min(13, Math.max(6, widthMm))];
  const roomsOf = (b: SceneBay) =>
    isInDoorway(b) ? plan.rooms.filter(({ id }) => b.bay.rooms.includes(id)) : b.rooms.map(({ room }) => room);
  const isHard = (id: string) => {
    const bay = bayOf.get(id);
    return bay !== undefined && roomsOf(bay).some(({ covering }) => covering === 'stone-or-ceramic');
  };
  const sealed = analysis.joints.filter((j) => j.kind !== 'structural' && j.bays.some(isHard));
  const lengthM = sealed.reduce((sum, j) => sum + j.lengthM, 0);
  const given = analysis.quantities.sealantLitres;
  const right = depths.map((depth) => (lengthM * widthMm * depth) / 1000);
  if (right.some((litres) => Math.abs(litres - given) < 0.01 + litres * 0.001)) return [];
  return [`quantities.sealantLitres is ${figure(given)}, should be ${right.map(figure).join(' or ')}`];
}
