import type { Point } from '../geometry/point.ts';
import { boxOf, type Region } from '../geometry/ring.ts';
import { PHASES_PER_MM, SAME_LINE_MM, UNIT_SLACK } from '../geometry/tolerance.ts';
import type { Plan, Room } from '../plan/plan.ts';
import { rules } from '../plan/reference.ts';
import { gridFrame, groutLines, type TiledField } from '../plan/tile-grid.ts';
import type { Frame } from './frame.ts';
import type { GroutRows, PartCut, PartGrout } from './part.ts';

/** What a joint costs off the grout lines, as a multiple of its length. */
export const OFF_RATE = 1 + rules.offGroutPrice.value;

/** The grout lines of the part that begins at `origin`. Null where joints do not go by them: another aim, no tiles, more than one field of them, or
 *  no line that runs straight through. */
export function partGrout(
  { layout }: Plan,
  fields: readonly TiledField[],
  rooms: readonly Room[],
  origin: Point,
): PartGrout | null {
  if (layout.aim !== 'grout-lines') return null;
  const [field, ...more] = fields.filter((own) => own.rooms.some((room) => rooms.includes(room)));
  if (field === undefined || more.length > 0) return null;
  const { grid } = field;
  const { toSheet } = gridFrame({ origin: [0, 0], angleDeg: grid.angleDeg });
  const rows = groutLines(grid).map(({ axis, firstMm, spacingMm }): GroutRows => {
    const normal = toSheet(axis === 0 ? [1, 0] : [0, 1]);
    const begin = dot(normal, [grid.origin[0] - origin[0], grid.origin[1] - origin[1]]) + firstMm;
    const own = rowsUpright({ normal, firstMm: begin, spacingMm });
    return { ...own, firstMm: Math.round(own.firstMm * PHASES_PER_MM) / PHASES_PER_MM };
  });
  if (rows.length === 0) return null;
  return {
    rows: rows.sort((a, b) => b.normal[0] - a.normal[0]),
    reachMm: grid.groutMm / 2 + rules.groutLineSlackMm.value,
    counts: 'strips',
  };
}

function dot(a: Point, b: Point): number {
  return a[0] * b[0] + a[1] * b[1];
}

/** The same lines with their normal to the right, or straight down the sheet. */
function rowsUpright({ normal: [x, y], firstMm, spacingMm }: GroutRows): GroutRows {
  const snapped: Point =
    Math.abs(y) < UNIT_SLACK ? [Math.sign(x), 0] : Math.abs(x) < UNIT_SLACK ? [0, Math.sign(y)] : [x, y];
  const sign = snapped[0] > 0 || (snapped[0] === 0 && snapped[1] > 0) ? 1 : -1;
  return {
    normal: sign > 0 ? snapped : [-snapped[0] + 0, -snapped[1] + 0],
    firstMm: (((firstMm * sign) % spacingMm) + spacingMm) % spacingMm,
    spacingMm,
  };
}

/** The lines as they lie in a frame. */
export function groutTurn(grout: PartGrout, frame: Frame): PartGrout {
  return { ...grout, rows: grout.rows.map((own) => rowsUpright({ ...own, normal: frame.toFrame(own.normal) })) };
}

/** The direction of the lines, from 0 up to a quarter turn, radians. */
export function groutAngle({ rows }: PartGrout): number {
  const [x, y] = rows[0]?.normal ?? [1, 0];
  const quarter = Math.PI / 2;
  const angle = Math.atan2(y, x);
  return ((angle % quarter) + quarter) % quarter;
}

/** The grout lines that run along the lines of an axis: upright for 0, level for 1; null where there are none. */
export function groutAlong(grout: PartGrout | null, axis: 0 | 1): GroutRows | null {
  return grout?.rows.find(({ normal }) => normal[axis] === 1) ?? null;
}

/** The middle of the lines that cross a region, in a frame along its walls: where floor and things lie evenly, they say which way it lies. */
export function groutMiddle(grout: PartGrout, region: Region, frame: Frame): Point {
  const own = groutTurn(grout, frame);
  const { minX, maxX, minY, maxY } = boxOf(region.outline.map(frame.toFrame));
  const middle = (axis: 0 | 1, from: number, to: number) => {
    const rows = groutAlong(own, axis);
    return rows === null ? (from + to) / 2 : (groutFrom(rows, from) + groutTo(rows, to)) / 2;
  };
  return frame.toSheet([middle(0, minX, maxX), middle(1, minY, maxY)]);
}

/** The last line up to a place. */
export function groutTo({ firstMm, spacingMm }: GroutRows, at: number): number {
  return firstMm + Math.floor((at - firstMm) / spacingMm) * spacingMm;
}

/** The first line from a place on. */
export function groutFrom({ firstMm, spacingMm }: GroutRows, at: number): number {
  return firstMm + Math.ceil((at - firstMm) / spacingMm) * spacingMm;
}

/** The line nearest to a place. */
export function groutNear({ firstMm, spacingMm }: GroutRows, at: number): number {
  return firstMm + Math.round((at - firstMm) / spacingMm) * spacingMm;
}

/** What a millimetre of joint along a line of an axis costs. */
export function lineRate(grout: PartGrout | null, axis: 0 | 1, at: number): number {
  if (grout === null) return 1;
  const rows = groutAlong(grout, axis);
  return rows !== null && Math.abs(groutNear(rows, at) - at) <= grout.reachMm ? 1 : OFF_RATE;
}

/** How far a straight joint lies off the grout lines that run its way, mm; infinitely where none do. */
export function cutOffMm({ rows }: PartGrout, { from, to }: Pick<PartCut, 'from' | 'to'>): number {
  const offs = rows.map((own) => {
    const [a, b] = [dot(own.normal, from), dot(own.normal, to)];
    const middle = (a + b) / 2;
    return Math.abs(a - b) <= SAME_LINE_MM ? Math.abs(groutNear(own, middle) - middle) : Infinity;
  });
  return Math.min(...offs);
}

/** What a millimetre of a joint costs, whatever its direction. */
export function cutRate(grout: PartGrout | null, { from, to }: Pick<PartCut, 'from' | 'to'>): number {
  if (grout === null) return 1;
  const isOn = grout.rows.some((rows) => {
    const a = dot(rows.normal, from);
    const b = dot(rows.normal, to);
    const line = groutNear(rows, (a + b) / 2);
    return Math.abs(a - line) <= grout.reachMm && Math.abs(b - line) <= grout.reachMm;
  });
  return isOn ? 1 : OFF_RATE;
}
