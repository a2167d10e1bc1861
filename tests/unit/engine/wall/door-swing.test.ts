import { describe, expect, it } from 'vitest'
import type { Derivation } from '../../../../src-main/domain/derivation.ts'
import { obstacle as obstacleSchema } from '../../../../src-main/domain/wall.ts'
import type { DoorLeaf, Obstacle } from '../../../../src-main/domain/wall.ts'
import { standsOnWall, sweepOf } from '../../../../src-main/engine/wall/doors/door-swing.ts'
import { wallDrawing } from '../../../../src-main/engine/wall/drawing.ts'
import { fitWall } from '../../../../src-main/engine/wall/fit-wall.ts'
import { leafMeets } from '../../../../src-main/engine/wall/doors/leaf-sweep.ts'
import { setOutWall } from '../../../../src-main/engine/wall/set-out-wall.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { bathroomWall, railInput } from './walls-for-tests.ts'

const figures = defaultFigures('2026-11-25')
const needMm = figures.settings['wall.clearDoorSwingMm']?.value ?? Number.NaN

const here = (more: Partial<Extract<DoorLeaf, { in: 'thisWall' }>> = {}): DoorLeaf => ({
  in: 'thisWall',
  hinge: 'left',
  leafMm: 762,
  opensIntoRoom: true,
  ...more,
})
const round = (more: Partial<Extract<DoorLeaf, { in: 'wallAtCorner' }>> = {}): DoorLeaf => ({
  in: 'wallAtCorner',
  corner: 'left',
  hinge: 'far',
  jambMm: 20,
  leafMm: 762,
  opensIntoRoom: true,
  ...more,
})

function door(leaf: DoorLeaf, more: Partial<Obstacle> = {}): Obstacle {
  const place = { xMm: 1000, yMm: 0, widthMm: 800, heightMm: 2000 }
  const one = { obstacleId: 'd', name: 'Door', kind: 'door' as const, ...place, leaf, ...more }
  expect(obstacleSchema.safeParse(one).success).toBe(true)
  return one
}

const wallWith = (one: Obstacle) => ({ ...bathroomWall, obstacles: [one] })

/** The rail takes 500 of the wall about its centre and stands out 100. */
function fitWith(one: Obstacle, centreMm: number) {
  const fit = fitWall(railInput({ wall: wallWith(one), centre: { kind: 'at', xMm: centreMm } }), figures)
  if (!fit.ok) throw new Error(fit.problems[0]?.message)
  return fit.value
}
const swingsOf = (one: Obstacle, centreMm: number) =>
  fitWith(one, centreMm).clashes.filter((clash) => clash.with === 'the leaf of Door')

/** Every reason in a tree. */
function all(why: Derivation): readonly Derivation[] {
  return [why, ...why.from.flatMap(all)]
}
const swingWhy = (one: Obstacle, centreMm: number) =>
  all(fitWith(one, centreMm).why).find(({ says }) => says.includes('leaf of Door passes'))

describe('a door round the corner, hinged at the far side', () => {
  it('meets the front corner of an emitter that is nearer its hinges than the leaf is long', () => {
    // Hinges 20 + 762 = 782 from this wall; left end 400 - 250 = 150, front 100.
    // Nearest: hypot(150, 682) = 698.3. First touch: left end where it is 762 away, 747.1 towards this wall: atan(150 / 747.1) = 11.4°.
    expect(swingsOf(door(round()), 400)).toEqual([
      {
        with: 'the leaf of Door',
        needMm,
        haveMm: expect.closeTo(Math.hypot(150, 682) - 762, 9),
        says: `The leaf of Door meets the emitter when 11° open: 698.3 mm from its hinges, 63.7 mm too near for its 762 mm; ${needMm} mm is needed clear.`,
      },
    ])
  })

  it('passes with what is left between the leaf and the corner, and says so where that is too little', () => {
    // Hinges 862 from this wall: hypot(90, 762) - 762 = 5.3.
    expect(swingsOf(door(round({ jambMm: 100 })), 340)).toMatchObject([
      {
        haveMm: expect.closeTo(Math.hypot(90, 762) - 762, 9),
        says: `The leaf of Door passes the emitter with 5.3 mm to spare; ${needMm} mm is needed.`,
      },
    ])
    // hypot(150, 762) - 762 = 14.6.
    expect(swingsOf(door(round({ jambMm: 100 })), 400)).toEqual([])
    expect(swingsOf(door(round({ jambMm: 100 }), { clearanceMm: 15 }), 400)).toMatchObject([{ needMm: 15 }])
  })

  it('at the right corner is the same, mirrored', () => {
    const right = swingsOf(door(round({ corner: 'right' })), bathroomWall.widthMm - 400)
    expect(right).toEqual(swingsOf(door(round()), 400))
  })
})

describe('a door round the corner, hinged at the near side', () => {
  it('opens flat along an emitter, and meets one that stands out further than its frame', () => {
    // Hinges 70 from this wall, front 100: the corner at 395 is met at 90° - atan(30 / 395) = 85.7°, with 395 of 700.
    const near = round({ hinge: 'near', jambMm: 70, leafMm: 700 })
    expect(swingsOf(door(near), 645)).toMatchObject([
      {
        haveMm: expect.closeTo(-305, 9),
        says: `The leaf of Door meets the emitter when 85° open: 395 mm from its hinges, 305 mm too near for its 700 mm; ${needMm} mm is needed clear.`,
      },
    ])
  })

  it('passes by as much as its frame is further from this wall than the front', () => {
    const at = (jambMm: number) => swingsOf(door(round({ hinge: 'near', jambMm })), 645)
    expect(at(100 + needMm)).toEqual([])
    expect(at(100 + needMm - 1)).toMatchObject([{ haveMm: expect.closeTo(needMm - 1, 9) }])
  })

  it('that opens only part of the way does not get there', () => {
    expect(swingsOf(door(round({ hinge: 'near', jambMm: 70, leafMm: 700, opensDeg: 60 })), 645)).toEqual([])
  })
})

describe('a door in this wall', () => {
  it('opened square leaves what is between its hinges and an emitter beside them', () => {
    // The rail ends at 645 + 250 = 895, hinges at 1000.
    expect(swingWhy(door(here()), 645)?.value).toBeCloseTo(105, 9)
    // Hinges at 1800, leaf 762: its edge comes to 1038 when shut.
    expect(swingWhy(door(here({ hinge: 'right' })), 645)?.value).toBeCloseTo(143, 9)
  })

  it('that opens wide comes back to the emitter beside its hinges', () => {
    // Front corner (895, 100) from the hinges (1000, 0): 180° - atan(100 / 105) = 136.4°. At 150° it comes in after 105 / cos 30° = 121.2.
    expect(swingsOf(door(here({ opensDeg: 150 })), 645)).toMatchObject([
      {
        haveMm: expect.closeTo(105 / Math.cos(Math.PI / 6) - 762, 6),
        says: `The leaf of Door meets the emitter when 136° open: 121.2 mm from its hinges, 640.8 mm too near for its 762 mm; ${needMm} mm is needed clear.`,
      },
    ])
    expect(swingsOf(door(here({ opensDeg: 136 })), 645)).toMatchObject([{ needMm }])
    expect(swingsOf(door(here({ opensDeg: 120 })), 645)).toEqual([])
  })

  it('says the whole degree at which it meets, and no room where it only just touches', () => {
    // Front corner (900, 100) from the hinges (1000, 0): 135°.
    expect(swingsOf(door(here({ opensDeg: 180 })), 650)[0]?.says).toContain('when 135° open')
    // Hinges at 1657: the tip of 762 comes to 895 when shut, where the rail ends.
    const tip = door(here({ hinge: 'right' }), { kind: 'doorSwing', xMm: 857 })
    expect(swingsOf(tip, 645)).toMatchObject([
      { haveMm: 0, says: `The leaf of Door passes the emitter with 0 mm to spare; ${needMm} mm is needed.` },
    ])
  })

  it('cannot be shut, let alone opened, with an emitter across it', () => {
    expect(swingsOf(door(here(), { xMm: 500 }), 645)).toMatchObject([
      {
        haveMm: -762,
        says: 'The emitter stands in the way of the leaf of Door: 0 mm from its hinges, 762 mm too near for its 762 mm.',
      },
    ])
  })

  it('is minded as a rectangle too, but a rectangle for its swing gives way to the leaf', () => {
    const close = { xMm: 905 }
    expect(fitWith(door(here(), close), 645).clashes.map((clash) => clash.with)).toEqual(['Door'])
    const swing = door(here(), { ...close, kind: 'doorSwing' })
    expect(fitWith(swing, 645).clashes).toEqual([])
    const { leaf: _, ...bare } = swing
    expect(fitWith({ ...bare, xMm: 895 }, 645).clashes.map((clash) => clash.with)).toEqual(['Door'])
  })

  it('that opens away from the room sweeps nothing here', () => {
    expect(swingsOf(door(here({ opensIntoRoom: false }), { xMm: 500 }), 645)).toEqual([])
    expect(sweepOf({ xMm: 0, widthMm: 800, leaf: here({ opensIntoRoom: false }) }, 1800)).toBeNull()
    expect(sweepOf({ xMm: 0, widthMm: 800 }, 1800)).toBeNull()
  })
})

it('a leaf that turns above the emitter or below it is as far off as their heights are', () => {
  // The rail's top is at 1500, its pipe entries at 300 less the valves' drop.
  const hatch = (more: Partial<Obstacle>) => door(round(), more)
  expect(swingsOf(hatch({ yMm: 1505, heightMm: 500 }), 400)).toMatchObject([
    { haveMm: 5, says: `The leaf of Door passes the emitter with 5 mm to spare; ${needMm} mm is needed.` },
  ])
  expect(swingsOf(hatch({ yMm: 1500 + needMm, heightMm: 500 }), 400)).toEqual([])
  const dropMm = figures.settings['wall.valveDropUnderMm']?.value ?? Number.NaN
  expect(swingsOf(hatch({ heightMm: 300 - dropMm - needMm }), 400)).toEqual([])
  // Once they share a height, only the plan counts.
  expect(swingsOf(hatch({ yMm: 1499, heightMm: 500 }), 400)).toMatchObject([
    { haveMm: expect.closeTo(Math.hypot(150, 682) - 762, 9) },
  ])
})

it('the reason holds every size of the door that was used, and the quarter circle that was taken', () => {
  const values = (one: Obstacle) => {
    const why = all(fitWith(one, 645).why).find(({ says }) => says.includes('leaf of Door passes'))
    return why === undefined ? [] : all(why).map(({ says, value }) => [says, value])
  }
  const corner = values(door(round({ jambMm: 130, hinge: 'near' })))
  for (const leaf of [
    ['Door, its frame from this wall', 130],
    ['Door, length of its leaf', 762],
    ['Door, from the floor', 0],
    ['Door, height', 2000],
    ['Door, how far it opens, taken as a quarter circle', 90],
    ['How far it stands out.', 100],
  ]) {
    expect(corner).toContainEqual(leaf)
  }
  const flat = values(door(here({ opensDeg: 100 }), { clearanceMm: 25 }))
  for (const leaf of [
    ['Door, from the left end of the wall', 1000],
    ['Door, width', 800],
    ['Door, how far it opens', 100],
    ['Clear space asked round Door', 25],
  ]) {
    expect(flat).toContainEqual(leaf)
  }
})

it('a door round the corner is not on this wall: no hole falls on it, and it is not drawn', () => {
  const one = door(round({ jambMm: 600 }), { xMm: 445, name: 'Hall door' })
  const input = railInput({ wall: wallWith(one), centre: { kind: 'at', xMm: 645 } })
  const out = setOutWall(input, figures)
  const fit = fitWall(input, figures)
  if (!out.ok || !fit.ok) throw new Error('The rail was refused')
  expect(out.value.warnings.filter((says) => says.includes('Hall door'))).toEqual([])
  const view = { emitter: { name: 'Rail', widthMm: 500, heightMm: 1200 }, pipes: input.pipes }
  const drawn = (wall: typeof input.wall) =>
    wallDrawing({ ...view, wall, envelope: fit.value.envelope, setOut: out.value })
  expect(drawn(input.wall)).not.toContain('Hall')
  expect(drawn({ ...input.wall, obstacles: [{ ...one, leaf: here() }] })).toContain('Hall')
  expect(standsOnWall({ kind: 'door', leaf: here() })).toBe(true)
  expect(standsOnWall({ kind: 'doorSwing', leaf: here() })).toBe(false)
  expect(standsOnWall({ kind: 'doorSwing' })).toBe(true)
})

describe('a leaf in plan', () => {
  const quarter = { hinge: { xMm: 0, outMm: 0 }, leafMm: 500, closedDeg: 0, turnDeg: 90 }
  const boxAt = (leftMm: number, rightMm: number) => ({ leftMm, rightMm, frontMm: 100 })

  it('is clear of a box beyond its reach, behind its hinge, and touches one that it just reaches', () => {
    expect(leafMeets(quarter, boxAt(520, 900))).toEqual({ kind: 'clear', clearMm: 20 })
    expect(leafMeets(quarter, boxAt(-300, -40))).toEqual({ kind: 'clear', clearMm: 40 })
    expect(leafMeets(quarter, boxAt(500, 900))).toEqual({ kind: 'meets', atDeg: 0, reachMm: 500 })
    expect(leafMeets(quarter, boxAt(-300, 0))).toMatchObject({ kind: 'meets', reachMm: 0 })
  })

  it('meets a box inside its sweep though neither end of the sweep touches it', () => {
    // A far hinge 400 out, box from 100 to 150 along the wall: nearest (100, 100): hypot(100, 300); first at its reach of the near end.
    const far = { hinge: { xMm: 0, outMm: 400 }, leafMm: 350, closedDeg: 270, turnDeg: 90 }
    expect(leafMeets(far, boxAt(100, 150))).toEqual({
      kind: 'meets',
      atDeg: expect.closeTo((Math.asin(100 / 350) * 180) / Math.PI, 9),
      reachMm: expect.closeTo(Math.hypot(100, 300), 9),
    })
  })

  it('touches at the very end of its turn what it then lies along', () => {
    const near = { hinge: { xMm: 0, outMm: 100 }, leafMm: 500, closedDeg: 90, turnDeg: -90 }
    expect(leafMeets(near, boxAt(395, 900))).toEqual({
      kind: 'meets',
      atDeg: expect.closeTo(90, 6),
      reachMm: 395,
    })
    expect(leafMeets({ ...near, hinge: { xMm: 0, outMm: 101 } }, boxAt(395, 900))).toEqual({
      kind: 'clear',
      clearMm: 1,
    })
  })

  it('of no length at all still gives a number', () => {
    expect(leafMeets({ ...quarter, leafMm: 0 }, boxAt(30, 60))).toEqual({ kind: 'clear', clearMm: 30 })
  })
})
