import { describe, expect, it } from 'vitest'
import { deliveredBores as bores } from '../../src-main/desk/hydraulics/pipe-bores.ts'
import { pipeContent } from '../../src-main/engine/water/pipe-content.ts'
import { answered } from '../answered.ts'

const litresPerM = (run: Parameters<typeof pipeContent>[0]) => answered(pipeContent(run, bores)).litres

describe('the water in copper tube agrees with a tube maker’s table for EN 1057', () => {
  it.each([
    [13, 0.133],
    [20, 0.314],
  ])('bore %d mm: %d L/m (walls of 1.0 mm: 15 x 1.0 and 22 x 1.0)', (insideMm, printed) => {
    expect(litresPerM({ insideMm, lengthM: 1 })).toBeCloseTo(printed, 3)
  })
})

describe('bores are outside diameter less two walls', () => {
  it.each([
    [8, 0.6],
    [10, 0.6],
    [12, 0.6],
    [15, 0.7],
    [22, 0.9],
    [28, 0.9],
    [35, 1.2],
  ])(
    'copper %d mm with a wall of %d mm (EN 1057:2010, table 3; 8, 10, 15 and 28 mm read as its records)',
    (outsideMm, wallMm) => {
      const sizes = bores.find(({ material }) => material === 'copper')?.sizes ?? []
      const insideMm = sizes.find((size) => size.outsideMm === outsideMm)?.insideMm
      expect(insideMm).toBeCloseTo(outsideMm - 2 * wallMm, 9)
    },
  )

  it.each([
    [10, 1.5],
    [15, 1.7],
    [22, 2.2],
    [28, 2.6],
  ])('plastic %d mm with a wall of %d mm (from memory; the source says so)', (outsideMm, wallMm) => {
    const plastic = bores.find(({ material }) => material === 'plastic')
    const insideMm = plastic?.sizes.find((size) => size.outsideMm === outsideMm)?.insideMm
    expect(insideMm).toBeCloseTo(outsideMm - 2 * wallMm, 9)
    expect(plastic?.source).toContain('from memory')
  })

  it.each([
    [15, 16.0],
    [22, 21.6],
  ])(
    'steel set down as %d mm: bore %d mm (EN 10255, table 4, medium, DN 15 and DN 20)',
    (outsideMm, insideMm) => {
      const sizes = bores.find(({ material }) => material === 'steel')?.sizes
      expect(sizes?.find((size) => size.outsideMm === outsideMm)?.insideMm).toBe(insideMm)
    },
  )
})
