import type { Outcome } from '../../domain/outcome.ts'
import { refuse, under } from '../../domain/outcome.ts'
import type { Rating } from '../../domain/room-heat.ts'
import { excessTemperatureK } from './excess-temperature.ts'
import type { ExcessAnswer, MeanKind } from './excess-temperature.ts'

/**
 * The test temperatures of today's lists, where a rating names no others.
 * @source EN 442-2: flow 75, return 65, air 20 degrees Celsius
 * @example standardRating.flowC // => 75
 */
export const standardRating: Rating = { flowC: 75, returnC: 65, roomC: 20 }

const leastK = 1

/**
 * The excess temperature at which an emitter was rated, K, in the kind of mean that is asked for.
 * Refuses what `excessTemperatureK` refuses, and an excess under 1 K: no emitter is tested there, and a share of it would
 * grow without bound. The problem's path lies under `rating`.
 *
 * @param rating test temperatures in degrees Celsius; today's 75/65/20 when absent
 * @param mean logarithmic or arithmetic
 * @source EN 442-2; the least excess: practice, no published source
 * @example ratingExcess(undefined, 'arithmetic').value.excessK // => 50
 */
export function ratingExcess(rating: Rating | undefined, mean: MeanKind): Outcome<ExcessAnswer> {
  const excess = excessTemperatureK({ ...(rating ?? standardRating), mean })
  if (!excess.ok) return under('rating', excess)
  if (excess.value.excessK >= leastK) return excess
  return refuse(
    'impossible',
    `The rating must be at least ${leastK} K above its room; lists are made at 75/65/20, 90/70/20 or 55/45/20.`,
    'rating',
  )
}
