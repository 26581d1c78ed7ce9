import { pointDistance } from '../../../geometry/point.ts';
import { WELD_MM } from '../../../geometry/tolerance.ts';
import { type PaperPointKind, paperPointAdded, paperPoints } from '../../../plan/edits/paper-points.ts';
import { type Caught, freeHold, handCatch } from '../catch.ts';
import { placeFree } from '../draw/first.ts';
import type { Act, Scene, Stance, Turn } from '../stance.ts';
import { paperPointName } from './names.ts';
import { placeThing } from './places.ts';

/** Places for the papers: base points, test points, the access. */

/** The tool, taken up: each press places a point of one kind. */
export function paperPointHeld(kind: PaperPointKind, at: Caught | null = null): Stance {
  return {
    tool: 'paperPoint',
    hint: 'Press where the point is. One that stands already is chosen by a press and moved by a drag.',
    underway: false,
    hand: at?.at ?? null,
    typed: null,
    sketch: () => ({ marks: at === null ? [] : [{ mark: 'dot', at: at.at, tone: 'hand' }, ...at.marks] }),
    grabs: () => true,
    on: (act, scene) => heldOn(kind, at, act, scene),
  };
}

function heldOn(kind: PaperPointKind, at: Caught | null, act: Act, scene: Scene): Turn {
  switch (act.kind) {
    case 'hover':
    case 'down':
    case 'drag':
      return { next: paperPointHeld(kind, handCatch(scene.catches, act.hand, freeHold)) };
    case 'drop':
    case 'press':
    case 'hold':
      return placed(kind, handCatch(scene.catches, act.hand, freeHold), scene);
    case 'steer': {
      const [x, y] = at?.at ?? placeFree(scene);
      return { next: paperPointHeld(kind, { at: [x + act.by[0], y + act.by[1]], marks: [], onSide: false }) };
    }
    case 'place':
      return placed(kind, { at: act.at, marks: [], onSide: false }, scene);
    case 'enter':
      return at === null ? { next: paperPointHeld(kind) } : placed(kind, at, scene);
    case 'length':
    case 'sides':
      return { next: paperPointHeld(kind, at) };
    case 'leave':
      return { next: paperPointHeld(kind) };
    case 'back':
      return { next: 'rest' };
  }
}

function placed(kind: PaperPointKind, at: Caught, { file }: Scene): Turn {
  const standing = paperPoints(file, kind).find((point) => pointDistance(point.at, at.at) <= WELD_MM);
  if (standing !== undefined) {
    const refused = `${paperPointName(standing)} stands there already.`;
    return { next: paperPointHeld(kind, at), choose: [placeThing(standing)], refused };
  }
  const after = paperPointAdded(file, kind, at.at);
  if (after === file) return { next: paperPointHeld(kind, at), refused: 'This lies beyond the sheet.' };
  const points = paperPoints(after, kind);
  const isMoved = points.length === paperPoints(file, kind).length;
  const name = points.map(paperPointName).at(-1);
  return {
    next: paperPointHeld(kind, at),
    step: { name: `${name} ${isMoved ? 'moved' : 'placed'}`, file: after },
    choose: [placeThing({ kind, index: points.length - 1 })],
  };
}
