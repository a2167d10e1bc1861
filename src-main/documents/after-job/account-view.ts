import type { FinalAccount, Variation } from '../../domain/follow-up/after-job.ts'
import type { TaxTotal } from '../../domain/quote.ts'
import { dayInWords } from '../days.ts'
import { capital, money, percent, tight } from '../in-words.ts'
import { reverseChargeNotes, taxNote } from '../quote/tax-notes.ts'
import { paperHead } from './material.ts'
import type { AfterMaterial, PaperHead } from './material.ts'

/** One thing that is charged, before tax. */
export type AccountLine = {
  readonly name: string
  /** When and how a variation was agreed; nothing under the quote itself. */
  readonly under: readonly string[]
  readonly rate: string
  readonly netPence: number
}

/** The account as its customer reads it. What the firm paid, earned, used or worked is not in it. */
export type AccountView = PaperHead & {
  /** False while the job is open and the account may still change. */
  readonly closed: boolean
  readonly quoted: readonly AccountLine[]
  readonly variations: readonly AccountLine[]
  readonly variationsNetPence: number
  readonly netPence: number
  readonly taxes: readonly { readonly name: string; readonly taxPence: number }[]
  readonly grossPence: number
  readonly paidPence: number
  readonly toPayPence: number
  readonly reversed: boolean
  readonly notes: readonly string[]
  readonly reverseChargeNotes: readonly string[]
}

/** Takes out of the account what the customer may see, and makes sure that a reader who adds it up comes to the same penny. */
export function accountView(
  from: AfterMaterial,
  account: Omit<FinalAccount, 'internal' | 'why'>,
): AccountView {
  const { taxes, netPence, grossPence, paidPence, toPayPence, variationsNetPence } = account
  const rates = new Map(taxes.map((tax) => [tax.rateKey, tax]))
  const quoted = quotedByRate(from, rates)
  const variations = from.after.variations.map((one) => variationLine(one, rates))
  mustAddUp('lines', sumOf([...quoted, ...variations]), netPence)
  mustAddUp(
    'net and tax',
    taxes.reduce((sum, tax) => sum + tax.taxPence, netPence),
    grossPence,
  )
  mustAddUp('total less what is paid', grossPence - paidPence, toPayPence)
  const { rounding, rule } = from.quote.totals
  const totals = {
    netPence,
    taxes,
    grossPence,
    depositPence: 0,
    ...(rounding === undefined ? {} : { rounding }),
    ...(rule === undefined ? {} : { rule }),
  }
  const reverse = reverseChargeNotes(totals)
  return {
    ...paperHead(from),
    closed: from.closed,
    quoted,
    variations,
    variationsNetPence,
    netPence,
    taxes: taxes.map((tax) => taxLine(tax, rounding === 'line')),
    grossPence,
    paidPence,
    toPayPence,
    reversed: reverse.length > 0,
    notes: [taxNote(totals, 'total'), 'This is a statement of account, not a VAT invoice.'],
    reverseChargeNotes: reverse,
  }
}

type Rates = ReadonlyMap<string, TaxTotal>

/** The quote as one line for each rate of tax, so that each rate can be added up by itself. */
function quotedByRate({ quote, number, revision }: AfterMaterial, rates: Rates): readonly AccountLine[] {
  const name = `The work of quote ${revision === 0 ? number : `${number}, revision ${revision}`}`
  return [...Map.groupBy(quote.lines, ({ rateKey }) => rateKey)].map(([rateKey, lines]) => ({
    name,
    under: [],
    rate: rateInWords(rates.get(rateKey)),
    netPence: sumOf(lines),
  }))
}

const agreedHow = { inWriting: 'in writing', spoken: 'by word of mouth' } as const

function variationLine(
  { what, onDay, agreed, said, netPence, rateKey }: Variation,
  rates: Rates,
): AccountLine {
  const words = said.trim() === '' ? '' : `: “${said.trim()}”`
  return {
    name: capital(what),
    under: [`Agreed ${agreedHow[agreed]} on ${dayInWords(onDay)}${words}`],
    rate: rateInWords(rates.get(rateKey)),
    netPence,
  }
}

function rateInWords(tax: TaxTotal | undefined): string {
  if (tax === undefined) throw new Error('A line bears a rate of tax that the account does not total')
  const { rateKey, basisPoints, toAccountFor } = tax
  if (toAccountFor !== undefined) return `reverse${tight}charge, ${percent(toAccountFor.basisPoints)}`
  return rateKey === 'exempt' ? 'exempt' : percent(basisPoints)
}

function taxLine({ rateName, basisPoints, netPence, taxPence }: TaxTotal, byLine: boolean) {
  const how = byLine && basisPoints > 0 ? ', by line' : ''
  return { name: `${rateName}: ${percent(basisPoints)} of ${money(netPence)}${how}`, taxPence }
}

function sumOf(lines: readonly { readonly netPence: number }[]): number {
  return lines.reduce((sum, line) => sum + line.netPence, 0)
}

function mustAddUp(what: string, sum: number, total: number): void {
  if (sum !== total) throw new Error(`The ${what} come to ${sum} pence where the account says ${total}`)
}
