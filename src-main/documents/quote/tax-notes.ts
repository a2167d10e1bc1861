import { money, percent, tight } from '../in-words.ts'
import type { PriceDetail } from '../../domain/firm.ts'
import { reverseChargeWording } from '../../domain/pricing.ts'
import type { Totals } from '../../domain/quote.ts'

type HowRounded = Required<Pick<Totals, 'rounding' | 'rule'>>

/** Quotes that say nothing are rounded once for each rate, halves up. */
export function howRounded({ rounding = 'document', rule = 'half-up' }: Totals): HowRounded {
  return { rounding, rule }
}

const toThePenny: Readonly<Record<HowRounded['rule'], string>> = {
  'half-up': 'to the nearest penny, half a penny up',
  'half-down': 'to the nearest penny, half a penny down',
  'half-even': 'to the nearest penny, half a penny to the even one',
  up: 'up to a whole penny',
  down: 'down to a whole penny',
}

/** How the tax was rounded, so that a reader with a calculator comes to the same penny. */
function roundingNote(totals: Totals): string {
  const { rounding, rule } = howRounded(totals)
  if (rounding === 'lineTenths') {
    return `VAT is worked out on each line and rounded down to a tenth of a penny; the VAT of the lines at each rate is then added up and rounded ${toThePenny[rule]}.`
  }
  return rounding === 'line'
    ? `VAT is worked out on each line and rounded ${toThePenny[rule]}; the VAT of the lines is then added up.`
    : `VAT is worked out once on the sum at each rate and rounded ${toThePenny[rule]}.`
}

/** What a reverse charge must say: that it is one, on what, at which rate, and how much the customer pays to HMRC. */
export function reverseChargeNotes({ taxes }: Totals): readonly string[] {
  const reversed = taxes.flatMap(({ netPence, toAccountFor }) =>
    toAccountFor === undefined ? [] : [{ netPence, ...toAccountFor }],
  )
  if (reversed.length === 0) return []
  const amounts = reversed.map(
    ({ netPence, basisPoints, pence }) =>
      `VAT to account for on ${money(netPence)} at ${percent(basisPoints)}: ${money(pence)}. It is not in the total.`,
  )
  return [`${reverseChargeWording}.`, ...amounts]
}

type Tax = Totals['taxes'][number]

/** What a rate of tax is called beside a line. */
function inBrackets({ rateKey, basisPoints, toAccountFor }: Tax): string {
  if (toAccountFor !== undefined) return `reverse charge at ${percent(toAccountFor.basisPoints)}`
  return rateKey === 'exempt' ? 'exempt from VAT' : `VAT at ${percent(basisPoints)}`
}

/** The rate that needs no words beside a line: the first, which is the standard rate where a line bears that. */
function usual({ taxes }: Totals): Tax | undefined {
  return taxes[0]
}

/** What stands beside a line about its tax; nothing where it bears the usual rate of this quote. */
export function rateBeside(rateKey: string, totals: Totals): string | null {
  if (rateKey === usual(totals)?.rateKey) return null
  const tax = totals.taxes.find((one) => one.rateKey === rateKey)
  if (tax === undefined) throw new Error(`No total is kept for the rate of tax ${rateKey}`)
  return inBrackets(tax).replaceAll(' ', tight)
}

/** How the tax was worked out, and what lines bear that say nothing of it, where any are shown. */
export function taxNote(totals: Totals, detail: PriceDetail = 'lines'): string {
  const first = usual(totals)
  if (first === undefined || totals.taxes.length === 1 || detail === 'total') return roundingNote(totals)
  return `${roundingNote(totals)} Lines that say nothing else: ${inBrackets(first)}.`
}
