import { oneLine } from '../../documents/words.ts';
import { regionArea } from '../../geometry/region.ts';
import type { Bay, Severity } from '../../plan/analysis.ts';
import { limitExceeded } from '../../plan/exceed.ts';
import type { BayLimits, Room } from '../../plan/plan.ts';
import { RoomCovering } from '../panels/CoveringsPanel.tsx';
import { area, figure, length, limitFigure } from '../parts/format.ts';
import { Icon } from '../parts/Icon.tsx';
import { SourceText } from '../parts/SourceNote.tsx';
import type { Result } from '../state/analysisStore.ts';
import { isGrave, worstOf } from '../state/worst.ts';
import { CardFindings } from './CardFindings.tsx';
import { FiguresTable } from './FiguresTable.tsx';

/** A bay against the limits that it is held to, and what lies on it. */
export function BayFigures({ bay, result }: { readonly bay: Bay; readonly result: Result }) {
  const { plan } = result;
  const rooms = plan.rooms.filter((room) => bay.rooms.includes(room.id));
  const most = (key: 'areaM2' | 'lengthM' | 'aspect') => strictest(rooms, key);
  const measuredM2 = regionArea({ outline: bay.measured, holes: bay.holes }) / 1e6;
  const inDoorways = bay.areaM2 > most('areaM2') && bay.areaM2 - measuredM2 > leastDoorwayM2;
  const areaLimit = limitWords(bay, measuredM2, most('areaM2'), ' m²');
  const held = bay.lengthM > Math.min(...rooms.map((room) => room.limits.aspectFromM));
  return (
    <>
      <Verdict bay={bay} worst={worstOf(result.analysis).get(bay.id)} />
      <FiguresTable
        rows={[
          { name: 'Area', value: area(bay.areaM2), limit: inDoorways ? null : areaLimit },
          ...(inDoorways ? [{ name: 'Without the floor of doorways', value: area(measuredM2), limit: areaLimit }] : []),
          {
            name: 'Length',
            value: length(bay.lengthM),
            limit: limitWords(bay, bay.lengthM, most('lengthM'), ' m'),
          },
          { name: 'Width', value: length(bay.widthM) },
          {
            name: 'Length to width',
            value: `${figure(bay.aspect, 2)} : 1`,
            limit: held ? limitWords(bay, 0, most('aspect'), ' : 1') : 'not held at this length',
          },
          { name: 'Perimeter', value: length(bay.perimeterM) },
        ]}
      />
      <CardFindings id={bay.id} result={result} />
      {rooms.map((room) => (
        <RoomCovering
          wide
          key={room.id}
          id={room.id}
          name={room.name}
          label={`Covering, ${oneLine(room.name)}`}
          covering={room.covering}
        />
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

/** The floor of a doorway takes at least so much; less is rounding. */
const leastDoorwayM2 = 0.005;

function Verdict({ bay, worst }: { readonly bay: Bay; readonly worst: Severity | undefined }) {
  if (bay.within && isGrave(worst)) return <p>Within its limits of area, side and proportion</p>;
  return (
    <p className={bay.within ? 'tone tone-within' : 'tone tone-fault'}>
      <Icon name={bay.within ? 'within' : 'fault'} />
      {bay.within ? 'Within its limits' : 'Over a limit'}
    </p>
  );
}

/** What the figure is held to. A bay that passes with more does so as a rectangle, where the rule set lets it. */
function limitWords({ within }: Bay, value: number, limit: number, unit: string): string {
  if (!Number.isFinite(limit)) return 'no limit';
  const words = `at most ${limitFigure(limit)}${unit}`;
  return within && limitExceeded(value, limit) ? `${words}; a true rectangle may be larger` : words;
}
