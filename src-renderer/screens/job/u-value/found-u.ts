import type { Derivation } from '../../../../src-main/domain/derivation.ts'
import type { Outcome } from '../../../../src-main/domain/outcome.ts'

/** A U-value that one of the ways found, why there is none, or null while questions are open. */
export type FoundU = Outcome<{
  readonly uWPerM2K: number
  readonly note?: string | undefined
  /** Only where timber goes through a layer: the limits between which the true resistance lies. */
  readonly upperM2KPerW?: number | undefined
  readonly lowerM2KPerW?: number | undefined
  readonly why: Derivation
}> | null

export type TakeFound = (found: FoundU) => void
