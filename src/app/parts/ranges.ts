/** What a width may be, mm: fields refuse the rest, and no mend asks for it. */
export const widthRanges = {
  jointProfile: { least: 1, most: 100 },
  sealant: { least: 1, most: 50 },
  edgeStrip: { least: 1, most: 50 },
  structuralJoint: { least: 1, most: 200 },
} as const;

/** How many may stand in a row, and how many rows: a slip of the hand does not fill the sheet. */
export const rowRange = { least: 1, most: 100 } as const;

/** What figures of tiles may be: mosaic to slabs, lengths in mm, degrees, shares in %. */
export const tileRanges = {
  side: { least: 10, most: 3000 },
  grout: { least: 0, most: 50 },
  angle: { least: -180, most: 180 },
  allowance: { least: 0, most: 100 },
  perBox: { least: 1, most: 1000 },
} as const;
