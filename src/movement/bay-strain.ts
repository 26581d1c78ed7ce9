import type { Plan, Room } from '../plan/plan.ts';
import { type BayBody, bayIsUnder, type Footprint, footprintOf } from './bay-body.ts';
import { strainMoisture, strainThermal } from './strain.ts';

/** What a bay does freely, mm/mm, each >= 0. The two cases are run apart: drying never reduces the closing that is provided for. */
export interface BayStrain {
  /** Growth by warming and swelling. */
  readonly growing: number;
  /** Shortening by cooling and shrinkage. */
  readonly shortening: number;
}

/** What warms and cools the bays of a plan. */
export interface Climate {
  readonly plan: Plan;
  readonly rooms: ReadonlyMap<string, Room>;
  readonly suns: readonly { readonly highestC: number; readonly footprint: Footprint }[];
}

export function planClimate(plan: Plan): Climate {
  return {
    plan,
    rooms: new Map(plan.rooms.map((room) => [room.id, room])),
    suns: plan.sunZones.map(({ outline, highestC }) => ({ highestC, footprint: footprintOf(outline) })),
  };
}

/** Greatest warming and cooling of a bay from the temperature at which it was laid, K, each >= 0.
 *
 *  Room by room, as a bay over several is laid, warmed and cooled room by room: warming from the laying of a room to its own highest
 *  temperature or that of a sun zone over any of the bay, cooling from its laying to its own lowest; then the greatest of the rooms. An unheated
 *  bay is taken at the plan's temperatures as well unless its rooms have their own: a plan names its highest temperature without saying
 *  what warms the floor, and the greater movement is the safe reading.
 *  Example: laid at 15 C, heated to 45 C, in a sun zone of 55 C, at least 5 C -> warming 40 K, cooling 10 K. Two rooms, one laid at 25 C that
 *  falls to 15 C and one laid at 15 C that falls to 5 C -> cooling 10 K. */
export function bayTemperatures(
  bay: BayBody,
  { plan, rooms, suns }: Climate,
): { readonly warmingK: number; readonly coolingK: number } {
  const own = bay.rooms.map((id) => rooms.get(id)?.temperatures).filter((found) => found !== undefined);
  const temperatures = own.length > 0 ? own : [plan.temperatures];
  const sun = suns.filter((sun) => bayIsUnder(bay, sun.footprint)).map((sun) => sun.highestC);
  return {
    warmingK: Math.max(0, ...temperatures.map((t) => Math.max(t.highestC, ...sun) - t.layingC)),
    coolingK: Math.max(0, ...temperatures.map((t) => t.layingC - t.lowestC)),
  };
}

/** Free strain of a bay. Example: 12e-6 1/K, laid at 15 C and heated to 45 C, 0.5 mm/m of shrinkage to come
 *  -> growing 0.36e-3, shortening 0.5e-3. */
export function bayStrain(bay: BayBody, climate: Climate): BayStrain {
  const { warmingK, coolingK } = bayTemperatures(bay, climate);
  const { expansionPerK, swellingMmPerM, shrinkageMmPerM } = climate.plan.screed;
  return {
    growing: strainThermal(expansionPerK, warmingK) + strainMoisture(swellingMmPerM),
    shortening: strainThermal(expansionPerK, coolingK) + strainMoisture(shrinkageMmPerM),
  };
}
