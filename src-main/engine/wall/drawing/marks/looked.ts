import type { Figures } from '../../../../domain/figures.ts'
import type { Obstacle } from '../../../../domain/wall.ts'
import { clearances, isClash, shows } from '../../clashes.ts'
import type { Clash, Clearance } from '../../clashes.ts'
import { standsOnWall, sweepOf } from '../../doors/door-swing.ts'
import type { Sweep } from '../../doors/leaf-sweep.ts'
import type { Placed } from '../../place-emitter.ts'
import type { PlaceInput } from '../../wall-input.ts'

/** A rectangle on the wall, mm from its left end and finished floor. */
export type Area = {
  readonly leftMm: number
  readonly rightMm: number
  readonly bottomMm: number
  readonly topMm: number
}

/** A clearance that was looked at, and where on the wall it is. */
export type Looked = Clash & {
  /** The obstacle that asks it; null where the room does. */
  readonly obstacleId: string | null
  readonly clashes: boolean
  /** Where the emitter may not come. */
  readonly asks: Area
  /** The part of it that the emitter takes; null where it takes none. */
  readonly taken: Area | null
}

/**
 * Every clearance of a placed emitter with the part of the wall that it asks, and what of that the emitter takes. Round an obstacle that
 * part is its rectangle grown by the clear space on all sides; of a leaf, what it passes along the wall, as high as its door.
 *
 * @param input wall and emitter
 * @param placed where the emitter goes
 * @param figures the firm's figures: wall.clear…Mm
 * @source plane geometry; practice, no published source
 * @example lookedAt({ wall: { widthMm: 900, heightMm: 2400 }, emitter: { widthMm: 500, heightMm: 600 }, bottomMm: 60 }, { centreMm: 450, envelope: { leftMm: 200, rightMm: 700, topMm: 660, bottomMm: 40 }, dropMm: 20, whys: {} }, { settings: { 'wall.clearFloorMm': { value: 100 }, 'wall.clearCeilingMm': { value: 100 }, 'wall.clearSideMm': { value: 50 } } })[0].taken // => { leftMm: 200, rightMm: 700, bottomMm: 60, topMm: 100 }
 */
export function lookedAt(input: PlaceInput, placed: Placed, figures: Figures): readonly Looked[] {
  const only = (obstacles: readonly Obstacle[]) =>
    clearances({ ...input, wall: { ...input.wall, obstacles } }, placed, figures)
  const room = only([])
  const ofRoom = room.map((one) => {
    const { asks, of } = roomArea(one, input, placed)
    return looked(one, null, { asks, taken: sharedArea(asks, of) })
  })
  const ofObstacles = (input.wall.obstacles ?? []).filter(shows).flatMap((obstacle) => {
    const areas = [
      ...(standsOnWall(obstacle) ? [grownArea(obstacle)] : []),
      ...leafArea(obstacle, input.wall.widthMm),
    ]
    return only([obstacle])
      .slice(room.length)
      .flatMap((one, nth) => {
        const asks = areas[nth]?.(one.needMm)
        if (asks === undefined) return []
        return [looked(one, obstacle.obstacleId, { asks, taken: sharedArea(asks, placed.envelope) })]
      })
  })
  return [...ofRoom, ...ofObstacles]
}

function looked(
  clearance: Clearance,
  obstacleId: string | null,
  { asks, taken }: Pick<Looked, 'asks' | 'taken'>,
): Looked {
  const { with: what, needMm, haveMm, says } = clearance
  const clashes = isClash(clearance)
  return { with: what, needMm, haveMm, says, obstacleId, clashes, asks, taken: clashes ? taken : null }
}

/** What floor, skirting, ceiling and the ends of the wall ask, and of which rectangle: emitter alone, or with its valves. */
function roomArea(
  { with: what, needMm }: Clearance,
  { wall, emitter, bottomMm }: PlaceInput,
  { centreMm, envelope }: Placed,
): { readonly asks: Area; readonly of: Area } {
  const half = emitter.widthMm / 2
  const own: Area = {
    leftMm: centreMm - half,
    rightMm: centreMm + half,
    bottomMm,
    topMm: envelope.topMm,
  }
  const skirtingMm = wall.skirtingHeightMm ?? 0
  switch (what) {
    case 'floor':
      return { asks: { ...own, bottomMm: 0, topMm: needMm }, of: own }
    case 'skirting':
      return { asks: { ...own, bottomMm: 0, topMm: skirtingMm + needMm }, of: own }
    case 'ceiling': {
      const topMm = Math.max(wall.heightMm, own.topMm)
      return { asks: { ...own, bottomMm: wall.heightMm - needMm, topMm }, of: own }
    }
    case 'left end of the wall':
      return { asks: { ...envelope, leftMm: Math.min(0, envelope.leftMm), rightMm: needMm }, of: envelope }
    default: {
      const rightMm = Math.max(wall.widthMm, envelope.rightMm)
      return { asks: { ...envelope, leftMm: wall.widthMm - needMm, rightMm }, of: envelope }
    }
  }
}

function grownArea({ xMm, yMm, widthMm, heightMm }: Obstacle): (byMm: number) => Area {
  return (byMm) => ({
    leftMm: xMm - byMm,
    rightMm: xMm + widthMm + byMm,
    bottomMm: yMm - byMm,
    topMm: yMm + heightMm + byMm,
  })
}

function leafArea(door: Obstacle, wallWidthMm: number): readonly ((byMm: number) => Area)[] {
  const sweep = sweepOf(door, wallWidthMm)
  if (sweep === null) return []
  const { fromMm, toMm } = alongWall(sweep)
  return [grownArea({ ...door, xMm: fromMm, widthMm: toMm - fromMm })]
}

/**
 * How far a leaf reaches along the wall as it turns, from its leftmost to its rightmost place, and how far out from the wall.
 * @param sweep hinge, leaf length (mm, above 0), closed direction and turn (degrees)
 * @source plane geometry
 * @example alongWall({ hinge: { xMm: 900, outMm: 0 }, leafMm: 762, closedDeg: 0, turnDeg: 90 }) // => { fromMm: 900, toMm: 1662, outMm: 762 }
 */
export function alongWall({ hinge, leafMm, closedDeg, turnDeg }: Sweep): {
  readonly fromMm: number
  readonly toMm: number
  readonly outMm: number
} {
  const low = Math.min(closedDeg, closedDeg + turnDeg)
  const high = Math.max(closedDeg, closedDeg + turnDeg)
  const facing = [-360, -270, -180, -90, 0, 90, 180, 270, 360, 450].filter((deg) => deg >= low && deg <= high)
  const turns = [low, high, ...facing].map((deg) => (deg * Math.PI) / 180)
  const xs = [0, ...turns.map((turn) => leafMm * Math.cos(turn))]
  const outs = [0, ...turns.map((turn) => leafMm * Math.sin(turn))]
  return {
    fromMm: hinge.xMm + Math.min(...xs),
    toMm: hinge.xMm + Math.max(...xs),
    outMm: hinge.outMm + Math.max(...outs),
  }
}

function sharedArea(a: Area, b: Area): Area | null {
  const area: Area = {
    leftMm: Math.max(a.leftMm, b.leftMm),
    rightMm: Math.min(a.rightMm, b.rightMm),
    bottomMm: Math.max(a.bottomMm, b.bottomMm),
    topMm: Math.min(a.topMm, b.topMm),
  }
  return area.rightMm < area.leftMm || area.topMm < area.bottomMm ? null : area
}
