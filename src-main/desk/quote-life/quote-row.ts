import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { IssuedQuoteRow, QuoteEvent } from '../../domain/follow-up/quote-life.ts'
import { standing } from '../../engine/quote/life/quote-state.ts'
import { eventsOf, readIssued } from '../../store/quotes.ts'
import type { IssuedHead, IssuedQuote } from '../../store/quotes.ts'
import type { ReadTx } from '../../store/tables.ts'

/** An issued quote in short, as it stands on a day. */
export function quoteRow(head: IssuedHead, events: readonly QuoteEvent[], today: string): IssuedQuoteRow {
  const { quoteId, number, revision, jobId, title, customerName, issuedOn, validUntil, grossPence } = head
  const row = { quoteId, number, revision, jobId, title, customerName, issuedOn, validUntil, grossPence }
  return { ...row, ...standing({ events, validUntil }, today) }
}

export type WithEvents = { readonly quote: IssuedQuote; readonly events: readonly QuoteEvent[] }

/** An issued quote with what happened to it; refused when there is none of that name. */
export async function issuedOf(tx: ReadTx, quoteId: string, path = 'quoteId'): Promise<Outcome<WithEvents>> {
  const quote = await readIssued(tx, quoteId)
  if (quote === null)
    return refuse(
      'not-found',
      `There is no issued quote called ${quoteId}.`,
      path,
      '`quote.list` names them all.',
    )
  return accept({ quote, events: await eventsOf(tx, quoteId) })
}
