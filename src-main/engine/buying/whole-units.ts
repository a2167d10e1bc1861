/** How fine quantities are told apart: a millionth of a unit. */
export const stepsInUnit = 1_000_000

/**
 * A quantity as a whole number of millionths, so that sums of decimal fractions are exact: round(quantity x 1000000).
 * 0.1 + 0.2 and 0.3 come to the same.
 *
 * @param quantity in any unit, up to 1000000000
 * @source arithmetic
 * @example inMillionths(0.1 + 0.2) // => 300000
 */
export function inMillionths(quantity: number): number {
  return Math.round(quantity * stepsInUnit)
}

/**
 * The largest whole number that divides them all; 0 for an empty list (Euclid).
 *
 * @param values whole numbers, 0 or more
 * @source Euclid, Elements VII.2
 * @example commonStep([12000000, 820000]) // => 20000
 */
export function commonStep(values: readonly number[]): number {
  return values.reduce((a, b) => euclid(a, b), 0)
}

function euclid(a: number, b: number): number {
  return b === 0 ? a : euclid(b, a % b)
}
