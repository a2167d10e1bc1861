import { mulDiv } from './mul-div.ts'
import type { RoundingRule } from './mul-div.ts'

export type TaxableLine = { readonly netPence: number; readonly rateKey: string }
export type TaxRate = { readonly rateKey: string; readonly rateName: string; readonly basisPoints: number }
export type TaxInput = {
  readonly lines: readonly TaxableLine[]
  readonly rates: readonly TaxRate[]
  /** `line`: each line's tax is rounded, then added. `document`: each rate's lines are added, then taxed once. */
  readonly rounding: 'line' | 'document'
  readonly rule: RoundingRule
}
export type TaxOfRate = TaxRate & { readonly netPence: number; readonly taxPence: number }
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
  const tax = (net: number) => mulDiv(net, rate.basisPoints, 10_000, rule)
  const taxPence = rounding === 'line' ? sumOf(nets.map(tax)) : tax(netPence)
  const { rateKey, rateName, basisPoints } = rate
  return { rateKey, rateName, basisPoints, netPence, taxPence }
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
