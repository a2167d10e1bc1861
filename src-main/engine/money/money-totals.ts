import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Figures } from '../../domain/figures.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { reverseChargeWording } from '../../domain/pricing.ts'
import type { TaxCategory, TaxRounding } from '../../domain/pricing.ts'
import type { RoundingRule } from './mul-div.ts'
import { roundedHow, taxRatesOf, taxWhy } from './tax-rates.ts'
import { taxTotals } from './tax-totals.ts'
import type { TaxTotals } from './tax-totals.ts'

export type MoneyInput = {
  readonly lines: readonly { readonly netPence: number; readonly category: TaxCategory }[]
  readonly rounding: TaxRounding
  readonly rule: RoundingRule
}

export type MoneyTotals = TaxTotals & {
  /** All tax that the customer accounts for; it is not in the gross. */
  readonly reverseChargePence: number
  /** Words that the document must hold. */
  readonly wording: readonly string[]
  readonly why: Derivation
}

/**
 * Net, tax by category, gross, and what the customer accounts for by reverse charge.
 * Refuses tax that is rounded down line by line.
 *
 * @param input lines in whole pence of any sign with their categories, and where and how to round
 * @param figures the rates of tax on the day
 * @source EN 16931-1 BR-CO-13 to BR-CO-17, BR-AE-05 to BR-AE-10; HMRC VATREVCON37100; HMRC Notice 700 17.5
 * @example moneyTotals({ lines: [{ netPence: 10000, category: 'reverseCharge' }], rounding: 'document', rule: 'half-up' }, { settings: { 'tax.standardBasisPoints': { value: 2000, says: 'Rate', unit: 'BasisPoints', source: 'HMRC' } } }).value.reverseChargePence // => 2000
 */
export function moneyTotals({ lines, rounding, rule }: MoneyInput, figures: Figures): Outcome<MoneyTotals> {
  const wrong = unlawfulRounding(rounding, rule)
  if (wrong !== null) return refuse('invalid', wrong, 'rule')
  const taxable = lines.map(({ netPence, category }) => ({ netPence, rateKey: category }))
  const rates = taxRatesOf(
    lines.map((line) => line.category),
    figures,
  )
  const totals = taxTotals({ lines: taxable, rates, rounding, rule })
  const reverseChargePence = accountedForPence(totals)
  const reversed = totals.taxes.some((tax) => tax.toAccountFor !== undefined)
  const net = because('The lines added up.', totals.netPence, {
    unit: 'pence',
    from: lines.map((line, index) => given(`Line ${index + 1}`, line.netPence, 'pence')),
  })
  const taxes = totals.taxes.map((tax) => taxWhy(tax, figures, roundedHow(rounding, rule)))
  return accept({
    ...totals,
    reverseChargePence,
    wording: reversed ? [reverseChargeWording] : [],
    why: because('Net and tax.', totals.grossPence, { unit: 'pence', from: [net, ...taxes] }),
  })
}

/**
 * All tax that the customer accounts for by reverse charge.
 * @param totals the totals with their taxes
 * @source HMRC VATREVCON37100
 * @example accountedForPence({ taxes: [{ toAccountFor: { pence: 5 } }, {}] }) // => 5
 */
export function accountedForPence({ taxes }: Pick<TaxTotals, 'taxes'>): number {
  return taxes.reduce((sum, { toAccountFor }) => sum + (toAccountFor?.pence ?? 0), 0)
}

/**
 * What is wrong with a way of rounding, in a sentence; null when nothing is.
 * @param rounding by line, by line to a tenth of a penny, or once for each rate
 * @param rule what is done with the part of a penny
 * @source HMRC Notice 700 17.5 and VATREC12010: lines are never rounded down to whole pence; the document may be
 * @example unlawfulRounding('document', 'down') // => null
 */
export function unlawfulRounding(rounding: TaxRounding, rule: RoundingRule): string | null {
  return rounding === 'line' && rule === 'down'
    ? 'Tax may not be rounded down line by line; round each line to the nearest penny (half-up), or round the document down once.'
    : null
}
