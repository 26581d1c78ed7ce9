import { boxOf } from '../../geometry/ring.ts';
import { rectangleSizeSet } from '../../plan/edits/corners.ts';
import { objectsMoved } from '../../plan/edits/move.ts';
import { objectsBox } from '../../plan/edits/objects.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { coordinateSnapped, FARTHEST_MM } from '../../plan/snap.ts';
import { FiguresTable } from './FiguresTable.tsx';
import { FieldPair, LengthField } from './LengthField.tsx';
import { useLengthWords } from './length-words.ts';
import { offSheet, type Tried, triedOf, triedUnless } from './put.ts';

interface ThingProps {
  readonly file: PlanFile;
  readonly id: string;
  readonly of: string;
}

interface SizeProps extends ThingProps {
  readonly words: readonly [across: string, down: string];
  /** What stays where it is: the top left corner, or the middle. */
  readonly about?: 'corner' | 'middle';
}

/** The sides of an upright rectangle, to be typed; of another shape how far it reaches. */
export function SizeFields({ file, id, of, words, about = 'corner' }: SizeProps) {
  const write = useLengthWords();
  const box = objectsBox(file, [id]);
  if (box === null) return null;
  const [widthMm, heightMm] = [box.maxX - box.minX, box.maxY - box.minY];
  if (rectangleSizeSet(file, id, {}).kind === 'refused') {
    return <FiguresTable rows={[{ name: 'Extent', value: write(widthMm, heightMm) }]} />;
  }
  return (
    <FieldPair>
      <LengthField
        label={words[0]}
        of={of}
        valueMm={widthMm}
        edit={(plan, mm) => sized(plan, id, { widthMm: mm }, about)}
      />
      <LengthField
        label={words[1]}
        of={of}
        valueMm={heightMm}
        edit={(plan, mm) => sized(plan, id, { heightMm: mm }, about)}
      />
    </FieldPair>
  );
}

function sized(
  file: PlanFile,
  id: string,
  size: { readonly widthMm?: number; readonly heightMm?: number },
  about: 'corner' | 'middle',
): Tried {
  const tried = triedOf(rectangleSizeSet(file, id, size));
  if (typeof tried === 'string' || about === 'corner') return tried;
  const [was, is] = [objectsBox(file, [id]) ?? boxOf([]), objectsBox(tried, [id]) ?? boxOf([])];
  return objectsMoved(tried, [id], [(was.maxX - is.maxX) / 2, (was.maxY - is.maxY) / 2]);
}

interface PlaceProps extends ThingProps {
  readonly by: 'corner' | 'middle';
}

const placeWords = {
  corner: ['Left side at', 'Top side at'],
  middle: ['Middle, across', 'Middle, down'],
} as const;

/** Where a thing stands on the sheet; typing moves it. */
export function PlaceFields({ file, id, of, by }: PlaceProps) {
  return (
    <FieldPair>
      {([0, 1] as const).map((axis) => (
        <LengthField
          key={axis}
          label={placeWords[by][axis]}
          of={of}
          valueMm={placeAt(file, id, by, axis)}
          leastMm={-FARTHEST_MM}
          edit={(plan, mm) => {
            const byMm = coordinateSnapped(mm - placeAt(plan, id, by, axis));
            return byMm === 0
              ? plan
              : triedUnless(offSheet, plan, objectsMoved(plan, [id], axis === 0 ? [byMm, 0] : [0, byMm]));
          }}
        />
      ))}
    </FieldPair>
  );
}

function placeAt(file: PlanFile, id: string, by: 'corner' | 'middle', axis: 0 | 1): number {
  const box = objectsBox(file, [id]);
  if (box === null) return 0;
  const [from, to] = axis === 0 ? [box.minX, box.maxX] : [box.minY, box.maxY];
  return by === 'corner' ? from : (from + to) / 2;
}
