import type { Source, Violation } from './source.ts';

const longestFile = 400;

/** Files that have grown past 400 lines and are not named, with the reason, in DEVELOPERS.md. */
export function lengthViolations(sources: readonly Source[], developers: string): Violation[] {
  return sources.flatMap(({ path, text }) => {
    const lines = text.trimEnd().split('\n').length;
    if (lines <= longestFile || developers.includes(`\`${path}\``)) return [];
    return [{ path, line: longestFile, problem: `${lines} lines: split it, or say why in DEVELOPERS.md` }];
  });
}

/** What the header of a folder must say, each at the start of a line. */
const headerWords = ['Accepts', 'Guarantees', 'Steps'];

/** @param header text of the folder's README.md, null where it has none */
export function headerViolations(folder: string, header: string | null): Violation[] {
  const path = `${folder}/README.md`;
  if (header === null) return [{ path, line: 1, problem: 'the folder has no header' }];
  return headerWords
    .filter((word) => !header.split('\n').some((line) => line.startsWith(`${word}:`)))
    .map((word) => ({ path, line: 1, problem: `the header has no line "${word}: ..."` }));
}

/** A lock file with download addresses ties every install to one host. */
export function lockViolations({ path, text }: Source): Violation[] {
  return text
    .split('\n')
    .flatMap((line, i) => (/"resolved":/.test(line) ? [{ path, line: i + 1, problem: 'a download address' }] : []));
}

/** Absolute paths of somebody's machine, and hosts that packages come from. Put together, so that this file is none. */
const machineText = new RegExp(
  `(?<![\\w.])/(${['home', 'root', 'tmp', 'work', 'Users'].join('|')})/|${['npm', 'js.org'].join('')}`,
);

export function machineViolations({ path, text }: Source): Violation[] {
  return text
    .split('\n')
    .flatMap((line, i) =>
      machineText.test(line) ? [{ path, line: i + 1, problem: 'names a machine or a host' }] : [],
    );
}
