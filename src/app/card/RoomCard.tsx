import { useMemo } from 'react';
import { objectChanged } from '../../plan/edits/objects.ts';
import { planRoomsChanged } from '../../plan/edits/settings.ts';
import type { Room } from '../../plan/plan.ts';
import { planResolve } from '../../plan/resolve.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { RoomCovering } from '../panels/CoveringsPanel.tsx';
import { Fold } from '../parts/Fold.tsx';
import { area, figureShort } from '../parts/format.ts';
import { TextField } from '../parts/TextField.tsx';
import { TickField } from '../parts/TickField.tsx';
import type { Result } from '../state/analysisStore.ts';
import { commit } from '../state/planStore.ts';
import { CardFindings } from './CardFindings.tsx';
import { Corners } from './CornersTable.tsx';
import { FiguresTable } from './FiguresTable.tsx';
import { FieldPair } from './LengthField.tsx';
import { PlaceFields, SizeFields } from './OutlineFields.tsx';
import { RoomOwn } from './RoomOwn.tsx';
import { ThingActions, TurnAndMirror } from './ThingActions.tsx';

interface RoomCardProps {
  readonly file: PlanFile;
  readonly id: string;
  readonly of: string;
  /** Null until there is one. */
  readonly result: Result | null;
}

/** A room of more bays says how many. */
const mostBays = 6;

/** A room: what it is called, its heat, its covering and its sides; then what the floor makes of it. */
export function RoomCard({ file, id, of, result }: RoomCardProps) {
  const room = useMemo(() => roomResolved(file, id), [file, id]);
  if (room === null) return null;
  const { name } = file.rooms.find((each) => each.id === id) ?? {};
  return (
    <>
      <TextField
        label="Name"
        value={name ?? ''}
        placeholder={id}
        onChange={(next) =>
          commit(`Rename ${of}`, (plan) => objectChanged(plan, id, { name: next === '' ? undefined : next }))
        }
      />
      <RoomCovering id={id} name={room.name} label="Covering" covering={room.covering} />
      <RoomHeat file={file} ids={[id]} heated={room.heated} zone={room.zone ?? ''} of={of} />
      <SizeFields file={file} id={id} of={of} words={['Length, across', 'Width, down']} />
      <RoomFigures room={room} result={result} />
      {result !== null && <CardFindings id={id} result={result} />}
      <Fold summary="Its own temperature and insulation">
        <RoomOwn file={file} room={room} of={of} />
      </Fold>
      <Fold summary="Place, turn and mirror">
        <PlaceFields file={file} id={id} of={of} by="corner" />
        <TurnAndMirror />
      </Fold>
      <Corners file={file} id={id} of={of} />
      <ThingActions />
    </>
  );
}

/** The room with every default filled in. */
function roomResolved(file: PlanFile, id: string): Room | null {
  const rooms = file.rooms.filter((room) => room.id === id);
  return planResolve({ ...file, rooms }).rooms[0] ?? null;
}

interface RoomHeatProps {
  readonly file: PlanFile;
  readonly ids: readonly string[];
  readonly heated: boolean;
  readonly zone: string;
  readonly of: string;
}

function RoomHeat({ file, ids, heated, zone, of }: RoomHeatProps) {
  return (
    <FieldPair>
      <TickField
        label="Heated"
        value={heated}
        onChange={(next) =>
          commit(next ? `Heat ${of}` : `No heating in ${of}`, (plan) =>
            planRoomsChanged(plan, ids, { heated: next ? undefined : false }),
          )
        }
      />
      <TextField
        label="Heating zone"
        value={zone}
        placeholder="none"
        suggestions={zonesOf(file)}
        onChange={(next) =>
          commit(next === '' ? `No heating zone for ${of}` : `Heating zone ${next} for ${of}`, (plan) =>
            planRoomsChanged(plan, ids, { zone: next === '' ? undefined : next }),
          )
        }
      />
    </FieldPair>
  );
}

/** Heating zones that the plan has. */
export function zonesOf({ rooms }: PlanFile): readonly string[] {
  return [...new Set(rooms.flatMap(({ zone }) => (zone === undefined || zone === '' ? [] : [zone])))].sort();
}

/** What only the analysis knows stands there once it does. */
function RoomFigures({ room, result }: { readonly room: Room; readonly result: Result | null }) {
  const floor = result?.analysis.quantities.rooms.find((each) => each.room === room.id);
  const bays = result?.analysis.bays.filter((bay) => bay.rooms.includes(room.id)) ?? [];
  const { layingC, highestC, lowestC } = room.temperatures;
  return (
    <FiguresTable
      rows={[
        ...(floor === undefined
          ? []
          : [
              { name: 'Floor', value: area(floor.floorM2) },
              {
                name: 'Bays',
                value: bays.length > mostBays ? String(bays.length) : bays.map((bay) => bay.id).join(', ') || 'none',
              },
            ]),
        {
          name: 'Laid, highest, lowest',
          value: `${[layingC, highestC, lowestC].map((c) => figureShort(c, 1)).join(', ')} °C`,
        },
      ]}
    />
  );
}
