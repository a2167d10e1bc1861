import { capital, printedName } from '../in-words.ts'
import type { Quote, QuoteLine } from '../../domain/quote.ts'

export type PricedLine = {
  readonly name: string
  readonly quantity: number
  readonly unit: QuoteLine['unit']
  readonly netPence: number
  /** Marked on paper, where not every line is generic. */
  readonly marked: boolean
}

export type PriceSection = {
  readonly title: string
  readonly lines: readonly PricedLine[]
  readonly netPence: number
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
  }[]
  readonly grossPence: number
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
    return [{ title, lines: own.map((line) => priced(line, generic === 'some')), netPence: sumOf(own) }]
  })
  mustAddUp('sections', sumOf(sections), totals.netPence)
  mustAddUp('rates of tax', sumOf(totals.taxes), totals.netPence)
  const taxPence = totals.taxes.reduce((sum, tax) => sum + tax.taxPence, 0)
  mustAddUp('net and tax', totals.netPence + taxPence, totals.grossPence)
  return {
    sections,
    netPence: totals.netPence,
    taxes: totals.taxes.map(({ rateName, basisPoints, netPence, taxPence: tax }) => ({
      name: rateName,
      basisPoints,
      netPence,
      taxPence: tax,
    })),
    grossPence: totals.grossPence,
    depositPence: totals.depositPence,
    balancePence: totals.grossPence - totals.depositPence,
    options: optionsOf(quote, taxBasisPoints),
    genericNote: noteFor(generic),
  }
}

function priced(line: QuoteLine, mark: boolean): PricedLine {
  const { quantity, unit, netPence, generic } = line
  return { name: nameUnderTitle(line), quantity, unit, netPence, marked: mark && generic }
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
    .map(({ name, netPence, rateKey }) => {
      const inTotals = totals.taxes.find((tax) => tax.rateKey === rateKey)
      const basisPoints = inTotals?.basisPoints ?? taxBasisPoints[rateKey]
      if (basisPoints === undefined) throw new Error(`There is no rate of tax called ${rateKey}`)
      return { name, netPence, grossPence: netPence + Math.floor((netPence * basisPoints + 5000) / 10_000) }
    })
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
