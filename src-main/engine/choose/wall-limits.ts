import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { CentreChoice, ObstacleKind, Pipe, Wall } from '../../domain/wall.ts'
import { centreLine } from '../wall/centre-line.ts'
import { clearOf, shows } from '../wall/clashes.ts'
import { leftValve, rightValve } from './emitter-columns.ts'

/** A wall as bare numbers, for trying many emitters on it: the same rules as `fitWall`, without its reasons. */
export type WallLimits = {
  /** Centre line = centreMm + centrePerPipeCentres x the emitter's pipe centres. */
  readonly centreMm: number
  readonly centrePerPipeCentres: number
  readonly bottomMm: number
  readonly widthMm: number
  readonly heightMm: number
  readonly skirtingMm: number
  readonly needSideMm: number
  readonly needFloorMm: number
  readonly needSkirtingMm: number
  readonly needCeilingMm: number
  readonly valveSideMm: number
  readonly valveBodyHalfMm: number
  readonly dropUnderMm: number
  readonly dropBesideMm: number
  readonly obstacles: readonly ObstacleLimit[]
}
export type ObstacleLimit = {
  readonly name: string
  readonly kind: ObstacleKind
  readonly leftMm: number
  readonly rightMm: number
  readonly lowMm: number
  readonly highMm: number
  readonly needMm: number
}

/** What the wall minds of an emitter. */
export type OnWall = {
  readonly widthMm: number
  readonly heightMm: number
  readonly pipeCentresMm: number
  /** 1 left, 2 right, 3 both. */
  readonly valveSides: number
}

export type Spot = {
  readonly wall: Wall
  readonly centre: CentreChoice
  readonly bottomMm: number
  readonly pipes: readonly Pipe[]
}

/**
 * A wall's limits as bare numbers.
 * Refuses a centre that the pipes do not give.
 * @param spot the wall, the centre choice, the bottom edge above finished floor (mm) and the pipes
 * @param figures the firm's figures: wall.clear…Mm, wall.valve…Mm
 * @source practice, no published source; as `fitWall`
 * @example wallLimits({ wall: {}, centre: { kind: 'betweenPipes' }, bottomMm: 150, pipes: [] }, { settings: {} }).ok // => false
 */
export function wallLimits({ wall, centre, bottomMm, pipes }: Spot, figures: Figures): Outcome<WallLimits> {
  const line = centreLine({ centre, pipes, pipeCentresMm: 0, wallWidthMm: wall.widthMm })
  if (!line.ok) return line
  const mm = (id: string) => figure(figures, id)
  return accept({
    centreMm: line.value.centreMm,
    centrePerPipeCentres: centre.kind === 'fromPipe' ? (centre.side === 'left' ? 0.5 : -0.5) : 0,
    bottomMm,
    widthMm: wall.widthMm,
    heightMm: wall.heightMm,
    skirtingMm: wall.skirtingHeightMm ?? 0,
    needSideMm: mm('wall.clearSideMm'),
    needFloorMm: mm('wall.clearFloorMm'),
    needSkirtingMm: mm('wall.clearSkirtingMm'),
    needCeilingMm: mm('wall.clearCeilingMm'),
    valveSideMm: mm('wall.valveSideMm'),
    valveBodyHalfMm: mm('wall.valveBodyHalfMm'),
    dropUnderMm: mm('wall.valveDropUnderMm'),
    dropBesideMm: mm('wall.valveDropBesideMm'),
    obstacles: (wall.obstacles ?? []).filter(shows).map((obstacle) => ({
      name: obstacle.name,
      kind: obstacle.kind,
      leftMm: obstacle.xMm,
      rightMm: obstacle.xMm + obstacle.widthMm,
      lowMm: obstacle.yMm,
      highMm: obstacle.yMm + obstacle.heightMm,
      needMm: clearOf(obstacle, figures).value,
    })),
  })
}

/**
 * How far down the pipe entry lies from the bottom edge, mm: more where the valves hang under the emitter.
 * @param limits the wall's limits
 * @param one the emitter's sizes, mm
 * @source practice, no published source; as `placeEmitter`
 * @example dropMm({ dropUnderMm: 60, dropBesideMm: 20 }, { widthMm: 600, pipeCentresMm: 550 }) // => 60
 */
export function dropMm(
  limits: Pick<WallLimits, 'dropUnderMm' | 'dropBesideMm'>,
  one: Pick<OnWall, 'widthMm' | 'pipeCentresMm'>,
): number {
  return one.pipeCentresMm <= one.widthMm ? limits.dropUnderMm : limits.dropBesideMm
}

/**
 * The left end of an emitter with its valve, mm from the wall's left end: centre - width/2 - room for the valve.
 * @param limits the wall's limits
 * @param one the emitter's sizes, mm
 * @source practice, no published source; as `placeEmitter`
 * @example leftEndMm({ centreMm: 900, centrePerPipeCentres: 0, valveBodyHalfMm: 20, valveSideMm: 60 }, { widthMm: 600, pipeCentresMm: 550, valveSides: 3 }) // => 600
 */
export function leftEndMm(
  limits: Pick<WallLimits, 'centreMm' | 'centrePerPipeCentres' | 'valveBodyHalfMm' | 'valveSideMm'>,
  one: Omit<OnWall, 'heightMm'>,
): number {
  const centre = limits.centreMm + limits.centrePerPipeCentres * one.pipeCentresMm
  return centre - one.widthMm / 2 - besideMm(limits, one, leftValve)
}

/**
 * The right end of an emitter with its valve, mm from the wall's left end: centre + width/2 + room for the valve.
 * @param limits the wall's limits
 * @param one the emitter's sizes, mm
 * @source practice, no published source; as `placeEmitter`
 * @example rightEndMm({ centreMm: 900, centrePerPipeCentres: 0, valveBodyHalfMm: 20, valveSideMm: 60 }, { widthMm: 600, pipeCentresMm: 650, valveSides: 3 }) // => 1260
 */
export function rightEndMm(
  limits: Pick<WallLimits, 'centreMm' | 'centrePerPipeCentres' | 'valveBodyHalfMm' | 'valveSideMm'>,
  one: Omit<OnWall, 'heightMm'>,
): number {
  const centre = limits.centreMm + limits.centrePerPipeCentres * one.pipeCentresMm
  return centre + one.widthMm / 2 + besideMm(limits, one, rightValve)
}

function besideMm(
  limits: Pick<WallLimits, 'valveBodyHalfMm' | 'valveSideMm'>,
  { widthMm, pipeCentresMm, valveSides }: Omit<OnWall, 'heightMm'>,
  side: number,
): number {
  if ((valveSides & side) === 0) return 0
  const beyond = pipeCentresMm / 2 + limits.valveBodyHalfMm - widthMm / 2
  return Math.max(pipeCentresMm <= widthMm ? 0 : limits.valveSideMm, beyond)
}

/**
 * The gap between an emitter and an obstacle, mm: the larger of the gaps across and up; negative where they overlap.
 * @param limits the wall's limits
 * @param one the emitter's sizes, mm
 * @param obstacle where it stands
 * @source practice, no published source; as `clearances`
 * @example gapToMm({ centreMm: 900, centrePerPipeCentres: 0, valveBodyHalfMm: 20, valveSideMm: 60, bottomMm: 150, dropUnderMm: 60 }, { widthMm: 600, heightMm: 600, pipeCentresMm: 550, valveSides: 3 }, { leftMm: 0, rightMm: 1800, lowMm: 720, highMm: 760 }) // => -30
 */
export function gapToMm(limits: WallLimits, one: OnWall, obstacle: ObstacleLimit): number {
  const across = Math.max(
    obstacle.leftMm - rightEndMm(limits, one),
    leftEndMm(limits, one) - obstacle.rightMm,
  )
  const top = limits.bottomMm + one.heightMm
  const bottom = limits.bottomMm - dropMm(limits, one)
  return Math.max(across, Math.max(obstacle.lowMm - top, bottom - obstacle.highMm))
}

/**
 * Whether an emitter keeps every clearance of a wall: the answer of `fitWall`, without its reasons.
 * @param limits the wall's limits
 * @param one the emitter's sizes, mm
 * @source practice, no published source; as `fitWall`
 * @example keepsClear({ centreMm: 400, centrePerPipeCentres: 0, valveBodyHalfMm: 20, valveSideMm: 60, bottomMm: 150, widthMm: 800, heightMm: 2400, skirtingMm: 0, needSideMm: 120, needFloorMm: 100, needCeilingMm: 100, dropUnderMm: 60, dropBesideMm: 20, obstacles: [] }, { widthMm: 600, heightMm: 600, pipeCentresMm: 550, valveSides: 3 }) // => false
 */
export function keepsClear(limits: WallLimits, one: OnWall): boolean {
  if (limits.bottomMm < Math.max(limits.needFloorMm, dropMm(limits, one))) return false
  if (limits.skirtingMm !== 0 && limits.bottomMm - limits.skirtingMm < limits.needSkirtingMm) return false
  if (limits.heightMm - (limits.bottomMm + one.heightMm) < limits.needCeilingMm) return false
  if (leftEndMm(limits, one) < limits.needSideMm) return false
  if (limits.widthMm - rightEndMm(limits, one) < limits.needSideMm) return false
  for (const obstacle of limits.obstacles) {
    if (gapToMm(limits, one, obstacle) < obstacle.needMm) return false
  }
  return true
}
