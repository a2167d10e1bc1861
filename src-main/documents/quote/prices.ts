import { capital, printedName } from '../in-words.ts'
import type { Quote, QuoteLine } from '../../domain/quote.ts'
import { howRounded, rateBeside, reverseChargeNotes, taxNote } from './tax-notes.ts'

export type PricedLine = {
  readonly name: string
  readonly quantity: number
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
  readonly sections: readonly PriceSection[]
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
  readonly options: readonly {
    readonly name: string
    readonly netPence: number
    readonly grossPence: number
  }[]
  readonly genericNote: string | null
}

const titles: readonly (readonly [QuoteLine['section'], string])[] = [
  ['emitter', 'Radiators and towel rails'],
  ['parts', 'Fittings and materials'],
  ['labour', 'Labour'],
  ['travel', 'Travel'],
  ['other', 'Other'],
]

/** Groups the lines, and makes sure that a reader who adds them up comes to the totals. */
export function pricesOf(quote: Quote, taxBasisPoints: Readonly<Record<string, number>>): Prices {
  const { lines, totals } = quote
  const generic = genericLines(lines)
  const sections = titles.flatMap(([section, title]) => {
    const own = lines.filter((line) => line.section === section)
    if (own.length === 0) return []
    const shown = own.map((line) => priced(line, quote, generic === 'some'))
    return [{ title, lines: shown, netPence: sumOf(own), taxPence: taxOfLines(shown) }]
  })
  mustAddUp('sections', sumOf(sections), totals.netPence)
  mustAddUp('rates of tax', sumOf(totals.taxes), totals.netPence)
  const byLine = howRounded(totals).rounding === 'line'
  const taxPence = totals.taxes.reduce((sum, tax) => sum + tax.taxPence, 0)
  mustAddUp('net and tax', totals.netPence + taxPence, totals.grossPence)
  if (byLine) mustAddUp('taxes of the lines', sumOfTax(sections), taxPence)
  return {
    sections,
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
    taxNote: taxNote(totals),
    depositPence: totals.depositPence,
    balancePence: totals.grossPence - totals.depositPence,
    options: optionsOf(quote, taxBasisPoints),
    genericNote: noteFor(generic),
  }
}

function priced(line: QuoteLine, quote: Quote, mark: boolean): PricedLine {
  const { quantity, unit, netPence, rateKey, generic } = line
  const rate = rateBeside(rateKey, quote.totals)
  const taxPence = line.taxPence ?? null
  return { name: nameUnderTitle(line), quantity, unit, netPence, rate, taxPence, marked: mark && generic }
}

/** The tax of some lines that each show their own; null where they show none. */
function taxOfLines(lines: readonly Pick<PricedLine, 'taxPence'>[]): number | null {
  return lines.some(({ taxPence }) => taxPence === null) ? null : sumOfTax(lines)
}

function sumOfTax(things: readonly { readonly taxPence: number | null }[]): number {
  return things.reduce((sum, { taxPence }) => sum + (taxPence ?? 0), 0)
}

/** Under the title Labour the word need not stand before every line. */
function nameUnderTitle({ section, name }: QuoteLine): string {
  return printedName(section === 'labour' ? capital(name.replace(/^Labour (in|for) /, '')) : name)
}

function sumOf(things: readonly { readonly netPence: number }[]): number {
  return things.reduce((sum, thing) => sum + thing.netPence, 0)
}

function mustAddUp(what: string, sum: number, total: number): void {
  if (sum !== total) throw new Error(`The ${what} come to ${sum} pence where the quote says ${total}`)
}

/** Options still open, with tax by their own rate rounded half up. */
function optionsOf(
  { options, totals }: Quote,
  taxBasisPoints: Readonly<Record<string, number>>,
): Prices['options'] {
  return options
    .filter((option) => !option.chosen)
    .map(({ name, netPence, rateKey, taxPence }) => {
      if (taxPence !== undefined) {
        return { name: name + optionBears(rateKey), netPence, grossPence: netPence + taxPence }
      }
      const inTotals = totals.taxes.find((tax) => tax.rateKey === rateKey)
      const basisPoints = inTotals?.basisPoints ?? taxBasisPoints[rateKey]
      if (basisPoints === undefined) throw new Error(`There is no rate of tax called ${rateKey}`)
      return { name, netPence, grossPence: netPence + Math.floor((netPence * basisPoints + 5000) / 10_000) }
    })
}

/** Why an option shows no tax. */
function optionBears(rateKey: string): string {
  if (rateKey.startsWith('reverseCharge')) return ' (reverse charge)'
  return rateKey === 'exempt' ? ' (exempt from VAT)' : ''
}

type HowGeneric = 'all' | 'some' | 'none'

function genericLines(lines: readonly QuoteLine[]): HowGeneric {
  const goods = lines.filter((line) => line.section === 'emitter' || line.section === 'parts')
  const generic = goods.filter((line) => line.generic).length
  if (generic === 0) return 'none'
  return generic === goods.length ? 'all' : 'some'
}

function noteFor(generic: HowGeneric): string | null {
  if (generic === 'none') return null
  const which =
    generic === 'all' ? 'the radiators, towel rails, fittings and materials above' : 'the items marked *'
  return `Sizes and outputs of ${which} are generic catalogue figures, not one maker’s. The maker’s own figures are checked before anything is ordered.`
}
