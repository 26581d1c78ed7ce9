import type { Analysis } from '../plan/analysis.ts';
import type { Plan } from '../plan/plan.ts';
import type { PlanFile } from '../plan/schema.ts';

/** What all papers are made from. The same source gives the same bytes. */
export interface PaperSource {
  /** As it is saved, and as it travels inside SVG and PDF. */
  readonly file: PlanFile;
  readonly plan: Plan;
  readonly analysis: Analysis;
  /** Day on which the papers are made, such as 2027-03-01; the plan's own day of the sheets goes before it. */
  readonly date: string;
}

/** Fonts that go into a PDF, as the bytes of their files. */
export interface PaperFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** What several papers of one source need is made once for it: the same source gives the same. */
export function perSource<Source extends object, Made>(make: (source: Source) => Made): (source: Source) => Made {
  const known = new WeakMap<Source, { readonly made: Made }>();
  return (source) => {
    const found = known.get(source) ?? { made: make(source) };
    known.set(source, found);
    return found.made;
  };
}

/** Fonts that are read when they are first asked for, and once; what went wrong is tried again. */
export function fontsOnce(read: () => Promise<PaperFonts>): () => Promise<PaperFonts> {
  let asked: Promise<PaperFonts> | null = null;
  return () => {
    asked ??= read().catch((error: unknown) => {
      asked = null;
      throw error;
    });
    return asked;
  };
}
