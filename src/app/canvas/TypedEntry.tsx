import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { figure } from '../parts/format.ts';
import { lengthFigure } from '../parts/lengths.ts';
import { unitStore } from '../state/unit.ts';
import type { TypedMeaning } from '../tools/stance.ts';
import { toolStore } from '../tools/toolStore.ts';
import { surfaceFocus } from './surface.ts';
import { typedPut } from './typedPut.ts';
import { type SizePx, type Viewport, viewportToScreen } from './viewport.ts';

interface TypedEntryProps {
  readonly view: Viewport;
  readonly size: SizePx;
}

/** Its distance from the hand, from the edge of the board, and its height, px. */
const gapPx = 20;
const edgePx = 8;
const ownHeightPx = 56;

/** Length and direction of the run under the hand, beside it, to be read and typed over. */
export function TypedEntry({ view, size }: TypedEntryProps) {
  const meaning = useStore(toolStore, ({ stance }) => stance.typed);
  const underway = useStore(toolStore, ({ stance }) => stance.underway);
  const typed = useStore(toolStore, (state) => state.typed);
  if (meaning === null || (typed === null && (!underway || meaning.lengthMm === null))) return null;
  const [x, y] = viewportToScreen(view, meaning.at);
  const within = (at: number, most: number) => Math.max(edgePx, Math.min(at, most - edgePx));
  // To the side of the hand where there is more room.
  const across =
    x > size.widthPx / 2
      ? { right: within(size.widthPx - x + gapPx, size.widthPx / 2) }
      : { left: within(x + gapPx, size.widthPx / 2) };
  const top = within(y + gapPx, size.heightPx - ownHeightPx);
  return (
    <div className={typed === null ? 'typed-entry' : 'typed-entry typing'} style={{ ...across, top }}>
      <Fields meaning={meaning} typed={typed} />
    </div>
  );
}

function Fields({ meaning, typed }: { readonly meaning: TypedMeaning; readonly typed: string | null }) {
  const unit = useStore(unitStore, (state) => state.unit);
  const first = useRef<HTMLInputElement>(null);
  const [direction, setDirection] = useState<string | null>(null);
  const typing = typed !== null;
  useEffect(() => {
    if (!typing) setDirection(null);
    else if (document.activeElement !== first.current) first.current?.focus();
  }, [typing]);
  const put = () => typedPut(typed ?? '', direction, meaning, unit);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter') put();
    else if (event.key === 'Escape') {
      toolStore.setState({ typed: null });
      surfaceFocus();
    } else if (event.key !== 'Tab') return;
    event.stopPropagation();
  };
  const shown = meaning.lengthMm === null ? '' : lengthFigure(meaning.lengthMm, unit);
  return (
    <>
      <label>
        {meaning.label}
        <span className="entry">
          <input
            ref={first}
            aria-label={meaning.label}
            inputMode="text"
            autoComplete="off"
            data-typing={typing}
            value={typed ?? shown}
            onFocus={() => typed === null && toolStore.setState({ typed: '' })}
            onChange={(event) => toolStore.setState({ typed: event.target.value })}
            onKeyDown={onKeyDown}
          />
          <span className="unit">{unit}</span>
        </span>
      </label>
      {meaning.directionDeg !== null && (
        <label>
          Direction
          <span className="entry">
            <input
              className="short"
              aria-label="Direction"
              inputMode="decimal"
              autoComplete="off"
              data-typing={typing}
              value={direction ?? figure(meaning.directionDeg, 0)}
              onFocus={() => typed === null && toolStore.setState({ typed: '' })}
              onChange={(event) => setDirection(event.target.value)}
              onKeyDown={onKeyDown}
            />
            <span className="unit">°</span>
          </span>
        </label>
      )}
    </>
  );
}
