import { because } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { JobLabour, JobTask, LabourAnswer, Modifier } from '../../domain/labour.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { JobFacts } from '../takeoff/job-facts.ts'
import { crewOfJob } from './crew-of-job.ts'
import { daysOnSite } from './days-on-site.ts'
import { accessFactor, jobWork, labourFor } from './job-labour.ts'
import type { JobWork } from './job-labour.ts'

const travelTask = 'travel'

/** The same work asked about in the ways that an answer needs. */
type Timed = {
  /** Minutes of all people together. */
  readonly paid: LabourAnswer
  /** By the clock: people who work together count once. */
  readonly clock: LabourAnswer
  readonly together: LabourAnswer
  readonly site: LabourAnswer
  readonly travel: LabourAnswer
}

/**
 * The labour of a job in full: its tasks by room and those done once, what makes them longer by name, who has to come, the
 * time from start to finish and the days. By the clock, work that two share counts once: their minutes / 2.
 * @param facts the job's facts
 * @param figures the firm's figures
 * @source estimateLabour, crewOfJob and daysOnSite name the methods; the minutes are the firm's
 * @example labourOfJob({ job: { drain: 'freeze', travelKm: 0 }, rooms: [], swaps: [] }, { tasks: { fill: { name: 'Fill', optimisticMin: 20, likelyMin: 20, pessimisticMin: 20 }, 'leak-check': { name: 'Check', optimisticMin: 20, likelyMin: 20, pessimisticMin: 20 }, explain: { name: 'Explain', optimisticMin: 20, likelyMin: 20, pessimisticMin: 20 } }, settings: { 'labour.accessOptimisticRatio': { value: 1 }, 'labour.accessLikelyRatio': { value: 1 }, 'labour.accessPessimisticRatio': { value: 1 }, 'labour.crewHoursPerDay': { value: 7 } } }).value.p50Min // => 60
 */
export function labourOfJob(facts: JobFacts, figures: Figures): Outcome<JobLabour> {
  const works = jobWork(facts, figures)
  const timed = timedOf(works, figures)
  if (!timed.ok) return timed
  const tasks = tasksOf(works, facts, figures)
  if (!tasks.ok) return tasks
  const { paid, clock, together, site, travel } = timed.value
  const crew = crewOfJob(facts, { togetherMin: together.expectedMin, wholeMin: clock.expectedMin }, figures)
  const onSite = { p50SiteMin: site.p50Min, p80SiteMin: site.p80Min, travelMin: travel.expectedMin }
  const hoursPerDay = figure(figures, 'labour.crewHoursPerDay')
  const days = daysOnSite(onSite, { hoursPerDay, why: figureWhy(figures, 'labour.crewHoursPerDay') })
  if (!days.ok) return days
  const says = 'From start to finish by the clock, four jobs in five take less.'
  const why = because(says, clock.p80Min, { unit: 'min', from: [clock.why, crew.why, days.value.why] })
  return accept({
    tasks: tasks.value,
    modifiers: [...distinct(works.flatMap((work) => work.modifiers ?? [])), wholeHouse(figures)],
    crew,
    expectedMin: paid.expectedMin,
    sdMin: paid.sdMin,
    p50Min: clock.p50Min,
    p80Min: clock.p80Min,
    days: days.value,
    why,
  })
}

function timedOf(works: readonly JobWork[], figures: Figures): Outcome<Timed> {
  const byClock = works.map((work) => ({ ...work, count: work.count / (work.people ?? 1) }))
  const paid = labourFor(works, figures)
  if (!paid.ok) return paid
  const clock = labourFor(byClock, figures)
  if (!clock.ok) return clock
  const together = labourFor(
    byClock.filter(({ people }) => (people ?? 1) > 1),
    figures,
  )
  if (!together.ok) return together
  const site = labourFor(
    byClock.filter(({ taskId }) => taskId !== travelTask),
    figures,
  )
  if (!site.ok) return site
  const travel = labourFor(
    byClock.filter(({ taskId }) => taskId === travelTask),
    figures,
  )
  if (!travel.ok) return travel
  return accept({
    paid: paid.value,
    clock: clock.value,
    together: together.value,
    site: site.value,
    travel: travel.value,
  })
}

function tasksOf(works: readonly JobWork[], facts: JobFacts, figures: Figures): Outcome<JobLabour['tasks']> {
  const shared = jobTasks(
    works.filter((work) => work.shared),
    figures,
  )
  if (!shared.ok) return shared
  const rooms: JobLabour['tasks']['rooms'][number][] = []
  for (const { roomId, ask } of facts.rooms) {
    const inRoom = new Set(facts.swaps.filter((swap) => swap.roomId === roomId).map((swap) => swap.swapId))
    const own = works.filter((work) => !work.shared && work.swapIds.every((swapId) => inRoom.has(swapId)))
    const tasks = jobTasks(own, figures)
    if (!tasks.ok) return tasks
    const expectedMin = tasks.value.reduce((sum, task) => sum + task.expectedMin, 0)
    rooms.push({ roomId, name: ask.roomName, expectedMin, tasks: tasks.value })
  }
  return accept({ rooms, shared: shared.value })
}

/** Each task once, in the order of its first work, before the factor of the whole house. */
function jobTasks(works: readonly JobWork[], figures: Figures): Outcome<readonly JobTask[]> {
  const tasks: JobTask[] = []
  for (const [taskId, group] of Map.groupBy(works, (work) => work.taskId)) {
    const timed = labourFor(group, figures)
    if (!timed.ok) return timed
    const task = timed.value.tasks[0]
    if (task === undefined) throw new Error(`The task ${taskId} was not timed`)
    const howMany = group.reduce((sum, work) => sum + (work.howMany ?? work.count), 0)
    const modifiers = distinct(group.flatMap((work) => work.modifiers ?? []))
    tasks.push({ taskId, ...task, howMany, modifiers, why: withModifiers(task.why, modifiers) })
  }
  return accept(tasks)
}

function withModifiers(why: JobTask['why'], modifiers: readonly Modifier[]): JobTask['why'] {
  const named = modifiers.map(({ name, how, factor, reason }) =>
    because(
      how === 'adds' ? `Added, ${name}: ${reason}` : `${name}, already in how often: ${reason}`,
      factor,
    ),
  )
  return named.length === 0 ? why : { ...why, from: [...why.from, ...named] }
}

function distinct(modifiers: readonly Modifier[]): readonly Modifier[] {
  return [...new Map(modifiers.map((one) => [JSON.stringify(one), one])).values()]
}

function wholeHouse(figures: Figures): Modifier {
  const { optimistic, likely, pessimistic } = accessFactor(figures)
  return {
    name: 'The house',
    how: 'whole',
    factor: (optimistic + 4 * likely + pessimistic) / 6,
    reason: `Easy ${optimistic}, usual ${likely}, awkward ${pessimistic}: on the whole job, travel too.`,
  }
}
