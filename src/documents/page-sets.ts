import { papersOf } from '../plan/papers.ts';
import { doorwayForm, doorwayPages } from './doorway-sheet.ts';
import type { Form } from './form.ts';
import { formPages, tableForm } from './form-pages.ts';
import { jointPlanPages } from './joint-plan.ts';
import type { Page } from './page.ts';
import type { PaperSource } from './paper-source.ts';
import type { PaperGroup, ToldShare } from './plan-document.ts';
import { planTables } from './plan-tables.ts';
import { pourForm } from './pour-papers.ts';
import { recordForms } from './records.ts';
import { revisionsForm } from './revisions-table.ts';
import { sectionPages } from './sections.ts';
import { setOutPages } from './set-out.ts';
import { pourPages, testPointPages } from './site-sheets.ts';

/** Pages that belong together and go out together. */
export interface PageSet {
  /** Of its files' names. */
  readonly stem: string;
  readonly words: string;
  readonly group: PaperGroup;
  /** Made once, when they are first asked for. */
  readonly pages: (told?: ToldShare) => readonly Page[];
  /** Drawn, and so of use as SVG as well. */
  readonly isDrawing: boolean;
}

/** What is looked up and added up in a spreadsheet, or stands on a form of its own, is not printed. */
const unprinted = ['take-off-rooms', 'take-off-bays', 'cuts', 'quantities', 'doorways', 'pour-plan', 'revisions'];

/** All pages of a plan, in the order in which they are handed over. */
export function pageSets(source: PaperSource): readonly PageSet[] {
  const { plan, analysis } = source;
  const sheet = (stem: string, words: string, make: PageSet['pages'], isDrawing: boolean): PageSet => ({
    stem,
    words,
    group: 'sheets',
    pages: once(make),
    isDrawing,
  });
  const lists = () => [
    ...planTables(source)
      .filter(({ name }) => !unprinted.includes(name))
      .map(({ make }) => tableForm(make(source), plan.name)),
    ...(papersOf(source.file).revisions.length === 0 ? [] : [revisionsForm(source)]),
  ];
  return [
    sheet('plan', 'Joint plan', (told) => jointPlanPages(source, told), true),
    sheet('sections', 'Build-up and joints in section', () => sectionPages(source), true),
    ...(plan.doorways.length === 0
      ? []
      : [
          sheet(
            'doorways',
            'Doorways',
            () => [...forms([doorwayForm(source)], source), ...doorwayPages(source)],
            false,
          ),
        ]),
    ...(analysis.tiles === null
      ? []
      : [sheet('set-out', 'Set-out sheet of the tiles', () => setOutPages(source), true)]),
    sheet('pour-plan', 'Pour plan', () => [...pourPages(source), ...forms([pourForm(source)], source)], false),
    {
      stem: 'lists',
      words: 'All lists',
      group: 'lists',
      pages: once(() => forms(lists(), source)),
      isDrawing: false,
    },
    {
      stem: 'records',
      words: 'Records and check lists',
      group: 'records',
      pages: once(() => [...(testPointPages(source) ?? []), ...forms(recordForms(source), source)]),
      isDrawing: false,
    },
  ];
}

function forms(list: readonly Form[], source: PaperSource): readonly Page[] {
  return formPages(list, source);
}

/** Makes it when it is first asked for, and once. */
export function once<Made>(make: (told?: ToldShare) => Made): (told?: ToldShare) => Made {
  let made: { readonly value: Made } | null = null;
  return (told) => {
    made ??= { value: make(told) };
    return made.value;
  };
}
