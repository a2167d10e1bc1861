import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { mulDiv } from '../money/mul-div.ts'

/** A change of many prices by one rule: a share or an amount, then rounding to a round price. */
export type BulkChange = {
  readonly change:
    | { readonly kind: 'percent'; readonly basisPoints: number }
    | { readonly kind: 'amount'; readonly pence: number }
  readonly rounding: { readonly toPence: 1 | 5 | 10 | 50 | 100; readonly rule: 'nearest' | 'up' | 'down' }
}

const mostPence = 1_000_000_00
const mulDivRule = { nearest: 'half-up', up: 'up', down: 'down' } as const

/**
 * What a price becomes under a bulk change: p (10 000 + r) / 10 000 or p + a, rounded once to a whole multiple of the
 * step, and never below 0. Exact in whole numbers. A dearer price never comes out cheaper than a cheaper one.
 * Refuses a price that would be above 1 000 000 pounds.
 * @param packPence the price before, in pence, 0 to 100 000 000
 * @param bulk the share in basis points from -10 000 on or the amount in pence, and the rounding: step in pence and rule
 * @source arithmetic; a half goes up; that prices are rounded to 5, 10, 50 or 100 pence is practice, no published source
 * @example bulkPence(1990, { change: { kind: 'percent', basisPoints: 350 }, rounding: { toPence: 5, rule: 'nearest' } }).value // => 2060
 */
export function bulkPence(packPence: number, bulk: BulkChange): Outcome<number> {
  const { toPence, rule } = bulk.rounding
  const steps =
    bulk.change.kind === 'percent'
      ? mulDiv(packPence, Math.max(0, 10_000 + bulk.change.basisPoints), 10_000 * toPence, mulDivRule[rule])
      : mulDiv(Math.max(0, packPence + bulk.change.pence), 1, toPence, mulDivRule[rule])
  const pence = steps * toPence
  if (pence <= mostPence) return accept(pence)
  const message = `A price of ${pounds(packPence)} would become ${pounds(pence)}, and no price may be above ${pounds(mostPence)}: change it by less.`
  return refuse('impossible', message, 'change')
}

/**
 * How much a price rises, as hundredths of a percent of what it was: (will - was) 10 000 / was, an exact half away from
 * nothing; a fall is negative. Null when it was 0, since no share of nothing is a rise.
 * @param wasPence the price before, in pence, at least 0
 * @param willPence the price after, in pence, at least 0
 * @source arithmetic
 * @example risesBasisPoints(2000, 2050) // => 250
 */
export function risesBasisPoints(wasPence: number, willPence: number): number | null {
  return wasPence === 0 ? null : mulDiv(willPence - wasPence, 10_000, wasPence, 'half-up')
}

/**
 * A bulk change in words, for the list of what was done.
 * @param bulk the change and its rounding
 * @source practice, no published source
 * @example bulkInWords({ change: { kind: 'percent', basisPoints: 350 }, rounding: { toPence: 5, rule: 'nearest' } }) // => "Up 3.5 %, to the nearest 5p"
 */
export function bulkInWords({ change, rounding }: BulkChange): string {
  const size = change.kind === 'percent' ? change.basisPoints : change.pence
  const much = change.kind === 'percent' ? `${Math.abs(size) / 100} %` : pounds(Math.abs(size))
  const what = size === 0 ? 'Rounded' : `${size > 0 ? 'Up' : 'Down'} ${much},`
  const step = rounding.toPence === 100 ? '£1' : `${rounding.toPence}p`
  const how = { nearest: 'to the nearest', up: 'rounded up to', down: 'rounded down to' }[rounding.rule]
  return `${what} ${size === 0 ? how.replace('rounded ', '') : how} ${step}`
}

function pounds(pence: number): string {
  return `£${Math.floor(pence / 100)}.${String(pence % 100).padStart(2, '0')}`
}
