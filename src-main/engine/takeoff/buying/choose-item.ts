import { because } from '../../../domain/derivation.ts'
import type { Derivation } from '../../../domain/derivation.ts'
import type { Outcome } from '../../../domain/outcome.ts'
import type { Purchase } from '../../../domain/quote.ts'
import { poundsOf } from '../purchase.ts'

/** An item that is what a need asks for. */
export type Found = { readonly itemId: string; readonly name: string; readonly generic: boolean }
/** An item that would do, and what buying it comes to. */
export type Tried = { readonly item: Found; readonly bought: Outcome<Purchase> }
export type Choice = { readonly item: Found; readonly purchase: Purchase }

/**
 * Which of the items that would do is taken: a preferred one before all others, of several the cheapest; else the cheapest; of
 * equals the first by id. The purchase's `why` says which it was and what the next would have cost.
 * @param tried the items that would do, each bought as cheaply as can be
 * @param favourites ids of the items that the firm would rather have
 * @source practice, no published source
 * @example chosenItem([{ item: { itemId: 'a', name: 'A' }, bought: { ok: true, value: { costPence: 100, why: { from: [] } } } }], new Set(['a'])).purchase.why.from[0].says // => "Your firm's preferred item, and the only one with a price that will do."
 */
export function chosenItem(tried: readonly Tried[], favourites: ReadonlySet<string>): Choice | null {
  const ranked = tried
    .flatMap(({ item, bought }) => (bought.ok ? [{ item, purchase: bought.value }] : []))
    .toSorted(
      (a, b) => a.purchase.costPence - b.purchase.costPence || (a.item.itemId < b.item.itemId ? -1 : 1),
    )
  const preferred = ranked.find(({ item }) => favourites.has(item.itemId))
  const best = preferred ?? ranked[0]
  if (best === undefined) return null
  const other = ranked.find((one) => one !== best)
  const reasons = [
    whyChosen(best, other, preferred !== undefined),
    ...tried.flatMap((one) => (favourites.has(one.item.itemId) ? whyNot(one) : [])),
  ]
  const { purchase } = best
  return {
    item: best.item,
    purchase: { ...purchase, why: { ...purchase.why, from: [...purchase.why.from, ...reasons] } },
  }
}

function whyChosen(best: Choice, other: Choice | undefined, preferred: boolean): Derivation {
  const unit = 'pence'
  const { costPence } = best.purchase
  if (other === undefined) {
    const says = preferred
      ? "Your firm's preferred item, and the only one with a price that will do."
      : 'The only item with a price that will do.'
    return because(says, costPence, { unit })
  }
  const would = `${other.item.name}, would have cost ${poundsOf(other.purchase.costPence)}.`
  const says = preferred
    ? `Your firm's preferred item. The cheapest other that will do, ${would}`
    : `The cheapest item that will do. The next, ${would}`
  return because(says, other.purchase.costPence, { unit })
}

function whyNot({ item, bought }: Tried): readonly Derivation[] {
  if (bought.ok) return []
  const reason = bought.problems.map(({ message }) => message).join(' ')
  return [because(`Your firm's preferred item ${item.name} could not be bought. ${reason}`, item.itemId)]
}
