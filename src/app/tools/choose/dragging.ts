import type { SketchMark } from '../sketch.ts';
import type { Hand, Scene, Stance, Turn } from '../stance.ts';

interface Drag extends Pick<Stance, 'hint' | 'keys' | 'live'> {
  /** What is shown besides the preview. */
  readonly marks: readonly SketchMark[];
  /** What the hand at its new place makes of it; `over`: it lets go there. */
  readonly led: (hand: Hand, scene: Scene, over: boolean) => Turn;
}

/** A drag of what is chosen: led by the hand until it lets go; anything else takes it back. */
export function dragging({ hint, keys, live, marks, led }: Drag): Stance {
  const stance: Stance = {
    tool: 'choose',
    hint,
    underway: true,
    typed: null,
    ...(keys === undefined ? {} : { keys }),
    ...(live === undefined ? {} : { live }),
    sketch: () => ({ marks }),
    grabs: () => true,
    on(act, scene) {
      if (act.kind === 'drag' || act.kind === 'drop') return led(act.hand, scene, act.kind === 'drop');
      return { next: act.kind === 'hover' || act.kind === 'down' ? stance : 'rest' };
    },
  };
  return stance;
}
