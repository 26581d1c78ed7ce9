import { planLoadsEntered, planSectionChanged } from '../../plan/edits/settings.ts';
import type { Plan } from '../../plan/plan.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { figureShort } from '../parts/format.ts';
import { NumberField } from '../parts/NumberField.tsx';
import { PlanNumber } from '../parts/PlanNumber.tsx';
import { commit } from '../state/planStore.ts';

/** What the thickness is checked against. Until it is entered, the check reads "not checked". */
export function LoadsGroup({ plan: { loads, heating } }: { readonly plan: Plan }) {
  const kPa = { unit: 'kN/m²', least: 0, most: 100, step: 0.5, decimals: 2, range: null } as const;
  const table = { source: 'din-18560-2-thickness' } as const;
  const put = (label: string, change: Partial<NonNullable<PlanFile['loads']>>, gesture: string) =>
    commit(label, (file) => planLoadsEntered(file, { imposedKPa: 0, ...file.loads, ...change }), gesture);
  return (
    <section className="group">
      <h3>Loads and pipe</h3>
      <NumberField
        {...kPa}
        {...table}
        label="Imposed load"
        value={loads?.imposedKPa ?? null}
        onChange={(imposedKPa, gesture) =>
          put(`Imposed load ${figureShort(imposedKPa, 2)} kN/m²`, { imposedKPa }, gesture)
        }
      />
      {loads !== null && (
        <>
          <NumberField
            {...kPa}
            label="Point load"
            unit="kN"
            source="point-load-column"
            value={loads.pointKN}
            onChange={(pointKN, gesture) => put(`Point load ${figureShort(pointKN, 2)} kN`, { pointKN }, gesture)}
          />
          <NumberField
            {...kPa}
            label="Dead load allowed"
            source="dead-load"
            value={loads.deadAllowanceKPa}
            onChange={(deadAllowanceKPa, gesture) =>
              put(`Dead load allowed ${figureShort(deadAllowanceKPa, 2)} kN/m²`, { deadAllowanceKPa }, gesture)
            }
          />
        </>
      )}
      <PlanNumber
        figure="pipeOutsideMm"
        label="Pipe, outside"
        value={heating?.pipeOutsideMm ?? null}
        least={6}
        most={50}
        step={1}
        decimals={1}
        edit={(file, pipeOutsideMm) => planSectionChanged(file, 'heating', { pipeOutsideMm })}
      />
    </section>
  );
}
