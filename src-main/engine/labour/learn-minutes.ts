import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Learned, TaskActual, TaskPrior } from '../../domain/labour.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'

export type Learning = { readonly prior: TaskPrior; readonly actuals: readonly TaskActual[] }
type Weight = { readonly count: number; readonly why: Derivation }
type Spread = { readonly meanMin: number; readonly sdMin: number }

/** The normal deviate below which 90 % lie, so that 80 % lie within it on both sides: 1.282 in tables of Student's t, last row. */
const z90 = 1.2815515655446004

/**
 * The minutes of a task after some jobs. One task takes mean ± sd; the mean itself is known no better than k tasks would
 * tell it (normal prior with variance sd²/k). N tasks that took T minutes in J jobs make it (k mean + T)/(k + N), with
 * deviation sd/sqrt(k + N): the conjugate normal update with known variance. The normal, not the log-normal: its mean is
 * the plain mean of the minutes, which is what a price wants, and it takes a task of no time. The spread of one task follows
 * by the scaled inverse-chi-square update on what the jobs differ among each other: sd'² = (k sd² + sum n (t - mean of t)²)
 * / (k + J - 1); one job alone says nothing of it.
 * Refuses points out of order, negative minutes, a count or a weight that is not over 0, and what is not finite.
 *
 * @param learning the prior in minutes for one task, and per job the minutes and the count of tasks that they were for
 * @param weight k: how many tasks the prior weighs as much as, over 0, and why
 * @source conjugate normal update, variance known (Held and Sabanes Bove 2014, p. 182, as quoted by the manual of the R package bpp); scaled inverse-chi-square: from memory (Gelman and others, Bayesian Data Analysis, 2.6)
 * @example learnMinutes({ prior: { meanMin: 10, sdMin: 2 }, actuals: [{ minutes: 60, count: 4 }] }, { count: 4, why: { says: 'x', value: 4, from: [] } }).value.expectedMin // => 12.5
 */
export function learnMinutes(learning: Learning, weight: Weight): Outcome<Learned> {
  const problems = problemsIn(learning, weight)
  if (problems.length > 0) return { ok: false, problems }
  const prior = spreadOf(learning.prior)
  const { actuals } = learning
  const count = actuals.reduce((sum, one) => sum + one.count, 0)
  const minutes = actuals.reduce((sum, one) => sum + one.minutes, 0)
  const behind = weight.count + count
  const expectedMin = (weight.count * prior.meanMin + minutes) / behind
  const sdOfMeanMin = prior.sdMin / Math.sqrt(behind)
  const half = z90 * sdOfMeanMin
  return accept({
    expectedMin,
    sdMin: learnedSd(prior, actuals, weight.count),
    sdOfMeanMin,
    fromMin: Math.max(0, expectedMin - half),
    toMin: expectedMin + half,
    jobs: actuals.length,
    count,
    priorWeightCount: weight.count,
    why: whyOf(learning, { prior, weight, expectedMin }),
  })
}

function spreadOf(prior: TaskPrior): Spread {
  if ('meanMin' in prior) return prior
  const { optimisticMin, likelyMin, pessimisticMin } = prior
  return {
    meanMin: (optimisticMin + 4 * likelyMin + pessimisticMin) / 6,
    sdMin: (pessimisticMin - optimisticMin) / 6,
  }
}

function learnedSd({ sdMin }: Spread, actuals: readonly TaskActual[], weight: number): number {
  if (actuals.length < 2) return sdMin
  const count = actuals.reduce((sum, one) => sum + one.count, 0)
  const mean = actuals.reduce((sum, one) => sum + one.minutes, 0) / count
  const squares = actuals.reduce((sum, one) => sum + one.count * (one.minutes / one.count - mean) ** 2, 0)
  return Math.sqrt((weight * sdMin ** 2 + squares) / (weight + actuals.length - 1))
}

function whyOf(
  { prior, actuals }: Learning,
  worked: { readonly prior: Spread; readonly weight: Weight; readonly expectedMin: number },
): Derivation {
  const points =
    'meanMin' in prior
      ? [given('Mean before', prior.meanMin, 'min'), given('Deviation before', prior.sdMin, 'min')]
      : [
          given('Optimistic, for one', prior.optimisticMin, 'min'),
          given('Likely, for one', prior.likelyMin, 'min'),
          given('Pessimistic, for one', prior.pessimisticMin, 'min'),
        ]
  const jobs = actuals.map(({ minutes, count }, at) =>
    because(`Job ${at + 1}: what one took.`, minutes / count, {
      unit: 'min',
      from: [given('Minutes', minutes, 'min'), given('For how many', count)],
    }),
  )
  const before = because('Before any job was timed.', worked.prior.meanMin, { unit: 'min', from: points })
  const many = jobs.length === 1 ? '1 job' : `${jobs.length} jobs`
  const says = `The figure before and ${many}, each by how many of the task stand behind it.`
  return because(says, worked.expectedMin, { unit: 'min', from: [before, worked.weight.why, ...jobs] })
}

function problemsIn({ prior, actuals }: Learning, weight: Weight): readonly Problem[] {
  const jobs = actuals.flatMap(({ minutes, count }, at): readonly Problem[] => [
    ...(minutes >= 0 && Number.isFinite(minutes)
      ? []
      : [
          problem(
            `Job ${at + 1} must have taken 0 minutes or more; it took ${minutes}.`,
            `actuals[${at}].minutes`,
          ),
        ]),
    ...(count > 0 && Number.isFinite(count)
      ? []
      : [
          problem(
            `Job ${at + 1} must have had more than 0 of the task; it had ${count}.`,
            `actuals[${at}].count`,
          ),
        ]),
  ])
  const ofWeight =
    weight.count > 0 && Number.isFinite(weight.count)
      ? []
      : [problem(`The weight of the prior must be more than 0; it was ${weight.count}.`, 'priorWeightCount')]
  return [...priorProblems(prior), ...jobs, ...ofWeight]
}

function priorProblems(prior: TaskPrior): readonly Problem[] {
  if ('meanMin' in prior) {
    const fine = [prior.meanMin, prior.sdMin].every((one) => one >= 0 && Number.isFinite(one))
    const said = `Mean and deviation must be 0 or more; they were ${prior.meanMin}, ${prior.sdMin}.`
    return fine ? [] : [problem(said, 'prior.meanMin')]
  }
  const { optimisticMin: low, likelyMin: likely, pessimisticMin: high } = prior
  if (low >= 0 && low <= likely && likely <= high && Number.isFinite(high)) return []
  const said = `The minutes must rise from optimistic to likely to pessimistic, each 0 or more; they were ${low}, ${likely}, ${high}.`
  return [problem(said, 'prior.likelyMin')]
}

function problem(message: string, path: string): Problem {
  return { code: 'invalid', message, path }
}
