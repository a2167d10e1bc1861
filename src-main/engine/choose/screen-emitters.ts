import type { Emitter } from '../../domain/item.ts'
import { meanExcessK } from '../heat/excess-temperature.ts'
import type { Temperatures } from '../heat/excess-temperature.ts'
import { ratingExcess } from '../heat/rating-excess.ts'
import type { EmitterStock, Style } from './emitter-stock.ts'
import type { Refusal } from './refusals.ts'
import { faultsOn } from './wall-limits.ts'
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

/** How many emitters have at least one reason of each kind against them. */
export type Counted = Readonly<Record<Refusal['about'], number>>

export type Screened = {
  /** What each emitter gives, W; 0 where its rating makes no sense. */
  readonly givesW: Float64Array
  /** How many reasons there are against each. */
  readonly reasons: Uint8Array
  /** Places of the emitters that heat, fit, are as wanted and have a price. */
  readonly suitable: readonly number[]
  readonly counted: Counted
}

/** One bit for each kind of reason. */
const bits: Readonly<Record<Refusal['about'], number>> = {
  heat: 1,
  wall: 2,
  obstacle: 4,
  wanted: 8,
  listing: 16,
  price: 32,
}
const combinations = 64
/** More reasons than this are not told apart. */
const mostReasons = 255

/**
 * Looks at every emitter once: W = W rated x (dT / dT rated)^n x factors, with dT / dT rated worked out once for each kind of
 * rating, and the wall once for each shape; counts the reasons against each.
 * @param stock the emitters in columns
 * @param screen the wall's limits, temperatures in degrees Celsius, need in W
 * @source EN 442-2 characteristic equation; the wall: practice, no published source
 * @example [...screenEmitters({ emitters: [{}], ratings: [undefined], ratingAt: [0], ratedW: [1000], exponent: [1.3], hasHoles: [1], packPence: [9], shapes: [], shapeAt: [0], styles: [], styleAt: [0] }, { at: { flowC: 75, returnC: 65, roomC: 20 }, share: 1, needW: 1, othersW: 0, want: {} }).givesW] // => [1000]
 */
export function screenEmitters(stock: EmitterStock, screen: Screen): Screened {
  const { ratedW, exponent, ratingAt, shapeAt, styleAt, hasHoles, packPence } = stock
  const { othersW, share } = screen
  const many = stock.emitters.length
  const excessRatio = excessRatios(stock, screen.at)
  const shapes = shapeReasons(stock.shapes, screen)
  const styles = styleReasons(stock.styles, screen.want)
  const leastW = Math.round(screen.needW)
  const givesW = new Float64Array(many)
  const reasons = new Uint8Array(many)
  const tally = new Uint32Array(combinations)
  const suitable: number[] = []
  for (let at = 0; at < many; at += 1) {
    const ratio = excessRatio[ratingAt[at] ?? 0] ?? 0
    const watts = ratio === 0 ? 0 : (ratedW[at] ?? 0) * ratio ** (exponent[at] ?? 1) * share
    givesW[at] = watts
    const shape = shapeAt[at] ?? 0
    const style = styleAt[at] ?? 0
    let against = (shapes.many[shape] ?? 0) + (styles.many[style] ?? 0)
    let about = (shapes.about[shape] ?? 0) | (styles.about[style] ?? 0)
    if (watts === 0) {
      against += 1
      about |= bits.listing
    } else if (Math.round(othersW + watts) < leastW) {
      against += 1
      about |= bits.heat
    }
    if (hasHoles[at] === 0) {
      against += 1
      about |= bits.listing
    }
    if ((packPence[at] ?? 0) < 0) {
      against += 1
      about |= bits.price
    }
    tally[about] = (tally[about] ?? 0) + 1
    if (against === 0) suitable.push(at)
    else reasons[at] = Math.min(against, mostReasons)
  }
  return { givesW, reasons, suitable, counted: countedBy(tally) }
}

type Reasons = { readonly many: Uint16Array; readonly about: Uint8Array }

function shapeReasons(shapes: readonly OnWall[], { limits, want }: Screen): Reasons {
  const { maxHeightMm, maxWidthMm } = want
  return reasonsOf(shapes, (one) => {
    const { wall, obstacles } = faultsOn(limits, one)
    const tall = maxHeightMm !== undefined && one.heightMm > maxHeightMm ? 1 : 0
    const wide = maxWidthMm !== undefined && one.widthMm > maxWidthMm ? 1 : 0
    return { wall, obstacle: obstacles, wanted: tall + wide }
  })
}

function styleReasons(styles: readonly Style[], { kind, finish }: Wanted): Reasons {
  return reasonsOf(styles, (one) => {
    const otherKind = kind !== undefined && one.kind !== kind ? 1 : 0
    const otherFinish = finish !== undefined && one.finish !== finish ? 1 : 0
    return { wall: 0, obstacle: 0, wanted: otherKind + otherFinish }
  })
}

type Some = { readonly wall: number; readonly obstacle: number; readonly wanted: number }

function reasonsOf<T>(list: readonly T[], of: (one: T) => Some): Reasons {
  const many = new Uint16Array(list.length)
  const about = new Uint8Array(list.length)
  for (const [at, one] of list.entries()) {
    const { wall, obstacle, wanted } = of(one)
    many[at] = wall + obstacle + wanted
    about[at] =
      (wall > 0 ? bits.wall : 0) | (obstacle > 0 ? bits.obstacle : 0) | (wanted > 0 ? bits.wanted : 0)
  }
  return { many, about }
}

function countedBy(tally: Uint32Array): Counted {
  const having = (bit: number) =>
    tally.reduce((sum, count, about) => ((about & bit) === 0 ? sum : sum + count), 0)
  return {
    heat: having(bits.heat),
    wall: having(bits.wall),
    obstacle: having(bits.obstacle),
    wanted: having(bits.wanted),
    price: having(bits.price),
    listing: having(bits.listing),
  }
}

/** For each kind of rating, how far above the room the emitter runs beside how far it was rated; 0 for a rating that cannot be. */
function excessRatios({ ratings }: Pick<EmitterStock, 'ratings'>, at: Temperatures): Float64Array {
  const excessK = meanExcessK(at, 'logarithmic')
  return Float64Array.from(ratings, (rating) => {
    const rated = ratingExcess(rating, 'logarithmic')
    return rated.ok ? excessK / rated.value.excessK : 0
  })
}
