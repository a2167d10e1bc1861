import type { Emitter } from '../../domain/item.ts'
import type { Rating } from '../../domain/room-heat.ts'

/** Which sides have a valve: 1 left, 2 right, 3 both. */
export const leftValve = 1
export const rightValve = 2

/** What a search over many emitters reads of each, laid out column by column so that one loop runs through them. */
export type EmitterColumns = {
  readonly emitters: readonly Emitter[]
  readonly ratedW: Float64Array
  readonly exponent: Float64Array
  /** Each emitter's place in `ratings`. */
  readonly ratingAt: Uint16Array
  /** The test temperatures that occur; undefined stands for today's. */
  readonly ratings: readonly (Rating | undefined)[]
  readonly widthMm: Float64Array
  readonly heightMm: Float64Array
  readonly pipeCentresMm: Float64Array
  readonly valveSides: Uint8Array
  /** Holes that its brackets ask for. */
  readonly holes: Uint16Array
}

/**
 * The emitters that are still sold, laid out in columns.
 * @param all emitters of a catalogue; retired ones are left out
 * @source practice, no published source
 * @example emitterColumns([{ retired: true }]).emitters.length // => 0
 */
export function emitterColumns(all: readonly Emitter[]): EmitterColumns {
  const emitters = all.filter((emitter) => emitter.retired !== true)
  const places = new Map<string, number>()
  const ratings: (Rating | undefined)[] = [undefined]
  const columns = emptyColumns(emitters.length)
  for (let at = 0; at < emitters.length; at += 1) {
    const emitter = emitters[at]
    if (emitter === undefined) continue
    columns.ratedW[at] = emitter.ratedW
    columns.exponent[at] = emitter.exponent
    columns.widthMm[at] = emitter.widthMm
    columns.heightMm[at] = emitter.heightMm
    columns.pipeCentresMm[at] = emitter.pipeCentresMm
    columns.valveSides[at] = valveSidesOf(emitter)
    columns.ratingAt[at] = placeOf(emitter.rating, ratings, places)
    for (const bracket of emitter.brackets)
      columns.holes[at] = (columns.holes[at] ?? 0) + bracket.holes.length
  }
  return { emitters, ratings, ...columns }
}

function emptyColumns(length: number) {
  return {
    ratedW: new Float64Array(length),
    exponent: new Float64Array(length),
    ratingAt: new Uint16Array(length),
    widthMm: new Float64Array(length),
    heightMm: new Float64Array(length),
    pipeCentresMm: new Float64Array(length),
    valveSides: new Uint8Array(length),
    holes: new Uint16Array(length),
  }
}

function placeOf(
  rating: Rating | undefined,
  ratings: (Rating | undefined)[],
  places: Map<string, number>,
): number {
  if (rating === undefined) return 0
  const written = `${rating.flowC}/${rating.returnC}/${rating.roomC}`
  const known = places.get(written)
  if (known !== undefined) return known
  const place = ratings.push(rating) - 1
  places.set(written, place)
  return place
}

/** As the wall's rules see it: nobody listed the tappings, a valve on each side; a bottom middle pair serves both. */
function valveSidesOf({ tappings }: Emitter): number {
  let sides = 0
  let valves = 0
  for (const { at, holds } of tappings) {
    if (holds !== 'valve') continue
    valves += 1
    if (at === 'bottomLeft' || at === 'topLeft') sides |= leftValve
    else if (at === 'bottomRight' || at === 'topRight') sides |= rightValve
    else sides |= leftValve | rightValve
  }
  return valves === 0 ? leftValve | rightValve : sides
}
