import type { AfterJob } from '../../domain/follow-up/after-job.ts'
import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { finalAccount } from '../../engine/quote/life/final-account.ts'
import { standing } from '../../engine/quote/life/quote-state.ts'
import type { ReadTx } from '../../store/tables.ts'
import type { Desk } from '../desk.ts'
import { issuedOf } from '../quote-life/quote-row.ts'
import type { WithEvents } from '../quote-life/quote-row.ts'

export const nothingYet: AfterJob = { tasks: [], parts: [], variations: [] }

/** A quote that the customer accepted; nothing happens after another. */
export async function acceptedOf(tx: ReadTx, quoteId: string, desk: Desk): Promise<Outcome<WithEvents>> {
  const found = await issuedOf(tx, quoteId)
  if (!found.ok) return found
  const { quote, events } = found.value
  if (standing({ events, validUntil: quote.validUntil }, desk.today).state === 'accepted') return found
  const message = `${quoteId} is not accepted, so there is no job to note anything of.`
  return refuse('conflict', message, 'quoteId', 'Note that the customer accepted it first.')
}

/** The account by the quote's own lines and the tax rates of its day. */
export function accountOf({ quote }: WithEvents, after: AfterJob) {
  const { quote: accepted, figures } = quote.snapshot
  return finalAccount(accepted, after, figures)
}
