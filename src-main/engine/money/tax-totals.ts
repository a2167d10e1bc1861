import { mulDiv } from './mul-div.ts'
import type { RoundingRule } from './mul-div.ts'

export type TaxableLine = { readonly netPence: number; readonly rateKey: string }
export type TaxRate = {
  readonly rateKey: string
  readonly rateName: string
  readonly basisPoints: number
  /** Under reverse charge: the rate at which the customer accounts for the tax; `basisPoints` is then 0. */
  readonly customerBasisPoints?: number
}
export type TaxInput = {
  readonly lines: readonly TaxableLine[]
  readonly rates: readonly TaxRate[]
  /** `line`: each line's tax is rounded, then added. `document`: each rate's lines are added, then taxed once. */
  readonly rounding: 'line' | 'document'
  readonly rule: RoundingRule
}
export type TaxOfRate = Omit<TaxRate, 'customerBasisPoints'> & {
  readonly netPence: number
  readonly taxPence: number
  /** Under reverse charge: what the customer pays to the tax office. It is in no total. */
  readonly toAccountFor?: { readonly basisPoints: number; readonly pence: number }
}
export type TaxTotals = {
  readonly netPence: number
  /** One for each rate that a line has, in the order of `rates`. */
  readonly taxes: readonly TaxOfRate[]
  readonly grossPence: number
}

/**
 * Net, tax by rate, and gross of some lines: tax = net basisPoints / 10000, rounded by line or once for each rate.
 * Throws when a line names a rate that is not there, or a rate is there twice.
 *
 * @param input lines in whole pence of any sign, rates in basis points (0 or more), where and how to round
 * @source EN 16931-1 BR-CO-14, BR-CO-15, BR-CO-17 (by document); HMRC Notice 700 17.5 (by line or by document)
 * @example taxTotals({ lines: [{ netPence: 14700, rateKey: 's' }], rates: [{ rateKey: 's', rateName: 'Standard', basisPoints: 2100 }], rounding: 'document', rule: 'half-up' }).grossPence // => 17787
 */
export function taxTotals(input: TaxInput): TaxTotals {
  checkRates(input)
  const used = input.rates.filter(({ rateKey }) => input.lines.some((line) => line.rateKey === rateKey))
  const taxes = used.map((rate) => taxOfRate(rate, input))
  const netPence = sumOf(input.lines.map((line) => line.netPence))
  return { netPence, taxes, grossPence: netPence + sumOf(taxes.map((tax) => tax.taxPence)) }
}

function taxOfRate(rate: TaxRate, { lines, rounding, rule }: TaxInput): TaxOfRate {
  const nets = lines.filter((line) => line.rateKey === rate.rateKey).map((line) => line.netPence)
  const netPence = sumOf(nets)
  const taxAt = (points: number) =>
    rounding === 'line' ? sumOf(nets.map((net) => taxOn(net, points, rule))) : taxOn(netPence, points, rule)
  const { rateKey, rateName, basisPoints, customerBasisPoints: customers } = rate
  const taxed = { rateKey, rateName, basisPoints, netPence, taxPence: taxAt(basisPoints) }
  if (customers === undefined) return taxed
  return { ...taxed, toAccountFor: { basisPoints: customers, pence: taxAt(customers) } }
}

/**
 * Tax on one sum: net basisPoints / 10000, rounded by the rule.
 *
 * @param netPence whole pence, any sign
 * @param basisPoints the rate in hundredths of a percent
 * @param rule what to do with the part of a penny
 * @source EN 16931-1 BR-CO-17
 * @example taxOn(1212, 2500, 'half-up') // => 303
 */
export function taxOn(netPence: number, basisPoints: number, rule: RoundingRule): number {
  return mulDiv(netPence, basisPoints, 10_000, rule)
}

function sumOf(pence: readonly number[]): number {
  return pence.reduce((sum, one) => sum + one, 0)
}

function checkRates({ lines, rates }: TaxInput): void {
  const keys = new Set(rates.map((rate) => rate.rateKey))
  if (keys.size !== rates.length) throw new Error('A tax rate is there twice')
  const lost = lines.find((line) => !keys.has(line.rateKey))
  if (lost !== undefined) throw new Error(`There is no tax rate called ${lost.rateKey}`)
}
