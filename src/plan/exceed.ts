/** A figure breaks its limit when it exceeds it by more than this share: rounding of a plan stays well inside it. */
export const LIMIT_SLACK = 0.001;

/** Whether a figure breaks its limit; both in one unit. Example: 8.009 m against 8 m -> true, 8.007 m -> false. */
export function limitExceeded(value: number, limit: number): boolean {
  return value > limit * (1 + LIMIT_SLACK);
}
