import { refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'

export function noSuchItem(itemId: string): Outcome<never> {
  const message = `There is no item ${itemId} in the catalogue.`
  return refuse('not-found', message, 'itemId', 'Look for it with catalogue.search.')
}
