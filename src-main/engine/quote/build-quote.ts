import { because, given } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Job } from '../../domain/job.ts'
import type { LabourAnswer } from '../../domain/labour.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Gap, Purchase, Quote, QuoteLine, Totals } from '../../domain/quote.ts'
import type { TakeOffLine } from '../../domain/take-off.ts'
import { jobWork, labourFor } from '../labour/job-labour.ts'
import { sharePence } from '../money/price.ts'
import { taxTotals } from '../money/tax-totals.ts'
import type { JobFacts, PlacedSwap } from '../takeoff/job-facts.ts'
import type { PricedTakeOff } from '../takeoff/take-off.ts'
import { labourLines, penceForMinutes } from './labour-lines.ts'
import {
  chosenOptionLines,
  contingencyLines,
  partLines,
  pencePerKm,
  travelLines,
  usualRateKey,
} from './price-lines.ts'
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
 * The priced quote of a job. Lines add up to the net total; tax is worked out on each rate's sum and rounded half up, once.
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
  const base = [...partLines(parts.takeOff.lines, parts.purchases, figures), ...hours.value]
  const lines = [
    ...base,
    ...travelLines(job, figures),
    ...contingencyLines(base, figures),
    ...chosenOptionLines(job),
  ]
  const totals = totalsOf(lines, figures)
  return accept({
    lines,
    options: optionsOf(job),
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

const noLabour: LabourAnswer = {
  expectedMin: 0,
  sdMin: 0,
  p50Min: 0,
  p80Min: 0,
  tasks: [],
  why: given('There is no work in this job', 0, 'min'),
}

function optionsOf(job: Job): Quote['options'] {
  return (job.options ?? []).map(({ optionId, name, netPence, taxKey, chosen }) => ({
    optionId,
    name,
    netPence,
    rateKey: taxKey ?? usualRateKey,
    chosen,
  }))
}

/**
 * The rates of tax in force, by the key that lines name them with.
 * @param figures the firm's figures, as they stand on the day of the quote
 * @source HMRC: standard 20 %, reduced 5 %, zero; dated in the settings
 * @example taxRates({ settings: { 'tax.standardBasisPoints': { value: 2000 }, 'tax.reducedBasisPoints': { value: 500 }, 'tax.zeroBasisPoints': { value: 0 } } })[1].basisPoints // => 500
 */
export function taxRates(figures: Figures) {
  const rate = (rateKey: string, rateName: string) => ({
    rateKey,
    rateName,
    basisPoints: figure(figures, `tax.${rateKey}BasisPoints`),
  })
  return [
    rate('standard', 'VAT, standard rate'),
    rate('reduced', 'VAT, reduced rate'),
    rate('zero', 'VAT, zero rate'),
  ]
}

function totalsOf(lines: readonly QuoteLine[], figures: Figures): Totals {
  const taxed = taxTotals({ lines, rates: taxRates(figures), rounding: 'document', rule: 'half-up' })
  const depositPence = sharePence(taxed.grossPence, figure(figures, 'money.depositBasisPoints'))
  return { ...taxed, depositPence }
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
  const taxes = totals.taxes.map((tax) =>
    because(`${tax.rateName}: its lines x the rate, rounded half up once.`, tax.taxPence, {
      unit: 'pence',
      from: [
        given('Net at this rate', tax.netPence, 'pence'),
        figureWhy(figures, `tax.${tax.rateKey}BasisPoints`),
      ],
    }),
  )
  return because('Net and tax.', totals.grossPence, { unit: 'pence', from: [net, ...taxes] })
}
