import { orderStarts, pourOf } from '../../../plan/papers.ts';
import { figureShort } from '../../parts/format.ts';
import { NumberField } from '../../parts/NumberField.tsx';
import { figureRange } from '../../parts/SourceNote.tsx';
import { usePlan } from '../../state/hooks.ts';
import { useFloorNow } from './floor-now.ts';
import { PointList } from './PointsGroup.tsx';
import { PourDayList } from './PourDays.tsx';
import { paperPut } from './put.ts';

/** How much screed a day, where it is brought in, and what is laid on which day. */
export function PourGroup() {
  const file = usePlan((state) => state.history.present.file);
  const floor = useFloorNow();
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
      {floor !== null && floor.analysis.bays.length > 0 && <PourDayList floor={floor} />}
    </section>
  );
}
