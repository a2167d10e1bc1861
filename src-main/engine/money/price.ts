import { mulDiv } from './mul-div.ts'

const whole = 10_000

/**
 * The selling price of a cost with a mark-up on it: sell = cost (1 + mark-up), to the nearest penny, halves up.
 *
 * @param costPence whole pence
 * @param basisPoints mark-up on cost in hundredths of a percent, -10000 or more (2500 is 25 %)
 * @source definition of mark-up
 * @example markedUpPence(1250, 3000) // => 1625
 */
export function markedUpPence(costPence: number, basisPoints: number): number {
  return mulDiv(costPence, whole + basisPoints, whole, 'half-up')
}

/**
 * The selling price of a cost with a margin in it: sell = cost / (1 - margin), to the nearest penny, halves up.
 * Throws for a margin of 100 % or more: no price has so much.
 *
 * @param costPence whole pence
 * @param basisPoints margin as a share of the price in hundredths of a percent, under 10000 (2000 is 20 %)
 * @source definition of margin, 1 - cost / sell, turned round
 * @example pricedByMarginPence(800, 2000) // => 1000
 */
export function pricedByMarginPence(costPence: number, basisPoints: number): number {
  if (basisPoints >= whole) throw new Error(`No price has a margin of ${basisPoints} basis points`)
  return mulDiv(costPence, whole, whole - basisPoints, 'half-up')
}

/**
 * The share of a selling price that is not cost: margin = 1 - cost / sell, in basis points, halves up. Null when nothing
 * is charged, for then there is no price to have a share of.
 *
 * @param costPence whole pence
 * @param sellPence whole pence
 * @source definition of margin
 * @example marginBasisPoints(800, 1000) // => 2000
 */
export function marginBasisPoints(costPence: number, sellPence: number): number | null {
  return sellPence === 0 ? null : mulDiv(sellPence - costPence, whole, sellPence, 'half-up')
}

/**
 * A share of a sum of money (a deposit, a contingency): total basisPoints / 10000, to the nearest penny, halves up.
 *
 * @param totalPence whole pence
 * @param basisPoints share in hundredths of a percent (2500 is 25 %)
 * @source arithmetic
 * @example sharePence(10001, 2500) // => 2500
 */
export function sharePence(totalPence: number, basisPoints: number): number {
  return mulDiv(totalPence, basisPoints, whole, 'half-up')
}
