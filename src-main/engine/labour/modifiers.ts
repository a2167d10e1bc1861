import { because } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { JobFacts } from '../takeoff/job-facts.ts'
import { lengthened } from './task-rule.ts'
import type { Work } from './task-rule.ts'

/** Something the survey found that lengthens some tasks, wherever the work comes from. */
type Condition = {
  readonly name: string
  readonly settingId: string
  readonly reason: string
  readonly taskIds: readonly string[]
  readonly holds: (facts: JobFacts, swapIds: readonly string[]) => boolean
}

const conditions: readonly Condition[] = [
  {
    name: 'Tight access',
    settingId: 'labour.tightAccessRatio',
    reason: 'The survey says that there is no room to stand close and work.',
    taskIds: [
      'take-off',
      'set-out',
      'drill-masonry',
      'drill-board',
      'drill-stud',
      'backing-board',
      'hang',
      'valve',
      'alter-pull',
      'alter-tail',
      'alter-repipe',
    ],
    holds: (facts, swapIds) =>
      facts.swaps.some((swap) => swapIds.includes(swap.swapId) && swap.ask.tightAccess === true),
  },
  {
    name: 'Occupied house',
    settingId: 'labour.occupiedRatio',
    reason: 'People live in the house while the work goes on.',
    taskIds: ['set-up', 'clear-up'],
    holds: (facts) => facts.job.occupied === true,
  },
]

/**
 * Work as the survey's conditions lengthen it: count x (1 + the condition's extra), each condition by name.
 * @param one some work and the swaps that it is for
 * @param facts the job's facts
 * @param figures the firm's figures
 * @source practice, no published source
 * @example underConditions({ taskId: 'set-up', count: 2, swapIds: [], why: { says: 'x', value: 2, from: [] } }, { job: { occupied: true }, swaps: [] }, { settings: { 'labour.occupiedRatio': { says: 'x', value: 0.5 } } }).count // => 3
 */
export function underConditions<W extends Work & { readonly swapIds: readonly string[] }>(
  one: W,
  facts: JobFacts,
  figures: Figures,
): W {
  return conditions
    .filter(({ taskIds, holds }) => taskIds.includes(one.taskId) && holds(facts, one.swapIds))
    .reduce((work, condition) => ({ ...work, ...under(work, condition, figures) }), one)
}

function under(one: Work, { name, settingId, reason }: Condition, figures: Figures): Work {
  const factor = 1 + figure(figures, settingId)
  const count = one.count * factor
  const why = because(`${name}: ${reason}`, count, { from: [one.why, figureWhy(figures, settingId)] })
  return lengthened({ ...one, count, why }, one.howMany ?? one.count, [
    { name, how: 'times', factor, reason },
  ])
}
