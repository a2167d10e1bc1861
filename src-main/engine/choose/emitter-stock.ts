import type { Emitter } from '../../domain/item.ts'
import type { Rating } from '../../domain/room-heat.ts'
import type { Shelf } from '../takeoff/shelf.ts'
import { formOnWall } from '../wall/emitter-on-wall.ts'
import { leastPackPence } from './least-cost.ts'
import { makeUpOf } from './make-up.ts'
import type { OnWall } from './wall-limits.ts'
import { valveSidesOf } from './wall-limits.ts'

/** What can be asked of an emitter's looks. */
export type Style = { readonly kind: Emitter['form']['kind']; readonly finish: Emitter['finish'] }

/**
 * What a search over many emitters reads of each, laid out column by column so that one loop runs through them. What many have
 * alike (rating, shape, style, make-up, place of the connections) stands once in a list, and each emitter has its place in it.
 */
export type EmitterStock = {
  readonly emitters: readonly Emitter[]
  readonly ratedW: Float64Array
  readonly exponent: Float64Array
  readonly dryKg: Float64Array
  /** The least that a pack costs the firm, pence; less than 0 where nobody asks a price. */
  readonly packPence: Float64Array
  /** 1 where bracket holes are listed. */
  readonly hasHoles: Uint8Array
  readonly ratingAt: Uint32Array
  /** The test temperatures that occur; undefined stands for today's. */
  readonly ratings: readonly (Rating | undefined)[]
  readonly shapeAt: Uint32Array
  readonly shapes: readonly OnWall[]
  readonly styleAt: Uint32Array
  readonly styles: readonly Style[]
  readonly makeUpAt: Uint32Array
  readonly makeUps: readonly string[]
  readonly reachAt: Uint32Array
  /** One emitter for each place that connections have. */
  readonly reaches: readonly Emitter[]
}

/**
 * The emitters that are still sold, laid out in columns with the least that each costs. Prices that change want it laid out anew.
 * @param shelf emitters, of which retired ones are left out, and the prices in force
 * @source practice, no published source
 * @example emitterStock({ emitters: new Map([['a', { retired: true }]]), prices: new Map() }).emitters.length // => 0
 */
export function emitterStock(shelf: Pick<Shelf, 'emitters' | 'prices'>): EmitterStock {
  const emitters = [...shelf.emitters.values()].filter((emitter) => emitter.retired !== true)
  const numbers = (of: (emitter: Emitter) => number) => Float64Array.from(emitters, of)
  const ratings = listed(emitters, ({ rating }) => [nameOfRating(rating), rating] as const)
  const shapes = listed(emitters, (emitter) => {
    const { widthMm, heightMm, pipeCentresMm } = emitter
    const valveSides = valveSidesOf(emitter)
    const frontMm = emitter.wallGapMm + emitter.depthMm
    const { curved } = formOnWall(emitter)
    const shape = { widthMm, heightMm, pipeCentresMm, valveSides, frontMm, curved }
    return [`${widthMm} ${heightMm} ${pipeCentresMm} ${valveSides} ${frontMm} ${curved}`, shape] as const
  })
  const styles = listed(emitters, ({ form: { kind }, finish }) => [`${kind} ${finish}`, { kind, finish }])
  const makeUps = listed(emitters, (emitter) => {
    const name = makeUpOf(emitter)
    return [name, name]
  })
  const reaches = listed(emitters, (emitter) => [reachOf(emitter), emitter])
  return {
    emitters,
    ratedW: numbers(({ ratedW }) => ratedW),
    exponent: numbers(({ exponent }) => exponent),
    dryKg: numbers(({ dryKg }) => dryKg),
    packPence: numbers(({ itemId }) => leastPackPence(shelf.prices.get(itemId) ?? []) ?? -1),
    hasHoles: Uint8Array.from(emitters, ({ brackets }) => (brackets.some(hasHole) ? 1 : 0)),
    ratingAt: ratings.places,
    ratings: ratings.list,
    shapeAt: shapes.places,
    shapes: shapes.list,
    styleAt: styles.places,
    styles: styles.list,
    makeUpAt: makeUps.places,
    makeUps: makeUps.list,
    reachAt: reaches.places,
    reaches: reaches.list,
  }
}

const hasHole = ({ holes }: Emitter['brackets'][number]) => holes.length > 0

function nameOfRating(rating: Rating | undefined): string {
  return rating === undefined ? '' : `${rating.flowC}/${rating.returnC}/${rating.roomC}`
}

/** Where the connections are: what decides how a pipe is brought to them. */
function reachOf({ pipeCentresMm, connectionOffWallMm, widthMm }: Emitter): string {
  return `${pipeCentresMm} ${connectionOffWallMm} ${pipeCentresMm <= widthMm}`
}

type Listed<T> = { readonly places: Uint32Array; readonly list: readonly T[] }

function listed<T>(emitters: readonly Emitter[], of: (emitter: Emitter) => readonly [string, T]): Listed<T> {
  const known = new Map<string, number>()
  const list: T[] = []
  const places = Uint32Array.from(emitters, (emitter) => {
    const [name, value] = of(emitter)
    const place = known.get(name) ?? list.push(value) - 1
    known.set(name, place)
    return place
  })
  return { places, list }
}
