import { oneLine } from '../../documents/words.ts';
import { planSectionChanged } from '../../plan/edits/settings.ts';
import type { Plan } from '../../plan/plan.ts';
import { type ScreedClassKey, screedClassKeys, screedTypeOf } from '../../plan/reference.ts';
import { ChoiceField } from '../parts/ChoiceField.tsx';
import { panelHeir } from '../parts/focus.ts';
import { area, expansion, expansionFigure } from '../parts/format.ts';
import { PlanNumber } from '../parts/PlanNumber.tsx';
import { SourceText } from '../parts/SourceNote.tsx';
import { ThingList } from '../parts/ThingList.tsx';
import { usePlanResolved } from '../state/hooks.ts';
import { commit } from '../state/planStore.ts';
import { LoadsGroup } from './LoadsGroup.tsx';
import type { PanelProps } from './panel.ts';
import { RuleSetGroup } from './RuleSetGroup.tsx';

const celsius = { least: -40, most: 100, step: 1, decimals: 1 } as const;

/** Rules, screed and temperatures: what the floor is made of and what it must stand; then its rooms. */
export function FloorPanel({ result, onChoose }: PanelProps) {
  const plan = usePlanResolved();
  return (
    <>
      <RuleSetGroup plan={plan} />
      <ScreedGroup plan={plan} />
      <section ref={panelHeir} className="group">
        <h3>Temperatures of the screed</h3>
        <PlanNumber
          {...celsius}
          figure="layingC"
          label="At laying"
          name="Temperature at laying"
          value={plan.temperatures.layingC}
          edit={(file, layingC) => planSectionChanged(file, 'temperatures', { layingC })}
        />
        <PlanNumber
          {...celsius}
          figure="highestC"
          label="Highest"
          name="Highest temperature"
          value={plan.temperatures.highestC}
          edit={(file, highestC) => planSectionChanged(file, 'temperatures', { highestC })}
        />
        <PlanNumber
          {...celsius}
          figure="lowestC"
          label="Lowest"
          name="Lowest temperature"
          value={plan.temperatures.lowestC}
          edit={(file, lowestC) => planSectionChanged(file, 'temperatures', { lowestC })}
        />
      </section>
      <LoadsGroup plan={plan} />
      <RoomsGroup result={result} onChoose={onChoose} />
    </>
  );
}

const classChoices = screedClassKeys.map((value) => ({
  value,
  words: value,
  heading: screedTypeOf(value).name,
}));

function ScreedGroup({ plan }: { readonly plan: Plan }) {
  const key = plan.screed.class as ScreedClassKey;
  const { expansion: figure } = screedTypeOf(key);
  return (
    <section className="group">
      <h3>Screed</h3>
      <ChoiceField
        label="Class"
        value={key}
        choices={classChoices}
        onChange={(next) => commit(`Screed ${next}`, (file) => planSectionChanged(file, 'screed', { class: next }))}
        source={
          <>
            <p className="source-text">
              Thermal expansion {expansion(plan.screed.expansionPerK)}: so much a metre for each K.
            </p>
            <SourceText source={figure.source} range={expansionRange(figure.range)} />
          </>
        }
      />
      <PlanNumber
        figure="thicknessMm"
        label="Thickness"
        name="Screed thickness"
        value={plan.screed.thicknessMm}
        least={20}
        most={300}
        step={5}
        decimals={1}
        edit={(file, thicknessMm) => planSectionChanged(file, 'screed', { thicknessMm })}
      />
    </section>
  );
}

function expansionRange(range: readonly number[] | null): string | null {
  const [least, most] = range ?? [];
  return least === undefined || most === undefined ? null : `${expansionFigure(least)} to ${expansion(most)}`;
}

function RoomsGroup({ result, onChoose }: PanelProps) {
  const rooms = result?.plan.rooms ?? [];
  const areas = new Map(result?.analysis.quantities.rooms.map((room) => [room.room, room.floorM2]));
  const zoned = rooms.some((room) => room.zone !== null);
  const rows = rooms.map((room) => ({
    thing: { kind: 'room', key: room.id } as const,
    lead: zoned ? (room.zone ?? '') : null,
    name: oneLine(room.name),
    value: areas.has(room.id) ? area(areas.get(room.id) ?? 0) : '',
    more: room.heated ? null : 'Not heated',
  }));
  if (rows.length === 0) return null;
  return (
    <section className="group">
      <h3>
        Rooms <span className="quiet">{rows.length}</span>
      </h3>
      <ThingList label="Rooms" rows={rows} onChoose={onChoose} />
    </section>
  );
}
