import { figureShort } from '../parts/format.ts';
import { Icon } from '../parts/Icon.tsx';
import { useBoard } from '../state/hooks.ts';
import { boardZoom, zoomStep } from './boardView.ts';
import { viewportScaleBar } from './viewport.ts';

const barMostPx = 120;

/** Zoom and scale, in the corner of the board. */
export function BoardCorner({ onFit }: { readonly onFit: () => void }) {
  const view = useBoard((state) => state.view);
  const bar = view === null ? null : viewportScaleBar(view, barMostPx);
  return (
    <div className="corner">
      <fieldset className="glass" aria-label="Zoom">
        <button
          type="button"
          className="button"
          title="Nearer (+)"
          aria-label="Zoom in"
          onClick={() => boardZoom(zoomStep)}
        >
          <Icon name="nearer" />
        </button>
        <button
          type="button"
          className="button"
          title="Farther (-)"
          aria-label="Zoom out"
          onClick={() => boardZoom(1 / zoomStep)}
        >
          <Icon name="farther" />
        </button>
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
      {bar !== null && (
        <div className="scale-bar">
          <div>
            {bar.lengthMm >= 1000 ? `${figureShort(bar.lengthMm / 1000, 0)} m` : `${figureShort(bar.lengthMm, 1)} mm`}
          </div>
          <div className="bar" style={{ width: bar.lengthPx }} />
        </div>
      )}
    </div>
  );
}
