import { named } from '../../../../src-main/engine/takeoff/rule.ts'
import { liftSettings } from '../../../../src-main/engine/labour/crew-lift.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'

/** The delivered lift settings, with some of them changed. */
export function liftUse(changes: Readonly<Record<string, number>> = {}) {
  const figures = defaultFigures('2026-11-25')
  const settings = Object.fromEntries(
    Object.entries(figures.settings).map(([id, one]) => [id, { ...one, value: changes[id] ?? one.value }]),
  )
  return named({ ...figures, settings }, liftSettings)
}
