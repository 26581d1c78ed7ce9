import { useState } from 'react';
import { gridLineCautions } from '../../../documents/grid-line-cautions.ts';
import {
  gridEndsApart,
  gridLineAdded,
  gridLineBeside,
  gridLineChanged,
  gridLineRemoved,
  gridLinesOf,
} from '../../../plan/edits/grid-lines.ts';
import type { GridLine } from '../../../plan/papers.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { offSheet, type Tried, triedUnless } from '../../card/put.ts';
import { TextField } from '../../parts/TextField.tsx';
import { usePlan, usePlanResolved } from '../../state/hooks.ts';
import { commit } from '../../state/planStore.ts';
import { gridLineName } from '../../tools/papers/names.ts';
import { type Added, ItemFolds, TakeAway } from './ItemFolds.tsx';
import { PlaceFields } from './PlaceFields.tsx';
import { placeChoose, placeTake, usePlaceChosen } from './place-chosen.ts';
import { pointPlace } from './point-place.ts';

/** Lines of the building's grid: placed on the board or along the floor, named, and moved by typing. */
export function GridLineList() {
  const file = usePlan((state) => state.history.present.file);
  const plan = usePlanResolved();
  const lines = gridLinesOf(file);
  const [added, setAdded] = useState<Added | null>(null);
  const cautions = gridLineCautions({ file, plan });
  const add = () => {
    const after = gridLineAdded(file, gridLineBeside(file));
    const line = gridLinesOf(after).at(-1);
    if (line === undefined) return;
    commit(`Add ${inSentence(line)}`, () => after);
    setAdded({ index: lines.length });
  };
  return (
    <div className="point-list">
      <p className="small quiet">
        Lines of the building's grid: joints are set out from two that are square to each other, or along one.
      </p>
      <ItemFolds
        items={lines}
        summary={(i) => (lines[i] === undefined ? '' : gridLineName(lines[i]))}
        cautions={(i) => cautions.filter(({ index }) => index === i).map(({ words }) => words)}
        added={added}
        chosen={usePlaceChosen('grid')}
        onUnfold={(i) => placeChoose('grid', i)}
      >
        {(i) => lines[i] !== undefined && <GridLineFields line={lines[i]} index={i} />}
      </ItemFolds>
      <div className="deeds">
        <button type="button" className="button framed" onClick={(event) => pointPlace('grid', event.currentTarget)}>
          Place a grid line on the board
        </button>
        <button type="button" className="button framed" onClick={add}>
          Add a grid line
        </button>
      </div>
    </div>
  );
}

function inSentence(line: GridLine): string {
  const title = gridLineName(line);
  return title.charAt(0).toLowerCase() + title.slice(1);
}

function GridLineFields({ line, index }: { readonly line: GridLine; readonly index: number }) {
  const of = inSentence(line);
  const edit = (end: 'from' | 'to') => (file: PlanFile, at: GridLine['from']) =>
    endMoved(file, index, { ...line, [end]: at });
  return (
    <>
      <TextField
        label="Name"
        value={line.name}
        placeholder="Such as A or 1"
        refusal={(name) => (name === '' ? 'A grid line has a name: enter one, such as A or 1.' : null)}
        onChange={(name) => commit(`Name ${of}`, (file) => gridLineChanged(file, index, { name }))}
      />
      <p className="small quiet ends">First end</p>
      <PlaceFields of={of} at={line.from} end="first end" edit={edit('from')} />
      <p className="small quiet ends">Second end</p>
      <PlaceFields of={of} at={line.to} end="second end" edit={edit('to')} />
      <div className="deeds">
        <TakeAway
          of={of}
          onTake={() => placeTake(`Take ${of} away`, { kind: 'grid', index }, (file) => gridLineRemoved(file, index))}
        />
      </div>
    </>
  );
}

function endMoved(file: PlanFile, index: number, { from, to }: GridLine): Tried {
  if (!gridEndsApart({ from, to })) return 'The two ends would lie at one place.';
  return triedUnless(offSheet, file, gridLineChanged(file, index, { from, to }));
}
