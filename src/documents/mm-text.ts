/** What stands behind the decimal mark, by thousandths; nothing for whole numbers. Example: 250 -> ".25" */
const thousandths: readonly string[] = Array.from({ length: 1000 }, (_, i) =>
  i === 0 ? '' : `.${String(i).padStart(3, '0').replace(/0+$/u, '')}`,
);

/** A length on paper to 0.001 mm, without trailing noughts; never a minus before nothing, never a power of ten. A sheet has hundreds of thousands, and an
 *  engine takes its time to write a broken number.  Example: -0.25 -> "-0.25", 0.0004 -> "0" */
export function mmText(value: number): string {
  const count = Math.round(value * 1000);
  const whole = Math.trunc(count / 1000);
  const sign = count < 0 ? '-' : '';
  return `${sign}${Math.abs(whole)}${thousandths[Math.abs(count - whole * 1000)] ?? ''}`;
}
