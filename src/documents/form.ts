import type { Table } from './table.ts';

/** A paper made of words, lists and places to write: what records and lists are laid out from (`form-pages.ts`). */
export interface Form {
  readonly title: string;
  readonly subject: string;
  readonly blocks: readonly FormBlock[];
}

export type FormBlock =
  | { readonly kind: 'head'; readonly text: string }
  | { readonly kind: 'text'; readonly lines: readonly string[] }
  /** Words with what is known of each; empty: a line to write on. */
  | { readonly kind: 'fields'; readonly fields: readonly (readonly [words: string, known: string])[] }
  | { readonly kind: 'table'; readonly table: Table }
  /** Each with a box to tick and room for initials. */
  | { readonly kind: 'checks'; readonly items: readonly string[] }
  /** Name, date and signature of each. */
  | { readonly kind: 'signatures'; readonly parties: readonly string[] };
