/** A point in plan: along the wall from its left end, and out from the wall into the room. */
export type PlanPoint = { readonly xMm: number; readonly outMm: number }

/** What an emitter takes in plan: from the wall out to its front. */
export type PlanBox = { readonly leftMm: number; readonly rightMm: number; readonly frontMm: number }

/** A leaf in plan: its hinge, and the way it turns. Angles count from the wall's right, turning out into the room. */
export type Sweep = {
  readonly hinge: PlanPoint
  readonly leafMm: number
  readonly closedDeg: number
  /** How far it opens; negative where it turns the other way round. */
  readonly turnDeg: number
}

/** What a leaf that turns past a box meets. */
export type Meeting =
  | { readonly kind: 'clear'; readonly clearMm: number }
  | {
      readonly kind: 'meets'
      /** How far open it is when it first touches, degrees. */
      readonly atDeg: number
      /** From the hinge to the nearest part of the box that the leaf comes by. */
      readonly reachMm: number
    }

/**
 * What a leaf meets that turns about its hinge past a box that stands on the wall. The leaf is a line; it sweeps the points within
 * its length of the hinge, between its closed and its open place. Clear: the least distance between that sector and the box. It meets
 * the box where they share a point: first at the least angle at which leaf and box touch, and it could be as long as the distance from
 * the hinge to the nearest part of the box within the sweep.
 *
 * @param sweep hinge, leaf length (mm, above 0), closed direction and turn (degrees, up to 180 either way)
 * @param box left and right end and front, mm
 * @source plane geometry
 * @example leafMeets({ hinge: { xMm: 0, outMm: 800 }, leafMm: 762, closedDeg: 270, turnDeg: 90 }, { leftMm: 300, rightMm: 900, frontMm: 400 }).reachMm // => 500
 */
export function leafMeets(sweep: Sweep, box: PlanBox): Meeting {
  const clearMm = sectorToBox(sweep, box)
  if (clearMm > touchMm) return { kind: 'clear', clearMm }
  return { kind: 'meets', atDeg: firstTouchDeg(sweep, box), reachMm: nearestInSweep(sweep, box) }
}

/** Below what can be measured or computed: there they touch. */
const touchMm = 1e-6

/** Both are convex, so that the least distance starts at a corner of the box, at an end of the leaf, or where the arc faces an edge. */
function sectorToBox(sweep: Sweep, box: PlanBox): number {
  const { hinge, leafMm, closedDeg, turnDeg } = sweep
  const facing = [0, 90, 180, 270].filter((deg) => isSwept(sweep, deg))
  const tips = [closedDeg, closedDeg + turnDeg, ...facing].map((deg) => along(hinge, deg, leafMm))
  const edges = [closedDeg, closedDeg + turnDeg].map((deg) => entryMm(hinge, deg, box))
  if (edges.some((mm) => mm <= leafMm)) return 0
  return Math.min(
    ...corners(box).map((corner) => pointToSector(corner, sweep)),
    ...[hinge, ...tips].map((point) => distance(point, nearestOf(box, point))),
  )
}

function pointToSector(point: PlanPoint, sweep: Sweep): number {
  const { hinge, leafMm, closedDeg, turnDeg } = sweep
  if (isSwept(sweep, directionDeg(hinge, point))) return Math.max(0, distance(hinge, point) - leafMm)
  return Math.min(
    ...[closedDeg, closedDeg + turnDeg].map((deg) => pointToLeaf(point, along(hinge, deg, leafMm), hinge)),
  )
}

function pointToLeaf(point: PlanPoint, tip: PlanPoint, hinge: PlanPoint): number {
  const x = tip.xMm - hinge.xMm
  const out = tip.outMm - hinge.outMm
  const ahead = (point.xMm - hinge.xMm) * x + (point.outMm - hinge.outMm) * out
  const at = ahead <= 0 ? 0 : Math.min(1, ahead / (x * x + out * out))
  return distance(point, { xMm: hinge.xMm + at * x, outMm: hinge.outMm + at * out })
}

/** The box's part within the leaf's length is convex too: its outermost angles are those of a corner or of an edge at that length. */
function firstTouchDeg(sweep: Sweep, box: PlanBox): number {
  const { hinge, leafMm, closedDeg } = sweep
  if (entryMm(hinge, closedDeg, box) <= leafMm) return 0
  const ends = [
    ...corners(box).filter((corner) => distance(hinge, corner) <= leafMm + touchMm),
    ...atLength(sweep, box),
  ]
  const turns = ends.map((end) => openedDeg(sweep, directionDeg(hinge, end)))
  const met = turns.filter((deg) => deg <= Math.abs(sweep.turnDeg) + 1e-9)
  return met.length === 0 ? 0 : Math.min(...met)
}

/** Where the edges of the box lie just the leaf's length from the hinge. */
function atLength({ hinge, leafMm }: Sweep, box: PlanBox): readonly PlanPoint[] {
  const beside = [box.leftMm, box.rightMm].flatMap((xMm) =>
    bothWays(hinge.outMm, leafMm, xMm - hinge.xMm).map((outMm) => ({ xMm, outMm })),
  )
  const across = [0, box.frontMm].flatMap((outMm) =>
    bothWays(hinge.xMm, leafMm, outMm - hinge.outMm).map((xMm) => ({ xMm, outMm })),
  )
  return [...beside, ...across].filter((point) => distance(point, nearestOf(box, point)) <= touchMm)
}

function bothWays(middle: number, length: number, other: number): readonly number[] {
  if (Math.abs(other) > length) return []
  const by = Math.sqrt(length * length - other * other)
  return [middle - by, middle + by]
}

function nearestInSweep(sweep: Sweep, box: PlanBox): number {
  const { hinge, closedDeg, turnDeg } = sweep
  const nearest = nearestOf(box, hinge)
  const straight = distance(hinge, nearest)
  if (straight <= touchMm || isSwept(sweep, directionDeg(hinge, nearest))) return straight
  return Math.min(...[closedDeg, closedDeg + turnDeg].map((deg) => entryMm(hinge, deg, box)), sweep.leafMm)
}

/** How far from the hinge a ray comes into the box; beyond all measure where it misses. */
function entryMm(hinge: PlanPoint, deg: number, box: PlanBox): number {
  const ahead = unit(deg)
  const [fromX, toX] = within(hinge.xMm, ahead.xMm, [box.leftMm, box.rightMm])
  const [fromOut, toOut] = within(hinge.outMm, ahead.outMm, [0, box.frontMm])
  const from = Math.max(0, fromX, fromOut)
  return from <= Math.min(toX, toOut) ? from : Number.MAX_VALUE
}

/** The stretch of a ray between two lines; none, or all of it, where it runs beside them. */
function within(start: number, ahead: number, [low, high]: readonly [number, number]): [number, number] {
  if (ahead === 0) {
    const inside = start >= low && start <= high
    return inside ? [-Number.MAX_VALUE, Number.MAX_VALUE] : [Number.MAX_VALUE, -Number.MAX_VALUE]
  }
  const ends = [(low - start) / ahead, (high - start) / ahead]
  return [Math.min(...ends), Math.max(...ends)]
}

/** How far a leaf is open that points that way, from 0 up to a full circle. */
function openedDeg({ closedDeg, turnDeg }: Sweep, deg: number): number {
  const turned = ((turnDeg < 0 ? closedDeg - deg : deg - closedDeg) + 720) % 360
  return turned > 360 - 1e-9 ? 0 : turned
}

function isSwept(sweep: Sweep, deg: number): boolean {
  return openedDeg(sweep, deg) <= Math.abs(sweep.turnDeg) + 1e-9
}

function directionDeg(from: PlanPoint, to: PlanPoint): number {
  return (Math.atan2(to.outMm - from.outMm, to.xMm - from.xMm) * 180) / Math.PI
}

/** Right angles are exact, so that a leaf along a wall runs along it. */
function unit(deg: number): PlanPoint {
  const quarter = (deg + 720) % 360
  if (quarter % 90 === 0) {
    const [xMm = 0, outMm = 0] =
      [
        [1, 0],
        [0, 1],
        [-1, 0],
        [0, -1],
      ][quarter / 90] ?? []
    return { xMm, outMm }
  }
  return { xMm: Math.cos((deg * Math.PI) / 180), outMm: Math.sin((deg * Math.PI) / 180) }
}

function along({ xMm, outMm }: PlanPoint, deg: number, length: number): PlanPoint {
  const ahead = unit(deg)
  return { xMm: xMm + length * ahead.xMm, outMm: outMm + length * ahead.outMm }
}

function corners({ leftMm, rightMm, frontMm }: PlanBox): readonly PlanPoint[] {
  return [leftMm, rightMm].flatMap((xMm) => [0, frontMm].map((outMm) => ({ xMm, outMm })))
}

function nearestOf({ leftMm, rightMm, frontMm }: PlanBox, { xMm, outMm }: PlanPoint): PlanPoint {
  return {
    xMm: Math.min(rightMm, Math.max(leftMm, xMm)),
    outMm: Math.min(frontMm, Math.max(0, outMm)),
  }
}

function distance(a: PlanPoint, b: PlanPoint): number {
  return Math.hypot(a.xMm - b.xMm, a.outMm - b.outMm)
}
