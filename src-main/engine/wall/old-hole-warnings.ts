import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import type { ExistingEmitter } from '../../domain/wall.ts'
import { measuredOldHoles } from '../../domain/wall.ts'
import type { BracketHole } from './bracket-holes.ts'
import { listInWords, mmInWords } from './in-words.ts'

/** The hole of an old fixing: its middle on the wall and its bore, mm. */
export type OldHole = { readonly xMm: number; readonly yMm: number; readonly diameterMm: number }

/**
 * The old holes of an emitter that comes off, where they were measured.
 * @param existing the emitter on the wall now
 * @source geometry
 * @example oldHolesOnWall({ oldHoles: { count: 1, diameterMm: 8, depthMm: 50, at: [{ xMm: 400, yMm: 700 }] } })[0].xMm // => 400
 */
export function oldHolesOnWall(existing: ExistingEmitter | undefined): readonly OldHole[] {
  const diameterMm = existing?.oldHoles?.diameterMm ?? 0
  return measuredOldHoles(existing).map(({ xMm, yMm }) => ({ xMm, yMm, diameterMm }))
}

type NewHole = BracketHole & { readonly drillMm: number }

/**
 * New holes that run into an old one, or leave so little wall beside it that it may break out.
 * The wall between two holes, mm = distance of their middles - (drill + old bore) / 2.
 *
 * @param holes to drill, mm, each with its bit
 * @param old measured holes of old fixings, mm
 * @param figures the firm's figures: wall.clearOldHoleMm
 * @source practice, no published source
 * @example oldHoleWarnings([{ id: 'A1', xMm: 400, yMm: 700, drillMm: 8 }], [{ xMm: 400, yMm: 708, diameterMm: 8 }], { settings: { 'wall.clearOldHoleMm': { value: 20 } } }).length // => 1
 */
export function oldHoleWarnings(
  holes: readonly NewHole[],
  old: readonly OldHole[],
  figures: Figures,
): readonly string[] {
  if (old.length === 0) return []
  const leastMm = figure(figures, 'wall.clearOldHoleMm')
  const between = holes.map((hole) => ({ hole, mm: wallBetweenMm(hole, old) }))
  const into = between.filter(({ mm }) => mm < 0).map(({ hole }) => hole)
  const near = between.filter(({ mm }) => mm >= 0 && mm < leastMm).map(({ hole }) => hole)
  return [
    ...(into.length === 0
      ? []
      : [
          `${named(into, 'runs', 'run')} into an old hole, where a plug may not hold: move the emitter a little.`,
        ]),
    ...(near.length === 0
      ? []
      : [
          `${named(near, 'leaves', 'leave')} less than ${mmInWords(leastMm)} of wall beside an old hole, which may break out: move the emitter a little.`,
        ]),
  ]
}

/** What is left of the wall between a new hole and the nearest old one; below 0 where they run into each other. */
function wallBetweenMm({ xMm, yMm, drillMm }: NewHole, old: readonly OldHole[]): number {
  return Math.min(
    ...old.map((one) => Math.hypot(one.xMm - xMm, one.yMm - yMm) - (drillMm + one.diameterMm) / 2),
  )
}

function named(holes: readonly NewHole[], one: string, more: string): string {
  const ids = listInWords(holes.map(({ id }) => id))
  return holes.length === 1 ? `Hole ${ids} ${one}` : `Holes ${ids} ${more}`
}
