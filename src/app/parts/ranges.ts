/** What a width may be, mm: fields refuse the rest, and no mend asks for it. */
export const widthRanges = {
  jointProfile: { least: 1, most: 100 },
  sealant: { least: 1, most: 50 },
  edgeStrip: { least: 1, most: 50 },
  structuralJoint: { least: 1, most: 200 },
} as const;

/** How many may stand in a row, and how many rows: a slip of the hand does not fill the sheet. */
export const rowRange = { least: 1, most: 100 } as const;
