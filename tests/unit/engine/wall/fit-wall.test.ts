import { describe, expect, it } from 'vitest'
import type { Derivation } from '../../../../src-main/domain/derivation.ts'
import type { Obstacle } from '../../../../src-main/domain/wall.ts'
import { fit as fitSchema } from '../../../../src-main/domain/set-out.ts'
import { fitWall } from '../../../../src-main/engine/wall/fit-wall.ts'
import type { PlaceInput } from '../../../../src-main/engine/wall/wall-input.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { bathroomWall, doublePanel, panelInput, railInput } from './walls-for-tests.ts'

const figures = defaultFigures('2026-11-25')
const clear = (id: string) => figures.settings[`wall.${id}`]?.value ?? Number.NaN

function fitOf(input: PlaceInput) {
  const fit = fitWall(input, figures)
  if (!fit.ok) throw new Error(fit.problems[0]?.message)
  expect(fitSchema.safeParse(fit.value).success).toBe(true)
  return fit.value
}

const bare = { ...bathroomWall, obstacles: [] }
const shelf: Obstacle = {
  obstacleId: 's',
  name: 'Shelf',
  kind: 'shelf',
  xMm: 400,
  yMm: 1540,
  widthMm: 500,
  heightMm: 30,
}

describe('the envelope', () => {
  it('of a rail whose valves hang within its width is no wider than the rail, and reaches down to the pipe entries', () => {
    // 645 ± 250; 300 - 65 (firm's drop under); 300 + 1200; 60 + 40.
    const drop = clear('valveDropUnderMm')
    expect(fitOf(railInput()).envelope).toEqual({
      leftMm: 395,
      rightMm: 895,
      bottomMm: 300 - drop,
      topMm: 1500,
      frontMm: 100,
    })
  })

  it('of a panel takes room for a valve on each side', () => {
    // Pipe centres 1290 on 1200: each valve's middle is 45 beyond the edge, its side half a body further.
    const beside = Math.max(clear('valveSideMm'), 45 + clear('valveBodyHalfMm'))
    const { envelope } = fitOf(panelInput())
    expect(envelope.leftMm).toBe(1800 - 600 - beside)
    expect(envelope.rightMm).toBe(1800 + 600 + beside)
  })

  it('takes the valve space that was given', () => {
    const { envelope } = fitOf(panelInput({ valves: { sideMm: 100, dropMm: 30 } }))
    expect(envelope).toMatchObject({ leftMm: 1100, rightMm: 2500, bottomMm: 120 })
  })

  it('takes no room on a side without a valve', () => {
    const emitter = {
      ...doublePanel,
      tappings: doublePanel.tappings.filter((tapping) => tapping.at !== 'bottomLeft'),
    }
    expect(fitOf(panelInput({ emitter })).envelope.leftMm).toBe(1200)
  })

  it('stands out further when the rail is curved', () => {
    expect(fitOf(railInput({ curved: true })).envelope.frontMm).toBe(100 + clear('curvedExtraMm'))
  })
})

describe('the fit', () => {
  it('is good where every clearance is kept', () => {
    expect(fitOf(railInput())).toMatchObject({ fits: true, clashes: [] })
  })

  it('names the floor when the bottom edge is too low, in mm', () => {
    const low = fitOf(railInput({ bottomMm: 80 }))
    expect(low.fits).toBe(false)
    expect(low.clashes).toContainEqual({
      with: 'floor',
      needMm: clear('clearFloorMm'),
      haveMm: 80,
      says: `The emitter has 80 mm to the floor; ${clear('clearFloorMm')} mm is needed.`,
    })
  })

  it('asks enough height for the valves, where they need more than the air does', () => {
    expect(fitOf(railInput({ bottomMm: 120, valves: { dropMm: 140 } })).clashes).toMatchObject([
      { with: 'floor', needMm: 140, haveMm: 120 },
    ])
  })

  it('names the skirting, the ceiling and the ends of the wall', () => {
    const inSkirting = fitOf(panelInput({ bottomMm: 110 }))
    expect(inSkirting.clashes).toMatchObject([
      { with: 'skirting', haveMm: -10, needMm: clear('clearSkirtingMm') },
    ])
    const high = fitOf(railInput({ wall: bare, bottomMm: 1150 }))
    expect(high.clashes).toMatchObject([{ with: 'ceiling', haveMm: 50, needMm: clear('clearCeilingMm') }])
    const left = fitOf(railInput({ wall: bare, centre: { kind: 'at', xMm: 260 } }))
    expect(left.clashes).toMatchObject([{ with: 'left end of the wall', haveMm: 10 }])
    const right = fitOf(railInput({ wall: bare, centre: { kind: 'at', xMm: 1600 } }))
    expect(right.clashes).toMatchObject([{ with: 'right end of the wall', haveMm: -50 }])
    expect(right.clashes[0]?.says).toBe(
      `The emitter overlaps the right end of the wall by 50 mm; ${clear('clearSideMm')} mm is needed clear.`,
    )
  })

  it("asks the firm's clear space of an obstacle, or the obstacle's own", () => {
    const wall = { ...bare, obstacles: [shelf] }
    expect(fitOf(railInput({ wall })).clashes).toMatchObject([
      { with: 'Shelf', haveMm: 40, needMm: clear('clearShelfMm') },
    ])
    const modest = { ...bare, obstacles: [{ ...shelf, clearanceMm: 40 }] }
    expect(fitOf(railInput({ wall: modest })).fits).toBe(true)
  })

  it('minds the swing of a door', () => {
    const door: Obstacle = {
      obstacleId: 'd',
      name: 'Door',
      kind: 'doorSwing',
      xMm: 850,
      yMm: 0,
      widthMm: 760,
      heightMm: 2000,
    }
    expect(fitOf(railInput({ wall: { ...bare, obstacles: [door] } })).clashes).toMatchObject([
      { with: 'Door', haveMm: -45 },
    ])
  })

  it('does not mind what is hidden in the wall', () => {
    const cable: Obstacle = {
      obstacleId: 'c',
      name: 'Cable',
      kind: 'cable',
      xMm: 600,
      yMm: 0,
      widthMm: 10,
      heightMm: 2400,
    }
    expect(fitOf(railInput({ wall: { ...bare, obstacles: [cable] } })).fits).toBe(true)
  })

  it('has a reason whose leaves hold the measured sizes', () => {
    const leaves: (number | string)[] = []
    const walk = (one: Derivation) =>
      one.from.length === 0 ? leaves.push(one.value) : one.from.forEach(walk)
    walk(fitOf(railInput()).why)
    for (const size of [420, 450, 500, 1200, 300, 1800, 2400, 1050, 600, 900]) expect(leaves).toContain(size)
  })

  it('is refused for numbers that cannot be worked with, naming the field', () => {
    const refused = fitWall(railInput({ wall: { ...bare, widthMm: Number.NaN } }), figures)
    expect(refused).toMatchObject({ ok: false, problems: [{ code: 'invalid', path: 'wall.widthMm' }] })
  })

  it('is refused where the emitter would lie more than 20 m off', () => {
    expect(fitWall(railInput({ centre: { kind: 'at', xMm: 19_900 } }), figures)).toMatchObject({
      ok: false,
      problems: [{ code: 'impossible', path: 'centre' }],
    })
  })
})
