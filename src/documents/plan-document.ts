/** What papers are for: to build by, to order and look up, to record on site, and for other programs. */
export const paperGroups = ['sheets', 'lists', 'records', 'data'] as const;
export type PaperGroup = (typeof paperGroups)[number];

/** Told how far something is that is being made, from 0 to 1. */
export type ToldShare = (share: number) => void;

export interface PlanDocument {
  /** End of the file's name; of several sheets the first has this, the others a number besides. */
  readonly name: string;
  /** What it is, and of what kind of file. */
  readonly words: string;
  readonly group: PaperGroup;
  /** Made of the pages of others: soon made once they are there. */
  readonly gathers?: true;
  /** Makes it when it is asked for: one file, or a file a sheet. */
  readonly make: (told?: ToldShare) => Promise<readonly PaperFile[]>;
}

export interface PaperFile {
  readonly name: string;
  /** Text is UTF-8. */
  readonly content: string | Uint8Array;
}

/** A paper of pages, or a workbook, takes about so many times as long as a list or data: measured on the demo floors, and good for a bar alone. */
const pagesOverLists = 10;
const hasPages = /\.(?:pdf|svg|xlsx)$/u;

/** Makes documents one after the other. @param told how far all of them are, in hundredths */
export async function* documentsMade(
  documents: readonly Pick<PlanDocument, 'name' | 'make'>[],
  told: ToldShare,
): AsyncGenerator<readonly PaperFile[]> {
  const weighed = documents.map(({ name, make }) => ({ make, weight: hasPages.test(name) ? pagesOverLists : 1 }));
  const all = weighed.reduce((sum, { weight }) => sum + weight, 0);
  let [done, last] = [0, 0];
  const tell = (weight: number) => {
    const share = Math.floor((100 * weight) / all) / 100;
    if (share > last) told(share);
    last = share;
  };
  for (const { make, weight } of weighed) {
    yield await make((share) => tell(done + share * weight));
    done += weight;
    tell(done);
  }
}
