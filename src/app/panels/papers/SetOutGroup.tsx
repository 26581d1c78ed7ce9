import type { PaperSource } from '../../../documents/paper-source.ts';
import { floorFrame } from '../../../documents/setting-out-frame.ts';
import { papersOf, type SetOutFace } from '../../../plan/papers.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { FieldNote, type Note } from '../../parts/FieldNote.tsx';
import { usePlan } from '../../state/hooks.ts';
import { choicesOf } from './choices.ts';
import { useFloorNow } from './floor-now.ts';
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
  const floor = useFloorNow();
  return (
    <section className="group">
      <h3>Set out from</h3>
      <p className="small quiet">Base points go before grid lines, and grid lines before walls.</p>
      {floor !== null && (
        <p className="small" role="status">
          {frameWords(floor)}
        </p>
      )}
      <PointList
        kind="base"
        words="Two points marked on site: joints are set out along the line from the first to the second, and square to it."
      />
      <GridLineList file={file} floor={floor} />
      <ChoiceField
        label="Dimensions from"
        value={papersOf(file).face}
        choices={choicesOf(faceWords)}
        note={(id) => <FieldNote id={id} note={faceNote(floor)} />}
        onChange={(value) => paperPut('papers', `Dimensions from ${faceWords[value].toLowerCase()}`, { face: value })}
      />
    </section>
  );
}

/** What joints are set out from as the plan stands. */
function frameWords(floor: PaperSource): string {
  const frame = floorFrame(floor);
  if (frame === null) return 'At present from the walls of each room.';
  return `At present from ${frame.from.charAt(0).toLowerCase()}${frame.from.slice(1)}: ${frame.ways}.`;
}

function faceNote(floor: PaperSource | null): Note | null {
  if (floor === null || floorFrame(floor) === null) return null;
  return { tone: 'quiet', words: 'Counts where joints are set out from walls: points and grid lines have no face.' };
}
