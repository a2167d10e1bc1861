import type { ActualTask, LearnedTask } from '../../domain/follow-up/after-job.ts'
import type { TaskMinutes } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { learnMinutes } from './learn-minutes.ts'

type Weight = Parameters<typeof learnMinutes>[1]

/** What a task takes after the firm's own jobs, and the minutes in force that come of it. */
export type Taught = { readonly learned: LearnedTask; readonly inForce: TaskMinutes }

/**
 * The minutes of a task in force after the firm's own closed jobs: each of its three points times (learned / delivered), so that
 * the expected minutes are the learned ones and the spread keeps its shape. A task that nobody expects to take time stays as it is.
 * Refuses what `learnMinutes` refuses.
 * @param task as delivered, in minutes for one
 * @param actuals one entry a closed job: minutes and how many of the task they were for
 * @param weight how many tasks the delivered minutes weigh as much as
 * @source `learnMinutes` names the method; the scaling of the points: practice, no published source
 * @example taughtTask({ taskId: 'hang', name: 'Hang', optimisticMin: 10, likelyMin: 10, pessimisticMin: 10, source: 's' }, [{ taskId: 'hang', name: 'Hang', minutes: 60, count: 4 }], { count: 4, why: { says: 'x', value: 4, from: [] } }).value.inForce.likelyMin // => 12.5
 */
export function taughtTask(
  task: TaskMinutes,
  actuals: readonly ActualTask[],
  weight: Weight,
): Outcome<Taught> {
  const { optimisticMin, likelyMin, pessimisticMin } = task
  const answer = learnMinutes(
    {
      prior: { optimisticMin, likelyMin, pessimisticMin },
      actuals: actuals.map(({ minutes, count }) => ({ minutes, count })),
    },
    weight,
  )
  if (!answer.ok) return answer
  const { expectedMin, fromMin, toMin, jobs, why } = answer.value
  const priorMin = (optimisticMin + 4 * likelyMin + pessimisticMin) / 6
  const times = priorMin === 0 ? 1 : expectedMin / priorMin
  const behind = jobs === 1 ? 'one job' : `${jobs} jobs`
  return accept({
    learned: { taskId: task.taskId, name: task.name, jobs, priorMin, expectedMin, fromMin, toMin, why },
    inForce: {
      ...task,
      optimisticMin: optimisticMin * times,
      likelyMin: likelyMin * times,
      pessimisticMin: pessimisticMin * times,
      source: `the firm's own ${behind}, with the delivered minutes as a start`,
    },
  })
}

/**
 * How many times its plain minutes a task was reckoned to take on one job: expected / (n (o + 4m + p)/6). What it really took is
 * learnt from as so many plain ones, so that a tiled wall or an awkward house does not count again in the next quote. 1 where the
 * plain minutes or the reckoned ones are 0.
 * @param planned how many were reckoned with, over 0, and their expected minutes with everything that makes them longer
 * @param task the plain minutes of one that the quote was reckoned with
 * @source practice, no published source
 * @example slowerRatio({ count: 4, expectedMin: 60 }, { optimisticMin: 10, likelyMin: 10, pessimisticMin: 10 }) // => 1.5
 */
export function slowerRatio(
  { count, expectedMin }: { readonly count: number; readonly expectedMin: number },
  {
    optimisticMin,
    likelyMin,
    pessimisticMin,
  }: Pick<TaskMinutes, 'optimisticMin' | 'likelyMin' | 'pessimisticMin'>,
): number {
  const plainMin = (count * (optimisticMin + 4 * likelyMin + pessimisticMin)) / 6
  return plainMin > 0 && expectedMin > 0 ? expectedMin / plainMin : 1
}
