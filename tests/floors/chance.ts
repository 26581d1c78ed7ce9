/** Seeded numbers, so that a floor is named by its seed alone. */
export interface Chance {
  /** 0 up to 1 */
  share(): number;
  /** Whole number from low to high, both included. */
  whole(low: number, high: number): number;
  /** Number from low to high. */
  number(low: number, high: number): number;
  pick<T>(list: readonly T[]): T;
  yes(share: number): boolean;
}

export function createChance(seed: number): Chance {
  let state = (seed * 2654435761 + 1013904223) >>> 0;
  const share = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    share,
    whole: (low, high) => low + Math.floor(share() * (high - low + 1)),
    number: (low, high) => low + share() * (high - low),
    pick: (list) => {
      const value = list[Math.floor(share() * list.length)];
      if (value === undefined) throw new Error('nothing to pick from');
      return value;
    },
    yes: (chance) => share() < chance,
  };
}
