import { statusNames } from '../../../documents/words.ts';
import { papersOf } from '../../../plan/papers.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { paperScales, paperSizes } from '../../../plan/schema-papers.ts';
import type { PapersLaid } from '../../papers-worker.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { DateField } from '../../parts/DateField.tsx';
import { FieldNote, type Note } from '../../parts/FieldNote.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { usePlan } from '../../state/hooks.ts';
import { choicesOf } from './choices.ts';
import { paperPut } from './put.ts';

const auto = 'auto';

type Words = 'project' | 'number' | 'designer';
const wordFields: readonly (readonly [Words, string, string])[] = [
  ['project', 'Project', 'Name or address'],
  ['number', 'Sheet number', 'Such as J-01'],
  ['designer', 'Designer', 'Responsible for it'],
];

/** What stands in the title block of every sheet, and what paper it goes on. */
export function SheetGroup({ faults }: Pick<PapersLaid, 'faults'>) {
  const file = usePlan((state) => state.history.present.file);
  const papers = papersOf(file);
  return (
    <section className="group">
      <h3>Title block</h3>
      {wordFields.map(([key, label, placeholder]) => (
        <TextField
          key={key}
          label={label}
          value={papers[key]}
          placeholder={placeholder}
          onChange={(words) =>
            paperPut('papers', `${label} of the sheets`, { [key]: words === '' ? undefined : words })
          }
        />
      ))}
      {papers.designer === '' && (
        <p className="small quiet">
          Without a designer the papers say that they are not checked for construction: drawings across them, the others
          at the foot.
        </p>
      )}
      <ChoiceField
        label="Status"
        value={papers.status}
        choices={choicesOf(statusNames)}
        note={(id) => <FieldNote id={id} note={faultsNote(faults)} />}
        onChange={(status) => paperPut('papers', `Sheets ${statusNames[status].toLowerCase()}`, { status })}
      />
      <DateField
        label="Day of the sheets"
        value={papers.date}
        onChange={(date) => paperPut('papers', 'Day of the sheets', { date })}
      />
      <PaperFields file={file} />
    </section>
  );
}

/** Nobody is kept from it: what stands open is said here and on the sheets. */
function faultsNote(faults: string | null): Note | null {
  return faults === null ? null : { tone: 'caution', words: `${faults}. Every paper says so in red.` };
}

function PaperFields({ file }: { readonly file: PlanFile }) {
  const { paper, scale, northDeg } = papersOf(file);
  return (
    <>
      <ChoiceField
        label="Paper"
        value={paper ?? auto}
        choices={[{ value: auto, words: 'As it fits' }, ...paperSizes.map((value) => ({ value, words: value }))]}
        onChange={(value) => paperPut('papers', 'Paper', { paper: value === auto ? undefined : value })}
      />
      <ChoiceField
        label="Scale"
        value={scale === null ? auto : String(scale)}
        choices={[
          { value: auto, words: 'As it fits' },
          ...paperScales.map((each) => ({ value: String(each), words: `1 : ${each}` })),
        ]}
        onChange={(value) => paperPut('papers', 'Scale', { scale: paperScales.find((each) => String(each) === value) })}
      />
      <NumberField
        label="North, clockwise from up"
        unit="°"
        source="plan-data"
        range={null}
        value={northDeg}
        least={-360}
        most={360}
        step={5}
        decimals={1}
        onChange={(deg, gesture) => paperPut('papers', 'Way to the north', { northDeg: deg }, gesture)}
        onClear={(gesture) => paperPut('papers', 'Way to the north not known', { northDeg: undefined }, gesture)}
      />
    </>
  );
}
