import type { Derivation } from '../../domain/derivation.ts'
import type { Asks, Per } from '../takeoff/asks.ts'
import type { Named } from '../takeoff/rule.ts'

/** A caution and what makes it appear. The same shape as a take-off rule. */
export type CautionRule<P extends Per = Per> = {
  readonly id: string
  readonly per: P
  readonly source: string
  readonly says: string
  readonly uses: readonly string[]
  /** What brings the caution up, or null when nothing does. */
  readonly when: (ask: Asks[P], use: Named) => Derivation | null
  readonly examples: readonly {
    readonly says: string
    readonly ask: Partial<Asks[P]>
    readonly appears: boolean
  }[]
}
export type AnyCautionRule = { readonly [P in Per]: CautionRule<P> }[Per]
