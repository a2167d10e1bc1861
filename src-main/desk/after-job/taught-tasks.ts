import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures, TaskMinutes } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { taughtTask } from '../../engine/labour/learned-task.ts'
import type { Taught } from '../../engine/labour/learned-task.ts'
import { closedActuals } from '../../store/after-jobs.ts'
import { reading } from '../../store/store.ts'
import type { Store } from '../../store/store.ts'

const weightId = 'labour.priorWeightCount'

/** What the firm's own closed jobs taught, by task; tasks that no job has timed are not among them. */
export async function taughtTasks(
  store: Store,
  tasks: readonly TaskMinutes[],
  settings: Figures['settings'],
): Promise<Outcome<readonly Taught[]>> {
  const actuals = await reading(store, closedActuals)
  const figures = { settings, tasks: {}, fixings: [] }
  const weight = { count: figure(figures, weightId), why: figureWhy(figures, weightId) }
  const taught: Taught[] = []
  for (const task of tasks) {
    const own = actuals.get(task.taskId)
    if (own === undefined) continue
    const one = taughtTask(task, own, weight)
    if (!one.ok) return one
    taught.push(one.value)
  }
  return accept(taught)
}
