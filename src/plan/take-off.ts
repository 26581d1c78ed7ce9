/** What a floor takes, as it is ordered: net, with its allowance, and in packs. */
export interface TakeOff {
  readonly lines: readonly TakeOffLine[];
  /** As entered, such as EUR; empty where it is not. */
  readonly currency: string;
  /** Null where no price is given. */
  readonly cost: TakeOffCost | null;
}

export interface TakeOffCost {
  /** Of the lines that have a price. */
  readonly total: number;
  /** Keys of the lines that could have one and have none. */
  readonly unpriced: readonly string[];
}

export const takeOffGroups = [
  'edge-strip',
  'profile',
  'sealant',
  'backer',
  'perimeter',
  'sleeves',
  'screed',
  'insulation',
  'membrane',
  'tiles',
] as const;
export type TakeOffGroup = (typeof takeOffGroups)[number];

/** One thing that is ordered. As it is shown, to so many decimals, `net` and the amount of the allowance add up to `gross`, and `cells` and `parts` each to
 *  `net`. */
export interface TakeOffLine {
  /** Which line it is, across edits: such as profile:field:10. */
  readonly key: string;
  readonly group: TakeOffGroup;
  readonly item: string;
  readonly spec: string;
  readonly unit: TakeOffUnit;
  readonly decimals: number;
  /** As measured, not rounded. */
  readonly net: number;
  /** What of it runs along walls, columns and so on, to the decimals shown; empty where it is all of one kind. */
  readonly parts: readonly TakeOffPart[];
  readonly allowance: TakeOffAllowance;
  /** Net and allowance, not rounded. */
  readonly gross: number;
  /** Null where nothing is ordered by this line, or the pack is not one that could be counted in. */
  readonly order: TakeOffOrder | null;
  readonly price: TakeOffPrice | null;
  readonly cost: number | null;
  /** Net by bay and room, to the decimals shown; none that reads nought. */
  readonly cells: readonly TakeOffCell[];
  /** What it was measured from. */
  readonly refs: readonly TakeOffRef[];
  /** What is not counted, taken for granted or to be looked up. */
  readonly notes: readonly string[];
  /** Keys of `shared/sources.json`. */
  readonly sources: readonly string[];
}

export interface TakeOffPart {
  readonly name: string;
  readonly amount: number;
}

export interface TakeOffAllowance {
  /** Such as "5 % cut to waste". */
  readonly words: string;
  /** To the decimals shown. */
  readonly amount: number;
}

export interface TakeOffOrder {
  readonly count: number;
  readonly unit: TakeOffUnit;
  /** Of one, such as 25 m; empty where it is a piece. */
  readonly content: string;
  /** What each room takes of it where each is served by itself; they add up to the count. Empty where the floor is served as a whole. */
  readonly rooms: readonly { readonly room: string; readonly count: number }[];
}

export interface TakeOffPrice {
  readonly amount: number;
  /** What it is the price of, such as roll. */
  readonly per: string;
}

export interface TakeOffCell {
  readonly room: string;
  readonly bay: string;
  readonly amount: number;
}

/** A thing on the drawing. */
export interface TakeOffRef {
  readonly kind: 'bay' | 'joint' | 'edge' | 'room' | 'object';
  readonly id: string;
  /** The rooms that it was counted in: two of a joint in a doorway. */
  readonly rooms: readonly string[];
}

/** What things are counted in by their number, of one. */
const unitsOfOne = {
  pieces: 'piece',
  rolls: 'roll',
  bars: 'bar',
  cartridges: 'cartridge',
  sleeves: 'sleeve',
  loads: 'load',
  packs: 'pack',
  tiles: 'tile',
  boxes: 'box',
} as const;

/** Of several. */
export type TakeOffUnit = 'm' | 'm\u00b2' | 'm\u00b3' | 'l' | 'kg' | keyof typeof unitsOfOne;

/** A unit in the number that goes with a figure as it is shown. Example: 1, "rolls" -> "roll"; 2, "rolls" -> "rolls" */
export function takeOffUnit(figure: number, unit: TakeOffUnit): string {
  const units: Readonly<Partial<Record<TakeOffUnit, string>>> = unitsOfOne;
  return figure === 1 ? (units[unit] ?? unit) : unit;
}

/** What of a line falls to a room, as it is shown. */
export function takeOffNet({ cells }: Pick<TakeOffLine, 'cells'>, room: string): number {
  return cells.filter((cell) => cell.room === room).reduce((sum, { amount }) => sum + amount, 0);
}

/** What a line was measured from in a room. @param room null: on the whole floor */
export function takeOffRefs({ refs }: Pick<TakeOffLine, 'refs'>, room: string | null): readonly TakeOffRef[] {
  return room === null ? refs : refs.filter(({ rooms }) => rooms.includes(room));
}
