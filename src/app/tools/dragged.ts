import type { SketchMark } from './sketch.ts';
import type { Hand, Scene, Stance, Turn } from './stance.ts';

interface Dragged extends Pick<Stance, 'tool' | 'hint'>, Partial<Pick<Stance, 'tilesOf'>> {
  /** What is drawn meanwhile. */
  readonly marks: readonly SketchMark[];
  /** Where the hand leads it. */
  readonly led: (hand: Hand, scene: Scene, isOver: boolean) => Turn;
  /** What the hand goes back to where the drag is given up. */
  readonly back: () => Stance | 'rest';
}

/** A thing of one place under the hand, until it lets go. */
export function draggedStance({ marks, led, back, ...about }: Dragged): Stance {
  const stance: Stance = {
    ...about,
    keys: 'Shift lets go of every catch, Escape puts it back.',
    underway: true,
    typed: null,
    sketch: () => ({ marks }),
    grabs: () => true,
    on(act, scene) {
      if (act.kind === 'drag' || act.kind === 'drop') return led(act.hand, scene, act.kind === 'drop');
      return { next: act.kind === 'hover' || act.kind === 'down' ? stance : back() };
    },
  };
  return stance;
}
