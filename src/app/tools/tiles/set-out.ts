import { type Point, pointDistance } from '../../../geometry/point.ts';
import { type TilesOf, tileOriginMoved } from '../../../plan/edits/tiles.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { gridFrame, type TiledField } from '../../../plan/tile-grid.ts';
import { draggedStance } from '../dragged.ts';
import type { SketchMark } from '../sketch.ts';
import { sketchRing } from '../sketch.ts';
import type { Act, Hand, Scene, Stance, Turn } from '../stance.ts';
import { fieldFind, fieldHandle, fieldsOf, roomUnder } from './fields.ts';
import { type SetOutCatches, setOutCatch, setOutCatches } from './set-out-catch.ts';

/** The set-out points of the tiles: dragged with the open hand, or placed, led and typed with a tool of their own. */

/** The step of a set-out point, as undo tells it. */
export function setOutStep(of: TilesOf): string {
  return of === null ? 'Move the set-out point' : `Move the set-out point of field ${of}`;
}

/** The first tile at each set-out point, and a place to take it by. */
export function setOutMarks({ file }: Pick<Scene, 'file'>): readonly SketchMark[] {
  return fieldsOf(file).flatMap((field) => pointMarks(field, fieldHandle(field), 'guide'));
}

function pointMarks({ grid }: TiledField, origin: Point, tone: 'guide' | 'hand'): readonly SketchMark[] {
  const { toSheet } = gridFrame({ origin, angleDeg: grid.angleDeg });
  const { lengthMm, widthMm } = grid;
  const tile: readonly Point[] = [
    [0, 0],
    [lengthMm, 0],
    [lengthMm, widthMm],
    [0, widthMm],
  ];
  return [sketchRing(tile.map(toSheet), tone), { mark: 'side', at: origin, tone: 'hand' }];
}

/** The field whose set-out point lies under the hand; of points at one place that of the room there. */
function fieldTaken(file: PlanFile, { at, reachMm }: Hand): TiledField | null {
  const away = (field: TiledField) => pointDistance(fieldHandle(field), at);
  const near = fieldsOf(file).filter((field) => away(field) <= reachMm);
  if (near.length < 2) return near[0] ?? null;
  const under = roomUnder(file, at)?.field;
  const [first] = [...near].sort((a, b) => away(a) - away(b) || Number(b === under) - Number(a === under));
  return first ?? null;
}

function catchesFor(field: TiledField, { file, result }: Scene): SetOutCatches {
  return setOutCatches(field, result?.file === file ? result.analysis.joints : []);
}

interface SetOutDrag {
  readonly catches: SetOutCatches;
  /** From the hand to the point, mm: it is led from where it was taken. */
  readonly off: Point;
  readonly tool: 'choose' | 'setOut';
}

/** The drag of a set-out point with the open hand; null where none lies under it. */
export function setOutTaken(hand: Hand, scene: Scene): Stance | null {
  const field = fieldTaken(scene.file, hand);
  return field === null ? null : dragFrom(field, hand, scene, 'choose');
}

function dragFrom(field: TiledField, hand: Hand, scene: Scene, tool: SetOutDrag['tool']): Stance {
  const [x, y] = fieldHandle(field);
  const off: Point = [x - hand.at[0], y - hand.at[1]];
  return dragAt({ catches: catchesFor(field, scene), off, tool }, []);
}

function dragAt(drag: SetOutDrag, marks: readonly SketchMark[]): Stance {
  return draggedStance({
    tool: drag.tool,
    tilesOf: drag.catches.field.id,
    hint: 'Let go where a whole tile is to begin.',
    marks,
    led: (hand, scene, isOver) => led(drag, hand, scene, isOver),
    back: () => after(drag),
  });
}

/** What the hand goes back to. */
function after({ tool, catches }: SetOutDrag, at?: Point): Stance | 'rest' {
  return tool === 'choose' ? 'rest' : setOutHeld(catches.field.id, at ?? fieldHandle(catches.field));
}

function led(drag: SetOutDrag, hand: Hand, { file }: Scene, isOver: boolean): Turn {
  const { catches, off } = drag;
  const raw: Point = [hand.at[0] + off[0], hand.at[1] + off[1]];
  const caught = setOutCatch(catches, hand, raw, roomUnder(file, hand.at)?.room ?? null);
  const { id } = catches.field;
  const moved = tileOriginMoved(file, id, caught.at);
  if (isOver) return { next: after(drag, caught.at), step: { name: setOutStep(id), file: moved } };
  return { next: dragAt(drag, [...pointMarks(catches.field, caught.at, 'hand'), ...caught.marks]), preview: moved };
}

/** The tool, taken up: it holds the tiles of the floor where there are some, which stand last. */
export function setOutStart({ file }: Pick<Scene, 'file'>): Stance {
  const field = fieldsOf(file).at(-1);
  return setOutHeld(field?.id ?? null, field === undefined ? null : fieldHandle(field));
}

/** @param at where the point of the field is, or would be if it were placed now  @param marks of the hand that hovers */
export function setOutHeld(of: TilesOf, at: Point | null, marks: readonly SketchMark[] = []): Stance {
  return {
    tool: 'setOut',
    tilesOf: of,
    hint:
      at === null
        ? 'No room has tiles yet. Lay them in the list beside the board.'
        : 'Press where a whole tile is to begin, or drag its corner.',
    ...(at === null ? {} : { keys: 'Arrow keys move it.' }),
    underway: false,
    hand: at,
    typed: null,
    sketch: (scene) => ({ marks: [...setOutMarks(scene), ...marks] }),
    grabs: () => true,
    on: (act, scene) => heldOn(of, act, scene),
  };
}

function heldOn(of: TilesOf, act: Act, scene: Scene): Turn {
  const field = fieldFind(scene.file, of) ?? fieldsOf(scene.file)[0] ?? null;
  if (act.kind === 'back') return { next: 'rest' };
  if (field === null) return { next: setOutHeld(of, null) };
  const { id } = field;
  const at = fieldHandle(field);
  const same = setOutHeld(id, at);
  switch (act.kind) {
    case 'hover':
      return { next: hovered(field, act.hand, scene) };
    case 'down':
      return { next: dragOver(act.hand, scene) ?? same };
    case 'press':
    case 'hold':
      return pressed(field, act.hand, scene);
    case 'steer':
      return placed(scene, id, [at[0] + act.by[0], at[1] + act.by[1]]);
    case 'place':
      return placed(scene, id, act.at);
    default:
      return { next: same };
  }
}

function placed({ file }: Scene, of: TilesOf, to: Point): Turn {
  const moved = tileOriginMoved(file, of, to);
  const field = fieldFind(moved, of);
  const at = field === null ? to : fieldHandle(field);
  if (moved === file) return { next: setOutHeld(of, at), refused: 'The set-out point is there already.' };
  return { next: setOutHeld(of, at), step: { name: setOutStep(of), file: moved } };
}

/** A drag takes the point that is under the hand; elsewhere it brings that of the field there to the hand. */
function dragOver(hand: Hand, scene: Scene): Stance | null {
  const taken = fieldTaken(scene.file, hand);
  if (taken !== null) return dragFrom(taken, hand, scene, 'setOut');
  const under = roomUnder(scene.file, hand.at)?.field;
  return under === undefined ? null : dragAt({ catches: catchesFor(under, scene), off: [0, 0], tool: 'setOut' }, []);
}

/** What a press here would do. */
function hovered(held: TiledField, hand: Hand, scene: Scene): Stance {
  const under = fieldTaken(scene.file, hand) === null ? roomUnder(scene.file, hand.at) : null;
  if (under === null) return setOutHeld(held.id, fieldHandle(held));
  const caught = setOutCatch(catchesKnown(under.field, scene), hand, hand.at, under.room);
  const marks = [...pointMarks(under.field, caught.at, 'hand'), ...caught.marks];
  return setOutHeld(held.id, fieldHandle(held), marks);
}

function pressed(held: TiledField, hand: Hand, scene: Scene): Turn {
  const taken = fieldTaken(scene.file, hand);
  if (taken !== null) return { next: setOutHeld(taken.id, fieldHandle(taken)) };
  const under = roomUnder(scene.file, hand.at);
  if (under === null) return { next: setOutHeld(held.id, fieldHandle(held)), refused: 'No tiles lie there.' };
  return placed(scene, under.field.id, setOutCatch(catchesKnown(under.field, scene), hand, hand.at, under.room).at);
}

/** A hand that hovers asks at each move. */
let known: { readonly field: TiledField; readonly result: Scene['result']; readonly catches: SetOutCatches } | null =
  null;

function catchesKnown(field: TiledField, scene: Scene): SetOutCatches {
  if (known?.field !== field || known.result !== scene.result) {
    known = { field, result: scene.result, catches: catchesFor(field, scene) };
  }
  return known.catches;
}
