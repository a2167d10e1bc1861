import { figure } from '../../domain/figures.ts'
import type { Purchase, Quote } from '../../domain/quote.ts'
import { stalePrice } from '../../engine/buying/stale-price.ts'
import type { WorkedUp } from './work-up.ts'

/**
 * The quote with a mark on each line that is bought at a price which began longer ago than the firm's limit. Only while a quote is
 * under construction: it is for the firm, and an issued quote stays as it was.
 */
export function withStaleMarks({ quote, catalogue, figures, quotedOn }: WorkedUp): Quote {
  const limitDays = figure(figures, 'prices.staleAfterDays')
  const began = new Map(catalogue.prices.map((price) => [packOf(price), price]))
  const sentences = (bought: Purchase) =>
    bought.packs.flatMap(({ code, holds }) => {
      const { itemId, supplierId, supplierName } = bought
      const price = began.get(packOf({ itemId, supplierId, code, packHolds: holds }))
      const says = price === undefined ? null : stalePrice({ ...price, supplierName }, quotedOn, limitDays)
      return says === null ? [] : [says]
    })
  const stale = new Map(quote.internal.purchases.map((bought) => [bought.lineId, sentences(bought)]))
  const lines = quote.lines.map((line) => {
    const says = stale.get(line.lineId) ?? []
    return says.length === 0 ? line : { ...line, stale: true as const, staleSays: says.join(' ') }
  })
  return { ...quote, lines }
}

type Pack = {
  readonly itemId: string
  readonly supplierId: string
  readonly code: string
  readonly packHolds: number
}

function packOf({ itemId, supplierId, code, packHolds }: Pack): string {
  return JSON.stringify([itemId, supplierId, code, packHolds])
}
