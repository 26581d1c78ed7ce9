/** Parts brought to so many decimals, so that they add up to their whole as it is shown: each is rounded down, and what is then missing goes, a last
 *  digit each, to those that lost most. Parts below nought count as nought.
 *  @param parts that add up to the whole but for what rounding moved
 *  Example: 1.25, 1.25 and 2.5 of 5.0 to one decimal -> 1.3, 1.2 and 2.5 */
export function figuresRounded(parts: readonly number[], whole: number, decimals: number): readonly number[] {
  const scale = 10 ** decimals;
  const units = parts.map((part) => Math.max(0, part) * scale);
  const counts = units.map(Math.floor);
  const missing = Math.round(figureShown(whole, decimals) * scale) - counts.reduce((sum, count) => sum + count, 0);
  const byLoss = units
    .map((unit, i) => ({ i, loss: unit - Math.floor(unit) }))
    .sort((a, b) => b.loss - a.loss || a.i - b.i);
  for (const { i } of byLoss.slice(0, Math.max(0, missing))) counts[i] = (counts[i] as number) + 1;
  return counts.map((count) => count / scale);
}

/** A figure as it is shown to so many decimals. */
export function figureShown(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
