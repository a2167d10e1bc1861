import type { Catalogue } from '../../domain/catalogue.ts'
import { accept } from '../../domain/outcome.ts'
import { keepQuote } from '../../store/quotes.ts'
import { writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { workUp } from './work-up.ts'
import type { WorkedUp } from './work-up.ts'

export const quoteKeep: UseCase<'quote.keep'> = async ({ job }, desk) => {
  const worked = await workUp(job, desk)
  if (!worked.ok) return worked
  const { firm, quotedOn, catalogue, figures, quote, pickList } = worked.value
  const dated = { ...job, quotedOn, ...(firm === null ? {} : { firm }) }
  const kept = { job: dated, catalogue: usedOf(catalogue, worked.value), figures, quote, pickList }
  const quoteId = await writing(storeOf(desk), (tx) => keepQuote(tx, desk.today, kept))
  return accept({ quoteId, keptOn: desk.today })
}

/** The part of the catalogue that the quote stands on: what it puts up and what it buys. */
function usedOf(catalogue: Catalogue, { quote, emitters }: WorkedUp): Catalogue {
  const used = new Set([
    ...Object.values(emitters).map((emitter) => emitter.itemId),
    ...quote.internal.purchases.map((purchase) => purchase.itemId),
  ])
  const { favourites } = catalogue
  return {
    items: catalogue.items.filter((item) => used.has(item.itemId)),
    suppliers: catalogue.suppliers,
    prices: catalogue.prices.filter((price) => used.has(price.itemId)),
    ...(favourites === undefined ? {} : { favourites: favourites.filter((itemId) => used.has(itemId)) }),
  }
}
