import { objectChanged } from '../../plan/edits/objects.ts';
import type { Room } from '../../plan/plan.ts';
import { defaults } from '../../plan/reference.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { figureShort } from '../parts/format.ts';
import { NumberField } from '../parts/NumberField.tsx';
import { figureRange } from '../parts/SourceNote.tsx';
import { TickField } from '../parts/TickField.tsx';
import { commit } from '../state/planStore.ts';

interface RoomOwnProps {
  readonly file: PlanFile;
  readonly room: Room;
  readonly of: string;
}

type RoomFile = PlanFile['rooms'][number];

/** Where a room is not as the plan has it: it goes its own way as soon as its tick is set, with the figure of the plan to
 *  start from. */
export function RoomOwn({ file, room, of }: RoomOwnProps) {
  const own = file.rooms.find(({ id }) => id === room.id);
  const highestC = own?.temperatures?.highestC;
  const insulationMm = own?.buildUp?.insulationMm;
  const highestSet = (value: number | undefined) => (plan: PlanFile) => highestChanged(plan, room.id, value);
  const insulationSet = (value: number | undefined) => (plan: PlanFile) => insulationChanged(plan, room.id, value);
  const startC = room.temperatures.highestC;
  const startMm = room.buildUp?.insulationMm ?? defaults.insulationMm.value;
  return (
    <>
      <TickField
        label={highestC === undefined ? `Highest as the plan, ${figureShort(startC, 1)} °C` : 'Its own highest'}
        value={highestC !== undefined}
        onChange={(ticked) =>
          commit(
            `Highest temperature of ${of} ${ticked ? 'its own' : 'as the plan'}`,
            highestSet(ticked ? startC : undefined),
          )
        }
      />
      {highestC !== undefined && (
        <NumberField
          label="Highest"
          name={`Highest temperature of ${of}`}
          unit="°C"
          source={defaults.highestC.source}
          range={figureRange(defaults.highestC)}
          value={highestC}
          least={-40}
          most={100}
          step={1}
          decimals={1}
          onChange={(value, gesture) =>
            commit(`Highest temperature of ${of} ${figureShort(value, 1)} °C`, highestSet(value), gesture)
          }
        />
      )}
      <TickField
        label={insulationMm === undefined ? 'Insulation as the plan' : 'Its own insulation'}
        value={insulationMm !== undefined}
        onChange={(ticked) =>
          commit(
            `Insulation of ${of} ${ticked ? 'its own' : 'as the plan'}`,
            insulationSet(ticked ? startMm : undefined),
          )
        }
      />
      {insulationMm !== undefined && (
        <NumberField
          label="Insulation"
          name={`Insulation of ${of}`}
          unit="mm"
          source={defaults.insulationMm.source}
          range={figureRange(defaults.insulationMm)}
          value={insulationMm}
          least={0}
          most={1000}
          step={5}
          decimals={1}
          onChange={(value, gesture) =>
            commit(`Insulation of ${of} ${figureShort(value, 1)} mm`, insulationSet(value), gesture)
          }
        />
      )}
    </>
  );
}

function highestChanged(file: PlanFile, id: string, highestC: number | undefined): PlanFile {
  const { highestC: _, ...others } = roomIn(file, id)?.temperatures ?? {};
  return objectChanged(file, id, {
    temperatures: fieldsOr({ ...others, ...(highestC === undefined ? {} : { highestC }) }),
  });
}

function insulationChanged(file: PlanFile, id: string, insulationMm: number | undefined): PlanFile {
  const { insulationMm: _, ...others } = roomIn(file, id)?.buildUp ?? {};
  const fields = { ...others, ...(insulationMm === undefined ? {} : { insulationMm }) };
  return objectChanged(file, id, { buildUp: fieldsOr(fields) });
}

function roomIn(file: PlanFile, id: string): RoomFile | undefined {
  return file.rooms.find((room) => room.id === id);
}

/** A part without fields is left out of the plan. */
function fieldsOr<Fields extends object>(fields: Fields): Fields | undefined {
  return Object.keys(fields).length === 0 ? undefined : fields;
}
