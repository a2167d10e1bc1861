import { because } from '../../domain/derivation.ts'
import type { Figures } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Fit } from '../../domain/set-out.ts'
import { clearances, isClash } from './clashes.ts'
import type { Clash, Clearance } from './clashes.ts'
import { placeEmitter } from './place-emitter.ts'
import type { Placed } from './place-emitter.ts'
import type { PlaceInput } from './wall-input.ts'

/**
 * Whether an emitter with its valves fits a wall, and what it hits: it fits when no clearance is smaller than what is asked.
 * Refuses what placing it refuses.
 *
 * @param input wall, emitter, valve space, centre choice, bottom edge above finished floor (mm) and pipes
 * @param figures the firm's figures: wall.clear…Mm and those that place it
 * @source practice, no published source
 * @example fitWall({ bottomMm: NaN }, { settings: {}, tasks: {}, fixings: [] }).problems[0].path // => "bottomMm"
 */
export function fitWall(input: PlaceInput, figures: Figures): Outcome<Fit> {
  const placed = placeEmitter(input, figures)
  return placed.ok ? accept(fitOfPlaced(input, placed.value, figures)) : placed
}

/**
 * The fit of an emitter that was already placed.
 * @param input as for `fitWall`
 * @param placed where it goes
 * @param figures the firm's figures
 * @source practice, no published source
 * @example fitOfPlaced({ wall: { widthMm: 900, heightMm: 2400 }, emitter: { heightMm: 600 }, bottomMm: 150 }, { envelope: { leftMm: 20, rightMm: 700, topMm: 750 }, dropMm: 20, whys: {} }, { settings: { 'wall.clearFloorMm': { value: 100 }, 'wall.clearCeilingMm': { value: 100 }, 'wall.clearSideMm': { value: 50 } } }).clashes[0].haveMm // => 20
 */
export function fitOfPlaced(input: PlaceInput, placed: Placed, figures: Figures): Fit {
  const looked = clearances(input, placed, figures)
  const clashes = looked.filter(isClash).map(clashOf)
  const fits = clashes.length === 0
  const from = [placed.whys.centre, placed.whys.envelope, placed.whys.front, ...looked.map(({ why }) => why)]
  const says = fits ? 'It fits: every clearance is kept.' : `It does not fit: ${clashes[0]?.says ?? ''}`
  return {
    fits,
    clashes,
    envelope: placed.envelope,
    why: because(says, fits ? 'fits' : 'does not fit', { from }),
  }
}

function clashOf({ with: what, needMm, haveMm, says }: Clearance): Clash {
  return { with: what, needMm, haveMm, says }
}
