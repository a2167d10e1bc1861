import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'

/** What becomes of long work that a person stopped. */
export function stopped(): Outcome<never> {
  return refuse('refused', 'It was stopped. Nothing was changed.')
}
