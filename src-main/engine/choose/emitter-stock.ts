import type { Emitter } from '../../domain/item.ts'
import type { Rating } from '../../domain/room-heat.ts'
import type { Shelf } from '../takeoff/shelf.ts'
import { formOnWall } from '../wall/emitter-on-wall.ts'
import { leastPackPence } from './least-cost.ts'
import { builtInWords, makeUpOf } from './make-up.ts'
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
  const builtOf = builtOnce()
  const built = emitters.map(builtOf)
  const sidesAt = (at: number) => built[at]?.valveSides ?? 0
  const ratings = listed(emitters, {
    name: ({ rating }) => nameOfRating(rating),
    value: ({ rating }) => rating,
  })
  const shapes = listed(emitters, {
    name: (emitter, at) => nameOfShape(shapeOf(emitter, sidesAt(at))),
    value: (emitter, at) => shapeOf(emitter, sidesAt(at)),
  })
  const styles = listed(emitters, {
    name: ({ form, finish }) => `${form.kind} ${finish}`,
    value: ({ form: { kind }, finish }) => ({ kind, finish }),
  })
  const makeUps = listed(emitters, {
    name: ({ form, finish }, at) => `${form.kind} ${finish} ${built[at]?.number}`,
    value: makeUpOf,
  })
  const reaches = listed(emitters, { name: reachOf, value: (emitter) => emitter })
  return {
    emitters,
    ratedW: numbers(({ ratedW }) => ratedW),
    exponent: numbers(({ exponent }) => exponent),
    dryKg: numbers(({ dryKg }) => dryKg),
    packPence: numbers(({ itemId }) => leastPackPence(shelf.prices.get(itemId) ?? []) ?? -1),
    hasHoles: Uint8Array.from(built, ({ hasHoles }) => (hasHoles ? 1 : 0)),
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

/** What many emitters have alike, to the letter: it is worked out once for each list of brackets that they share. */
type Built = Pick<Emitter, 'brackets' | 'tappings' | 'box'> & {
  /** The same for those that are alike. */
  readonly number: number
  readonly valveSides: number
  readonly hasHoles: boolean
}

function builtOnce(): (emitter: Emitter) => Built {
  const known = new Map<Emitter['brackets'], Built>()
  const numbers = new Map<string, number>()
  return (emitter) => {
    const { brackets, tappings, box } = emitter
    const before = known.get(brackets)
    if (before !== undefined && before.tappings === tappings && before.box === box) return before
    const words = builtInWords(emitter)
    const number = numbers.get(words) ?? numbers.size
    numbers.set(words, number)
    const valveSides = valveSidesOf(emitter)
    const built = { brackets, tappings, box, number, valveSides, hasHoles: brackets.some(hasHole) }
    known.set(brackets, built)
    return built
  }
}

const hasHole = ({ holes }: Emitter['brackets'][number]) => holes.length > 0

function shapeOf(emitter: Emitter, valveSides: number): OnWall {
  const { widthMm, heightMm, pipeCentresMm } = emitter
  const frontMm = emitter.wallGapMm + emitter.depthMm
  const { curved } = formOnWall(emitter)
  return { widthMm, heightMm, pipeCentresMm, valveSides, frontMm, curved }
}

function nameOfShape({ widthMm, heightMm, pipeCentresMm, valveSides, frontMm, curved }: OnWall): string {
  return `${widthMm} ${heightMm} ${pipeCentresMm} ${valveSides} ${frontMm} ${curved}`
}

function nameOfRating(rating: Rating | undefined): string {
  return rating === undefined ? '' : `${rating.flowC}/${rating.returnC}/${rating.roomC}`
}

/** Where the connections are: what decides how a pipe is brought to them. */
function reachOf({ pipeCentresMm, connectionOffWallMm, widthMm }: Emitter): string {
  return `${pipeCentresMm} ${connectionOffWallMm} ${pipeCentresMm <= widthMm}`
}

type Listed<T> = { readonly places: Uint32Array; readonly list: readonly T[] }
type Of<T> = {
  /** Emitters of one name have one value. */
  readonly name: (emitter: Emitter, at: number) => string
  readonly value: (emitter: Emitter, at: number) => T
}

function listed<T>(emitters: readonly Emitter[], { name, value }: Of<T>): Listed<T> {
  const known = new Map<string, number>()
  const list: T[] = []
  const places = Uint32Array.from(emitters, (emitter, at) => {
    const named = name(emitter, at)
    const place = known.get(named)
    if (place !== undefined) return place
    known.set(named, list.length)
    return list.push(value(emitter, at)) - 1
  })
  return { places, list }
}
