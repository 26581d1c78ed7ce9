import { type Point, pointDirection } from '../geometry/point.ts';
import type { Joint } from '../plan/analysis.ts';

/** The outermost two ends of each run and kind of joint: where the line that is seen ends, among all ends of the joints
 *  that it is made of. */
export function runEnds(joints: readonly Joint[]): ReadonlySet<Point | undefined> {
  const runs = new Map<string, Joint[]>();
  for (const joint of joints) {
    const key = `${joint.run} ${joint.kind}`;
    const run = runs.get(key);
    if (run === undefined) runs.set(key, [joint]);
    else run.push(joint);
  }
  return new Set([...runs.values()].flatMap(outermost));
}

function outermost(run: readonly Joint[]): readonly Point[] {
  const points = run.flatMap(({ line }) => [line[0], line[line.length - 1]]).filter((point) => point !== undefined);
  const [start, other] = points;
  if (start === undefined || other === undefined) return [];
  const [dx, dy] = pointDirection(start, other);
  const along = ([x, y]: Point) => x * dx + y * dy;
  const least = points.reduce((a, b) => (along(b) < along(a) ? b : a));
  const most = points.reduce((a, b) => (along(b) >= along(a) ? b : a));
  return [least, most];
}
