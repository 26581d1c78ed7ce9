/** What a width may be, mm: fields refuse the rest, and no mend asks for it. */
export const widthRanges = {
  jointProfile: { least: 1, most: 100 },
  sealant: { least: 1, most: 50 },
  edgeStrip: { least: 1, most: 50 },
} as const;
