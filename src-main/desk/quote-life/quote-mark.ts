import { accept } from '../../domain/outcome.ts'
import type { JobStage } from '../../domain/job.ts'
import type { QuoteEventKind } from '../../domain/follow-up/quote-life.ts'
import { mayHappen } from '../../engine/quote/life/quote-state.ts'
import { markJob } from '../../store/jobs.ts'
import { addEvent, newestRevision } from '../../store/quotes.ts'
import { reading, writing } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { driftOf } from './quote-drift.ts'
import { issuedOf, quoteRow } from './quote-row.ts'

/** How far its job has come when this happens to a quote. */
const stageAfter: Readonly<Partial<Record<QuoteEventKind, JobStage>>> = {
  sent: 'quoted',
  accepted: 'accepted',
  declined: 'lost',
  withdrawn: 'lost',
}

export const quoteMark: UseCase<'quote.mark'> = async ({ quoteId, kind, onDay = null, reason }, desk) => {
  const store = storeOf(desk)
  const before = await reading(store, (tx) => issuedOf(tx, quoteId))
  if (!before.ok) return before
  // What prices have done since is worked out before the file is locked for writing.
  const drift = kind === 'accepted' ? await driftOf(before.value.quote, desk) : null
  return writing(store, async (tx) => {
    const found = await issuedOf(tx, quoteId)
    if (!found.ok) return found
    const { quote, events } = found.value
    const happening = { kind, onDay: onDay ?? desk.today, ...(reason === undefined ? {} : { reason }) }
    const may = mayHappen({ events, validUntil: quote.validUntil }, happening, desk.today)
    if (!may.ok) return may
    const event = {
      ...happening,
      at: desk.now(),
      ...(drift?.ok === true ? { driftPence: drift.value.price.changeGrossPence } : {}),
    }
    await addEvent(tx, quoteId, event)
    const newest = await newestRevision(tx, quote.number)
    const stage = stageAfter[kind]
    if (newest?.quoteId === quoteId && stage !== undefined) await markJob(tx, quote.jobId, { stage })
    return accept({ quote: quoteRow(quote, [...events, event], desk.today) })
  })
}
