import { type Point, pointDirection } from '../../../geometry/point.ts';
import { doorwayPlace, doorwaySlid } from '../../../plan/edits/doorways.ts';
import { objectsMoved } from '../../../plan/edits/move.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { planIds, type Thing, thingEquals } from '../../state/thing.ts';
import { countNoun, objectNoun } from '../nouns.ts';
import type { Act, Hand, Scene, Stance, Turn } from '../stance.ts';
import { boxing } from './boxing.ts';
import { corner } from './corner.ts';
import { handleAt, handleMarks, handlesOf } from './handles.ts';
import { type DraggedJoint, joint, jointAsDrawn, jointDragged, jointShifted } from './joint.ts';
import { moving } from './moving.ts';
import { side } from './side.ts';

/** No tool but the open hand: a press chooses, a drag moves what is chosen or the board. */
export function resting(): Stance {
  return {
    tool: 'choose',
    hint: 'Press a thing to choose it. Drag what is chosen to move it; drag anywhere else to move the board.',
    underway: false,
    typed: null,
    sketch: (scene) => ({ marks: [...handleMarks(handlesOf(scene)), ...(tilesIn(scene)?.marks(scene) ?? [])] }),
    grabs: (hand, scene) => grabbed(hand, scene) !== null,
    on: restingOn,
  };
}

/** Set-out points stand on the board where coverings are laid. */
function tilesIn({ step, tiles }: Scene): Scene['tiles'] {
  return step === 'coverings' ? tiles : null;
}

/** The state that a drag from here leads to; null where the board moves. */
function grabbed(hand: Hand, scene: Scene): Stance | null {
  const setOut = tilesIn(scene)?.taken(hand, scene) ?? null;
  if (setOut !== null) return setOut;
  if (hand.loose && handleAt(handlesOf(scene), hand) === null) return boxing(hand.at, hand.at);
  const handle = handleAt(handlesOf(scene), hand);
  if (handle !== null) {
    return handle.part === 'side' ? side(handle, hand, scene) : corner(handle, scene);
  }
  const chosen = hand.things.find((thing) => isChosen(thing, scene));
  if (chosen === undefined) return null;
  const dragged = jointDragged(chosen, scene);
  if (dragged !== null) return joint(dragged, hand, scene);
  const ids = planIds(scene.chosen);
  const [only] = ids;
  // A doorway is led along its wall and nowhere else: until that part is here it stays.
  if (ids.length === 1 && scene.file.doorways?.some(({ id }) => id === only)) {
    return scene.opening?.(only ?? '', scene) ?? null;
  }
  return ids.length === 0 ? null : moving(ids, hand, scene);
}

/** A joint counts as chosen where the drawn joint is that it was made of. */
function isChosen(thing: Thing, { chosen, result }: Scene): boolean {
  if (chosen.some((each) => thingEquals(each, thing))) return true;
  if (thing.kind !== 'joint') return false;
  const sources = result?.analysis.joints.find(({ key }) => key === thing.key)?.sources ?? [];
  return chosen.some(({ kind, key }) => kind === 'object' && sources.includes(key));
}

function restingOn(act: Act, scene: Scene): Turn {
  const next = 'rest';
  switch (act.kind) {
    case 'hover':
      return { next, hover: act.hand.things[0] ?? null };
    case 'leave':
      return { next, hover: null };
    case 'down':
      return { next: grabbed(act.hand, scene) ?? next };
    case 'press':
      return { next, ...pressed(act.hand, scene) };
    case 'hold':
      return {
        next: act.hand.things.length === 0 ? boxing(act.hand.at, act.hand.at) : next,
        choose: added(act.hand, scene),
      };
    case 'steer':
      return { next, ...steered(act, scene) };
    case 'back':
      return { next, choose: [] };
    default:
      return { next };
  }
}

function pressed(hand: Hand, scene: Scene): Omit<Turn, 'next'> {
  if (hand.loose) return { choose: added(hand, scene) };
  return hand.things.length > 1 ? { open: hand.things } : { choose: hand.things };
}

/** What is chosen with the thing under the hand added, or taken from it. */
function added({ things: [thing] }: Hand, { chosen }: Scene): readonly Thing[] {
  if (thing === undefined) return chosen;
  const others = chosen.filter((each) => !thingEquals(each, thing));
  return others.length < chosen.length ? others : [...chosen, thing];
}

function steered(act: Extract<Act, { readonly kind: 'steer' }>, scene: Scene): Omit<Turn, 'next'> {
  const [chosen, ...more] = scene.chosen;
  const dragged = chosen === undefined || more.length > 0 ? null : jointDragged(chosen, scene);
  if (dragged !== null) return jointLed(dragged, act.by, scene);
  const ids = planIds(scene.chosen);
  if (ids.length === 0) return {};
  const slid = ids.length === 1 ? doorwayLed(ids[0] ?? '', act.by, scene) : null;
  if (slid !== null) return { step: { name: `Move doorway ${ids[0]}`, file: slid } };
  const name = `Move ${ids.length === 1 ? objectNoun(scene.file, ids[0] ?? '') : countNoun(ids.length)}`;
  return { step: { name, file: objectsMoved(scene.file, ids, act.by) } };
}

/** A joint goes square to itself by as much of the way as leads there. */
function jointLed(dragged: DraggedJoint, by: Point, { file }: Scene): Omit<Turn, 'next'> {
  const drawn = jointAsDrawn(dragged, file);
  if (drawn === null) return {};
  const [ux, uy] = pointDirection(drawn.line[0] ?? [0, 0], drawn.line.at(-1) ?? [0, 0]);
  const across = by[1] * ux - by[0] * uy;
  const after = across === 0 ? null : jointShifted(drawn, [-uy * across, ux * across]);
  if (after === null) return {};
  return { step: { name: dragged.name, file: after }, choose: [{ kind: 'object', key: drawn.id }] };
}

/** Whether arrow keys move what is chosen. */
export function chosenMoves(scene: Scene): boolean {
  const [thing] = scene.chosen;
  return planIds(scene.chosen).length > 0 || (thing !== undefined && jointDragged(thing, scene) !== null);
}

/** A doorway keeps to its wall: it goes along it by as much of the way as leads there. Null where it is none, or in no wall. */
function doorwayLed(id: string, by: Point, { file, walls }: Scene): PlanFile | null {
  const doorway = file.doorways?.find((each) => each.id === id);
  const place = doorway === undefined ? null : doorwayPlace(walls(), doorway);
  if (place === null) return null;
  const [{ from, to }] = place.wall.faces;
  const [ux, uy] = pointDirection(from, to);
  return doorwaySlid(file, id, place.alongMm + by[0] * ux + by[1] * uy);
}
