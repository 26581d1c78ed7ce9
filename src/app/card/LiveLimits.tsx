import { useStore } from 'zustand';
import type { Point } from '../../geometry/point.ts';
import { viewportToScreen } from '../canvas/viewport.ts';
import { bayHeldFigures, heldWords } from '../parts/bay-limits.ts';
import { Icon } from '../parts/Icon.tsx';
import type { Result } from '../state/analysisStore.ts';
import type { BoardState } from '../state/boardStore.ts';
import { useAnalysis, useBoard } from '../state/hooks.ts';
import { toolStore } from '../tools/toolStore.ts';

/** The bays on either side of the joint under the hand, against their limits, as long as the hand moves it. */
export function LiveLimits() {
  const live = useStore(toolStore, ({ stance }) => stance.live ?? null);
  const result = useAnalysis((state) => state.result);
  // Out of the way of the hand: at the side of the board that it is not at.
  const atRight = useBoard((state) => live !== null && isLeft(live.at, state));
  if (live === null || result === null) return null;
  const bays = baysBeside(live.id, result);
  if (bays.length === 0) return null;
  return (
    <table className={atRight ? 'live-limits at-right' : 'live-limits'} aria-label="Bays beside the joint">
      <tbody>
        {bays.map((bay) => (
          <tr key={bay.key}>
            <th scope="row">
              <span className={bay.within ? 'tone tone-within' : 'tone tone-fault'}>
                <Icon name={bay.within ? 'within' : 'fault'} />
                {bay.id}
              </span>
            </th>
            {bayHeldFigures(bay, result.plan).map((held) => (
              <td key={held.name} className={held.over ? 'over' : undefined}>
                <span className="figure">{held.value}</span>
                <span className="small quiet">{heldWords(held)}</span>
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function isLeft(at: Point, { view, size }: Pick<BoardState, 'view' | 'size'>): boolean {
  return view !== null && size !== null && viewportToScreen(view, at)[0] < size.widthPx / 2;
}

/** The bays that the joint parts: those that are over a limit first, then the largest. */
function baysBeside(id: string, { analysis }: Result) {
  const ids = new Set(analysis.joints.filter(({ sources }) => sources.includes(id)).flatMap(({ bays }) => bays));
  return analysis.bays
    .filter((bay) => ids.has(bay.id))
    .sort((a, b) => Number(a.within) - Number(b.within) || b.areaM2 - a.areaM2)
    .slice(0, mostBays);
}

/** A joint along many bays shows those that are worst, or largest. */
const mostBays = 4;
