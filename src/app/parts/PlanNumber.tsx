import { type DefaultKey, defaults } from '../../plan/reference.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { commit } from '../state/planStore.ts';
import { figureShort } from './format.ts';
import { NumberField } from './NumberField.tsx';
import { figureRange } from './SourceNote.tsx';

interface PlanNumberProps {
  /** Where the figure starts, its range and its source. */
  readonly figure: DefaultKey;
  readonly label: string;
  /** The label with what it is about, for where it stands alone; left out where it says so itself. */
  readonly name?: string;
  readonly value: number | null;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  readonly decimals: number;
  readonly edit: (file: PlanFile, value: number) => PlanFile;
}

const units: Readonly<Record<string, string>> = { C: '°C', '1': '' };

/** A figure of the plan with the source of its start value. */
export function PlanNumber({ figure, edit, name, ...field }: PlanNumberProps) {
  const start = defaults[figure];
  const unit = units[start.unit] ?? start.unit;
  const full = name ?? field.label;
  return (
    <NumberField
      {...field}
      name={full}
      unit={unit}
      source={start.source}
      range={figureRange(start)}
      onChange={(value, gesture) =>
        commit(`${full} ${figureShort(value, field.decimals)} ${unit}`.trim(), (file) => edit(file, value), gesture)
      }
    />
  );
}
