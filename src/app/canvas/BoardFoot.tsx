import { useStore } from 'zustand';
import { figureShort } from '../parts/format.ts';
import { Icon, type IconName } from '../parts/Icon.tsx';
import { lengthFigure } from '../parts/lengths.ts';
import { boardStore } from '../state/boardStore.ts';
import { useBoard } from '../state/hooks.ts';
import { pointerStore } from '../state/pointerStore.ts';
import { unitStore, unitTurn } from '../state/unit.ts';
import { boardZoom, zoomStep } from './boardView.ts';
import { footId } from './surface.ts';
import { viewportScaleBar, viewportZooms } from './viewport.ts';

const barMostPx = 96;

interface BoardFootProps {
  /** Whether there is a drawing whose lines a key explains. */
  readonly keyed: boolean;
  readonly caution: string;
  readonly onFit: () => void;
}

/** Foot of the sheet: key, zoom, scale, and what goes before all figures. Below the drawing, so that it covers none of it. */
export function BoardFoot({ keyed, caution, onFit }: BoardFootProps) {
  const keyOpen = useBoard((state) => state.keyOpen);
  return (
    <div className="foot" id={footId}>
      {keyed && (
        <button
          type="button"
          className="button"
          aria-expanded={keyOpen}
          title="What the lines and symbols mean"
          onClick={() => boardStore.setState({ keyOpen: !keyOpen })}
        >
          <Icon name="key" />
          Key
        </button>
      )}
      <fieldset className="zoom" aria-label="Zoom">
        <ZoomButton icon="farther" words="Zoom out" hint="Farther (-)" by={1 / zoomStep} />
        <ZoomButton icon="nearer" words="Zoom in" hint="Nearer (+)" by={zoomStep} />
        <button
          type="button"
          className="button"
          title="Whole drawing (Home)"
          aria-label="Fit the whole drawing"
          onClick={onFit}
        >
          <Icon name="fit" />
        </button>
      </fieldset>
      <ScaleBar />
      <PointerReading />
      <p className="caution-line">{caution}</p>
    </div>
  );
}

interface ZoomButtonProps {
  readonly icon: IconName;
  readonly words: string;
  readonly hint: string;
  readonly by: number;
}

/** Goes off where the zoom ends, and keeps the focus then. */
function ZoomButton({ icon, words, hint, by }: ZoomButtonProps) {
  const off = useBoard(({ view }) => view === null || !viewportZooms(view, by));
  return (
    <button
      type="button"
      className="button"
      title={hint}
      aria-label={words}
      aria-disabled={off}
      onClick={() => boardZoom(by)}
    >
      <Icon name={icon} />
    </button>
  );
}

/** Where the pointer is, and the unit of all lengths on the board. */
function PointerReading() {
  const at = useStore(pointerStore, (state) => state.at);
  const unit = useStore(unitStore, (state) => state.unit);
  const [x, y] = (at ?? []).map((mm) => lengthFigure(mm, unit));
  return (
    <div className="reading">
      <span className="reading-place">{x === undefined ? '' : `x ${x}   y ${y}`}</span>
      <button
        type="button"
        className="button"
        title={unit === 'mm' ? 'Lengths in millimetres: press for metres' : 'Lengths in metres: press for millimetres'}
        aria-label={unit === 'mm' ? 'mm: lengths in millimetres' : 'm: lengths in metres'}
        onClick={unitTurn}
      >
        {unit}
      </button>
    </div>
  );
}

function ScaleBar() {
  const view = useBoard((state) => state.view);
  if (view === null) return null;
  const { lengthMm, lengthPx } = viewportScaleBar(view, barMostPx);
  return (
    <div className="scale-bar" style={{ minWidth: barMostPx }}>
      <div>{lengthMm >= 1000 ? `${figureShort(lengthMm / 1000, 0)} m` : `${figureShort(lengthMm, 1)} mm`}</div>
      <div className="bar" style={{ width: lengthPx }} />
    </div>
  );
}
