import { useState } from 'react';
import { useStore } from 'zustand';
import { drawingStarts } from '../../plan/reference.ts';
import { EntryField } from '../parts/EntryField.tsx';
import { Fold } from '../parts/Fold.tsx';
import { rowRange } from '../parts/ranges.ts';
import { unitStore } from '../state/unit.ts';
import { objectRepeat } from '../tools/actions.ts';
import { toolStore } from '../tools/toolStore.ts';
import { FieldPair, lengthEntry } from './LengthField.tsx';

/** An object again and again in a row or in rows, itself the first of them. */
export function RepeatFold({ id }: { readonly id: string }) {
  return (
    <Fold summary="Repeat">
      <RepeatFields id={id} />
    </Fold>
  );
}

const count = { unit: '', ...rowRange, step: 1, decimals: 0 } as const;

function RepeatFields({ id }: { readonly id: string }) {
  const { column } = toolStore.getState().wishes;
  const [repeat, setRepeat] = useState({
    countX: 2,
    countY: 1,
    spacingXMm: column.spacingXMm,
    spacingYMm: column.spacingYMm,
  });
  const change = (part: Partial<typeof repeat>) => setRepeat((before) => ({ ...before, ...part }));
  return (
    <>
      <FieldPair>
        <EntryField
          {...count}
          label="In a row"
          value={repeat.countX}
          onChange={(mm) => change({ countX: Math.round(mm) })}
        />
        <EntryField
          {...count}
          label="Rows"
          value={repeat.countY}
          onChange={(mm) => change({ countY: Math.round(mm) })}
        />
      </FieldPair>
      <FieldPair>
        <Spacing label="Spacing in a row" value={repeat.spacingXMm} onChange={(spacingXMm) => change({ spacingXMm })} />
        <Spacing label="Spacing of rows" value={repeat.spacingYMm} onChange={(spacingYMm) => change({ spacingYMm })} />
      </FieldPair>
      <div className="deeds">
        <button
          type="button"
          className="button framed"
          disabled={repeat.countX * repeat.countY < 2}
          onClick={() => objectRepeat(id, repeat)}
        >
          Repeat it
        </button>
      </div>
    </>
  );
}

interface SpacingProps {
  readonly label: string;
  readonly value: number;
  readonly onChange: (mm: number) => void;
}

/** From middle to middle, in the unit of the board. */
function Spacing({ label, value, onChange }: SpacingProps) {
  const unit = useStore(unitStore, (state) => state.unit);
  const [, most = 1e5] = drawingStarts.columnSpacingMm.range ?? [];
  return (
    <EntryField label={label} {...lengthEntry(unit)} value={value} least={-most} most={most} onChange={onChange} />
  );
}
