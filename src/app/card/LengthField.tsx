import type { ReactNode } from 'react';
import { useStore } from 'zustand';
import { FARTHEST_MM } from '../../plan/snap.ts';
import { EntryField } from '../parts/EntryField.tsx';
import type { FigureEntry } from '../parts/figure-entry.ts';
import { figure } from '../parts/format.ts';
import { type LengthUnit, lengthShort, lengthsRead } from '../parts/lengths.ts';
import { unitStore } from '../state/unit.ts';
import { type CardEdit, editPut, editTry } from './put.ts';

interface LengthFieldProps {
  readonly label: string;
  /** What it is the length of, as undo tells it: "Hall". */
  readonly of: string;
  /** The label where it says less than undo and a screen reader have to. */
  readonly name?: string;
  readonly valueMm: number;
  readonly leastMm?: number;
  readonly mostMm?: number;
  /** In a row of a table, whose head says the unit. */
  readonly cell?: 'x' | 'y';
  readonly edit: CardEdit<number>;
}

/** Where a place may lie, either way. */
const farthest = figure(FARTHEST_MM / 1000, 0);
const placeBounds = `−${farthest} to ${farthest} m`;

/** No side of a thing is shorter, mm. */
const sideLeastMm = 1;

/** A length of a thing, in the unit of the board; one with a unit of its own is taken too: "4.5 m". */
export function LengthField(props: LengthFieldProps) {
  const { label, of, name = label, valueMm, leastMm = sideLeastMm, mostMm = FARTHEST_MM, cell, edit } = props;
  const unit = useStore(unitStore, (state) => state.unit);
  const told = (mm: number) => `${name} of ${of} ${lengthShort(mm, unit)} ${unit}`;
  return (
    <EntryField
      {...lengthEntry(unit)}
      label={label}
      name={cell === undefined ? name : `${name}, ${unit}`}
      {...(cell === undefined ? {} : { unlabelled: true, part: cell })}
      value={valueMm}
      least={leastMm}
      most={mostMm}
      {...(leastMm < 0 && mostMm === FARTHEST_MM ? { bounds: placeBounds } : {})}
      refusal={(mm, gesture) => editTry(edit, mm, gesture)}
      onChange={(mm, gesture) => editPut(told(mm), edit, mm, gesture)}
    />
  );
}

/** An arrow key adds or takes so much, mm. */
const stepMm = 10;

/** How a length in mm is read and written in a unit. */
export function lengthEntry(unit: LengthUnit): Pick<FigureEntry, 'unit' | 'step' | 'decimals' | 'read' | 'write'> {
  return {
    unit,
    step: stepMm,
    decimals: 1,
    read(text) {
      const read = lengthsRead(text, unit);
      return read?.kind === 'one' ? read.mm : null;
    },
    write: (mm) => lengthShort(mm, unit),
  };
}

/** Two fields side by side: the sides of a rectangle, a place. */
export function FieldPair({ children }: { readonly children: ReactNode }) {
  return <div className="pair">{children}</div>;
}
