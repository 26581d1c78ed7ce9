import type { Analysis, Finding, Severity } from '../../plan/analysis.ts';

const ranks: readonly Severity[] = ['note', 'caution', 'fault'];

/** A note is no reason to look twice. */
export function isGrave(severity: Severity | undefined): severity is 'fault' | 'caution' {
  return severity !== undefined && severity !== 'note';
}

/** The worst that the findings say about each bay, joint and object, by id. */
export function worstOf({ findings }: Pick<Analysis, 'findings'>): ReadonlyMap<string, Severity> {
  const worst = new Map<string, Severity>();
  for (const { refs, severity } of findings) {
    for (const id of refs) {
      const known = worst.get(id);
      if (known === undefined || ranks.indexOf(severity) > ranks.indexOf(known)) worst.set(id, severity);
    }
  }
  return worst;
}

export function findingsAbout({ findings }: Pick<Analysis, 'findings'>, ids: readonly string[]): readonly Finding[] {
  return findings.filter(({ refs }) => ids.some((id) => refs.includes(id)));
}
