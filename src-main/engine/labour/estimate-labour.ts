import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { LabourAnswer, LabourTask } from '../../domain/labour.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome, Problem } from '../../domain/outcome.ts'

export type SharedFactor = {
  readonly optimistic: number
  readonly likely: number
  readonly pessimistic: number
}
export type LabourInput = {
  readonly tasks: readonly LabourTask[]
  readonly sharedFactor?: SharedFactor | undefined
}

type ThreePoint = SharedFactor
type Spread = { readonly expected: number; readonly sd: number }

/** The standard normal deviate below which 80 % lies: NIST/SEMATECH e-Handbook 1.3.6.7.1 tables 0.84; in full 0.841621. */
const z80 = 0.8416212335729143
const pertSource = 'PERT three-point estimate: (o + 4m + p)/6 and (p - o)/6'

/**
 * How long the tasks take, with their spread. A task: expected = n (o + 4m + p)/6, sd = sqrt(n) (p - o)/6, so that n
 * repeats on one line and n lines of one say the same: repeats are independent of each other. Tasks add; their sds add in
 * quadrature. What makes the whole house slow together belongs in the shared factor F, which multiplies the sum S and does
 * not average out: mean = F S, var = F² var S + S² var F + var F var S. P50 = mean, P80 = mean + 0.8416 sd (normal).
 * A task in the answer stands before the shared factor.
 * Refuses minutes or factors that are not in the order optimistic <= likely <= pessimistic, negative, or not finite.
 *
 * @param input tasks in minutes for one of their count, and the factor on the whole (1 is none)
 * @source PERT (Malcolm, Roseboom, Clark and Fazar 1959); variance of a product of independent quantities (Goodman 1960), both from memory
 * @example estimateLabour({ tasks: [{ name: 'Build', count: 1, optimisticMin: 5, likelyMin: 8, pessimisticMin: 14 }] }).value.p80Min // => 9.762
 */
export function estimateLabour(input: LabourInput): Outcome<LabourAnswer> {
  const problems = problemsIn(input)
  if (problems.length > 0) return { ok: false, problems }
  const tasks = input.tasks.map(estimateTask)
  const sum: Spread = {
    expected: tasks.reduce((total, task) => total + task.expectedMin, 0),
    sd: Math.hypot(...tasks.map((task) => task.sdMin)),
  }
  const factor = input.sharedFactor === undefined ? undefined : pert(input.sharedFactor)
  const whole = factor === undefined ? sum : multiplied(sum, factor)
  const p80Min = whole.expected + z80 * whole.sd
  return accept({
    expectedMin: whole.expected,
    sdMin: whole.sd,
    p50Min: whole.expected,
    p80Min,
    tasks,
    why: whyOf(input, { tasks, whole, p80Min, factor }),
  })
}

function pert({ optimistic, likely, pessimistic }: ThreePoint): Spread {
  return { expected: (optimistic + 4 * likely + pessimistic) / 6, sd: (pessimistic - optimistic) / 6 }
}

function multiplied(sum: Spread, factor: Spread): Spread {
  const sd = Math.hypot(factor.expected * sum.sd, sum.expected * factor.sd, factor.sd * sum.sd)
  return { expected: factor.expected * sum.expected, sd }
}

function estimateTask(task: LabourTask): LabourAnswer['tasks'][number] {
  const { name, count, optimisticMin, likelyMin, pessimisticMin, source } = task
  const one = pert({ optimistic: optimisticMin, likely: likelyMin, pessimistic: pessimisticMin })
  const expectedMin = count * one.expected
  const why = because(`${name}: ${count} × (o + 4m + p)/6`, expectedMin, {
    unit: 'min',
    source: pertSource,
    from: [
      given('How many', count),
      given('Optimistic, for one', optimisticMin, 'min', source),
      given('Likely, for one', likelyMin, 'min', source),
      given('Pessimistic, for one', pessimisticMin, 'min', source),
    ],
  })
  return { name, count, expectedMin, sdMin: Math.sqrt(count) * one.sd, why }
}

type Worked = {
  readonly tasks: LabourAnswer['tasks']
  readonly whole: Spread
  readonly p80Min: number
  readonly factor: Spread | undefined
}

function whyOf({ sharedFactor }: LabourInput, { tasks, whole, p80Min, factor }: Worked): Derivation {
  const parts = tasks.map((task) => task.why)
  const factorWhy =
    sharedFactor === undefined || factor === undefined ? [] : [whyFactor(sharedFactor, factor)]
  const expected = because(
    factor === undefined ? 'The tasks add up' : 'The tasks add up, times the factor on the whole job',
    whole.expected,
    { unit: 'min', from: [...parts, ...factorWhy] },
  )
  const spread = because(
    'Standard deviation: tasks in quadrature; the factor on the whole does not average out',
    whole.sd,
    { unit: 'min', from: [...parts, ...factorWhy] },
  )
  return because('Four jobs in five take less: expected + 0.8416 standard deviations', p80Min, {
    unit: 'min',
    from: [
      expected,
      spread,
      given('Normal deviate of 80 %', z80, undefined, 'NIST/SEMATECH e-Handbook 1.3.6.7.1'),
    ],
  })
}

function whyFactor({ optimistic, likely, pessimistic }: SharedFactor, factor: Spread): Derivation {
  return because('Factor on the whole job: (o + 4m + p)/6', factor.expected, {
    source: pertSource,
    from: [
      given('Optimistic factor', optimistic),
      given('Likely factor', likely),
      given('Pessimistic factor', pessimistic),
    ],
  })
}

function problemsIn({ tasks, sharedFactor }: LabourInput): readonly Problem[] {
  const ofTasks = tasks.flatMap((task, index) => problemsOfTask(task, `tasks[${index}]`))
  if (sharedFactor === undefined || inOrder(sharedFactor)) return ofTasks
  const message =
    `The factor on the whole job must rise from optimistic to likely to pessimistic, each 0 or more; it was ` +
    `${sharedFactor.optimistic}, ${sharedFactor.likely}, ${sharedFactor.pessimistic}.`
  return [...ofTasks, { code: 'invalid', message, path: 'sharedFactor.likely' }]
}

function problemsOfTask(task: LabourTask, path: string): readonly Problem[] {
  const { name, count, optimisticMin: optimistic, likelyMin: likely, pessimisticMin: pessimistic } = task
  const problems: Problem[] = []
  if (!Number.isFinite(count) || count < 0) {
    problems.push({
      code: 'invalid',
      message: `How many of “${name}” must be 0 or more; it was ${count}.`,
      path: `${path}.count`,
    })
  }
  if (!inOrder({ optimistic, likely, pessimistic })) {
    const message =
      `The minutes of “${name}” must rise from optimistic to likely to pessimistic, each 0 or more; they were ` +
      `${optimistic}, ${likely}, ${pessimistic}.`
    problems.push({ code: 'invalid', message, path: `${path}.likelyMin` })
  }
  return problems
}

function inOrder({ optimistic, likely, pessimistic }: ThreePoint): boolean {
  return optimistic >= 0 && optimistic <= likely && likely <= pessimistic && Number.isFinite(pessimistic)
}
