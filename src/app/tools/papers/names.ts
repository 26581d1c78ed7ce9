import type { PaperPoint, PaperPointKind } from '../../../plan/edits/paper-points.ts';
import { nameText } from '../../parts/format.ts';

/** What places for the papers are called on the screen. */

export const paperPointWords: Readonly<Record<PaperPointKind, string>> = {
  base: 'Base point',
  test: 'Test point',
  access: 'Access',
};

/** Example: "Base point 2" */
export function paperPointName({ kind, name }: Pick<PaperPoint, 'kind' | 'name'>): string {
  return kind === 'access' ? paperPointWords.access : `${paperPointWords[kind]} ${name}`;
}

/** Example: "Grid line A" */
export function gridLineName({ name }: { readonly name: string }): string {
  const shown = nameText(name);
  return shown === '' ? 'Grid line without a name' : `Grid line ${shown}`;
}
