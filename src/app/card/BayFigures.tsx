import type { Bay } from '../../plan/analysis.ts';
import type { BayLimits, Room } from '../../plan/plan.ts';
import { RoomCovering } from '../panels/CoveringsPanel.tsx';
import { area, figure, figureShort, length } from '../parts/format.ts';
import { Icon } from '../parts/Icon.tsx';
import { SourceText } from '../parts/SourceNote.tsx';
import type { Result } from '../state/analysisStore.ts';
import { CardFindings } from './CardFindings.tsx';
import { FiguresTable } from './FiguresTable.tsx';

/** A bay against the limits that it is held to, and what lies on it. */
export function BayFigures({ bay, result }: { readonly bay: Bay; readonly result: Result }) {
  const { plan } = result;
  const rooms = plan.rooms.filter((room) => bay.rooms.includes(room.id));
  const most = (key: 'areaM2' | 'lengthM' | 'aspect') => strictest(rooms, key);
  const held = bay.lengthM > Math.min(...rooms.map((room) => room.limits.aspectFromM));
  return (
    <>
      <p className={bay.within ? 'tone tone-within' : 'tone tone-fault'}>
        <Icon name={bay.within ? 'within' : 'fault'} />
        {bay.within ? 'Within its limits' : 'Over a limit'}
      </p>
      <FiguresTable
        rows={[
          { name: 'Area', value: area(bay.areaM2), limit: atMost(most('areaM2'), ' m²') },
          { name: 'Length', value: length(bay.lengthM), limit: atMost(most('lengthM'), ' m') },
          { name: 'Width', value: length(bay.widthM) },
          {
            name: 'Length to width',
            value: `${figure(bay.aspect, 2)} : 1`,
            limit: held ? atMost(most('aspect'), ' : 1') : 'not held at this length',
          },
          { name: 'Perimeter', value: length(bay.perimeterM) },
        ]}
      />
      <CardFindings id={bay.id} result={result} />
      {rooms.map((room) => (
        <RoomCovering wide key={room.id} id={room.id} name={`Covering, ${room.name}`} covering={room.covering} />
      ))}
      <details className="explain">
        <summary>Where the limits come from</summary>
        {[...new Set(rooms.flatMap((room) => Object.values(room.limitSources)))].map((source) => (
          <SourceText key={source} source={source} />
        ))}
      </details>
    </>
  );
}

/** A bay across rooms takes the strictest limit among them. */
function strictest(rooms: readonly Room[], key: keyof Pick<BayLimits, 'areaM2' | 'lengthM' | 'aspect'>): number {
  return Math.min(...rooms.map((room) => room.limits[key]));
}

function atMost(limit: number, unit: string): string {
  return Number.isFinite(limit) ? `at most ${figureShort(limit, 2)}${unit}` : 'no limit';
}
