import { capital, nameInColumn } from '../in-words.ts'
import type { PriceDetail } from '../../domain/firm.ts'
import type { Job } from '../../domain/job.ts'
import type { Quote, QuoteLine } from '../../domain/quote.ts'
import { sharesByRoom } from './by-room.ts'
import { optionsOf } from './options.ts'
import type { OpenOption } from './options.ts'
import { howRounded, rateBeside, reverseChargeNotes, taxNote } from './tax-notes.ts'

export type PricedLine = {
  readonly name: string
  /** Null where a sum stands for many lines. */
  readonly quantity: number | null
  readonly unit: QuoteLine['unit']
  readonly netPence: number
  /** What it bears, where that is not the usual rate of this quote. */
  readonly rate: string | null
  /** Its own tax, where tax is rounded by line. */
  readonly taxPence: number | null
  /** Marked on paper, where not every line is generic. */
  readonly marked: boolean
}

export type PriceSection = {
  readonly title: string
  readonly lines: readonly PricedLine[]
  readonly netPence: number
  readonly taxPence: number | null
}

/** The money of a quote as the customer sees it. */
export type Prices = {
  readonly detail: PriceDetail
  /** By line: one for each kind of line. By room: one alone. Total only: none. */
  readonly sections: readonly PriceSection[]
  /** What a reader adds up to come to the total before tax, where no table stands right above it. */
  readonly parts: readonly { readonly name: string; readonly netPence: number }[]
  readonly netPence: number
  readonly taxes: readonly {
    readonly name: string
    readonly basisPoints: number
    readonly netPence: number
    readonly taxPence: number
    /** Rounded line by line, so that the sum is not quite the rate of the net. */
    readonly byLine: boolean
  }[]
  readonly grossPence: number
  /** What the customer pays to HMRC by reverse charge, outside the total; 0 when there is none. */
  readonly reverseChargePence: number
  readonly reverseChargeNotes: readonly string[]
  readonly taxNote: string
  readonly depositPence: number
  readonly balancePence: number
  readonly options: readonly OpenOption[]
  readonly genericNote: string | null
}

const titles: readonly (readonly [QuoteLine['section'], string])[] = [
  ['emitter', 'Radiators and towel rails'],
  ['parts', 'Fittings and materials'],
  ['labour', 'Labour'],
  ['travel', 'Travel'],
  ['other', 'Other'],
]

type Asked = {
  readonly quote: Quote
  readonly job: Pick<Job, 'rooms' | 'swaps'>
  readonly detail: PriceDetail
  readonly taxBasisPoints: Readonly<Record<string, number>>
}

/** Groups the lines as the firm shows them, and makes sure that a reader who adds them up comes to the totals. */
export function pricesOf({ quote, job, detail, taxBasisPoints }: Asked): Prices {
  const { totals } = quote
  const sections = { lines: bySection(quote), rooms: byRoom(quote, job), total: [] }[detail]
  const parts = { lines: sumsOf(sections), rooms: [], total: discountsApart(quote.lines) }[detail]
  const byLine = checked(quote, sections, parts)
  return {
    detail,
    sections,
    parts,
    netPence: totals.netPence,
    taxes: totals.taxes.map(({ rateName, basisPoints, netPence, taxPence: tax }) => ({
      name: rateName,
      basisPoints,
      netPence,
      taxPence: tax,
      byLine: byLine && basisPoints > 0,
    })),
    grossPence: totals.grossPence,
    reverseChargePence: totals.reverseChargePence ?? 0,
    reverseChargeNotes: reverseChargeNotes(totals),
    taxNote: taxNote(totals, detail),
    depositPence: totals.depositPence,
    balancePence: totals.grossPence - totals.depositPence,
    options: optionsOf(quote, taxBasisPoints),
    genericNote: noteFor(genericLines(quote.lines), detail),
  }
}

/** Throws where sums that are shown do not come to the totals; says whether tax is rounded by line. */
function checked({ totals }: Quote, sections: readonly PriceSection[], parts: Prices['parts']): boolean {
  const byLine = howRounded(totals).rounding === 'line'
  const taxPence = totals.taxes.reduce((sum, tax) => sum + tax.taxPence, 0)
  if (sections.length > 0) mustAddUp('sections', sumOf(sections), totals.netPence)
  if (parts.length > 0) mustAddUp('parts of the price', sumOf(parts), totals.netPence)
  mustAddUp('rates of tax', sumOf(totals.taxes), totals.netPence)
  mustAddUp('net and tax', totals.netPence + taxPence, totals.grossPence)
  if (byLine && sections.length > 0) mustAddUp('taxes of the lines', sumOfTax(sections), taxPence)
  return byLine
}

function bySection(quote: Quote): readonly PriceSection[] {
  const mark = genericLines(quote.lines) === 'some'
  return titles.flatMap(([section, title]) => {
    const own = quote.lines.filter((line) => line.section === section)
    if (own.length === 0) return []
    const shown = own.map((line) => priced(line, quote, mark))
    return [{ title, lines: shown, netPence: sumOf(own), taxPence: taxOfLines(shown) }]
  })
}

function byRoom(quote: Quote, job: Pick<Job, 'rooms' | 'swaps'>): readonly PriceSection[] {
  const shown = sharesByRoom(quote.lines, job).map(({ name, rateKey, lines }) => ({
    name: nameInColumn(name),
    quantity: null,
    unit: 'sum' as const,
    netPence: sumOf(lines),
    rate: rateBeside(rateKey, quote.totals),
    taxPence: taxOfLines(lines.map(({ taxPence }) => ({ taxPence: taxPence ?? null }))),
    marked: false,
  }))
  return [{ title: 'By room', lines: shown, netPence: sumOf(shown), taxPence: taxOfLines(shown) }]
}

function sumsOf(sections: readonly PriceSection[]): Prices['parts'] {
  return sections.map(({ title, netPence }) => ({ name: title, netPence }))
}

/** What is taken off is shown even where nothing else is. */
function discountsApart(lines: readonly QuoteLine[]): Prices['parts'] {
  const off = lines.filter((line) => line.netPence < 0)
  if (off.length === 0) return []
  const before = sumOf(lines.filter((line) => line.netPence >= 0))
  return [
    { name: 'The work, before discounts', netPence: before },
    ...off.map(({ name, netPence }) => ({ name, netPence })),
  ]
}

function priced(line: QuoteLine, quote: Quote, mark: boolean): PricedLine {
  const { quantity, unit, netPence, rateKey, generic } = line
  const rate = rateBeside(rateKey, quote.totals)
  const taxPence = line.taxPence ?? null
  return { name: nameUnderTitle(line), quantity, unit, netPence, rate, taxPence, marked: mark && generic }
}

/** The tax of some lines that each show their own; null where one of them shows none. */
function taxOfLines(lines: readonly Pick<PricedLine, 'taxPence'>[]): number | null {
  return lines.some(({ taxPence }) => taxPence === null) ? null : sumOfTax(lines)
}

function sumOfTax(things: readonly { readonly taxPence: number | null }[]): number {
  return things.reduce((sum, { taxPence }) => sum + (taxPence ?? 0), 0)
}

/** Under the title Labour the word need not stand before every line. */
function nameUnderTitle({ section, name }: QuoteLine): string {
  return nameInColumn(section === 'labour' ? capital(name.replace(/^Labour (in|for) /, '')) : name)
}

function sumOf(things: readonly { readonly netPence: number }[]): number {
  return things.reduce((sum, thing) => sum + thing.netPence, 0)
}

function mustAddUp(what: string, sum: number, total: number): void {
  if (sum !== total) throw new Error(`The ${what} come to ${sum} pence where the quote says ${total}`)
}

type HowGeneric = 'all' | 'some' | 'none'

function genericLines(lines: readonly QuoteLine[]): HowGeneric {
  const goods = lines.filter((line) => line.section === 'emitter' || line.section === 'parts')
  const generic = goods.filter((line) => line.generic).length
  if (generic === 0) return 'none'
  return generic === goods.length ? 'all' : 'some'
}

function noteFor(generic: HowGeneric, detail: PriceDetail): string | null {
  if (generic === 'none') return null
  const all = 'the radiators, towel rails, fittings and materials'
  const which = {
    all: detail === 'lines' ? `${all} above` : `${all} of this quote`,
    some: detail === 'lines' ? 'the items marked *' : `some of ${all} of this quote`,
  }[generic]
  return `Sizes and outputs of ${which} are generic catalogue figures, not one maker’s. The maker’s own figures are checked before anything is ordered.`
}
