import type { ActualTask, AfterJob } from '../../domain/follow-up/after-job.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Quote } from '../../domain/quote.ts'
import { accessFactor } from '../../engine/labour/job-labour.ts'
import { labourOfJob } from '../../engine/labour/labour-of-job.ts'
import { slowerRatio } from '../../engine/labour/learned-task.ts'
import type { WorkedUp } from '../quoting/work-up.ts'

/** A task as the quote reckoned with it, the factor of the whole house included. */
export type PlannedTask = {
  readonly taskId: string
  readonly name: string
  readonly count: number
  readonly expectedMin: number
}

/** Each task once: what all rooms and the job as a whole have of it. */
export function plannedTasks({ ground, figures }: WorkedUp): Outcome<readonly PlannedTask[]> {
  const labour = labourOfJob(ground.facts, figures)
  if (!labour.ok) return labour
  const { rooms, shared } = labour.value.tasks
  const { optimistic, likely, pessimistic } = accessFactor(figures)
  const house = (optimistic + 4 * likely + pessimistic) / 6
  const all = [...rooms.flatMap(({ tasks }) => tasks), ...shared]
  return accept(
    [...Map.groupBy(all, ({ taskId }) => taskId)].map(([taskId, same]) => ({
      taskId,
      name: same[0]?.name ?? taskId,
      count: same.reduce((sum, { howMany }) => sum + howMany, 0),
      expectedMin: house * same.reduce((sum, { expectedMin }) => sum + expectedMin, 0),
    })),
  )
}

/** What was bought for the job, as if all that is needed were used and the rest left over. */
export function plannedParts({ internal }: Pick<Quote, 'internal'>): AfterJob['parts'] {
  return internal.purchases.map(({ itemId, name, unit, need, leftover, oneOff }) => ({
    ...(oneOff === true ? {} : { itemId }),
    name,
    unit,
    planned: Math.round((need + leftover) * 1e6) / 1e6,
    used: need,
  }))
}

/** The hours as labour learns from them: each beside how much longer than plain its job was reckoned. */
export function asTaught(
  tasks: readonly ActualTask[],
  planned: readonly PlannedTask[],
  { figures }: Pick<WorkedUp, 'figures'>,
): readonly ActualTask[] {
  const reckoned = new Map(planned.map((task) => [task.taskId, task]))
  return tasks.map(({ slowerRatio: _earlier, ...task }) => {
    const plan = reckoned.get(task.taskId)
    const plain = figures.tasks[task.taskId]
    return plan === undefined || plain === undefined
      ? task
      : { ...task, slowerRatio: slowerRatio(plan, plain) }
  })
}
