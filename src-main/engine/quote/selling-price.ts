import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Job } from '../../domain/job.ts'
import type { Problem } from '../../domain/outcome.ts'
import type { TakeOffKind } from '../../domain/take-off.ts'
import { markedUpPence, pricedByMarginPence } from '../money/price.ts'

/** How one kind of part is priced: one way, never both. */
export type Selling = {
  readonly by: 'markUp' | 'margin'
  readonly basisPoints: number
  readonly why: Derivation
}

type Pricing = Job['pricing']

/**
 * How a kind of part is priced: as the job says for that kind, or for all parts; otherwise by the firm's margin where it
 * has set one; otherwise by its mark-up.
 * @param kind what the part is
 * @param figures the firm's figures
 * @param pricing the job's own way of pricing, when it has one
 * @source practice, no published source
 * @example sellingOf('vent', { settings: { 'money.markUpPartsBasisPoints': { value: 3000 } } }, undefined).basisPoints // => 3000
 */
export function sellingOf(kind: TakeOffKind, figures: Figures, pricing: Pricing): Selling {
  const own =
    pricing?.markUps?.find((one) => one.of === kind) ??
    (kind === 'emitter' ? undefined : pricing?.markUps?.find((one) => one.of === 'parts'))
  if (own !== undefined) {
    const { by, basisPoints, of } = own
    const says = by === 'margin' ? `Margin on ${of}, for this job` : `Mark-up on ${of}, for this job`
    return { by, basisPoints, why: given(says, basisPoints, 'BasisPoints', "the job's own figure") }
  }
  const group = kind === 'emitter' ? 'Emitter' : 'Parts'
  const margin = `money.margin${group}BasisPoints`
  // A quote kept before margins were a setting has none.
  const byMargin = figures.settings[margin] !== undefined && figure(figures, margin) > 0
  const id = byMargin ? margin : `money.markUp${group}BasisPoints`
  return { by: byMargin ? 'margin' : 'markUp', basisPoints: figure(figures, id), why: figureWhy(figures, id) }
}

/**
 * What a cost is sold for, with its reason: cost (1 + mark-up), or cost / (1 - margin).
 * @param costPence whole pence, at least 0
 * @param selling how it is priced
 * @param from what stands behind the cost
 * @source definitions of mark-up and margin
 * @example soldFor(750, { by: 'margin', basisPoints: 2500, why: { says: 'Margin', value: 2500, from: [] } }, []).value // => 1000
 */
export function soldFor(costPence: number, selling: Selling, from: readonly Derivation[]): Derivation {
  const { by, basisPoints, why } = selling
  const byMargin = by === 'margin'
  const pence = byMargin ? pricedByMarginPence(costPence, basisPoints) : markedUpPence(costPence, basisPoints)
  const says = byMargin ? 'Cost of the packs / (1 - margin).' : 'Cost of the packs x (1 + mark-up).'
  return because(says, pence, { unit: 'pence', from: [...from, why] })
}

/**
 * What is wrong with a job's own mark-ups and margins: one kind named twice, or a margin that no price can have.
 * @param pricing the job's own way of pricing, when it has one
 * @source definition of margin: it is less than the whole price
 * @example sellingProblems({ markUps: [{ of: 'valve', by: 'margin', basisPoints: 10000 }] })[0].path // => 'job.pricing.markUps[0].basisPoints'
 */
export function sellingProblems(pricing: Pricing): readonly Problem[] {
  const markUps = pricing?.markUps ?? []
  return markUps.flatMap(({ of, by, basisPoints }, at): readonly Problem[] => {
    const path = `job.pricing.markUps[${at}]`
    const twice = markUps.findIndex((one) => one.of === of) < at
    const message = `${of} is priced twice; give it one mark-up or one margin.`
    return [
      ...(twice ? [{ code: 'invalid' as const, message, path: `${path}.of` }] : []),
      ...(by === 'margin' && basisPoints >= 10_000
        ? [
            {
              code: 'invalid' as const,
              message: `A margin is a share of the price and must be under 10000 basis points (100 %); it was ${basisPoints}.`,
              path: `${path}.basisPoints`,
            },
          ]
        : []),
    ]
  })
}
