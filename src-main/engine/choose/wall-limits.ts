import { figure } from '../../domain/figures.ts'
import type { Figures } from '../../domain/figures.ts'
import { accept } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import type { Emitter } from '../../domain/item.ts'
import type { CentreChoice, ObstacleKind, Pipe, Wall } from '../../domain/wall.ts'
import { centreLine } from '../wall/centre-line.ts'
import { clearOf, shows } from '../wall/clashes.ts'
import { roomOfLeaf, standsOnWall, sweepOf } from '../wall/doors/door-swing.ts'
import type { TurningLeaf } from '../wall/doors/door-swing.ts'

const leftValve = 1
const rightValve = 2

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
  /** Leaves of doors that turn into the room; absent for none. */
  readonly leaves?: readonly LeafLimit[]
  /** How much further a curved emitter stands out; absent: by nothing. */
  readonly curvedExtraMm?: number
}
export type LeafLimit = TurningLeaf & { readonly name: string; readonly needMm: number }
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
  /** How far it stands out from the wall, without what a curve adds; absent: flat on it. */
  readonly frontMm?: number
  readonly curved?: boolean
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
    leaves: leavesOf(wall, figures),
    curvedExtraMm: mm('wall.curvedExtraMm'),
    obstacles: (wall.obstacles ?? [])
      .filter((one) => shows(one) && standsOnWall(one))
      .map((obstacle) => ({
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

function leavesOf({ obstacles = [], widthMm }: Wall, figures: Figures): readonly LeafLimit[] {
  return obstacles.filter(shows).flatMap((door) => {
    const sweep = sweepOf(door, widthMm)
    if (sweep === null) return []
    const needMm = door.clearanceMm ?? figure(figures, 'wall.clearDoorSwingMm')
    return [{ name: door.name, yMm: door.yMm, heightMm: door.heightMm, sweep, needMm }]
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
 * The room between an emitter and all that the leaf of a door sweeps, mm; negative where the leaf meets it.
 * @param limits the wall's limits
 * @param one the emitter's sizes, mm
 * @param leaf how it turns, and its height
 * @source practice, no published source; as `swingClearances`
 * @example leafGapMm({ centreMm: 550, centrePerPipeCentres: 0, valveBodyHalfMm: 20, valveSideMm: 60, bottomMm: 150, dropUnderMm: 60 }, { widthMm: 500, heightMm: 600, pipeCentresMm: 450, valveSides: 3, frontMm: 400 }, { yMm: 0, heightMm: 2000, sweep: { hinge: { xMm: 0, outMm: 800 }, leafMm: 762, closedDeg: 270, turnDeg: 90 } }) // => -262
 */
export function leafGapMm(limits: WallLimits, one: OnWall, leaf: LeafLimit): number {
  const envelope = {
    leftMm: leftEndMm(limits, one),
    rightMm: rightEndMm(limits, one),
    bottomMm: limits.bottomMm - dropMm(limits, one),
    topMm: limits.bottomMm + one.heightMm,
    frontMm: (one.frontMm ?? 0) + (one.curved === true ? (limits.curvedExtraMm ?? 0) : 0),
  }
  return roomOfLeaf(leaf, envelope).haveMm
}

/** How many of a wall's rules an emitter breaks: of the wall itself, and of what stands on it. */
export type Faults = { readonly wall: number; readonly obstacles: number }

/**
 * How many of the wall's rules an emitter breaks: the answer of `fitWall`, counted, without its reasons.
 * @param limits the wall's limits
 * @param one the emitter's sizes, mm
 * @source practice, no published source; as `fitWall`
 * @example faultsOn({ centreMm: 400, centrePerPipeCentres: 0, valveBodyHalfMm: 20, valveSideMm: 60, bottomMm: 150, widthMm: 800, heightMm: 2400, skirtingMm: 0, needSideMm: 120, needFloorMm: 100, needCeilingMm: 100, dropUnderMm: 60, dropBesideMm: 20, obstacles: [] }, { widthMm: 600, heightMm: 600, pipeCentresMm: 550, valveSides: 3 }).wall // => 1
 */
export function faultsOn(limits: WallLimits, one: OnWall): Faults {
  let wall = endFaults(limits, one)
  if (limits.heightMm - (limits.bottomMm + one.heightMm) < limits.needCeilingMm) wall += 1
  if (limits.bottomMm < Math.max(limits.needFloorMm, dropMm(limits, one))) wall += 1
  if (limits.skirtingMm !== 0 && limits.bottomMm - limits.skirtingMm < limits.needSkirtingMm) wall += 1
  let obstacles = 0
  for (const obstacle of limits.obstacles) {
    if (gapToMm(limits, one, obstacle) < obstacle.needMm) obstacles += 1
  }
  for (const leaf of limits.leaves ?? []) {
    if (leafGapMm(limits, one, leaf) < leaf.needMm) obstacles += 1
  }
  return { wall, obstacles }
}

/** Too wide for the wall is one fault; else each end that comes too close is one. */
function endFaults(limits: WallLimits, one: OnWall): number {
  const left = leftEndMm(limits, one)
  const right = rightEndMm(limits, one)
  if (right - left + 2 * limits.needSideMm > limits.widthMm) return 1
  return (left < limits.needSideMm ? 1 : 0) + (limits.widthMm - right < limits.needSideMm ? 1 : 0)
}

/**
 * Which sides have a valve, as the wall's rules see it: 1 left, 2 right, 3 both. Nobody listed the tappings: a valve on each side; a
 * bottom middle pair serves both.
 * @param emitter its tappings
 * @source practice, no published source
 * @example valveSidesOf({ tappings: [{ at: 'bottomLeft', holds: 'valve' }] }) // => 1
 */
export function valveSidesOf({ tappings }: Pick<Emitter, 'tappings'>): number {
  let sides = 0
  for (const { at, holds } of tappings) {
    if (holds !== 'valve') continue
    if (at === 'bottomLeft' || at === 'topLeft') sides |= leftValve
    else if (at === 'bottomRight' || at === 'topRight') sides |= rightValve
    else sides |= leftValve | rightValve
  }
  return sides === 0 ? leftValve | rightValve : sides
}
