import { basename } from 'node:path';

/** Longest start of a file name, in UTF-16 units, so that with the document's own end it fits every file system. */
const longest = 80;

/** Names that some systems keep for devices. */
const reserved = /^(con|prn|aux|nul|com\d|lpt\d)$/iu;

/** The start of the documents' file names for each plan, in the order given: the plan's own file name without its ending
 *  and without characters that some system or shell could take for something else. No two are the same, whether or not
 *  the disk tells capitals apart. */
export function documentStems(files: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  const counts = new Map<string, number>();
  return files.map((file) => {
    const stem = safeStem(basename(file));
    let count = counts.get(stem.toLowerCase()) ?? 1;
    let name = count === 1 ? stem : `${stem}-${count}`;
    while (taken.has(name.toLowerCase())) name = `${stem}-${++count}`;
    counts.set(stem.toLowerCase(), count);
    taken.add(name.toLowerCase());
    return name;
  });
}

function safeStem(name: string): string {
  const stem = name
    .replace(/\.json$/iu, '')
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}\p{M}._-]+/gu, '-')
    .replace(/^[-.]+|[-.]+$/gu, '');
  const short = [...stem].reduce(
    (kept, character) => (kept.length + character.length > longest ? kept : kept + character),
    '',
  );
  if (short === '') return 'plan';
  return reserved.test(short) ? `plan-${short}` : short;
}
