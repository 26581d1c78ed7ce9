import type { Point } from '../geometry/point.ts';
import { crossingsExceed } from './crossings.ts';
import { type PlanProblem, problemPath } from './problems.ts';
import type { PlanFile } from './schema.ts';

/** So many points a plan may have in all. One storey traced finely has some thousands. */
export const MOST_PLAN_POINTS = 100_000;

/** So often one outline or line may cross itself. A slip of the hand crosses a few times, a scribble crosses as often as it has points
 *  squared, and every crossing makes a piece of floor. */
export const MOST_OWN_CROSSINGS = 1000;

/** So often outlines and lines may cross in all: 70 joints drawn across 70 others do not pass it. */
export const MOST_PLAN_CROSSINGS = 5000;

interface PlanLine {
  readonly path: readonly PropertyKey[];
  readonly points: readonly Point[];
  readonly isRing: boolean;
}

/** A plan that no floor needs and no machine gets through in time is refused, with the place where it is too much. */
export function sizeProblems(file: PlanFile): readonly PlanProblem[] {
  const lines = planLines(file);
  const points = lines.reduce((sum, line) => sum + line.points.length, 0) + (file.pipes?.length ?? 0);
  if (points > MOST_PLAN_POINTS) {
    return [{ path: '', message: `has ${points} points; ${MOST_PLAN_POINTS} are read` }];
  }
  const tangled = lines.filter((line) => crossingsExceed(MOST_OWN_CROSSINGS, [line]) !== null);
  if (tangled.length > 0) {
    return tangled.map(({ path }) => ({
      path: problemPath(path),
      message: `crosses itself or lies along itself too often: more than ${MOST_OWN_CROSSINGS} times`,
    }));
  }
  const thicket = lines[crossingsExceed(MOST_PLAN_CROSSINGS, lines) ?? -1];
  return thicket === undefined
    ? []
    : [
        {
          path: problemPath(thicket.path),
          message: `lies where outlines and lines cross or lie along each other too often: more than ${MOST_PLAN_CROSSINGS} times`,
        },
      ];
}

function planLines(file: PlanFile): readonly PlanLine[] {
  return Object.entries(file).flatMap(([key, list]) =>
    Array.isArray(list) ? list.flatMap((object: object, i) => objectLines([key, i], object)) : [],
  );
}

/** The outline and holes, or the line, of one object of the plan. */
function objectLines(path: readonly PropertyKey[], object: ObjectLines): readonly PlanLine[] {
  const { outline, holes, line } = object;
  return [
    ...(outline ? [{ path: [...path, 'outline'], points: outline, isRing: true }] : []),
    ...(holes ?? []).map((points, i) => ({ path: [...path, 'holes', i], points, isRing: true })),
    ...(line ? [{ path: [...path, 'line'], points: line, isRing: false }] : []),
  ];
}

interface ObjectLines {
  readonly outline?: readonly Point[];
  readonly holes?: readonly (readonly Point[])[];
  readonly line?: readonly Point[];
}
