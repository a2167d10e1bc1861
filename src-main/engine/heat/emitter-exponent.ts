import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { refuse, under } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Rating } from '../../domain/room-heat.ts'
import { acceptFinite, refuseUnlessFinite } from '../units/finite.ts'
import type { MeanKind } from './excess-temperature.ts'
import { ratingExcess } from './rating-excess.ts'

/** What an emitter gave at one set of test temperatures. */
export type RatedPoint = { readonly ratedW: number; readonly rating: Rating }
export type ExponentInput = {
  readonly first: RatedPoint
  readonly second: RatedPoint
  readonly mean?: MeanKind | undefined
}
export type ExponentAnswer = { readonly exponent: number; readonly mean: MeanKind; readonly why: Derivation }

const leastApartK = 1

/**
 * An emitter's own exponent from two ratings: n = ln(W1 / W2) / ln(dT1 / dT2).
 * Refuses outputs not above 0, ratings less than 1 K apart, and an exponent outside 1 to 2, which no emitter has.
 *
 * @param input two outputs in watts, each with its test temperatures in degrees Celsius; `mean` logarithmic (default) or
 * arithmetic, the same as will be used with the exponent
 * @source EN 442-2 characteristic equation at two points; the least distance: practice, no published source
 * @example exponentFromTwoRatings({ first: { ratedW: 1000, rating: { flowC: 75, returnC: 65, roomC: 20 } }, second: { ratedW: 510.7, rating: { flowC: 55, returnC: 45, roomC: 20 } } }).value.exponent // => 1.3
 */
export function exponentFromTwoRatings(input: ExponentInput): Outcome<ExponentAnswer> {
  const { first, second, mean = 'logarithmic' } = input
  const wrong = refuseUnlessFinite(input) ?? noOutput(first, 'first') ?? noOutput(second, 'second')
  if (wrong !== null) return wrong
  const one = ratingExcess(first.rating, mean)
  if (!one.ok) return under('first', one)
  const two = ratingExcess(second.rating, mean)
  if (!two.ok) return under('second', two)
  if (Math.abs(one.value.excessK - two.value.excessK) < leastApartK) {
    const message = `The two ratings must be at least ${leastApartK} K apart, such as 75/65/20 and 55/45/20.`
    return refuse('impossible', message, 'second.rating')
  }
  const exponent = Math.log(first.ratedW / second.ratedW) / Math.log(one.value.excessK / two.value.excessK)
  if (!(exponent >= 1 && exponent <= 2)) return unlikely(exponent)
  const why = because('Exponent: ln(first output / second) / ln(first excess / second)', exponent, {
    source: 'EN 442-2 characteristic equation at two points',
    from: [
      given('First rated output', first.ratedW, 'W'),
      one.value.why,
      given('Second rated output', second.ratedW, 'W'),
      two.value.why,
    ],
  })
  return acceptFinite({ exponent, mean, why }, 'These ratings are too far apart to reckon with.')
}

function noOutput({ ratedW }: RatedPoint, path: string): Outcome<never> | null {
  if (ratedW > 0) return null
  return refuse('invalid', `The rated output must be more than 0 W; it was ${ratedW}.`, `${path}.ratedW`)
}

function unlikely(exponent: number): Outcome<never> {
  const found = Number.isFinite(exponent) ? ` of ${exponent.toFixed(2)}` : ''
  return refuse(
    'impossible',
    `The two ratings make an exponent${found}; an emitter's lies between 1 and 2. Check that both are of the same emitter.`,
    'second.ratedW',
  )
}
