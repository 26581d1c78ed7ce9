import { roundedText } from '../plan/figure-words.ts';
import { papersOf } from '../plan/papers.ts';
import { screedTypeOf } from '../plan/reference.ts';
import type { FormBlock } from './form.ts';
import type { PaperSource } from './paper-source.ts';
import { type ColumnOf, columnText } from './table.ts';
import { heldSpace, oneLine } from './words.ts';

/** What forms have in common. */

export function head(text: string): FormBlock {
  return { kind: 'head', text };
}

export function text(...lines: readonly string[]): FormBlock {
  return { kind: 'text', lines };
}

export function checks(...items: readonly string[]): FormBlock {
  return { kind: 'checks', items };
}

export function signatures(...parties: readonly string[]): FormBlock {
  return { kind: 'signatures', parties };
}

/** What the paper is of, and what goes with it. */
export function aboutFields({ plan, file }: PaperSource, more: readonly (readonly [string, string])[] = []): FormBlock {
  const { project } = papersOf(file);
  const { screed } = plan;
  return {
    kind: 'fields',
    fields: [
      ['Project', oneLine(project)],
      ['Plan', oneLine(plan.name)],
      [
        'Screed',
        `${screed.class} (${screedTypeOf(screed.class).name}), ${roundedText(screed.thicknessMm, 1)}${heldSpace}mm`,
      ],
      ...more,
    ],
  };
}

/** A column to write in. */
export function toFill<Row>(heading: string, unit: string | null = null): ColumnOf<Row> {
  return { ...columnText<Row>(heading, () => null), unit, toFill: true };
}

/** Rows that are all to be filled. */
export function emptyRows(count: number): readonly null[] {
  return Array.from({ length: count }, () => null);
}
