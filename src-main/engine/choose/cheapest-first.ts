import type { Emitter } from '../../domain/item.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'
import type { Fitted } from './fitted-cost.ts'

/** An emitter that suits, with the price below which it cannot be fitted. */
export type Bounded = {
  readonly emitter: Emitter
  readonly givesW: number
  /** The least that the emitter itself costs, marked up. */
  readonly ownPence: number
  readonly leastPence: number
}
/** How an emitter's price is found: a closer least price first, then all of it. */
export type Pricing = {
  readonly closer: (one: Bounded) => Outcome<number>
  readonly work: (emitter: Emitter) => Outcome<Fitted>
}
export type Priced = Bounded & { readonly fitted: Fitted }
export type Cheapest = {
  /** Cheapest first; those with a gap in their parts after all the others. */
  readonly ranked: readonly Priced[]
  /** Those that could not be worked up after all, and why. */
  readonly failed: readonly (Bounded & { readonly problems: readonly Problem[] })[]
  /** Those that were not worked up: their least price says enough. */
  readonly left: readonly Bounded[]
  /** How many were worked up in full. */
  readonly workedUp: number
  /** False when the search was stopped before it could be sure. */
  readonly certain: boolean
}

/**
 * The cheapest to fit. In the order of their least price, each gets a closer least price, and where that is no more than the last of
 * the `most` to be shown, it is worked up in full; until no other can be as cheap.
 * Equal prices: the one that gives more heat, then the narrower, then by item.
 * @param bounded emitters that suit
 * @param pricing how a price is found
 * @param limits how many to show, and how many to look at closely at most
 * @source practice, no published source
 * @example cheapestFirst([{ emitter: { itemId: 'a' }, leastPence: 1 }, { emitter: { itemId: 'b' }, leastPence: 9 }], { closer: () => ({ ok: true, value: 2 }), work: () => ({ ok: true, value: { fittedPence: 5, gaps: [] } }) }, { most: 1, mostWorked: 10 }).workedUp // => 1
 */
export function cheapestFirst(
  bounded: readonly Bounded[],
  pricing: Pricing,
  { most, mostWorked }: { readonly most: number; readonly mostWorked: number },
): Cheapest {
  const whole: Priced[] = []
  const gapped: Priced[] = []
  const failed: Cheapest['failed'][number][] = []
  const passed: Bounded[] = []
  const order = bounded.toSorted((a, b) => a.leastPence - b.leastPence)
  let looked = 0
  let certain = true
  const beyond = (pence: number) => {
    const last = whole[most - 1]
    return last !== undefined && pence > last.fitted.fittedPence
  }
  for (const next of order) {
    if (beyond(next.leastPence)) break
    certain = looked < mostWorked
    if (!certain) break
    looked += 1
    const closer = pricing.closer(next)
    if (closer.ok && beyond(closer.value)) {
      passed.push({ ...next, leastPence: Math.max(closer.value, next.leastPence) })
      continue
    }
    const fitted = closer.ok ? pricing.work(next.emitter) : closer
    if (!fitted.ok) failed.push({ ...next, problems: fitted.problems })
    else putInOrder(fitted.value.gaps.length > 0 ? gapped : whole, { ...next, fitted: fitted.value })
  }
  const workedUp = whole.length + gapped.length
  const left = [...passed, ...order.slice(looked)]
  return { ranked: [...whole, ...gapped], failed, left, workedUp, certain }
}

function putInOrder(list: Priced[], one: Priced): void {
  const place = list.findIndex((other) => before(one, other) < 0)
  list.splice(place === -1 ? list.length : place, 0, one)
}

function before(a: Priced, b: Priced): number {
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
export function tieInWords(first: Priced, second: Priced): string | null {
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
