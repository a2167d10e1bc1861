import { because } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import type { Asks, Per } from '../takeoff/asks.ts'
import type { Named } from '../takeoff/rule.ts'

/** Some work: which task, how many times, and why. */
export type Work = { readonly taskId: string; readonly count: number; readonly why: Derivation }

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
