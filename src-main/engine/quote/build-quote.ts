import { because, given } from '../../domain/derivation.ts'
import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Job } from '../../domain/job.ts'
import type { LabourAnswer } from '../../domain/labour.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'
import type { Gap, Purchase, Quote, QuoteLine, Totals } from '../../domain/quote.ts'
import { taxCategory } from '../../domain/pricing.ts'
import type { TakeOffLine } from '../../domain/take-off.ts'
import { jobWork, labourFor } from '../labour/job-labour.ts'
import { accountedForPence, unlawfulRounding } from '../money/money-totals.ts'
import type { RoundingRule } from '../money/mul-div.ts'
import { sharePence } from '../money/price.ts'
import { roundedHow, taxRate, taxRatesOf, taxWhy } from '../money/tax-rates.ts'
import { taxOn, taxTotals } from '../money/tax-totals.ts'
import type { JobFacts, PlacedSwap } from '../takeoff/job-facts.ts'
import type { PricedTakeOff } from '../takeoff/take-off.ts'
import { discountLines } from './discount-lines.ts'
import { labourLines, penceForMinutes } from './labour-lines.ts'
import { chosenOptionLines, contingencyLines, jobPartLines, pencePerKm, travelLines } from './price-lines.ts'
import { categoryOf, categoryProblems, kindsOfLines } from './line-categories.ts'
import { sellingProblems } from './selling-price.ts'
import { warmthOf } from './warmth.ts'

/** What a quote is built from: the job, worked up. */
export type ForQuote = {
  readonly job: Job
  readonly placed: readonly PlacedSwap[]
  readonly facts: JobFacts
  readonly parts: PricedTakeOff
  readonly figures: Figures
}

/**
 * The priced quote of a job. Lines add up to the net total; tax is worked out on each rate's
 * sum and rounded half up, once, or by line where the job says so.
 * @param work the job with its swaps set out and its parts taken off
 * @source practice, no published source; tax by EN 16931 BR-CO-13 to BR-CO-17
 * @example buildQuote({ job: { site: {} }, placed: [], facts: { job: { drain: 'freeze', travelKm: 0 }, rooms: [], swaps: [] }, parts: { purchases: [], takeOff: { lines: [] } }, figures: { tasks: { fill: { name: 'Work', optimisticMin: 20, likelyMin: 20, pessimisticMin: 20 }, 'leak-check': { name: 'Work', optimisticMin: 20, likelyMin: 20, pessimisticMin: 20 }, explain: { name: 'Work', optimisticMin: 20, likelyMin: 20, pessimisticMin: 20 } }, settings: { 'labour.accessOptimisticRatio': { value: 1 }, 'labour.accessLikelyRatio': { value: 1 }, 'labour.accessPessimisticRatio': { value: 1 }, 'money.labourPencePerHour': { value: 5200 }, 'money.labourCostPencePerHour': { value: 3000 }, 'money.travelCostPencePerKm': { value: 30 }, 'money.contingencyBasisPoints': { value: 0 }, 'money.depositBasisPoints': { value: 2500 }, 'tax.standardBasisPoints': { value: 2000 }, 'tax.reducedBasisPoints': { value: 500 }, 'tax.zeroBasisPoints': { value: 0 } } } }).value.totals.grossPence // => 6240
 */
export function buildQuote(work: ForQuote): Outcome<Quote> {
  const { job, placed, facts, parts, figures } = work
  const works = jobWork(facts, figures)
  const labour: Outcome<LabourAnswer> = works.length === 0 ? accept(noLabour) : labourFor(works, figures)
  if (!labour.ok) return labour
  const hours = labourLines(works, placed, { labour: labour.value, figures })
  if (!hours.ok) return hours
  const warmth = warmthOf(job, placed)
  if (!warmth.ok) return warmth
  const priced = pricedLines(work, hours.value)
  if (!priced.ok) return priced
  const { lines, totals } = priced.value
  return accept({
    lines,
    options: optionsOf(job, figures),
    labour: labour.value,
    totals,
    gaps: gapsOf(parts.takeOff.lines, job),
    cautions: parts.takeOff.cautions,
    tools: parts.takeOff.tools,
    warmth: warmth.value,
    internal: internalOf({
      job,
      purchases: parts.purchases,
      labour: labour.value,
      figures,
      netPence: totals.netPence,
    }),
    why: whyTotal(lines, totals, figures),
  })
}

/** Every line with its category of tax, discounts last, and what they come to. */
function pricedLines(
  { job, parts, figures }: ForQuote,
  labour: readonly QuoteLine[],
): Outcome<{ readonly lines: readonly QuoteLine[]; readonly totals: Totals }> {
  const { pricing } = job
  const wrong = pricingProblems(pricing)
  if (wrong.length > 0) return { ok: false, problems: wrong }
  const base = [...jobPartLines(parts.takeOff.lines, parts.purchases, { figures, pricing }), ...labour]
  const plain = [
    ...base,
    ...travelLines(job, figures),
    ...contingencyLines(base, figures),
    ...chosenOptionLines(job),
  ]
  const problems = categoryProblems(
    job,
    plain.map((line) => line.lineId),
  )
  if (problems.length > 0) return { ok: false, problems }
  const kinds = kindsOfLines(parts.takeOff.lines)
  const before = plain.map((line) => {
    const classed = { lineId: line.lineId, section: line.section, itemKind: kinds.get(line.lineId) }
    return { ...line, rateKey: categoryOf(classed, job, figures) }
  })
  const off = discountLines(before, pricing?.discounts ?? [])
  if (!off.ok) return off
  const lines = [...before, ...off.value]
  return accept({ lines: withOwnTax(lines, pricing, figures), totals: totalsOf(lines, pricing, figures) })
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

const noLabour: LabourAnswer = {
  expectedMin: 0,
  sdMin: 0,
  p50Min: 0,
  p80Min: 0,
  tasks: [],
  why: given('There is no work in this job', 0, 'min'),
}

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

function gapsOf(lines: readonly TakeOffLine[], job: Job): readonly Gap[] {
  return lines.flatMap((line) => {
    if (line.gap === undefined) return []
    const waiver = job.waivers?.find((one) => one.gapKey === line.lineKey)
    const gap = { gapKey: line.lineKey, says: line.gap }
    return [waiver === undefined ? gap : { ...gap, waived: waiver.reason }]
  })
}

function internalOf(sums: {
  readonly job: Job
  readonly purchases: readonly Purchase[]
  readonly labour: LabourAnswer
  readonly figures: Figures
  readonly netPence: number
}): Quote['internal'] {
  const { job, purchases, labour, figures, netPence } = sums
  const labourCostPence = penceForMinutes(labour.expectedMin, figure(figures, 'money.labourCostPencePerHour'))
  const km = (job.site.travelKm ?? 0) * 2
  const travelCostPence = pencePerKm(km, figure(figures, 'money.travelCostPencePerKm'))
  const partsCostPence = purchases.reduce((sum, purchase) => sum + purchase.costPence, 0)
  const costPence = partsCostPence + labourCostPence + travelCostPence
  return { costPence, marginPence: netPence - costPence, labourCostPence, purchases }
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
