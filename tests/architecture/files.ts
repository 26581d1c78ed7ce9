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

/** What the header of a folder must tell, and the words or list that tell it. */
const headerParts: readonly (readonly [what: string, told: RegExp])[] = [
  ['what it accepts', /^accepts\b/im],
  ['what it guarantees', /\b(guarantees|gives)\b/i],
  ['its steps', /^(steps:|1\. )/im],
];

/** @param header text of the folder's README.md, null where it has none */
export function headerViolations(folder: string, header: string | null): Violation[] {
  const path = `${folder}/README.md`;
  if (header === null) return [{ path, line: 1, problem: 'the folder has no header' }];
  return headerParts
    .filter(([, told]) => !told.test(header))
    .map(([what]) => ({ path, line: 1, problem: `the header does not tell ${what}` }));
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
