import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { DoorLeaf, Obstacle } from '../../src-main/domain/wall.ts'
import { sweepOf } from '../../src-main/engine/wall/doors/door-swing.ts'
import { fitWall } from '../../src-main/engine/wall/fit-wall.ts'
import { leafMeets } from '../../src-main/engine/wall/doors/leaf-sweep.ts'
import type { PlanBox, Sweep } from '../../src-main/engine/wall/doors/leaf-sweep.ts'
import { defaultFigures } from '../figures-for-tests.ts'
import { bathroomWall, railInput } from '../unit/engine/wall/walls-for-tests.ts'

const figures = defaultFigures('2026-11-25')
const mm = (min: number, max: number) => fc.integer({ min, max })
const sides = fc.constantFrom('left' as const, 'right' as const)
const leafOf = {
  leafMm: mm(300, 1200),
  opensIntoRoom: fc.constant(true),
  opensDeg: fc.option(mm(1, 180), { nil: undefined }),
}
const leaves: fc.Arbitrary<DoorLeaf> = fc.oneof(
  fc.record({ in: fc.constant('thisWall' as const), hinge: sides, ...leafOf }),
  fc.record({
    in: fc.constant('wallAtCorner' as const),
    corner: sides,
    hinge: fc.constantFrom('near' as const, 'far' as const),
    jambMm: mm(0, 600),
    ...leafOf,
  }),
)
const wallWidthMm = 3000
const doors = fc.record({ leaf: leaves, xMm: mm(0, 2200), widthMm: mm(300, 1200) })
const boxes: fc.Arbitrary<PlanBox> = fc
  .record({ leftMm: mm(0, 2600), widthMm: mm(50, 1500), frontMm: mm(30, 300) })
  .map(({ leftMm, widthMm, frontMm }) => ({
    leftMm,
    frontMm,
    rightMm: Math.min(wallWidthMm, leftMm + widthMm),
  }))

function swept(door: { leaf: DoorLeaf; xMm: number; widthMm: number }): Sweep {
  const sweep = sweepOf(door, wallWidthMm)
  if (sweep === null) throw new Error('This door opens into the room')
  return sweep
}

/** The leaf tried at many angles and many points along it: its least distance from the box, and from the hinge to where it is inside. */
function byTrying({ hinge, leafMm, closedDeg, turnDeg }: Sweep, box: PlanBox) {
  const steps = { turn: 400, along: 400 }
  let least = Number.MAX_VALUE
  let reach = Number.MAX_VALUE
  let first = Number.MAX_VALUE
  for (let turn = 0; turn <= steps.turn; turn += 1) {
    const opened = Math.abs((turnDeg * turn) / steps.turn)
    const angle = ((closedDeg + (turnDeg * turn) / steps.turn) * Math.PI) / 180
    for (let along = 0; along <= steps.along; along += 1) {
      const length = (leafMm * along) / steps.along
      const x = hinge.xMm + length * Math.cos(angle)
      const out = hinge.outMm + length * Math.sin(angle)
      const away = Math.hypot(
        Math.max(box.leftMm - x, 0, x - box.rightMm),
        Math.max(0 - out, 0, out - box.frontMm),
      )
      least = Math.min(least, away)
      if (away < 1e-6) {
        reach = Math.min(reach, length)
        first = Math.min(first, opened)
      }
    }
  }
  return { least, reach, first }
}

describe('a leaf that turns past an emitter', () => {
  it('leaves as much room, or meets it as far from its hinges and as far open, as trying it at every angle shows', () => {
    fc.assert(
      fc.property(doors, boxes, (door, box) => {
        const sweep = swept(door)
        const meeting = leafMeets(sweep, box)
        const tried = byTrying(sweep, box)
        // Half a step along the leaf, and half a step of its tip, either way.
        const coarse = sweep.leafMm / 400 + (Math.abs(sweep.turnDeg) * Math.PI * sweep.leafMm) / 180 / 400
        if (meeting.kind === 'clear') {
          expect(tried.least).toBeGreaterThanOrEqual(meeting.clearMm - 1e-6)
          expect(tried.least).toBeLessThanOrEqual(meeting.clearMm + coarse)
          return
        }
        expect(meeting.reachMm).toBeLessThanOrEqual(sweep.leafMm + 1e-6)
        expect(tried.least).toBeLessThanOrEqual(coarse)
        if (tried.reach > sweep.leafMm) return
        expect(tried.reach).toBeGreaterThanOrEqual(meeting.reachMm - 1e-6)
        expect(tried.first).toBeGreaterThanOrEqual(meeting.atDeg - 1e-6)
        if (deepEnough(box, sweep)) {
          expect(tried.reach).toBeLessThanOrEqual(meeting.reachMm + coarse * 4)
        }
      }),
      { numRuns: 150 },
    )
  }, 240_000)

  it('is first stopped where it was said: a hair less open it touches nothing, a hair more it does', () => {
    fc.assert(
      fc.property(doors, boxes, (door, box) => {
        const sweep = swept(door)
        const meeting = leafMeets(sweep, box)
        if (meeting.kind === 'clear' || meeting.atDeg < 0.02 || meeting.reachMm < 1) return
        const turned = (deg: number): Sweep => ({ ...sweep, turnDeg: Math.sign(sweep.turnDeg) * deg })
        expect(leafMeets(turned(meeting.atDeg - 0.01), box).kind).toBe('clear')
        expect(leafMeets(turned(meeting.atDeg + 1e-4), box).kind).toBe('meets')
      }),
      { numRuns: 400 },
    )
  })

  it('is mirrored by a mirrored wall, and moves along with its door and emitter', () => {
    fc.assert(
      fc.property(doors, mm(200, 1600), mm(-150, 150), (door, atMm, byMm) => {
        const other = { left: 'right', right: 'left' } as const
        const leaf: DoorLeaf =
          door.leaf.in === 'thisWall'
            ? { ...door.leaf, hinge: other[door.leaf.hinge] }
            : { ...door.leaf, corner: other[door.leaf.corner] }
        const before = swingOf(door, atMm)
        const mirrored = { ...door, leaf, xMm: bathroomWall.widthMm - door.xMm - door.widthMm }
        same(swingOf(mirrored, bathroomWall.widthMm - atMm), before)
        if (door.leaf.in === 'thisWall') {
          same(swingOf({ ...door, xMm: door.xMm + byMm }, atMm + byMm), before)
        }
      }),
      { numRuns: 200 },
    )
  })
})

/** Thin slivers inside the sweep can fall between the points that were tried. */
function deepEnough(box: PlanBox, sweep: Sweep): boolean {
  return box.rightMm - box.leftMm >= 50 && box.frontMm >= 30 && Math.abs(sweep.turnDeg) >= 1
    ? byTrying(sweep, {
        leftMm: box.leftMm + 12,
        rightMm: box.rightMm - 12,
        frontMm: box.frontMm - 12,
      }).reach < sweep.leafMm
    : false
}

type Door = Pick<Obstacle, 'xMm' | 'widthMm' | 'leaf'>

/** The swing's room on a wall wide enough for anything, asked of so much clear space that it is always told. */
function swingOf(door: Door, centreMm: number) {
  const obstacle: Obstacle = {
    ...door,
    obstacleId: 'd',
    name: 'Door',
    kind: 'doorSwing',
    yMm: 0,
    heightMm: 2000,
    clearanceMm: 20_000,
  }
  const wall = { ...bathroomWall, obstacles: [obstacle] }
  const fit = fitWall(railInput({ wall, centre: { kind: 'at', xMm: centreMm } }), figures)
  if (!fit.ok) throw new Error(fit.problems[0]?.message)
  const swing = fit.value.clashes.find((clash) => clash.with === 'the leaf of Door')
  if (swing === undefined) throw new Error('The leaf was not looked at')
  return swing
}

function same(one: ReturnType<typeof swingOf>, two: ReturnType<typeof swingOf>) {
  expect(one.haveMm).toBeCloseTo(two.haveMm, 6)
  expect(one.says).toBe(two.says)
}
