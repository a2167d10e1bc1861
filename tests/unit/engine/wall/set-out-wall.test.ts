import { describe, expect, it } from 'vitest'
import { setOut as setOutSchema } from '../../../../src-main/domain/set-out.ts'
import type { Obstacle, Wall } from '../../../../src-main/domain/wall.ts'
import { setOutWall } from '../../../../src-main/engine/wall/set-out-wall.ts'
import type { SetOutInput } from '../../../../src-main/engine/wall/set-out-wall.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import {
  bathroomWall,
  doublePanel,
  floorPipe,
  panelInput,
  railInput,
  studWall,
  towelRail,
} from './walls-for-tests.ts'

const figures = defaultFigures('2026-11-25')

function setOutOf(input: SetOutInput, firm = figures) {
  const out = setOutWall(input, firm)
  if (!out.ok) throw new Error(out.problems[0]?.message)
  expect(setOutSchema.safeParse(out.value).success).toBe(true)
  return out.value
}

const plain: Wall = { ...bathroomWall, finish: 'paint', obstacles: [] }
const warningsAbout = (input: SetOutInput, word: string) =>
  setOutOf(input).warnings.filter((says) => says.includes(word))

describe('bracket holes', () => {
  it('are lettered by bracket and measured from centre line and floor', () => {
    expect(setOutOf(railInput()).holes).toMatchObject([
      { id: 'A1', bracket: 'Top left', upper: true, xMm: 445, yMm: 1405, fromCentreMm: -200 },
      { id: 'B1', bracket: 'Top right', upper: true, xMm: 845, yMm: 1405, fromCentreMm: 200 },
      { id: 'C1', bracket: 'Bottom left', upper: false, xMm: 445, yMm: 395, fromCentreMm: -200 },
      { id: 'D1', bracket: 'Bottom right', upper: false, xMm: 845, yMm: 395, fromCentreMm: 200 },
    ])
  })

  it('of full-height brackets are upper above the middle of their bracket', () => {
    const holes = setOutOf(panelInput()).holes
    expect(holes.map(({ id, upper }) => [id, upper])).toEqual([
      ['A1', true],
      ['A2', false],
      ['B1', true],
      ['B2', false],
    ])
  })

  it('take the drill of the fixing that was chosen', () => {
    const { holes, fixing } = setOutOf(railInput())
    const chosen = figures.fixings.find((one) => one.fixingId === fixing.fixingId)
    expect(holes.every((hole) => hole.drillMm === chosen?.holeMm && hole.depthMm === chosen.depthMm)).toBe(
      true,
    )
  })

  it('are refused for an emitter that has none', () => {
    expect(setOutWall(railInput({ emitter: { ...towelRail, brackets: [] } }), figures)).toMatchObject({
      ok: false,
      problems: [{ code: 'invalid', path: 'emitter.brackets' }],
    })
  })
})

describe('the fixing', () => {
  it('is the lightest that holds, and heavier for a heavier emitter', () => {
    const names = [1, 20, 120].map(
      (dryKg) => setOutOf(railInput({ wall: plain, emitter: { ...towelRail, dryKg } })).fixing.fixingId,
    )
    const order = figures.fixings
      .filter((one) => one.builds.includes('solidMasonry'))
      .map((one) => one.fixingId)
    const places = names.map((name) => order.indexOf(name))
    expect(places[0]).toBe(0)
    expect(places).toEqual([...places].sort((a, b) => a - b))
    expect(new Set(places).size).toBeGreaterThan(1)
  })

  it('bears a person who leans on it, unless told otherwise', () => {
    const leaning = setOutOf(railInput()).fixing.load.shearN
    const alone = setOutOf(railInput({ extraKg: 0 })).fixing.load.shearN
    const leanKg = figures.settings['wall.leanKg']?.value ?? Number.NaN
    // Four fixings share the weight; g by the 3rd CGPM (1901).
    expect(leaning - alone).toBeCloseTo((leanKg * 9.80665) / 4, 6)
  })

  it('is a screw into the stud where every hole lands on one', () => {
    // Studs at 200, 600, ...: holes at 1800 ± 400 = 1400 and 2200 are their middles.
    const brackets = doublePanel.brackets.map((bracket) => ({
      ...bracket,
      holes: bracket.holes.map((hole) => ({ ...hole, acrossMm: Math.sign(hole.acrossMm) * 400 })),
    }))
    const out = setOutOf(panelInput({ emitter: { ...doublePanel, brackets } }))
    expect(out.fixing).toMatchObject({ fixingId: 'screw-5-stud', needsBoard: false })
    expect(out.warnings).toEqual([])
  })

  it('is a board anchor for a light emitter off the studs, and says which holes the board holds', () => {
    const out = setOutOf(panelInput({ emitter: { ...doublePanel, dryKg: 8, waterLitres: 2 }, extraKg: 0 }))
    expect(out.fixing).toMatchObject({ fixingId: 'anchor-10-board', needsBoard: false })
    expect(out.warnings).toContain('Holes A1, A2, B1 and B2 miss the studs and are held by the board alone.')
  })

  it('is a backing board where no anchor holds, with a pilot hole into it', () => {
    const out = setOutOf(panelInput({ emitter: { ...doublePanel, dryKg: 90 } }))
    expect(out.fixing).toMatchObject({ needsBoard: true, load: { holds: false } })
    expect(out.holes.every((hole) => hole.drillMm === figures.settings['wall.boardPilotMm']?.value)).toBe(
      true,
    )
    expect(out.warnings[0]).toContain('a backing board across the studs')
  })

  it('says where an anchor meets a stud or its edge', () => {
    const studs = { firstMm: 1320, spacingMm: 600, widthMm: 47 }
    const edge = { firstMm: 1298, spacingMm: 600, widthMm: 47 }
    const light = { ...doublePanel, dryKg: 8, waterLitres: 2 }
    const on = panelInput({ emitter: light, extraKg: 0, wall: { ...studWall, studs } })
    expect(warningsAbout(on, 'fall on a stud')).toEqual([
      'Holes A1 and A2 fall on a stud: there a screw into the timber takes the place of the anchor.',
    ])
    const at = panelInput({ emitter: light, extraKg: 0, wall: { ...studWall, studs: edge } })
    expect(warningsAbout(at, 'edge of a stud')).toHaveLength(1)
  })

  it('says so when the studs were not surveyed', () => {
    const { studs: _, ...unknown } = studWall
    const input = panelInput({ wall: unknown, emitter: { ...doublePanel, dryKg: 8 }, extraKg: 0 })
    expect(warningsAbout(input, 'not surveyed: find them')).toHaveLength(1)
  })

  it('is there twice or more for every build, from light to heavy', () => {
    for (const build of [
      'solidMasonry',
      'hollowBlock',
      'aeratedBlock',
      'boardOnStuds',
      'boardOnDabs',
    ] as const) {
      for (const intoStud of [false, true]) {
        const here = figures.fixings.filter(
          (one) => one.builds.includes(build) && (one.intoStud ?? false) === intoStud,
        )
        if (intoStud && build !== 'boardOnStuds') expect(here).toEqual([])
        else expect(here.length).toBeGreaterThanOrEqual(2)
        const shears = here.map((one) => one.allowedShearN)
        expect(shears).toEqual([...shears].sort((a, b) => a - b))
      }
    }
  })

  it('is refused with a gap where the firm has none for the wall', () => {
    expect(setOutWall(railInput(), { ...figures, fixings: [] })).toMatchObject({
      ok: false,
      problems: [{ code: 'gap', path: 'wall.build' }],
    })
  })
})

describe('warnings', () => {
  it('are none on a plain wall where all is well', () => {
    const pipes = [floorPipe('left', 420, 235), floorPipe('right', 870, 235)]
    expect(setOutOf(railInput({ wall: plain, pipes })).warnings).toEqual([])
  })

  it('name holes level with a socket and straight below it', () => {
    const socket: Obstacle = {
      obstacleId: 's',
      name: 'Socket',
      kind: 'socket',
      xMm: 1400,
      yMm: 360,
      widthMm: 146,
      heightMm: 86,
    }
    const level = warningsAbout(railInput({ wall: { ...plain, obstacles: [socket] } }), 'level with Socket')
    expect(level).toHaveLength(1)
    expect(level[0]).toContain('Holes C1 and D1')
    const over = { ...socket, name: 'Light switch', kind: 'switch' as const, xMm: 820, yMm: 1800 }
    const below = warningsAbout(
      railInput({ wall: { ...plain, obstacles: [over] } }),
      'above or below Light switch',
    )
    expect(below[0]).toContain('Holes B1 and D1')
  })

  it('name holes near a cable or a pipe in the wall', () => {
    const pipe: Obstacle = {
      obstacleId: 'p',
      name: 'Rising main',
      kind: 'pipeInWall',
      xMm: 860,
      yMm: 0,
      widthMm: 15,
      heightMm: 2400,
    }
    expect(warningsAbout(railInput({ wall: { ...plain, obstacles: [pipe] } }), 'Rising main')[0]).toContain(
      'Holes B1 and D1',
    )
  })

  it('say what the emitter hits', () => {
    expect(warningsAbout(railInput({ bottomMm: 80 }), 'to the floor')).toHaveLength(1)
  })

  it('say that a valve has no pipe, and that a pipe end has no height', () => {
    expect(
      warningsAbout(railInput({ pipes: [floorPipe('left', 420, 235)] }), 'No pipe was surveyed on the right'),
    ).toHaveLength(1)
    const { yMm: _, ...unknown } = floorPipe('left', 420, 0)
    expect(warningsAbout(railInput({ pipes: [unknown] }), 'was not surveyed: it is taken')).toHaveLength(1)
  })

  it('say what a tiled wall means for the depth', () => {
    expect(warningsAbout(railInput(), 'Tiled wall')).toHaveLength(1)
  })
})

it('the valves come at half the pipe centres, at the pipe entry', () => {
  const drop = figures.settings['wall.valveDropUnderMm']?.value ?? Number.NaN
  expect(setOutOf(railInput()).valves).toEqual([
    { side: 'left', xMm: 420, yMm: 300 - drop },
    { side: 'right', xMm: 870, yMm: 300 - drop },
  ])
})
