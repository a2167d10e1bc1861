import { because } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { LabourAnswer, LabourTask } from '../../domain/labour.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { questions } from '../takeoff/ask-rules.ts'
import type { Per } from '../takeoff/asks.ts'
import type { JobFacts } from '../takeoff/job-facts.ts'
import { named } from '../takeoff/rule.ts'
import { estimateLabour } from './estimate-labour.ts'
import type { SharedFactor } from './estimate-labour.ts'
import { underConditions } from './modifiers.ts'
import { taskRules } from './task-list.ts'
import type { TaskRule, Work } from './task-rule.ts'

/** Work with the swaps it is done for; `shared` for what the job needs once. */
export type JobWork = Work & { readonly shared: boolean; readonly swapIds: readonly string[] }

/**
 * The work of a job, rule by rule, each under what the survey found of the house and the room.
 * @param facts the job's facts
 * @param figures the firm's figures
 * @source each rule names its own
 * @example jobWork({ job: { drain: 'freeze', travelKm: 8 }, rooms: [], swaps: [] }, { settings: {} }).at(-1).count // => 16
 */
export function jobWork(facts: JobFacts, figures: Figures): readonly JobWork[] {
  return taskRules.flatMap((rule) => workOf(rule as TaskRule, facts, figures))
}

function workOf<P extends Per>(rule: TaskRule<P>, facts: JobFacts, figures: Figures): readonly JobWork[] {
  const use = named(figures, rule.uses)
  return questions(rule.per, facts).flatMap((question) =>
    rule
      .gives(question.ask, use)
      .map((work) => ({ ...work, shared: question.shared, swapIds: question.swapIds }))
      .map((work) => underConditions(work, facts, figures)),
  )
}

/**
 * How long work takes: each task once with its count, and the house's own factor on the whole.
 * @param works what is to be done
 * @param figures the firm's figures
 * @source estimateLabour names the published method; the minutes are the firm's
 * @example labourFor([{ taskId: 'fill', count: 2, why: { says: 'one', value: 1, from: [] } }], { settings: { 'labour.accessOptimisticRatio': { value: 1 }, 'labour.accessLikelyRatio': { value: 1 }, 'labour.accessPessimisticRatio': { value: 1 } }, tasks: { fill: { name: 'Fill', optimisticMin: 5, likelyMin: 8, pessimisticMin: 14 } } }).value.expectedMin // => 17
 */
export function labourFor(works: readonly JobWork[], figures: Figures): Outcome<LabourAnswer> {
  const groups = Map.groupBy(works, (work) => work.taskId)
  const tasks = [...groups].map(([taskId, group]) => taskOf(taskId, group, figures))
  const estimated = estimateLabour({
    tasks: tasks.map(({ task }) => task),
    sharedFactor: accessFactor(figures),
  })
  if (!estimated.ok) return estimated
  const reasons = tasks.map(({ why }) => why)
  const answer = {
    ...estimated.value,
    tasks: estimated.value.tasks.map((task, index) => {
      const reason = reasons[index]
      return reason === undefined ? task : { ...task, why: { ...task.why, from: [reason, ...task.why.from] } }
    }),
  }
  return { ok: true, value: answer }
}

function taskOf(
  taskId: string,
  group: readonly JobWork[],
  figures: Figures,
): { readonly task: LabourTask; readonly why: Derivation } {
  const minutes = figures.tasks[taskId]
  if (minutes === undefined) throw new Error(`There is no task called ${taskId}`)
  const { name, optimisticMin, likelyMin, pessimisticMin, source } = minutes
  const count = group.reduce((sum, work) => sum + work.count, 0)
  const why = because(`${name}: how often.`, count, { from: group.map((work) => work.why) })
  return { task: { name, count, optimisticMin, likelyMin, pessimisticMin, source }, why }
}

/**
 * The factor of the house on the whole job, three-point: easy, usual, awkward.
 * @param figures the firm's figures
 * @source from memory; the firm's to set
 * @example accessFactor({ settings: { 'labour.accessOptimisticRatio': { value: 0.9 }, 'labour.accessLikelyRatio': { value: 1 }, 'labour.accessPessimisticRatio': { value: 1.5 } } }).pessimistic // => 1.5
 */
export function accessFactor(figures: Figures): SharedFactor {
  return {
    optimistic: figure(figures, 'labour.accessOptimisticRatio'),
    likely: figure(figures, 'labour.accessLikelyRatio'),
    pessimistic: figure(figures, 'labour.accessPessimisticRatio'),
  }
}
