import { because, given } from '../../domain/derivation.ts'
import { measuredOldHoles, oldHoleCount } from '../../domain/wall.ts'
import type { ExistingEmitter } from '../../domain/wall.ts'
import type { SwapAsk } from './asks.ts'

/**
 * The holes of the old fixings as rules are asked about them: those measured one by one where there are any, each with its place; otherwise as
 * many as were counted. Null where the survey has none.
 *
 * @param existing the emitter on the wall now, places in mm from the wall's left end and finished floor
 * @source arithmetic
 * @example oldHolesAsk({ oldHoles: { count: 4, diameterMm: 8, depthMm: 50, at: [{ xMm: 400, yMm: 700, count: 2 }] } }).oldHoles.count // => 2
 */
export function oldHolesAsk(
  existing: ExistingEmitter | undefined,
): Pick<SwapAsk, 'oldHoles' | 'oldHolesWhy'> {
  if (existing?.oldHoles === undefined) return { oldHoles: null }
  const { diameterMm, depthMm } = existing.oldHoles
  const oldHoles = { count: oldHoleCount(existing), diameterMm, depthMm }
  const places = measuredOldHoles(existing)
  if (places.length === 0) return { oldHoles }
  const each = places.map(({ xMm, yMm, count = 1 }) =>
    given(`Old holes ${xMm} mm from the left and ${yMm} mm above the floor`, count, undefined, 'survey'),
  )
  const oldHolesWhy = because('Old holes, measured one by one', oldHoles.count, { from: each })
  return { oldHoles, oldHolesWhy }
}
