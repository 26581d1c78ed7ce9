import type { BayShape, JointLine } from '../plan/analysis.ts';
import { roundedText } from '../plan/figure-words.ts';
import type { Room } from '../plan/plan.ts';
import { rules } from '../plan/reference.ts';

/** Depth of a sealant line: half its width, within 6 and 13 mm.
 *  @param widthMm mm   @returns mm. Source: sources.json#sealant-depth. Example: 8 mm -> 6 mm; 20 mm -> 10 mm; 40 mm -> 13 mm */
export function sealantDepth(widthMm: number): number {
  const { sealantDepthShare, sealantDepthLeastMm, sealantDepthMostMm } = rules;
  return Math.min(sealantDepthMostMm.value, Math.max(sealantDepthLeastMm.value, widthMm * sealantDepthShare.value));
}

/** Sealant in a joint, net, litres: length times width times depth.
 *  @param lengthM m   @param widthMm mm
 *  Source: sources.json#sealant-depth. Example: 10 m, 8 mm wide and so 6 mm deep -> 0.48 litres */
export function sealantLitres(lengthM: number, widthMm: number): number {
  return (lengthM * widthMm * sealantDepth(widthMm)) / 1000;
}

/** What of narrow joints is asked for otherwise: some texts make them as deep as wide (sources.json#sealant-depth).
 *  @param lengthM m   @param widthMm mm   @returns none where half the width is deep enough. Example: 10 m, 8 mm wide -> "... 0.64 l net ..." */
export function sealantDeepNotes(lengthM: number, widthMm: number): readonly string[] {
  const depthMm = sealantDepth(widthMm);
  if (depthMm > rules.sealantDepthLeastMm.value || depthMm >= widthMm) return [];
  const litres = roundedText((lengthM * widthMm * widthMm) / 1000, 2);
  return [
    `Where the data sheet wants so narrow a joint as deep as wide, it takes ${litres} l net: order by the data sheet.`,
  ];
}

/** Whether a joint is closed with sealant: where it comes up through stone or ceramic on either side. Other coverings run over it or bring
 *  a strip of their own, and a structural joint takes a profile for movement in three directions (sources.json#structural-joint). */
export function jointIsSealed(
  joint: JointLine,
  bays: ReadonlyMap<string, BayShape>,
  rooms: ReadonlyMap<string, Room>,
): boolean {
  const hard = (bay: string) => bays.get(bay)?.rooms.some((room) => rooms.get(room)?.covering === 'stone-or-ceramic');
  return joint.kind !== 'structural' && joint.bays.some(hard);
}
