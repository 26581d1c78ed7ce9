import { namesOf, oneLine } from '../../documents/words.ts';
import { stripTakes } from '../../movement/strip.ts';
import type { Edge } from '../../plan/analysis.ts';
import { planSectionChanged } from '../../plan/edits/settings.ts';
import { rules } from '../../plan/reference.ts';
import { panelHeir } from '../parts/focus.ts';
import { figureShort, length, movement } from '../parts/format.ts';
import { PlanNumber } from '../parts/PlanNumber.tsx';
import { widthRanges } from '../parts/ranges.ts';
import { Sample } from '../parts/Sample.tsx';
import { ThingList, type ThingRow } from '../parts/ThingList.tsx';
import { Toned } from '../parts/Toned.tsx';
import type { Result } from '../state/analysisStore.ts';
import { usePlanResolved } from '../state/hooks.ts';
import { edgeThing } from '../state/thing.ts';
import { worstOf } from '../state/worst.ts';
import type { PanelProps } from './panel.ts';

/** What stands in the floor or against it: columns, pipes, joinery, held places, and the edge strip along them all. */
export function ObstaclesPanel({ result, onChoose }: PanelProps) {
  const { edgeStrip } = usePlanResolved();
  const takesMm = stripTakes(edgeStrip.thicknessMm, edgeStrip.usableTravel);
  return (
    <>
      <section ref={panelHeir} className="group">
        <h3>Edge strip</h3>
        <PlanNumber
          figure="stripThicknessMm"
          label="Thickness"
          name="Edge strip thickness"
          value={edgeStrip.thicknessMm}
          {...widthRanges.edgeStrip}
          step={1}
          decimals={1}
          edit={(file, thicknessMm) => planSectionChanged(file, 'edgeStrip', { thicknessMm })}
        />
        <PlanNumber
          figure="stripTravel"
          label="Usable travel"
          name="Edge strip travel"
          value={edgeStrip.usableTravel}
          least={0.05}
          most={1}
          step={0.05}
          decimals={2}
          edit={(file, usableTravel) => planSectionChanged(file, 'edgeStrip', { usableTravel })}
        />
        <p className="small quiet">
          Takes {movement(takesMm)}; at least {movement(rules.stripLeastTravelMm.value)} is asked.
        </p>
      </section>
      {result !== null && <Objects result={result} onChoose={onChoose} />}
      {result !== null && (
        <section className="group">
          <h3>
            Edges <span className="quiet">{result.analysis.edges.length}</span>
          </h3>
          <ThingList label="Edges" rows={edgeRows(result)} onChoose={onChoose} />
        </section>
      )}
    </>
  );
}

const alongWords: Readonly<Record<Edge['along'], string>> = {
  wall: 'Wall',
  column: 'Column',
  pipe: 'Pipe',
  joinery: 'Joinery',
};

function edgeRows({ plan, analysis }: NonNullable<PanelProps['result']>): readonly ThingRow[] {
  const names = namesOf(plan, analysis);
  const worst = worstOf(analysis);
  return analysis.edges.map((edge) => ({
    thing: edgeThing(edge),
    lead: edge.id,
    name: `${alongWords[edge.along]}${edge.object === null ? '' : ` ${edge.object}`}, ${names.room(edge.room)}`,
    value: <Toned severity={worst.get(edge.id)}>{movement(edge.movementMm)}</Toned>,
    more: `${length(edge.lengthM)}, bay ${edge.bay}`,
  }));
}

const underWords = {
  insulated: 'On insulated floor',
  'no-insulation': 'Held to the slab (no insulation)',
  'built-off-slab': 'Built off the slab',
} as const;

interface ObjectsProps extends Pick<PanelProps, 'onChoose'> {
  readonly result: Result;
}

function Objects({ result: { plan, analysis }, onChoose }: ObjectsProps) {
  const worst = worstOf(analysis);
  const row = (key: string, name: string, more: string, sample: ThingRow['lead']): ThingRow => ({
    thing: { kind: 'object', key },
    lead: sample,
    name,
    value: <Toned severity={worst.get(key)} />,
    more,
  });
  const rows = [
    ...plan.joinery.map(({ id, name, under, fixedThrough }) =>
      row(
        id,
        oneLine(name),
        `${underWords[under]}${fixedThrough ? ', fixed through to the slab' : ''}`,
        <Sample
          of={{
            shape: 'fill',
            style:
              under === 'no-insulation' ? 'held' : under === 'insulated' ? 'joinery-insulated' : 'joinery-built-off',
          }}
        />,
      ),
    ),
    ...plan.slabContacts.map(({ id }) =>
      row(id, `Slab contact ${id}`, 'Held to the slab', <Sample of={{ shape: 'fill', style: 'held' }} />),
    ),
    ...plan.columns.map(({ id }) =>
      row(id, `Column ${id}`, 'Strip all round', <Sample of={{ shape: 'fill', style: 'column' }} />),
    ),
    ...plan.pipes.map(({ id, diameterMm }) =>
      row(
        id,
        `Pipe ${id}`,
        `${figureShort(diameterMm, 1)} mm across`,
        <Sample of={{ shape: 'fill', style: 'pipe' }} />,
      ),
    ),
    ...plan.sunZones.map(({ id, highestC }) =>
      row(id, `Sun ${id}`, `Up to ${figureShort(highestC, 1)} °C`, <Sample of={{ shape: 'fill', style: 'sun' }} />),
    ),
    ...plan.structuralJoints.map(({ id, widthMm }) =>
      row(
        id,
        `Joint of the building ${id}`,
        `${figureShort(widthMm, 1)} mm wide`,
        <Sample of={{ shape: 'line', style: 'joint-structural' }} />,
      ),
    ),
    ...plan.keepClear.map(({ id }) =>
      row(id, `Keep clear ${id}`, 'No intermediate joint', <Sample of={{ shape: 'fill', style: 'keep-clear' }} />),
    ),
  ];
  if (rows.length === 0) return null;
  return (
    <section className="group">
      <h3>
        In the floor <span className="quiet">{rows.length}</span>
      </h3>
      <ThingList label="In the floor" rows={rows} onChoose={onChoose} />
    </section>
  );
}
