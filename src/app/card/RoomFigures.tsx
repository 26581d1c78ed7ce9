import type { Room } from '../../plan/plan.ts';
import { RoomCovering } from '../panels/CoveringsPanel.tsx';
import { area, figureShort } from '../parts/format.ts';
import type { Result } from '../state/analysisStore.ts';
import { CardFindings } from './CardFindings.tsx';
import { FiguresTable } from './FiguresTable.tsx';

/** A room: its floor, its heat and what lies on it. */
export function RoomFigures({ room, result }: { readonly room: Room; readonly result: Result }) {
  const floor = result.analysis.quantities.rooms.find((each) => each.room === room.id);
  const bays = result.analysis.bays.filter((bay) => bay.rooms.includes(room.id));
  const { layingC, highestC, lowestC } = room.temperatures;
  return (
    <>
      <FiguresTable
        rows={[
          { name: 'Floor', value: floor === undefined ? 'not known' : area(floor.floorM2) },
          { name: 'Bays', value: bays.map((bay) => bay.id).join(', ') || 'none' },
          { name: 'Heated', value: room.heated ? (room.zone === null ? 'yes' : `zone ${room.zone}`) : 'no' },
          {
            name: 'Laid, highest, lowest',
            value: `${[layingC, highestC, lowestC].map((c) => figureShort(c, 1)).join(', ')} °C`,
          },
        ]}
      />
      <CardFindings id={room.id} result={result} />
      <RoomCovering id={room.id} name={room.name} label="Covering" covering={room.covering} />
    </>
  );
}
