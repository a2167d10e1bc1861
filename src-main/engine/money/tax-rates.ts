import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import { taxCategory } from '../../domain/pricing.ts'
import type { TaxCategory, TaxRounding } from '../../domain/pricing.ts'
import type { TaxRate } from './tax-totals.ts'

type Bears = { readonly rateName: string; readonly setting: string | null; readonly customerPays?: true }

const bears: Readonly<Record<TaxCategory, Bears>> = {
  standard: { rateName: 'VAT, standard rate', setting: 'tax.standardBasisPoints' },
  reduced: { rateName: 'VAT, reduced rate', setting: 'tax.reducedBasisPoints' },
  zero: { rateName: 'VAT, zero rate', setting: 'tax.zeroBasisPoints' },
  energySaving: { rateName: 'VAT, energy-saving materials', setting: 'tax.energySavingBasisPoints' },
  exempt: { rateName: 'Exempt from VAT', setting: null },
  reverseCharge: {
    rateName: 'VAT, reverse charge',
    setting: 'tax.standardBasisPoints',
    customerPays: true,
  },
  reverseChargeReduced: {
    rateName: 'VAT, reverse charge at the reduced rate',
    setting: 'tax.reducedBasisPoints',
    customerPays: true,
  },
}

/**
 * The rate that a category of tax bears on the day of the figures. Reverse charge bears 0 here and its own rate there.
 * @param category what the line was said to bear
 * @param figures the firm's figures, as they stand on the day of the quote
 * @source HMRC Notice 708/6 (5 %, 0 %, energy-saving materials); EN 16931-1 BR-AE-05 (reverse charge at rate 0)
 * @example taxRate('reverseCharge', { settings: { 'tax.standardBasisPoints': { value: 2000 } } }).customerBasisPoints // => 2000
 */
export function taxRate(category: TaxCategory, figures: Figures): TaxRate {
  const { rateName, setting, customerPays } = bears[category]
  const basisPoints = setting === null ? 0 : figure(figures, setting)
  const named = { rateKey: category, rateName }
  return customerPays
    ? { ...named, basisPoints: 0, customerBasisPoints: basisPoints }
    : { ...named, basisPoints }
}

/**
 * The rates of the categories that are in use, each once, in a fixed order.
 * @param used the categories that lines bear
 * @param figures the firm's figures, as they stand on the day of the quote
 * @source as for taxRate
 * @example taxRatesOf(['exempt', 'reduced', 'exempt'], { settings: { 'tax.reducedBasisPoints': { value: 500 } } }).map((rate) => rate.basisPoints) // => [500, 0]
 */
export function taxRatesOf(used: readonly TaxCategory[], figures: Figures): readonly TaxRate[] {
  return taxCategory.options.filter((one) => used.includes(one)).map((one) => taxRate(one, figures))
}

/**
 * The setting that holds the rate of a category; null where it bears none by its nature.
 * @param category what the line was said to bear
 * @source the settings of this program
 * @example taxSettingOf('exempt') // => null
 */
export function taxSettingOf(category: TaxCategory): string | null {
  return bears[category].setting
}

/**
 * Why a category bears the rate that it bears.
 * @param category what the line was said to bear
 * @param figures the firm's figures, as they stand on the day of the quote
 * @source as for taxRate
 * @example taxRateWhy('exempt', { settings: {} }).value // => 0
 */
export function taxRateWhy(category: TaxCategory, figures: Figures): Derivation {
  const { rateName, setting } = bears[category]
  return setting === null
    ? given(rateName, 0, 'BasisPoints', 'the category chosen for the line')
    : figureWhy(figures, setting)
}

/**
 * The category that a line bears when the job is taxed by reverse charge: what bears the standard or the reduced rate is
 * turned; what bears no tax stays as it is.
 * @param category what the line bears by the usual treatment
 * @param figures the firm's figures, as they stand on the day of the quote
 * @source HMRC VATREVCON33400: reverse charge applies to supplies at the standard or the reduced rate
 * @example reverseCharged('standard', { settings: { 'tax.standardBasisPoints': { value: 2000 } } }) // => 'reverseCharge'
 */
export function reverseCharged(category: TaxCategory, figures: Figures): TaxCategory {
  if (taxRate(category, figures).basisPoints === 0) return category
  return category === 'standard' ? 'reverseCharge' : 'reverseChargeReduced'
}

/**
 * Why the tax of one rate is what it is.
 * @param tax a rate with its net and its tax
 * @param figures the firm's figures, as they stand on the day of the quote
 * @param how where and by which rule it was rounded, in words
 * @source EN 16931-1 BR-CO-17
 * @example taxWhy({ rateKey: 'exempt', rateName: 'Exempt', netPence: 500, taxPence: 0 }, { settings: {} }, 'rounded').from[0].value // => 500
 */
export function taxWhy(
  tax: {
    readonly rateKey: string
    readonly rateName: string
    readonly netPence: number
    readonly taxPence: number
    readonly toAccountFor?: { readonly pence: number } | undefined
  },
  figures: Figures,
  how: string,
): Derivation {
  const from = [
    given('Net at this rate', tax.netPence, 'pence'),
    taxRateWhy(taxCategory.parse(tax.rateKey), figures),
  ]
  if (tax.toAccountFor === undefined) {
    return because(`${tax.rateName}: its lines x the rate, ${how}.`, tax.taxPence, { unit: 'pence', from })
  }
  const customers = because(
    `What the customer pays to HMRC: its lines x the rate, ${how}.`,
    tax.toAccountFor.pence,
    {
      unit: 'pence',
      from,
    },
  )
  return because(`${tax.rateName}: none is charged; the customer accounts for it.`, tax.taxPence, {
    unit: 'pence',
    from: [customers],
    source: 'HMRC VATREVCON37100',
  })
}

/**
 * Where and how tax was rounded, in words.
 * @param rounding by line, by line to a tenth of a penny, or once for each rate
 * @param rule what was done with the part of a penny
 * @source HMRC Notice 700 17.5 names the ways
 * @example roundedHow('document', 'half-up') // => 'rounded half up once'
 */
export function roundedHow(rounding: TaxRounding, rule: string): string {
  const words = rule.replace('-', ' ')
  if (rounding === 'lineTenths') return `each line rounded down to a tenth of a penny and their sum ${words}`
  return rounding === 'line' ? `each line rounded ${words}` : `rounded ${words} once`
}
