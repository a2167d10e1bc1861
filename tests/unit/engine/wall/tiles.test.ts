import { describe, expect, it } from 'vitest'
import { setOut as setOutSchema } from '../../../../src-main/domain/set-out.ts'
import { wall as wallSchema } from '../../../../src-main/domain/wall.ts'
import type { Tiles, Wall } from '../../../../src-main/domain/wall.ts'
import { setOutWall } from '../../../../src-main/engine/wall/set-out-wall.ts'
import { finishAt, tileEdgeMm, tileMoves } from '../../../../src-main/engine/wall/tiles/tile-grid.ts'
import { surfaceAt } from '../../../../src-main/engine/wall/tiles/tile-warnings.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { bathroomWall, railInput } from './walls-for-tests.ts'

const defaults = defaultFigures('2026-11-25')
/** The test's own distance, so that the geometry is worked by hand. */
const settings = {
  ...defaults.settings,
  'wall.tileEdgeMm': { says: 'Least', value: 20, unit: 'Mm', source: 'the test' },
}
const figures = { ...defaults, settings }

/** Grout lines at 0, 300, 600 and on along the wall, and at 0, 600, 1200 and on up it. */
const tiles: Tiles = { widthMm: 298, heightMm: 598, jointMm: 2, xMm: 0, yMm: 0 }

function tiled(more: Partial<Wall> = {}): Wall {
  const wall = { ...bathroomWall, obstacles: [], tiles, ...more }
  expect(wallSchema.safeParse(wall).success).toBe(true)
  return wall
}

/** The rail's holes are 200 each side of its centre, at 1405 and 395. */
function setOutAt(centreMm: number, wall: Wall) {
  const out = setOutWall(railInput({ wall, centre: { kind: 'at', xMm: centreMm } }), figures)
  if (!out.ok) throw new Error(out.problems[0]?.message)
  expect(setOutSchema.safeParse(out.value).success).toBe(true)
  return out.value
}
const edgeWarnings = (centreMm: number, wall: Wall) =>
  setOutAt(centreMm, wall).warnings.filter((says) => says.startsWith('Too near the edge of a tile'))

describe('the grid of a tiled wall', () => {
  it('gives each hole its distance to the nearest edge of its tile', () => {
    // x 445: 145 past a grout line, 1 of joint: 144. x 845: 55 short of 900: 54. Up: 195 and 205 from a grout line, less 1.
    expect(setOutAt(645, tiled()).holes.map(({ id, tileEdgeMm: mm }) => [id, mm])).toEqual([
      ['A1', 144],
      ['B1', 54],
      ['C1', 144],
      ['D1', 54],
    ])
    expect(edgeWarnings(645, tiled())).toEqual([])
  })

  it('measures up the wall as well as along it, from its datum', () => {
    expect(tileEdgeMm({ xMm: 150, yMm: 610 }, tiles)).toBe(9)
    expect(tileEdgeMm({ xMm: 150, yMm: 590 }, tiles)).toBe(9)
    expect(tileEdgeMm({ xMm: 150, yMm: 610 }, { ...tiles, yMm: 605 })).toBe(4)
    expect(tileEdgeMm({ xMm: 10, yMm: 300 }, { ...tiles, xMm: 37 })).toBe(26)
    expect(tileEdgeMm({ xMm: -10, yMm: -300 }, tiles)).toBe(9)
  })

  it('is negative in a joint, and nothing at the edge of a tile', () => {
    expect(tileEdgeMm({ xMm: 300, yMm: 300 }, tiles)).toBe(-1)
    expect(tileEdgeMm({ xMm: 301, yMm: 300 }, tiles)).toBe(0)
    expect(tileEdgeMm({ xMm: 299, yMm: 300 }, tiles)).toBe(0)
  })

  it('shifts every second row by half a tile in half bond, counted from the datum both ways', () => {
    const bond = { ...tiles, heightMm: 298, halfBond: true }
    // Row 0: 140 past a grout line; rows 1 and -1: 10 short of the one at 150.
    expect(tileEdgeMm({ xMm: 140, yMm: 150 }, bond)).toBe(139)
    expect(tileEdgeMm({ xMm: 140, yMm: 450 }, bond)).toBe(9)
    expect(tileEdgeMm({ xMm: 140, yMm: -150 }, bond)).toBe(9)
    expect(tileEdgeMm({ xMm: 140, yMm: 750 }, bond)).toBe(139)
    expect(tileEdgeMm({ xMm: 140, yMm: 450 }, { ...bond, halfBond: false })).toBe(139)
  })

  it('ends at the top of the tiling, which is an edge too', () => {
    expect(tileEdgeMm({ xMm: 150, yMm: 1188 }, tiles, 1195)).toBe(7)
    expect(tileEdgeMm({ xMm: 150, yMm: 900 }, tiles, 1195)).toBe(149)
  })
})

describe('holes too near the edge of a tile', () => {
  it('are named with their distances and the moves that clear them all at once', () => {
    // B1 and D1 at 890: 10 short of 900, 9 from the edge. They ask 21 to 279 past a grout line: 11 to the left, 31 to the right;
    // A1 and C1, at 190 past, stay clear.
    expect(edgeWarnings(690, tiled())).toEqual([
      'Too near the edge of a tile (20 mm is needed): B1 9 mm and D1 9 mm. A move of 11 mm to the left or 31 mm to the right clears them all, but the pipes move away by as much or come nearer.',
    ])
    for (const byMm of [-11, 31]) expect(edgeWarnings(690 + byMm, tiled())).toEqual([])
    for (const byMm of [-10, 30]) expect(edgeWarnings(690 + byMm, tiled())).toHaveLength(1)
  })

  it('in a joint are said to be there', () => {
    expect(edgeWarnings(700, tiled())[0]).toContain('B1 in a joint and D1 in a joint. A move of 21 mm')
  })

  it('are offered no move into something that the emitter clears now', () => {
    // The rail ends at 940; a shelf of the test asks 20 from 980 on: 31 to the right would leave 9.
    const shelf = {
      obstacleId: 's',
      name: 'Shelf',
      kind: 'shelf' as const,
      xMm: 980,
      yMm: 600,
      widthMm: 300,
      heightMm: 30,
      clearanceMm: 20,
    }
    expect(edgeWarnings(690, tiled({ obstacles: [shelf] }))[0]).toContain(
      'B1 9 mm and D1 9 mm. A move of 11 mm to the left clears them all',
    )
    const left = { ...shelf, obstacleId: 'l', name: 'Rack', xMm: 100, widthMm: 320 }
    expect(edgeWarnings(690, tiled({ obstacles: [shelf, left] }))[0]).toContain(
      'No move along the wall clears them all.',
    )
    // What is hit already does not hold it back.
    const hit = { ...left, widthMm: 400 }
    expect(edgeWarnings(690, tiled({ obstacles: [shelf, hit] }))[0]).toContain('A move of 11 mm to the left')
  })

  it('have no move where the tiles are too small, or a hole is too near a level joint', () => {
    const small = { ...tiles, widthMm: 38 }
    expect(edgeWarnings(690, tiled({ tiles: small }))[0]).toContain('No move along the wall')
    const level = { ...tiles, yMm: 380 }
    expect(edgeWarnings(645, tiled({ tiles: level }))[0]).toContain(
      'C1 14 mm and D1 14 mm. No move along the wall clears them all.',
    )
    expect(tileMoves([{ xMm: 5, yMm: 300 }], { tiles }, { needMm: 20, mayMove: () => false })).toEqual({
      leftMm: null,
      rightMm: null,
    })
  })
})

describe('a wall that is tiled part of the way up', () => {
  it('has each hole through tile or through plaster, and says which', () => {
    const out = setOutAt(645, tiled({ tiledToMm: 1200 }))
    expect(out.holes.map((hole) => [hole.id, hole.finish, hole.tileEdgeMm])).toEqual([
      ['A1', 'paint', undefined],
      ['B1', 'paint', undefined],
      ['C1', 'tile', 144],
      ['D1', 'tile', 54],
    ])
    expect(out.warnings).toContain(
      'Part tiled: holes C1 and D1 go through tile, holes A1 and B1 through plaster.',
    )
    expect(out.warnings.filter((says) => says.startsWith('Tiled wall'))).toHaveLength(1)
  })

  it('minds only the holes through tile', () => {
    expect(edgeWarnings(690, tiled({ tiledToMm: 1200 }))[0]).toContain('is needed): D1 9 mm. A move of')
    expect(edgeWarnings(690, tiled({ tiledToMm: 300 }))).toEqual([])
    expect(setOutAt(690, tiled({ tiledToMm: 300 })).warnings.filter((says) => says.includes('tile'))).toEqual(
      [],
    )
  })

  it('is tile up to its top edge and plaster above; a wall of another finish is neither', () => {
    expect(finishAt(1200, { finish: 'tile', tiledToMm: 1200 })).toBe('tile')
    expect(finishAt(1200.1, { finish: 'tile', tiledToMm: 1200 })).toBe('paint')
    expect(finishAt(5, { finish: 'paper', tiledToMm: 1200 })).toBe('paper')
    expect(finishAt(1300, { finish: 'bare', tiledToMm: 1200 })).toBe('bare')
    expect(surfaceAt({ xMm: 5, yMm: 5 }, { finish: 'paint', tiles, tiledToMm: 1200 })).toEqual({})
    expect(surfaceAt({ xMm: 5, yMm: 5 }, { finish: 'tile' })).toEqual({})
    expect(surfaceAt({ xMm: 5, yMm: 5 }, { finish: 'tile', tiledToMm: 100 })).toEqual({ finish: 'tile' })
  })
})
