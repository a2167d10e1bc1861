import type { Outcome, Problem } from '../src-main/domain/outcome.ts'

/** The answer of an outcome; fails the test with the problems' sentences when it was refused. */
export function answered<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value
  throw new Error(outcome.problems.map(({ path, message }) => `${path ?? ''}: ${message}`).join('\n'))
}

/** The first problem of an outcome; fails the test when it was answered. */
export function refused(outcome: Outcome<unknown>): Problem {
  const first = outcome.ok ? undefined : outcome.problems[0]
  if (first === undefined) throw new Error('This was answered, not refused')
  return first
}

/** Every number in an answer that is not finite, by its path. */
export function nonFiniteIn(value: unknown, path = ''): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => nonFiniteIn(inner, `${path}.${key}`))
}

/** The numbers at the leaves of a reason. */
export function leavesOf(why: {
  readonly value: number | string
  readonly from: readonly unknown[]
}): readonly unknown[] {
  if (why.from.length === 0) return [why.value]
  return why.from.flatMap((inner) => leavesOf(inner as typeof why))
}
