import type { Derivation } from '../../domain/derivation.ts'
import type { Asks, Per } from '../takeoff/asks.ts'
import type { Named } from '../takeoff/rule.ts'

/** A tool that the job's own numbers call for. The same shape as a take-off rule. */
export type ToolRule<P extends Per = Per> = {
  readonly id: string
  readonly per: P
  readonly source: string
  readonly says: string
  readonly uses: readonly string[]
  readonly gives: (ask: Asks[P], use: Named) => readonly { readonly name: string; readonly why: Derivation }[]
  readonly examples: readonly {
    readonly says: string
    readonly ask: Partial<Asks[P]>
    readonly gives: readonly string[]
  }[]
}
export type AnyToolRule = { readonly [P in Per]: ToolRule<P> }[Per]
