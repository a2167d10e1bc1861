import { because, given } from '../../domain/derivation.ts'
import type { Derivation } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { EmitterShape } from '../../domain/item.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { SetOutHole } from '../../domain/set-out.ts'
import { farthestMm } from './place-emitter.ts'

/** A hole before its drill is known. */
export type BracketHole = Omit<SetOutHole, 'drillMm' | 'depthMm'>

/** How the holes of a set of brackets share the load. */
export type Bearing = {
  readonly upper: number
  readonly all: number
  readonly rise: Derivation
  readonly riseMm: number
}

/**
 * The bracket holes on the wall: x = centre + across, y = bottom edge + up. Brackets are lettered in their order, their holes
 * numbered: A1, A2, B1. A hole counts as upper when its bracket does; where every bracket is an upper one, those above the middle of
 * their own bracket, or all of a bracket whose holes are level.
 * Refuses an emitter without bracket holes, and holes more than 20 m off.
 *
 * @param emitter its brackets, holes in mm from the centre line and the bottom edge
 * @param place centre line and bottom edge, mm
 * @source practice, no published source
 * @example bracketHoles({ brackets: [{ name: 'Top', upper: true, holes: [{ acrossMm: -240, upMm: 95 }] }] }, { centreMm: 900, bottomMm: 300 }).value[0].xMm // => 660
 */
export function bracketHoles(
  emitter: Pick<EmitterShape, 'brackets'>,
  { centreMm, bottomMm }: { readonly centreMm: number; readonly bottomMm: number },
): Outcome<readonly BracketHole[]> {
  const allUpper = emitter.brackets.every((bracket) => bracket.upper)
  const holes = emitter.brackets.flatMap((bracket, index) => {
    const heights = bracket.holes.map((hole) => hole.upMm)
    const middle = (Math.max(...heights) + Math.min(...heights)) / 2
    return bracket.holes.map((hole, nth): BracketHole => ({
      id: `${String.fromCharCode(65 + index)}${nth + 1}`,
      bracket: bracket.name,
      upper: bracket.upper && (!allUpper || hole.upMm >= middle),
      xMm: centreMm + hole.acrossMm,
      yMm: bottomMm + hole.upMm,
      fromCentreMm: hole.acrossMm,
    }))
  })
  if (holes.some((hole) => Math.abs(hole.xMm) > farthestMm || Math.abs(hole.yMm) > farthestMm)) {
    return refuse(
      'impossible',
      'A bracket hole would lie more than 20 m off; give holes that are on the emitter.',
      'emitter.brackets',
    )
  }
  if (holes.length > 0) return accept(holes)
  return refuse(
    'invalid',
    'The emitter has no bracket holes to set out; give its brackets with their holes.',
    'emitter.brackets',
  )
}

/**
 * How the holes share the load: how many there are, how many are upper, and the rise h = mean height of the upper ones - mean height
 * of the others. Level holes turn about the bracket's foot instead, so h is never below the foot's distance.
 *
 * @param holes at least one
 * @param figures the firm's figures: wall.bracketFootMm
 * @source practice, no published source
 * @example bearingOf([{ upper: true, yMm: 1405 }, { upper: false, yMm: 395 }], { settings: { 'wall.bracketFootMm': { value: 40 } } }).riseMm // => 1010
 */
export function bearingOf(holes: readonly BracketHole[], figures: Figures): Bearing {
  const upper = holes.filter((hole) => hole.upper)
  const lower = holes.filter((hole) => !hole.upper)
  const foot = figure(figures, 'wall.bracketFootMm')
  if (upper.length === 0 || lower.length === 0) {
    return {
      upper: holes.length,
      all: holes.length,
      rise: figureWhy(figures, 'wall.bracketFootMm'),
      riseMm: foot,
    }
  }
  const upperMm = meanHeight(upper)
  const lowerMm = meanHeight(lower)
  const riseMm = Math.max(foot, upperMm - lowerMm)
  const rise = because('Rise from the lower to the upper fixings.', riseMm, {
    unit: 'mm',
    from: [
      given('Mean height of the upper holes', upperMm, 'mm'),
      given('Mean height of the lower holes', lowerMm, 'mm'),
      figureWhy(figures, 'wall.bracketFootMm'),
    ],
  })
  return { upper: upper.length, all: holes.length, rise, riseMm }
}

function meanHeight(holes: readonly BracketHole[]): number {
  return holes.reduce((sum, hole) => sum + hole.yMm, 0) / holes.length
}
