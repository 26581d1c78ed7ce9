import { basePair, frameLines, gridName, pointName } from '../../../documents/setting-out-frame.ts';
import { papersOf, type SetOutFace } from '../../../plan/papers.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { FieldNote, type Note } from '../../parts/FieldNote.tsx';
import { usePlan } from '../../state/hooks.ts';
import { choicesOf } from './choices.ts';
import { GridLineList } from './GridLines.tsx';
import { PointList } from './PointsGroup.tsx';
import { paperPut } from './put.ts';

const faceWords: Readonly<Record<SetOutFace, string>> = {
  plaster: 'Finished wall',
  structure: 'Bare structure',
  strip: 'Edge strip',
};

/** What joints are set out from: two points, lines of the grid, or the walls. */
export function SetOutGroup() {
  const file = usePlan((state) => state.history.present.file);
  const marks = marksText(file);
  return (
    <section className="group">
      <h3>Set out from</h3>
      <p className="small quiet">Base points go before grid lines, and grid lines before walls.</p>
      <p className="small" role="status">
        At present from {marks ?? 'the walls of each room'}.
      </p>
      <PointList
        kind="base"
        words="Two points marked on site: joints are set out along the line from the first to the second, and square to it."
      />
      <GridLineList />
      <ChoiceField
        label="Dimensions from"
        value={papersOf(file).face}
        choices={choicesOf(faceWords)}
        note={(id) => <FieldNote id={id} note={marks === null ? null : faceNote} />}
        onChange={(value) => paperPut('papers', `Dimensions from ${faceWords[value].toLowerCase()}`, { face: value })}
      />
    </section>
  );
}

const faceNote: Note = {
  tone: 'quiet',
  words: 'Counts where joints are set out from walls: points and grid lines have no face.',
};

/** The points or lines that joints are set out from as the plan stands; null: the walls. Example: "grid lines A and 1" */
function marksText(file: PlanFile): string | null {
  const pair = basePair(papersOf(file).basePoints);
  if (pair !== null) return `base points ${pair.map(pointName).join(' and ')}`;
  const lines = [...frameLines({ file })].map(gridName);
  if (lines.length === 0) return null;
  return lines.length === 1 ? `grid line ${lines[0]} alone` : `grid lines ${lines.join(' and ')}`;
}
