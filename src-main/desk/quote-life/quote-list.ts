import { accept } from '../../domain/outcome.ts'
import { listIssued, readIssuedPdf } from '../../store/quotes.ts'
import { reading } from '../../store/store.ts'
import type { UseCase } from '../desk.ts'
import { storeOf } from '../store-of.ts'
import { issuedOf, quoteRow } from './quote-row.ts'

export const quoteList: UseCase<'quote.list'> = async ({ jobId, state }, desk) => {
  const issued = await reading(storeOf(desk), (tx) => listIssued(tx, jobId))
  const quotes = issued.map(({ events, ...head }) => quoteRow(head, events, desk.today))
  return accept({ quotes: quotes.filter((quote) => state === undefined || quote.state === state) })
}

export const quoteRead: UseCase<'quote.read'> = ({ quoteId }, desk) =>
  reading(storeOf(desk), async (tx) => {
    const found = await issuedOf(tx, quoteId)
    if (!found.ok) return found
    const { quote, events } = found.value
    const pdf = await readIssuedPdf(tx, quoteId)
    return accept({
      quote: quoteRow(quote, events, desk.today),
      events,
      job: quote.snapshot.job,
      program: quote.program,
      pdfHash: pdf?.hash ?? null,
    })
  })
