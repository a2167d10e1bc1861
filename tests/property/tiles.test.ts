import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Tiles } from '../../src-main/domain/wall.ts'
import { tileEdgeMm, tileMoves } from '../../src-main/engine/wall/tiles/tile-grid.ts'

const mm = (min: number, max: number) => fc.integer({ min, max })
/** Whole millimetres throughout, and an even joint, so that trying every whole millimetre misses nothing. */
const grids: fc.Arbitrary<Tiles> = fc.record({
  widthMm: mm(40, 400),
  heightMm: mm(40, 400),
  jointMm: fc.constantFrom(0, 2, 4, 10),
  xMm: mm(-500, 500),
  yMm: mm(-500, 500),
  halfBond: fc.constant(false),
})
const places = fc.array(fc.record({ xMm: mm(0, 2000), yMm: mm(0, 2400) }), { minLength: 1, maxLength: 4 })
type Place = { readonly xMm: number; readonly yMm: number }

/** Every tile near a place tried in turn: how far inside one it lies; null where it is in none. */
function byTrying({ xMm, yMm }: Place, tiles: Tiles): number | null {
  const across = tiles.widthMm + tiles.jointMm
  const up = tiles.heightMm + tiles.jointMm
  for (let row = -80; row <= 80; row += 1) {
    const low = tiles.yMm + row * up + tiles.jointMm / 2
    const by = tiles.halfBond === true && Math.abs(row) % 2 === 1 ? across / 2 : 0
    for (let column = -80; column <= 80; column += 1) {
      const left = tiles.xMm + by + column * across + tiles.jointMm / 2
      const inside = Math.min(xMm - left, left + tiles.widthMm - xMm, yMm - low, low + tiles.heightMm - yMm)
      if (inside >= 0) return inside
    }
  }
  return null
}

describe('the grid of a tiled wall', () => {
  it('puts a hole as far inside its tile as trying every tile does', () => {
    fc.assert(
      fc.property(grids, fc.boolean(), places, (grid, halfBond, holes) => {
        const tiles = { ...grid, halfBond }
        for (const hole of holes) {
          const tried = byTrying(hole, tiles)
          const found = tileEdgeMm(hole, tiles)
          if (tried === null) expect(found).toBeLessThan(0)
          else expect(found).toBeCloseTo(tried, 9)
        }
      }),
      { numRuns: 150 },
    )
  })

  it('offers the least moves that trying every millimetre finds', () => {
    fc.assert(
      fc.property(grids, places, mm(0, 40), (tiles, holes, needMm) => {
        const clear = (byMm: number) =>
          holes.every(({ xMm, yMm }) => tileEdgeMm({ xMm: xMm + byMm, yMm }, tiles) >= needMm)
        if (clear(0)) return
        const pitch = tiles.widthMm + tiles.jointMm
        const first = (way: 1 | -1) => {
          for (let byMm = 1; byMm <= pitch; byMm += 1) if (clear(way * byMm)) return byMm
          return null
        }
        expect(tileMoves(holes, { tiles }, { needMm, mayMove: () => true })).toEqual({
          leftMm: first(-1),
          rightMm: first(1),
        })
      }),
      { numRuns: 300 },
    )
  })

  it('moves along with wall and holes, and is mirrored by a mirrored wall', () => {
    const holesOn = fc.array(fc.record({ xMm: mm(0, 2000), yMm: mm(0, 2400) }), {
      minLength: 1,
      maxLength: 3,
    })
    fc.assert(
      fc.property(grids, fc.boolean(), holesOn, mm(-300, 300), (grid, halfBond, holes, byMm) => {
        const tiles = { ...grid, halfBond }
        const rules = { needMm: 15, mayMove: () => true }
        const moves = tileMoves(holes, { tiles }, rules)
        const moved = holes.map((hole) => ({ ...hole, xMm: hole.xMm + byMm }))
        const over = { ...tiles, xMm: tiles.xMm + byMm }
        expect(tileMoves(moved, { tiles: over }, rules)).toEqual(moves)
        const mirror = holes.map((hole) => ({ ...hole, xMm: 1800 - hole.xMm }))
        const turned = { ...tiles, xMm: 1800 - tiles.xMm }
        mirror.forEach((hole, nth) => {
          const twin = holes[nth]
          if (twin !== undefined) expect(tileEdgeMm(hole, turned)).toBeCloseTo(tileEdgeMm(twin, tiles), 9)
        })
        const { leftMm, rightMm } = tileMoves(mirror, { tiles: turned }, rules)
        expect([leftMm, rightMm]).toEqual([moves.rightMm, moves.leftMm])
      }),
      { numRuns: 200 },
    )
  })
})
