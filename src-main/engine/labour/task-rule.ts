import { because } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Modifier } from '../../domain/labour.ts'
import type { Asks, Per } from '../takeoff/asks.ts'
import type { Named } from '../takeoff/rule.ts'

/** Some work: which task, how many times after everything that makes it longer, and why. */
export type Work = {
  readonly taskId: string
  readonly count: number
  readonly why: Derivation
  /** How many before anything made it longer; `count` when absent. */
  readonly howMany?: number
  /** What made it longer, by name; nothing when absent. */
  readonly modifiers?: readonly Modifier[]
  /** How many people do it at once, each for as long; one when absent. */
  readonly people?: number
}

/** A rule that says how often a task is done. The same shape as a take-off rule. */
export type TaskRule<P extends Per = Per> = {
  readonly id: string
  readonly per: P
  readonly source: string
  readonly says: string
  readonly uses: readonly string[]
  readonly gives: (ask: Asks[P], use: Named) => readonly Work[]
  readonly examples: readonly {
    readonly says: string
    readonly ask: Partial<Asks[P]>
    readonly gives: readonly (readonly [taskId: string, count: number])[]
  }[]
}
export type AnyTaskRule = { readonly [P in Per]: TaskRule<P> }[Per]

/**
 * Some work with its reason.
 * @param taskId the task of the firm's figures
 * @param count how often, at least 0
 * @param says why, a sentence
 * @param from the figures that the count was worked out from
 * @source practice, no published source
 * @example work('fill', 1, 'Once.').count // => 1
 */
export function work(
  taskId: string,
  count: number,
  says: string,
  ...from: readonly (readonly Derivation[])[]
): Work {
  return { taskId, count, why: because(says, count, { from: from.flat() }) }
}

/**
 * Work that something made longer, with the names of what did: those that are 1 are left out.
 * @param one the work, its count after all of them
 * @param howMany its count before any of them
 * @param modifiers what multiplied it
 * @source practice, no published source
 * @example lengthened(work('drill', 2, 'Tile.'), 1, [{ name: 'Tile', how: 'times', factor: 2, reason: 'Slow.' }]).howMany // => 1
 */
export function lengthened(one: Work, howMany: number, modifiers: readonly Modifier[]): Work {
  const told = modifiers.filter(({ how, factor }) => how === 'adds' || factor !== 1)
  return told.length === 0 ? one : { ...one, howMany, modifiers: [...(one.modifiers ?? []), ...told] }
}
