import { pointDistance } from '../../../geometry/point.ts';
import { doorwayInWall, doorwayOver, doorwayPlace } from '../../../plan/edits/doorways.ts';
import { objectChanged } from '../../../plan/edits/objects.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import { openingCatch, openingMarks, placeAt } from '../place/doorway.ts';
import type { SketchMark } from '../sketch.ts';
import type { Hand, Scene, Stance, Turn } from '../stance.ts';
import { dragging } from './dragging.ts';

type DoorwayFile = NonNullable<PlanFile['doorways']>[number];

/** A doorway is dragged: along its wall, or into another. Null where the plan has no such doorway. */
export function opening(id: string, { file }: Scene): Stance | null {
  const doorway = file.doorways?.find((each) => each.id === id);
  return doorway === undefined ? null : openingAt(doorway, []);
}

function openingAt(doorway: DoorwayFile, marks: readonly SketchMark[]): Stance {
  return dragging({
    hint: 'Slide the doorway along its wall, or into another.',
    keys: 'Escape puts it back.',
    marks,
    led: (hand, scene, over) => slid(doorway, hand, scene, over),
  });
}

function slid(doorway: DoorwayFile, hand: Hand, scene: Scene, over: boolean): Turn {
  const { file } = scene;
  const place = placeAt(hand, scene);
  const widthMm = pointDistance(doorway.line[0], doorway.line[1]);
  const before = doorwayPlace(scene.walls(), doorway);
  const depthShare = before === null ? 0.5 : before.depthMm / before.wall.depthMm;
  const alongMm = place === null ? null : openingCatch(place, widthMm, hand);
  const placed =
    place === null || alongMm === null ? null : doorwayInWall(place.wall, { alongMm, widthMm, depthShare });
  if (place === null || placed === null) {
    const words: SketchMark = { mark: 'words', at: hand.at, text: 'No wall between two rooms here', tone: 'wrong' };
    return over
      ? { next: 'rest', refused: 'No wall between two rooms lies there.' }
      : { next: openingAt(doorway, [words]), preview: file };
  }
  if (doorwayOver(file, placed, doorway.id) !== null) {
    const refused = 'Another doorway stands here';
    const words: SketchMark = { mark: 'words', at: hand.at, text: refused, tone: 'wrong' };
    return over ? { next: 'rest', refused: `${refused}.` } : { next: openingAt(doorway, [words]), preview: file };
  }
  const after = objectChanged(file, doorway.id, { line: placed.line, wallMm: placed.wallMm });
  if (!over) return { next: openingAt(doorway, openingMarks(place.wall, placed.line)), preview: after };
  return { next: 'rest', step: { name: `Move doorway ${doorway.id}`, file: after } };
}
