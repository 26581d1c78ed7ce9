import { oneLine } from '../../documents/words.ts';
import type { Bay, Severity } from '../../plan/analysis.ts';
import { limitExceeded } from '../../plan/exceed.ts';
import { RoomCovering } from '../panels/CoveringsPanel.tsx';
import { bayHeldFigures, bayLimit, bayMeasuredM2, type HeldFigure, heldWords } from '../parts/bay-limits.ts';
import { area, length } from '../parts/format.ts';
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
  const [floor, side, proportion] = bayHeldFigures(bay, plan) as [HeldFigure, HeldFigure, HeldFigure];
  const measuredM2 = bayMeasuredM2(bay);
  const inDoorways = bay.areaM2 > bayLimit(bay, plan, 'areaM2') && bay.areaM2 - measuredM2 > leastDoorwayM2;
  const areaLimit = limitWords(bay, measuredM2, floor);
  return (
    <>
      <Verdict bay={bay} worst={worstOf(result.analysis).get(bay.id)} />
      <FiguresTable
        rows={[
          { name: 'Area', value: area(bay.areaM2), limit: inDoorways ? null : areaLimit },
          ...(inDoorways ? [{ name: 'Without the floor of doorways', value: floor.value, limit: areaLimit }] : []),
          { name: side.name, value: side.value, limit: limitWords(bay, bay.lengthM, side) },
          { name: 'Width', value: length(bay.widthM) },
          { name: proportion.name, value: proportion.value, limit: heldWords(proportion) },
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
function limitWords({ within }: Bay, value: number, held: HeldFigure): string {
  const words = heldWords(held);
  return within && held.limit !== null && limitExceeded(value, held.limit)
    ? `${words}; a true rectangle may be larger`
    : words;
}
