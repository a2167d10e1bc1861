import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import emittersFile from '../../resources/catalogue/emitters.json' with { type: 'json' }
import { emitter as emitterSchema } from '../../src-main/domain/item.ts'
import type { DoorLeaf, Obstacle, Wall } from '../../src-main/domain/wall.ts'
import { emitterStock } from '../../src-main/engine/choose/emitter-stock.ts'
import { refusalsOf } from '../../src-main/engine/choose/refusals.ts'
import { screenEmitters } from '../../src-main/engine/choose/screen-emitters.ts'
import { wallLimits } from '../../src-main/engine/choose/wall-limits.ts'
import { formOnWall } from '../../src-main/engine/wall/emitter-on-wall.ts'
import { fitWall } from '../../src-main/engine/wall/fit-wall.ts'
import { mmInWords } from '../../src-main/engine/wall/in-words.ts'
import { answered } from '../answered.ts'
import { defaultFigures } from '../figures-for-tests.ts'
import { bathroomWall } from '../unit/engine/wall/walls-for-tests.ts'

const figures = defaultFigures('2026-11-25')
const emitters = emittersFile.items.map((item) => emitterSchema.parse(item))
const mm = (min: number, max: number) => fc.integer({ min, max })
const sides = fc.constantFrom('left' as const, 'right' as const)
const leafOf = {
  leafMm: mm(500, 1000),
  opensIntoRoom: fc.boolean(),
  opensDeg: fc.option(mm(60, 180), { nil: undefined }),
}
const leaves: fc.Arbitrary<DoorLeaf> = fc.oneof(
  fc.record({ in: fc.constant('thisWall' as const), hinge: sides, ...leafOf }),
  fc.record({
    in: fc.constant('wallAtCorner' as const),
    corner: sides,
    hinge: fc.constantFrom('near' as const, 'far' as const),
    jambMm: mm(0, 250),
    ...leafOf,
  }),
)
const doors: fc.Arbitrary<Obstacle> = fc.record({
  obstacleId: fc.constant('d'),
  name: fc.constant('Door'),
  kind: fc.constantFrom<Obstacle['kind']>('door', 'doorSwing', 'other'),
  xMm: mm(-200, 2600),
  yMm: fc.constantFrom(0, 0, 0, 900),
  widthMm: mm(500, 1000),
  heightMm: mm(300, 2100),
  leaf: leaves,
})

const priceOf = (itemId: string) => ({
  itemId,
  supplierId: 's',
  code: itemId,
  packHolds: 1,
  packPence: 100,
  validFrom: '2026-01-01',
})

describe('choosing an emitter beside a door', () => {
  it('sees its leaf as the fit does, and gives a reason where it is in the way', () => {
    const priced = emitters.map(({ itemId }) => [itemId, [priceOf(itemId)]] as const)
    const stock = emitterStock({
      emitters: new Map(emitters.map((one) => [one.itemId, one])),
      prices: new Map(priced),
    })
    const at = { flowC: 70, returnC: 60, roomC: 20 }
    fc.assert(
      fc.property(doors, mm(300, 2700), mm(110, 300), (door, xMm, bottomMm) => {
        const wall: Wall = { ...bathroomWall, widthMm: 3000, obstacles: [door] }
        const spot = { wall, centre: { kind: 'at' as const, xMm }, bottomMm, pipes: [] }
        const limits = answered(wallLimits(spot, figures))
        const screen = { limits, at, needW: 0, othersW: 0, share: 1, want: {} }
        const suitable = new Set(screenEmitters(stock, screen).suitable)
        for (const [index, emitter] of stock.emitters.entries()) {
          const fit = answered(fitWall({ ...spot, emitter, valves: {}, ...formOnWall(emitter) }, figures))
          expect(suitable.has(index)).toBe(fit.fits)
          const shape = stock.shapes[stock.shapeAt[index] ?? -1]
          if (shape === undefined) throw new Error('An emitter has no shape')
          const one = { ...shape, givesW: 1000, packPence: 1 }
          const reasons = refusalsOf(emitter, one, screen).map(({ says }) => says)
          const swing = fit.clashes.find((clash) => clash.with === 'the leaf of Door')
          const said = reasons.filter((says) => says.includes('leaf of Door'))
          if (swing === undefined) expect(said).toEqual([])
          else if (swing.haveMm < 0) {
            expect(said).toEqual([`in the way of the leaf of Door by ${mmInWords(-swing.haveMm)}`])
          } else {
            expect(said).toEqual([`${mmInWords(swing.needMm - swing.haveMm)} too close to the leaf of Door`])
          }
        }
      }),
      { numRuns: 40 },
    )
  })
})
