import { sharesByRoom } from '../../documents/quote/by-room.ts'
import { reverseChargeNotes, taxNote } from '../../documents/quote/tax-notes.ts'
import type { Firm, PriceDetail } from '../../domain/firm.ts'
import type { Job } from '../../domain/job.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { reverseChargeWording } from '../../domain/pricing.ts'
import type { Quote, QuoteLine, TaxTotal } from '../../domain/quote.ts'
import { quotationXml } from '../../exchange/ubl/quotation.ts'
import type { QuotationPaper, TradeLine, TradeParty, TradeTax } from '../../exchange/ubl/trade-paper.ts'
import { reading } from '../../store/store.ts'
import type { IssuedQuote } from '../../store/quotes.ts'
import type { UseCase } from '../desk.ts'
import { filePath, writeFile } from '../papers/write-file.ts'
import { storeOf } from '../store-of.ts'
import { issuedOf } from './quote-row.ts'

/** The issued quote for another program: what the customer's paper says, to the penny, and nothing else. */
export const quoteXml: UseCase<'quote.xml'> = async ({ quoteId, out }, desk) => {
  const file = { form: 'xml' as const, out, name: `quote-${quoteId}` }
  const place = filePath(file, desk)
  if (!place.ok) return place
  const found = await reading(storeOf(desk), (tx) => issuedOf(tx, quoteId))
  if (!found.ok) return found
  const paper = paperOf(found.value.quote)
  if (!paper.ok) return paper
  const xml = quotationXml(paper.value)
  return xml.ok ? writeFile({ ...file, bytes: new TextEncoder().encode(xml.value) }, desk) : xml
}

/** The quotation as it was issued. */
export function paperOf(issued: IssuedQuote): Outcome<QuotationPaper> {
  const { job, quote } = issued.snapshot
  const { firm, customer } = job
  if (firm === undefined) {
    const message = `${issued.quoteId} does not say which firm it is from.`
    return refuse('invalid', message, 'quoteId', 'Issue the job’s quote anew, under your firm’s name.')
  }
  const { netPence, grossPence, taxes } = quote.totals
  return accept({
    number: issued.quoteId,
    issuedOn: issued.issuedOn,
    validTo: issued.validUntil,
    currency: firm.currency ?? 'GBP',
    notes: [
      ...(issued.revision === 0 ? [] : [`Revision ${issued.revision} of ${issued.number}`]),
      taxNote(quote.totals, 'total'),
      ...reverseChargeNotes(quote.totals),
    ],
    seller: sellerOf(firm),
    buyer: { ...customer },
    lines: customerLines(quote, job, job.priceDetail ?? firm.priceDetail ?? 'lines'),
    totals: { netPence, taxes: taxes.map(taxOf), grossPence },
  })
}

function sellerOf({ name, addressLines, taxNumber, phone, email }: Firm): TradeParty {
  return { name, addressLines, taxNumber, phone, email }
}

function taxOf({ rateKey, rateName, basisPoints, netPence, taxPence, toAccountFor }: TaxTotal): TradeTax {
  const tax = { rateKey, rateName, basisPoints, netPence, taxPence }
  if (toAccountFor !== undefined) return { ...tax, category: 'AE', reason: reverseChargeWording }
  if (rateKey === 'exempt') return { ...tax, category: 'E', reason: rateName }
  return { ...tax, category: basisPoints === 0 ? 'Z' : 'S' }
}

/** As much of the price as the customer's paper shows: every line, a sum for each room, or one for each rate. */
function customerLines(quote: Quote, job: Job, detail: PriceDetail): readonly TradeLine[] {
  if (detail === 'lines') return quote.lines.map(asItStands)
  const shares = detail === 'rooms' ? sharesByRoom(quote.lines, job) : wholes(quote)
  return shares.map(({ name, rateKey, lines }, at) => {
    const netPence = lines.reduce((sum, line) => sum + line.netPence, 0)
    const line = { lineId: String(at + 1), name, quantity: 1, unit: 'sum' as const, netPence, rateKey }
    return { ...line, taxPence: taxOfLines(lines) }
  })
}

function asItStands({ lineId, name, quantity, unit, netPence, rateKey, taxPence }: QuoteLine): TradeLine {
  return { lineId, name, quantity, unit, netPence, rateKey, taxPence }
}

/** The work at each rate in one sum, and each discount as its own: what a paper shows that gives the total alone. */
function wholes({ lines, totals }: Quote) {
  const work = totals.taxes.map(({ rateKey, rateName }) => ({
    name: totals.taxes.length === 1 ? 'The work' : `The work: ${rateName}`,
    rateKey,
    lines: lines.filter((line) => line.rateKey === rateKey && line.netPence >= 0),
  }))
  const off = lines
    .filter(({ netPence }) => netPence < 0)
    .map((line) => ({ name: line.name, rateKey: line.rateKey, lines: [line] }))
  return [...work, ...off].filter((share) => share.lines.length > 0)
}

/** The tax of some lines that each have their own; none where one of them has none. */
function taxOfLines(lines: readonly QuoteLine[]): number | undefined {
  const own = lines.flatMap(({ taxPence }) => taxPence ?? [])
  return own.length === lines.length ? own.reduce((sum, pence) => sum + pence, 0) : undefined
}
