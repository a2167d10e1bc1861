import type { AnswerOf } from '../../contract/requests.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Purchase, Quote } from '../../domain/quote.ts'
import { compareQuotes } from '../../engine/quote/life/compare-quotes.ts'
import type { IssuedQuote } from '../../store/quotes.ts'
import { reading } from '../../store/store.ts'
import type { Desk, UseCase } from '../desk.ts'
import { workUp } from '../quoting/work-up.ts'
import { storeOf } from '../store-of.ts'
import { issuedOf } from './quote-row.ts'

type Drift = AnswerOf<'quote.drift'>

export const quoteDrift: UseCase<'quote.drift'> = async ({ quoteId }, desk) => {
  const found = await reading(storeOf(desk), (tx) => issuedOf(tx, quoteId))
  return found.ok ? driftOf(found.value.quote, desk) : found
}

/**
 * The same job with today's catalogue, prices and figures, beside what was issued. The firm, and what the job itself changed, stay
 * as they were.
 */
export async function driftOf(issued: IssuedQuote, desk: Desk): Promise<Outcome<Drift>> {
  const { job, quote: was } = issued.snapshot
  const worked = await workUp({ ...job, quotedOn: desk.today }, desk)
  if (!worked.ok) {
    const cannot = worked.problems.map(({ message }) => message.slice(0, 200))
    const says = 'The job can no longer be worked out as it was issued.'
    return accept({ cost: [], changeCostPence: 0, price: compareQuotes(was, was), says, cannot })
  }
  const { quote: is } = worked.value
  const known = new Set(was.gaps.map(({ gapKey }) => gapKey))
  const gaps = is.gaps.filter(({ gapKey, waived }) => waived === undefined && !known.has(gapKey))
  const cost = costLines(was.internal.purchases, is.internal.purchases)
  const changeCostPence = is.internal.costPence - was.internal.costPence
  return accept({
    cost,
    changeCostPence,
    price: compareQuotes(was, is),
    says: inWords(changeCostPence, gaps.length),
    cannot: gaps.map(({ says }) => says.slice(0, 200)),
  })
}

function inWords(changePence: number, missing: number): string {
  const lost =
    missing === 0 ? '' : ` ${missing === 1 ? 'One part' : `${missing} parts`} can no longer be bought.`
  const pounds = (Math.abs(changePence) / 100).toFixed(2)
  if (changePence === 0) return `It costs you what it did when the quote was issued.${lost}`
  return `It costs you £${pounds} ${changePence > 0 ? 'more' : 'less'} than when the quote was issued.${lost}`
}

function costLines(was: readonly Purchase[], is: readonly Purchase[]): Drift['cost'] {
  const before = byItem(was)
  const after = byItem(is)
  return [...new Set([...before.keys(), ...after.keys()])]
    .flatMap((itemId) => {
      const then = before.get(itemId)
      const now = after.get(itemId)
      const changePence = (now?.costPence ?? 0) - (then?.costPence ?? 0)
      if (changePence === 0 && then?.supplierName === now?.supplierName) return []
      return [
        {
          name: now?.name ?? then?.name ?? itemId,
          wasCostPence: then?.costPence ?? null,
          isCostPence: now?.costPence ?? null,
          changePence,
          says: saysOf(then, now),
        },
      ]
    })
    .toSorted((a, b) => Math.abs(b.changePence) - Math.abs(a.changePence))
}

type Bought = { readonly name: string; readonly costPence: number; readonly supplierName: string }

function byItem(purchases: Quote['internal']['purchases']): ReadonlyMap<string, Bought> {
  const items = new Map<string, Bought>()
  for (const { itemId, name, costPence, supplierName } of purchases) {
    const sum = (items.get(itemId)?.costPence ?? 0) + costPence
    items.set(itemId, { name, costPence: sum, supplierName })
  }
  return items
}

function saysOf(then: Bought | undefined, now: Bought | undefined): string {
  if (then === undefined) return `Not bought then; now from ${now?.supplierName ?? 'nobody'}.`
  if (now === undefined) return `Bought from ${then.supplierName} then; no longer bought.`
  if (then.supplierName !== now.supplierName)
    return `From ${now.supplierName} now, from ${then.supplierName} then.`
  return `From ${now.supplierName}, ${now.costPence > then.costPence ? 'dearer' : 'cheaper'} than then.`
}
