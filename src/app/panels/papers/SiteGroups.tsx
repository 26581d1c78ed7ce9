import { recordsOf } from '../../../plan/papers.ts';
import { screedTypeOf } from '../../../plan/reference.ts';
import { DateField } from '../../parts/DateField.tsx';
import { figureShort } from '../../parts/format.ts';
import { NumberField } from '../../parts/NumberField.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { usePlan, usePlanResolved } from '../../state/hooks.ts';
import { PointList } from './PointsGroup.tsx';
import { PourGroup } from './PourGroup.tsx';
import { paperPut } from './put.ts';
import { SetOutGroup } from './SetOutGroup.tsx';

interface HeatingProps {
  /** Where what is entered does not agree. */
  readonly heating: readonly string[];
}

/** What the site works by: where joints are set out from, the pour, first heating and dryness. */
export function SiteGroups({ heating }: HeatingProps) {
  return (
    <>
      <SetOutGroup />
      <PourGroup />
      <HeatingGroup heating={heating} />
    </>
  );
}

function HeatingGroup({ heating }: HeatingProps) {
  const file = usePlan((state) => state.history.present.file);
  const { screed } = usePlanResolved();
  const { laidOn, dataSheetDays, dataSheet, highestSupplyC } = recordsOf(file);
  const { firstHeating } = screedTypeOf(screed.class);
  return (
    <section className="group">
      <h3>First heating and dryness</h3>
      <DateField
        label="Last bay laid on"
        value={laidOn}
        onChange={(date) => paperPut('records', 'Last bay laid on', { laidOn: date })}
      />
      <NumberField
        label="Wait by the data sheet"
        unit="d"
        source={dataSheet === '' ? firstHeating.source : dataSheet}
        range={null}
        value={dataSheetDays}
        least={0}
        most={365}
        step={1}
        decimals={0}
        refusal={(value) => (Number.isInteger(value) ? null : 'Enter whole days.')}
        onChange={(days, gesture) =>
          paperPut('records', `Wait by the data sheet ${days} d`, { dataSheetDays: days }, gesture)
        }
        onClear={(gesture) =>
          paperPut('records', 'Wait by the data sheet not known', { dataSheetDays: undefined }, gesture)
        }
      />
      <p className="small quiet">
        {screed.class} waits at least {firstHeating.value} days. The later of the two holds.
      </p>
      {heating.map((words) => (
        <p key={words} className="small tone-caution">
          {words}
        </p>
      ))}
      <TextField
        label="Data sheet"
        value={dataSheet}
        placeholder="Title and issue"
        onChange={(words) => paperPut('records', 'Data sheet', { dataSheet: words === '' ? undefined : words })}
      />
      <NumberField
        label="Highest supply"
        unit="°C"
        source="plan-data"
        range={null}
        value={highestSupplyC}
        least={20}
        most={90}
        step={1}
        decimals={0}
        onChange={(value, gesture) =>
          paperPut('records', `Highest supply ${figureShort(value, 0)} °C`, { highestSupplyC: value }, gesture)
        }
        onClear={(gesture) => paperPut('records', 'Highest supply not known', { highestSupplyC: undefined }, gesture)}
      />
      <PointList
        kind="test"
        words="Dryness is tested there before the covering is laid: only the test releases the floor."
      />
    </section>
  );
}
