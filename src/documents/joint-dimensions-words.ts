import { pointDirection } from '../geometry/point.ts';
import { setOutTolerance } from '../plan/papers.ts';
import type { DoorwayPlace } from './doorway-places.ts';
import { readingAngle } from './label-seats.ts';
import type { JointSetting } from './setting-out.ts';
import { textCut } from './text-width.ts';
import { figureText, oneLine } from './words.ts';

/** What is written beside a joint on a drawing: where it lies, in one line. */

/** Example: "x 4500"; of a joint that is askew by less than it is set out to "x 4500 / 4502", each figure on the side of its end as the joint is read; null
 *  where only both figures of each end tell where it lies. */
export function besideWords({ lies, runningMm, points, places }: JointSetting): string | null {
  if (lies === 'bent') return null;
  if (lies !== 'askew') return `${lies} ${figureText(runningMm ?? 0, 0)}`;
  const axis = ([0, 1] as const).find((k) => {
    const figures = points.map((point) => point[k]);
    return Math.max(...figures) - Math.min(...figures) <= setOutTolerance.value;
  });
  if (axis === undefined) return null;
  const figures = points.map((point) => figureText(point[axis], 0));
  return `${axis === 0 ? 'x' : 'y'} ${(isReadBackwards(places) ? figures.reverse() : figures).join(' / ')}`;
}

/** Whether a text along a line begins at its last point. */
function isReadBackwards(places: JointSetting['places']): boolean {
  const [from, to] = [places[0], places.at(-1)];
  if (from === undefined || to === undefined) return false;
  const [dx, dy] = pointDirection(from, to);
  const radians = (readingAngle([dx, dy]) * Math.PI) / 180;
  return Math.cos(radians) * dx + Math.sin(radians) * dy < 0;
}

/** Whether two figures tell of one line. */
export function isTwoFigured(setting: JointSetting): boolean {
  return setting.lies === 'askew' && besideWords(setting) !== null;
}

/** Widest name of a room beside a joint, mm on paper. */
const widestRoomMm = 18;

/** Joints of doorways by their id, each from the nearer face of its wall, named by the room on that side. Examples: "74 from Kitchen", "62 from each face".
 *  None of a joint that has no face, or whose rooms have one name. */
export function doorwayWords(places: readonly DoorwayPlace[]): ReadonlyMap<string, string> {
  return new Map(
    places.flatMap(({ sides, joints }) =>
      joints.flatMap(({ joint, fromMm }) => {
        const faces = sides.flatMap(({ room, name }, i) => {
          const mm = fromMm[i] ?? null;
          const short = textCut(oneLine(name), 'figure-small', widestRoomMm);
          return mm === null || room === null ? [] : [{ short, figure: figureText(mm, 0), mm }];
        });
        const [one, other] = [...faces].sort((a, b) => a.mm - b.mm);
        if (one === undefined) return [];
        if (one.figure === other?.figure) return [[joint.id, `${one.figure} from each face`] as const];
        return one.short === other?.short ? [] : [[joint.id, `${one.figure} from ${one.short}`] as const];
      }),
    ),
  );
}
