import type { Emitter } from '../../domain/item.ts'
import { meanExcessK } from '../heat/excess-temperature.ts'
import type { Temperatures } from '../heat/excess-temperature.ts'
import { ratingExcess } from '../heat/rating-excess.ts'
import type { EmitterColumns } from './emitter-columns.ts'
import { keepsClear } from './wall-limits.ts'
import type { OnWall, WallLimits } from './wall-limits.ts'

/** What the customer asked for; absent: anything. */
export type Wanted = {
  readonly kind?: Emitter['form']['kind'] | undefined
  readonly finish?: Emitter['finish'] | undefined
  readonly maxHeightMm?: number | undefined
  readonly maxWidthMm?: number | undefined
}

export type Screen = {
  readonly limits: WallLimits
  readonly at: Temperatures
  /** What the room needs, and what its other emitters give it, W. */
  readonly needW: number
  readonly othersW: number
  /** All the factors on the output, multiplied. */
  readonly share: number
  readonly want: Wanted
}

export type Screened = {
  /** What each emitter gives, W; 0 where its rating makes no sense. */
  readonly givesW: Float64Array
  /** Places of the emitters that heat, fit and are as wanted. */
  readonly suitable: readonly number[]
}

/**
 * Looks at every emitter once: W = W rated x (dT / dT rated)^n x factors, with dT / dT rated worked out once for each kind of
 * rating; then what was wanted, the heat, and the wall, the cheapest test first.
 * @param columns the emitters in columns
 * @param screen the wall's limits, temperatures in degrees Celsius, need in W
 * @source EN 442-2 characteristic equation; the wall: practice, no published source
 * @example [...screenEmitters({ emitters: [{}], ratings: [undefined], ratingAt: [0], ratedW: [1000], exponent: [1.3], holes: [0] }, { at: { flowC: 75, returnC: 65, roomC: 20 }, share: 1, needW: 1, othersW: 0, want: {} }).givesW] // => [1000]
 */
export function screenEmitters(columns: EmitterColumns, screen: Screen): Screened {
  const { limits, needW, othersW, share, want } = screen
  const { emitters, ratedW, exponent, ratingAt, widthMm, heightMm, pipeCentresMm, valveSides } = columns
  const excessRatio = excessRatios(columns, screen.at)
  const mostHigh = want.maxHeightMm ?? Number.MAX_VALUE
  const mostWide = want.maxWidthMm ?? Number.MAX_VALUE
  const leastW = Math.round(needW)
  const givesW = new Float64Array(emitters.length)
  const suitable: number[] = []
  const one: { -readonly [K in keyof OnWall]: OnWall[K] } = {
    widthMm: 0,
    heightMm: 0,
    pipeCentresMm: 0,
    valveSides: 0,
  }
  for (let at = 0; at < emitters.length; at += 1) {
    const ratio = excessRatio[ratingAt[at] ?? 0] ?? 0
    const watts = (ratedW[at] ?? 0) * ratio ** (exponent[at] ?? 1) * share
    givesW[at] = watts
    if (ratio === 0 || Math.round(othersW + watts) < leastW || columns.holes[at] === 0) continue
    one.widthMm = widthMm[at] ?? 0
    one.heightMm = heightMm[at] ?? 0
    if (one.heightMm > mostHigh || one.widthMm > mostWide || !isAsWanted(emitters[at], want)) continue
    one.pipeCentresMm = pipeCentresMm[at] ?? 0
    one.valveSides = valveSides[at] ?? 0
    if (keepsClear(limits, one)) suitable.push(at)
  }
  return { givesW, suitable }
}

function isAsWanted(emitter: Emitter | undefined, { kind, finish }: Wanted): boolean {
  if (kind === undefined && finish === undefined) return true
  return (
    (kind === undefined || emitter?.form.kind === kind) &&
    (finish === undefined || emitter?.finish === finish)
  )
}

/** For each kind of rating, how far above the room the emitter runs beside how far it was rated; 0 for a rating that cannot be. */
function excessRatios({ ratings }: EmitterColumns, at: Temperatures): Float64Array {
  const excessK = meanExcessK(at, 'logarithmic')
  return Float64Array.from(ratings, (rating) => {
    const rated = ratingExcess(rating, 'logarithmic')
    return rated.ok ? excessK / rated.value.excessK : 0
  })
}
