import type { Point } from '../../../geometry/point.ts';
import { FARTHEST_MM } from '../../../plan/snap.ts';
import { FieldPair, LengthField } from '../../card/LengthField.tsx';
import type { CardEdit } from '../../card/put.ts';

interface PlaceFieldsProps {
  /** What lies there, within a sentence: "base point 1". */
  readonly of: string;
  readonly at: Point;
  /** How the two fields are told from others of the same thing; left out where it has but one place. */
  readonly end?: string;
  readonly edit: CardEdit<Point>;
}

/** A place on the floor, moved by typing. */
export function PlaceFields({ of, at: [x, y], end, edit }: PlaceFieldsProps) {
  const named = (label: string) => (end === undefined ? {} : { name: `${label}, ${end}` });
  return (
    <FieldPair>
      <LengthField
        label="Across"
        {...named('Across')}
        of={of}
        valueMm={x}
        leastMm={-FARTHEST_MM}
        edit={(file, mm) => (mm === x ? file : edit(file, [mm, y]))}
      />
      <LengthField
        label="Down"
        {...named('Down')}
        of={of}
        valueMm={y}
        leastMm={-FARTHEST_MM}
        edit={(file, mm) => (mm === y ? file : edit(file, [x, mm]))}
      />
    </FieldPair>
  );
}
