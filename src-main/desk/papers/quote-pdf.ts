import type { Desk, UseCase } from '../desk.ts'
import { customerQuoteView } from '../../documents/customer-quote-view.ts'
import { quoteDocument } from '../../documents/quote-document.ts'
import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'
import type { Firm } from '../../domain/firm.ts'
import type { Gap } from '../../domain/quote.ts'
import { printPdf } from './print-pdf.ts'
import type { Printed } from './print-pdf.ts'
import { printable } from './printable.ts'
import { usableLogo } from './usable-logo.ts'
import { workForPaper } from './work-for-paper.ts'
import type { PaperWork } from './work-for-paper.ts'
import { paperPath, writePaper } from './write-paper.ts'
import type { Where } from './write-paper.ts'

/** What a quote bears once it is issued. */
export type Issue = {
  /** As `Q-2026-0007`. */
  readonly number: string
  /** 0: as first issued. */
  readonly revision?: number
  readonly issuedOn: string
  /** The last day on which it stands; so many days after its issue as the firm says, when absent. */
  readonly validUntil?: string
}

/**
 * The quote for the customer: a draft, or one that was issued, byte for byte as it went out. Refused while a part is missing that
 * nobody let stand, or while nobody says who it is from.
 */
export const quotePdf: UseCase<'quote.pdf'> = async (input, desk) => {
  const { out } = input
  if (!('quoteId' in input)) {
    const worked = await workForPaper(input, desk)
    if (!worked.ok) return worked
    const { fileKey } = worked.value
    return printedTo({ work: worked.value }, { out, name: `quote-${fileKey}` }, desk)
  }
  const where = { out, name: `quote-${input.quoteId}` }
  const place = paperPath(where, desk)
  if (!place.ok) return place
  const issued = await issuedPdf(input.quoteId, desk)
  if (issued !== null) return writePaper(issued, where, desk)
  const worked = await workForPaper(input, desk)
  if (!worked.ok) return worked
  const issue = { number: input.quoteId, issuedOn: worked.value.quotedOn }
  return printedTo({ work: worked.value, issue }, where, desk)
}

type ToPrint = { readonly work: PaperWork; readonly issue?: Issue }

async function printedTo({ work, issue }: ToPrint, where: Where, desk: Desk) {
  const place = paperPath(where, desk)
  if (!place.ok) return place
  const printed = await printQuote(work, issue)
  return printed.ok ? writePaper(printed.value, where, desk) : printed
}

/** The bytes that went out; null where none were kept. */
async function issuedPdf(quoteId: string, desk: Desk): Promise<Printed | null> {
  if (desk.store === null) return null
  const { reading } = await import('../../store/store.ts')
  const { readIssuedPdf } = await import('../../store/quotes.ts')
  return reading(desk.store, (tx) => readIssuedPdf(tx, quoteId))
}

/** The bytes of a quote: of a draft, where nobody says under what it is issued. Refused as the paper is. */
export async function printQuote(work: PaperWork, issue?: Issue): Promise<Outcome<Printed>> {
  const firm = await readyFirm(work)
  if (!firm.ok) return firm
  const view = await printable(customerQuoteView({ ...materialOf(work, firm.value), ...issue }))
  if (!view.ok) return view
  return accept(await printPdf(quoteDocument(view.value), { createdOn: issue?.issuedOn ?? work.quotedOn }))
}

/** The firm, when the quote may go out in its name. */
async function readyFirm({ firm, quote, job }: PaperWork): Promise<Outcome<Firm>> {
  const gaps = quote.gaps.filter((gap) => gap.waived === undefined)
  if (gaps.length > 0) return { ok: false, problems: gaps.map(gapProblem) }
  if (firm === null) {
    const message = 'Nobody says which firm this quote is from; a quote needs at least the firm’s name.'
    return refuse('invalid', message, 'job.firm', 'Fill in your firm’s details, or put `firm` in the job.')
  }
  if (
    quote.lines.length === 0 ||
    job.swaps.length + (job.options ?? []).filter((one) => one.chosen).length === 0
  ) {
    return refuse('invalid', 'This job has no swaps, so there is nothing to quote for; add one.', 'job.swaps')
  }
  if (firm.logo === undefined) return accept(firm)
  const logo = await usableLogo(firm.logo)
  return logo.ok ? accept({ ...firm, logo: logo.value }) : logo
}

function gapProblem({ gapKey, says }: Gap): Problem {
  return {
    code: 'gap',
    message: says,
    path: 'job.waivers',
    next: `Add it to the catalogue with a price, fill it by hand with a fill for ${gapKey}, or let it stand with a reason: a waiver for ${gapKey}.`,
  }
}

function materialOf(work: PaperWork, firm: Firm) {
  const { job, quote, takeOff, setOuts, emitters, reference, quotedOn, figures } = work
  return {
    job,
    quote,
    firm,
    takeOffLines: takeOff.lines,
    setOuts,
    emitters,
    reference,
    quotedOn,
    validDays: figure(figures, 'money.validDays'),
    taxBasisPoints: taxRatesIn(figures),
  }
}

/** `tax.reducedBasisPoints` as the rate called `reduced`. */
function taxRatesIn({ settings }: Figures): Readonly<Record<string, number>> {
  const rates = Object.entries(settings).flatMap(([id, { value }]) => {
    const rateKey = /^tax\.(.+)BasisPoints$/.exec(id)?.[1]
    return rateKey === undefined ? [] : [[rateKey, value] as const]
  })
  return Object.fromEntries(rates)
}
