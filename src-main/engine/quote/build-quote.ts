import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { Job } from '../../domain/job.ts'
import type { LabourAnswer } from '../../domain/labour.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Gap, Purchase, Quote } from '../../domain/quote.ts'
import type { TakeOffLine } from '../../domain/take-off.ts'
import { jobWork, labourFor } from '../labour/job-labour.ts'
import type { JobFacts, PlacedSwap } from '../takeoff/job-facts.ts'
import type { PricedTakeOff } from '../takeoff/take-off.ts'
import { labourLines, penceForMinutes } from './labour-lines.ts'
import { jobPartLines, pencePerKm } from './price-lines.ts'
import { ownPrices } from './override-prices.ts'
import { pricedWork, waivedGap } from './price-work.ts'
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
  const labour = labourFor(works, figures)
  if (!labour.ok) return labour
  const hours = labourLines(works, placed, { labour: labour.value, figures })
  if (!hours.ok) return hours
  const warmth = warmthOf(job, placed)
  if (!warmth.ok) return warmth
  const { lines: listed } = parts.takeOff
  const priced = pricedWork({
    job,
    base: () => [...jobPartLines(listed, parts.purchases, { figures, pricing: job.pricing }), ...hours.value],
    own: ownPrices(job.overrides ?? [], listed),
    figures,
  })
  if (!priced.ok) return priced
  const { totals } = priced.value
  return accept({
    ...priced.value,
    labour: labour.value,
    gaps: gapsOf(listed, job),
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
  })
}

function gapsOf(lines: readonly TakeOffLine[], job: Job): readonly Gap[] {
  return lines.flatMap((line) => {
    if (line.gap === undefined) return []
    const { lineKey, itemKind, quantity, unit } = line
    return [waivedGap({ gapKey: lineKey, says: line.gap, itemKind, quantity, unit }, job.waivers)]
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
