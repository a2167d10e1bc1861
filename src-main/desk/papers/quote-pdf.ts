import type { UseCase } from '../desk.ts'
import { customerQuoteView } from '../../documents/customer-quote-view.ts'
import { quoteDocument } from '../../documents/quote-document.ts'
import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'
import type { Firm } from '../../domain/firm.ts'
import type { Gap } from '../../domain/quote.ts'
import { printPdf } from './print-pdf.ts'
import { printable } from './printable.ts'
import { usableLogo } from './usable-logo.ts'
import { workForPaper } from './work-for-paper.ts'
import type { PaperWork } from './work-for-paper.ts'
import { paperPath, writePaper } from './write-paper.ts'

/** The quote for the customer. Refused while a part is missing that nobody let stand, or while nobody says who it is from. */
export const quotePdf: UseCase<'quote.pdf'> = async (input, desk) => {
  const worked = await workForPaper(input, desk)
  if (!worked.ok) return worked
  const firm = await readyFirm(worked.value)
  if (!firm.ok) return firm
  const where = { out: input.out, name: `quote-${worked.value.fileKey}` }
  const place = paperPath(where, desk)
  if (!place.ok) return place
  const view = await printable(customerQuoteView(materialOf(worked.value, firm.value)))
  if (!view.ok) return view
  const printed = await printPdf(quoteDocument(view.value), { createdOn: worked.value.quotedOn })
  return writePaper(printed, where, desk)
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
  return logo.ok ? accept(firm) : logo
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
