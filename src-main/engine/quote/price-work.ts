import { because } from '../../domain/derivation.ts'
import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Job } from '../../domain/job.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'
import { taxCategory } from '../../domain/pricing.ts'
import type { Gap, Quote, QuoteLine, Totals } from '../../domain/quote.ts'
import { accountedForPence, unlawfulRounding } from '../money/money-totals.ts'
import type { RoundingRule } from '../money/mul-div.ts'
import { sharePence } from '../money/price.ts'
import { roundedHow, taxRate, taxRatesOf, taxWhy } from '../money/tax-rates.ts'
import { taxOn, taxTotals } from '../money/tax-totals.ts'
import { discountLines } from './discount-lines.ts'
import { categoryOf, categoryProblems } from './line-categories.ts'
import { overridePriceProblems, overridePrices } from './override-prices.ts'
import type { OwnPrices } from './override-prices.ts'
import { chosenOptionLines, contingencyLines, travelLines } from './price-lines.ts'
import { sellingProblems } from './selling-price.ts'

/** The work of a job as lines, each at the price that was worked out for it. */
export type WorkToPrice = {
  readonly job: Job
  /** Parts and labour, before anybody set a price by hand; asked for once the way of pricing is found to be lawful. */
  readonly base: () => readonly QuoteLine[]
  readonly own: OwnPrices
  readonly figures: Figures
}
export type PricedWork = Pick<Quote, 'lines' | 'options' | 'totals' | 'why'>

/**
 * Parts and labour as a price: prices set by hand, travel, the allowance, chosen options, discounts last; each line with its
 * category of tax, and what they come to. Deposit = gross x share.
 * Refuses unlawful rounding, two ways of pricing one kind, a category or a price of a line that is not there, and a discount of
 * more than there is.
 * @param work the job, its lines of parts and labour, prices by hand and the firm's figures
 * @source practice, no published source; tax by EN 16931 BR-CO-13 to BR-CO-17
 * @example pricedWork({ job: { site: {}, options: [{ optionId: 'a', name: 'A', netPence: 100, chosen: true }] }, base: () => [], own: new Map(), figures: { settings: { 'money.contingencyBasisPoints': { value: 0 }, 'money.depositBasisPoints': { value: 2500 }, 'tax.standardBasisPoints': { value: 2000 } } } }).value.totals.grossPence // => 120
 */
export function pricedWork({ job, base: worked, own, figures }: WorkToPrice): Outcome<PricedWork> {
  const { pricing } = job
  const wrong = pricingProblems(pricing)
  if (wrong.length > 0) return { ok: false, problems: wrong }
  const base = overridePrices(worked(), own)
  const beside = [...travelLines(job, figures), ...contingencyLines(base, figures), ...chosenOptionLines(job)]
  const plain = [...base, ...overridePrices(beside, own)]
  const lineIds = plain.map((line) => line.lineId)
  const problems = [
    ...categoryProblems(job, lineIds),
    ...overridePriceProblems(job.overrides ?? [], own, lineIds),
  ]
  if (problems.length > 0) return { ok: false, problems }
  const before = plain.map((line) => {
    const { lineId, section, part } = line
    const itemKind = part?.itemKind
    const rateKey = categoryOf({ lineId, section, itemKind, lineKey: part?.lineKey }, job, figures)
    return rateKey === line.rateKey ? line : { ...line, rateKey }
  })
  const off = discountLines(before, pricing?.discounts ?? [], job.swaps)
  if (!off.ok) return off
  const lines = withOwnTax([...before, ...off.value], pricing, figures)
  const totals = totalsOf(lines, pricing, figures)
  return accept({ lines, options: optionsOf(job, figures), totals, why: whyTotal(lines, totals, figures) })
}

/**
 * A gap as the job lets it stand, with the written reason; as it is where nobody did.
 * @param gap what is missing
 * @param waivers the gaps that the job lets stand
 * @source practice, no published source
 * @example waivedGap({ gapKey: 'vent', says: 'No vent.' }, [{ gapKey: 'vent', reason: 'Kept' }]).waived // => 'Kept'
 */
export function waivedGap(gap: Gap, waivers: Job['waivers']): Gap {
  const { waived: _waived, ...open } = gap
  const waiver = waivers?.find((one) => one.gapKey === gap.gapKey)
  return waiver === undefined ? open : { ...open, waived: waiver.reason }
}

function pricingProblems(pricing: Job['pricing']): readonly Problem[] {
  if (pricing === undefined) return []
  const message = unlawfulRounding(pricing.rounding, pricing.rule ?? usualRule)
  const rounding: readonly Problem[] =
    message === null ? [] : [{ code: 'invalid', message, path: 'job.pricing.rule' }]
  return [...rounding, ...sellingProblems(pricing)]
}

/** Where tax is rounded by line, each line shows its own. */
function withOwnTax(
  lines: readonly QuoteLine[],
  pricing: Job['pricing'],
  figures: Figures,
): readonly QuoteLine[] {
  if (pricing?.rounding !== 'line') return lines
  const rule = pricing.rule ?? usualRule
  return lines.map((line) => {
    const { basisPoints } = taxRate(taxCategory.parse(line.rateKey), figures)
    return { ...line, taxPence: taxOn(line.netPence, basisPoints, rule) }
  })
}

const usualRule: RoundingRule = 'half-up'

function optionsOf(job: Job, figures: Figures): Quote['options'] {
  return (job.options ?? []).map(({ optionId, name, netPence, chosen }) => {
    const category = categoryOf({ lineId: `option-${optionId}`, section: 'other' }, job, figures)
    const { basisPoints } = taxRate(category, figures)
    const taxPence = taxOn(netPence, basisPoints, job.pricing?.rule ?? usualRule)
    return { optionId, name, netPence, rateKey: category, taxPence, chosen }
  })
}

function totalsOf(lines: readonly QuoteLine[], pricing: Job['pricing'], figures: Figures): Totals {
  const rounding = pricing?.rounding ?? 'document'
  const rule = pricing?.rule ?? usualRule
  const used = lines.map((line) => taxCategory.parse(line.rateKey))
  const taxed = taxTotals({ lines, rates: taxRatesOf(used, figures), rounding, rule })
  const depositPence = sharePence(taxed.grossPence, figure(figures, 'money.depositBasisPoints'))
  const reversed = taxed.taxes.some((tax) => tax.toAccountFor !== undefined)
  return {
    ...taxed,
    depositPence,
    ...(pricing === undefined ? {} : { rounding, rule }),
    ...(reversed ? { reverseChargePence: accountedForPence(taxed) } : {}),
  }
}

function whyTotal(lines: readonly QuoteLine[], totals: Totals, figures: Figures) {
  const net = because('The lines added up.', totals.netPence, {
    unit: 'pence',
    from: lines.map((line) => line.why),
  })
  const how = roundedHow(totals.rounding ?? 'document', totals.rule ?? usualRule)
  const taxes = totals.taxes.map((tax) => taxWhy(tax, figures, how))
  return because('Net and tax.', totals.grossPence, { unit: 'pence', from: [net, ...taxes] })
}
