import type { Context } from 'konva/lib/Context';
import { Layer } from 'konva/lib/Layer';
import { Shape } from 'konva/lib/Shape';
import { Stage } from 'konva/lib/Stage';
import type { SizePx, Viewport } from './viewport.ts';

/** One sheet of the board: a picture that a function paints, anew whenever it is given another one. */
export interface BoardLayer {
  readonly paint: (painter: Painter) => void;
}

export type Painter = (context: Context) => void;

/** What a list lights: painted over the floor and its lines, below pins and names. The context is set for the inks of the view. */
export interface Light {
  readonly paint: (context: CanvasRenderingContext2D, view: Viewport) => void;
}

/** The layers of the board, the lowest first. None listens to the pointer. */
export interface BoardLayers {
  readonly layers: readonly BoardLayer[];
  readonly resize: (size: SizePx) => void;
  readonly end: () => void;
}

/** The canvas library driven directly: its binding for React brings a reconciler of its own, a quarter of the first view,
 *  for a handful of shapes (docs/decisions/0013). */
export function boardLayers(container: HTMLDivElement, count: number): BoardLayers {
  const stage = new Stage({ container, listening: false });
  const layers = Array.from({ length: count }, () => boardLayer(stage));
  return {
    layers,
    resize({ widthPx, heightPx }) {
      stage.size({ width: widthPx, height: heightPx });
    },
    end() {
      stage.destroy();
    },
  };
}

function boardLayer(stage: Stage): BoardLayer {
  let painter: Painter = () => undefined;
  const layer = new Layer({ listening: false });
  const sceneFunc = (context: Context) => painter(context);
  layer.add(new Shape({ sceneFunc, listening: false, perfectDrawEnabled: false }));
  stage.add(layer);
  return {
    paint(next) {
      painter = next;
      layer.batchDraw();
    },
  };
}
