import packageJson from '../../../package.json' with { type: 'json' }
import type { Catalogue } from '../../domain/catalogue.ts'
import { figure } from '../../domain/figures.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { mayHappen } from '../../engine/quote/life/quote-state.ts'
import { numberIn, revisionId, seriesOf, usualNumberPattern } from '../../engine/quote/life/quote-number.ts'
import { markJob } from '../../store/jobs.ts'
import { addEvent, hashOf, keepIssued, newestRevision, nextInSeries, takeNumber } from '../../store/quotes.ts'
import { reading, writing } from '../../store/store.ts'
import type { ReadTx } from '../../store/tables.ts'
import type { Desk, UseCase } from '../desk.ts'
import type { Printed } from '../papers/print-pdf.ts'
import { printQuote } from '../papers/quote-pdf.ts'
import type { Issue } from '../papers/quote-pdf.ts'
import type { PaperWork } from '../papers/work-for-paper.ts'
import { workUp } from '../quoting/work-up.ts'
import type { WorkedUp } from '../quoting/work-up.ts'
import { storeOf } from '../store-of.ts'
import { issuedOf } from './quote-row.ts'

/** What a quote is to be called, and the series that its number is the next of; a revision takes none. */
type Name = {
  readonly number: string
  readonly revision: number
  readonly series?: string
  readonly nth: number
}

/** How often another window may take the number that was to be printed before we give up. */
const mostTries = 20

export const quoteIssue: UseCase<'quote.issue'> = async ({ job, revises, reason }, desk) => {
  const worked = await workUp({ ...job, quotedOn: desk.today }, desk)
  if (!worked.ok) return worked
  const work = worked.value
  const ask = { jobId: job.jobId, revises, pattern: work.firm?.quoteNumbers ?? usualNumberPattern }
  for (let tried = 0; tried < mostTries; tried += 1) {
    const name = await reading(storeOf(desk), (tx) => nameOf(tx, ask, desk))
    if (!name.ok) return name
    const validUntil = dayPlus(desk.today, figure(work.figures, 'money.validDays'))
    const printed = await printQuote(...asIssued(work, name.value, validUntil))
    if (!printed.ok) return printed
    const kept = await freeze(
      { work, name: name.value, validUntil, printed: printed.value, reason, ask },
      desk,
    )
    if (!kept.ok) return kept
    if (kept.value !== null) return accept(kept.value)
  }
  return refuse(
    'conflict',
    'Other windows issue quotes at this moment; nothing was issued here.',
    undefined,
    'Try again.',
  )
}

type Ask = { readonly jobId: string; readonly revises: string | undefined; readonly pattern: string }

/** The name that the quote gets if it is issued before any other. */
async function nameOf(tx: ReadTx, { jobId, revises, pattern }: Ask, desk: Desk): Promise<Outcome<Name>> {
  if (revises === undefined) {
    const series = seriesOf(pattern, desk.today)
    const nth = await nextInSeries(tx, series, (one) => numberIn(series, one))
    return accept({ number: numberIn(series, nth), revision: 0, series, nth })
  }
  const earlier = await issuedOf(tx, revises, 'revises')
  if (!earlier.ok) return earlier
  const { quote, events } = earlier.value
  if (quote.jobId !== jobId) {
    const message = `${revises} is a quote for the job ${quote.jobId}, so it can’t be revised by ${jobId}.`
    return refuse('conflict', message, 'revises', 'Issue this job as a quote of its own.')
  }
  const newest = await newestRevision(tx, quote.number)
  if (newest !== null && newest.quoteId !== revises) {
    const message = `${revises} was revised already; the newest is ${newest.quoteId}.`
    return refuse('conflict', message, 'revises', `Revise ${newest.quoteId}.`)
  }
  const may = mayHappen(
    { events, validUntil: quote.validUntil },
    { kind: 'replaced', onDay: desk.today },
    desk.today,
  )
  return may.ok ? accept({ number: quote.number, revision: quote.revision + 1, nth: 0 }) : may
}

/** The work under its name, and what it bears on the page. */
function asIssued(work: WorkedUp, { number, revision }: Name, validUntil: string): [PaperWork, Issue] {
  const quoteId = revisionId(number, revision)
  return [
    { ...work, reference: quoteId, fileKey: quoteId },
    { number, revision, issuedOn: work.quotedOn, validUntil },
  ]
}

type Freezing = {
  readonly work: WorkedUp
  readonly name: Name
  readonly validUntil: string
  readonly printed: Printed
  readonly reason: string | undefined
  readonly ask: Ask
}

/** Writes the quote down under the name that is printed on it; null when another took that name in the meantime. */
async function freeze({ work, name, validUntil, printed, reason, ask }: Freezing, desk: Desk) {
  const { number, revision } = name
  const quoteId = revisionId(number, revision)
  const { job, firm, catalogue, figures, quote, pickList } = work
  const grossPence = quote.totals.grossPence
  return writing(storeOf(desk), async (tx) => {
    const still = await nameOf(tx, ask, desk)
    if (!still.ok) return still
    if (still.value.number !== number || still.value.revision !== revision) return accept(null)
    await keepIssued(tx, {
      quoteId,
      number,
      revision,
      jobId: job.jobId,
      title: job.title,
      customerName: job.customer.name,
      issuedOn: desk.today,
      validUntil,
      grossPence,
      program: packageJson.version,
      snapshot: {
        job: { ...job, ...(firm === null ? {} : { firm }) },
        catalogue: usedOf(catalogue, work),
        figures,
        quote,
        pickList,
      },
      pdf: printed.bytes,
      pages: printed.pages,
    })
    if (name.series !== undefined) await takeNumber(tx, name.series, name.nth)
    const happened = { onDay: desk.today, at: desk.now() }
    if (ask.revises !== undefined) await addEvent(tx, ask.revises, { kind: 'replaced', ...happened })
    await addEvent(tx, quoteId, {
      kind: 'issued',
      ...happened,
      ...(reason === undefined || reason === '' ? {} : { reason }),
    })
    await markJob(tx, job.jobId, { stage: 'quoted' })
    const pdfHash = hashOf(printed.bytes)
    return accept({ quoteId, number, revision, issuedOn: desk.today, validUntil, grossPence, pdfHash })
  })
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

function dayPlus(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10)
}
