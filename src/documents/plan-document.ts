/** What papers are for: to build by, to order and look up, to record on site, and for other programs. */
export const paperGroups = ['sheets', 'lists', 'records', 'data'] as const;
export type PaperGroup = (typeof paperGroups)[number];

export interface PlanDocument {
  /** End of the file's name; of several sheets the first has this, the others a number besides. */
  readonly name: string;
  /** What it is, and of what kind of file. */
  readonly words: string;
  readonly group: PaperGroup;
  /** Made of the pages of others: soon made once they are there. */
  readonly gathers?: true;
  /** Makes it when it is asked for: one file, or a file a sheet. */
  readonly make: () => Promise<readonly PaperFile[]>;
}

export interface PaperFile {
  readonly name: string;
  /** Text is UTF-8. */
  readonly content: string | Uint8Array;
}
