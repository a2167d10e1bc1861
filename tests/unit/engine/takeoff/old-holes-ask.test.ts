import { describe, expect, it } from 'vitest'
import { measuredOldHoles, oldHoleCount } from '../../../../src-main/domain/wall.ts'
import { because, given } from '../../../../src-main/domain/derivation.ts'
import { existingEmitter } from '../../../../src-main/domain/wall.ts'
import type { ExistingEmitter } from '../../../../src-main/domain/wall.ts'
import { oldHolesAsk } from '../../../../src-main/engine/takeoff/old-holes-ask.ts'
import { fillOldHoles } from '../../../../src-main/engine/takeoff/rules/making-good/fill-old-holes.ts'
import { sealOldTileHoles } from '../../../../src-main/engine/takeoff/rules/making-good/seal-old-tile-holes.ts'
import { named } from '../../../../src-main/engine/takeoff/rule.ts'
import { defaultFigures } from '../../../figures-for-tests.ts'
import { typical } from '../../../typical-asks.ts'

const figures = defaultFigures('2026-11-25')
type Places = NonNullable<NonNullable<ExistingEmitter['oldHoles']>['at']>
const old = (at?: Places): ExistingEmitter => ({
  name: 'Old',
  widthMm: 500,
  heightMm: 600,
  oldHoles: { count: 4, diameterMm: 8, depthMm: 50, ...(at === undefined ? {} : { at }) },
})
const places = [
  { xMm: 420, yMm: 700, count: 2 },
  { xMm: 870, yMm: 250 },
]

describe('old holes', () => {
  it('are as many as were counted until one is measured, and then as many as were measured', () => {
    expect(oldHoleCount(undefined)).toBe(0)
    expect(oldHoleCount({ name: 'Old', widthMm: 500, heightMm: 600 })).toBe(0)
    expect(oldHoleCount(old())).toBe(4)
    expect(oldHoleCount(old([]))).toBe(4)
    expect(oldHoleCount(old(places))).toBe(3)
    expect(measuredOldHoles(old(places))).toEqual(places)
  })

  it('are told with each place where they were measured', () => {
    expect(oldHolesAsk(undefined)).toEqual({ oldHoles: null })
    expect(oldHolesAsk({ name: 'Old', widthMm: 500, heightMm: 600 })).toEqual({ oldHoles: null })
    expect(oldHolesAsk(old())).toEqual({ oldHoles: { count: 4, diameterMm: 8, depthMm: 50 } })
    expect(oldHolesAsk(old(places))).toEqual({
      oldHoles: { count: 3, diameterMm: 8, depthMm: 50 },
      oldHolesWhy: because('Old holes, measured one by one', 3, {
        from: [
          given('Old holes 420 mm from the left and 700 mm above the floor', 2, undefined, 'survey'),
          given('Old holes 870 mm from the left and 250 mm above the floor', 1, undefined, 'survey'),
        ],
      }),
    })
  })

  it('that were measured are what the filler and the sealant are reckoned by', () => {
    const asked = oldHolesAsk(old(places))
    const waste = 1 + (figures.settings['making.fillerWasteRatio']?.value ?? Number.NaN)
    const filler = fillOldHoles.gives({ ...typical.swap, ...asked }, named(figures, fillOldHoles.uses))[0]
    // Three cylinders of 8 x 50 mm: pi x 4 squared x 50 x 3 = 7540 cubic mm, in ml (volume of a cylinder).
    expect(filler?.quantity).toBeCloseTo(7.5398 * waste, 3)
    expect(filler?.why.from[0]).toEqual(asked.oldHolesWhy)
    const tiled = { ...typical.swap, ...asked, wallFinish: 'tile' as const }
    const sealant = sealOldTileHoles.gives(tiled, named(figures, sealOldTileHoles.uses))[0]
    expect(sealant?.quantity).toBeCloseTo(
      3 * (figures.settings['making.tileSealantMl']?.value ?? Number.NaN),
      9,
    )
    expect(sealant?.why.from[0]).toEqual(asked.oldHolesWhy)
  })

  it('are refused in the survey where a place holds no hole, or more than could be there', () => {
    const read = (count: number) => existingEmitter.safeParse(old([{ xMm: 0, yMm: 0, count }])).success
    expect([0, 1, 20, 21, 1.5].map(read)).toEqual([false, true, true, false, false])
  })
})
