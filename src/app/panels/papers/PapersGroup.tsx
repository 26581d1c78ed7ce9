import type { PaperGroup } from '../../../documents/plan-document.ts';
import { pourOf, recordsOf } from '../../../plan/papers.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { allPapers } from '../../files/paper-names.ts';
import { paperDownload } from '../../files/paper-work.ts';
import { Fold } from '../../parts/Fold.tsx';
import { Icon } from '../../parts/Icon.tsx';
import type { Laid } from '../../state/papersRun.ts';

const groupWords: Readonly<Record<PaperGroup, string>> = {
  sheets: 'Sheets to scale',
  lists: 'Lists',
  records: 'Records for the site',
  data: 'Data',
};

/** Every paper there is, each as a download, and all of them in one file. */
export function PapersGroup({ laid }: { readonly laid: Laid }) {
  const button = (name: string, words: string) => (
    <button key={name} type="button" className="button framed" onClick={() => void paperDownload(name)}>
      <Icon name="save" />
      {words}
    </button>
  );
  return (
    <section className="group" id="papers">
      <h3>To hand over</h3>
      <div className="downloads">{button(allPapers, 'All papers, ZIP')}</div>
      {(Object.keys(groupWords) as PaperGroup[]).map((group) => {
        const own = laid.list.filter((each) => each.group === group);
        if (own.length === 0) return null;
        return (
          <Fold key={group} summary={groupWords[group]} unfolded={group === 'sheets'}>
            <div className="downloads">{own.map(({ name, words }) => button(name, words))}</div>
            {group === 'records' && <CalendarNote file={laid.result.file} />}
          </Fold>
        );
      })}
    </section>
  );
}

/** What the calendar leaves out until it is entered. */
function CalendarNote({ file }: { readonly file: PlanFile }) {
  const pours = pourOf(file).days.some(({ date }) => date !== null);
  const heating = recordsOf(file).laidOn !== null;
  if (pours && heating) return null;
  const words = pours
    ? 'The calendar has first heating once the day is entered on which the last bay was laid.'
    : heating
      ? 'The calendar has pours once days of the pour have dates.'
      : 'There is a calendar once days of the pour have dates, or the day is entered on which the last bay was laid.';
  return <p className="small quiet">{words}</p>;
}
