import type { Point } from '../../../geometry/point.ts';
import { type DoorwayWall, doorwayInWall, doorwayOver, wallAt } from '../../../plan/edits/doorways.ts';
import { objectAdded } from '../../../plan/edits/objects.ts';
import { WALL_MOST_MM } from '../../../plan/edits/walls.ts';
import { handStep } from '../catch.ts';
import { type SketchMark, sketchLine } from '../sketch.ts';
import type { Act, Hand, Scene, Stance, Turn } from '../stance.ts';

/** A place in a wall: which, and how far along it. */
interface WallPlace {
  readonly wall: DoorwayWall;
  readonly alongMm: number;
}

/** The hand looks for a wall between two rooms: a press sets a doorway of the wished width there, a drag from jamb to jamb
 *  one of its own. */
export function doorway(hand: Hand | null = null, jamb: WallPlace | null = null): Stance {
  return {
    tool: 'doorway',
    hint: 'Press on a wall between two rooms: the line of the closed leaf is set there. Drag for a width of its own.',
    underway: jamb !== null,
    hand: hand?.at ?? null,
    typed: { label: 'Width', at: hand?.at ?? [0, 0], lengthMm: null, directionDeg: null, sides: false },
    sketch: (scene) => ({ marks: hand === null ? [] : seekMarks(hand, jamb, scene) }),
    grabs: () => true,
    on: (act, scene) => doorwayOn(hand, jamb, act, scene),
  };
}

/** A wall within so many times the hand's own reach is meant. */
const wallReach = 3;

/** The place in a wall that the hand means; null where no wall is near. */
export function placeAt({ at, reachMm }: Hand, scene: Scene): WallPlace | null {
  return wallAt(scene.walls(), at, reachMm * wallReach);
}

function doorwayOn(hand: Hand | null, jamb: WallPlace | null, act: Act, scene: Scene): Turn {
  switch (act.kind) {
    case 'hover':
      return { next: doorway(act.hand) };
    case 'down':
      return { next: doorway(act.hand, placeAt(act.hand, scene)) };
    case 'drag':
      return { next: doorway(act.hand, jamb) };
    case 'drop':
    case 'press':
    case 'hold':
      return placed(act.hand, act.kind === 'drop' ? jamb : null, scene);
    case 'length':
      if (hand === null || placeAt(hand, scene) === null) {
        return {
          next: doorway(hand),
          refused: 'Point at a wall between two rooms, then type the width of the doorway.',
        };
      }
      return placed(hand, null, {
        ...scene,
        wishes: { ...scene.wishes, doorway: { ...scene.wishes.doorway, widthMm: act.lengthMm } },
      });
    case 'steer': {
      const [x, y] = hand?.at ?? [0, 0];
      const at: Point = [x + act.by[0], y + act.by[1]];
      return { next: doorway({ at, reachMm: hand?.reachMm ?? 100, loose: false, things: [] }) };
    }
    case 'enter':
      return hand === null ? { next: doorway(null) } : placed(hand, null, scene);
    case 'place':
      return placed({ at: act.at, reachMm: hand?.reachMm ?? 100, loose: false, things: [] }, null, scene);
    case 'sides':
      return { next: doorway(hand), refused: 'A doorway has one width.' };
    case 'leave':
      return { next: doorway() };
    case 'back':
      return { next: jamb === null ? 'rest' : doorway(hand) };
  }
}

/** Middle and width of the doorway that the hand means. */
function meant(hand: Hand, jamb: WallPlace | null, scene: Scene) {
  const place = placeAt(hand, scene);
  if (place === null) return null;
  const { widthMm, leaf } = scene.wishes.doorway;
  const dragged = jamb !== null && jamb.wall === place.wall && Math.abs(jamb.alongMm - place.alongMm) > hand.reachMm;
  if (!dragged) return { wall: place.wall, alongMm: openingCatch(place, widthMm, hand), widthMm, leaf };
  const step = handStep(hand.reachMm);
  const [from, to] = [jamb.alongMm, place.alongMm].map((mm) => Math.round(mm / step) * step) as [number, number];
  return { wall: place.wall, alongMm: (from + to) / 2, widthMm: Math.abs(to - from), leaf };
}

function placed(hand: Hand, jamb: WallPlace | null, scene: Scene): Turn {
  const next = doorway(hand);
  const place = meant(hand, jamb, scene);
  if (place === null) {
    const refused = `A doorway joins two rooms: no wall with a room on either side, up to ${WALL_MOST_MM} mm deep, lies here.`;
    return { next, refused };
  }
  const opening = doorwayInWall(place.wall, { ...place, depthShare: 0.5 });
  if (opening === null) return { next, refused: 'The wall is too short for a doorway of this width.' };
  if (doorwayOver(scene.file, opening) !== null) return { next, refused: 'Another doorway stands here.' };
  const { file, id } = objectAdded(scene.file, 'doorways', {
    line: opening.line,
    wallMm: opening.wallMm,
    ...(place.leaf ? {} : { leaf: false }),
  });
  return { next, step: { name: 'Set a doorway', file }, choose: [{ kind: 'object', key: id }] };
}

function seekMarks(hand: Hand, jamb: WallPlace | null, scene: Scene): readonly SketchMark[] {
  const place = meant(hand, jamb, scene);
  const opening = place === null ? null : doorwayInWall(place.wall, { ...place, depthShare: 0.5 });
  if (place === null || opening === null) return [{ mark: 'dot', at: hand.at, tone: 'wrong' }];
  return openingMarks(place.wall, opening.line);
}

/** The line of the leaf, the opening round it, and how far the jambs stand from the ends of the wall. */
export function openingMarks(wall: DoorwayWall, line: readonly [Point, Point]): readonly SketchMark[] {
  const [face, other] = wall.faces;
  return [
    sketchLine([face.from, face.to], 'guide'),
    sketchLine([other.from, other.to], 'guide'),
    sketchLine(line),
    ...line.map((at): SketchMark => ({ mark: 'corner', at, tone: 'hand' })),
  ];
}

/** Middle of a doorway along its wall: in the middle of the wall or with a jamb in its corner where the hand is near
 *  enough, else at a round step. mm from the beginning of the wall. */
export function openingCatch({ wall, alongMm }: WallPlace, widthMm: number, hand: Hand): number {
  const step = handStep(hand.reachMm);
  const free = Math.round((alongMm - widthMm / 2) / step) * step + widthMm / 2;
  if (hand.loose) return alongMm;
  const { lengthMm } = wall;
  const meantPlaces = [lengthMm / 2, widthMm / 2, lengthMm - widthMm / 2];
  return meantPlaces.find((at) => Math.abs(at - alongMm) <= hand.reachMm) ?? free;
}
