/**
 * A figure to two places, as areas and U-values are written down; what is above 0 stays above 0.
 * @param value any figure, 0 or more
 * @source practice, no published source
 * @example toHundredths(9.8999999) // => 9.90
 */
export function toHundredths(value: number): number {
  const rounded = Math.round(Number((value * 100).toPrecision(12))) / 100
  return rounded === 0 && value > 0 ? 0.01 : rounded
}
