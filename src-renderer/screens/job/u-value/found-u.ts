import type { Derivation } from '../../../../src-main/domain/derivation.ts'
import type { Outcome } from '../../../../src-main/domain/outcome.ts'

/** A U-value that one of the ways found, why there is none, or null while questions are open. */
export type FoundU = Outcome<{
  readonly uWPerM2K: number
  readonly note?: string | undefined
  readonly why: Derivation
}> | null

export type TakeFound = (found: FoundU) => void
