import { mulDiv } from './mul-div.ts'
import type { RoundingRule } from './mul-div.ts'
import type { TaxRounding } from '../../domain/pricing.ts'

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
  /** `line`, `document` or `lineTenths`, as the domain says. */
  readonly rounding: TaxRounding
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
  const taxAt = (points: number) => taxOfLines(nets, points, { rounding, rule })
  const { rateKey, rateName, basisPoints, customerBasisPoints: customers } = rate
  const taxed = { rateKey, rateName, basisPoints, netPence, taxPence: taxAt(basisPoints) }
  if (customers === undefined) return taxed
  return { ...taxed, toAccountFor: { basisPoints: customers, pence: taxAt(customers) } }
}

/**
 * Tax on the lines of one rate: by line sum(round(net_i rate)); by document round(rate sum(net_i)); by tenths
 * round(sum(net_i rate down to 0.1 p)).
 *
 * @param nets whole pence, any sign
 * @param basisPoints the rate in hundredths of a percent
 * @param how where to round, and by which rule to whole pence
 * @source HMRC Notice 700 17.5 and VATREC12010 (the total down to a penny; lines down to 0.1 p, or to the nearest penny)
 * @example taxOfLines([104, 104, 104], 1750, { rounding: 'lineTenths', rule: 'down' }) // => 54
 */
export function taxOfLines(
  nets: readonly number[],
  basisPoints: number,
  { rounding, rule }: Pick<TaxInput, 'rounding' | 'rule'>,
): number {
  if (rounding === 'line') return sumOf(nets.map((net) => taxOn(net, basisPoints, rule)))
  if (rounding === 'document') return taxOn(sumOf(nets), basisPoints, rule)
  return mulDiv(sumOf(nets.map((net) => taxTenthsOn(net, basisPoints))), 1, 10, rule)
}

/**
 * Tax on one line in tenths of a penny, rounded down (towards nothing): net basisPoints / 1000.
 *
 * @param netPence whole pence, any sign
 * @param basisPoints the rate in hundredths of a percent
 * @source HMRC Notice 700 17.5, as VATREC12010 has it: rounding down to one tenth of a penny
 * @example taxTenthsOn(104, 1750) // => 182
 */
export function taxTenthsOn(netPence: number, basisPoints: number): number {
  return mulDiv(netPence, basisPoints, 1_000, 'down')
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
