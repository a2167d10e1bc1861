import type { Emitter } from '../../domain/item.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'
import { leastFirst } from './least-first.ts'
import type { LeastFirst } from './least-first.ts'
import type { Cost } from './trial-prices.ts'

/** An emitter priced to the penny. */
export type Priced = {
  /** Which of those that were asked about. */
  readonly index: number
  readonly emitter: Emitter
  readonly givesW: number
  readonly fitted: Cost
}
/** How an emitter's price is found: a closer least price first, then all of it. */
export type Pricing = {
  readonly closer: (index: number) => number
  readonly work: (index: number) => Outcome<Omit<Priced, 'index'>>
}
export type Cheapest = {
  /** Cheapest first; those with a gap in their parts after all the others. */
  readonly ranked: readonly Priced[]
  /** Those that could not be worked up after all, and why. */
  readonly failed: readonly { readonly index: number; readonly problems: readonly Problem[] }[]
  /** Those that were not worked up, by their least price, which says enough. */
  readonly left: LeastFirst
  /** How many were worked up in full. */
  readonly workedUp: number
  /** False when the search was stopped before it could be sure. */
  readonly certain: boolean
}

/**
 * The cheapest to fit. Whichever has the lowest least price gets a closer one, and when it still has the lowest, it is worked up in
 * full; until no other can be as cheap as the last of the `most` to be shown.
 * Equal prices: the one that gives more heat, then the narrower, then by item.
 * @param leastPence the price below which each cannot be fitted, pence
 * @param pricing how a price is found
 * @param limits how many to show, and how many to work up in full at most
 * @source best-first search with a bound that is never too high (P. E. Hart, N. J. Nilsson, B. Raphael, 1968); prices: practice, no published source
 * @example cheapestFirst(Float64Array.of(1, 9), { closer: () => 2, work: () => ({ ok: true, value: { fitted: { fittedPence: 5, gaps: [] } } }) }, { most: 1, mostWorked: 10 }).workedUp // => 1
 */
export function cheapestFirst(
  leastPence: Float64Array,
  pricing: Pricing,
  { most, mostWorked }: { readonly most: number; readonly mostWorked: number },
): Cheapest {
  const whole: Priced[] = []
  const gapped: Priced[] = []
  const failed: Cheapest['failed'][number][] = []
  const left = leastFirst(leastPence)
  const isCloser = new Uint8Array(leastPence.length)
  let certain = true
  for (let index = left.first(); index !== null; index = left.first()) {
    const last = whole[most - 1]
    if (last !== undefined && left.keyOf(index) > last.fitted.fittedPence) break
    if (isCloser[index] === 0) {
      isCloser[index] = 1
      left.raise(Math.max(left.keyOf(index), pricing.closer(index)))
      continue
    }
    certain = whole.length + gapped.length + failed.length < mostWorked
    if (!certain) break
    left.drop()
    const worked = pricing.work(index)
    if (worked.ok) {
      putInOrder(worked.value.fitted.gaps.length > 0 ? gapped : whole, { ...worked.value, index })
    } else failed.push({ index, problems: worked.problems })
  }
  return { ranked: [...whole, ...gapped], failed, left, workedUp: whole.length + gapped.length, certain }
}

function putInOrder(list: Priced[], one: Priced): void {
  const place = list.findIndex((other) => before(one, other) < 0)
  list.splice(place === -1 ? list.length : place, 0, one)
}

type Tied = Pick<Priced, 'emitter' | 'givesW' | 'fitted'>

function before(a: Tied, b: Tied): number {
  return (
    a.fitted.fittedPence - b.fitted.fittedPence ||
    Math.round(b.givesW) - Math.round(a.givesW) ||
    a.emitter.widthMm - b.emitter.widthMm ||
    (a.emitter.itemId < b.emitter.itemId ? -1 : 1)
  )
}

/**
 * Why one stands before another that costs the same to fit; null when their prices differ.
 * @param first the one that stands before
 * @param second the one that stands after
 * @source practice, no published source
 * @example tieInWords({ emitter: { widthMm: 600 }, givesW: 900, fitted: { fittedPence: 5, gaps: [] } }, { emitter: { widthMm: 600, name: 'B' }, givesW: 860, fitted: { fittedPence: 5, gaps: [] } }) // => "The same price as B; it stands before it because it gives 40 W more."
 */
export function tieInWords(first: Tied, second: Tied): string | null {
  if (first.fitted.fittedPence !== second.fitted.fittedPence) return null
  if (first.fitted.gaps.length > 0 !== second.fitted.gaps.length > 0) return null
  const moreW = Math.round(first.givesW) - Math.round(second.givesW)
  const lessMm = second.emitter.widthMm - first.emitter.widthMm
  const reason =
    moreW > 0
      ? `it gives ${moreW} W more`
      : lessMm > 0
        ? `it takes ${lessMm} mm less of the wall`
        : 'nothing else tells them apart but the order of their codes'
  return `The same price as ${second.emitter.name}; it stands before it because ${reason}.`
}
