import { orderStarts, pourOf, recordsOf } from '../../../plan/papers.ts';
import { screedTypeOf } from '../../../plan/reference.ts';
import { DateField } from '../../parts/DateField.tsx';
import { figureShort } from '../../parts/format.ts';
import { NumberField } from '../../parts/NumberField.tsx';
import { figureRange } from '../../parts/SourceNote.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { usePlan, usePlanResolved } from '../../state/hooks.ts';
import { PointList } from './PointsGroup.tsx';
import { paperPut } from './put.ts';

/** What the site works by: where joints are set out from, the pour, first heating and dryness. */
export function SiteGroups() {
  return (
    <>
      <section className="group">
        <h3>Set out from</h3>
        <PointList
          kind="base"
          words="Two points marked on site: joints are set out along the line from the first to the second, and square to it. Without them joints are set out from the walls."
        />
      </section>
      <PourGroup />
      <HeatingGroup />
    </>
  );
}

function PourGroup() {
  const file = usePlan((state) => state.history.present.file);
  const start = orderStarts.mostM3PerDay;
  return (
    <section className="group">
      <h3>Pour</h3>
      <NumberField
        label="Most screed in a day"
        unit="m³"
        source={start.source}
        range={figureRange(start)}
        value={pourOf(file).mostM3PerDay}
        least={0.1}
        most={1e5}
        step={1}
        decimals={1}
        onChange={(value, gesture) =>
          paperPut('pour', `Most screed in a day ${figureShort(value, 1)} m³`, { mostM3PerDay: value }, gesture)
        }
      />
      <PointList kind="access" words="Screed is brought in there: bays are poured towards it." />
    </section>
  );
}

function HeatingGroup() {
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
