import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Rating } from '../../domain/room-heat.ts'
import { btuPerHourFromW } from '../units/exact-units.ts'
import { refuseUnlessFinite } from '../units/finite.ts'
import { excessTemperatureK } from './excess-temperature.ts'
import type { ExcessAnswer, MeanKind, Temperatures } from './excess-temperature.ts'
import { ratingExcess } from './rating-excess.ts'

/** Something that changes what an emitter gives, as a share: towels on the rail, a shelf above. */
export type OutputFactor = { readonly name: string; readonly value: number }
export type EmitterOutputInput = Temperatures & {
  readonly ratedW: number
  readonly rating?: Rating | undefined
  readonly exponent: number
  readonly mean?: MeanKind | undefined
  readonly factors?: readonly OutputFactor[] | undefined
}
export type EmitterOutputAnswer = {
  readonly watts: number
  readonly btuPerHour: number
  readonly excessK: number
  readonly mean: MeanKind
  readonly why: Derivation
}

const mostW = 1e12

/**
 * What an emitter gives at the temperatures the system runs at: W = W rated x (dT / dT rated)^n x the factors multiplied.
 * dT is the excess temperature, logarithmic unless the arithmetic one is asked for; dT rated is of the same kind.
 * Refuses a flow not above the return, a return not above the room, a rating under 1 K above its room, and a rated
 * output or factor that is not above 0, and an exponent outside 1 to 2.
 *
 * @param input ratedW in watts, 0 to 1000000; exponent 1 to 2; temperatures in degrees Celsius; factors 0 to 1.5
 * @source EN 442-2 characteristic equation
 * @example emitterOutput({ ratedW: 1000, exponent: 1.3, flowC: 55, returnC: 45, roomC: 20 }).value.watts // => 510.7
 */
export function emitterOutput(input: EmitterOutputInput): Outcome<EmitterOutputAnswer> {
  const { ratedW, exponent, mean = 'logarithmic', factors = [] } = input
  const wrong = refuseUnlessFinite(input) ?? notAboveNothing(input)
  if (wrong !== null) return wrong
  const rated = ratingExcess(input.rating, mean)
  if (!rated.ok) return rated
  const { flowC, returnC, roomC } = input
  const excess = excessTemperatureK({ flowC, returnC, roomC, mean })
  if (!excess.ok) return excess
  const share = factors.reduce((product, factor) => product * factor.value, 1)
  const { excessK } = excess.value
  const watts = emitterWatts({ ratedW, exponent, ratedExcessK: rated.value.excessK, excessK }) * share
  if (!(watts <= mostW)) {
    return refuse(
      'impossible',
      'These figures make an output past all sense; check the rated output.',
      'ratedW',
    )
  }
  const why = whyOf({ input, factors, watts, rated: rated.value, excess: excess.value })
  return accept({ watts, btuPerHour: btuPerHourFromW(watts), excessK, mean, why })
}

/**
 * The bare characteristic equation, for searches that ask many times: W = W rated x (dT / dT rated)^n; 0 where dT is not
 * above 0, never past the largest number. Throws when the rated excess is not above 0: `ratingExcess` refuses that first.
 * @param point rated output in watts, exponent 1 to 2, both excess temperatures in K
 * @source EN 442-2 characteristic equation
 * @example emitterWatts({ ratedW: 411, exponent: 1.225, ratedExcessK: 50, excessK: 60 }) // => 513.85
 */
export function emitterWatts(point: {
  readonly ratedW: number
  readonly exponent: number
  readonly ratedExcessK: number
  readonly excessK: number
}): number {
  const { ratedW, exponent, ratedExcessK, excessK } = point
  if (!(ratedExcessK > 0)) throw new Error(`A rated excess must be above 0 K, not ${ratedExcessK}`)
  return excessK > 0 ? Math.min(ratedW * (excessK / ratedExcessK) ** exponent, Number.MAX_VALUE) : 0
}

function notAboveNothing({ ratedW, exponent, factors = [] }: EmitterOutputInput): Outcome<never> | null {
  if (ratedW <= 0) {
    return refuse('invalid', `The rated output must be more than 0 W; it was ${ratedW}.`, 'ratedW')
  }
  if (exponent < 1 || exponent > 2) {
    return refuse(
      'invalid',
      `The exponent must be 1 to 2, usually 1.2 to 1.4; it was ${exponent}.`,
      'exponent',
    )
  }
  const index = factors.findIndex((factor) => factor.value <= 0)
  if (index === -1) return null
  const message = `The factor “${factors[index]?.name}” must be more than 0; it was ${factors[index]?.value}.`
  return refuse('invalid', message, `factors[${index}].value`)
}

type Worked = {
  readonly input: EmitterOutputInput
  readonly factors: readonly OutputFactor[]
  readonly watts: number
  readonly rated: ExcessAnswer
  readonly excess: ExcessAnswer
}

function whyOf({ input, factors, watts, rated, excess }: Worked): Derivation {
  const list = input.rating === undefined ? 'EN 442-2: rated at 75/65/20' : undefined
  return because('Emitter gives: rated output × (excess / rated excess) ^ exponent × factors', watts, {
    unit: 'W',
    source: 'EN 442-2',
    from: [
      given('Rated output', input.ratedW, 'W'),
      given('Exponent', input.exponent),
      because('As it runs', excess.excessK, { unit: 'K', from: [excess.why] }),
      because('As it was rated', rated.excessK, {
        unit: 'K',
        from: [rated.why],
        ...(list === undefined ? {} : { source: list }),
      }),
      ...factors.map((factor) => given(`Factor: ${factor.name}`, factor.value)),
    ],
  })
}
