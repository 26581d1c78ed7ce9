import type { Point } from '../geometry/point.ts';
import { EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import type { PaperSource } from './paper-source.ts';
import { type JointSetting, jointSettings } from './setting-out.ts';
import { frameFigures } from './setting-out-frame.ts';

/** What a revision says where joints that stay have other dimensions, as what they are set out from has moved: the earlier sheets are not to be set out from,
 *  though no joint on them moved. Null where all figures hold.
 *  @param stayed ids of joints that are as they were */
export function setOutNote(
  before: PaperSource,
  now: PaperSource,
  stayed: readonly (readonly [before: string, now: string])[],
): string | null {
  const [was, is] = [before, now].map((source) => new Map(jointSettings(source).map((each) => [each.joint.id, each])));
  const other = stayed.filter(([idBefore, idNow]) => {
    const [one, two] = [was?.get(idBefore), is?.get(idNow)];
    return one !== undefined && two !== undefined && !isSetAlike(one, two) && !isFrameAlike(one, two);
  });
  if (other.length === 0) return null;
  const [joint, have] =
    other.length === 1 ? ['joint that stays where it was', 'has'] : ['joints that stay where they were', 'have'];
  return `What joints are set out from has moved or is another: ${other.length} ${joint} ${have} other dimensions than on the earlier sheets, which are not to be set out from.`;
}

/** Whether both are set out from one place: what has other dimensions then has slid along its line. */
function isFrameAlike({ frame: one, places }: JointSetting, { frame: other }: JointSetting): boolean {
  if (one === null || other === null) return one === other;
  return places.every((place) => isNear(frameFigures(one, place), frameFigures(other, place)));
}

function isSetAlike(one: JointSetting, other: JointSetting): boolean {
  return one.points.length === other.points.length && one.points.every((point, i) => isNear(point, other.points[i]));
}

function isNear([x, y]: Point, [toX, toY]: Point = [Number.POSITIVE_INFINITY, 0]): boolean {
  return Math.abs(x - toX) <= EQUAL_LENGTH_MM && Math.abs(y - toY) <= EQUAL_LENGTH_MM;
}
